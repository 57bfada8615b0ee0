"""The plan as text for a terminal: first what can kill and what comes first, then everything else."""

from collections.abc import Callable

from bathwright.domain.plan import Plan
from bathwright.report.build import plan_context
from bathwright.report.context import FindingView, MeasureView, PlanContext, Reference, StepView
from bathwright.report.reader import sentence
from bathwright.report.terminal import Sheet


def plan_text(plan: Plan, *, width: int = 88, colour: bool = False) -> str:
    """The plan in words for a terminal of `width` characters; the first line is the verdict.

    colour: bold and reverse by ANSI signs. The same plan gives the same bytes.
    """
    context = plan_context(plan)
    sheet = Sheet(width, colour)
    _first_screen(sheet, context)
    sheet.blank()
    sheet.say(f"── {context.labels['more']} ──", strong=True)
    for part in _PARTS_OF_NO if context.verdict_look == "no" else _PARTS:
        part(sheet, context)
    return sheet.text()


def _first_screen(sheet: Sheet, context: PlanContext) -> None:
    sheet.say(context.verdict, strong=True, loud=context.verdict_look == "no")
    if context.example:
        sheet.say(context.example)
    sheet.blank()
    for pair in context.asked:
        sheet.pair(pair.label, pair.text)
    if context.out:
        sheet.blank()
    for pair in context.out:
        sheet.pair(pair.label, pair.text)
    sheet.heading(context.labels["three_things"])
    for number, finding in enumerate(context.top, 1):
        _finding_head(sheet, finding, f"{number}. ")
    if not context.top:
        sheet.say(context.labels["no_findings"])
    sheet.blank()
    sheet.box(context.labels["emergency"], context.emergency.lines)
    if context.first:
        sheet.heading(context.labels["to_do_first"])
        sheet.numbered(sentence(text) for text in context.first)


def _finding_head(sheet: Sheet, finding: FindingView, first: str) -> None:
    tag = f"{first}{finding.consequence.upper()} – "
    sheet.say(f"{tag}{finding.title}", rest=" " * len(first), strong=True, loud=finding.level == 4 and not finding.met)
    indent = " " * len(first)
    sheet.say(" ".join([finding.what, *finding.facts]), first=indent, rest=indent)
    notes = [finding.strength, finding.status, *([] if finding.met else [finding.effect])]
    sheet.say(f"({'; '.join(notes)})", first=indent, rest=indent)


def _finding_rest(sheet: Sheet, finding: FindingView, context: PlanContext, indent: str) -> None:
    labels = context.labels
    if finding.steps:
        sheet.say(f"{labels['at_steps']}: {finding.steps}.", first=indent, rest=indent)
    for measure in finding.measures:
        sheet.say(_measure(measure), first=f"{indent}→ ", rest=f"{indent}  ")
    if finding.relax:
        sheet.say(f"{labels['relax']}: {finding.relax}", first=indent, rest=indent)
    proof = [part for part in (finding.marks, _cited(finding.references)) if part]
    if proof:
        sheet.say(f"{labels['marks']}: {' '.join(proof)}", first=indent, rest=indent)


def _measure(measure: MeasureView) -> str:
    notes = [measure.who, *([measure.time] if measure.time else []), measure.feasible]
    notes += [measure.extra] if measure.extra else []
    return f"{measure.do} ({'; '.join(notes)})"


def _cited(references: tuple[Reference, ...]) -> str:
    return " ".join(f"[{reference.number}]" for reference in references)


def _before(sheet: Sheet, context: PlanContext) -> None:
    labels = context.labels
    if context.verdict_look == "no":
        return
    sheet.heading(labels["before"])
    sheet.items((_measure(measure) for measure in context.before), "□ ")
    if context.firm:
        sheet.say(context.firm)
    if context.questions:
        sheet.blank()
        sheet.say(labels["questions"], strong=True)
    for question in context.questions:
        sheet.say(question.ask, first="? ", rest="  ", strong=True)
        rest = [question.why, f"{labels['test']}: {question.test}", question.worse, question.blocks]
        sheet.say(" ".join(part for part in rest if part), first="  ", rest="  ")
    if not context.before and not context.questions:
        sheet.say(labels["nothing_open"])


