"""Files against the JSON Schema that we print, by an independent validator (jsonschema)."""

import json
import tomllib
from datetime import date, datetime
from pathlib import Path

import jsonschema
import pytest

from bathwright.door.schemas import json_schema

ROOT = Path(__file__).parent.parent.parent


def as_json(value: object) -> object:
    return json.loads(json.dumps(value, default=lambda v: v.isoformat() if isinstance(v, datetime | date) else str(v)))


@pytest.mark.parametrize("path", sorted((ROOT / "examples" / "surveys").glob("*.toml")), ids=lambda p: p.name)
def test_example_surveys_fit_the_printed_schema(path: Path) -> None:
    jsonschema.validate(as_json(tomllib.loads(path.read_text("utf-8"))), json_schema("survey"))


def test_a_wrong_key_does_not_fit() -> None:
    data = as_json(tomllib.loads((ROOT / "examples" / "surveys" / "demo.toml").read_text("utf-8")))
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**data, "fixturs": []}, json_schema("survey"))  # type: ignore[dict-item]


def test_the_demo_plan_fits_the_printed_schema() -> None:
    from datetime import UTC

    from bathwright.app import ask
    from bathwright.domain.plan import Options
    from bathwright.door.writing import plain

    at = datetime(2026, 12, 1, 14, tzinfo=UTC)
    plan = ask.plan(ROOT / "examples" / "surveys" / "demo.toml", None, at, Options(), at)
    jsonschema.validate(plain(plan), json_schema("plan"))
