"""The steps in the order of the trade, whatever was told of the bath: what must come before what, what never comes."""

import dataclasses
import math
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from made_sheets import HOUR, allowed, amount, part, ratio, sheet, span, told

from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Step
from bathwright.domain.survey import Fixture, Observation, Survey, Wish
from bathwright.door.survey import read_survey
from bathwright.knowledge import load
from bathwright.procedure.areas import areas
from bathwright.procedure.job import Job, choose_method, make_job
from bathwright.procedure.releases import releases
from bathwright.procedure.steps import Procedure, procedure

BOOK = load()
DEMO = read_survey(Path(__file__).parents[2] / "examples" / "surveys" / "demo.toml")
SHEETS = {each.id: each for each in BOOK.sheets}
WATERBORNE, SOLVENT = SHEETS["waterborne-epoxy"], SHEETS["solvent-epoxy"]
WET = ("wash_detergent", "rinse", "flush_and_check", "treat_mould", "descale", "wet_sand")


def seen(fixture: Fixture, **results: str | None) -> Fixture:
    kept = tuple(o for o in fixture.observations if o.what not in results)
    more = tuple(Observation(what=what, result=result) for what, result in results.items() if result)
    return dataclasses.replace(fixture, observations=(*kept, *more))


def job(coating: Sheet = WATERBORNE, fixture: Fixture = DEMO.fixtures[0], survey: Survey = DEMO, *more: Sheet) -> Job:
    parts, _ = areas(fixture, "US", BOOK)
    return make_job(survey, fixture, coating, parts, (coating, *more, *BOOK.sheets), BOOK)


def made(one: Job, after_s: float | None = None, cold: float = 291.15, warm: float = 294.15) -> Procedure:
    return procedure(one, cold, warm, after_s)


def ids(found: Procedure) -> list[str]:
    return [step.id for step in found.steps]


def wishing(**uses: str) -> Survey:
    return dataclasses.replace(DEMO, wishes=tuple(Wish(sheet=name, use=use) for use, name in uses.items()))  # type: ignore[arg-type]


MATERIALS = st.sampled_from(["enamelled_cast_iron", "enamelled_steel", "acrylic", "glass_fibre", "ceramic_tile", None])
RESULTS = {
    "drip": [None, "none", "drips"], "earlier_coat": [None, "none", "sound", "failing"],
    "cut_and_tape": [None, "holds", "lifts"], "chips": [None, "none", "few", "many"],
    "limescale": [None, "none", "some", "heavy"], "mould": [None, "none", "some"],
}  # fmt: skip


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Job, float | None]:
    fixture = dataclasses.replace(
        DEMO.fixtures[0], material=draw(MATERIALS), kind=draw(st.sampled_from(["bath", "basin"]))
    )
    fixture = dataclasses.replace(fixture, sizes=dataclasses.replace(fixture.sizes, length=draw(st.floats(0.9, 1.2))))
    fixture = seen(fixture, **{what: draw(st.sampled_from(results)) for what, results in RESULTS.items()})
    uses = {"strip": "strong-stripper", "mould": "household-bleach", "descale": "citric-descaler"}
    wished = {use: name for use, name in uses.items() if draw(st.booleans())}
    after = draw(st.sampled_from([None, 0.0, 86400.0]))
    return job(draw(st.sampled_from([WATERBORNE, SOLVENT])), fixture, wishing(**wished)), after


def place(found: Procedure, act: str) -> list[int]:
    return [n for n, step in enumerate(found.steps) if step.act == act]


