"""No fan blows the vapour outdoors.

What
    Vapour is let out and no fan that blows outdoors was found among what the household named.
Why
    The vapour stays in the room or goes into the home. A fan into a shared duct sends it to the neighbours.
Strength
    Good practice; binds nobody. Where what people breathe passes a limit, a fan must be had before the start. Where it
    passes none, an open window is enough; without a window a fan again. A fan at hand whose duct or flow was not
    told is asked about instead.
Fires
    "too much vapour and no fan", "little vapour, no fan, a window", "little vapour, no fan, no window".
Stays silent
    "a fan that blows outdoors".
Sources
    osha-niosh-2013-110: air is pulled out, low. trade-pages: go or no-go.
"""

from bathwright.domain.codes import Effect, When
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.survey import Equipment
from bathwright.rules.facts import Facts, equipment, organic_emissions
from bathwright.rules.say import best_available, question, with_measures

CODE = "no-air-path"
SOURCES = ("osha-niosh-2013-110", "trade-pages")

_FANS = ("duct_fan", "window_fan", "box_fan", "box_fan_filter", "ceiling_fan")


def check(facts: Facts) -> tuple[Said, ...]:
    """A fan where the air asks for one, a window where that is enough."""
    if facts.air is None or facts.air.fan is not None or not organic_emissions(facts):
        return ()
    if not facts.exposures or any(e.outside.high > e.limit_value for e in facts.exposures):
        return _asked(facts) or with_measures(_finding("stops"), _fan(facts))
    if facts.survey.openings is None:
        return (question("openings", CODE, "no_window", (_fan(facts),), "look_at_window"),)
    if any(o.kind == "window" and "outdoors" in o.between and o.state != "sealed" for o in facts.survey.openings):
        window = Measure(id="open-window", act="open_window", who="painter", feasible="have", when="during")
        return with_measures(_finding("must_do"), window)
    return _asked(facts) or with_measures(_finding("must_do"), _fan(facts))


def _asked(facts: Facts) -> tuple[Said, ...]:
    """What would have to be told so that a fan at hand counts: where it blows, how much it moves."""
    fans = [item for item in equipment(facts, *_FANS) if item.have == "have"]
    nowhere = tuple(item.id for item in fans if item.discharges is None)
    unrated = tuple(item.id for item in fans if item.discharges in (None, "outdoors") and _unrated(facts, item))
    worse = with_measures(_finding("stops"), _fan(facts))
    said: list[Said] = []
    if nowhere:
        said.append(question("fan_discharges", CODE, "home", worse, "follow_the_duct", about=nowhere))
    if unrated:
        said.append(question("fan_rating", CODE, "moves_nothing", worse, "read_type_plate", about=unrated))
    return tuple(said)


def _unrated(facts: Facts, item: Equipment) -> bool:
    """Whether neither its rating nor its real flow was told, and its kind has none that holds for all."""
    kind = facts.knowledge.fans.get(item.kind)
    told = item.rating is not None or item.real_flow is not None
    return not told and (kind is None or kind.real_flow is None)


def _fan(facts: Facts) -> Measure:
    """A fan that blows outdoors, to be had and set up before the start."""
    named = tuple(item for item in equipment(facts, *_FANS) if item.discharges == "outdoors")
    feasible = best_available(named, "hire")
    when: When = "before_start"
    return Measure(id="fan-on-outdoors", act="fan_on", who="household", what="fan", feasible=feasible, when=when)


def _finding(effect: Effect) -> Finding:
    return Finding(
        code=CODE,
        about=("room",),
        strength="good_practice",
        consequence="harms",
        effect=effect,
        relax="fan_outdoors",
    )
