"""Scales of the pictures: time across, decades upright, nights and days on the wall clock of the home."""

import math
from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta, tzinfo

from bathwright.report import amounts
from bathwright.report.context import Tick

_NIGHT_STARTS, _NIGHT_ENDS = time(22), time(6)
_MOST_DAY_LABELS = 6
_LATE = 0.87  # beyond this share of the width no label fits on a small screen


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeScale:
    """Time across the picture, from the beginning of the first day to the end of the last, in the home's zone."""

    starts: datetime
    ends: datetime
    zone: tzinfo

    def place(self, at: datetime) -> float:
        """Place of an instant as a share of the width, kept inside the picture."""
        whole = (self.ends - self.starts).total_seconds()
        return min(max((at - self.starts).total_seconds() / whole, 0.0), 1.0)

    def days(self) -> tuple[datetime, ...]:
        """All beginnings of days inside the picture."""
        out, day = [], self.starts.astimezone(self.zone).date()
        while (at := _at(day_of=day, clock=time(0), zone=self.zone)) < self.ends:
            if at >= self.starts:
                out.append(at)
            day += timedelta(days=1)
        return tuple(out)

    def nights(self) -> tuple[tuple[datetime, datetime], ...]:
        """All nights that reach into the picture, 22:00 to 06:00 on the wall clock, cut at its edges."""
        out, day = [], self.starts.astimezone(self.zone).date() - timedelta(days=1)
        while (dusk := _at(day_of=day, clock=_NIGHT_STARTS, zone=self.zone)) < self.ends:
            dawn = _at(day_of=day + timedelta(days=1), clock=_NIGHT_ENDS, zone=self.zone)
            if dawn > self.starts:
                out.append((max(dusk, self.starts), min(dawn, self.ends)))
            day += timedelta(days=1)
        return tuple(out)

    def ticks(self) -> tuple[Tick, ...]:
        """A mark for each day; not every one has a label when there are many."""
        days = self.days()
        step = max(1, math.ceil(len(days) / _MOST_DAY_LABELS))
        return tuple(
            Tick(place=share(self.place(at)), label=self._label(at) if number % step == 0 else "")
            for number, at in enumerate(days)
        )

    def _label(self, at: datetime) -> str:
        """The day; empty so near to the right edge that it would not fit."""
        return _day_label(at, self.zone) if self.place(at) <= _LATE else ""


def _at(*, day_of: object, clock: time, zone: tzinfo) -> datetime:
    return datetime.combine(day_of, clock, tzinfo=zone).astimezone(UTC)  # type: ignore[arg-type]


def _day_label(at: datetime, zone: tzinfo) -> str:
    weekday, number, month, _ = amounts.day(at, zone).split(" ")
    return f"{weekday} {number} {month}" if number == "1" else f"{weekday} {number}"


def whole_days(starts: datetime, ends: datetime, zone: tzinfo) -> TimeScale:
    """The scale from the beginning of the day of `starts` to the end of the day of `ends`."""
    first = starts.astimezone(zone).date()
    last = (ends.astimezone(zone) - timedelta(microseconds=1)).date() + timedelta(days=1)
    return TimeScale(
        starts=_at(day_of=first, clock=time(0), zone=zone),
        ends=_at(day_of=max(last, first + timedelta(days=1)), clock=time(0), zone=zone),
        zone=zone,
    )


def share(value: float) -> str:
    """A share as percent for a picture: "12.34%"."""
    text = f"{value * 100:.2f}"
    return f"{text.rstrip('0').rstrip('.')}%"


@dataclass(frozen=True, slots=True, kw_only=True)
class DecadeScale:
    """An upright scale on which each decade has the same height; what lies below is drawn at the bottom."""

    low: int
    high: int

    def place(self, value: float) -> float:
        """Place of a value as a share of the height from the top."""
        exponent = math.log10(value) if value > 0 else float(self.low)
        return min(max((self.high - exponent) / (self.high - self.low), 0.0), 1.0)

    def decades(self) -> tuple[float, ...]:
        """The values of the marks, from the top."""
        return tuple(10.0**exponent for exponent in range(self.high, self.low - 1, -1))


def decades_over(highest: float, reference: float) -> DecadeScale:
    """A scale from two decades below the reference to the decade above the highest value."""
    middle = math.floor(math.log10(reference))
    top = max(math.ceil(math.log10(highest)) if highest > 0 else middle, middle + 1)
    return DecadeScale(low=min(middle - 2, top - 3), high=top)
