"""The air in words: set-up, fan, who is out, what people breathe against which limit."""

from bathwright.domain.air import AirPlan, Exposure, Limit
from bathwright.physics.vapour import ppm_from_kg_m3
from bathwright.report import amounts
from bathwright.report.context import AirView, Group, Pair, Row, Table
from bathwright.report.fill import capital, clean
from bathwright.report.findings_view import protection
from bathwright.report.reader import Reader
from bathwright.report.who_out import span

_SMALL_SHARE = 0.01  # values below this share of their limit are counted, not told one by one


def air_view(reader: Reader) -> AirView | None:
    """The air of the plan; None when nothing is let out."""
    air = reader.plan.air
    if air is None:
        return None
    lines = () if reader.plan.verdict == "no" else _lines(reader, air)
    exposures = reader.plan.exposures
    told = tuple(exposure for exposure in exposures if exposure.share_upper >= _SMALL_SHARE)
    small = len(exposures) - len(told)
    return AirView(
        lines=lines,
        peaks=_peaks(reader, told, "peaks"),
        all_peaks=_peaks(reader, exposures, "all-peaks") if small else None,
        small=reader.label("small_peaks", count=str(small)) if small else "",
        protection=protection(reader),
    )


def _lines(reader: Reader, air: AirPlan) -> tuple[Pair, ...]:
    pairs = [("setup", _setup(reader, air)), ("flow", _flow(reader, air)), ("away", _away(reader, air))]
    pairs.append(("back", capital(reader.not_before(air.back_at)) if air.back_at else reader.label("back_unknown")))
    pairs += [("lean", _lean(reader, air)), ("vapour", _vapour(reader, air))]
    return tuple(Pair(label=reader.label(name), text=text) for name, text in pairs if text)


def _lean(reader: Reader, air: AirPlan) -> str:
    """When somebody may lean over the bath, where that is later than coming back into the room."""
    if air.back_at is None or (air.basin_at is not None and air.basin_at <= air.back_at):
        return ""
    if air.basin_at is None:
        return reader.label("back_unknown")
    return reader.label("lean_before", at=reader.instant(air.basin_at, "up"))


def _vapour(reader: Reader, air: AirPlan) -> str:
    """What is let out in all, without water."""
    if air.vapour_kg is None:
        return reader.label("not_known")
    return reader.label("vapour_total", mass=reader.amount(air.vapour_kg, "mass", both=True))


def _setup(reader: Reader, air: AirPlan) -> str:
    """The fan and where it draws from; the code is the fan's id and its inlet."""
    fan, _, inlet = (air.setup or "").rpartition("-")
    if inlet not in ("basin", "room"):
        return reader.words.word(air.setup, "setup", free=True) if air.setup else ""
    who = reader.words.get("setup", fan) if reader.words.has("setup", fan) else reader.name(air.fan or fan)
    return capital(reader.label("drawn", fan=who, inlet=reader.words.get("inlet", inlet)))


def _flow(reader: Reader, air: AirPlan) -> str:
    flow = air.fan_flow_m3_s
    if flow is None:
        return ""
    low, middle, high = (reader.amount(value, "flow", both=True) for value in (flow.low, flow.central, flow.high))
    mark = reader.words.get("mark", flow.mark)
    text = middle if low == high else reader.label("flow_low", flow=middle, low=low, high=high)
    return f"{text} ({mark})"


def _away(reader: Reader, air: AirPlan) -> str:
    if air.away_from is None:
        return ""
    return capital(span(reader, air.away_from, air.away_until))


def _peaks(reader: Reader, exposures: tuple[Exposure, ...], name: str) -> Table | None:
    """One row per exposure, in groups by who breathes it."""
    groups: dict[str, list[Row]] = {}
    for exposure in exposures:
        groups.setdefault(_who(reader, exposure), []).append(_row(reader, exposure))
    if not groups:
        return None
    head = tuple(
        reader.label(name)
        for name in ("what" if reader.plan.verdict == "no" else "what_measured", "outside", "inside", "limit", "share")
    )
    made = tuple(Group(title=capital(title), rows=tuple(rows)) for title, rows in groups.items())
    return Table(id=f"{name}-table", caption=reader.label(name.replace("-", "_")), head=head, groups=made)


def _who(reader: Reader, exposure: Exposure) -> str:
    if exposure.who == "others":
        return reader.label("others_if_stayed")
    if reader.words.has("person", exposure.who):
        return reader.person(exposure.who)
    return reader.words.word(exposure.who, "zone")


def _row(reader: Reader, exposure: Exposure) -> Row:
    measured = reader.words.get("measured", exposure.measure)
    idlh = exposure.limit is not None and exposure.limit.measure == "idlh"
    outside = _band_top(reader, exposure, exposure.outside.central, exposure.outside.high)
    inside = "–"
    if exposure.protection != "none":
        mask = reader.words.word(exposure.protection, "protection", free=True)
        inside = f"{_band_top(reader, exposure, exposure.inside.central, exposure.inside.high)} ({mask})"
    share = reader.label("share_pair", central=of_limit(exposure.share_central), upper=of_limit(exposure.share_upper))
    at = f"; {reader.instant(exposure.at)}" if exposure.at and reader.plan.verdict != "no" else ""
    return (
        capital(f"{reader.substance(exposure.substance)}, {measured}{at}"),
        outside,
        inside,
        _limit(reader, exposure, idlh=idlh),
        share,
    )


def _band_top(reader: Reader, exposure: Exposure, central: float, upper: float) -> str:
    """Central and upper value; what the number is a share of is said once."""
    middle, top = concentration(reader, exposure, central), concentration(reader, exposure, upper)
    if exposure.substance == "mixture":
        middle = amounts.percent(central)
    return middle if middle == top else reader.label("share_pair", central=middle, upper=top)


def concentration(reader: Reader, exposure: Exposure, value: float) -> str:
    """A value of an exposure: mg/m³ and ppm (25 °C); for sums the percent of what is allowed, or of what can burn."""
    if exposure.measure == "explosive_share":
        return reader.label("explosive_limit", percent=amounts.percent(value))
    if exposure.substance == "mixture":
        return reader.label("share_of_limits", percent=amounts.percent(value))
    text = reader.amount(value, "concentration")
    molar = exposure.limit.molar_mass_kg_mol if exposure.limit else None
    if molar is None:
        return text
    return f"{text} ({amounts.significant(ppm_from_kg_m3(value, molar))} ppm)"


def of_limit(share: float) -> str:
    """A share of a limit: "62 %", beyond twice as "3.1 times"."""
    return amounts.percent(share) if share < 2 else f"{amounts.significant(share)} ×"


def _limit(reader: Reader, exposure: Exposure, *, idlh: bool) -> str:
    value = concentration(reader, exposure, exposure.limit_value)
    limit = exposure.limit
    if limit is None:
        return value
    notes = [_body(limit), _kind(reader, limit), reader.label(limit.for_whom)]
    notes += [reader.label("idlh")] if idlh else []
    notes += [reader.label("limit_surrogate")] if limit.surrogate else []
    notes.append(reader.words.get("mark", limit.mark))
    return f"{value} ({', '.join(note for note in notes if note)})"


def _body(limit: Limit) -> str:
    return clean(f"{limit.body} {limit.year}" if limit.year else limit.body)


def _kind(reader: Reader, limit: Limit) -> str:
    if limit.kind == "law" and limit.law_in:
        return reader.label("law_in", place=", ".join(limit.law_in))
    return reader.words.get("limit_kind", limit.kind)
