"""Reading a sheet: a bag of facts. The kind of a fact says which form its value has."""

import hashlib
import re
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from typing import Any, get_args

from bathwright.domain.codes import MethodCode, SubstrateCode
from bathwright.domain.record import Measured
from bathwright.domain.sheet import FACT_KINDS, Amount, Choice, Fact, Instruction, Range, Ratio, Sheet
from bathwright.door.faults import MOST_FAULTS, DoorError, Fault, nearest
from bathwright.door.reader import Finding, fault_at, faults_of_meaning, no_quantity, read_record
from bathwright.door.reader import Path as Place
from bathwright.door.shapes import UNREAD
from bathwright.door.survey import wrong_format
from bathwright.door.survey_sense import id_of_file
from bathwright.door.toml_file import parse_toml, read_text

FORMAT = "bathwright-sheet/1"
FACT_WORDS: dict[str, list[str]] = {"surface": list(get_args(SubstrateCode)), "method": list(get_args(MethodCode))}
_FORMS: dict[str, tuple[type[Any], str]] = {
    "choice": (Choice, '{ code = "acrylic", allowed = false }'),
    "ratio": (Ratio, '{ by = "volume", numbers = [4.0, 1.0] }'),
    "instruction": (Instruction, '{ act = "wet_sand", values = ["P400"] }'),
}
_NEVER_ZERO = ("pot_life", "coats", "pack_volume", "pack_reach")
# what is beyond sense for a kind of quantity, in SI; a typing error is likelier (common practice, no source)
_MOST: dict[str, tuple[float, str, str]] = {
    "share": (1.0, "is over 100 %", "0 to 100 %"),
    "humidity": (1.0, "is over 100 %", "0 to 100 %"),
    "time": (400 * 86400.0, "is longer than a year", "check the unit (min, h, days)"),
    "film": (0.02, "is more than 20 mm of film", "check mil against mm"),
    "count": (50.0, "is more than 50", "check the number"),
    "concentration": (2000.0, "is more than 2,000 g/L", "check the unit"),
    "temperature_step": (60.0, "is more than 60 K", "check the unit"),
    "liquid": (0.25, "is more than 250 L", "check the unit"),
    "area": (1000.0, "is more than 1,000 m2", "check the unit"),
}


def read_sheet(path: Path) -> Sheet:
    """The sheet in a TOML file. DoorError with all faults."""
    return sheet_from_text(read_text(path), str(path))


def sheet_from_text(text: str, name: str) -> Sheet:
    """The sheet in a TOML text; `name` stands in the faults. DoorError with all faults."""
    data = parse_toml(text, name)
    if data.get("format") != FORMAT:
        raise DoorError([wrong_format(name, text, data.get("format"), FORMAT, "sheet")])
    faults = [Fault(name, "digest", "is computed, never written", "take it out")] if "digest" in data else []
    faults += islice(_read_values(data, name, text), MOST_FAULTS)
    data["digest"] = hashlib.sha256(text.encode()).hexdigest()[:16]
    sheet, found = read_record(Sheet, data, name, text)
    faults += found
    if sheet:
        faults += faults_of_meaning(_sense(sheet), faults, name, text)
    if faults or sheet is None:
        raise DoorError(faults)
    return sheet


def _read_values(data: dict[str, Any], name: str, text: str) -> Iterator[Fault]:
    """Turn the typed values of the facts into tables of SI numbers. A value that cannot be read becomes a stand-in."""
    facts = data.get("facts", [])
    for index, fact in enumerate(facts if isinstance(facts, list) else []):
        if not isinstance(fact, dict) or "value" not in fact:
            continue
        faults = list(_read_value(("facts", index), fact, name, text))
        yield from faults
        if faults or "kind" not in fact:
            fact["value"] = {"act": UNREAD}


