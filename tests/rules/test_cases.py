"""Every rule against its table of cases: what must fire, what must not, both sides of each limit, what is not told."""

import copy
import re
from pathlib import Path
from typing import Any

import pytest
from rule_cases import HERE, NOT_TOLD, Case, amount, facts_of

from bathwright import rules
from bathwright.domain.findings import Finding, Measure, Question, Said
from bathwright.rules.facts import Facts

FILES = {path.stem: path for path in sorted(HERE.glob("*.toml")) if path.stem != "base"}
_NUDGE = {"temperature": 0.02, "temperature_step": 0.01, "year": 1.0, "whole": 1.0}


def _read(path: Path) -> Case:
    import tomllib

    return tomllib.loads(path.read_text(encoding="utf-8"))


TABLES = {code: _read(path) for code, path in FILES.items()}


def _named(table: Case, name: str) -> Case:
    found = [c for c in (*table.get("must_fire", []), *table.get("must_not_fire", [])) if c["name"] == name]
    assert found, f"no case {name!r}"
    return copy.deepcopy(found[0])


def _limit_cases(code: str, table: Case) -> list[tuple[str, str, Case, bool]]:
    """Just under, exactly at and just over each limit that the table declares."""
    out = []
    for limit in table.get("limit", []):
        kind, above = limit["kind"], limit["fires"] == "above"
        value = amount(limit["value"], kind) if kind not in ("year", "whole", "times") else float(limit["value"])
        nudge = _NUDGE.get(kind, abs(value) * 1e-3)
        for where, number in (("under", value - nudge), ("at", value), ("over", value + nudge)):
            case = _named(table, limit["like"])
            _set(case, limit["change"], int(number) if kind in ("year", "whole") else number)
            fires = {"under": not above, "at": limit["at_limit"] == "fires", "over": above}[where]
            out.append((code, f"{limit['name']}: {where}", case, fires))
    return out


def _set(case: Any, path: str, value: Any) -> None:
    """Set one place of a case: a dotted path; what follows "set." is a path of the survey."""
    if path.startswith("set."):
        case.setdefault("set", {})[path.removeprefix("set.")] = value
        return
    *parts, last = path.split(".")
    for part in parts:
        case = case[int(part)] if part.isdigit() else case.setdefault(part, {})
    case[int(last) if last.isdigit() else last] = value


LIMITS = [made for code, table in TABLES.items() for made in _limit_cases(code, table)]
FIRE = [(code, case) for code, table in TABLES.items() for case in table.get("must_fire", [])]
QUIET = [(code, case) for code, table in TABLES.items() for case in table.get("must_not_fire", [])]
UNKNOWN = [(code, case) for code, table in TABLES.items() for case in table.get("unknown", [])]


def _own(code: str, facts: Facts) -> tuple[Said, ...]:
    return rules.BY_CODE[code].check(facts)


def _findings(code: str, said: tuple[Said, ...]) -> list[Finding]:
    return [entry for entry in said if isinstance(entry, Finding) and entry.code == code]


@pytest.mark.parametrize(("code", "case"), FIRE, ids=[f"{code}: {case['name']}" for code, case in FIRE])
def test_must_fire(code: str, case: Case) -> None:
    said = _own(code, facts_of(case))
    expect = case["expect"]
    if "question" in expect:
        asked = [q for q in said if isinstance(q, Question) and q.asks == expect["question"]]
        assert asked, said
        assert expect.get("blocks") in (None, asked[0].blocks)
        return
    wanted = {k: v for k, v in expect.items() if k not in ("measures", "when", "feasible", "factor", "what")}
    fitting = [f for f in _findings(code, said) if all(getattr(f, k) == v for k, v in wanted.items())]
    assert fitting, said
    assert expect.get("measures", []) in [list(finding.measures) for finding in fitting], said
    measures = {entry.id: entry for entry in said if isinstance(entry, Measure)}
    assert {name for finding in fitting for name in finding.measures} <= set(measures)
    for field in ("when", "feasible", "factor", "what"):
        for name, value in expect.get(field, {}).items():
            assert getattr(measures[name], field) == value


