"""The invented sheets and surveys: they load, say that they are invented, and their numbers agree with each other."""

import math
from collections.abc import Iterable
from pathlib import Path

import pytest

from bathwright.domain import views
from bathwright.domain.sheet import FACT_KINDS, Amount, Fact, Range, Sheet
from bathwright.domain.survey import Survey
from bathwright.door.sheet import read_sheet
from bathwright.door.survey import read_survey

ROOT = Path(__file__).parents[2]
SURVEYS = {path.stem: path for path in sorted((ROOT / "examples" / "surveys").glob("*.toml"))}
SHEETS = {p.stem: p for p in sorted((ROOT / "src" / "bathwright" / "knowledge" / "sheets").glob("*.toml"))}
COATINGS = ["solvent-epoxy", "waterborne-epoxy"]
WATER = "7732-18-5"
# density of liquids in kg/m3 at 20 to 25 °C (handbook values, from memory: good enough for the 15 % below)
LIQUIDS = {
    WATER: 998.0, "78-93-3": 805.0, "1330-20-7": 864.0, "100-41-4": 867.0, "108-88-3": 867.0, "107-98-2": 922.0,
    "67-63-0": 785.0,
}  # fmt: skip
NEEDED = {
    "surface", "method", "mix_ratio", "stir", "induction", "pot_life", "coats", "dry_film_per_coat",
    "wet_film_per_coat", "recoat", "touch", "handle", "unmask", "seal_after", "first_water", "full_bath", "care",
    "hard", "air_temperature", "surface_temperature", "humidity", "dew_point_spread", "hold_temperature_for",
    "dry_before", "voc", "pack_volume", "pack_reach", "abrasive", "wipe_with", "respirator", "ventilation", "gloves",
}  # fmt: skip
LAST_COAT = ("touch", "handle", "unmask", "seal_after", "first_water", "full_bath", "care", "hard")


def sheet(name: str) -> Sheet:
    return read_sheet(SHEETS[name])


def test_all_are_there() -> None:
    assert set(SHEETS) == {
        "bleach", "cleaner", "descaler", "filler", "sealant", "solvent-epoxy", "stripper-dcm", "waterborne-epoxy",
        "wipe",
    }  # fmt: skip
    assert set(SURVEYS) == {
        "demo", "easy-go", "lead-and-children", "mixed-chemistry", "pilot-flame", "stripper",
    }  # fmt: skip
    ids = [sheet(name).id for name in SHEETS]
    assert len(set(ids)) == len(ids)


@pytest.mark.parametrize("name", list(SHEETS))
def test_a_sheet_says_that_it_is_invented_and_where_each_fact_stands(name: str) -> None:
    made = sheet(name)
    assert made.invented
    assert made.note
    assert made.note.startswith("Invented")
    assert made.product.startswith("Example ")
    assert all("invented" in paper.revision for paper in made.papers)
    for fact in made.facts:
        assert fact.paper and fact.place and fact.words, fact.id


@pytest.mark.parametrize("name", list(SURVEYS))
def test_a_survey_says_that_it_is_invented(name: str) -> None:
    survey = read_survey(SURVEYS[name])
    assert survey.invented
    assert survey.note
    assert survey.note.startswith("Invented")
    assert all(seen.told and seen.told.words for seen in survey.fixtures[0].observations)


def test_wishes_name_sheets_that_exist() -> None:
    known = {sheet(name).id for name in SHEETS}
    wished = [wish.sheet for path in SURVEYS.values() for wish in read_survey(path).wishes]
    assert wished
    assert set(wished) <= known
    named = [word for name in COATINGS for word in _words(sheet(name), "wipe_with")]
    assert set(named) - {"tack_cloth"} <= known


def _words(made: Sheet, kind: str) -> Iterable[str]:
    found = views.instruction(made, kind)
    return found[0].values if found else ()


@pytest.mark.parametrize("name", COATINGS)
def test_a_coating_says_all_that_a_plan_needs(name: str) -> None:
    made = sheet(name)
    told = {fact.kind for fact in made.facts}
    assert told >= NEEDED | ({"flash_point"} if name == "solvent-epoxy" else set())
    surfaces = {fact.value.code for fact in made.facts if fact.kind == "surface"}  # type: ignore[union-attr]
    assert len(surfaces) == 11
    assert all(views.choice(made, "surface", code) is False for code in ("zinc_coated_steel", "liner"))


@pytest.mark.parametrize("name", COATINGS)
def test_times_run_from_the_right_moment(name: str) -> None:
    starts = {fact.kind: fact.starts_from for fact in sheet(name).facts if _is_time(fact)}
    assert all(starts[kind] == "last_coat" for kind in (*LAST_COAT, "hold_temperature_for"))
    assert starts["pot_life"] == starts["induction"] == "mixed"
    assert starts["recoat"] == "coat_applied"
    recoats = [fact for fact in sheet(name).facts if fact.kind == "recoat"]
    assert all(fact.on_miss == "abrade_and_wipe" for fact in recoats)
    sealant = [fact for fact in sheet("sealant").facts if fact.kind in ("handle", "first_water", "full_bath")]
    assert {fact.starts_from for fact in sealant} == {"caulked"}


