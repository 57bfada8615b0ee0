"""What a page says when the answer is no: why not and what else, and nothing that could be followed all the same."""

import dataclasses
import re

import pytest
from report_checks import Parsed, strings
from sample import GO, NO
from sample_air import air, exposures
from sample_said import MEASURES, OPEN_MEASURES, QUESTIONS, STOPPING
from sample_steps import clocks, steps, timetable

from bathwright.domain.findings import Finding
from bathwright.domain.plan import Alternative
from bathwright.domain.values import Value
from bathwright.report.build import plan_context
from bathwright.report.page import plan_page
from bathwright.report.text import plan_text

# a record that still carries measures, questions, steps and hours of what it refuses
FULL = dataclasses.replace(
    NO,
    measures=(*OPEN_MEASURES, *MEASURES),
    questions=QUESTIONS,
    findings=(*GO.findings, *STOPPING),
    steps=steps(),
    timetable=timetable(),
    clocks=clocks(),
    materials=GO.materials,
    mixes=GO.mixes,
    care=GO.care,
    waste=GO.waste,
    air=air(),
    exposures=exposures(),
)


def test_nothing_to_buy_and_no_hour_is_shown() -> None:
    context = plan_context(FULL)
    assert (context.before, context.questions, context.first, context.out, context.phases) == ((), (), (), (), ())
    shown = (context.when, context.timeline, context.states, context.clocks, context.materials, context.mixes)
    assert shown == (None,) * 6
    asked = next(pair.text for pair in context.asked if pair.label == context.labels["made_at"])
    for text in (plan_text(FULL, width=200), Parsed(plan_page(FULL)).text):
        assert not re.findall(r"\d\d:\d\d", text.replace(asked, ""))
        assert not re.search(r"Before you start|First, in short|No time could be found|kept by this plan", text)


def test_open_stops_stand_first_under_why_not() -> None:
    context = plan_context(FULL)
    assert context.labels["three_things"] == "Why not"
    stops = [finding for finding in STOPPING if finding.effect == "stops"]
    assert stops
    assert [finding.effect for finding in context.top] == ["stops the job"] * len(stops)
    assert not any(finding.met or finding.measures for finding in (*context.top, *context.others))


def test_values_of_the_air_are_worded_as_what_would_be() -> None:
    text = plan_text(FULL)
    assert "If it were done all the same: 4,400 mg/m³. Limit: 1,900 mg/m³." in " ".join(text.split())
    assert "The air, if it were done all the same" in text
    assert "In the plan:" not in text


@pytest.mark.parametrize("kind", ["local_repair", "liner", "replacement", "leave_as_it_is", "warmer_room"])
def test_each_other_way_has_a_reason_of_its_own(kind: str) -> None:
    """Never the stop of the way that was refused."""
    way = Alternative(kind=kind, ruled_out_by=("painter-vapour-limit",))  # type: ignore[arg-type]
    table = plan_context(dataclasses.replace(FULL, alternatives=(way,))).alternatives
    assert table is not None
    reason = table.groups[0].rows[0][2]
    assert len(reason) > 20
    assert "would breathe" not in reason


def test_vapour_that_is_not_known_is_no_dash_and_no_zero() -> None:
    way = Alternative(kind="system", system="x", product="X", verdict="no", because=("lone-work",))
    table = plan_context(dataclasses.replace(FULL, alternatives=(way,))).alternatives
    assert table is not None
    assert table.groups[0].rows[0][3] == "not known"


def test_an_unknown_cleaner_is_not_told_as_ammonia() -> None:
    finding = Finding(
        code="chloramine-from-ammonia",
        strength="danger",
        consequence="kills",
        effect="stops",
        values=(Value(name="first", value="unknown-cleaner"), Value(name="second", value="amine-hardener")),
    )
    context = plan_context(dataclasses.replace(NO, findings=(finding,)))
    assert context.top[0].what.startswith("An unknown cleaner may hold bleach, and would meet amine hardener.")
    assert not [text for text in strings(context.top) if "would meet." in text]
