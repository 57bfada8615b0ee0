"""What a plan file itself says of a number: units, facts, limits, what decides a start."""

from typing import Any

from bathwright.app.plan_file import Parts, Table
from bathwright.sources import citation, load
from bathwright.units import KINDS, show

_DECIDES = {
    "earliest": "the earliest start that was told, or the time of the plan",
    "hours": "the working hours: the first in which the step fits",
    "most-wait": "a longest wait of a later step: the start moves towards it",
}
_CLOCK_WHY = {
    "printed": "the printed time is the longer one",
    "cold": "the bath is colder than the paper supposes: the computed time is the longer one",
    "dry_air": "the air is dry: a sealant that cures with moisture takes longer",
    "sealant": "the sealant is later than the coating",
    "air": "the air of the bathroom is later than the coating",
    "sheet_silent": "the sheet does not say it",
    "never_cures": "at this temperature it does not cure",
}


def with_unit(value: Any, kind: str | None) -> str:
    """The value with its SI unit, and in the unit that people read."""
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, int | float) or kind not in KINDS:
        return str(value)
    unit = "" if KINDS[kind].si == "1" else KINDS[kind].si
    plain = f"{value:.12g} {unit}".strip()
    shown_in = KINDS[kind].shown["si"][0].replace("²", "2").replace("³", "3")
    if shown_in == unit:
        return plain
    try:
        shown = f"{value * 1e6:.4g} mg/m3" if kind == "concentration" else show(float(value), kind)
    except OverflowError:
        return plain
    return f"{plain} ({shown})"


def own_lines(parts: Parts, owners: list[Table]) -> list[str]:
    """Lines from the tables around a number, the nearest that says something."""
    if "limit" in parts or parts[-1] == "limit_value":
        return _limit(owners)
    if not owners:
        return []
    if parts[0] == "clocks":
        return _clock(owners[-1])
    if parts[0] == "steps" and parts[-1] in ("starts", "ends", "earliest", "decides"):
        return _start(owners[-1])
    if parts[0] == "alternatives" and parts[-1] == "vapour_kg":
        return _vapour(owners[-1])
    if parts[0] == "exposures" and parts[-1] in ("share_central", "share_upper"):
        return ["from: what is breathed (inside) divided by the limit; 1 is the limit", *_limit(owners)]
    return next((lines for table in owners if (lines := _said(table))), [])


def _said(table: Table) -> list[str]:
    lines = [line for key in ("facts", "because") for line in _facts(table.get(key))]
    source, mark = table.get("source"), table.get("mark")
    if isinstance(source, str) and (source in load() or isinstance(mark, str)):
        named = citation(source) if source in load() else f"the sheet {source}"
        lines.append(f"source: {named}" + (f" [{mark}]" if isinstance(mark, str) else ""))
    return lines


def _facts(because: Any) -> list[str]:
    """Facts of a sheet ("sheet/fact") and sources of the bibliography; codes of findings are neither."""
    words = [word for word in because if isinstance(word, str)] if isinstance(because, list) else []
    facts = [f"fact of a sheet: {word}" for word in words if "/" in word]
    return facts + [f"source: {citation(word)}" for word in words if word in load()]


def _limit(owners: list[Table]) -> list[str]:
    """The limit's own body, kind and source: it was looked up, not computed."""
    limit: Any = next((o["limit"] for o in owners if isinstance(o.get("limit"), dict)), None)
    if limit is None:
        additive = "the sum over all substances of value divided by limit, or a share of air: 1 or the share stands"
        return [f"limit: none of one substance; {additive}"]
    whom = f"{limit.get('body')} {limit.get('year') or ''}".strip()
    lines = [f"limit: {limit.get('id')} ({whom}, for a {limit.get('for_whom')}, {limit.get('kind')})"]
    if limit.get("surrogate") is True:
        lines.append("limit: of a like substance, for want of an own one")
    return lines + _said(limit)


def _clock(clock: Table) -> list[str]:
    lines = [f"runs from: the end of the step {clock.get('runs_from') or 'that is not known'}"]
    computed = clock.get("computed_s")
    parts = [("printed", clock.get("printed_s"))]
    if isinstance(computed, dict):
        parts += [(f"computed, {side}", computed.get(side)) for side in ("low", "central", "high")]
    parts.append(("used", clock.get("used_s")))
    lines += [f"from: {name} = {with_unit(value, 'time')}" for name, value in parts]
    why = clock.get("why")
    return [*lines, f"decided by: {_CLOCK_WHY.get(str(why), why)}", *_facts(clock.get("facts"))]


def _start(step: Table) -> list[str]:
    """What decides when a step starts: a step before it, a demand on it, the hours, or the earliest start."""
    decides = step.get("decides")
    demands = step.get("demands")
    own = [d for d in demands if isinstance(d, dict)] if isinstance(demands, list) else []
    demand = next((entry for entry in own if entry.get("id") == decides), None)
    work = step.get("work_s")
    lines = [f"decided by: {_DECIDES.get(str(decides), f'the end of the step {decides}')}"]
    if demand is not None:
        lines = [f"decided by: the demand {decides}", *_demand(demand)]
    if isinstance(work, dict):
        lines.append(f"from: time of work = {with_unit(work.get('central'), 'time')}")
    return [*lines, *([] if demand is not None else _facts(step.get("because")))]


def _demand(demand: Table) -> list[str]:
    lines = []
    if demand.get("after"):
        lines.append(f"from: counted from the {demand.get('after_edge')} of the step {demand['after']}")
    for key, name in (
        ("printed_least_s", "least wait as printed"),
        ("least_s", "least wait as used"),
        ("most_s", "longest wait"),
    ):
        if demand.get(key) is not None:
            lines.append(f"from: {name} = {with_unit(demand[key], 'time')}")
    if demand.get("reads"):
        lines.append(f"from: waits until {str(demand['reads']).replace('_', ' ')} lies within the limits of the sheet")
    return [*lines, *_facts(demand.get("because"))]


def _vapour(other: Table) -> list[str]:
    return [
        "formula: volatile mass in a volume of coating · volume of one coat · coats",
        f"from: the sheet of {other.get('system') or 'that system'} and the area of this plan",
        f"source: {citation('makers-sheet')}",
    ]
