"""The shape of a record type: the type at a path, and stand-ins where a faulty entry must be there."""

import dataclasses
from datetime import date, datetime
from types import UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from bathwright.domain.record import Measured
from bathwright.units import KINDS

_Path = tuple[str | int, ...]
UNREAD = "unread"
_SIMPLE: dict[Any, Any] = {
    str: UNREAD, int: 1, float: 1.0, bool: False, datetime: "2026-01-01T00:00:00", date: "2026-01-01",
}  # fmt: skip


def measured_kind(hint: Any) -> str | None:
    """Kind of quantity of an annotation, through unions; None when it is no quantity."""
    for mark in getattr(hint, "__metadata__", ()):
        if isinstance(mark, Measured):
            return mark.kind
    return next((kind for arm in get_args(hint) if (kind := measured_kind(arm))), None)


def _bare(hint: Any) -> Any:
    """The type without Annotated and None (the first member of a union)."""
    while hasattr(hint, "__metadata__") or get_origin(hint) in (Union, UnionType):
        arms = get_args(hint)
        hint = arms[0] if hasattr(hint, "__metadata__") else next(arm for arm in arms if arm is not type(None))
    return hint


def unwrap(hint: Any) -> list[Any]:
    """The types that an annotation may hold, without Annotated, None, tuple."""
    if hasattr(hint, "__metadata__") or get_origin(hint) is tuple:
        return unwrap(get_args(hint)[0])
    if get_origin(hint) in (Union, UnionType):
        return [inner for arm in get_args(hint) if arm is not type(None) for inner in unwrap(arm)]
    return [hint]


def hint_at(kind: Any, path: _Path) -> Any:
    """The annotation of the entry at a path of a record type; None where the type knows no such entry."""
    for part in path:
        if isinstance(part, int):
            kind = _entry(_bare(kind), part)
        else:
            holders = [arm for arm in unwrap(kind) if dataclasses.is_dataclass(arm)]
            hints = [get_type_hints(arm, include_extras=True).get(part) for arm in holders]
            kind = next((hint for hint in hints if hint is not None), None)
    return kind


def _entry(hint: Any, position: int) -> Any:
    if get_origin(hint) is not tuple:
        return None
    members = get_args(hint)
    return members[0] if members[-1] is Ellipsis else members[min(position, len(members) - 1)]


def stand_in(hint: Any) -> Any:
    """Plain data that fits a type, to read the rest of a file in spite of a fault; nobody ever sees it."""
    measured = next((mark for mark in getattr(hint, "__metadata__", ()) if isinstance(mark, Measured)), None)
    if measured:
        return KINDS[measured.kind].examples[0]
    hint = _bare(hint) if get_origin(hint) is not None else hint
    if get_origin(hint) is Literal:
        return get_args(hint)[0]
    if get_origin(hint) is tuple:
        members = get_args(hint)
        return [] if members[-1] is Ellipsis else [stand_in(member) for member in members]
    if dataclasses.is_dataclass(hint):
        hints = get_type_hints(hint, include_extras=True)
        return {field.name: stand_in(hints[field.name]) for field in dataclasses.fields(hint) if not _optional(field)}
    return _SIMPLE.get(hint)


def _optional(field: dataclasses.Field[Any]) -> bool:
    return field.default is not dataclasses.MISSING or field.default_factory is not dataclasses.MISSING


def mend(kind: Any, data: Any, path: _Path, unknown_key: bool) -> None:
    """Take a faulty entry out of parsed data, or put a stand-in where one must be; a path that is gone is no matter."""
    if not path:
        return
    try:
        for part in path[:-1]:
            data = data[part]
        owner = unwrap(hint_at(kind, path[:-1]))[0]
        fields = {field.name: field for field in dataclasses.fields(owner)} if dataclasses.is_dataclass(owner) else {}
        field = fields.get(str(path[-1]))
        if isinstance(data, dict) and (unknown_key or field is None or _optional(field)):
            data.pop(path[-1], None)
        elif isinstance(data, list) and path[-1] == len(data):
            data.append(stand_in(hint_at(kind, path)))
        else:
            data[path[-1]] = stand_in(hint_at(kind, path))
    except (KeyError, IndexError, TypeError):
        return
