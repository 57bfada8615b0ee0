"""What holds for all rules together: pages, sources, the quiet home, merging, one voice on facts that were not told."""

import ast
import re
from datetime import timedelta
from pathlib import Path

import pytest
from rule_cases import HERE, START, facts_of
from test_cases import FIRE, TABLES

from bathwright import rules, sources
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.rules.merging import merged
from bathwright.rules.pages import SECTIONS, sections

ROOT = Path(rules.__file__).parent
PAGES = HERE.parent.parent / "docs" / "rules"
CODES = list(rules.BY_CODE)


def test_codes_are_unique_and_name_their_files() -> None:
    assert len(CODES) == len(rules.RULES)
    for code, rule in rules.BY_CODE.items():
        assert Path(str(rule.__file__)).stem == code.replace("-", "_")  # type: ignore[attr-defined]


def test_every_code_has_one_line_and_an_unknown_code_has_no_page() -> None:
    assert [code for code, _ in rules.codes()] == CODES
    assert all(line.endswith(".") for _, line in rules.codes())
    assert rules.page("no-such-rule") is None


def test_every_rule_file_is_registered() -> None:
    files = {path.stem for path in ROOT.glob("*/*.py") if path.stem != "__init__"}
    assert files == {code.replace("-", "_") for code in CODES}


def test_rules_never_import_each_other() -> None:
    for path in ROOT.glob("*/*.py"):
        names = [n.module or "" for n in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(n, ast.ImportFrom)]
        assert not [name for name in names if name.count(".") > 2 and name.startswith("bathwright.rules.")], path


@pytest.mark.parametrize("code", CODES)
def test_page_has_its_sections_and_examples_that_are_cases(code: str) -> None:
    parts = sections(rules.BY_CODE[code].__doc__ or "")
    assert all(parts[title] for title in SECTIONS)
    names = {case["name"] for key in ("must_fire", "must_not_fire") for case in TABLES[code].get(key, [])}
    names |= {case.get("name", "") for case in TABLES[code].get("unknown", [])}
    for title in ("Fires", "Stays silent"):
        quoted = re.findall(r'"([^"]+)"', parts[title])
        assert quoted and set(quoted) <= names, (title, set(quoted) - names)


@pytest.mark.parametrize("code", CODES)
def test_page_in_docs_is_current(code: str) -> None:
    assert (PAGES / f"{code}.md").read_text(encoding="utf-8") == rules.page(code), (
        "run python -m bathwright.rules docs/rules"
    )


def test_no_page_without_a_rule() -> None:
    assert {path.stem for path in PAGES.glob("*.md")} == set(CODES)


@pytest.mark.parametrize("code", CODES)
def test_sources_resolve(code: str) -> None:
    assert rules.BY_CODE[code].SOURCES
    assert set(rules.BY_CODE[code].SOURCES) <= set(sources.load())


def test_the_quiet_home_hears_only_of_the_fan_and_the_gloves_at_hand() -> None:
    said = rules.run_all(facts_of({}))
    assert not [e for e in said if isinstance(e, Question)]
    beyond_notes = {e.code for e in said if isinstance(e, Finding) and (e.effect != "tells" or e.consequence != "note")}
    assert beyond_notes == {"fan-kept-on", "skin-and-eyes"}
    assert all(e.when == "during" and e.feasible == "have" for e in said if isinstance(e, Measure))


def test_the_quiet_home_with_nothing_that_evaporates_hears_less() -> None:
    said = rules.run_all(facts_of({"air": {"emits": ["7732-18-5"]}, "exposures": []}))
    assert {e.code for e in said if isinstance(e, Finding)} == {"skin-and-eyes"}


@pytest.mark.parametrize(("code", "case"), FIRE, ids=[f"{code}: {case['name']}" for code, case in FIRE])
def test_all_rules_together_on_every_case(code: str, case: dict[str, object]) -> None:
    """Measures that findings rely on are there, once each; every finding is cited; the order is the registry's."""
    said = rules.run_all(facts_of(case))
    measures = [e.id for e in said if isinstance(e, Measure)]
    assert len(measures) == len(set(measures))
    asked = [(e.asks, e.about) for e in said if isinstance(e, Question)]
    assert len(asked) == len(set(asked))
    found = [e for e in said if isinstance(e, Finding)]
    for finding in found:
        assert set(finding.measures) <= set(measures)
        assert finding.sources and len(finding.marks) == len(finding.sources)
        assert finding.strength != "law" or finding.bound
        assert finding.effect != "must_do" or finding.measures
    assert [CODES.index(f.code) for f in found] == sorted(CODES.index(f.code) for f in found)


