"""The timetable against a search of every minute, and what must hold of any: no earlier for more, no later for less."""

import dataclasses
import itertools
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from typing import NamedTuple
from zoneinfo import ZoneInfo

from hypothesis import assume, given
from hypothesis import strategies as st

from bathwright.domain.steps import Demand, Step
from bathwright.domain.survey import Calendar, Hours
from bathwright.domain.values import Band, Span
from bathwright.schedule.fixpoint import Frame, Placed, place
from bathwright.schedule.hours import working_spans

DAWN = datetime(2026, 6, 1, tzinfo=UTC)
MINUTE = timedelta(minutes=1)


class Wait(NamedTuple):
    """Between two steps by their numbers; `edge` of the earlier one."""

    after: int
    step: int
    least: int
    most: int | None
    edge: str


class Puzzle(NamedTuple):
    """Whole minutes: work of each step, working spans, waits, and for some steps spans in which they must lie."""

    works: tuple[int, ...]
    working: tuple[tuple[int, int], ...]
    waits: tuple[Wait, ...]
    windows: tuple[tuple[int, tuple[tuple[int, int], ...]], ...]


def spans(lengths: list[tuple[int, int]]) -> tuple[tuple[int, int], ...]:
    out, now = [], 0
    for gap, length in lengths:
        out.append((now + gap, now + gap + length))
        now += gap + length
    return tuple(out)


@st.composite
def puzzles(draw: st.DrawFn) -> Puzzle:
    works = tuple(draw(st.lists(st.integers(1, 4), min_size=2, max_size=4)))
    lengths = st.tuples(st.integers(1, 9), st.integers(2, 9))
    working = spans(draw(st.lists(lengths, min_size=2, max_size=5)))
    pairs = [pair for pair in itertools.combinations(range(len(works)), 2) if draw(st.booleans())]
    waits = []
    for after, step in pairs:
        least = draw(st.integers(0, 8))
        most = draw(st.none() | st.integers(least, least + 9))
        waits.append(Wait(after, step, least, most, draw(st.sampled_from(["start", "end"]))))
    warm = draw(st.lists(st.integers(0, len(works) - 1), max_size=1))
    windows = tuple((step, spans(draw(st.lists(lengths, min_size=1, max_size=3)))) for step in warm)
    return Puzzle(works, working, tuple(waits), windows)


def inside(puzzle: Puzzle, step: int, start: int) -> bool:
    """Whether the work lies in working hours and in the windows of the step."""
    end = start + puzzle.works[step]
    asked = [puzzle.working, *(held for which, held in puzzle.windows if which == step)]
    return all(any(a <= start and end <= b for a, b in held) for held in asked)


def kept(puzzle: Puzzle, starts: tuple[int, ...], step: int, start: int) -> bool:
    for wait in puzzle.waits:
        if wait.step == step:
            gap = start - starts[wait.after] - (puzzle.works[wait.after] if wait.edge == "end" else 0)
            if gap < wait.least or (wait.most is not None and gap > wait.most):
                return False
    return True


def schedules(puzzle: Puzzle, starts: tuple[int, ...] = ()) -> Iterator[tuple[int, ...]]:
    """Every timetable of whole minutes that keeps all demands."""
    step = len(starts)
    if step == len(puzzle.works):
        yield starts
        return
    first = starts[-1] + puzzle.works[step - 1] if starts else 0
    for start in range(first, puzzle.working[-1][1]):
        if inside(puzzle, step, start) and kept(puzzle, starts, step, start):
            yield from schedules(puzzle, (*starts, start))


def demands_of(puzzle: Puzzle, step: int) -> Iterator[Demand]:
    for n, wait in enumerate(puzzle.waits):
        if wait.step == step:
            yield Demand(
                id=f"wait-{n}", step=f"s{step}", kind="wait", strength="maker", after=f"s{wait.after}",
                after_edge=wait.edge, least_s=wait.least * 60.0,  # type: ignore[arg-type]
                most_s=None if wait.most is None else wait.most * 60.0,
            )  # fmt: skip
    for which, _ in puzzle.windows:
        if which == step:
            yield Demand(id=f"warm-{step}", step=f"s{step}", kind="window", strength="maker", reads="humidity")


