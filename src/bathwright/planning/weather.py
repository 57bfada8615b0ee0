"""The air indoors as told, or at its worse where it was not told."""

from bathwright.domain.plan import Assumption
from bathwright.domain.survey import Fixture, Survey
from bathwright.schedule.hours import DEFAULT_HOURS
from bathwright.simulation.climate import Weather
from bathwright.units import QuantityError, read_quantity

# where the air indoors was not told: a cold, damp bathroom; judgement, and the plan asks
_UNTOLD_K, _UNTOLD_HUMIDITY = 289.15, 0.75
_COLD_STAND_K, _WARM_STAND_K = 2.0, 1.0  # how much colder than the air an unmeasured bath is taken to be: judgement


def weather_of(survey: Survey, fixture: Fixture) -> tuple[Weather, tuple[Assumption, ...]]:
    """Air and surface of the bath, and what was assumed."""
    air = survey.climate.indoor
    assumed: list[Assumption] = []
    told = air is not None and (air.temperature is not None or air.low is not None)
    low = high = _UNTOLD_K
    humidity = _UNTOLD_HUMIDITY
    if air is not None and told:
        low = air.low if air.low is not None else air.temperature or _UNTOLD_K
        high = air.high if air.high is not None else air.temperature or _UNTOLD_K
    else:
        assumed.append(_assume("indoor-temperature", low, "temperature"))
    if air is not None and air.humidity is not None:
        humidity = max(air.humidity, 0.01)  # air with no water at all has no dew point
    else:
        assumed.append(_assume("indoor-humidity", humidity, "humidity"))
    offset = _measured_offset(fixture, (low + high) / 2)
    surface_told = offset is not None
    if offset is None:
        sheltered = fixture.outside_wall is False and fixture.void_under is False
        offset = _WARM_STAND_K if sheltered else _COLD_STAND_K
        assumed.append(_assume("surface-colder-than-air", offset, "temperature_step"))
    weather = Weather(
        kind=air.kind if air else "constant",
        low_k=low,
        high_k=high,
        humidity=humidity,
        surface_offset_k=offset,
        told=told,
        surface_told=surface_told,
        zone=survey.place.time_zone,
    )
    if not survey.calendar.working:
        assumed.append(_assume("working-hours", "-".join(DEFAULT_HOURS), None))
    return weather, tuple(assumed)


def _measured_offset(fixture: Fixture, mean_k: float) -> float | None:
    """How much colder than the mean air the bath was measured; never warmer than the air."""
    for seen in reversed(fixture.observations):
        if seen.what == "surface_temperature" and seen.value:
            try:
                return max(0.0, mean_k - read_quantity(seen.value, "temperature"))
            except QuantityError:
                return None
    return None


def _assume(code: str, value: float | str, kind: str | None) -> Assumption:
    return Assumption(code=code, value=value, kind=kind, source="own-judgement", mark="judgement")
