"""From a parsed table to a record, with every fault, its place and what would be right."""

import dataclasses
import json
import re
from collections.abc import Iterable, Iterator
from datetime import date, datetime, time
from functools import cache
from itertools import islice
from typing import Any, TypeVar, get_args

from pydantic import TypeAdapter, ValidationError

from bathwright.door.faults import MOST_FAULTS, Fault, nearest
from bathwright.door.shapes import hint_at, measured_kind, mend, unwrap
from bathwright.door.toml_file import line_of
from bathwright.units import KINDS

_T = TypeVar("_T")
Path = tuple[str | int, ...]
Finding = tuple[Path, str, str]


@cache
def adapter(kind: Any) -> TypeAdapter[Any]:
    """The validator of a record type, built once."""
    return TypeAdapter(kind)


def read_record(
    kind: type[_T], data: dict[str, Any], name: str, text: str, base: Path = ()
) -> tuple[_T | None, list[Fault]]:
    """The record, or None, and its faults, at most a hundred; `base` is the place of `data` in the file.

    When something is wrong the faulty entries are left out, or filled with a stand-in where they must be there,
    and the rest is read once more, so that the caller can look for faults of meaning in what remains; the faults
    stay.
    """
    try:
        return _validate(kind, data), []
    except ValidationError as error:
        details = error.errors(include_url=False)
    found = [_finding(kind, detail, data) for detail in details[:MOST_FAULTS]]
    faults = [fault_at(name, text, ((*base, *path), wrong, right)) for path, wrong, right in found]
    if len(details) > MOST_FAULTS:
        faults.append(Fault(name, "", f"has {len(details) - MOST_FAULTS} more faults", "mend these first"))
    rest = json.loads(_json(data))
    for detail in details:
        mend(kind, rest, _place(detail["loc"], data), detail["type"] in _UNKNOWN_KEY)
    try:
        return _validate(kind, rest), faults
    except ValidationError:
        return None, faults


def fault_at(name: str, text: str, finding: Finding) -> Fault:
    """The fault with its place as text and its line."""
    place, wrong, right = finding
    return Fault(name, show_place(place), wrong, right, line_of(text, place))


def faults_of_meaning(findings: Iterator[Finding], known: Iterable[Fault], name: str, text: str) -> list[Fault]:
    """Faults from findings; those at a place that is at fault already are left out (a stand-in is there).

    So are those beside a `kind` that is at fault, or below it: the kind says what would be plausible.
    """
    places = [fault.place for fault in known]
    unsure = [place.removesuffix("kind") for place in places if place.endswith(".kind")]
    faults = (fault_at(name, text, finding) for finding in findings)
    good = (f for f in faults if not f.place.startswith(tuple(unsure)))
    return list(islice((f for f in good if not any(_within(f.place, p) for p in places)), MOST_FAULTS))


def _within(one: str, other: str) -> bool:
    """Whether one place encloses the other."""
    short, long = sorted((one, other), key=len)
    return short == long or (short != "" and long.startswith((short + ".", short + "[")))


def _validate(kind: type[_T], data: dict[str, Any]) -> _T:
    known: Any = kind
    made: _T = adapter(known).validate_json(_json(data))
    return made


def _json(data: dict[str, Any]) -> str:
    return json.dumps(data, default=_iso)


def _iso(value: object) -> str:
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    raise TypeError(type(value).__name__)


def _place(loc: tuple[str | int, ...], data: Any) -> Path:
    """The path in the user's file. The validator names the member of a union in between: such names are taken out."""
    path: Path = ()
    for position, part in enumerate(loc):
        inside = (isinstance(data, dict) and part in data) or (isinstance(data, list) and isinstance(part, int))
        if not inside and position < len(loc) - 1:
            continue
        path = (*path, part)
        data = data[part] if inside and not (isinstance(part, int) and part >= len(data)) else None
    return path


def show_place(path: Path) -> str:
    """The path as text, list positions counted from 1 as people count."""
    out = ""
    for part in path:
        out += f"[{part + 1}]" if isinstance(part, int) else (f".{part}" if out else part)
    return out


_UNKNOWN_KEY = ("unexpected_keyword_argument", "extra_forbidden")
_PLAIN = {
    "bool_type": "write true or false",
    "int_type": "write a whole number",
    "int_from_float": "write a whole number",
    "float_type": "write a number",
    "string_type": "write text in quotes",
    "tuple_type": "write a list in [ ]",
    "finite_number": "write a finite number",
    "dict_type": "write { key = value }",
}


def _finding(kind: type[Any], detail: Any, data: dict[str, Any]) -> Finding:
    path = _place(detail["loc"], data)
    return (path, *_words(kind, detail, path))


def _words(kind: type[Any], detail: Any, path: Path) -> tuple[str, str]:
    what = detail["type"]
    given = detail.get("input")
    if what in _UNKNOWN_KEY:
        owner = unwrap(hint_at(kind, path[:-1]))[0]
        known = [f.name for f in dataclasses.fields(owner)] if dataclasses.is_dataclass(owner) else []
        return "is not a known key", nearest(str(path[-1]), known)
    if what in ("missing", "missing_argument", "missing_keyword_only_argument"):
        key = path[-1]
        return "is missing", f"this list needs {key + 1} entries" if isinstance(key, int) else f"needs the key {key!r}"
    if what == "literal_error":
        allowed = [str(word) for word in get_args(unwrap(hint_at(kind, path))[0])]
        shown = "one of " + ", ".join(allowed) if 0 < len(allowed) <= 12 else nearest(str(given), allowed)
        return f"{_short(given)} is not one of the words allowed here", shown
    if what == "value_error":
        kind_of = measured_kind(hint_at(kind, path))
        told = isinstance(given, str) or kind_of is None
        return (str(detail["ctx"]["error"]), "") if told else no_quantity(given, str(kind_of))
    if what in ("too_long", "too_short"):
        wanted = detail["ctx"].get("max_length", detail["ctx"].get("min_length"))
        return f"has {detail['ctx'].get('actual_length')} entries", f"this list takes {wanted}"
    if what in _PLAIN:
        return f"{_short(given)} does not fit here", _PLAIN[what]
    if what.startswith("date"):
        return _no_date(given, what)
    if what.startswith("dataclass"):
        return f"{_short(given)} stands where a table is needed", "write a [table] or { key = value }"
    return f"{_short(given)} does not fit here", ""


def _no_date(given: object, what: str) -> tuple[str, str]:
    text = str(given)
    if what.startswith("datetime") and re.fullmatch(r"\d{4}-\d{2}-\d{2}", text):
        return f"{text} is a date, and a time of day is wanted too", f"write {text}T18:00:00"
    if what.startswith("date_") and re.fullmatch(r"\d{4}-\d{2}-\d{2}T.*", text):
        return f"{_short(given)} is a time, and a date is wanted", f"write {text[:10]}"
    return f"{_short(given)} is no date here", "write 2026-03-07, or 2026-03-07T08:00:00 for a time"


def no_quantity(value: object, kind: str) -> tuple[str, str]:
    """What is wrong with a value that is no text where a quantity is wanted, and what would be right."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    what = f"{_short(value)}, a bare number," if number else _short(value)
    example = " or ".join(f'"{text}"' for text in KINDS[kind].examples)
    return f"{what} stands where a quantity with its unit is needed", f"write {example}"


def _short(value: object) -> str:
    text = json.dumps(value, default=str, ensure_ascii=False)
    return text if len(text) <= 40 else text[:39] + "…"
