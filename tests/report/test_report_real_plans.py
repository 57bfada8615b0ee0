"""Plans as the program makes them: the catalogue has words for every code that comes out."""

import re
from datetime import UTC, datetime
from pathlib import Path

import pytest
from report_checks import Parsed

from bathwright.domain.plan import Options, Plan
from bathwright.door.survey import read_survey
from bathwright.knowledge import book
from bathwright.planning.pipeline import make_plan
from bathwright.report.build import gaps
from bathwright.report.page import plan_page
from bathwright.report.text import plan_text

SURVEYS = sorted((Path(__file__).parents[2] / "examples" / "surveys").glob("*.toml"))
STARTS = {"go": "Go, as planned below", "not-yet": "Not yet: first ", "no": "No: not here, not this way. Instead: "}


@pytest.fixture(scope="module", params=SURVEYS, ids=lambda path: path.stem)
def plan(request: pytest.FixtureRequest) -> Plan:
    knowledge = book.load()
    survey = read_survey(request.param)
    return make_plan(survey, knowledge.sheets, knowledge, datetime(2026, 12, 1, 12, tzinfo=UTC), Options())


def test_every_code_has_words(plan: Plan) -> None:
    assert gaps(plan) == ()


def test_text_and_page_begin_with_the_verdict(plan: Plan) -> None:
    assert plan_text(plan).startswith(STARTS[plan.verdict])
    parsed = Parsed(plan_page(plan))
    assert parsed.faults == []
    assert STARTS[plan.verdict].strip() in parsed.text


def test_nothing_raw_shows_through(plan: Plan) -> None:
    seen = Parsed(plan_page(plan)).text
    assert not re.findall(r"\b(?:None|nan|inf|True|False)\b|\{\w+[|}]", seen)
    zone = plan.survey.place.time_zone
    assert re.findall(r"\b[a-z]+(?:_[a-z0-9]+)+\b", seen.replace(zone, "")) == []
    assert not re.search(r"\bsafe(?:ly)?\b", Parsed(plan_page(plan)).own_text, re.IGNORECASE)
