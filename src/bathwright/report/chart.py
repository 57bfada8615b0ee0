"""Pictures of vapour over time: central and upper course against the limits, on a scale of decades."""

import math
from collections.abc import Sequence
from datetime import datetime, timedelta

from bathwright.domain.air import Course
from bathwright.report import amounts
from bathwright.report.context import Group, Panel, Table, Tick
from bathwright.report.fill import capital
from bathwright.report.reader import Reader
from bathwright.report.scale import DecadeScale, TimeScale, decades_over, share, whole_days
from bathwright.report.timeline import night_bars

_MOST_ROWS = 24
_STILL_THERE = 0.1  # the picture ends where the upper course stays below this share of the limit
_SHARES = ("1", "")
_FAR_BELOW = 1e-3  # a smaller share of a limit is not told in digits


def panels(reader: Reader) -> tuple[Panel, ...]:
    """One picture per course of vapour; all over the same time."""
    begin = _begin(reader)
    courses = [course for course in reader.plan.courses if course.t_s and (course.unit in _SHARES or _is_mass(course))]
    if begin is None or not courses:
        return ()
    last = max(_last_s(reader, course) for course in courses)
    first = min(course.t_s[0] for course in courses)
    scale = whole_days(begin + timedelta(seconds=first), begin + timedelta(seconds=last), reader.zone)
    return tuple(_panel(reader, course, begin, scale, number) for number, course in enumerate(courses, 1))


def _is_mass(course: Course) -> bool:
    return course.unit in ("kg/m3", "kg_m3")


def _begin(reader: Reader) -> datetime | None:
    """The instant from which courses count: the start of the plan."""
    if reader.plan.timetable is not None:
        return reader.plan.timetable.starts
    starts = [step.starts for step in reader.plan.steps if step.starts]
    return min(starts, default=None)


def _last_s(reader: Reader, course: Course) -> float:
    """Seconds until the upper course stays small beside the limit; the whole course when it never does."""
    limits = limits_of(reader, course)
    lowest = min((value for value, _ in limits), default=max(course.upper) / 100 if max(course.upper) > 0 else 1.0)
    over = [t for t, value in zip(course.t_s, course.upper, strict=True) if value >= _STILL_THERE * lowest]
    return float(over[-1] if over else course.t_s[0])


def limits_of(reader: Reader, course: Course) -> tuple[tuple[float, str], ...]:
    """Limits that belong to a course: 1 for a sum of shares, else those of the record for its place and substance."""
    if course.unit in _SHARES:
        return ((1.0, reader.words.word(course.reads, "course_limit", free=True)),)
    found = {}
    for exposure in reader.plan.exposures:
        here = course.of in (exposure.zone, exposure.who)
        if here and exposure.limit is not None and course.reads in (exposure.substance, exposure.limit.cas):
            value = exposure.limit_value
            text = f"{amounts.quantity(value, 'concentration', reader.units)} {exposure.limit.body}"
            found[value] = f"{text}, {reader.words.get('measured', exposure.measure)}"
    return tuple(sorted(found.items()))


def _value(reader: Reader, course: Course, value: float) -> str:
    if course.unit in _SHARES:
        if value < _FAR_BELOW:
            return reader.words.get("chart", "far_below")
        return reader.words.get("chart", "times", value=amounts.significant(value))
    return amounts.quantity(value, "concentration", reader.units)


def _decade(reader: Reader, course: Course, value: float) -> str:
    if course.unit in _SHARES:
        return f"{value:,g} ×" if value < 1e6 else f"{value:.0e} ×"
    return amounts.quantity(value, "concentration", reader.units)


def _panel(reader: Reader, course: Course, begin: datetime, time: TimeScale, number: int) -> Panel:
    limits = limits_of(reader, course)
    unit = 1.0 if course.unit in _SHARES else 1e-6
    reference = min((value for value, _ in limits), default=unit)
    scale = decades_over(max(course.upper), reference)
    title = _title(reader, course)
    words = "; ".join(text for _, text in limits)
    drawn = reader.words.get("chart", "limits", list=words) if words else reader.words.get("chart", "no_limits")
    return Panel(
        id=f"course-{number}",
        title=title,
        desc=reader.words.get("chart", "desc", limits=drawn),
        unit=_unit(reader, course),
        central=_points(course.t_s, course.central, begin, time, scale),
        upper=_points(course.t_s, course.upper, begin, time, scale),
        decades=tuple(
            Tick(place=share(scale.place(value)), label=_decade(reader, course, value)) for value in scale.decades()
        ),
        times=time.ticks(),
        nights=night_bars(reader, time),
        limits=tuple(Tick(place=share(scale.place(value)), label=text) for value, text in limits),
        peak=_peak(reader, course, begin),
        table=_table(reader, course, begin, title, number),
    )


def _title(reader: Reader, course: Course) -> str:
    place = reader.words.word(course.of, "zone", "person", free=True)
    if course.unit in _SHARES:
        return capital(place)
    return capital(f"{place}: {reader.substance(course.reads)}")


def _points(t_s: Sequence[int], values: Sequence[float], begin: datetime, time: TimeScale, scale: DecadeScale) -> str:
    """Points "x,y" in a square of 1000 by 1000; cut at the right edge and where both ends lie below the scale."""
    floor = 10.0**scale.low
    shown = [index for index, value in enumerate(values) if value > floor]
    first, last = (max(shown[0] - 1, 0), min(shown[-1] + 2, len(values))) if shown else (0, 0)
    out = []
    for seconds, value in zip(t_s[first:last], values[first:last], strict=True):
        at = begin + timedelta(seconds=seconds)
        if at > time.ends:
            break
        out.append(f"{time.place(at) * 1000:.1f},{scale.place(value) * 1000:.1f}")
    return " ".join(out)


def _peak(reader: Reader, course: Course, begin: datetime) -> str:
    top = max(range(len(course.upper)), key=lambda index: course.upper[index])
    at = reader.instant(begin + timedelta(seconds=course.t_s[top]))
    value = _value(reader, course, course.upper[top])
    return capital(reader.words.get("chart", "peak", value=value, unit=_unit(reader, course), at=at))


def _unit(reader: Reader, course: Course) -> str:
    """What the numbers are numbers of."""
    if course.unit in _SHARES:
        return reader.words.word(course.reads, "course", free=True)
    return reader.substance(course.reads)


def _table(reader: Reader, course: Course, begin: datetime, title: str, number: int) -> Table:
    """The course as a table: some points over its length, always with the highest."""
    count = len(course.t_s)
    step = max(1, math.ceil(count / _MOST_ROWS))
    top = max(range(count), key=lambda index: course.upper[index])
    kept = sorted({*range(0, count, step), top, count - 1})
    rows = tuple(
        (
            reader.instant(begin + timedelta(seconds=course.t_s[index])),
            _value(reader, course, course.central[index]),
            _value(reader, course, course.upper[index]),
        )
        for index in kept
    )
    head = tuple(capital(reader.label(name)) for name in ("time", "central", "upper"))
    return Table(
        id=f"course-{number}-table", caption=title, head=head, groups=(Group(title="", rows=rows),), numeric=(1, 2)
    )
