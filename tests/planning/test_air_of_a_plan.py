"""The air of one attempt on the clock, what a mask changes, and who may do the work."""

import dataclasses
import itertools
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from bathwright.domain.air import AirSetup, Exposure, Release, Vapour
from bathwright.domain.findings import Measure
from bathwright.domain.steps import Step
from bathwright.domain.values import Band
from bathwright.knowledge import load
from bathwright.planning.air import Aired, breathe
from bathwright.planning.exposed import with_measures
from bathwright.simulation import air

BOOK = load()
BEGIN = datetime(2026, 12, 8, 20, 0, tzinfo=UTC)
MINUTE = timedelta(minutes=1)
CFM = 0.3048**3 / 60
TOLUENE = Vapour(
    cas="108-88-3", molar_mass_kg_mol=0.09214, saturation_central_kg_m3=0.11, saturation_high_kg_m3=0.12,
    lower_limit=0.01,
)  # fmt: skip


def band(value: float, kind: str = "flow", spread: float = 0.1) -> Band:
    low, high = value * (1 - spread), value * (1 + spread)
    return Band(low=low, central=value, high=high, kind=kind, source="test", mark="own")


def setup(**changed: Any) -> AirSetup:
    usual: dict[str, Any] = {
        "basin_m3": 0.25, "room_m3": 8.75, "home_m3": band(300.0), "fan": "fan", "fan_flow": band(150 * CFM),
        "inlet": "room", "target": "basin", "basin_exchange": band(0.4 / 60), "room_exchange": band(0.0015),
        "passages": band(8e-4), "home_air_changes": band(0.4 / 3600), "transfer": band(3.63 / 3600),
        "slow_share": band(0.15), "slow_rate": band(0.06 / 3600), "temperature_k": 294.15,
    }  # fmt: skip
    return AirSetup(**{**usual, **changed})


def step(name: str, act: str, starts: float, ends: float) -> Step:
    work = band((ends - starts) * 60, "time")
    return Step(id=name, phase="coat", act=act, work_s=work, starts=BEGIN + starts * MINUTE, ends=BEGIN + ends * MINUTE)


STEPS = (step("wash", "wash_detergent", -600, -560), step("mix", "mix_batch", -15, 0), step("coat-1", "coat", 0, 20))
LAID = Release(
    id="coat-1-toluene", step="coat-1", substance="toluene", cas="108-88-3", surface_m2=2.5, mass_kg=band(0.1, "mass"),
    form="film", activity_coefficient=1.0, source="test", mark="own",
)  # fmt: skip


def aired(made: AirSetup | None = None) -> Aired:
    return breathe(STEPS, (LAID,), made or setup(), (TOLUENE,), "US", BOOK)


def test_the_air_begins_with_the_first_release_and_is_followed_for_a_month() -> None:
    plan = aired().plan
    assert plan.intervals[0].starts == BEGIN
    assert plan.horizon == BEGIN + timedelta(days=30)
    (emission,) = plan.emissions
    assert (emission.starts, emission.ends) == (BEGIN, BEGIN + 20 * MINUTE)
    assert (emission.zone, emission.mass_kg) == ("basin", LAID.mass_kg)


def test_the_fan_runs_on_for_an_hour_at_least_and_nobody_is_back_before() -> None:
    got = aired()
    assert got.fan_off is not None
    assert got.plan.back_at is not None
    assert got.fan_off >= BEGIN + 80 * MINUTE
    assert got.plan.back_at >= BEGIN + 20 * MINUTE
    assert got.plan.back_at.minute % 5 == got.plan.back_at.second == 0
    on, off = got.plan.intervals
    assert (on.setup, on.ends, off.setup) == ("fan-on", got.fan_off, "fan-off")
    fan = next(flow.flow_m3_s for flow in on.flows if (flow.source, flow.target) == ("room", "outdoors"))
    assert fan == pytest.approx(150 * CFM)
    assert not [flow for flow in off.flows if (flow.source, flow.target) == ("room", "outdoors")]


def test_without_a_fan_there_is_one_set_up_and_a_later_return() -> None:
    still = aired(setup(fan=None, fan_flow=None))
    assert still.fan_off is None
    assert [interval.setup for interval in still.plan.intervals] == ["no-fan"]
    assert still.plan.back_at is not None
    assert still.plan.back_at > (aired().plan.back_at or BEGIN)
    assert still.plan.away_from == BEGIN
    assert still.plan.away_until is not None