@given(jobs())
def test_the_order_of_the_trade(case: tuple[Job, float | None]) -> None:
    one, after_s = case
    found = made(one, after_s)
    coats, wet = place(found, "coat"), [n for act in WET for n in place(found, act)]
    first = {act: place(found, act)[0] for act in ("cut_caulk", "set_up_air", "wash_detergent", "wet_sand", "dry_bath")}
    assert first["set_up_air"] < first["cut_caulk"] < first["wash_detergent"] < first["wet_sand"] < first["dry_bath"]
    assert place(found, "remove_fittings")[0] < first["wash_detergent"]
    # nothing wet between the drying of the bath and the last coat
    assert max(wet) < first["dry_bath"] < place(found, "mask_room")[0] < coats[0]
    wipes = place(found, "solvent_wipe") + place(found, "tack_wipe")
    assert len(wipes) == 1
    assert place(found, "mask_room")[0] < wipes[0] < coats[0]
    for act in ("unmask", "refit_fittings", "seal"):
        assert place(found, act)[0] > coats[-1]
    assert place(found, "unmask")[0] < place(found, "refit_fittings")[0] < place(found, "seal")[0]
    assert found.steps[-1].act == "inspect"
    # what is sanded is rinsed before it dries, and so is filler sanded before
    assert any(first["wet_sand"] < n < first["dry_bath"] for n in place(found, "rinse"))
    assert all(first["wet_sand"] < n < first["dry_bath"] for n in place(found, "fill_chips"))


@given(jobs())
def test_after_every_strong_cleaner_comes_a_flush_before_anything_else(case: tuple[Job, float | None]) -> None:
    one, after_s = case
    found = made(one, after_s)
    for step, following in zip(found.steps, found.steps[1:], strict=False):
        if step.act in ("descale", "treat_mould"):
            assert following.act == "flush_and_check"
            assert following.leaves is not None
            assert following.leaves.rinses >= 3
            assert following.leaves.ph_checked
    flushed = "flush-old-products" in ids(found)
    assert flushed == (after_s is not None)
    if flushed:
        assert ids(found).index("flush-old-products") < ids(found).index("wash")


@given(jobs())
def test_no_etching_no_stripper_and_never_bleach_with_acid(case: tuple[Job, float | None]) -> None:
    one, after_s = case
    found = made(one, after_s)
    used = [(chemistry, step) for step in found.steps for product in step.uses for chemistry in product.chemistry]
    chemistries = {chemistry for chemistry, _ in used}
    assert not [step for step in found.steps if "etch" in step.act or "strip_chem" in step.act]
    assert not chemistries & {"dichloromethane", "fluoride-acid", "hydrochloric-acid", "caustic"}
    assert not ({"bleach", "chlorinated-abrasive"} & chemistries and "descaler" in chemistries)
    wished = {wish.use: wish.sheet for wish in one.survey.wishes}
    if "strip" in wished:
        assert wished["strip"] in one.beside.dropped
    if "mould" in wished:
        assert (SHEETS[wished["mould"]].id in one.beside.dropped) == (one.beside.descaler is not None)
        assert (one.beside.bleach is None) == (one.beside.descaler is not None)


@given(jobs())
def test_every_demand_hangs_on_an_earlier_step_and_has_its_own_id(case: tuple[Job, float | None]) -> None:
    one, after_s = case
    found = made(one, after_s)
    names = ids(found)
    demands = [(step, demand) for step in found.steps for demand in step.demands]
    assert len(set(names)) == len(names)
    assert len({demand.id for _, demand in demands}) == len(demands)
    for step, demand in demands:
        assert demand.step == step.id
        assert demand.because
        if demand.kind == "wait":
            assert demand.after in names[: names.index(step.id)]
        if demand.least_s is not None and demand.printed_least_s is not None:
            assert demand.least_s >= demand.printed_least_s
        if demand.most_s is not None and demand.printed_most_s is not None:
            assert demand.most_s <= demand.printed_most_s
    assert all(step.work_s.low <= step.work_s.central <= step.work_s.high for step in found.steps)
    assert all(step.work_s.central % 60 == 0 and step.work_s.central > 0 for step in found.steps)


