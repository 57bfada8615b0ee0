"""Files against the JSON Schema that we print, by an independent validator (jsonschema)."""

import json
import tomllib
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from bathwright.door.schemas import json_schema

ROOT = Path(__file__).parent.parent.parent
SHEETS = sorted((ROOT / "src" / "bathwright" / "knowledge" / "sheets").glob("*.toml"))
CASES = sorted((ROOT / "tests" / "rules" / "sheets").glob("*.toml"))
SURVEYS = sorted((ROOT / "examples" / "surveys").glob("*.toml"))
DEMO = ROOT / "examples" / "surveys" / "demo.toml"


def written(path: Path) -> Any:
    """The file as it stands, dates as text."""
    data = tomllib.loads(path.read_text("utf-8"))
    return json.loads(json.dumps(data, default=lambda v: v.isoformat() if isinstance(v, datetime | date) else str(v)))


@pytest.mark.parametrize("of", ["survey", "sheet", "plan"])
def test_the_schema_is_a_schema(of: str) -> None:
    jsonschema.Draft202012Validator.check_schema(json_schema(of))
    assert json_schema(of)["title"] == f"bathwright {of}"


@pytest.mark.parametrize("path", SURVEYS, ids=lambda p: p.name)
def test_example_surveys_fit_the_printed_schema(path: Path) -> None:
    jsonschema.validate(written(path), json_schema("survey"))


@pytest.mark.parametrize("path", [*SHEETS, *CASES], ids=lambda p: p.name)
def test_sheets_fit_the_printed_schema_as_they_are_written(path: Path) -> None:
    jsonschema.validate(written(path), json_schema("sheet"))


def refused(data: Any, of: str) -> str:
    with pytest.raises(jsonschema.ValidationError) as caught:
        jsonschema.validate(data, json_schema(of))
    return caught.value.message


def test_what_a_survey_may_not_hold() -> None:
    data = written(DEMO)
    refused({**data, "fixturs": []}, "survey")
    refused({**data, "id": ""}, "survey")
    refused({**data, "place": {**data["place"], "country": "XX"}}, "survey")
    for change in (
        {"what": "magnett", "result": "sticks"},
        {"what": "magnet", "result": "dull"},
        {"what": "surface_temperature", "result": "measured"},
    ):
        refused({**data, "fixtures": [{**data["fixtures"][0], "observations": [change]}]}, "survey")


@pytest.mark.parametrize(
    "fact",
    [
        {"kind": "pot_lif", "value": "4 h"},
        {"kind": "pot_life", "value": 4},
        {"kind": "pot_life", "value": {"value": 14400.0, "kind": "time"}},
        {"kind": "recoat", "value": "4 h"},
        {"kind": "recoat", "value": {}},
        {"kind": "surface", "value": {"code": "iron"}},
        {"kind": "method", "value": {"code": "acrylic"}},
        {"kind": "mix_ratio", "value": {"by": "volume", "numbers": [0]}},
        {"kind": "abrasive", "value": "P400"},
        {"kind": "coats"},
    ],
)
def test_what_a_fact_may_not_be(fact: dict[str, Any]) -> None:
    data = written(SHEETS[-1])
    refused({**data, "facts": [{"id": "x", **fact}]}, "sheet")


def test_a_fact_may_be_what_the_door_takes() -> None:
    data = written(SHEETS[-1])
    for value in (2, "2"):
        jsonschema.validate({**data, "facts": [{"id": "x", "kind": "coats", "value": value}]}, json_schema("sheet"))


def test_a_digest_is_never_written() -> None:
    refused({**written(SHEETS[0]), "digest": "00"}, "sheet")


def test_the_demo_plan_fits_the_printed_schema() -> None:
    from bathwright.app import ask
    from bathwright.domain.plan import Options
    from bathwright.door.writing import plain

    at = datetime(2026, 12, 1, 14, tzinfo=UTC)
    plan = ask.plan(DEMO, None, at, Options(), at)
    jsonschema.validate(plain(plan), json_schema("plan"))