def solve(puzzle: Puzzle, shift: timedelta = timedelta(0)) -> Placed:
    held = {f"warm-{step}": windows for step, windows in puzzle.windows}
    dawn = DAWN + shift

    def next_open(demand: Demand, since: datetime, work_s: float) -> datetime | None:
        work = timedelta(seconds=work_s)
        starts = [max(since, dawn + a * MINUTE) for a, _ in held[demand.id]]
        ends = [dawn + b * MINUTE for _, b in held[demand.id]]
        return next((start for start, end in zip(starts, ends, strict=True) if start + work <= end), None)

    def band(work: int) -> Band:
        return Band(low=work * 60, central=work * 60, high=work * 60, kind="time", source="test", mark="own")

    steps = tuple(
        Step(id=f"s{n}", phase="clean", act="rinse", work_s=band(work), demands=tuple(demands_of(puzzle, n)))
        for n, work in enumerate(puzzle.works)
    )
    working = tuple(Span(starts=dawn + a * MINUTE, ends=dawn + b * MINUTE) for a, b in puzzle.working)
    frame = Frame(
        earliest=dawn, working=working, next_open=next_open,
        wait_ends=lambda demand, since: since + timedelta(seconds=demand.least_s or 0),
    )  # fmt: skip
    return place(steps, frame)


def minutes(placed: Placed, shift: timedelta = timedelta(0)) -> tuple[int, ...]:
    return tuple(int((s.starts - DAWN - shift) / MINUTE) for s in placed.steps if s.starts)


@given(puzzles())
def test_the_timetable_is_the_earliest_of_all_or_names_a_clash(puzzle: Puzzle) -> None:
    every = list(schedules(puzzle))
    placed = solve(puzzle)
    if every:
        assert placed.clashes == ()
        # one timetable is the earliest in every step at once: no most wait is paid for by a later end
        assert minutes(placed) == tuple(min(column) for column in zip(*every, strict=True))
    else:
        assert placed.clashes


@given(puzzles(), st.data())
def test_one_more_least_wait_never_makes_a_step_earlier(puzzle: Puzzle, data: st.DataObject) -> None:
    after, step = sorted(
        data.draw(st.lists(st.integers(0, len(puzzle.works) - 1), min_size=2, max_size=2, unique=True))
    )
    more = puzzle._replace(waits=(*puzzle.waits, Wait(after, step, data.draw(st.integers(0, 8)), None, "end")))
    before, held = solve(puzzle), solve(more)
    assume(not held.clashes)
    assert not before.clashes
    assert all(a <= b for a, b in zip(minutes(before), minutes(held), strict=True))


@given(puzzles(), st.data())
def test_a_looser_wait_never_makes_a_step_later(puzzle: Puzzle, data: st.DataObject) -> None:
    assume(puzzle.waits)
    which = data.draw(st.integers(0, len(puzzle.waits) - 1))
    wait = puzzle.waits[which]
    looser = data.draw(
        st.sampled_from(
            [wait._replace(least=wait.least // 2), wait._replace(most=None), wait._replace(least=0, most=None)]
        )
    )
    relaxed = puzzle._replace(waits=(*puzzle.waits[:which], looser, *puzzle.waits[which + 1 :]))
    before, loose = solve(puzzle), solve(relaxed)
    assume(not before.clashes)
    assert not loose.clashes
    assert all(a <= b for a, b in zip(minutes(loose), minutes(before), strict=True))


@given(puzzles())
def test_a_later_dawn_moves_everything_with_it(puzzle: Puzzle) -> None:
    week = timedelta(days=7)
    assert minutes(solve(puzzle, week), week) == minutes(solve(puzzle))


@given(
    st.integers(0, 20),
    st.lists(st.sampled_from(["mon", "tue", "wed", "thu", "fri", "sat", "sun"]), min_size=1, max_size=7, unique=True),
    st.integers(6, 11),
    st.integers(13, 22),
    st.integers(1, 30),
)
def test_a_week_later_the_same_calendar_gives_the_same_plan(
    day: int, weekdays: list[str], opens: int, closes: int, wait_h: int
) -> None:
    zone = ZoneInfo("Asia/Kolkata")  # the clock never changes there
    told = Calendar(working=(Hours(days=tuple(weekdays), starts=f"{opens:02}:00", ends=f"{closes:02}:00"),))  # type: ignore[arg-type]
    band = Band(low=5400, central=5400, high=5400, kind="time", source="test", mark="own")
    first = Step(id="a", phase="coat", act="coat", work_s=band)
    held = Demand(id="w", step="b", kind="wait", strength="maker", after="a", least_s=wait_h * 3600.0)
    steps = (first, dataclasses.replace(first, id="b", demands=(held,)))

    def placed(from_day: date) -> list[datetime]:
        working = tuple(working_spans(told, zone, from_day, 40))
        earliest = datetime(from_day.year, from_day.month, from_day.day, 3, tzinfo=UTC)
        frame = Frame(
            earliest=earliest, working=working, next_open=lambda d, since, w: since,
            wait_ends=lambda demand, since: since + timedelta(seconds=demand.least_s or 0),
        )  # fmt: skip
        return [s.starts for s in place(steps, frame).steps if s.starts]

    begin = date(2026, 6, 1) + timedelta(days=day)
    now, later = placed(begin), placed(begin + timedelta(days=7))
    assert len(now) == 2
    assert [a + timedelta(days=7) for a in now] == later
