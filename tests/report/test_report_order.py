"""One order for headline, list in short, checklist and questions; who is out; what a firm brings."""

import dataclasses
import re
from datetime import timedelta
from pathlib import Path

from sample import GO, NOT_YET
from sample_steps import after

import bathwright
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.steps import Clock
from bathwright.report import order
from bathwright.report.build import plan_context
from bathwright.report.reader import Reader
from bathwright.report.steps_view import clocks_table
from bathwright.report.text import plan_text

FIRM = Measure(id="certified-firm", act="certified_firm", who="household", feasible="ask", when="before_start")
FAN = Measure(id="fan", act="fan_on", who="household", what="window_fan", feasible="buy", when="before_start")
GLOVES = Measure(id="gloves", act="wear_gloves_goggles", who="painter", feasible="buy", when="before_start")
DRIP = Question(asks="drip", why="drip-not-stopped", worse_answer="drips", blocks=True)


def _finding(code: str, consequence: str, strength: str, effect: str, measure: str, status: str = "met") -> Finding:
    return Finding(
        code=code,
        consequence=consequence,  # type: ignore[arg-type]
        strength=strength,  # type: ignore[arg-type]
        effect=effect,  # type: ignore[arg-type]
        status=status,  # type: ignore[arg-type]
        measures=(measure,),
    )


LEAD = dataclasses.replace(
    NOT_YET,
    who="firm",
    questions=(DRIP,),
    measures=(GLOVES, FAN, FIRM),
    findings=(
        _finding("skin-and-eyes", "harms", "advice", "must_do", "gloves"),
        _finding("fan-kept-on", "harms", "danger", "must_do", "fan"),
        _finding("lead-renovation-covered", "harms", "law", "stops", "certified-firm"),
    ),
)


def test_the_firm_comes_before_the_fan_and_a_drip_comes_last() -> None:
    context = plan_context(LEAD)
    assert context.verdict.endswith("find a firm that is certified for lead renovation")
    assert context.first[0] in context.verdict
    assert [text.split(" ")[0] for text in context.first] == ["find", "get", "answer"]
    assert [measure.short for measure in context.before] == list(context.first[:2])


def test_the_household_buys_no_gloves_for_a_certified_firm() -> None:
    context = plan_context(LEAD)
    assert not [measure for measure in context.before if "gloves" in measure.short]
    assert "gloves and goggles" in context.firm
    alone = plan_context(dataclasses.replace(LEAD, who="self"))
    assert any("gloves" in measure.short for measure in alone.before)
    assert alone.firm == ""


def test_an_open_stop_comes_before_what_kills_and_is_met() -> None:
    plan = dataclasses.replace(
        LEAD,
        questions=(),
        findings=(
            _finding("lone-work", "kills", "danger", "must_do", "gloves"),
            _finding("no-air-path", "harms", "good_practice", "stops", "fan", status="open"),
        ),
    )
    assert [m.act for m in order.before_start(dataclasses.replace(plan, who="self"))][:2] == [
        "fan_on",
        "wear_gloves_goggles",
    ]


def test_what_a_question_is_about_ranks_as_its_rule_would() -> None:
    """Consequence and strength of the table stand in the rule of that code, or in what the rule shares."""
    rules = Path(bathwright.__file__).parent / "rules"
    shared = (rules / "meetings.py").read_text("utf-8")
    texts = [path.read_text("utf-8") for path in sorted(rules.rglob("*.py"))]
    for code, (consequence, strength) in order.ASKED.items():
        own = next(text for text in texts if re.search(rf'^CODE = "{code}"', text, re.MULTILINE))
        for word in (consequence, strength):
            assert f'"{word}"' in own or f'"{word}"' in shared, f"{code}: {word}"


def test_who_must_be_out_stands_under_the_verdict_with_both_hours() -> None:
    leave = Measure(
        id="leave-home", act="leave_home", who="others", feasible="have", starts=after(27), ends=after(60)
    )  # fmt: skip
    helper = Measure(id="helper-outside", act="helper_outside", who="helper", feasible="have")
    context = plan_context(dataclasses.replace(GO, measures=(helper, leave)))
    home, second = context.out
    assert home.label == "Everybody else out of the home"
    assert re.fullmatch(r"from .+ EST; not back before .+ EST", home.text)
    assert second.label.startswith("A second adult")
    text = plan_text(dataclasses.replace(GO, measures=(helper, leave)), width=140)
    assert text.index(home.label) < text.index("The three things that matter")


def test_an_unknown_hour_of_return_is_said() -> None:
    leave = Measure(id="leave-home", act="leave_home", who="others", feasible="have", starts=after(27))
    product = Measure(id="leave-out", act="leave_out_product", who="household", what="x", feasible="have")
    (line,) = plan_context(dataclasses.replace(GO, measures=(product, leave))).out
    assert line.text.endswith("no hour can be given when they may be back")


def test_the_cold_room_is_named_only_for_more_than_an_hour() -> None:
    clock = next(entry for entry in GO.clocks if entry.at and entry.printed_s)
    for more, words in ((timedelta(minutes=20), "margin"), (timedelta(hours=9), "colder")):
        late = dataclasses.replace(clock, why="cold", used_s=(clock.printed_s or 0.0) + more.total_seconds())
        assert words in _because(late)


def _because(clock: Clock) -> str:
    table = clocks_table(Reader(dataclasses.replace(GO, clocks=(clock,))))
    assert table is not None
    return table.groups[0].rows[0][-1]