def test_no_law_outside_the_places_that_were_looked_at() -> None:
    for code, case in FIRE:
        away = {**case, "set": {**case.get("set", {}), "place.country": "AU"}}
        said = rules.run_all(facts_of(away))
        assert not [e for e in said if isinstance(e, Finding) and e.strength == "law"], (code, case["name"])


def test_no_trait_of_a_person_in_any_value() -> None:
    words = {"pregnant", "asthma", "sensitised", "heart", "bird", "infant", "child_under_6"}
    for _, case in FIRE:
        for entry in rules.run_all(facts_of(case)):
            values = () if isinstance(entry, Question) else entry.values
            assert not words & {str(v.value) for v in values} and not words & set(getattr(entry, "about", ()))


def test_the_same_measure_is_the_outer_of_all() -> None:
    one = Measure(
        id="m", act="leave_home", who="others", starts=START, ends=START + timedelta(hours=4), feasible="have"
    )
    two = Measure(
        id="m", act="leave_home", who="others", starts=START - timedelta(hours=1), ends=START + timedelta(hours=2),
        feasible="ask", when="before_start", done=True, factor=10.0,
    )  # fmt: skip
    (both,) = merged([one, two])
    assert isinstance(both, Measure)
    assert (both.starts, both.ends) == (START - timedelta(hours=1), START + timedelta(hours=4))
    assert (both.feasible, both.when, both.done, both.factor) == ("ask", "before_start", False, 10.0)


def test_the_mask_is_worn_from_the_first_vapour_on() -> None:
    exposure = {"who": "painter", "substance": "107-98-2", "measure": "mean_8h", "times": 3.0}
    said = rules.run_all(facts_of({"exposures": [exposure]}))
    (mask,) = [e for e in said if isinstance(e, Measure) and e.act == "wear_mask"]
    assert (mask.starts, mask.ends) == (START + timedelta(hours=5), START + timedelta(hours=7))
    assert mask.effect_on == ("coat-1", "coat-2")


def test_the_hours_of_the_mask_stay_when_the_maker_asks_for_it_too() -> None:
    exposure = {"who": "painter", "substance": "107-98-2", "measure": "mean_8h", "times": 3.0}
    said = rules.run_all(facts_of({"exposures": [exposure], "sheet": {"respirator": ["half_mask_vapour"]}}))
    (mask,) = [e for e in said if isinstance(e, Measure) and e.act == "wear_mask"]
    assert (mask.starts, mask.ends) == (START + timedelta(hours=5), START + timedelta(hours=7))


def test_others_stay_out_from_the_first_dust_sheet_to_the_end_of_the_clean_up() -> None:
    steps = [
        {"id": "wash", "phase": "clean", "act": "wash_detergent"},
        {"id": "sheets", "phase": "ready_room", "act": "contain_dust"},
        {"id": "sand", "phase": "profile", "act": "wet_sand"},
        {"id": "clean-up", "phase": "profile", "act": "clean_up_dust"},
        {"id": "dry", "phase": "dry", "act": "dry_bath"},
    ]
    child = {"id": "c", "age_band": "child_under_6", "traits": [], "can_leave": True}
    told = {"building.year": 1950, "fixture.year": 1950, "people": [child]}
    said = rules.run_all(facts_of({"steps": steps, "set": told}))
    (out,) = [e for e in said if isinstance(e, Measure) and e.id == "stay-out-of-room-dust"]
    assert (out.starts, out.ends) == (START + timedelta(hours=1), START + timedelta(hours=4))


def test_an_unknown_end_stays_unknown() -> None:
    one = Measure(id="m", act="leave_home", who="others", starts=START, ends=START, feasible="have")
    two = Measure(id="m", act="leave_home", who="others", starts=START, ends=None, feasible="have")
    (both,) = merged([one, two])
    assert isinstance(both, Measure) and both.ends is None


def test_the_question_that_blocks_wins() -> None:
    note = Question(asks="people", why="a", worse_answer="worst", blocks=False)
    stop = Question(asks="people", why="b", worse_answer="cannot_leave", blocks=True)
    assert merged([note, stop]) == (stop,)
    assert merged([stop, note]) == (stop,)
