"""From the tables of the data files to records. A wrong file is our own defect and fails loudly."""

from datetime import date
from typing import Any

from bathwright.domain.values import Band, Number
from bathwright.knowledge.records import Fan, LimitEntry, Pair, PlaceEntry, RuleDate, Substance
from bathwright.units import QuantityError, read_quantity

_ANY_KIND = (
    "rate", "flow", "speed", "work_rate", "time", "temperature_step", "length", "area", "volume", "molar_energy",
    "share", "pressure", "count", "mass",
)  # fmt: skip


def number(table: dict[str, Any], kind: str) -> Number:
    """A number table: { value, source, mark, from, note }."""
    return Number(
        value=read_quantity(str(table["value"]), kind),
        kind=kind,
        source=table["source"],
        mark=table["mark"],
        holds_from=table.get("from"),
        note=table.get("note", ""),
    )


def band(table: dict[str, Any], kind: str) -> Band:
    """A band table: { low, central, high, source, mark, note }."""
    low, central, high = (read_quantity(str(table[side]), kind) for side in ("low", "central", "high"))
    if not low <= central <= high:
        raise ValueError(f"band out of order: {table}")
    return Band(low=low, central=central, high=high, kind=kind, source=table["source"], mark=table["mark"])


def kind_of_text(text: str) -> str:
    """The kind of quantity that a typed text of a data file is, by its unit."""
    for kind in _ANY_KIND:
        try:
            read_quantity(text, kind)
        except QuantityError:
            continue
        return kind
    raise ValueError(f"{text!r} is no quantity of a known kind")


def tree(table: dict[str, Any], path: str) -> dict[str, Band | Number]:
    """All numbers and bands below a table, by dotted path; other values are passed over."""
    out: dict[str, Band | Number] = {}
    for key, value in table.items():
        if not isinstance(value, dict):
            continue
        here = f"{path}.{key}"
        if "central" in value:
            out[here] = band(value, kind_of_text(str(value["central"])))
        elif "value" in value:
            out[here] = number(value, kind_of_text(str(value["value"])))
        else:
            out.update(tree(value, here))
    return out


def substance(table: dict[str, Any]) -> Substance:
    """One [[substance]]."""
    optional = {
        name: number(table[name], kind) if name in table else None
        for name, kind in (
            ("density", "density"),
            ("vapour_pressure", "pressure"),
            ("heat_of_vaporisation", "molar_energy"),
            ("lower_limit", "share"),
            ("flash_point", "temperature"),
        )
    }
    at = table.get("vapour_pressure", {}).get("at", "25 °C")
    return Substance(
        cas=table["cas"],
        code=table["code"],
        name_us=table["name_us"],
        name_gb=table["name_gb"],
        molar_mass=number(table["molar_mass"], "molar_mass"),
        vapour_pressure_at_k=read_quantity(at, "temperature"),
        tags=tuple(table.get("tags", ())),
        density=optional["density"],
        vapour_pressure=optional["vapour_pressure"],
        heat_of_vaporisation=optional["heat_of_vaporisation"],
        lower_limit=optional["lower_limit"],
        flash_point=optional["flash_point"],
    )


def limit(table: dict[str, Any]) -> LimitEntry:
    """One [[limit]]: in ppm or mg/m3."""
    text = str(table["value"])
    kind = "vapour_ppm" if "pp" in text.lower() or "%" in text else "concentration"
    value = Number(
        value=read_quantity(text, kind),
        kind=kind,
        source=table["source"],
        mark=table["mark"],
        note=table.get("note", ""),
    )
    return LimitEntry(
        id=table["id"],
        cas=table["cas"],
        body=table["body"],
        measure=table["measure"],
        value=value,
        for_whom=table["for_whom"],
        kind=table["kind"],
        law_in=tuple(table.get("law_in", ())),
        year=table.get("year"),
    )


def pair(table: dict[str, Any]) -> Pair:
    """One [[pair]]."""
    return Pair(**table)


def fan(table: dict[str, Any]) -> Fan:
    """One [[fan]]."""
    return Fan(
        kind=table["kind"],
        name_us=table["name_us"],
        name_gb=table["name_gb"],
        real_share=band(table["real_share"], "share") if "real_share" in table else None,
        real_flow=band(table["real_flow"], "flow") if "real_flow" in table else None,
        motor_in_stream=table["motor_in_stream"],
        source=table["source"],
        mark=table["mark"],
    )


def place(table: dict[str, Any]) -> PlaceEntry:
    """One [[place]]."""
    return PlaceEntry(
        country=table["country"],
        emergency=table["emergency"],
        poison=table.get("poison") or None,
        law_set=table["law_set"],
        source=table["source"],
        mark=table["mark"],
    )


def rule_date(table: dict[str, Any]) -> RuleDate:
    """One [[rule_date]]."""
    holds_from = table["from"]
    return RuleDate(
        code=table["code"],
        jurisdiction=table["jurisdiction"],
        holds_from=holds_from if isinstance(holds_from, date) else date.fromisoformat(holds_from),
        text=table["text"],
        source=table["source"],
        mark=table["mark"],
        edition_read=table.get("edition_read", ""),
    )
