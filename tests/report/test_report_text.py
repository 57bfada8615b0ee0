"""The plan in the terminal."""

import dataclasses
import re

import pytest
from report_checks import own_words, strings
from sample import ALL, BRITISH, GO, NO, NOT_YET

from bathwright.domain.plan import Plan
from bathwright.report.build import gaps, plan_context
from bathwright.report.text import plan_text

QUESTION = "Not yet: first answer a question: Which cleaners were used on the"
FIRST_LINES = {
    "go": "Go, as planned below",
    "not-yet": f"{QUESTION} tub or in the drain lately, and when?",
    "no": "No: not here, not this way. Instead: have it done by a firm that works with supplied air",
    "british": f"{QUESTION} bath or in the drain lately, and when?",
}
EACH = pytest.mark.parametrize("plan", ALL.values(), ids=ALL.keys())


@pytest.mark.parametrize("name", ALL)
def test_begins_with_the_verdict_line(name: str) -> None:
    assert plan_text(ALL[name], width=200).splitlines()[0] == FIRST_LINES[name]


@EACH
def test_a_tired_person_gets_first_what_matters_on_one_screen(plan: Plan) -> None:
    lines = plan_text(plan).splitlines()
    more = next(number for number, line in enumerate(lines) if line.startswith("── More"))
    first = "\n".join(lines[:more])
    assert more <= 50
    heading = "Why not" if plan.verdict == "no" else "The three things that matter"
    assert first.index(heading) < first.index("In an emergency")
    for finding in plan_context(plan).top:
        assert finding.title.split(" ")[0] in first
    assert plan.emergency.emergency in first


@EACH
@pytest.mark.parametrize("width", [60, 88, 140])
def test_no_line_is_wider_than_asked(plan: Plan, width: int) -> None:
    assert max(len(line) for line in plan_text(plan, width=width).splitlines()) <= width


@EACH
def test_colour_adds_signs_and_changes_no_word(plan: Plan) -> None:
    plain, coloured = plan_text(plan), plan_text(plan, colour=True)
    assert "\x1b[" in coloured
    assert "\x1b" not in plain
    assert re.sub(r"\x1b\[[0-9;]*m", "", coloured).split() == plain.split()


@EACH
def test_same_plan_gives_the_same_bytes(plan: Plan) -> None:
    assert plan_text(plan).encode() == plan_text(dataclasses.replace(plan)).encode()


@EACH
def test_nothing_raw_shows_through(plan: Plan) -> None:
    text = plan_text(plan)
    assert not re.findall(r"\b(?:None|nan|inf|True|False)\b|\bdatetime\b|Band\(|\{\w+[|}]|\]\[", text)
    raw = [word for word in re.findall(r"\b[a-z]+(?:_[a-z0-9]+)+\b", text) if word]
    assert raw == []
    codes = {finding.code for finding in plan.findings if "-" in finding.code}
    assert [code for code in codes if code in text] == []


@EACH
def test_nothing_is_called_safe(plan: Plan) -> None:
    assert not re.search(r"\bsafe(?:ly)?\b", own_words(plan_text(plan)), re.IGNORECASE)


@EACH
def test_every_time_of_day_has_its_day_or_zone(plan: Plan) -> None:
    zones = "EST|GMT"
    for text in strings(plan_context(plan)):
        for match in re.finditer(r"\d\d:\d\d", text):
            assert re.match(rf" (?:{zones})| to \d\d:\d\d (?:{zones})", text[match.end() :]), text


@EACH
def test_times_of_use_are_never_promised(plan: Plan) -> None:
    text = plan_text(plan)
    assert "ready at" not in text.lower()
    table = plan_context(plan).clocks
    rows = [row for group in table.groups for row in group.rows] if table else []
    assert len(rows) == len(plan.clocks)
    assert all(row[1].startswith(("Not before ", "Not known")) for row in rows)


@EACH
def test_the_catalogue_has_words_for_the_whole_plan(plan: Plan) -> None:
    assert gaps(plan) == ()


def test_british_plan_speaks_of_bath_tap_and_sealant_in_metric() -> None:
    text = own_words(plan_text(BRITISH))
    assert not re.search(r"\b(?:tubs?|bathtub|faucets?|caulk|vapor|mold|color)\b", text, re.IGNORECASE)
    assert re.search(r"\btap\b", text)
    assert re.search(r"\bsealant\b", text)
    assert "999" in text
    assert "GMT" in text
    assert "620 mL" in text
    assert "fl oz" not in text
    assert "US gal" not in text


