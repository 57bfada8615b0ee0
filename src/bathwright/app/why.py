"""Why a number of a plan file is what it is: its formula, what went in, its sources."""

import json
import re
from pathlib import Path
from typing import Any

from bathwright.door.faults import DoorError, Fault, nearest
from bathwright.door.toml_file import read_text
from bathwright.sources import citation

_PART = re.compile(r"([A-Za-z_0-9]+)|\[(\d+)\]")


def why(path: Path, number_path: str) -> list[str]:
    """The lines that answer. List positions count from 1, as in the plan's own paths. DoorError for no such number."""
    plan = _load(path)
    parts = _parts(path, number_path)
    value, owner = _walk(path, plan, number_path, parts)
    if isinstance(value, dict | list):
        keys = list(value) if isinstance(value, dict) else [f"[{i + 1}]" for i in range(len(value))]
        raise DoorError([Fault(str(path), number_path, "is no single value", f"go on with one of {keys[:12]}")])
    lines = [f"{number_path} = {value}"]
    trace = next((t for t in plan.get("traces", []) if _matches(t["path"], number_path)), None)
    if trace:
        lines.append(f"formula: {trace['formula']}")
        lines += [
            f"from: {entry['name']} = {entry['value']} {_unit(entry['kind'])}".rstrip() for entry in trace["inputs"]
        ]
    lines += _own(owner)
    if trace:
        lines += [f"source: {citation(source)}" for source in trace["sources"]]
        lines.append(f"mark: {trace['mark']}")
    if len(lines) == 1:
        told = number_path.startswith(("survey", "made_for"))
        lines.append("told in the survey" if told else "written by the plan itself: no formula stands behind it")
    return lines


def _unit(kind: str | None) -> str:
    from bathwright.units import KINDS

    return KINDS[kind].si if kind in KINDS and KINDS[kind].si != "1" else ""


def _own(owner: Any) -> list[str]:
    """What the record around the number says of it: facts of a sheet, source, mark, band."""
    lines: list[str] = []
    for table in owner:
        for key in ("facts", "because"):
            lines += [f"fact of a sheet: {fact}" for fact in table.get(key) or () if isinstance(fact, str)]
        if isinstance(table.get("source"), str):
            lines.append(f"source: {citation(table['source'])}")
            if table.get("mark"):
                lines.append(f"mark: {table['mark']}")
        if lines:
            break
    return lines


def _load(path: Path) -> dict[str, Any]:
    text = read_text(path) if path.suffix != ".json" else _json_text(path)
    try:
        plan = json.loads(text)
    except (json.JSONDecodeError, RecursionError):
        raise DoorError([Fault(str(path), "", "is no JSON file", "give the plan.json that --out wrote")]) from None
    if not isinstance(plan, dict) or plan.get("format") != "bathwright-plan/1":
        raise DoorError([Fault(str(path), "format", "is no plan", 'a plan has format "bathwright-plan/1"')])
    return plan


def _json_text(path: Path) -> str:
    """The text of a plan file, which may be larger than a survey: up to 20 MB."""
    try:
        if path.is_file() and path.stat().st_size > 20_000_000:
            raise DoorError([Fault(str(path), "", "is larger than 20 MB", "give the plan.json that --out wrote")])
        return path.read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError):
        return read_text(path)


def _parts(path: Path, text: str) -> list[str | int]:
    found = list(_PART.finditer(text))
    if not found or "".join(m.group(0) for m in found) != text.replace(".", ""):
        raise DoorError([Fault(str(path), text[:60], "is no path", 'write for example "clocks[4].used_s"')])
    return [m.group(1) if m.group(1) else int(m.group(2)) for m in found]


def _walk(path: Path, plan: dict[str, Any], text: str, parts: list[str | int]) -> tuple[Any, list[dict[str, Any]]]:
    value: Any = plan
    owners: list[dict[str, Any]] = []
    for part in parts:
        if isinstance(value, dict):
            owners.insert(0, value)
            if part not in value:
                raise DoorError([Fault(str(path), text, f"there is no {part!r} here", nearest(str(part), list(value)))])
            value = value[part]
        elif isinstance(value, list):
            if not isinstance(part, int) or not 1 <= part <= len(value):
                right = f"[1] to [{len(value)}]" if value else "this list is empty"
                raise DoorError([Fault(str(path), text, f"there is no entry {part!r} here", right)])
            value = value[part - 1]
        else:
            raise DoorError([Fault(str(path), text, "goes on below a single value", "leave out the rest")])
    return value, [owner for owner in owners if owner is not plan]


def _matches(pattern: str, path: str) -> bool:
    regex = re.escape(pattern).replace(re.escape("[*]"), r"\[\d+\]")
    return re.match(rf"{regex}($|[.\[])", path) is not None
