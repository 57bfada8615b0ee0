"""Findings, measures, questions and the verdict line in words."""

from collections.abc import Iterable

from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.plan import Alternative, Plan
from bathwright.report.amounts import percent, significant
from bathwright.report.context import FindingView, MeasureView, QuestionView
from bathwright.report.fill import capital
from bathwright.report.reader import Reader, sentence

_LEVELS = {"kills": 4, "harms": 3, "ruins": 2, "delays": 1, "note": 0}
_NO_SHARE = ("temperature",)  # a percentage of a temperature says nothing
_PROTECTS = ("wear_mask", "wear_gloves_goggles", "helper_outside")


def finding_view(reader: Reader, finding: Finding) -> FindingView:
    """One finding in words."""
    words, values = reader.words, _finding_values(reader, finding)
    met = finding.status == "met"
    measures = {measure.id: measure for measure in reader.plan.measures}
    return FindingView(
        title=_text(reader, finding, "title", values),
        what=_text(reader, finding, "what", values),
        facts=_facts(reader, finding),
        consequence=words.get("consequence", finding.consequence),
        level=_LEVELS[finding.consequence],
        strength=_strength(reader, finding),
        status=words.get("status", finding.status),
        met=met,
        effect=words.get("effect", finding.effect),
        steps="; ".join(reader.step(name) for name in finding.about if name in reader.numbers),
        measures=tuple(measure_view(reader, measures[name]) for name in finding.measures if name in measures),
        relax="" if met or not finding.relax else words.of_code("findings", finding.code, "relax", values),
        marks=", ".join(dict.fromkeys(words.get("mark", mark) for mark in finding.marks)),
        references=reader.references(finding.sources),
    )


def _text(reader: Reader, finding: Finding, name: str, values: dict[str, str]) -> str:
    met = f"{name}_met"
    has_met = finding.status == "met" and reader.words.has(f"findings.{finding.code}", met)
    return capital(reader.words.of_code("findings", finding.code, met if has_met else name, values))


def _finding_values(reader: Reader, finding: Finding) -> dict[str, str]:
    """The values of the finding by name, and those that every finding offers."""
    offered: dict[str, str] = {}
    products = [product for name in finding.about if (product := reader.product(name))]
    steps = [name for name in finding.about if name in reader.numbers]
    if products:
        offered["product"] = products[0]
    if steps:
        offered["step"] = reader.step(steps[0])
    if finding.value is not None:
        offered["value"] = reader.amount(finding.value, finding.kind, both=True)
    if finding.limit is not None:
        offered["limit"] = reader.amount(finding.limit, finding.kind, both=True)
    if finding.bound:
        offered["bound"] = reader.words.word(finding.bound, "bound", "person", free=True)
    return offered | reader.values(finding.values)


def _facts(reader: Reader, finding: Finding) -> tuple[str, ...]:
    """Value, limit, margin and basis; empty when the text itself says the value."""
    out: list[str] = []
    if "value" in reader.words.takes("findings", finding.code, "what"):
        return ()
    value = None if finding.value is None else reader.amount(finding.value, finding.kind, both=True)
    limit = None if finding.limit is None else reader.amount(finding.limit, finding.kind, both=True)
    bare = finding.status == "met" and finding.margin is not None and finding.margin < 0
    if value is not None and limit is not None:
        name = "without_measures" if bare else "planned_limit"
        out.append(reader.label(name, value=value, limit=limit))
    elif value is not None:
        out.append(reader.label("planned_only", value=value))
    elif limit is not None:
        out.append(reader.label("limit_only", limit=limit))
    has_share = finding.kind not in _NO_SHARE
    if finding.margin is not None and value is not None and limit is not None and has_share and not bare:
        name = "margin_inside" if finding.margin >= 0 else "margin_beyond"
        out.append(reader.label(name, percent=percent(abs(finding.margin))))
    if finding.basis is not None and value is not None:
        out.append(reader.label("basis", basis=reader.words.get("basis", finding.basis)))
    return tuple(out)


def _strength(reader: Reader, finding: Finding) -> str:
    word = reader.words.get("strength", finding.strength)
    if finding.strength != "law":
        return word
    bound = reader.words.word(finding.bound or "none", "bound", "person", free=True)
    return f"{word}: {bound if not finding.bound else reader.label('bound', bound=bound)}"


def measure_view(reader: Reader, measure: Measure) -> MeasureView:
    """One measure in words."""
    values = measure_values(reader, measure)
    takes = reader.words.takes("measures", measure.act, "do")
    said = any(name in takes and name in values for name in ("starts", "ends"))
    feasible = reader.label("done") if measure.done else reader.words.get("feasible", measure.feasible)
    return MeasureView(
        do=sentence(reader.words.of_code("measures", measure.act, "do", values)),
        short=_short(reader, measure),
        who=reader.person(measure.who),
        time="" if said else reader.span(measure.starts, measure.ends),
        feasible=feasible,
        done=measure.done,
        extra="" if not measure.factor else reader.label("factor", factor=significant(measure.factor)),
    )


