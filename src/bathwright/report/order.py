"""One order for what comes first: headline, list in short, checklist and questions all follow it."""

from collections.abc import Iterator
from typing import get_args

from bathwright.domain.codes import Consequence, Strength
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.plan import Plan

Rank = tuple[bool, int, int, str]
_CONSEQUENCE: tuple[str, ...] = get_args(Consequence)
_STRENGTH: tuple[str, ...] = ("law", "danger", "advice", "maker", "good_practice")
_LAST: Rank = (True, len(_CONSEQUENCE), len(_STRENGTH), "")
_WORN = ("wear_mask", "wear_gloves_goggles", "shave")

# what a rule would say at the worse answer of its question, while it says nothing else
ASKED: dict[str, tuple[Consequence, Strength]] = {
    "chlorine-from-acid": ("kills", "danger"),
    "chloramine-from-ammonia": ("kills", "danger"),
    "flame-near-vapour": ("kills", "danger"),
    "lone-work": ("kills", "advice"),
    "bleach-with-solvent": ("harms", "danger"),
    "lead-renovation-covered": ("harms", "law"),
    "isocyanate-training": ("harms", "law"),
    "painter-vapour-limit": ("harms", "law"),
    "lead-dust-control": ("harms", "advice"),
    "others-vapour-limit": ("harms", "advice"),
    "people-kept-away": ("harms", "advice"),
    "limit-unknown": ("harms", "advice"),
    "substance-unknown": ("harms", "advice"),
    "no-air-path": ("harms", "good_practice"),
    "household-cannot-leave": ("harms", "good_practice"),
    "material-unknown": ("ruins", "maker"),
    "sheet-silent": ("ruins", "maker"),
    "structural-crack": ("ruins", "good_practice"),
    "floor-flexes": ("ruins", "good_practice"),
    "leak-not-mended": ("ruins", "good_practice"),
    "rust-through": ("ruins", "good_practice"),
    "drip-not-stopped": ("ruins", "good_practice"),
    "already-lined": ("ruins", "good_practice"),
    "old-coat-fails": ("ruins", "good_practice"),
}


def rank(finding: Finding) -> Rank:
    """Open stops, then consequence, strength, code."""
    consequence, strength = _CONSEQUENCE.index(finding.consequence), _STRENGTH.index(finding.strength)
    return (not open_stop(finding), consequence, strength, finding.code)


def open_stop(finding: Finding) -> bool:
    """Whether the finding stops the job as it stands."""
    return finding.effect == "stops" and finding.status != "met"


def decides_a_no(finding: Finding) -> bool:
    """Whether the finding makes the answer no: it stops, or it must be done and cannot."""
    return open_stop(finding) or (finding.effect == "must_do" and finding.status == "open")


def of_measure(plan: Plan, measure: Measure) -> Rank:
    """The rank of the first finding that asks for the measure."""
    return min((rank(finding) for finding in plan.findings if measure.id in finding.measures), default=_LAST)


def of_question(plan: Plan, question: Question) -> Rank:
    """The rank of the finding that the question is asked for; what is not found yet ranks by its worse answer."""
    found = [rank(finding) for finding in plan.findings if finding.code == question.why]
    asked = ASKED.get(question.why)
    if asked is not None:
        found.append((True, _CONSEQUENCE.index(asked[0]), _STRENGTH.index(asked[1]), question.why))
    return min(found, default=_LAST)


def by_firm(plan: Plan) -> bool:
    """Whether a certified firm does the work in the household's stead."""
    return plan.who == "firm" and any(m.act == "certified_firm" and not m.done for m in plan.measures)


def firm_brings(plan: Plan, measure: Measure) -> bool:
    """Whether the measure is the firm's own business: the household does not buy its gloves."""
    return by_firm(plan) and (measure.who == "painter" or measure.act in _WORN)


def before_start(plan: Plan) -> tuple[Measure, ...]:
    """Measures of the household before the start: those still to do by rank, then those that are done."""
    found = [m for m in plan.measures if m.when == "before_start" and not firm_brings(plan, m)]
    return tuple(sorted(found, key=lambda m: (m.done, of_measure(plan, m))))


def questions(plan: Plan) -> tuple[Question, ...]:
    """All questions: those that block by rank, then the others by rank."""
    return tuple(sorted(plan.questions, key=lambda q: (not q.blocks, of_question(plan, q))))


def first_things(plan: Plan) -> Iterator[Measure | Question]:
    """What is to do, buy, ask or answer before the start, in the one order."""
    ranked: list[tuple[Rank, Measure | Question]] = [
        (of_measure(plan, measure), measure) for measure in before_start(plan) if not measure.done
    ]
    ranked += [(of_question(plan, question), question) for question in plan.questions if question.blocks]
    yield from (thing for _, thing in sorted(ranked, key=lambda pair: pair[0]))
