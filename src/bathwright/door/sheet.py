"""Reading a sheet: a bag of facts. The kind of a fact says which form its value has."""

import hashlib
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from bathwright.domain.codes import SubstrateCode
from bathwright.domain.record import Measured
from bathwright.domain.sheet import FACT_KINDS, Amount, Fact, Range, Sheet
from bathwright.door.faults import DoorError, Fault, nearest
from bathwright.door.reader import Path as Place
from bathwright.door.reader import read_record, show_place
from bathwright.door.survey import wrong_format
from bathwright.door.toml_file import line_of, parse_toml, read_text

FORMAT = "bathwright-sheet/1"
_SUBSTRATES = list(SubstrateCode.__args__)  # type: ignore[attr-defined]
_METHODS = ["brush", "roller", "spray", "aerosol", "pour"]
Finding = tuple[Place, str, str]


def read_sheet(path: Path) -> Sheet:
    """The sheet in a TOML file. DoorError with all faults."""
    return sheet_from_text(read_text(path), str(path))


def sheet_from_text(text: str, name: str) -> Sheet:
    """The sheet in a TOML text; `name` stands in the faults. DoorError with all faults."""
    data = parse_toml(text, name)
    if data.get("format") != FORMAT:
        raise DoorError([wrong_format(name, text, data.get("format"), FORMAT, "sheet")])
    findings = list(_read_values(data))
    data["digest"] = hashlib.sha256(text.encode()).hexdigest()[:16]
    sheet, faults = read_record(Sheet, data, name, text)
    if sheet:
        findings += _sense(sheet)
    faults += [Fault(name, show_place(place), wrong, right, line_of(text, place)) for place, wrong, right in findings]
    if faults or sheet is None:
        raise DoorError(faults)
    return sheet


def _read_values(data: dict[str, Any]) -> Iterator[Finding]:
    """Turn the typed values of the facts into tables of SI numbers; facts that cannot be read are taken out."""
    facts = data.get("facts", [])
    if not isinstance(facts, list):
        return
    kept = []
    for index, fact in enumerate(facts):
        place: Place = ("facts", index)
        if not isinstance(fact, dict):
            kept.append(fact)
            continue
        faults = list(_read_value(place, fact))
        yield from faults
        if not faults:
            kept.append(fact)
    data["facts"] = kept


def _read_value(place: Place, fact: dict[str, Any]) -> Iterator[Finding]:
    kind = fact.get("kind")
    if not isinstance(kind, str) or kind not in FACT_KINDS:
        yield (
            (*place, "kind"),
            f"{str(kind)[:40]!r} is no known kind of fact",
            nearest(str(kind), [*FACT_KINDS]),
        )
        return
    form, quantity, _ = FACT_KINDS[kind]
    value = fact.get("value")
    here = (*place, "value")
    if form == "amount" and quantity:
        if quantity == "count" and isinstance(value, int) and not isinstance(value, bool):
            value = str(value)
        yield from _amount(here, fact, "value", value, quantity)
        if isinstance(fact.get("value"), float):
            fact["value"] = {"value": fact["value"], "kind": quantity}
    elif form == "range" and quantity:
        if not isinstance(value, dict) or not set(value) <= {"low", "high"} or not value:
            yield (
                here,
                "is no range",
                f'{kind} wants value = {{ low = "…", high = "…" }} (one side may be left out)',
            )
            return
        for side in ("low", "high"):
            if side in value:
                yield from _amount((*here, side), value, side, value[side], quantity)
        low, high = value.get("low"), value.get("high")
        if isinstance(low, float) and isinstance(high, float) and low > high:
            yield here, "has its low end above its high end", "low first, then high"
        fact["value"] = {"low": low, "high": high, "kind": quantity}
    elif not isinstance(value, dict):
        examples = {
            "choice": '{ code = "acrylic", allowed = false }',
            "ratio": '{ by = "volume", numbers = [4.0, 1.0] }',
            "instruction": '{ act = "wet_sand", values = ["P400"] }',
        }
        yield here, f"does not fit {kind}", f"write value = {examples[form]}"


def _amount(place: Place, holder: dict[str, Any], key: str, value: object, kind: str) -> Iterator[Finding]:
    try:
        holder[key] = Measured(kind).parse(value)
    except ValueError as error:
        yield place, str(error), ""


