"""The air is too damp or too dry for the coating.

What
    The highest and lowest relative humidity, in the same hours as for the temperature, against the sheet's window.
Why
    In damp air a coat blushes and loses hold; some coatings need moisture to set.
Strength
    Maker's demand; binds nobody. Met by drying the air, or by waiting for another day.
Fires
    "humidity up to 82 %", "humidity down to 20 % for a coating that sets with moisture".
Stays silent
    "humidity of 50 %".
Sources
    The sheet of the coating. common-practice: dry the air with a dryer or with warm air.
"""

from bathwright.domain import views
from bathwright.domain.findings import Measure, Said
from bathwright.rules.facts import Facts
from bathwright.rules.measures import wait_for_weather
from bathwright.rules.window import Reading, outside, told, untold

CODE = "humidity-outside-window"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop on each side of the window."""
    low, high, because = views.bounds(facts.coating, "humidity")
    weather = facts.weather
    if not because:
        return ()
    if not told(facts, humidity=True):
        return untold(CODE, "humidity")
    if weather is None:
        return ()
    said: list[Said] = []
    if high is not None and weather.humidity_high > high:
        reading = Reading(
            code=CODE, value=weather.humidity_high, limit=high, lower=False, kind="humidity", because=because
        )
        said += outside(facts, reading, _dry_air())
    if low is not None and weather.humidity_low < low:
        reading = Reading(
            code=CODE, value=weather.humidity_low, limit=low, lower=True, kind="humidity", because=because
        )
        said += outside(facts, reading, wait_for_weather())
    return tuple(said)


def _dry_air() -> Measure:
    return Measure(
        id="dry-air", act="dry_air", who="household", what="dehumidifier", feasible="hire", when="before_start"
    )
