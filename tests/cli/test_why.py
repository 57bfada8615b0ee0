"""Why: every number of a plan has an answer, a limit has its own source, a damaged file is told in one line."""

import json
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from bathwright.app import ask
from bathwright.app.why import why
from bathwright.domain.plan import Options
from bathwright.door.faults import DoorError
from bathwright.door.writing import to_json
from bathwright.sources import citation

ROOT = Path(__file__).parent.parent.parent
SURVEYS = ROOT / "examples" / "surveys"
AT = datetime(2026, 12, 1, 15, tzinfo=UTC)


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("why") / "plan.json"
    path.write_text(to_json(ask.plan(SURVEYS / "demo.toml", None, AT, Options(), AT)), "utf-8")
    return path


@pytest.fixture(scope="module")
def plan(made: Path) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(made.read_text("utf-8"))
    return data


def single_values(node: Any, path: str = "") -> list[str]:
    if isinstance(node, dict):
        return [p for key, value in node.items() for p in single_values(value, f"{path}.{key}" if path else key)]
    if isinstance(node, list):
        return [p for index, value in enumerate(node[:3]) for p in single_values(value, f"{path}[{index + 1}]")]
    return [path]


def test_every_value_has_an_answer(made: Path, plan: dict[str, Any]) -> None:
    paths = single_values({key: value for key, value in plan.items() if key not in ("findings", "courses", "measures")})
    for path in paths[::7]:
        lines = why(made, path)
        assert lines[0].startswith(f"{path} = ")
        assert len(lines) > 1
        assert all(line and "\n" not in line for line in lines)


def test_a_limit_has_its_own_source_and_not_the_formula_of_the_air(made: Path, plan: dict[str, Any]) -> None:
    position = next(i for i, entry in enumerate(plan["exposures"], 1) if entry["limit"])
    limit = plan["exposures"][position - 1]["limit"]
    for name in ("limit.value_kg_m3", "limit.year", "limit_value"):
        lines = why(made, f"exposures[{position}].{name}")
        assert f"source: {citation(limit['source'])} [{limit['mark']}]" in lines
        assert any(line.startswith(f"limit: {limit['id']} (") for line in lines)
        assert not any(line.startswith("formula") for line in lines)
    assert any(line.startswith("formula") for line in why(made, f"exposures[{position}].outside.high"))
    share = why(made, f"exposures[{position}].share_upper")
    assert "from: what is breathed (inside) divided by the limit; 1 is the limit" in share


def test_units_stand_behind_numbers(made: Path, plan: dict[str, Any]) -> None:
    assert why(made, "survey.fixtures[1].sizes.length")[0].endswith("= 1.524 m")
    assert why(made, "survey.climate.indoor.low")[0].endswith(" K (17.8 °C)")
    assert " s (" in why(made, "clocks[4].used_s")[0]
    assert why(made, "survey.spaces[1].volume")[0].endswith(" m3")
    assert why(made, "materials[1].pack_m3")[0].endswith(" mL)")
    assert why(made, "air.limits[1].value_kg_m3")[0].endswith(" mg/m3)")
    share = next(i for i, e in enumerate(plan["exposures"], 1) if e["measure"] == "explosive_share")
    value = plan["exposures"][share - 1]["limit_value"]
    assert why(made, f"exposures[{share}].limit_value")[0].endswith(f" = {value}")


def test_a_clock_shows_what_it_was_made_from(made: Path, plan: dict[str, Any]) -> None:
    for position, clock in enumerate(plan["clocks"], 1):
        text = "\n".join(why(made, f"clocks[{position}].used_s"))
        for key, value in (("printed", clock["printed_s"]), ("used", clock["used_s"])):
            assert f"from: {key} = {value:.12g} s ({value / 3600:.1f} h)" in text
        assert f"from: computed, high = {clock['computed_s']['high']:.12g} s" in text
        assert "decided by: " in text


def test_a_start_says_what_decides_it(made: Path, plan: dict[str, Any]) -> None:
    kinds = set()
    for position, step in enumerate(plan["steps"], 1):
        lines = why(made, f"steps[{position}].starts")
        decided = next(line for line in lines if line.startswith("decided by: "))
        demand = next((d for d in step["demands"] if d["id"] == step["decides"]), None)
        if demand:
            assert decided == f"decided by: the demand {step['decides']}"
            assert demand["after"] is None or any(line.endswith(f"of the step {demand['after']}") for line in lines)
            kinds.add("demand")
        elif step["decides"] in ("hours", "earliest", "most-wait"):
            kinds.add(step["decides"])
        else:
            assert decided == f"decided by: the end of the step {step['decides']}"
            kinds.add("step")
    assert {"demand", "hours", "step"} <= kinds


