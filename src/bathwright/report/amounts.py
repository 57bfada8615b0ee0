"""Values and instants in words: wall clock of the home, durations, quantities in one or both systems."""

import math
from datetime import UTC, datetime, timedelta, tzinfo
from typing import Literal
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from bathwright.domain.values import Band
from bathwright.units import KINDS, show, show_both

System = Literal["us", "si"]
Round = Literal["up", "down", "near"]
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_THIN_VAPOUR_KG_M3 = 1.0  # below this a concentration is vapour in air, above it is solvent in paint
_LONG_S = 48 * 3600


def zone_of(name: str) -> tzinfo:
    """The time zone by its IANA name; UTC when the name is not known."""
    return ZoneInfo(name) if is_zone(name) else UTC


def is_zone(name: str) -> bool:
    """Whether the name is a known time zone."""
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return False
    return True


def _whole_minute(at: datetime, rounding: Round) -> datetime:
    rest = timedelta(seconds=at.second, microseconds=at.microsecond)
    if rounding == "down" or not rest or (rounding == "near" and rest < timedelta(seconds=30)):
        return at - rest
    return at - rest + timedelta(minutes=1)


def _local(at: datetime, zone: tzinfo, rounding: Round) -> datetime:
    return _whole_minute(at.astimezone(UTC), rounding).astimezone(zone)


def zone_name(at: datetime, zone: tzinfo) -> str:
    """Name of the zone at an instant: "EST"; zones without letters as "UTC+03"."""
    name = at.astimezone(zone).tzname() or "UTC"
    return name if name[:1].isalpha() else f"UTC{name}"


def day(at: datetime, zone: tzinfo, rounding: Round = "near") -> str:
    """The day on the wall calendar: "Thu 10 Dec 2026"."""
    local = _local(at, zone, rounding)
    return f"{_DAYS[local.weekday()]} {local.day} {_MONTHS[local.month - 1]} {local.year}"


def clock_time(at: datetime, zone: tzinfo, rounding: Round = "near") -> str:
    """The time on the wall clock without a zone: "18:00"; only beside a day and a zone."""
    local = _local(at, zone, rounding)
    return f"{local.hour:02d}:{local.minute:02d}"


def instant(at: datetime, zone: tzinfo, rounding: Round = "near") -> str:
    """Day, time and zone: "Thu 10 Dec 2026, 18:00 EST". Rounded to a minute: up for "not before"."""
    return f"{day(at, zone, rounding)}, {clock_time(at, zone, rounding)} {zone_name(at, zone)}"


def duration(value_s: float, rounding: Round = "near") -> str:
    """A time span: "45 s", "40 min", "6 h 30 min", "3 days 4 h". Rounded up where it is a least wait."""
    if value_s < 60:
        return f"{_round(value_s, rounding)} s"
    minutes = _round(value_s / 60, rounding)
    if minutes < 60:
        return f"{minutes} min"
    if minutes * 60 <= _LONG_S:
        hours, rest = divmod(minutes, 60)
        return f"{hours} h {rest} min" if rest else f"{hours} h"
    days, hours = divmod(_round(minutes / 60, rounding), 24)
    return f"{days} days {hours} h" if hours else f"{days} days"


def _round(value: float, rounding: Round) -> int:
    nearest = round(value)
    if rounding == "near" or abs(value - nearest) < 1e-6:
        return nearest
    return math.ceil(value) if rounding == "up" else math.floor(value)


def significant(value: float, digits: int = 2) -> str:
    """A number with so many digits that say something: 0.018, 1.8, 180, 1,800."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else "without end"
    places = digits - 1 - math.floor(math.log10(abs(value)))
    rounded = round(value, places)
    places = digits - 1 - math.floor(math.log10(abs(rounded)))
    return f"{rounded:,.{max(places, 0)}f}"


def percent(share: float) -> str:
    """A share as percent: "0.3 %", "31 %"; two digits that say something, whole above one."""
    value = share * 100
    return f"{significant(value, 2)} %" if abs(value) < 1 else f"{value:.0f} %"


def _amount(value: float, system: System) -> str:
    """A volume of liquid in the unit that a household measures with."""
    if system == "si" and value >= 1e-3:
        return f"{value * 1e3:.2f}".rstrip("0").rstrip(".") + " L"
    return show(value, "liquid", system)


def quantity(value: float, kind: str | None, system: System, *, both: bool = False) -> str:
    """An SI value in words. both: the other system in brackets, for values on which health hangs.

    No US ounces of liquid stand beside millilitres. Vapour in air comes out as ppm or mg/m³ with two
    digits. A kind that is not in the table: the bare number.
    """
    if kind == "time":
        return duration(value)
    if kind == "vapour_ppm":
        return f"{significant(value * 1e6)} ppm"
    if kind == "concentration" and abs(value) < _THIN_VAPOUR_KG_M3:
        return f"{significant(value / KINDS['concentration'].units['mg/m3'][0])} mg/m³"
    if kind in ("share", "humidity"):
        return percent(value)
    if kind == "liquid":
        first = _amount(value, system)
        return f"{first} ({_amount(value, 'si')})" if both and system == "us" else first
    if kind is None or kind == "count" or kind not in KINDS:
        return f"{value:.6g}"
    text = show_both(value, kind, system) if both else show(value, kind, system)
    return text.replace(" (difference)", "") if kind == "temperature_step" else text


def between(low: float, high: float, kind: str | None, system: System) -> str:
    """Two values of one kind: "40 to 60 min"; one value when they read alike."""
    first, last = quantity(low, kind, system), quantity(high, kind, system)
    if first == last:
        return first
    number, _, unit = first.partition(" ")
    one_unit = not any(sign.isdigit() for sign in unit)
    same_unit = unit and one_unit and last.endswith(" " + unit) and " " not in last[: -len(unit) - 1]
    return f"{number} to {last}" if same_unit else f"{first} to {last}"


def work_band(value: Band) -> str:
    """How long work takes: "45 min (35 min to 1 h 10 min)", rounded up to whole minutes."""
    middle, low, high = (duration(part, "up") for part in (value.central, value.low, value.high))
    return middle if low == high else f"{middle} ({low} to {high})"


def band(value: Band, system: System) -> str:
    """A band: "0.62 L (0.53 to 0.78 L)"; without the bracket when its ends read alike."""
    middle = quantity(value.central, value.kind, system)
    ends = between(value.low, value.high, value.kind, system)
    return middle if ends == middle else f"{middle} ({ends})"