def measure_values(reader: Reader, measure: Measure) -> dict[str, str]:
    """What the texts of a measure can be filled with."""
    values = reader.values(measure.values)
    if measure.what:
        values["what"] = reader.text(measure.what)
    if measure.starts:
        values["starts"] = reader.instant(measure.starts, "down")
    if measure.ends:
        values["ends"] = reader.instant(measure.ends, "up")
    return values


def question_view(reader: Reader, question: Question) -> QuestionView:
    """One open question in words."""
    words = reader.words
    told = words.has(f"questions.{question.asks}", "worse")
    if told:
        worse = words.of_code("questions", question.asks, "worse", {})
    else:
        worse = words.word(question.worse_answer, free=True)
    return QuestionView(
        ask=_question(reader, question),
        why=words.of_code("questions", question.asks, "why", {}),
        test=words.of_code("questions", question.asks, "test", {}),
        worse=reader.label("worse", answer=worse) if question.worse_answer else "",
        blocks=reader.label("blocks") if question.blocks else "",
    )


def _question(reader: Reader, question: Question) -> str:
    """The question, with the product, fact or substance that it is about."""
    values = {}
    for name in question.about:
        if product := reader.product(name):
            values["product"] = product
        elif reader.words.has("value", name):
            values["fact"] = reader.words.word(name)
        elif reader.is_substance(name):
            values["substance"] = reader.substance(name)
    return reader.words.of_code("questions", question.asks, "ask", values)


def before_start(reader: Reader) -> tuple[MeasureView, ...]:
    """Measures before the start: those still to do first, then by time."""
    found = [measure for measure in reader.plan.measures if measure.when == "before_start"]
    found.sort(key=lambda m: (m.done, m.starts.timestamp() if m.starts else 0.0))
    return tuple(measure_view(reader, measure) for measure in found)


def questions(reader: Reader) -> tuple[QuestionView, ...]:
    """All open questions, those that block first."""
    return tuple(question_view(reader, entry) for entry in sorted(reader.plan.questions, key=lambda q: not q.blocks))


def protection(reader: Reader) -> tuple[MeasureView, ...]:
    """What protects the painter."""
    return tuple(measure_view(reader, entry) for entry in reader.plan.measures if entry.act in _PROTECTS)


def verdict_line(reader: Reader) -> str:
    """The line with which page and terminal begin."""
    plan, words = reader.plan, reader.words
    if plan.verdict == "go":
        return words.get("verdict", "go")
    if plan.verdict == "no":
        best = _best_alternative(plan)
        instead = words.get("verdict", "instead_unknown") if best is None else alternative_in_words(reader, best)
        return words.get("verdict", "no", instead=instead)
    return words.get("verdict", "not_yet", first=_first(reader))


def _best_alternative(plan: Plan) -> Alternative | None:
    """The first that may go, else the first that is not refused; in the order of the record."""
    may_go = [entry for entry in plan.alternatives if entry.verdict == "go"]
    open_ones = [entry for entry in plan.alternatives if entry.verdict != "no"]
    return next(iter(may_go or open_ones), None)


def alternative_in_words(reader: Reader, entry: Alternative, name: str = "do") -> str:
    """An alternative as "use …" or by its name."""
    values = {} if not entry.product else {"product": reader.text(entry.product)}
    return reader.words.of_code("alternatives", entry.kind, name, values)


def _first(reader: Reader) -> str:
    """What must be done, bought or asked first: of the first open finding, else the first of the plan."""
    plan = reader.plan
    to_do = [m for m in plan.measures if m.when == "before_start" and not m.done and m.feasible != "have"]
    blocking = [question for question in plan.questions if question.blocks]
    for finding in plan.findings:
        if finding.status == "met" or finding.effect == "tells":
            continue
        measure = next((m for m in to_do if m.id in finding.measures), None)
        if measure is not None:
            return _short(reader, measure)
        question = next((q for q in blocking if _is_about(q, finding)), None)
        if question is not None:
            return _ask(reader, question)
    if blocking:
        return _ask(reader, blocking[0])
    left = to_do or [m for m in plan.measures if m.when == "before_start" and not m.done]
    return _short(reader, left[0]) if left else reader.words.get("verdict", "first_unknown")


def _is_about(question: Question, finding: Finding) -> bool:
    return finding.code in question.about or bool(set(question.about) & set(finding.about))


def _ask(reader: Reader, question: Question) -> str:
    return reader.words.get("verdict", "answer", ask=_question(reader, question))


def _short(reader: Reader, measure: Measure) -> str:
    text = reader.words.of_code("measures", measure.act, "short", measure_values(reader, measure))
    return text[:1].lower() + text[1:]


def titles(reader: Reader, codes: Iterable[str], met: bool = False) -> str:
    """Titles of finding codes, one after the other."""
    out = []
    for code in codes:
        kept = met and reader.words.has(f"findings.{code}", "title_met")
        out.append(capital(reader.words.of_code("findings", code, "title_met" if kept else "title", {})))
    return "; ".join(dict.fromkeys(out))
