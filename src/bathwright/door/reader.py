"""From a parsed table to a record, with every fault, its place and what would be right."""

import dataclasses
import json
from datetime import date, datetime, time
from functools import cache
from typing import Any, TypeVar, get_args, get_origin, get_type_hints

from pydantic import TypeAdapter, ValidationError

from bathwright.door.faults import Fault, nearest
from bathwright.door.toml_file import line_of

_T = TypeVar("_T")
Path = tuple[str | int, ...]


@cache
def adapter(kind: Any) -> TypeAdapter[Any]:
    """The validator of a record type, built once."""
    return TypeAdapter(kind)


def read_record(kind: type[_T], data: dict[str, Any], name: str, text: str) -> tuple[_T | None, list[Fault]]:
    """The record, or None, and all faults.

    When something is wrong the faulty entries are left out and the rest is read once more, so that the caller
    can look for faults of meaning in what remains; the faults stay.
    """
    try:
        return _validate(kind, data), []
    except ValidationError as error:
        details = error.errors(include_url=False)
    faults = [fault for detail in details if (fault := _fault(kind, detail, name, text))]
    rest = json.loads(_json(data))
    for detail in details:
        _drop(rest, _place(detail["loc"]))
    try:
        return _validate(kind, rest), faults
    except ValidationError:
        return None, faults


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


def _place(loc: tuple[str | int, ...]) -> Path:
    """The path in the user's file: names of union members and validators are taken out."""
    return tuple(part for part in loc if isinstance(part, int) or part[:1].islower())


def show_place(path: Path) -> str:
    """The path as text, list positions counted from 1 as people count."""
    out = ""
    for part in path:
        out += f"[{part + 1}]" if isinstance(part, int) else (f".{part}" if out else part)
    return out


def _fault(kind: type[Any], detail: Any, name: str, text: str) -> Fault | None:
    path = _place(detail["loc"])
    wrong, right = _words(kind, detail, path)
    return Fault(name, show_place(path), wrong, right, line_of(text, path))


def _words(kind: type[Any], detail: Any, path: Path) -> tuple[str, str]:
    what = detail["type"]
    given = detail.get("input")
    if what in ("unexpected_keyword_argument", "extra_forbidden"):
        owner = _type_at(kind, path[:-1])
        known = [f.name for f in dataclasses.fields(owner)] if dataclasses.is_dataclass(owner) else []
        return "is not a known key", nearest(str(path[-1]), known)
    if what in ("missing", "missing_argument", "missing_keyword_only_argument"):
        return "is missing", f"this entry needs the key {path[-1]!r}"
    if what == "literal_error":
        allowed = [str(word) for word in get_args(_literal_at(kind, path))]
        shown = ", ".join(allowed) if 0 < len(allowed) <= 12 else nearest(str(given), allowed)
        return f"{_short(given)} is not one of the words allowed here", shown
    if what == "value_error":
        return str(detail["ctx"]["error"]), ""
    plain = {
        "bool_type": "write true or false",
        "int_type": "write a whole number",
        "int_from_float": "write a whole number",
        "float_type": "write a number",
        "string_type": "write text in quotes",
        "tuple_type": "write a list in [ ]",
        "finite_number": "write a finite number",
    }
    if what in plain:
        return f"{_short(given)} does not fit here", plain[what]
    if what.startswith("date"):
        return f"{_short(given)} is no date here", "write 2026-03-07, or 2026-03-07T08:00:00 for a time"
    if what.startswith("dataclass"):
        return f"{_short(given)} stands where a table is needed", "write a [table] or { key = value }"
    return detail["msg"].lower(), ""


def _short(value: object) -> str:
    text = json.dumps(value, default=str, ensure_ascii=False)
    return text if len(text) <= 40 else text[:39] + "…"


def _unwrap(kind: Any) -> list[Any]:
    """The types that an annotation may hold, without Annotated, None, tuple."""
    origin = get_origin(kind)
    if origin is None:
        return [kind]
    if hasattr(kind, "__metadata__"):
        return _unwrap(get_args(kind)[0])
    if origin is tuple:
        return _unwrap(get_args(kind)[0])
    if str(origin) in ("typing.Union", "<class 'types.UnionType'>"):
        return [inner for arm in get_args(kind) if arm is not type(None) for inner in _unwrap(arm)]
    return [kind]


def _type_at(kind: Any, path: Path) -> Any:
    for part in path:
        if isinstance(part, int):
            continue
        holders = [arm for arm in _unwrap(kind) if dataclasses.is_dataclass(arm)]
        found = [get_type_hints(arm, include_extras=True).get(part) for arm in holders]
        kind = next((hint for hint in found if hint is not None), None)
    arms = _unwrap(kind) if kind is not None else [None]
    return arms[0]


def _literal_at(kind: Any, path: Path) -> Any:
    return _type_at(kind, path)


def _drop(data: Any, path: Path) -> None:
    """Take one entry out of the parsed data; a path that is gone already is no matter."""
    for part in path[:-1]:
        try:
            data = data[part]
        except (KeyError, IndexError, TypeError):
            return
    if isinstance(data, dict) and path:
        data.pop(path[-1], None)
