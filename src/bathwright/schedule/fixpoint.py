"""Earliest start of steps in a fixed order: a fixpoint on least waits, pushed up where a most wait would be missed."""

import dataclasses
from collections import Counter
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta

from bathwright.domain.record import record
from bathwright.domain.steps import Clash, Demand, Step
from bathwright.domain.values import Span

WaitEnds = Callable[[Demand, datetime], datetime | None]
NextOpen = Callable[[Demand, datetime, float], datetime | None]
_ROUNDS = 400
_PUSHES = 150  # after so many pushes a most wait counts as one that cannot be kept
_MINUTE = timedelta(minutes=1)


@record
class Placed:
    """The steps with their times, and the demands that could not be kept."""

    steps: tuple[Step, ...]
    clashes: tuple[Clash, ...]


@record
class Frame:
    """What the steps are fitted into.

    wait_ends(demand, from) = when a wait that began then ends (None = never).
    next_open(demand, from, work_s) = the first instant from which the window holds for the work and after it
    (None = not in sight).
    """

    earliest: datetime
    working: tuple[Span, ...]
    wait_ends: WaitEnds
    next_open: NextOpen


class _StuckError(Exception):
    """A step that cannot be placed, with the demand that keeps it out."""

    def __init__(self, step: str, demand: str) -> None:
        super().__init__(step)
        self.step, self.demand = step, demand


def place(steps: tuple[Step, ...], frame: Frame) -> Placed:
    """Place all steps as early as their demands allow, one pair of hands, in the given order.

    Most waits: the step before is pushed later until the gap fits; each push only raises a lower bound, and no most
    wait pushes without end. A most wait that still does not fit, or a window that never opens, is returned as a clash
    and dropped from the search, so that the rest of the plan can be shown. A wait that never ends, or work for which
    no working hours are long enough, leaves no steps.
    """
    bounds: dict[str, datetime] = {}
    dropped: dict[str, Clash] = {}
    pushes: Counter[str] = Counter()
    last: tuple[Demand, timedelta] | None = None  # the most wait that pushed last
    while True:
        try:
            placed = _forward(steps, frame, bounds, dropped)
        except _StuckError as stuck:
            if last is None:
                if stuck.demand in dropped:
                    return Placed(steps=(), clashes=tuple(dropped.values()))
                dropped[stuck.demand] = Clash(demand=stuck.demand, step=stuck.step, missed_by_s=None)
                continue
            demand, excess = last  # its push leads out of sight
        else:
            late = _first_late(placed, dropped)
            if late is None:
                return Placed(steps=placed, clashes=tuple(_as_shown(clash, placed) for clash in dropped.values()))
            demand, before, excess = late
            if before.id != demand.step and pushes[demand.id] < _PUSHES:
                bounds[before.id] = _start(before) + excess
                pushes[demand.id] += 1
                last = demand, excess
                continue
        dropped[demand.id] = Clash(demand=demand.id, step=demand.step, missed_by_s=excess.total_seconds())
        bounds, last = {}, None
        pushes.clear()


def _forward(
    steps: tuple[Step, ...], frame: Frame, bounds: dict[str, datetime], dropped: dict[str, Clash]
) -> tuple[Step, ...]:
    done: dict[str, Step] = {}
    hands_free = frame.earliest
    hands_by = "earliest"
    for step in steps:
        start, decides = frame.earliest, "earliest"
        if hands_free > start:
            start, decides = hands_free, hands_by
        if bounds.get(step.id, start) > start:
            start, decides = bounds[step.id], "most-wait"
        for demand in step.demands:
            if demand.kind == "wait" and demand.least_s is not None and demand.after in done:
                ends = frame.wait_ends(demand, _edge(done[demand.after], demand))
                if ends is None:
                    raise _StuckError(step.id, demand.id)
                if ends > start:
                    start, decides = ends, demand.id
        start, decides = _fit(step, _whole_minute(start), decides, frame, dropped)
        ends = start + timedelta(seconds=step.work_s.central)
        done[step.id] = dataclasses.replace(step, starts=start, ends=ends, earliest=start, decides=decides)
        hands_free, hands_by = ends, step.id
    return tuple(done.values())