def _is_time(fact: Fact) -> bool:
    return FACT_KINDS[fact.kind][1] == "time"


@pytest.mark.parametrize("name", COATINGS)
def test_clocks_come_in_the_order_of_the_trade(name: str) -> None:
    made = sheet(name)
    for at_k in (None, 294.3, 296.15):
        ends = []
        for kind in ("touch", "handle", "first_water", "full_bath", "care", "hard"):
            found = views.strictest(made, kind, temperature_k=at_k)
            assert found is not None
            ends.append(found.value)
        assert ends == sorted(ends)


@pytest.mark.parametrize("name", [*COATINGS, "filler"])
def test_colder_rows_are_longer_as_an_epoxy_would_have_it(name: str) -> None:
    """Activation energies of epoxy and amine lie at about 44 to 70 kJ/mol: a table outside would be a wrong paper."""
    made = sheet(name)
    tables = {kind: views.table(made, kind) for kind in FACT_KINDS if len(views.table(made, kind)) > 1}
    assert {"recoat", "pot_life"} <= set(tables)
    assert name == "filler" or "full_bath" in tables
    for kind, ((cold_k, slow), (warm_k, fast)) in tables.items():
        factor = slow / fast
        assert 44e3 < 8.314 * math.log(factor) / (1 / cold_k - 1 / warm_k) < 70e3, kind


def _volume_shares(made: Sheet) -> list[float]:
    ratio = views.ratio(made)
    assert ratio is not None
    assert ratio.by == "volume"
    return [number / sum(ratio.numbers) for number in ratio.numbers]


def _mixed(made: Sheet, values: list[float]) -> float:
    return sum(share * value for share, value in zip(_volume_shares(made), values, strict=True))


def _amount(made: Sheet, kind: str) -> float:
    value = next(fact.value for fact in made.facts if fact.kind == kind)
    assert isinstance(value, Amount)
    return value.value


def _range(made: Sheet, kind: str) -> tuple[float, float]:
    value = next(fact.value for fact in made.facts if fact.kind == kind)
    assert isinstance(value, Range)
    assert value.low is not None
    assert value.high is not None
    return value.low, value.high


@pytest.mark.parametrize("name", COATINGS)
def test_solvents_voc_and_solids_agree_within_15_percent(name: str) -> None:
    made = sheet(name)
    organic = []
    for part in made.parts:
        assert part.density is not None
        assert part.solids_by_weight is not None
        assert part.solids_by_volume is not None
        liquids = {c.cas: (c.low + c.high) / 2 for c in part.composition or () if c.cas in LIQUIDS}
        assert sum(liquids.values()) == pytest.approx(1 - part.solids_by_weight, rel=0.03)
        volume = sum(part.density * share / LIQUIDS[cas] for cas, share in liquids.items())
        assert 1 - volume == pytest.approx(part.solids_by_volume, rel=0.03)
        organic.append(part.density * sum(share for cas, share in liquids.items() if cas != WATER))
    low, high = (400.0, 420.0) if name == "solvent-epoxy" else (40.0, 70.0)
    assert low <= _amount(made, "voc") <= high
    assert _mixed(made, organic) == pytest.approx(_amount(made, "voc"), rel=0.03)


@pytest.mark.parametrize("name", COATINGS)
def test_film_reach_solids_and_pack_agree(name: str) -> None:
    made = sheet(name)
    solids = _mixed(made, [part.solids_by_volume or 0.0 for part in made.parts])
    dry, wet = _range(made, "dry_film_per_coat"), _range(made, "wet_film_per_coat")
    assert wet[0] * solids == pytest.approx(dry[0], rel=0.03)
    assert wet[1] * solids == pytest.approx(dry[1], rel=0.03)
    solid = _amount(made, "pack_volume") * solids
    reach = _amount(made, "pack_reach")
    assert reach * dry[1] <= solid  # even the thickest coat reaches so far
    assert reach * dry[0] >= 0.5 * solid  # and the paper does not hide half of the tin


def _survey(name: str) -> Survey:
    return read_survey(SURVEYS[name])


def test_each_survey_holds_what_it_is_for() -> None:
    flame = next(entry for entry in _survey("pilot-flame").appliances or () if entry.ignition == "flame")
    assert flame.connected_to_bathroom
    assert flame.can_be_off is None
    lead = _survey("lead-and-children")
    assert lead.work.paid
    assert lead.building.tenure == "landlord"
    assert any(person.age_band == "child_under_6" for person in lead.people or ())
    assert any("pregnant" in (person.traits or ()) for person in lead.people or ())
    mixed = _survey("mixed-chemistry")
    assert {wish.sheet for wish in mixed.wishes} == {"household-bleach", "citric-descaler"}
    used = mixed.fixtures[0].used_lately
    assert used
    assert used[0].chemistry == "unknown-cleaner"
    assert [wish.sheet for wish in _survey("stripper").wishes] == ["strong-stripper"]


def test_the_demo_leaves_facts_untold() -> None:
    demo = _survey("demo")
    seen = {entry.what for entry in demo.fixtures[0].observations}
    assert "drip" not in seen
    assert not any(what.startswith("lead") for what in seen)
    assert demo.household.other_wc is None
    assert demo.fixtures[0].material is None
    assert demo.fixtures[0].used_lately is None
