"""Published values, one per entry of the TOML files here, with source, place, mark and tolerance beside it.

An entry with `trap = true` holds a printed error or a wrong short cut: ours must not give it.
"""

import importlib
import tomllib
from pathlib import Path
from typing import Any

import pytest

# unit: (factor, offset), SI value = (printed + offset) · factor
UNITS: dict[str, tuple[float, float]] = {
    "1": (1.0, 0.0),
    "%": (1e-2, 0.0),
    "ppm": (1e-6, 0.0),
    "in": (0.0254, 0.0),
    "mil": (0.0254e-3, 0.0),
    "um": (1e-6, 0.0),
    "m2": (1.0, 0.0),
    "ft2": (0.3048**2, 0.0),
    "m3": (1.0, 0.0),
    "L": (1e-3, 0.0),
    "ft3": (0.3048**3, 0.0),
    "gal": (231 * 0.0254**3, 0.0),
    "m2/L": (1e3, 0.0),
    "ft2/gal": (0.3048**2 / (231 * 0.0254**3), 0.0),
    "lb": (0.45359237, 0.0),
    "g/L": (1.0, 0.0),
    "mg/m3": (1e-6, 0.0),
    "min": (60.0, 0.0),
    "h": (3600.0, 0.0),
    "1/h": (1 / 3600.0, 0.0),
    "1/min": (1 / 60.0, 0.0),
    "m/h": (1 / 3600.0, 0.0),
    "ft/min": (0.3048 / 60.0, 0.0),
    "g/min": (1e-3 / 60.0, 0.0),
    "m3/min": (1 / 60.0, 0.0),
    "ft3/min": (0.3048**3 / 60.0, 0.0),
    "g/m2h": (1e-3 / 3600.0, 0.0),
    "Pa": (1.0, 0.0),
    "mmHg": (101325.0 / 760.0, 0.0),
    "K": (1.0, 0.0),
    "degC": (1.0, 273.15),
    "degF": (5.0 / 9.0, 459.67),
    "J/kg": (1.0, 0.0),
    "kJ/kg": (1e3, 0.0),
    "kJ/mol": (1e3, 0.0),
    "m3/kg": (1.0, 0.0),
    "K*R": (8.314462618, 0.0),
}
MARKS = {"verified", "secondary", "memory", "own", "judgement", "common_practice"}
FILES = sorted(Path(__file__).parent.glob("*.toml"))
CASES = [case for file in FILES for case in tomllib.loads(file.read_text(encoding="utf-8"))["case"]]


def quantity(printed: str) -> tuple[float, float, float]:
    """Split "5 mil" into the printed number, the factor and the offset of its unit."""
    number, unit = printed.split(" ", 1)
    return float(number), *UNITS[unit]


def to_si(argument: Any) -> Any:
    if not isinstance(argument, str):
        return argument
    printed, factor, offset = quantity(argument)
    return (printed + offset) * factor


@pytest.mark.parametrize("case", CASES, ids=[case["id"] for case in CASES])
def test_published_value(case: dict[str, Any]) -> None:
    assert case["source"]
    assert case["place"]
    assert case["mark"] in MARKS
    module, name = case["call"].split(".")
    function = getattr(importlib.import_module(f"bathwright.physics.{module}"), name)
    result = function(**{key: to_si(argument) for key, argument in case["arguments"].items()})
    printed, factor, offset = quantity(case["expected"])
    found = result / factor - offset
    agrees = found == pytest.approx(printed, rel=case.get("relative", 0.0), abs=case.get("absolute", 0.0))
    assert agrees is not case.get("trap", False), f"{found} against {printed} ({case['place']})"


def test_ids_are_unique() -> None:
    ids = [case["id"] for case in CASES]
    assert len(ids) == len(set(ids)) > 60
