"""Why a number of a plan file is what it is: its formula, what went in, its sources."""

import re
from pathlib import Path

from bathwright.app.plan_file import Parts, Table, load_plan, parts_of, walk
from bathwright.app.why_lines import own_lines, with_unit
from bathwright.domain.plan import Plan
from bathwright.door.faults import one_line
from bathwright.door.shapes import hint_at, measured_kind
from bathwright.sources import citation
from bathwright.units import KINDS

# ends of the names of numbers -> kind of quantity, longest first
_ENDINGS = (
    ("saturation_kg_m3", "concentration"), ("_kg_m3", "concentration"), ("_kg_mol", "molar_mass"),
    ("_j_mol", "molar_energy"), ("_per_s", "rate"), ("_m3_s", "flow"), ("_m_s", "speed"), ("_m3", "volume"),
    ("_m2", "area"), ("_kg", "mass"), ("_pa", "pressure"), ("_s", "time"), ("_m", "length"),
)  # fmt: skip
_NAMED = {
    "offset_k": "temperature_step", "low_k": "temperature", "high_k": "temperature", "temperature_k": "temperature",
    "reference_k": "temperature", "floor_k": "temperature", "dry_film_m": "film", "wet_film_m": "film",
}  # fmt: skip
_LIQUIDS = ("materials", "mixes")
_BESIDE_KIND = ("low", "central", "high", "value", "limit", "margin")


def why(path: Path, number_path: str) -> list[str]:
    """The lines that answer. List positions count from 1, as in the plan's own paths. DoorError for no such number."""
    plan = load_plan(path)
    parts = parts_of(path, number_path)
    value, owners = walk(path, plan, number_path, parts)
    lines = [f"{number_path} = {with_unit(value, _kind(parts, owners))}"]
    trace = next((t for t in plan.get("traces", []) if _belongs(t["path"], number_path, parts)), None)
    if trace:
        lines.append(f"formula: {trace['formula']}")
        lines += [f"from: {entry['name']} = {with_unit(entry['value'], entry['kind'])}" for entry in trace["inputs"]]
    lines += own_lines(parts, owners)
    if trace:
        lines += [f"source: {citation(source)}" for source in trace["sources"]]
        lines.append(f"mark: {trace['mark']}")
    if len(lines) == 1:
        told = number_path.startswith(("survey", "made_for"))
        lines.append("told in the survey" if told else "written by the plan itself: no formula stands behind it")
    return [one_line(line) for line in dict.fromkeys(lines)]


def _belongs(pattern: str, path: str, parts: Parts) -> bool:
    """Whether a trace is about the number. A limit that stands inside an exposure was not computed."""
    if "limit" in parts or parts[-1] == "limit_value":
        return False
    regex = re.escape(pattern).replace(re.escape("[*]"), r"\[\d+\]")
    return re.match(rf"{regex}($|[.\[])", path) is not None


def _kind(parts: Parts, owners: list[Table]) -> str | None:
    """Kind of quantity of the number: from its record, from the kind beside it, or from the end of its name."""
    if parts[0] == "exposures" and _of_no_unit(owners):
        return None
    typed = measured_kind(hint_at(Plan, tuple(part if isinstance(part, str) else part - 1 for part in parts)))
    if typed:
        return typed
    name = next((part for part in reversed(parts) if isinstance(part, str)), "")
    beside = owners[0].get("kind") if owners and name in _BESIDE_KIND else None
    if isinstance(beside, str) and beside in KINDS:
        return beside
    if name == "limit_value":
        return "concentration"
    known = next((kind for end, kind in _NAMED.items() if name.endswith(end)), None)
    known = known or next((kind for end, kind in _ENDINGS if name.endswith(end)), None)
    return "liquid" if known == "volume" and parts[0] in _LIQUIDS else known


def _of_no_unit(owners: list[Table]) -> bool:
    """Whether an exposure is a share: of the limits of a mixture, or of what can burn."""
    of = owners[-1] if owners else {}
    return of.get("substance") == "mixture" or of.get("measure") == "explosive_share"
