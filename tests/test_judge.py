"""The verdict from findings, measures and questions, and the order of telling."""

import dataclasses
from collections import Counter
from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.codes import Availability, Consequence, Effect, Status, Strength, When
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.judge import in_order, judge, rank_of


def finding(code: str = "something", **values: Any) -> Finding:
    base: dict[str, Any] = {"code": code, "strength": "danger", "consequence": "harms", "effect": "tells"}
    return Finding(**{**base, **values})


def measure(name: str = "m", **values: Any) -> Measure:
    base: dict[str, Any] = {"id": name, "act": "wear_mask", "who": "painter", "feasible": "have"}
    return Measure(**{**base, **values})


def question(blocks: bool) -> Question:
    return Question(asks="used_lately", why="chlorine", worse_answer="bleach", blocks=blocks)


STOP = finding("stop", effect="stops")
RELIES = finding("relies", effect="stops", measures=("m",))
MUST = finding("must", effect="must_do", measures=("m",))

# what the rules say -> verdict
TABLE: list[tuple[str, tuple[Finding, ...], tuple[Measure, ...], tuple[Question, ...], str]] = [
    ("nothing at all", (), (), (), "go"),
    ("something is told", (finding(),), (), (), "go"),
    ("a stop without a measure", (STOP,), (), (), "no"),
    ("a stop whose rule says it is met", (finding(effect="stops", status="met"),), (), (), "go"),
    ("a stop of which nothing is known", (finding(effect="stops", status="unknown"),), (), (), "no"),
    ("an unknown stop, its measure at hand", (dataclasses.replace(RELIES, status="unknown"),), (measure(),), (), "no"),
    ("a stop met by what is at hand", (RELIES,), (measure(),), (), "go"),
    ("a stop met by what is done while working", (RELIES,), (measure(feasible="hire", when="during"),), (), "go"),
    ("a stop whose measure cannot be had", (RELIES,), (measure(feasible="no"),), (), "no"),
    ("a stop whose measure nobody named", (RELIES,), (measure("other"),), (), "no"),
    ("a met stop whose measure cannot be had", (dataclasses.replace(RELIES, status="met"),),
     (measure(feasible="no"),), (), "no"),
    ("one of two measures cannot be had", (finding(effect="stops", measures=("m", "n")),),
     (measure(), measure("n", feasible="no")), (), "no"),
    ("a stop met by what must be bought first", (RELIES,), (measure(feasible="buy", when="before_start"),), (),
     "not-yet"),
    ("the same, and it is done", (RELIES,), (measure(feasible="buy", when="before_start", done=True),), (), "go"),
    ("a duty before the start", (MUST,), (measure(when="before_start"),), (), "not-yet"),
    ("a duty before the start that nobody can do", (MUST,), (measure(when="before_start", feasible="no"),), (), "no"),
    ("a duty during the work that nobody can do", (MUST,), (measure(when="during", feasible="no"),), (), "no"),
    ("a duty during the work", (MUST,), (measure(when="during"),), (), "go"),
    ("a duty afterwards", (MUST,), (measure(when="after"),), (), "go"),
    ("a measure before the start that no finding names", (), (measure(when="before_start"),), (), "not-yet"),
    ("a question that blocks", (), (), (question(True),), "not-yet"),
    ("a question that does not", (), (), (question(False),), "go"),
    ("a stop beats a question", (STOP,), (), (question(True),), "no"),
    ("a stop beats a duty", (STOP, MUST), (measure(when="before_start"),), (), "no"),
]  # fmt: skip


@pytest.mark.parametrize("case", TABLE, ids=lambda case: case[0])
def test_the_verdict_table(
    case: tuple[str, tuple[Finding, ...], tuple[Measure, ...], tuple[Question, ...], str],
) -> None:
    _, findings, measures, questions, verdict = case
    assert judge(findings, measures, questions).verdict == verdict


def test_the_status_says_whether_all_measures_can_be_had() -> None:
    two = finding(effect="stops", measures=("m", "n"))
    had = judge([two], [measure(), measure("n", feasible="ask")], []).findings[0]
    lacking = judge([two], [measure(), measure("n", feasible="no")], []).findings[0]
    unknown = judge([dataclasses.replace(two, status="unknown")], [measure(), measure("n")], []).findings[0]
    assert (had.status, lacking.status, unknown.status) == ("met", "open", "unknown")