def _times(sheet: Sheet, context: PlanContext) -> None:
    if not context.when_notes:
        return
    sheet.heading(context.labels["when"])
    for note in context.when_notes:
        sheet.say(note)
    for table, name in ((context.when, ""), (context.states, "states"), (context.clocks, "clocks")):
        if table is not None:
            if name:
                sheet.heading(context.labels[name])
            else:
                sheet.blank()
            sheet.table(table)


def _air(sheet: Sheet, context: PlanContext) -> None:
    if context.air is None:
        return
    labels = context.labels
    sheet.heading(labels["air"])
    for pair in context.air.lines:
        sheet.pair(pair.label, pair.text)
    for panel in context.panels:
        sheet.pair(f"{labels['courses']}, {panel.title}", f"{panel.peak}.")
    if context.air.protection:
        sheet.blank()
        sheet.say(labels["protection"], strong=True)
        sheet.items(_measure(measure) for measure in context.air.protection)
    if context.air.peaks is not None:
        sheet.blank()
        sheet.say(labels["peaks"], strong=True)
        sheet.table(context.air.peaks)
    if context.air.small:
        sheet.say(context.air.small)


def _stuff(sheet: Sheet, context: PlanContext) -> None:
    for table, name in ((context.materials, "materials"), (context.mixes, "mixes")):
        if table is None:
            continue
        sheet.heading(context.labels[name])
        if name == "materials":
            sheet.items(context.area, "")
        sheet.table(table)


def _steps(sheet: Sheet, context: PlanContext) -> None:
    if not context.phases:
        return
    sheet.heading(context.labels["steps"])
    for phase in context.phases:
        sheet.blank()
        sheet.say(phase.title.upper(), strong=True)
        for step in phase.steps:
            _step(sheet, step, context)


def _step(sheet: Sheet, step: StepView, context: PlanContext) -> None:
    labels = context.labels
    sheet.say(f"{step.number}. {step.title}", strong=True)
    sheet.say("; ".join(part for part in (step.runs, step.work, step.room) if part), first="   ", rest="   ")
    sheet.say(step.do, first="   ", rest="   ")
    sheet.say(f"{labels['why']}: {step.why}", first="   ", rest="   ")
    for name, texts in (("wear", step.wears), ("uses", step.uses), ("look_for", step.looks), ("waits", step.waits)):
        if texts:
            sheet.say(f"{labels[name]}: {' '.join(sentence(text) for text in texts)}", first="   ", rest="     ")
    if step.references:
        sheet.say(f"{labels['source']}: {_cited(step.references)}", first="   ", rest="     ")


def _findings(sheet: Sheet, context: PlanContext) -> None:
    if context.top:
        sheet.heading(context.labels["in_full"])
    for number, finding in enumerate(context.top, 1):
        sheet.say(f"{number}. {finding.title}", strong=True)
        _finding_rest(sheet, finding, context, "   ")
    if context.others:
        sheet.heading(context.labels["other_findings"])
    for finding in context.others:
        _finding_head(sheet, finding, "• ")
        _finding_rest(sheet, finding, context, "  ")


def _after(sheet: Sheet, context: PlanContext) -> None:
    labels = context.labels
    if context.alternatives is not None:
        sheet.heading(labels["alternatives"])
        sheet.table(context.alternatives)
        if context.verdict_look == "no":
            sheet.say(labels["ask_other_way"])
    for texts, name in ((context.care, "care"), (context.waste, "waste")):
        if texts:
            sheet.heading(labels[name])
            sheet.items(texts)


def _proof(sheet: Sheet, context: PlanContext) -> None:
    labels = context.labels
    if context.assumptions is not None or context.climate:
        sheet.heading(labels["assumptions"])
        for line in context.climate:
            sheet.say(line)
    for table, name in ((context.assumptions, ""), (context.numbers, "numbers"), (context.cost, "cost")):
        if table is not None:
            if name:
                sheet.heading(labels[name])
            sheet.table(table)
    if context.sources:
        sheet.heading(labels["sources"])
    for source in context.sources:
        sheet.say(f"{source.citation} ({source.id})", first=f"[{source.number}] ", rest="     ")
    sheet.heading(labels["cautions"])
    sheet.items(context.cautions)
    sheet.blank()
    for line in context.footer:
        sheet.say(line)


_PARTS: tuple[Callable[[Sheet, PlanContext], None], ...] = (
    _before, _times, _air, _stuff, _steps, _findings, _after, _proof,
)  # fmt: skip
_PARTS_OF_NO = (_after, _findings, _air, _proof)
