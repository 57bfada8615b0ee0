"""Findings, measures, questions and the verdict line in words."""

from collections.abc import Iterable

from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.plan import Alternative, Plan
from bathwright.report import order
from bathwright.report.amounts import percent, significant
from bathwright.report.context import FindingView, MeasureView, QuestionView
from bathwright.report.fill import capital
from bathwright.report.reader import Reader, sentence

_LEVELS = {"kills": 4, "harms": 3, "ruins": 2, "delays": 1, "note": 0}
_NO_SHARE = ("temperature",)  # a percentage of a temperature says nothing
_UNKNOWN = "unknown-cleaner"
_CHLORINE = ("bleach", "chlorinated-abrasive")
_MAY_HOLD = {
    "chlorine-from-acid": "acid",
    "chloramine-from-ammonia": "ammonia",
    "bleach-with-solvent": "solvent",
}
_PROTECTS = ("wear_mask", "wear_gloves_goggles", "helper_outside")


def finding_view(reader: Reader, finding: Finding) -> FindingView:
    """One finding in words."""
    words, values = reader.words, _finding_values(reader, finding)
    met = finding.status == "met"
    measures = {measure.id: measure for measure in reader.plan.measures}
    relax = "" if met or not finding.relax else words.of_code("findings", finding.code, "relax", values)
    refused = reader.plan.verdict == "no"
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
        measures=()
        if refused
        else tuple(measure_view(reader, measures[name]) for name in finding.measures if name in measures),
        relax=relax,
        marks=", ".join(dict.fromkeys(words.get("mark", mark) for mark in finding.marks)),
        references=reader.references(finding.sources),
    )


def _text(reader: Reader, finding: Finding, name: str, values: dict[str, str]) -> str:
    met = f"{name}_met"
    has_met = finding.status == "met" and reader.words.has(f"findings.{finding.code}", met)
    return capital(reader.words.of_code("findings", finding.code, met if has_met else name, values))


def _finding_values(reader: Reader, finding: Finding) -> dict[str, str]:
    """The values of the finding by name, and those that every finding offers; no hours of a plan that says no."""
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
    told = finding.values
    if reader.plan.verdict == "no":
        told = tuple(value for value in told if not reader.is_instant(value.value))
    return without_unknown(reader, finding, offered | reader.values(told))


def without_unknown(reader: Reader, finding: Finding, values: dict[str, str]) -> dict[str, str]:
    """Where one of two that would meet is a cleaner that nobody can name: what it may hold, and what it would meet."""
    pair = {value.name: str(value.value) for value in finding.values if value.name in ("first", "second")}
    if len(pair) < 2:
        return values
    told = {code for step in reader.plan.steps for use in step.uses for code in use.chemistry}
    lately = {use.chemistry for fixture in reader.plan.survey.fixtures for use in fixture.used_lately or ()}
    if _UNKNOWN in lately and pair["second"] not in told | lately:
        pair["second"] = _UNKNOWN  # it was judged as the worst that it may be
    if _UNKNOWN not in pair.values():
        return values
    known = next((code for code in pair.values() if code != _UNKNOWN), _UNKNOWN)
    hidden = _MAY_HOLD.get(finding.code, "bleach") if known in _CHLORINE else "bleach"
    kept = {name: text for name, text in values.items() if name not in pair}
    return kept | {"hidden": reader.label(f"hidden_{hidden}"), "known": reader.words.word(known)}


def _facts(reader: Reader, finding: Finding) -> tuple[str, ...]:
    """Value, limit, margin and basis; empty when the text itself says the value."""
    out: list[str] = []
    if "value" in reader.words.takes("findings", finding.code, "what") or finding.value is None:
        return ()
    value = reader.amount(finding.value, finding.kind, both=True)
    no_limit = finding.limit is None or (finding.kind == "time" and finding.limit == 0)
    limit = None if no_limit else reader.amount(finding.limit or 0.0, finding.kind, both=True)
    bare = finding.status == "met" and finding.margin is not None and finding.margin < 0
    refused = reader.plan.verdict == "no"
    if limit is not None:
        name = "if_done_limit" if refused else "without_measures" if bare else "planned_limit"
        out.append(reader.label(name, value=value, limit=limit))
    else:
        out.append(reader.label("if_done_only" if refused else "planned_only", value=value))
    has_share = finding.kind not in _NO_SHARE
    if finding.margin is not None and limit is not None and has_share and not bare:
        out.append(_margin(reader, finding.margin))
    if finding.basis is not None:
        out.append(reader.label("basis", basis=reader.words.get("basis", finding.basis)))
    return tuple(out)


def _margin(reader: Reader, margin: float) -> str:
    """Room to the limit, or how far beyond it; from twice the limit on as times."""
    if margin < -1:
        return reader.label("times_beyond", times=significant(1 - margin))
    name = "margin_inside" if margin >= 0 else "margin_beyond"
    return reader.label(name, percent=percent(abs(margin)))


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
    """Measures of the household before the start, in the one order; none when the answer is no."""
    if reader.plan.verdict == "no":
        return ()
    return tuple(measure_view(reader, measure) for measure in order.before_start(reader.plan))


def first_things(reader: Reader) -> tuple[str, ...]:
    """What comes first, in short, in the one order; none when the answer is no."""
    if reader.plan.verdict == "no":
        return ()
    return tuple(dict.fromkeys(_in_short(reader, thing) for thing in order.first_things(reader.plan)))


def firm_brings(reader: Reader) -> str:
    """What the firm brings and wears by itself, one line; empty when the household does the work."""
    own = [measure for measure in reader.plan.measures if order.firm_brings(reader.plan, measure)]
    worn = [worn_in_words(reader, measure) for measure in own if reader.words.has(f"measures.{measure.act}", "worn")]
    if reader.plan.verdict == "no" or not worn:
        return ""
    return reader.label("firm_brings", list=", ".join(dict.fromkeys(worn)))


def questions(reader: Reader) -> tuple[QuestionView, ...]:
    """All open questions, those that block first; none when the answer is no."""
    if reader.plan.verdict == "no":
        return ()
    return tuple(question_view(reader, entry) for entry in order.questions(reader.plan))


def protection(reader: Reader) -> tuple[MeasureView, ...]:
    """What protects the painter."""
    if reader.plan.verdict == "no":
        return ()
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
    """What must be done, bought, asked or answered first, in the one order."""
    first = next(order.first_things(reader.plan), None)
    return reader.words.get("verdict", "first_unknown") if first is None else _in_short(reader, first)


def _in_short(reader: Reader, thing: Measure | Question) -> str:
    return _short(reader, thing) if isinstance(thing, Measure) else _ask(reader, thing)


def worn_in_words(reader: Reader, measure: Measure) -> str:
    """What a measure puts on somebody, as a noun: "half mask with vapour filters"."""
    if reader.words.has(f"measures.{measure.act}", "worn"):
        return reader.words.of_code("measures", measure.act, "worn", measure_values(reader, measure))
    return reader.text(measure.what) if measure.what else reader.words.plain(measure.act)


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