@pytest.mark.parametrize("use", ["mould", "descale"])
def test_bleach_and_acid_wait_a_day_after_the_flush_of_what_nobody_remembers(use: str) -> None:
    name = {"mould": "household-bleach", "descale": "citric-descaler"}[use]
    fixture = seen(DEMO.fixtures[0], limescale="none")
    found = made(job(WATERBORNE, fixture, wishing(**{use: name})), 86400.0)
    act = {"mould": "treat_mould", "descale": "descale"}[use]
    (held,) = (demand for step in found.steps if step.act == act for demand in step.demands)
    assert (held.after, held.least_s) == ("flush-old-products", 86400.0)
    known = made(job(WATERBORNE, fixture, wishing(**{use: name})), None)
    assert not [demand for step in known.steps if step.act == act for demand in step.demands]


@pytest.mark.parametrize(
    ("what", "result", "step", "there"),
    [
        ("drip", "drips", "stop-drip", True), ("drip", "none", "stop-drip", False),
        ("earlier_coat", "failing", "scrape-old-coat", True), ("earlier_coat", "sound", "scrape-old-coat", False),
        ("cut_and_tape", "lifts", "scrape-old-coat", True), ("chips", "few", "fill-chips", True),
        ("chips", "none", "fill-chips", False), ("limescale", "heavy", "descale", True),
        ("limescale", "none", "descale", False),
    ],
)  # fmt: skip
def test_a_step_is_there_when_it_is_called_for(what: str, result: str, step: str, there: bool) -> None:
    assert (step in ids(made(job(fixture=seen(DEMO.fixtures[0], **{what: result}))))) == there


def test_the_gentlest_method_that_the_sheet_allows() -> None:
    words = [allowed("method", "spray"), allowed("method", "pour"), allowed("method", "brush")]
    assert choose_method(sheet(*words)) == "brush"
    assert choose_method(sheet(*words, allowed("method", "brush", False))) == "pour"
    assert choose_method(sheet(allowed("method", "spray"))) == "spray"
    assert choose_method(sheet()) == "roller"


def test_only_the_solvent_that_the_sheet_names_wipes_the_bath() -> None:
    wipe = next(each for each in BOOK.sheets if each.role == "solvent")
    named, silent, other = sheet(told("wipe_with", wipe.id)), sheet(), sheet(told("wipe_with", "something-else"))
    wanting = wishing(wipe=wipe.id)
    assert job(named).beside.wipe is wipe
    assert job(silent).beside.wipe is None
    assert job(silent, survey=wanting).beside.wipe is wipe
    assert job(other, survey=wanting).beside.wipe is None


def kit(life_min: float, **more: Any) -> Sheet:
    contents = {"1330-20-7": (0.2, 0.3)}
    return sheet(
        amount("pot_life", life_min * 60, 23), amount("coats", 2), amount("stir", 120.0), amount("induction", 600.0),
        span("recoat", 8 * HOUR, 48 * HOUR, 23), span("dry_film_per_coat", 4e-5, 6e-5), ratio("volume", 2, 1),
        parts=(part("A", 1200.0, 0.7, 0.5, contents), part("B", 1000.0, 0.6, 0.5, contents)), **more,
    )  # fmt: skip


