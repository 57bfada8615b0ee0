"""One plan -> everything that page and terminal show."""

from collections.abc import Mapping

from bathwright.domain.plan import Plan
from bathwright.report import air_view, chart, findings_view, order, steps_view, stuff_view
from bathwright.report.context import EmergencyView, FindingView, Pair, PlanContext
from bathwright.report.fill import capital, clean
from bathwright.report.reader import Reader, sentence
from bathwright.report.timeline import timeline
from bathwright.report.who_out import out_lines
from bathwright.report.words import catalogue

_TOP = 3
_CAUTIONS = ("maker", "codes", "licensed", "measured", "times")
_SHORT_ID = 12


def plan_context(plan: Plan) -> PlanContext:
    """Words and figures of a plan. Never raises for a code without words: it shows the code in plain words."""
    return context_of(Reader(plan))


def gaps(plan: Plan) -> tuple[str, ...]:
    """What the catalogue lacks for this plan: codes without words, texts whose values the record does not bring."""
    reader = Reader(plan)
    context_of(reader)
    return tuple(sorted(reader.words.missed))


def context_of(reader: Reader) -> PlanContext:
    """Words and figures of the plan of a reader. The list of sources is made last: it grows while the rest is made."""
    plan = reader.plan
    refused = plan.verdict == "no"
    top, others = _findings(reader)
    return PlanContext(
        language=reader.words.language,
        labels=_labels(reader),
        verdict=findings_view.verdict_line(reader),
        verdict_look=plan.verdict,
        who=_who(reader),
        example=_example(reader),
        asked=_asked(reader),
        out=out_lines(reader),
        top=top,
        first=findings_view.first_things(reader),
        firm=findings_view.firm_brings(reader),
        emergency=_emergency(reader),
        before=findings_view.before_start(reader),
        questions=findings_view.questions(reader),
        when=None if refused else steps_view.when_table(reader),
        when_notes=() if refused else steps_view.when_notes(reader),
        timeline=None if refused else timeline(reader),
        states=None if refused else steps_view.states_table(reader),
        clocks=None if refused else steps_view.clocks_table(reader),
        air=air_view.air_view(reader),
        panels=() if refused else chart.panels(reader),
        area=stuff_view.area_lines(reader),
        materials=None if refused else stuff_view.materials_table(reader),
        mixes=None if refused else stuff_view.mixes_table(reader),
        phases=() if refused else steps_view.phases(reader),
        others=others,
        alternatives=stuff_view.alternatives_table(reader),
        care=() if refused else stuff_view.care(reader),
        waste=() if refused else stuff_view.waste(reader),
        climate=stuff_view.climate(reader),
        assumptions=stuff_view.assumptions_table(reader),
        numbers=stuff_view.numbers_table(reader),
        cost=stuff_view.cost_table(reader),
        cautions=tuple(reader.words.get("caution", name) for name in _CAUTIONS),
        footer=_footer(reader),
        sources=stuff_view.sources(reader),
    )


def _findings(reader: Reader) -> tuple[tuple[FindingView, ...], tuple[FindingView, ...]]:
    """What stands at the top, and the rest: the first three; when the answer is no, what decides it.

    After a no nothing is shown as kept by the plan: there is no plan that keeps it.
    """
    found = reader.plan.findings
    if reader.plan.verdict != "no":
        views = tuple(findings_view.finding_view(reader, finding) for finding in found)
        return views[:_TOP], views[_TOP:]
    told = (finding for finding in found if finding.status != "met" and finding.consequence != "delays")
    still = sorted(told, key=order.rank)
    first = [finding for finding in still if order.decides_a_no(finding)]
    rest = [finding for finding in still if finding not in first]
    views = tuple(findings_view.finding_view(reader, finding) for finding in (*first, *rest))
    return views[: len(first)], views[len(first) :]


