"""Air and surface of the bath over the day, as told: a constant or a typed day. The heat balance comes later."""

import math
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from bathwright.domain.record import record
from bathwright.physics import humid_air

_UNSURE_MEASURED_K, _UNSURE_K = 0.5, 1.5
_COLDEST_HOUR = 5.0  # the typed day is a cosine with its low at 05:00 on the wall clock: judgement


@record
class Weather:
    """The air indoors over the day and how much colder the surface of the bath is."""

    kind: str
    low_k: float
    high_k: float
    humidity: float
    surface_offset_k: float
    told: bool
    surface_told: bool
    zone: str

    @property
    def unsure_k(self) -> float:
        """How far the bath may lie below the model: 0.5 K where it was measured, else 1.5 K; judgement."""
        return _UNSURE_MEASURED_K if self.surface_told else _UNSURE_K

    def air_k(self, at: datetime) -> float:
        """Air temperature at an instant."""
        local = at.astimezone(ZoneInfo(self.zone))
        hours = local.hour + local.minute / 60 + local.second / 3600
        middle, half = (self.low_k + self.high_k) / 2, (self.high_k - self.low_k) / 2
        return middle - half * math.cos((hours - _COLDEST_HOUR) / 24 * 2 * math.pi)

    def surface_k(self, at: datetime) -> float:
        """Surface temperature of the bath at an instant."""
        return self.air_k(at) - self.surface_offset_k

    def reading(self, reads: str, at: datetime) -> float:
        """One of the readings that a window asks for, in SI."""
        if reads == "air_temperature":
            return self.air_k(at)
        if reads == "surface_temperature":
            return self.surface_k(at)
        if reads == "humidity":
            return self.humidity
        return humid_air.dew_point_spread_k(self.air_k(at), self.humidity, self.surface_k(at))

    def extremes(self, reads: str, starts: datetime, ends: datetime) -> tuple[float, float]:
        """Lowest and highest reading in a span, looked at every half hour and at both ends."""
        span = min(ends - starts, timedelta(days=1))
        count = max(1, math.ceil(span / timedelta(minutes=30)))
        values = [self.reading(reads, starts + span * i / count) for i in range(count + 1)]
        return min(values), max(values)
