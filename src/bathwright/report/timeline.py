"""The picture of the whole plan over time: states of the bathroom, phases of the work, earliest times of use."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from bathwright.domain.steps import BathState, Clock, Step
from bathwright.report.context import Bar, Lane, Pair, Timeline
from bathwright.report.reader import Reader
from bathwright.report.scale import TimeScale, share, whole_days
from bathwright.report.steps_view import in_time

_TOP, _LANE, _NOTE, _GAP = 24, 29, 13, 8
_BAR = 14  # from the top of a row to its bars
_LONGEST = timedelta(days=21)


def timeline(reader: Reader) -> Timeline | None:
    """The picture; None when no step has a time."""
    table = reader.plan.timetable
    if table is None:
        return None
    scale = whole_days(table.starts, _end(reader, table.starts, table.ends), reader.zone)
    lanes = tuple(_stacked(reader, scale))
    used = {bar.look for lane in lanes for bar in lane.bars}
    return Timeline(
        title=reader.words.get("timeline", "title"),
        desc=reader.words.get(
            "timeline", "desc", starts=reader.instant(table.starts, "down"), ends=reader.instant(table.ends, "up")
        ),
        height=lanes[-1].bar_y + _LANE - _BAR + 4,
        nights=night_bars(reader, scale),
        ticks=scale.ticks(),
        lanes=lanes,
        legend=tuple(
            Pair(label=name, text=reader.words.get("state_legend", name))
            for name in ("no_water", "first_water", "locked", "leave_home", "work", "wait")
            if name in used
        ),
    )


def night_bars(reader: Reader, scale: TimeScale) -> tuple[Bar, ...]:
    """The nights of a time scale as bars."""
    return tuple(
        Bar(x=share(scale.place(a)), width=_width(scale, a, b), look="night", label="", title=reader.label("night"))
        for a, b in scale.nights()
    )


def _end(reader: Reader, starts: datetime, ends: datetime) -> datetime:
    """The end of the work or the full bath, whichever is later, but no more than three weeks."""
    full = [clock.at for clock in reader.plan.clocks if clock.name == "full_bath" and clock.at]
    return min(max([ends, *full]), max(ends, starts + _LONGEST))


def _width(scale: TimeScale, starts: datetime, ends: datetime) -> str:
    return share(max(scale.place(ends) - scale.place(starts), 0.0))


def _stacked(reader: Reader, scale: TimeScale) -> Iterator[Lane]:
    """All rows from the top, with a gap between the three groups."""
    y = _TOP
    for group in (_states(reader, scale), _phases(reader, scale), _clocks(reader, scale)):
        for label, note, bars, diamonds in group:
            more = _NOTE if note else 0
            yield Lane(y=y, label=label, note=note, bar_y=y + _BAR + more, bars=bars, diamonds=diamonds)
            y += _LANE + more
        y += _GAP if group else 0


Drawn = tuple[str, str, tuple[Bar, ...], tuple[Bar, ...]]


def _states(reader: Reader, scale: TimeScale) -> list[Drawn]:
    states = reader.plan.timetable.states if reader.plan.timetable else ()
    if not states:
        return []
    lanes: list[Drawn] = []
    for name, section in (("bath", "state"), ("room", "state_room"), ("home", "state_home")):
        bars = tuple(
            _state_bar(reader, scale, span, section)
            for span in _joined(states, name)
            if span[2] != "free" and span[0] < scale.ends
        )
        lanes.append((reader.words.get("timeline", name), "", bars, ()))
    return lanes


Stretch = tuple[datetime, datetime, str]


def _joined(states: tuple[BathState, ...], name: str) -> list[Stretch]:
    """Spans of one of bath, room and home; neighbours that say the same are one span."""
    out: list[Stretch] = []
    for state in states:
        value: str = getattr(state, name)
        if out and out[-1][1] == state.starts and out[-1][2] == value:
            out[-1] = (out[-1][0], state.ends, value)
        else:
            out.append((state.starts, state.ends, value))
    return out


def _state_bar(reader: Reader, scale: TimeScale, span: Stretch, section: str) -> Bar:
    starts, ends, value = span
    words = reader.words.get(section, value)
    return Bar(
        x=share(scale.place(starts)),
        width=_width(scale, starts, ends),
        look=value,
        label=words,
        title=f"{words}: {reader.span(starts, ends)}",
    )


def _phases(reader: Reader, scale: TimeScale) -> list[Drawn]:
    """One row per phase, in the order of the work; the numbers of its steps stand in the label."""
    lanes: dict[str, list[Step]] = {}
    for step in in_time(reader):
        if step.starts is not None and step.ends is not None:
            lanes.setdefault(reader.words.get("phase", step.phase), []).append(step)
    return [
        (f"{title} ({_numbers(reader, steps)})", "", tuple(_step_bar(reader, scale, step) for step in steps), ())
        for title, steps in lanes.items()
    ]


def _numbers(reader: Reader, steps: list[Step]) -> str:
    numbers = sorted(reader.numbers[step.id] for step in steps)
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 1 else str(run[0]) for run in runs)


def _step_bar(reader: Reader, scale: TimeScale, step: Step) -> Bar:
    starts, ends = step.starts or scale.starts, step.ends or scale.starts
    return Bar(
        x=share(scale.place(starts)),
        width=_width(scale, starts, ends),
        look="work" if step.attendance == "attended" else "wait",
        label=str(reader.numbers[step.id]),
        title=f"{reader.numbers[step.id]}. {reader.title(step.id)}: {reader.span(starts, ends)}",
    )


def _clocks(reader: Reader, scale: TimeScale) -> list[Drawn]:
    """One row per clock: from the step it runs from to its instant, which stands in the label."""
    ends = {step.id: step.ends for step in reader.plan.steps if step.ends}
    return [_clock(reader, scale, clock, ends.get(clock.runs_from)) for clock in reader.plan.clocks]


def _clock(reader: Reader, scale: TimeScale, clock: Clock, since: datetime | None) -> Drawn:
    name, at = reader.words.get("clock", clock.name), reader.not_before(clock.at)
    words = f"{name}: {at}"
    if clock.at is None or since is None:
        return (name, at, (), ())
    bar = Bar(x=share(scale.place(since)), width=_width(scale, since, clock.at), look="run", label="", title=words)
    inside = clock.at <= scale.ends
    point = Bar(x=share(scale.place(clock.at)), width="0%", look="point", label="", title=words)
    return (name, at, (bar,), (point,) if inside else ())
