"""Who must be out, from when until when, and the second adult outside: the lines right under the verdict."""

from datetime import datetime

from bathwright.domain.findings import Measure
from bathwright.report.context import Pair
from bathwright.report.fill import capital
from bathwright.report.reader import Reader

_NOT_ABOUT_PEOPLE = ("leave_out_product",)


def is_out(measure: Measure) -> bool:
    """Whether the measure keeps people out of the home or of a room."""
    return measure.act.startswith(("leave_", "stay_")) and measure.act not in _NOT_ABOUT_PEOPLE


def out_lines(reader: Reader) -> tuple[Pair, ...]:
    """One line for each measure that keeps people out, then the helper outside; nothing when the answer is no."""
    plan = reader.plan
    if plan.verdict == "no":
        return ()
    found = [measure for measure in plan.measures if is_out(measure)]
    lines = [Pair(label=_label(reader, m), text=span(reader, m.starts, m.ends)) for m in _homes_first(found)]
    air = plan.air
    if air is not None and air.away_from and not any(m.act.startswith("leave_") for m in found):
        lines.insert(0, Pair(label=reader.label("away"), text=span(reader, air.away_from, air.away_until)))
    helpers = [measure for measure in plan.measures if measure.act == "helper_outside"]
    return (*dict.fromkeys(lines), *(_helper(reader, measure) for measure in helpers))


def _homes_first(measures: list[Measure]) -> list[Measure]:
    return sorted(measures, key=lambda m: (not m.act.startswith("leave_"), m.starts.timestamp() if m.starts else 0.0))


def _label(reader: Reader, measure: Measure) -> str:
    """ "Everybody else out of the home"; for an act without words of its own its plain words."""
    who = reader.words.get("out_who", measure.who if reader.words.has("out_who", measure.who) else "somebody")
    if reader.words.has(f"measures.{measure.act}", "out"):
        return capital(reader.words.of_code("measures", measure.act, "out", {"who": who}))
    return capital(f"{who}: {reader.words.plain(measure.act)}")


def span(reader: Reader, starts: datetime | None, ends: datetime | None) -> str:
    """ "from … not back before …", or that an hour is not known."""
    if starts is None and ends is None:
        return reader.label("out_no_hours")
    begin = "" if starts is None else reader.label("from_only", starts=reader.instant(starts, "down"))
    back = reader.label("out_unknown") if ends is None else reader.label("out_back", at=reader.instant(ends, "up"))
    return "; ".join(part for part in (begin, back) if part)


def _helper(reader: Reader, measure: Measure) -> Pair:
    hours = reader.span(measure.starts, measure.ends) or _vapour_hours(reader)
    had = reader.words.get("feasible", measure.feasible)
    text = reader.label("helper_line", when=hours or reader.label("helper_always"), had=had)
    return Pair(label=capital(reader.person("helper")), text=text)


def _vapour_hours(reader: Reader) -> str:
    """From the first to the last step that lets vapour out."""
    steps = [step for step in reader.plan.steps if step.emits and step.starts and step.ends]
    starts = min((step.starts for step in steps if step.starts), default=None)
    ends = max((step.ends for step in steps if step.ends), default=None)
    return reader.label("helper_from", span=reader.span(starts, ends)) if starts and ends else ""