def test_the_vapour_of_another_way_is_no_fact_of_a_finding(made: Path, plan: dict[str, Any]) -> None:
    position = next(i for i, other in enumerate(plan["alternatives"], 1) if other["vapour_kg"] is not None)
    text = "\n".join(why(made, f"alternatives[{position}].vapour_kg"))
    assert plan["alternatives"][position - 1]["because"][0] not in text
    assert "formula: volatile mass in a volume of coating" in text


TRACE = {"path": "verdict", "formula": "f", "mark": "own", "sources": [], "inputs": []}
DAMAGED = {
    "text": {"traces": "x"},
    "null": {"traces": None},
    "number": {"traces": 5},
    "list of text": {"traces": ["x"]},
    "null in it": {"traces": [None]},
    "no formula": {"traces": [{key: value for key, value in TRACE.items() if key != "formula"}]},
    "path a number": {"traces": [{**TRACE, "path": 1}]},
    "inputs null": {"traces": [{**TRACE, "inputs": None}]},
    "input text": {"traces": [{**TRACE, "inputs": ["x"]}]},
    "input without kind": {"traces": [{**TRACE, "inputs": [{"name": "a", "value": None, "kind": None}]}]},
    "sources numbers": {"traces": [{**TRACE, "sources": [1]}]},
    "NaN": {"traces": [], "x": float("nan")},
    "Infinity": {"traces": [], "x": float("inf")},
}


def fault(path: Path, number: str) -> str:
    with pytest.raises(DoorError) as caught:
        why(path, number)
    assert len(caught.value.faults) == 1
    return str(caught.value)


@pytest.mark.parametrize("name", list(DAMAGED))
def test_a_damaged_plan_is_one_line(tmp_path: Path, name: str) -> None:
    path = tmp_path / "plan.json"
    path.write_text(json.dumps({"format": "bathwright-plan/1", "verdict": "go", **DAMAGED[name]}), "utf-8")
    wanted = "no number of a plan" if name in ("NaN", "Infinity") else "is damaged; make the plan anew"
    assert wanted in fault(path, "verdict")


ODD: list[Any] = [None, 5, "x", [], {}, [5], [None], True, {"a": 1}]


@pytest.mark.parametrize("odd", ODD, ids=str)
def test_other_damage_crashes_nothing(tmp_path: Path, plan: dict[str, Any], odd: Any) -> None:
    """Whatever stands around a number is shown or left out."""
    for where, number, keys in (
        ("clocks", "used_s", ("computed_s", "facts", "why", "printed_s")),
        ("steps", "starts", ("demands", "work_s", "decides", "because")),
        ("exposures", "limit_value", ("limit", "outside", "substance")),
        ("alternatives", "vapour_kg", ("system", "because")),
        ("assumptions", "value", ("kind", "source", "mark")),
    ):
        for key in keys:
            data = {**plan, where: [{**plan[where][0], key: odd}]}
            path = tmp_path / "plan.json"
            path.write_text(json.dumps(data), "utf-8")
            assert why(path, f"{where}[1].{number}")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[" * 100_000, "is no JSON file"),
        ('{"format": "bathwright-plan/1", "x": ' + "9" * 5_000 + "}", "is no JSON file"),
        ("[]", "is no plan"),
        ('{"format": "bathwright-survey/1"}', "is no plan"),
        ("", "is no JSON file"),
    ],
)
def test_what_is_no_plan(tmp_path: Path, text: str, said: str) -> None:
    path = tmp_path / "plan.json"
    path.write_text(text, "utf-8")
    assert said in fault(path, "id")


def test_other_files_say_what_to_give(tmp_path: Path) -> None:
    (tmp_path / "plan.json").write_bytes(b"\x00\xff")
    for path in (SURVEYS / "demo.toml", tmp_path / "plan.json", tmp_path, tmp_path / "none.json"):
        line = fault(path, "id")
        assert "give the plan.json that plan --out wrote" in line
        assert "TOML file" not in line


@pytest.mark.parametrize(
    ("number", "said"),
    [
        ("clocks[9].used_s", "[1] to [6]"),
        ("clocks[0].used_s", "[1] to [6]"),
        ("clocks[" + "9" * 5_000 + "]", "is no path"),
        ("clocks..", "is no path"),
        ("clocks[1]used_s", "is no path"),
        ("", "is no path"),
        ("clocks[1]", "go on with one of name, runs_from, printed_s"),
        ("clocks[1].used", 'did you mean "used_s"?'),
        ("clocks[1].until", "known here: at, computed_s"),
        ("verdict.x", "leave out the rest"),
    ],
)
def test_a_path_that_leads_nowhere(made: Path, number: str, said: str) -> None:
    line = fault(made, number)
    assert said in line
    assert "['" not in line