@pytest.mark.parametrize(("code", "case"), QUIET, ids=[f"{code}: {case['name']}" for code, case in QUIET])
def test_must_not_fire(code: str, case: Case) -> None:
    said = _own(code, facts_of(case))
    without = case.get("without")
    if without:  # the rule may speak, but not so
        assert not [f for f in _findings(code, said) if all(getattr(f, k) == v for k, v in without.items())], said
        return
    assert not said, said


@pytest.mark.parametrize(("code", "name", "case", "fires"), LIMITS, ids=[f"{made[0]}: {made[1]}" for made in LIMITS])
def test_both_sides_of_a_limit(code: str, name: str, case: Case, fires: bool) -> None:
    expect = {k: v for k, v in case.get("expect", {}).items() if k in ("effect", "strength", "consequence")}
    found = [
        f for f in _findings(code, _own(code, facts_of(case))) if all(getattr(f, k) == v for k, v in expect.items())
    ]
    assert bool(found) is fires, found
    for finding in found:
        assert finding.margin is None or finding.margin <= 0


@pytest.mark.parametrize(
    ("code", "case"), UNKNOWN, ids=[f"{code}: {case['asks']} {case.get('name', '')}" for code, case in UNKNOWN]
)
def test_what_was_not_told_is_asked(code: str, case: Case) -> None:
    told = {key: value for key, value in case.items() if key not in ("forget", "asks", "blocks")}
    untold = copy.deepcopy(told)
    for path in case["forget"]:
        _set(untold, path, NOT_TOLD)
    said = _own(code, facts_of(untold))
    asked = [q for q in said if isinstance(q, Question) and q.asks == case["asks"]]
    assert asked, said
    assert asked[0].blocks is case["blocks"]
    assert asked[0].why == code
    assert asked[0].cheapest_test
    assert not [f for f in _findings(code, said) if f.effect == "stops" and not f.measures], "asked, not stopped"
    again = _own(code, facts_of(told))
    assert not [q for q in again if isinstance(q, Question) and q.asks == case["asks"]], "asked although told"


@pytest.mark.parametrize("code", list(rules.BY_CODE))
def test_every_rule_has_enough_cases(code: str) -> None:
    """Six on each side for a rule that can stop or kill, else three; limits and unknowns count on both sides."""
    table = TABLES[code]
    made = [fires for made_code, _, _, fires in LIMITS if made_code == code]
    asks = len(table.get("unknown", []))
    fire = len(table.get("must_fire", [])) + sum(made) + asks
    quiet = len(table.get("must_not_fire", [])) + len(made) - sum(made) + asks
    said = [_findings(code, _own(code, facts_of(case))) for case in table.get("must_fire", [])]
    grave = any(f.effect == "stops" or f.consequence == "kills" for found in said for f in found)
    grave = grave or any(case["blocks"] for case in table.get("unknown", []))
    wanted = 6 if grave else 3
    assert fire >= wanted and quiet >= wanted, (fire, quiet, wanted)
    names = [case["name"] for case in (*table.get("must_fire", []), *table.get("must_not_fire", []))]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("code", list(rules.BY_CODE))
def test_every_question_of_a_rule_has_its_unknown_case(code: str) -> None:
    text = Path(str(rules.BY_CODE[code].__file__)).read_text(encoding="utf-8")  # type: ignore[attr-defined]
    asks = set(re.findall(r'question\(\s*"([a-z_]+)"', text))
    declared = {case["asks"] for case in TABLES[code].get("unknown", [])}
    fired = {case["expect"].get("question") for case in TABLES[code].get("must_fire", [])}
    assert asks <= declared | fired


def test_every_table_belongs_to_a_rule() -> None:
    assert set(TABLES) == set(rules.BY_CODE)