def test_a_step_that_is_over_before_the_vapour_is_no_exposure() -> None:
    early = breathe((*STEPS, step("far", "wet_sand", -900, -800)), (LAID,), setup(), (TOLUENE,), None, BOOK)
    assert [e.outside for e in early.exposures] == [
        e.outside for e in breathe(STEPS, (LAID,), setup(), (TOLUENE,), None, BOOK).exposures
    ]


def test_the_courses_are_thinned_and_keep_their_shape() -> None:
    got = aired()
    room = next(course for course in got.courses if course.of == "room")
    assert {course.of for course in got.courses} == {"basin", "room", "home"}
    assert all(a < b for a, b in itertools.pairwise(room.t_s))
    assert all(u >= c >= 0 for c, u in zip(room.central, room.upper, strict=True))
    off_s = (got.fan_off - BEGIN).total_seconds() if got.fan_off else None
    whole = air.run(setup(), (TOLUENE,), ((LAID, 0.0, 1200.0),), (), 30 * 86400.0)
    whole = whole if off_s is None else air.fan_stopped(whole, int(np.searchsorted(whole.edges_s, off_s)))
    shares = whole.ends[air.CASES.index("central"), 0, 1] / 3e-6  # the stricter public value of toluene, 3 mg/m3
    from_first_step = whole.edges_s[1:] + 600 * 60
    assert len(room.t_s) < 0.8 * shares.size
    again = np.interp(from_first_step, room.t_s, room.central)
    assert np.abs(again - shares).max() <= 0.05 * shares.max()


def mask(times: float, **told: Any) -> Measure:
    usual: dict[str, Any] = {"id": f"mask-{times:g}", "act": "wear_mask", "who": "painter", "feasible": "have"}
    return Measure(**{**usual, "what": "half_mask_vapour", "factor": times, **told})


def by(entries: tuple[Exposure, ...]) -> dict[tuple[str, str], Exposure]:
    return {(e.who, e.measure): e for e in entries if e.substance != "mixture"}


def test_a_mask_divides_what_the_painter_breathes_and_nothing_else() -> None:
    bare = aired().exposures
    masked = with_measures(bare, (mask(10.0), mask(50.0, feasible="no"), mask(5.0)))
    assert len(masked) == len(bare)
    for key, entry in by(masked).items():
        before = by(bare)[key]
        assert entry.outside == before.outside
        if key[0] != "painter" or key[1] == "peak":  # immediately dangerous air is dangerous through any cartridge
            assert entry == before
            continue
        assert entry.inside.high == pytest.approx(before.outside.high / 10)
        assert entry.share_upper == pytest.approx(before.share_upper / 10)
        assert entry.protection == "half_mask_vapour"


@pytest.mark.parametrize("measure", [mask(10.0, feasible="no"), mask(10.0, factor=None), mask(10.0, act="leave_home")])
def test_what_is_no_mask_at_hand_changes_nothing(measure: Measure) -> None:
    bare = aired().exposures
    assert with_measures(bare, (measure,)) == bare


def test_examples_name_the_firm_only_where_a_firm_can_lift_the_stops() -> None:
    from bathwright.domain.plan import Options
    from bathwright.door.survey import read_survey
    from bathwright.planning import make_plan

    folder = Path(__file__).parents[2] / "examples" / "surveys"
    survey = read_survey(folder / "demo.toml")
    made = make_plan(survey, BOOK.sheets, BOOK, BEGIN - timedelta(days=5), Options(systems=("solvent-epoxy",)))
    assert (made.verdict, made.who) == ("no", "neither")  # a firm lifts no share that explodes
    cracked = dataclasses.replace(
        survey.fixtures[0],
        observations=tuple(
            dataclasses.replace(seen, result="structural") if seen.what == "crack" else seen
            for seen in survey.fixtures[0].observations
        ),
    )
    broken = make_plan(
        dataclasses.replace(survey, fixtures=(cracked,)), BOOK.sheets, BOOK, BEGIN - timedelta(days=5), Options()
    )
    assert (broken.verdict, broken.who) == ("no", "neither")
    assert "replacement" in {entry.kind for entry in broken.alternatives}