def _read_value(place: Place, fact: dict[str, Any], name: str, text: str) -> Iterator[Fault]:
    kind, value = fact.get("kind"), fact["value"]
    if not isinstance(kind, str) or kind not in FACT_KINDS:
        if "kind" in fact:
            wrong = f"{str(kind)[:40]!r} is no known kind of fact"
            yield fault_at(name, text, ((*place, "kind"), wrong, nearest(str(kind), [*FACT_KINDS])))
        return
    form, quantity, _ = FACT_KINDS[kind]
    here = (*place, "value")
    if form == "amount" and quantity:
        findings = list(_amount(here, fact, "value", value, quantity))
        fact["value"] = {"value": fact["value"], "kind": quantity}
        yield from (fault_at(name, text, finding) for finding in findings)
    elif form == "range" and quantity:
        yield from (fault_at(name, text, finding) for finding in _range(here, fact, kind, quantity))
    elif not isinstance(value, dict):
        yield fault_at(name, text, (here, f"does not fit {kind}", f"write value = {_FORMS[form][1]}"))
    else:
        yield from read_record(_FORMS[form][0], value, name, text, here)[1]


def _range(here: Place, fact: dict[str, Any], kind: str, quantity: str) -> Iterator[Finding]:
    value = fact["value"]
    if not isinstance(value, dict) or not set(value) <= {"low", "high"} or not value:
        yield here, "is no range", f'{kind} wants value = {{ low = "…", high = "…" }} (one side may be left out)'
        return
    for side in value:
        yield from _amount((*here, side), value, side, value[side], quantity)
    low, high = value.get("low"), value.get("high")
    if isinstance(low, float) and isinstance(high, float) and low > high:
        yield here, "has its low end above its high end", "low first, then high"
    fact["value"] = {"low": low, "high": high, "kind": quantity}


def _amount(place: Place, holder: dict[str, Any], key: str, value: object, kind: str) -> Iterator[Finding]:
    if kind == "count" and isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    if not isinstance(value, str):
        yield (place, *no_quantity(value, kind))
        return
    try:
        holder[key] = Measured(kind).parse(value)
    except ValueError as error:
        yield place, str(error), ""


def _sense(sheet: Sheet) -> Iterator[Finding]:
    yield from id_of_file(sheet.id)
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
        if fact.paper is not None and fact.paper not in papers and UNREAD not in papers:
            yield (*place, "paper"), f"{fact.paper!r} is no paper of this sheet", nearest(fact.paper, papers)
        if fact.scope.part not in (None, "mixed", *parts) and UNREAD not in parts:
            yield (
                (*place, "scope", "part"),
                f"{fact.scope.part!r} is no part of this sheet",
                nearest(str(fact.scope.part), [*parts, "mixed"]),
            )
        yield from _fact(place, fact, len(parts))
    for index, part in enumerate(sheet.parts):
        yield from _part(("parts", index), part)


def _fact(place: Place, fact: Fact, parts: int) -> Iterator[Finding]:
    value = fact.value
    if fact.kind not in FACT_KINDS:
        return
    form, quantity, _ = FACT_KINDS[fact.kind]
    if type(value).__name__.lower() != form:
        yield (*place, "value"), f"does not fit {fact.kind}", f"this kind of fact wants a {form}"
        return
    if isinstance(value, Choice) and value.code not in FACT_WORDS[fact.kind]:
        wrong = f"{value.code[:40]!r} is no known {fact.kind}"
        yield (*place, "value", "code"), wrong, nearest(value.code, FACT_WORDS[fact.kind])
    if isinstance(value, Ratio) and (min(value.numbers, default=0) <= 0 or parts not in (0, len(value.numbers))):
        wrong = "does not give one number above zero for each part"
        yield (*place, "value", "numbers"), wrong, f"the sheet has {parts or 'no'} parts"
    numbers = (value.value,) if isinstance(value, Amount) else ()
    numbers = (value.low, value.high) if isinstance(value, Range) else numbers  # type: ignore[assignment]
    for number in numbers:
        if number is not None and quantity:
            yield from _number((*place, "value"), fact.kind, number, quantity)


def _number(place: Place, kind: str, number: float, quantity: str) -> Iterator[Finding]:
    most = _MOST.get(quantity)
    if most and number > most[0]:
        yield place, most[1], most[2]
    if quantity == "temperature" and not 223.15 <= number <= 473.15:
        yield place, f"is {number - 273.15:.0f} °C", "check °C against °F"
    if number == 0 and kind in _NEVER_ZERO:
        yield place, "is zero", "leave the fact out when the paper does not say it"


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
