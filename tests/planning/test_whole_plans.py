"""The whole plan: the same bytes twice, an id of inputs only, the agreed shape, nothing that passes in silence."""

import dataclasses
import itertools
import json
import math
import re
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from bathwright import rules
from bathwright.domain.findings import Finding
from bathwright.domain.plan import Options, Plan
from bathwright.domain.survey import Climate, Survey
from bathwright.door.survey import read_survey
from bathwright.door.writing import to_json
from bathwright.knowledge import load
from bathwright.planning import make_plan
from bathwright.planning.pipeline import NoSystemError

BOOK = load()
FOLDER = Path(__file__).parents[2] / "examples" / "surveys"
NAMES = sorted(path.stem for path in FOLDER.glob("*.toml"))
AT = datetime(2026, 12, 1, 15, tzinfo=UTC)
# the shape agreed for the file, and what the record adds to it
AGREED = {
    "format", "id", "made_for", "survey", "system", "verdict", "who", "findings", "measures", "questions",
    "assumptions", "alternatives", "area", "materials", "mixes", "steps", "timetable", "air", "climate", "courses",
    "exposures", "clocks", "care", "waste", "cost", "sources", "made_with",
}  # fmt: skip
ADDED = {"private", "emergency", "traces"}
INSTANT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(.*)")


@cache
def survey(name: str) -> Survey:
    return read_survey(FOLDER / f"{name}.toml")


@cache
def plan(name: str, *systems: str) -> Plan:
    return make_plan(survey(name), BOOK.sheets, BOOK, AT, Options(systems=systems))


def leaves(value: Any, path: str = "") -> Iterator[tuple[str, Any]]:
    if isinstance(value, dict):
        for key, entry in value.items():
            yield from leaves(entry, f"{path}.{key}")
    elif isinstance(value, list):
        for entry in value:
            yield from leaves(entry, path)
    else:
        yield path, value


def test_there_are_examples_of_every_verdict() -> None:
    assert {plan(name).verdict for name in NAMES} == {"go", "not-yet", "no"}


@pytest.mark.parametrize("name", NAMES)
def test_the_file_has_the_agreed_shape_and_only_instants_and_numbers_that_anybody_can_read(name: str) -> None:
    text = to_json(plan(name))
    data = json.loads(text, parse_constant=lambda word: pytest.fail(f"{word} in the file"))
    assert set(data) == AGREED | ADDED
    told_by_wall_clock = (".survey.",)  # a survey is told on the wall clock of its home
    for path, value in leaves(data):
        if isinstance(value, float):
            assert math.isfinite(value), path
        if isinstance(value, str) and (found := INSTANT.fullmatch(value)):
            assert found[1] == ("" if path.startswith(told_by_wall_clock) else "Z"), path


@pytest.mark.parametrize("name", ["demo", "stripper"])
def test_the_same_inputs_give_the_same_bytes(name: str) -> None:
    again = make_plan(read_survey(FOLDER / f"{name}.toml"), tuple(BOOK.sheets), BOOK, AT, Options())
    assert to_json(again) == to_json(plan(name))


def test_the_order_of_the_sheets_changes_nothing() -> None:
    mixed = make_plan(survey("demo"), BOOK.sheets[::-1], BOOK, AT, Options())
    assert to_json(mixed) == to_json(plan("demo"))


def test_the_id_hangs_on_every_input_and_on_nothing_else(monkeypatch: pytest.MonkeyPatch) -> None:
    base = plan("demo").id
    other_sheet = (dataclasses.replace(BOOK.sheets[0], digest="0" * 16), *BOOK.sheets[1:])
    told = dataclasses.replace(survey("demo"), clean_tap="garden")
    changed = [
        make_plan(told, BOOK.sheets, BOOK, AT, Options()).id,
        make_plan(survey("demo"), other_sheet, BOOK, AT, Options()).id,
        make_plan(survey("demo"), BOOK.sheets, BOOK, AT + timedelta(minutes=1), Options()).id,
        plan("demo", "waterborne-epoxy").id,
        make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options(units="si")).id,
    ]
    assert len({base, *changed}) == 6
    monkeypatch.setattr(rules, "run_all", lambda facts: (), raising=False)
    assert make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options()).id == base
    assert re.fullmatch(r"[0-9a-f]{16}", base)


STOP = Finding(code="nothing-fits", strength="danger", consequence="ruins", effect="stops")


def test_when_nothing_fits_there_is_no_system_and_nothing_to_follow(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rules, "run_all", lambda facts: (STOP,), raising=False)
    made = make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options())
    assert (made.verdict, made.system, made.made_for.system) == ("no", None, None)
    assert (made.steps, made.mixes, made.materials, made.clocks, made.timetable) == ((), (), (), (), None)
    assert "leave_as_it_is" in {entry.kind for entry in made.alternatives}
    assert {entry.system for entry in made.alternatives if entry.kind == "system"} == {
        "waterborne-epoxy", "solvent-epoxy",
    }  # fmt: skip
    assert "null" in to_json(made)


def test_a_system_that_was_asked_for_is_named_even_when_the_answer_is_no(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(rules, "run_all", lambda facts: (STOP,), raising=False)
    made = make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options(systems=("solvent-epoxy",)))
    assert made.system is not None
    assert (made.system.id, made.verdict, made.steps) == ("solvent-epoxy", "no", ())