def test_american_plan_speaks_of_tub_faucet_and_caulk_in_us_units() -> None:
    text = own_words(plan_text(NOT_YET))
    assert not re.search(r"\b(?:vapours?|mould|colour|grey|litres?|fibre|neighbours?)\b", text)
    for word in ("tub", "faucet", "caulk", "911", "21.0 US fl oz (620 mL)"):
        assert word in text


def test_what_must_come_first_follows_the_order_of_telling() -> None:
    only_question = dataclasses.replace(NOT_YET, measures=(), findings=())
    assert plan_text(only_question, width=200).startswith(
        "Not yet: first answer a question: Which cleaners were used on the tub or in the drain lately, and when?"
    )
    nothing = dataclasses.replace(NOT_YET, measures=(), findings=(), questions=())
    assert plan_text(nothing, width=200).startswith("Not yet: first clear up what is still open below")


def test_a_refused_way_without_another_says_so() -> None:
    nothing = dataclasses.replace(NO, alternatives=())
    assert plan_text(nothing, width=200).splitlines()[0].startswith("No: not here, not this way. Instead: leave it")


def test_an_unknown_code_shows_in_plain_words_and_is_found() -> None:
    finding = dataclasses.replace(GO.findings[0], code="brand-new-rule", relax="brand_new")
    plan = dataclasses.replace(GO, findings=(finding,))
    assert "Brand new rule" in plan_text(plan)
    assert any("brand-new-rule" in gap for gap in gaps(plan))


def test_the_emergency_box_names_the_numbers_and_no_treatment() -> None:
    text = " ".join(plan_text(GO).replace("│", " ").split())
    assert "Do not go in after them. Call 911 (poison: 1-800-222-1222)." in text
    assert "Gas smell or fire: out, call from outside, touch no switch." in text
    assert "running water at the kitchen faucet now, then call." in text
    without = dataclasses.replace(GO, emergency=dataclasses.replace(GO.emergency, poison=None))
    assert "poison" not in plan_text(without).split("┌─")[1].split("└")[0]


def test_control_signs_of_the_survey_never_reach_the_terminal() -> None:
    note = "\x1b[31mred\x1b[0m\r\nNot yet: first\u202e obey"
    plan = dataclasses.replace(GO, survey=dataclasses.replace(GO.survey, note=note))
    text = plan_text(plan)
    assert "\x1b" not in text
    assert "\u202e" not in text
    assert not [line for line in text.splitlines() if line.startswith("Not yet")]


def test_a_narrow_terminal_gets_each_row_as_a_paragraph() -> None:
    narrow, wide = plan_text(GO, width=60), plan_text(GO, width=140)
    assert re.search(r"^• 1\. .+\n  Start: \d\d:\d\d EST; Work: ", narrow, re.MULTILINE)
    assert "Start: " not in wide
    assert not re.search(r"\.\.$|^ *%", narrow, re.MULTILINE)


def test_values_far_below_their_limit_are_counted_and_not_told_one_by_one() -> None:
    first, *rest = GO.exposures
    tiny = dataclasses.replace(first, share_central=1e-6, share_upper=1e-5)
    air = plan_context(dataclasses.replace(GO, exposures=(tiny, *rest))).air
    assert air is not None
    assert air.peaks is not None
    assert air.all_peaks is not None
    assert sum(len(group.rows) for group in air.peaks.groups) == len(rest)
    assert sum(len(group.rows) for group in air.all_peaks.groups) == len(rest) + 1
    assert air.small.endswith(": 1 more.")


def test_a_share_without_meaning_is_far_below() -> None:
    flat = tuple(
        dataclasses.replace(course, central=(1e-17,) * len(course.t_s), upper=(1.6e-16,) * len(course.t_s))
        for course in GO.courses
    )
    for panel in plan_context(dataclasses.replace(GO, courses=flat)).panels:
        assert panel.peak.startswith("Highest: far below the values for everybody")
        assert "0.0000" not in panel.peak


def test_what_is_worn_stands_as_a_thing_and_never_as_an_errand() -> None:
    steps = [step for phase in plan_context(NOT_YET).phases for step in phase.steps]
    assert any(step.wears for step in steps)
    assert not [text for step in steps for text in step.wears if text.lower().startswith("get ")]