def _sense(sheet: Sheet) -> Iterator[Finding]:
    papers = [paper.id for paper in sheet.papers]
    parts = [part.id for part in sheet.parts]
    if not papers:
        yield ("papers",), "is empty", "say which paper the facts are from"
    seen: set[str] = set()
    for index, fact in enumerate(sheet.facts):
        place: Place = ("facts", index)
        if fact.id in seen:
            yield (*place, "id"), f"{fact.id!r} stands there twice", "each id once"
        seen.add(fact.id)
        if fact.paper is not None and fact.paper not in papers:
            yield (*place, "paper"), f"{fact.paper!r} is no paper of this sheet", nearest(fact.paper, papers)
        if fact.scope.part not in (None, "mixed", *parts):
            yield (
                (*place, "scope", "part"),
                f"{fact.scope.part!r} is no part of this sheet",
                nearest(str(fact.scope.part), [*parts, "mixed"]),
            )
        yield from _fact(place, fact)
    for index, part in enumerate(sheet.parts):
        yield from _part(("parts", index), part)


def _fact(place: Place, fact: Fact) -> Iterator[Finding]:
    value = fact.value
    form, quantity, _ = FACT_KINDS[fact.kind]
    if type(value).__name__.lower() != form:
        yield (*place, "value"), f"does not fit {fact.kind}", f"this kind of fact wants a {form}"
        return
    if fact.kind == "surface" and getattr(value, "code", None) not in _SUBSTRATES:
        word = str(getattr(value, "code", ""))
        yield (*place, "value", "code"), f"{word[:40]!r} is no known surface", nearest(word, _SUBSTRATES)
    if fact.kind == "method" and getattr(value, "code", None) not in _METHODS:
        word = str(getattr(value, "code", ""))
        yield (*place, "value", "code"), f"{word[:40]!r} is no known method", nearest(word, _METHODS)
    numbers = (value.value,) if isinstance(value, Amount) else ()
    numbers = (value.low, value.high) if isinstance(value, Range) else numbers  # type: ignore[assignment]
    for number in numbers:
        if number is None:
            continue
        if quantity in ("share", "humidity") and number > 1:
            yield (*place, "value"), "is over 100 %", "0 to 100 %"
        if quantity == "time" and number > 400 * 86400:
            yield (*place, "value"), "is longer than a year", "check the unit (min, h, days)"
        if quantity == "film" and number > 0.02:
            yield (*place, "value"), f"is {number * 1000:.0f} mm of film", "check mil against mm"
        if quantity == "temperature" and not 223.15 <= number <= 473.15:
            yield (*place, "value"), f"is {number - 273.15:.0f} °C", "check °C against °F"


def _part(place: Place, part: Any) -> Iterator[Finding]:
    for name in ("solids_by_weight", "solids_by_volume"):
        value = getattr(part, name)
        if value is not None and value > 1:
            yield (*place, name), "is over 100 %", "0 to 100 %"
    if part.density is not None and not 300 <= part.density <= 8000:
        yield (
            (*place, "density"),
            f"is {part.density / 1000:.3g} kg/L",
            "paints have 0.7 to 2.5 kg/L; check the unit",
        )
    lows = 0.0
    for index, component in enumerate(part.composition or ()):
        here = (*place, "composition", index)
        lows += component.low
        if component.low > component.high:
            yield here, "has its low share above its high share", "low first, then high"
        if component.high > 1:
            yield (*here, "high"), "is over 100 %", "0 to 100 %"
        if component.cas != "mixture" and not _is_cas(component.cas):
            yield (
                (*here, "cas"),
                f"{component.cas[:20]!r} is no CAS number",
                'check its digits, or write "mixture"',
            )
    if lows > 1.000001:
        yield (*place, "composition"), f"adds up to {lows:.0%} at least", "the low shares may not pass 100 %"


def _is_cas(text: str) -> bool:
    """Check digit of a CAS registry number: sum of digit times position from the right, modulo 10."""
    if not re.fullmatch(r"\d{2,7}-\d{2}-\d", text):
        return False
    digits = text.replace("-", "")
    return sum(int(d) * (i + 1) for i, d in enumerate(reversed(digits[:-1]))) % 10 == int(digits[-1])