def _labels(reader: Reader) -> Mapping[str, str]:
    """All labels that need no value; some say another thing when the answer is no."""
    labels = catalogue(reader.words.language)["label"]
    plain = {name: text for name, text in labels.items() if "{" not in text}
    if reader.plan.verdict != "no":
        return plain
    return plain | {name[:-3]: text for name, text in plain.items() if name.endswith("_no") and name[:-3] in plain}


def _example(reader: Reader) -> str:
    plan = reader.plan
    product = plan.system is not None and any(sheet.invented for sheet in plan.system.sheets)
    if plan.survey.invented and product:
        return reader.label("invented")
    if plan.survey.invented:
        return reader.label("invented_home")
    return reader.label("invented_product") if product else ""


def _asked(reader: Reader) -> tuple[Pair, ...]:
    plan = reader.plan
    survey, place = plan.survey, plan.survey.place
    home = ", ".join(clean(part) for part in (survey.id, place.region or "", place.country) if part)
    pairs = [
        ("home", home),
        ("bath", "; ".join(_fixture(reader, number) for number in range(len(survey.fixtures)))),
        ("system", _system(reader)),
        ("other_sheets", _others(reader)),
        ("who", _who(reader)),
        ("note", clean(survey.note or "")),
        ("made_at", reader.instant(plan.made_for.at)),
    ]
    return tuple(Pair(label=reader.label(name), text=text) for name, text in pairs if text)


def _who(reader: Reader) -> str:
    """Who may do the work; while something is open, only after it."""
    plan = reader.plan
    later = plan.verdict == "not-yet" and reader.words.has("who", f"{plan.who}_not_yet")
    return reader.words.get("who", f"{plan.who}_not_yet" if later else plan.who)


def _fixture(reader: Reader, number: int) -> str:
    fixture = reader.plan.survey.fixtures[number]
    parts = [capital(reader.words.word(fixture.kind))]
    parts.append(reader.words.word(fixture.material) if fixture.material else reader.label("material_untold"))
    if fixture.year is not None:
        parts.append(str(fixture.year))
    return ", ".join(parts)


def _system(reader: Reader) -> str:
    system = reader.plan.system
    if system is None:
        return reader.label("no_system")
    family = reader.words.word(system.family, "family", free=True)
    method = reader.words.word(system.method)
    return f"{clean(system.product)} ({family}; {method})"


def _others(reader: Reader) -> str:
    system = reader.plan.system
    if system is None:
        return ""
    others = [sheet for sheet in system.sheets if sheet.id != system.id]
    return "; ".join(f"{clean(sheet.product)} ({reader.words.word(sheet.role)})" for sheet in others)


def _emergency(reader: Reader) -> EmergencyView:
    box, words = reader.plan.emergency, reader.words
    system = reader.plan.system
    product = words.get("emergency", "say_no_product")
    if system is not None:
        product = words.get("emergency", "say_product", product=clean(system.product))
    numbers = {"emergency": clean(box.emergency), "poison": clean(box.poison or "")}
    lines = (
        words.get("emergency", "ill_poison" if box.poison else "ill", **numbers),
        words.get("emergency", "say", product=product),
        words.get("emergency", "gas"),
        words.get("emergency", "eye", clean_tap=_clean_tap(reader)),
    )
    return EmergencyView(
        lines=tuple(sentence(line) for line in lines),
        mark=words.get("mark", box.mark),
        references=reader.references((box.source,)),
    )


def _clean_tap(reader: Reader) -> str:
    """The tap as told; a single word ("kitchen") is taken as the room of the tap."""
    told = clean(reader.plan.emergency.clean_tap or reader.plan.survey.clean_tap or "")
    if not told:
        return reader.words.get("emergency", "clean_tap")
    return told if " " in told else reader.label("clean_tap", place=told)


def _footer(reader: Reader) -> tuple[str, ...]:
    plan = reader.plan
    made = plan.made_with
    return (
        f"{reader.label('plan_id')} {clean(plan.id)[:_SHORT_ID]}",
        reader.label("footer", version=clean(made.version), knowledge=clean(made.knowledge_version)),
    )