def test_the_better_verdict_is_chosen_before_anything_else(monkeypatch: pytest.MonkeyPatch) -> None:
    def only_solvent(facts: Any) -> tuple[Finding, ...]:
        return () if facts.coating.id == "solvent-epoxy" else (STOP,)

    monkeypatch.setattr(rules, "run_all", lambda facts: (), raising=False)
    usual = make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options())
    monkeypatch.setattr(rules, "run_all", only_solvent, raising=False)
    forced = make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options())
    assert usual.system is not None
    assert forced.system is not None
    assert (usual.system.id, forced.system.id) == ("waterborne-epoxy", "solvent-epoxy")  # less vapour, then what fits


def test_a_system_that_nobody_knows_is_refused_by_name() -> None:
    with pytest.raises(NoSystemError, match=r"'no-such-kit'.*solvent-epoxy, waterborne-epoxy"):
        make_plan(survey("demo"), BOOK.sheets, BOOK, AT, Options(systems=("no-such-kit",)))
    cleaners = tuple(sheet for sheet in BOOK.sheets if sheet.role == "cleaner")
    with pytest.raises(NoSystemError, match="no coating among the sheets"):
        make_plan(survey("demo"), cleaners, BOOK, AT, Options())


def test_indoor_air_that_nobody_told_is_taken_as_cold_and_never_gives_an_earlier_bath() -> None:
    told = survey("easy-go")
    untold = make_plan(dataclasses.replace(told, climate=Climate()), BOOK.sheets, BOOK, AT, Options())
    assert untold.climate is not None
    assert not untold.climate.told
    assert untold.climate.low_k <= 289.15
    assert untold.climate.humidity >= 0.75
    assert "indoor-temperature" in {entry.code for entry in untold.assumptions}
    assert untold.verdict != "go"
    for here, there in zip(plan("easy-go").clocks, untold.clocks, strict=False):
        assert there.at is None or here.at is None or there.at >= here.at


PLACED = [name for name in NAMES if plan(name).timetable]


@pytest.mark.parametrize("name", PLACED)
def test_steps_follow_each_other_in_working_hours_after_now(name: str) -> None:
    made = plan(name)
    assert made.timetable is not None
    assert made.steps
    times = [(step.starts, step.ends) for step in made.steps]
    for starts, ends in times:
        assert starts is not None
        assert ends is not None
        assert AT <= starts < ends
        assert starts.second == 0
    assert all(one[1] <= other[0] for one, other in itertools.pairwise(times) if one[1] and other[0])
    by_id = {step.id: step for step in made.steps}
    clashes = {clash.demand for clash in made.timetable.clashes}
    for step in made.steps:
        for demand in step.demands:
            if demand.kind != "wait" or demand.after is None or demand.id in clashes:
                continue
            before = by_id[demand.after]
            assert step.starts is not None
            assert before.ends is not None
            gap = (step.starts - before.ends).total_seconds()
            assert gap >= (demand.least_s or 0.0) - 1e-6
            assert demand.most_s is None or gap <= demand.most_s + 1e-6
    assert made.timetable.chain[-1] == made.steps[-1].id


@pytest.mark.parametrize("name", PLACED)
def test_states_and_clocks_fit_together(name: str) -> None:
    made = plan(name)
    assert made.timetable is not None
    states = made.timetable.states
    assert all(one.ends <= other.starts for one, other in itertools.pairwise(states))
    full = next(clock.at for clock in made.clocks if clock.name == "full_bath")
    first = next(clock.at for clock in made.clocks if clock.name == "first_water")
    assert full is not None
    assert first is not None
    for state in states:
        if state.bath == "free" and state.starts >= made.steps[-1].starts:  # type: ignore[operator]
            assert state.starts >= full
        if state.bath == "first_water":
            assert first <= state.starts
    if made.air and made.air.back_at:
        assert full >= made.air.back_at
        for state in states:
            if state.room == "free":
                assert not any(e.starts <= state.starts < made.air.back_at for e in made.air.emissions)


@pytest.mark.parametrize("name", [name for name in NAMES if plan(name).air])
def test_the_air_of_the_file_is_whole(name: str) -> None:
    air = plan(name).air
    assert air is not None
    assert air.horizon is not None
    zones = {zone.id for zone in air.zones}
    assert zones == {"basin", "room", "home"}
    assert air.intervals[0].starts == min(emission.starts for emission in air.emissions)
    assert air.intervals[-1].ends == air.horizon
    for interval in air.intervals:
        assert interval.starts < interval.ends
        for zone in zones:  # as much air goes into a zone as out of it
            gained = sum(flow.flow_m3_s for flow in interval.flows if flow.target == zone)
            lost = sum(flow.flow_m3_s for flow in interval.flows if flow.source == zone)
            assert gained == pytest.approx(lost)
    last = max(emission.ends for emission in air.emissions)
    assert air.back_at is None or air.back_at >= last
    known = {limit.id for limit in air.limits}
    assert {entry.limit.id for entry in plan(name).exposures if entry.limit} <= known
    assert all(entry.outside.low <= entry.outside.central <= entry.outside.high for entry in plan(name).exposures)


@pytest.mark.parametrize("name", NAMES)
def test_every_source_that_is_named_is_in_the_bibliography(name: str) -> None:
    made = plan(name)
    cited = {source for finding in made.findings for source in finding.sources}
    assert cited <= set(made.sources)
    assert list(made.sources) == sorted(made.sources)
    assert all(trace.sources and trace.mark for trace in made.traces)
