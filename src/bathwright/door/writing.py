"""Writing records back: plain tables with rounded SI numbers, files written whole or not at all."""

import dataclasses
import json
import os
import tempfile
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, get_type_hints

from bathwright.domain.record import Private
from bathwright.door.shapes import measured_kind
from bathwright.units import KINDS, rounded

# decimals by the unit at the end of a field's name; the longest ending that fits decides
_ENDINGS = {
    "_kg_m3": 12, "_m3_s": 6, "_per_s": 9, "_j_mol": 1, "_m_s": 9, "_m3": 7, "_m2": 4, "_kg": 6, "_pa": 2,
    "_k": 2, "_s": 0, "_m": 9,
}  # fmt: skip
_BY_LENGTH = sorted(_ENDINGS.items(), key=lambda item: -len(item[0]))


def plain(value: object, name: str = "", kind: str | None = None) -> Any:
    """The record as plain tables, lists, text and numbers; instants in UTC; numbers rounded by kind."""
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return _table(value)
    if isinstance(value, tuple | list):
        return [plain(entry, name, kind) for entry in value]
    if isinstance(value, datetime):
        return _instant(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, float):
        return _number(value, name, kind)
    return value


def _table(value: Any) -> dict[str, Any]:
    own = getattr(value, "kind", None)
    own = own if own in KINDS else None
    kinds = field_kinds(type(value))
    return {
        field.name: plain(getattr(value, field.name), field.name, kinds.get(field.name) or own)
        for field in dataclasses.fields(value)
    }


_KINDS_OF: dict[type, dict[str, str]] = {}


def field_kinds(record: type) -> dict[str, str]:
    """Kind of quantity of each measured field of a record type."""
    if record not in _KINDS_OF:
        hints = get_type_hints(record, include_extras=True)
        found = {name: measured_kind(hint) for name, hint in hints.items()}
        _KINDS_OF[record] = {name: kind for name, kind in found.items() if kind}
    return _KINDS_OF[record]


def private_paths(record: type) -> tuple[str, ...]:
    """Names of the fields of a record type that are marked private."""
    hints = get_type_hints(record, include_extras=True)
    return tuple(
        name
        for name, hint in hints.items()
        if any(isinstance(mark, Private) for mark in getattr(hint, "__metadata__", ()))
    )


def _instant(value: datetime) -> str:
    if value.tzinfo is None:
        return value.isoformat(timespec="seconds")
    return value.astimezone(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")


def _number(value: float, name: str, kind: str | None) -> float:
    if kind:
        return rounded(value, kind)
    for ending, decimals in _BY_LENGTH:
        if name.endswith(ending):
            out = round(value, decimals)
            return 0.0 if out == 0 else out
    return float(f"{value:.6g}")


def to_json(value: object) -> str:
    """The record as JSON text with a line end; the same record gives the same bytes."""
    return json.dumps(plain(value), ensure_ascii=False, indent=1, allow_nan=False) + "\n"


def write_files(folder: Path, files: dict[str, str]) -> list[Path]:
    """Write all files into the folder, or none: each is written beside and moved into place at the end.

    OSError when the folder cannot be made or written, or a file cannot be moved; then every file there is as before.
    """
    folder.mkdir(parents=True, exist_ok=True)
    ready: list[tuple[Path, Path]] = []
    try:
        for name, text in files.items():
            handle, beside = tempfile.mkstemp(prefix=".new-", dir=folder)
            ready.append((Path(beside), folder / name))
            with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as out:
                out.write(text)
            Path(beside).chmod(0o644)
        for _, place in ready:
            if place.is_dir():
                raise IsADirectoryError(21, "is a folder", str(place))
        _move_all(ready)
    finally:
        for beside_path, _ in ready:
            beside_path.unlink(missing_ok=True)
    return [place for _, place in ready]


def _move_all(ready: list[tuple[Path, Path]]) -> None:
    """Move each file into place. When one fails, those that were moved are taken back and the old ones stand again."""
    kept: list[tuple[Path, Path | None]] = []
    try:
        for beside, place in ready:
            old = beside.with_name(beside.name + ".old") if place.exists() else None
            if old:
                place.replace(old)
            kept.append((place, old))
            beside.replace(place)
    except BaseException:
        for place, old in reversed(kept):
            place.unlink(missing_ok=True)
            if old:
                old.replace(place)
        raise
    for _, old in kept:
        if old:
            old.unlink(missing_ok=True)
