"""The canary: what was told about people never leaves through page or text."""

import dataclasses
import re

import pytest
from report_checks import Parsed
from sample import ALL, GO, NOT_YET

from bathwright.domain.findings import Measure
from bathwright.domain.plan import Plan
from bathwright.domain.survey import Person
from bathwright.domain.values import Value
from bathwright.report.page import plan_page
from bathwright.report.text import plan_text

CANARIES = ("canary-quetzal-19", "canary-vesper-20")
PEOPLE = (
    Person(id=CANARIES[0], age_band="infant", traits=("pregnant", "asthma", "bird"), can_leave=False),
    Person(id=CANARIES[1], age_band="older_adult", traits=("heart", "fish", "sensitised"), works=True),
)
SPOKEN = re.compile(
    r"canary|quetzal|vesper|infant|pregnan|asthma|sensiti[sz]|older.adult|child|\bheart\b|\bbirds?\b|\bfish\b",
    re.IGNORECASE,
)


def _telling(plan: Plan) -> Plan:
    """The plan with people, and with their ids and traits at each place of the record that could carry them."""
    values = (
        Value(name="person", value=CANARIES[0]),
        Value(name="traits", value="pregnant"),
        Value(name="age_band", value="infant"),
        Value(name="what", value=CANARIES[1]),
    )
    findings = tuple(
        dataclasses.replace(f, about=(*CANARIES, *f.about), values=(*values, *f.values)) for f in plan.findings
    )
    told = tuple(
        Measure(id=f"leave-home-{name}", act="leave_home", who=name, what=name, feasible="have", values=values)
        for name in CANARIES
    )
    measures = tuple(dataclasses.replace(m, who=CANARIES[0], effect_on=CANARIES) for m in plan.measures)
    return dataclasses.replace(
        plan,
        survey=dataclasses.replace(plan.survey, people=PEOPLE),
        findings=findings,
        measures=(*told, *measures),
        questions=(),
    )


@pytest.mark.parametrize("name", ALL)
def test_ids_ages_traits_and_health_of_people_are_never_shown(name: str) -> None:
    plan = _telling(ALL[name])
    page = plan_page(plan)
    assert SPOKEN.findall(Parsed(page).text) == []
    assert SPOKEN.findall(plan_text(plan)) == []
    assert not [canary for canary in CANARIES if canary in page]
    attributes = " ".join(value for _, attrs in Parsed(page).tags for value in attrs.values())
    assert SPOKEN.findall(attributes) == []


@pytest.mark.parametrize("plan", [GO, NOT_YET], ids=["go", "not-yet"])
def test_people_of_the_survey_change_no_letter_of_page_and_text(plan: Plan) -> None:
    """The same findings and measures with other people give the same page: the report does not look at them."""
    other = dataclasses.replace(plan, survey=dataclasses.replace(plan.survey, people=PEOPLE))
    none = dataclasses.replace(plan, survey=dataclasses.replace(plan.survey, people=None))
    assert plan_page(plan) == plan_page(other) == plan_page(none)
    assert plan_text(plan) == plan_text(other) == plan_text(none)


def test_that_somebody_must_be_away_is_shown() -> None:
    assert "People who must be away, as you told us" in plan_text(_telling(GO))