def test_open_stops_are_told_first_then_consequence_strength_code() -> None:
    told = [
        finding("a-note", consequence="note", strength="law"),
        finding("b-late", consequence="delays", strength="law"),
        finding("c-ruin", consequence="ruins", strength="law"),
        finding("d-harm-practice", strength="good_practice"),
        finding("e-harm-maker", strength="maker"),
        finding("f-harm-advice", strength="advice"),
        finding("g-harm-danger", strength="danger"),
        finding("h-harm-law-2", strength="law"),
        finding("h-harm-law-1", strength="law"),
        finding("y-met-stop", effect="stops", status="met", strength="law"),
        finding("z-stop", effect="stops", consequence="note", strength="good_practice"),
    ]
    codes = [entry.code for entry in in_order(told)]
    assert codes == [
        "z-stop", "h-harm-law-1", "h-harm-law-2", "y-met-stop", "g-harm-danger", "f-harm-advice", "e-harm-maker",
        "d-harm-practice", "c-ruin", "b-late", "a-note",
    ]  # fmt: skip


def test_what_can_kill_stays_in_the_first_three_behind_two_open_stops() -> None:
    stops = [finding(f"stop-{n}", effect="stops", consequence="ruins") for n in range(5)]
    codes = [entry.code for entry in in_order([*stops, finding("deadly", consequence="kills", status="met")])]
    assert codes == ["stop-0", "stop-1", "deadly", "stop-2", "stop-3", "stop-4"]


def test_the_same_finding_twice_is_told_twice() -> None:
    twins = [STOP] * 5 + [finding("deadly", consequence="kills")]
    assert Counter(in_order(twins)) == Counter(twins)


def test_verdicts_are_ranked_for_choosing() -> None:
    assert sorted(("no", "go", "not-yet"), key=rank_of) == ["go", "not-yet", "no"]


def words(of: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(get_args(of))


NAMES = ("m", "n", "o")
FINDINGS = st.lists(
    st.builds(
        finding, st.sampled_from([f"code-{n}" for n in range(6)]), strength=words(Strength),
        consequence=words(Consequence), effect=words(Effect), status=words(Status),
        measures=st.lists(st.sampled_from(NAMES), unique=True, max_size=3).map(tuple),
    ),
    max_size=10,
)  # fmt: skip
MEASURES = st.lists(
    st.builds(measure, st.sampled_from(NAMES), feasible=words(Availability), when=words(When), done=st.booleans()),
    max_size=3, unique_by=lambda entry: entry.id,
)  # fmt: skip
QUESTIONS = st.lists(st.builds(question, st.booleans()), max_size=2)


@given(FINDINGS)
def test_what_can_kill_is_told_among_the_first_three(findings: list[Finding]) -> None:
    told = in_order(findings)
    assert Counter(told) == Counter(findings)
    deadly = [place for place, entry in enumerate(told) if entry.consequence == "kills"]
    assert all(place < max(3, len(deadly)) for place in deadly)


@given(FINDINGS, MEASURES, QUESTIONS, st.randoms(use_true_random=False))
def test_the_order_of_the_rules_changes_nothing(
    findings: list[Finding], measures: list[Measure], questions: list[Question], random: Any
) -> None:
    shuffled = random.sample(findings, len(findings))
    one, other = judge(findings, measures, questions), judge(shuffled, measures[::-1], questions)
    assert one.verdict == other.verdict
    order = [(entry.code, entry.strength, entry.consequence, entry.effect) for entry in one.findings]
    again = [(entry.code, entry.strength, entry.consequence, entry.effect) for entry in other.findings]
    assert Counter(order) == Counter(again)


@given(FINDINGS, MEASURES, QUESTIONS)
def test_an_open_stop_never_improves_the_verdict(
    findings: list[Finding], measures: list[Measure], questions: list[Question]
) -> None:
    before = judge(findings, measures, questions).verdict
    after = judge([*findings, STOP], measures, questions).verdict
    assert after == "no"
    assert rank_of(after) >= rank_of(before)


@given(FINDINGS, MEASURES, QUESTIONS, st.integers(0, 2))
def test_losing_a_measure_never_improves_the_verdict(
    findings: list[Finding], measures: list[Measure], questions: list[Question], which: int
) -> None:
    lost = [dataclasses.replace(m, feasible="no") if i == which else m for i, m in enumerate(measures)]
    before, after = judge(findings, measures, questions), judge(findings, lost, questions)
    assert rank_of(after.verdict) >= rank_of(before.verdict)


@given(FINDINGS, MEASURES, QUESTIONS, st.booleans())
def test_one_more_question_never_improves_the_verdict(
    findings: list[Finding], measures: list[Measure], questions: list[Question], blocks: bool
) -> None:
    before = judge(findings, measures, questions).verdict
    assert rank_of(judge(findings, measures, [*questions, question(blocks)]).verdict) >= rank_of(before)


@given(FINDINGS, MEASURES, QUESTIONS)
def test_go_leaves_nothing_open(findings: list[Finding], measures: list[Measure], questions: list[Question]) -> None:
    judged = judge(findings, measures, questions)
    assert len(judged.findings) == len(findings)
    if judged.verdict == "go":
        assert not any(entry.effect == "stops" and entry.status != "met" for entry in judged.findings)
        assert not any(entry.when == "before_start" and not entry.done for entry in measures)
        assert not any(entry.blocks for entry in questions)
