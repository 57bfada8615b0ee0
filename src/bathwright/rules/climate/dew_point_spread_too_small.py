"""The surface is too close to the dew point.

What
    The smallest difference between the bath and the dew point of the air, in the same hours as for the temperature,
    against what the sheet asks for; where the sheet is silent, against the customary 3 K.
Why
    At the dew point a film of water that nobody sees lies under the coat.
Strength
    Maker's demand where the sheet says it, and a stop. Where the sheet is silent: good practice, and a must.
    Met by heating, without a flame, before and during the work.
Fires
    "2 K above the dew point", "2 K above the dew point, sheet silent".
Stays silent
    "8 K above the dew point".
Sources
    iso-8502-4-2017: the customary 3 K. ufc-3-190-06: 5 °F in US practice. Else the sheet.
"""

from bathwright.domain import views
from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts
from bathwright.rules.measures import heat_room
from bathwright.rules.window import Reading, outside

CODE = "dew-point-spread-too-small"
SOURCES = ("iso-8502-4-2017", "ufc-3-190-06")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop, or a must where the sheet is silent, when the spread is too small."""
    if facts.weather is None:
        return ()
    printed = views.strictest(facts.coating, "dew_point_spread")
    custom = facts.knowledge.number("coating_defaults.climate.dew_point_spread_iso")
    limit = printed.value if printed else custom.value
    if facts.weather.spread_low_k >= limit:
        return ()
    reading = Reading(
        code=CODE,
        value=facts.weather.spread_low_k,
        limit=limit,
        lower=True,
        kind="temperature_step",
        because=(printed.fact.id,) if printed else (),
        strength="maker" if printed else "good_practice",
    )
    return outside(facts, reading, heat_room(facts))
