"""Steps on the clock: least waits, most waits, windows, working hours, clashes, what decides; published networks."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from bathwright.domain.steps import Demand, Step
from bathwright.domain.values import Band, Span
from bathwright.schedule.fixpoint import Frame, Placed, chain, place

DAWN = datetime(2026, 6, 1, tzinfo=UTC)  # a Monday
HOUR = timedelta(hours=1)


def step(name: str, work_min: float = 60.0, *demands: Demand) -> Step:
    band = Band(low=work_min * 60, central=work_min * 60, high=work_min * 120, kind="time", source="test", mark="own")
    return Step(id=name, phase="clean", act="rinse", work_s=band, demands=demands)


def wait(name: str, after: str, least_min: float | None = None, most_min: float | None = None, **more: Any) -> Demand:
    least = None if least_min is None else least_min * 60
    most = None if most_min is None else most_min * 60
    return Demand(
        id=f"{name}-after-{after}",
        step=name,
        kind="wait",
        strength="maker",
        after=after,
        least_s=least,
        most_s=most,
        **more,
    )


def window(name: str) -> Demand:
    return Demand(id=f"{name}-warm", step=name, kind="window", strength="maker", reads="air_temperature")


def frame(*working: tuple[float, float], earliest_h: float = 0.0, **more: Any) -> Frame:
    """Hours from dawn; without any, all of 30 days."""
    spans = working or ((0.0, 720.0),)
    kept: dict[str, Any] = {
        "wait_ends": lambda demand, since: since + timedelta(seconds=demand.least_s),
        "next_open": lambda demand, since, work_s: since,
    }
    return Frame(
        earliest=DAWN + earliest_h * HOUR,
        working=tuple(Span(starts=DAWN + a * HOUR, ends=DAWN + b * HOUR) for a, b in spans),
        **{**kept, **more},
    )


def days(count: int, opens: float = 8.0, closes: float = 18.0) -> list[tuple[float, float]]:
    return [(24 * day + opens, 24 * day + closes) for day in range(count)]


def hours(placed: Placed) -> dict[str, float]:
    return {s.id: (s.starts - DAWN) / HOUR for s in placed.steps if s.starts}


def test_one_pair_of_hands_works_step_after_step() -> None:
    placed = place((step("a", 30), step("b", 45), step("c")), frame(earliest_h=2.0))
    assert hours(placed) == {"a": 2.0, "b": 2.5, "c": 3.25}
    assert [s.decides for s in placed.steps] == ["earliest", "a", "b"]
    assert [s.ends for s in placed.steps] == [DAWN + h * HOUR for h in (2.5, 3.25, 4.25)]


def test_a_least_wait_runs_from_the_end_or_the_start_of_the_step() -> None:
    after_end = place((step("a"), step("b", 60, wait("b", "a", 90))), frame())
    after_start = place((step("a"), step("b", 60, wait("b", "a", 90, after_edge="start"))), frame())
    assert hours(after_end)["b"] == 2.5
    assert hours(after_start)["b"] == 1.5
    assert after_end.steps[1].decides == "b-after-a"


def test_work_is_not_begun_when_it_would_not_end_within_the_hours() -> None:
    placed = place((step("a", 9 * 60), step("b", 61), step("c", 30)), frame(*days(5)))
    assert hours(placed) == {"a": 8.0, "b": 32.0, "c": 24 + 9 + 1 / 60}
    assert placed.steps[1].decides == "hours"


def test_a_wait_may_end_while_nobody_works() -> None:
    placed = place((step("a"), step("b", 60, wait("b", "a", 12 * 60))), frame(*days(5)))
    assert hours(placed) == {"a": 8.0, "b": 32.0}


def test_starts_are_rounded_up_to_whole_minutes() -> None:
    placed = place((step("a"), step("b", 60, wait("b", "a", 0.01))), frame(earliest_h=1 / 3600))
    assert [s.starts for s in placed.steps] == [DAWN + timedelta(minutes=1), DAWN + timedelta(minutes=62)]


def test_a_most_wait_pushes_the_step_before_it() -> None:
    # the second coat 10 to 14 hours after the first: a first coat in the morning would be ten hours later at 19:00
    coats = (step("ready"), step("coat-1"), step("coat-2", 60, wait("coat-2", "coat-1", 10 * 60, 14 * 60)))
    placed = place(coats, frame(*days(5)))
    assert hours(placed) == {"ready": 8.0, "coat-1": 17.0, "coat-2": 32.0}
    assert placed.clashes == ()
    assert placed.steps[1].decides == "most-wait"


def test_a_most_wait_pushes_as_often_as_it_must() -> None:
    # work on Monday, Wednesday, Friday, Saturday; the second step within 20 to 26 hours of the first
    week = [(24 * day + 8, 24 * day + 18) for day in (0, 2, 4, 5, 7, 9)]
    placed = place((step("a"), step("b", 60, wait("b", "a", 20 * 60, 26 * 60))), frame(*week))
    assert hours(placed) == {"a": 4 * 24 + 8, "b": 5 * 24 + 8}
    assert placed.clashes == ()


def test_a_push_reaches_back_over_a_chain_of_most_waits() -> None:
    mix = step("mix", 15)
    coat = step("coat", 30, wait("coat", "mix", 0, 20))
    look = step("look", 15, wait("look", "coat", 12 * 60, 15 * 60))
    placed = place((mix, coat, look), frame(*days(5)))
    got = hours(placed)
    assert placed.clashes == ()
    assert got["look"] == 32.0
    assert got["coat"] == pytest.approx(32 - 15 - 0.5)
    assert 0 <= got["coat"] - got["mix"] - 0.25 <= 20 / 60 + 1e-9


def test_a_window_moves_the_step_and_is_asked_with_its_work() -> None:
    asked: list[float] = []

    def opens(demand: Demand, since: datetime, work_s: float) -> datetime:
        asked.append(work_s)
        return max(since, DAWN + 13.5 * HOUR)

    placed = place((step("coat", 40, window("coat")),), frame(*days(2), next_open=opens))
    assert hours(placed) == {"coat": 13.5}
    assert placed.steps[0].decides == "coat-warm"
    assert set(asked) == {2400.0}


def test_a_window_that_opens_outside_the_hours_waits_for_both() -> None:
    def opens(demand: Demand, since: datetime, work_s: float) -> datetime:
        """Warm from 17:30 to 09:00."""
        at = (since - DAWN) / HOUR % 24
        return since if at <= 9 or at >= 17.5 else since + (17.5 - at) * HOUR

    placed = place((step("a", 90), step("coat", 60, window("coat"))), frame(*days(3), next_open=opens))
    assert hours(placed) == {"a": 8.0, "coat": 32.0}


def test_a_window_that_never_opens_is_a_clash_and_the_rest_is_shown() -> None:
    never = frame(next_open=lambda demand, since, work_s: None)
    placed = place((step("a"), step("coat", 60, window("coat")), step("c")), never)
    assert hours(placed) == {"a": 0.0, "coat": 1.0, "c": 2.0}
    assert [(c.step, c.demand, c.missed_by_s) for c in placed.clashes] == [("coat", "coat-warm", None)]


@pytest.mark.parametrize(("least", "most"), [(20, 10), (120, 60), (300, 240), (11 * 60, 8 * 60), (36 * 60, 30 * 60)])
def test_a_wait_longer_than_its_own_most_is_a_clash(least: float, most: float) -> None:
    steps = (step("a", 10), step("b", 10, wait("b", "a", least, most)), step("c", 10))
    placed = place(steps, frame(*days(75)))
    free = place((steps[0], step("b", 10, wait("b", "a", least)), steps[2]), frame(*days(75)))
    assert hours(placed) == hours(free)
    gap_s = (hours(placed)["b"] - hours(placed)["a"]) * 3600 - 600
    assert [(c.step, c.demand, c.missed_by_s) for c in placed.clashes] == [
        ("b", "b-after-a", pytest.approx(gap_s - most * 60))
    ]


def test_a_most_wait_that_no_hours_allow_is_a_clash_and_not_the_end_of_the_plan() -> None:
    # an hour a day, and the second step must come 2 to 12 hours after the first
    placed = place((step("a"), step("b", 60, wait("b", "a", 120, 720)), step("c")), frame(*days(20, 8.0, 9.0)))
    assert hours(placed) == {"a": 8.0, "b": 32.0, "c": 56.0}
    assert [c.demand for c in placed.clashes] == ["b-after-a"]
    assert placed.clashes[0].missed_by_s == pytest.approx(11 * 3600)


def test_a_wait_that_never_ends_leaves_no_steps_and_says_which() -> None:
    placed = place((step("a"), step("b", 60, wait("b", "a", 60))), frame(wait_ends=lambda demand, since: None))
    assert placed.steps == ()
    assert [c.demand for c in placed.clashes] == ["b-after-a"]


@pytest.mark.parametrize("working", [[(8.0, 8.5), (32.0, 32.5)], []])
def test_work_longer_than_any_hours_leaves_no_steps(working: list[tuple[float, float]]) -> None:
    nothing = Frame(earliest=DAWN, working=(), wait_ends=lambda d, s: s, next_open=lambda d, s, w: s)
    placed = place((step("a"),), frame(*working) if working else nothing)
    assert placed.steps == ()
    assert [c.step for c in placed.clashes] == ["a"]


def test_an_impossible_most_wait_leaves_the_possible_ones_standing() -> None:
    steps = (
        step("a", 10),
        step("b", 10, wait("b", "a", 60, 30)),
        step("c", 10),
        step("d", 10, wait("d", "c", 10 * 60, 14 * 60)),
    )
    placed = place(steps, frame(*days(20)))
    assert [c.demand for c in placed.clashes] == ["b-after-a"]
    got = hours(placed)
    assert 10 <= got["d"] - got["c"] - 1 / 6 <= 14 + 1e-9


# Two networks of project scheduling known by heart. An activity is a least wait between two events without work, so
# that activities may run side by side. Times in days or weeks of 100 minutes.
PERT = {  # the example of many pages on PERT: expected times; the end after 19.51 days along A C E G [memory]
    "A": (4.00, "start"), "B": (5.33, "start"), "C": (5.17, "A"), "D": (6.33, "A"), "E": (5.17, "B C"),
    "F": (4.50, "D"), "G": (5.17, "E"),
}  # fmt: skip
PERT_ENDS = {"A": 4.00, "B": 5.33, "C": 9.17, "D": 10.33, "E": 14.34, "F": 14.83, "G": 19.51}
# F. S. Hillier, G. J. Lieberman, Introduction to Operations Research, Reliable Construction Co.: 44 weeks [memory]
HOUSE = {
    "A": (2, "start"), "B": (4, "A"), "C": (10, "B"), "D": (6, "C"), "E": (4, "C"), "F": (5, "E"), "G": (7, "D"),
    "H": (9, "E G"), "I": (7, "C"), "J": (8, "F I"), "K": (4, "J"), "L": (5, "J"), "M": (2, "H"), "N": (6, "K L"),
}  # fmt: skip
HOUSE_ENDS = {
    "A": 2, "B": 6, "C": 16, "D": 22, "E": 20, "F": 25, "G": 29, "H": 38, "I": 23, "J": 33, "K": 37, "L": 38, "M": 40,
    "N": 44,
}  # fmt: skip


@pytest.mark.parametrize(
    ("network", "ends", "critical"), [(PERT, PERT_ENDS, "ACEG"), (HOUSE, HOUSE_ENDS, "ABCEFJLN")], ids=["pert", "house"]
)
def test_earliest_events_of_known_networks(network: Any, ends: dict[str, float], critical: str) -> None:
    events = [step("start", 0)]
    for name in sorted(network, key=lambda event: (ends[event], event not in critical)):
        length, before = network[name]
        events.append(step(name, 0, *(wait(name, other, round(length * 100)) for other in before.split())))
    placed = place(tuple(events), frame())
    found = {name: round(at * 60 / 100, 2) for name, at in hours(placed).items()}
    assert found == {"start": 0.0, **ends}
    upto = placed.steps[: [s.id for s in placed.steps].index(critical[-1]) + 1]
    assert "".join(entry for entry in chain(upto) if len(entry) == 1) == critical


def test_the_chain_names_steps_waits_hours_and_pushes() -> None:
    coats = (step("ready"), step("coat-1"), step("coat-2", 60, wait("coat-2", "coat-1", 10 * 60, 14 * 60)))
    placed = place(coats, frame(*days(5)))
    assert chain(placed.steps) == ("hours", "ready", "most-wait", "coat-1", "hours", "coat-2")
    waited = place((step("a"), step("b", 60, wait("b", "a", 90)), step("c")), frame())
    assert chain(waited.steps) == ("a", "b-after-a", "b", "c")
    assert chain(()) == ()
