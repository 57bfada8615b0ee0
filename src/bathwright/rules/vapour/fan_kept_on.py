"""The fan on which the computed air rests runs for as long as it was reckoned with.

What
    The air of the plan was computed with a fan that blows outdoors. It runs from the first vapour until the film is
    quiet enough that the room stays below the values for everybody without it.
Why
    A film lets vapour out for days. A fan that is switched off early fills the room again.
Strength
    Physical danger; binds nobody. Met by a fan at hand; one that must be hired or bought is had before the start.
Fires
    "fan at hand", "fan to be hired".
Stays silent
    "no fan in the plan", "nothing but water leaves".
Sources
    own-computation: until when. osha-niosh-2013-110: exhaust air while the vapour lasts.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, organic_emissions
from bathwright.rules.say import measure_id, with_measures

CODE = "fan-kept-on"
SOURCES = ("own-computation", "osha-niosh-2013-110")


def check(facts: Facts) -> tuple[Said, ...]:
    """The fan as a measure with its hours."""
    if facts.air is None or facts.air.fan is None or not organic_emissions(facts):
        return ()
    on = [interval for interval in facts.air.intervals if interval.setup == "fan-on"]
    item = next((entry for entry in facts.survey.equipment if entry.id == facts.air.fan), None)
    feasible = item.have if item else "ask"
    measure = Measure(
        id=measure_id("fan_on", facts.air.fan),
        act="fan_on",
        who="household",
        what=item.kind if item else None,
        starts=on[0].starts if on else None,
        ends=on[-1].ends if on else None,
        feasible=feasible,
        when="during" if feasible == "have" else "before_start",
    )
    finding = Finding(
        code=CODE, about=("room",), strength="danger", consequence="harms", effect="must_do", relax="leave_fan_on"
    )
    return with_measures(finding, measure)