def _fit(step: Step, start: datetime, decides: str, frame: Frame, dropped: dict[str, Clash]) -> tuple[datetime, str]:
    """The first start at or after `start` that lies in working hours and in all windows."""
    work = timedelta(seconds=step.work_s.central)
    windows = [d for d in step.demands if d.kind == "window" and d.id not in dropped]
    for _ in range(_ROUNDS):
        in_hours = _in_hours(frame.working, start, work)
        if in_hours is None:
            raise _StuckError(step.id, f"{step.id}-hours")
        if in_hours > start:
            start, decides = in_hours, "hours"
        moved = False
        for window in windows:
            opens = frame.next_open(window, start, step.work_s.central)
            if opens is None:
                raise _StuckError(step.id, window.id)
            if opens > start:
                start, decides, moved = _whole_minute(opens), window.id, True
        if not moved:
            return start, decides
    raise _StuckError(step.id, windows[0].id if windows else f"{step.id}-hours")


def _in_hours(working: tuple[Span, ...], start: datetime, work: timedelta) -> datetime | None:
    for span in working:
        begin = max(start, span.starts)
        if begin + work <= span.ends:
            return begin
    return None


def _first_late(placed: tuple[Step, ...], dropped: dict[str, Clash]) -> tuple[Demand, Step, timedelta] | None:
    """The first most wait that is missed: the demand, the step to push, by how much."""
    return next((late for late in _late(placed) if late[0].id not in dropped), None)


def _late(placed: tuple[Step, ...]) -> Iterator[tuple[Demand, Step, timedelta]]:
    by_id = {step.id: step for step in placed}
    for step in placed:
        for demand in step.demands:
            if demand.kind != "wait" or demand.most_s is None or demand.after not in by_id:
                continue
            excess = _start(step) - _edge(by_id[demand.after], demand) - timedelta(seconds=demand.most_s)
            if excess > timedelta(0):
                yield demand, by_id[demand.after], excess


def _as_shown(clash: Clash, placed: tuple[Step, ...]) -> Clash:
    """The clash with what the timetable that is shown misses it by."""
    missed = next((excess.total_seconds() for demand, _, excess in _late(placed) if demand.id == clash.demand), None)
    return clash if missed is None else dataclasses.replace(clash, missed_by_s=missed)


def _edge(step: Step, demand: Demand) -> datetime:
    instant = step.ends if demand.after_edge == "end" else step.starts
    if instant is None:
        raise ValueError(f"step {step.id} has no time yet")
    return instant


def _start(step: Step) -> datetime:
    if step.starts is None:
        raise ValueError(f"step {step.id} has no time yet")
    return step.starts


def _whole_minute(instant: datetime) -> datetime:
    """The instant, rounded up to a whole minute."""
    floor = instant.replace(second=0, microsecond=0)
    return floor if floor == instant else floor + _MINUTE


def chain(steps: tuple[Step, ...]) -> tuple[str, ...]:
    """What decides the end, from the last step back: step ids and demand ids, first things first."""
    by_id = {step.id: step for step in steps}
    out: list[str] = []
    current = steps[-1] if steps else None
    while current is not None:
        out.append(current.id)
        decides = current.decides or "earliest"
        demand = next((d for d in current.demands if d.id == decides), None)
        if demand is not None:
            out.append(demand.id)
        previous = demand.after if demand is not None and demand.after else decides
        if demand is not None and not demand.after:
            position = list(by_id).index(current.id)
            previous = list(by_id)[position - 1] if position else "earliest"
        if decides in ("hours", "most-wait"):
            position = list(by_id).index(current.id)
            out.append(decides)
            previous = list(by_id)[position - 1] if position else "earliest"
        current = by_id.get(previous)
    return tuple(reversed(out))
