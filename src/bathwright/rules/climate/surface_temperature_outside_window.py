"""The bath itself is too cold or too warm for the coating.

What
    The lowest and highest temperature of the surface, in the same hours as for the air, against the sheet's window.
    Where it was not measured it is taken colder than the air, and it is measured before the first coat.
Why
    The bath is colder than the air, above all at an outside wall, and it is the bath that counts.
Strength
    Maker's demand; binds nobody. Met by heating early enough, or by waiting. The measuring is told, no more.
Fires
    "bath down to 10 °C", "bath not measured".
Stays silent
    "bath measured at 20 °C".
Sources
    The sheet of the coating. common-practice: the surface counts.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, equipment
from bathwright.rules.measures import heat_room, wait_for_weather
from bathwright.rules.say import best_available, with_measures
from bathwright.rules.window import Reading, outside, told, untold

CODE = "surface-temperature-outside-window"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop on each side of the window; a note when the surface was not measured."""
    low, high, because = views.bounds(facts.coating, "surface_temperature")
    weather = facts.weather
    if not because:
        return ()
    if not told(facts):
        return untold(CODE, "temperature")
    if weather is None:
        return ()
    said: list[Said] = [] if weather.surface_told else list(_not_measured(facts))
    if low is not None and weather.surface_low_k < low:
        reading = Reading(
            code=CODE, value=weather.surface_low_k, limit=low, lower=True, kind="temperature", because=because
        )
        said += outside(facts, reading, heat_room(facts))
    if high is not None and weather.surface_high_k > high:
        reading = Reading(
            code=CODE, value=weather.surface_high_k, limit=high, lower=False, kind="temperature", because=because
        )
        said += outside(facts, reading, wait_for_weather())
    return tuple(said)


def _not_measured(facts: Facts) -> tuple[Said, ...]:
    measure = Measure(
        id="measure-surface-temperature",
        act="measure_surface_temperature",
        who="painter",
        what="thermometer",
        feasible=best_available(equipment(facts, "thermometer")),
        when="during",
    )
    finding = Finding(
        code=CODE, about=("not_measured",), strength="maker", consequence="note", effect="tells", relax="measure"
    )
    return with_measures(finding, measure)