@given(st.floats(20, 300), st.floats(285, 308), st.floats(0.9, 2.2))
def test_every_batch_is_used_up_inside_its_pot_life(life_min: float, warm: float, length: float) -> None:
    sizes = dataclasses.replace(DEMO.fixtures[0].sizes, length=length, floor_length=None)
    one = job(kit(life_min), dataclasses.replace(DEMO.fixtures[0], sizes=sizes))
    found = made(one, warm=warm)
    for mix in found.mixes:
        assert mix.pot_life_s <= mix.printed_pot_life_s == life_min * 60
    total = sum(mix.volume_m3 for mix in found.mixes)
    assert total == pytest.approx(2 * one.one_coat.central)
    for mix in found.mixes:
        assert sum(float(each.value) for each in mix.parts) == pytest.approx(mix.volume_m3)
        assert float(mix.parts[0].value) == pytest.approx(2 * float(mix.parts[1].value))
    whole = math.ceil(BOOK.band("coating_defaults.work_rate.coat_roller").high * one.area_m2 / 60) * 60
    room = found.mixes[0].pot_life_s - 600 - 300  # less the standing time and five minutes for the last roller
    if room >= math.ceil(whole / 12 / 60) * 60:
        assert len(found.mixes) == 2 * math.ceil(whole / room)
        assert all(mix.use_s <= mix.pot_life_s for mix in found.mixes)
    else:  # more than a dozen batches are not mixed: a rule tells that the pot life is too short
        assert any(mix.use_s > mix.pot_life_s - 300 for mix in found.mixes)
    pairs = [(a.act, b.act) for a, b in zip(found.steps, found.steps[1:], strict=False) if b.act == "coat"]
    assert pairs == [("mix_batch", "coat")] * len(found.mixes)


def test_the_second_coat_keeps_the_sheets_window_and_the_windows_of_the_air() -> None:
    found = made(job(WATERBORNE))
    second = next(step for step in found.steps if step.id == "coat-2")
    recoat = next(d for d in second.demands if d.id == "coat-2-recoat")
    assert recoat.after == "coat-1"
    assert recoat.least_s is not None
    assert recoat.most_s is not None
    assert {d.reads for d in second.demands if d.kind == "window"} == {
        "air_temperature", "surface_temperature", "humidity", "spread",
    }  # fmt: skip
    first = next(step for step in made(job(sheet())).steps if step.id == "coat-1")
    (spread,) = (demand for demand in first.demands if demand.kind == "window")
    assert (spread.reads, spread.low) == ("spread", BOOK.number("coating_defaults.climate.dew_point_spread_iso").value)


def masses(one: Job, steps: tuple[Step, ...], act: str) -> dict[str, float]:
    acts = {step.id: step.act for step in steps}
    out: dict[str, float] = {}
    for each in releases(one, steps):
        if acts[each.step] == act:
            out[each.cas] = out.get(each.cas, 0.0) + each.mass_kg.central
    return out


@pytest.mark.parametrize("life_min", [45.0, 400.0])
def test_the_coats_let_out_all_volatiles_of_what_is_laid_on(life_min: float) -> None:
    one = job(kit(life_min))
    found = made(one)
    laid = one.one_coat.central * 2
    assert sum(masses(one, found.steps, "coat").values()) == pytest.approx(laid * one.volatile.used_kg)
    bands = [each.mass_kg for each in releases(one, found.steps)]
    assert all(0 < band.low <= band.central <= band.high for band in bands)


def test_a_water_borne_coat_lets_water_out_and_its_solvents_leave_more_easily() -> None:
    one = job(WATERBORNE)
    found = made(one)
    let_out = releases(one, found.steps)
    water = [each for each in let_out if each.cas == "7732-18-5"]
    others = [each for each in let_out if each.cas != "7732-18-5"]
    assert len(water) == 2
    assert {each.activity_coefficient for each in water} == {1.0}
    assert {each.activity_coefficient for each in others} == {BOOK.number("air.film.waterborne_activity").value}
    solvent_borne = job(SOLVENT)
    assert {each.activity_coefficient for each in releases(solvent_borne, made(solvent_borne).steps)} == {1.0}


def test_a_solvent_wipe_lets_out_what_is_on_the_rag() -> None:
    one = job(SOLVENT)
    found = made(one)
    (used,) = (product.volume_m3 for step in found.steps if step.act == "solvent_wipe" for product in step.uses)
    wipe = one.beside.wipe
    assert wipe is not None
    assert used is not None
    let_out = masses(one, found.steps, "solvent_wipe")
    assert (
        0.5 * used * (wipe.parts[0].density or 0) < sum(let_out.values()) <= used * (wipe.parts[0].density or 0) * 1.001
    )
