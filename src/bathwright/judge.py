"""The only code that turns findings and measures into a status and a verdict, and the order of telling."""

import dataclasses
from collections.abc import Iterable

from bathwright.domain.codes import Status, Verdict
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.record import record

_CONSEQUENCE = ("kills", "harms", "ruins", "delays", "note")
_STRENGTH = ("law", "danger", "advice", "maker", "good_practice")
_TOP = 3


@record
class Judgement:
    """Findings with their status in the order of telling, and the verdict."""

    verdict: Verdict
    findings: tuple[Finding, ...]


def judge(findings: Iterable[Finding], measures: Iterable[Measure], questions: Iterable[Question]) -> Judgement:
    """The verdict, in this order:

    any finding that stops and is not met, or that stops or must be done and whose measures cannot be had: no. Else any
    measure that must be done or had before the start, or any blocking question: not-yet. Else go.
    """
    by_id = {measure.id: measure for measure in measures}
    judged = [dataclasses.replace(finding, status=_status(finding, by_id)) for finding in findings]
    stopped = any(_open_stop(finding) or _cannot(finding) for finding in judged)
    before = any(_before_start(measure) for measure in by_id.values())
    asked = any(question.blocks for question in questions)
    verdict: Verdict = "no" if stopped else ("not-yet" if before or asked else "go")
    return Judgement(verdict=verdict, findings=tuple(in_order(judged)))


def _status(finding: Finding, measures: dict[str, Measure]) -> Status:
    """met: it relies on measures that all can be had; open: none, or one cannot; unknown stays unknown."""
    if finding.status == "unknown":
        return "unknown"
    if not finding.measures:
        return finding.status
    missing = any(name not in measures or measures[name].feasible == "no" for name in finding.measures)
    return "open" if missing else "met"


def _before_start(measure: Measure) -> bool:
    """Something that must be done or had before the work starts and is not done yet."""
    return measure.when == "before_start" and not measure.done


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Open stops, then consequence, strength, code; what can kill is never below the first three while room lasts."""
    ranked = sorted(findings, key=_rank)
    kills = [finding for finding in ranked if finding.consequence == "kills"]
    others = [finding for finding in ranked if finding.consequence != "kills"]
    room = max(0, _TOP - len(kills))
    ahead = [finding for finding in others[:room] if _open_stop(finding)]
    return sorted([*ahead, *kills], key=_rank) + others[len(ahead) :]


def _cannot(finding: Finding) -> bool:
    """Something that must be done and cannot: it relies on measures, and one of them is not to be had."""
    return finding.effect == "must_do" and bool(finding.measures) and finding.status == "open"


def _open_stop(finding: Finding) -> bool:
    return finding.effect == "stops" and finding.status != "met"


def _rank(finding: Finding) -> tuple[bool, int, int, str, tuple[str, ...]]:
    return (
        not _open_stop(finding),
        _CONSEQUENCE.index(finding.consequence),
        _STRENGTH.index(finding.strength),
        finding.code,
        finding.about,
    )


def rank_of(verdict: Verdict) -> int:
    """go before not-yet before no, for choosing among systems."""
    return ("go", "not-yet", "no").index(verdict)
