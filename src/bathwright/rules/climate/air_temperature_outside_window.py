"""The air is too cold or too warm for the coating.

What
    The lowest and the highest air temperature, from the first coat to the end of the time for which the sheet wants the
    room held, against the sheet's window.
Why
    Too cold and the coat stays soft; too warm and it sets before it is level.
Strength
    Maker's demand; binds nobody. Met by heating without a flame, or by waiting for another day.
Fires
    "air down to 10 °C", "air up to 33 °C".
Stays silent
    "air from 20 to 22 °C".
Sources
    The sheet of the coating. common-practice: heat without a flame.
"""

from bathwright.domain import views
from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts
from bathwright.rules.measures import heat_room, wait_for_weather
from bathwright.rules.window import Reading, outside, told, untold

CODE = "air-temperature-outside-window"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop on each side of the window."""
    low, high, because = views.bounds(facts.coating, "air_temperature")
    weather = facts.weather
    if not because:
        return ()
    if not told(facts):
        return untold(CODE, "temperature")
    if weather is None:
        return ()
    said: list[Said] = []
    if low is not None and weather.air_low_k < low:
        reading = Reading(
            code=CODE, value=weather.air_low_k, limit=low, lower=True, kind="temperature", because=because
        )
        said += outside(facts, reading, heat_room(facts))
    if high is not None and weather.air_high_k > high:
        reading = Reading(
            code=CODE, value=weather.air_high_k, limit=high, lower=False, kind="temperature", because=because
        )
        said += outside(facts, reading, wait_for_weather())
    return tuple(said)
