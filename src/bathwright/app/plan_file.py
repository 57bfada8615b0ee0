"""Reading a plan file back: JSON of at most 20 MB, its traces in order, one value by its path."""

import json
import re
from pathlib import Path
from typing import Any

from bathwright.door.faults import DoorError, Fault, nearest
from bathwright.door.toml_file import read_text

_LARGEST_BYTES = 20_000_000
_LONGEST_PATH = 200
_PART = re.compile(r"([A-Za-z_0-9]+)|\[(\d{1,9})\]")
_STEP = r"[A-Za-z_0-9]+(\[\d{1,9}\])*"
_WHOLE = re.compile(rf"{_STEP}(\.{_STEP})*")
_GIVE = "give the plan.json that plan --out wrote"
Parts = list[str | int]
Table = dict[str, Any]


def load_plan(path: Path) -> Table:
    """The plan as plain tables. DoorError for what is no plan file, or a damaged one."""
    try:
        plan = json.loads(_text(path), parse_constant=_no_number)
    except (ValueError, RecursionError) as error:
        wrong = str(error) if isinstance(error, _NoNumberError) else "is no JSON file"
        raise DoorError([Fault(str(path), "", wrong, _GIVE)]) from None
    if not isinstance(plan, dict) or plan.get("format") != "bathwright-plan/1":
        raise DoorError([Fault(str(path), "format", "is no plan", 'a plan has format "bathwright-plan/1"')])
    traces = plan.get("traces", [])
    entries = traces if isinstance(traces, list) else [None]
    damaged = [index + 1 for index, entry in enumerate(entries) if not _is_trace(entry)]
    if damaged:
        place = f"traces[{damaged[0]}]" if isinstance(traces, list) else "traces"
        raise DoorError([Fault(str(path), place, "is damaged", "make the plan anew")])
    return plan


class _NoNumberError(ValueError):
    """A word of JavaScript that is no number of JSON."""


def _no_number(word: str) -> float:
    raise _NoNumberError(f"holds {word}, which is no number of a plan")


def _text(path: Path) -> str:
    """The text of a plan file, which may be larger than a survey."""
    try:
        if path.is_file() and path.stat().st_size > _LARGEST_BYTES:
            raise DoorError([Fault(str(path), "", "is larger than 20 MB", _GIVE)])
        if path.is_file():
            return path.read_text(encoding="utf-8")
    except (OSError, ValueError):
        pass
    try:
        return read_text(path)
    except DoorError as error:
        raise DoorError([Fault(f.file, f.place, f.wrong, _GIVE, f.line) for f in error.faults]) from None


def _is_trace(entry: Any) -> bool:
    if not isinstance(entry, dict) or not all(isinstance(entry.get(key), str) for key in ("path", "formula", "mark")):
        return False
    sources, inputs = entry.get("sources"), entry.get("inputs")
    if not isinstance(sources, list) or not isinstance(inputs, list):
        return False
    return all(isinstance(source, str) for source in sources) and all(_is_input(value) for value in inputs)


def _is_input(value: Any) -> bool:
    return (
        isinstance(value, dict)
        and isinstance(value.get("name"), str)
        and isinstance(value.get("value"), str | int | float)
        and isinstance(value.get("kind"), str | None)
    )


def parts_of(path: Path, text: str) -> Parts:
    """The keys and positions (from 1) of a number's path. DoorError for what is no path."""
    if len(text) > _LONGEST_PATH or not _WHOLE.fullmatch(text):
        raise DoorError([Fault(str(path), text[:60], "is no path", 'write for example "clocks[4].used_s"')])
    return [m.group(1) if m.group(1) else int(m.group(2)) for m in _PART.finditer(text)]


def walk(path: Path, plan: Table, text: str, parts: Parts) -> tuple[Any, list[Table]]:
    """The value at a path, and the tables around it from the inside out, without the plan itself."""
    value: Any = plan
    owners: list[Table] = []
    for part in parts:
        if isinstance(value, dict):
            owners.insert(0, value)
            if part not in value:
                raise DoorError([Fault(str(path), text, f'there is no "{part}" here', nearest(str(part), list(value)))])
            value = value[part]
        elif isinstance(value, list):
            if not isinstance(part, int) or not 1 <= part <= len(value):
                right = f"[1] to [{len(value)}]" if value else "this list is empty"
                raise DoorError([Fault(str(path), text, f"there is no entry {part} here", right)])
            value = value[part - 1]
        else:
            raise DoorError([Fault(str(path), text, "goes on below a single value", "leave out the rest")])
    if isinstance(value, dict | list):
        keys = list(value) if isinstance(value, dict) else [f"[{i + 1}]" for i in range(len(value))]
        right = "go on with one of " + ", ".join(keys[:40]) if keys else "nothing is in it"
        raise DoorError([Fault(str(path), text, "is no single value", right)])
    return value, [owner for owner in owners if owner is not plan]
