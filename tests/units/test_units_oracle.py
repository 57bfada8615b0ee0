"""Every factor of the closed unit table against an independent unit library."""

import math
from collections.abc import Iterator
from functools import cache
from typing import Any

import pytest

from bathwright.units import KINDS

# accepted spelling -> what the library calls it
ORACLE = {
    "": "dimensionless", "times": "dimensionless", "x": "dimensionless", "g/g": "gram/gram",
    "%": "percent", "percent": "percent", "%rh": "percent", "ppm": "ppm", "ppb": "nanogram/gram",
    "m": "meter", "metre": "meter", "metres": "meter", "meter": "meter", "meters": "meter", "cm": "centimeter",
    "mm": "millimeter", "µm": "micrometer", "um": "micrometer", "micron": "micron", "microns": "micron",
    "in": "inch", "inch": "inch", "inches": "inch", '"': "inch", "″": "inch",
    "ft": "foot", "foot": "foot", "feet": "foot", "'": "foot", "′": "foot",
    "mil": "thou", "mils": "thou", "thou": "thou",
    "m2": "meter**2", "m²": "meter**2", "sqm": "meter**2", "cm2": "centimeter**2", "ft2": "foot**2", "ft²": "foot**2",
    "sqft": "foot**2", "in2": "inch**2", "in²": "inch**2",
    "m3": "meter**3", "m³": "meter**3", "l": "liter", "litre": "liter", "litres": "liter", "liter": "liter",
    "liters": "liter", "ml": "milliliter", "cm3": "centimeter**3", "ft3": "foot**3", "ft³": "foot**3",
    "cuft": "foot**3", "usgal": "US_liquid_gallon", "usqt": "US_liquid_quart", "uspt": "US_pint",
    "usfloz": "US_fluid_ounce", "ukgal": "imperial_gallon", "impgal": "imperial_gallon", "ukpt": "imperial_pint",
    "ukfloz": "imperial_fluid_ounce",
    "kg": "kilogram", "g": "gram", "mg": "milligram", "lb": "pound", "lbs": "pound", "oz": "ounce",
    "s": "second", "sec": "second", "second": "second", "seconds": "second",
    "min": "minute", "mins": "minute", "minute": "minute", "minutes": "minute",
    "h": "hour", "hr": "hour", "hrs": "hour", "hour": "hour", "hours": "hour",
    "d": "day", "day": "day", "days": "day", "week": "week", "weeks": "week",
    "m3/s": "meter**3/second", "m³/s": "meter**3/second", "m3/h": "meter**3/hour", "m³/h": "meter**3/hour",
    "m3/min": "meter**3/minute", "l/s": "liter/second", "cfm": "foot**3/minute", "ft3/min": "foot**3/minute",
    "1/s": "1/second", "1/min": "1/minute", "1/h": "1/hour", "ach": "1/hour",
    "m/s": "meter/second", "m/h": "meter/hour", "fpm": "foot/minute", "ft/min": "foot/minute",
    "pa": "pascal", "kpa": "kilopascal", "hpa": "hectopascal", "mbar": "millibar", "mmhg": "millimeter_Hg",
    "torr": "torr", "inwg": "cmH2O * inch / centimeter", "atm": "standard_atmosphere",
    "kg/m3": "kilogram/meter**3", "g/l": "gram/liter", "g/m3": "gram/meter**3", "mg/m3": "milligram/meter**3",
    "mg/m³": "milligram/meter**3", "µg/m3": "microgram/meter**3", "ug/m3": "microgram/meter**3",
    "lb/usgal": "pound/US_liquid_gallon", "kg/l": "kilogram/liter", "g/ml": "gram/milliliter",
    "g/cm3": "gram/centimeter**3",
    "g/mol": "gram/mole", "kg/mol": "kilogram/mole", "kj/mol": "kilojoule/mole", "j/mol": "joule/mole",
    "s/m2": "second/meter**2", "min/m2": "minute/meter**2", "min/m²": "minute/meter**2",
}  # fmt: skip
SCALES = {"°c": "degC", "c": "degC", "degc": "degC", "°f": "degF", "f": "degF", "degf": "degF", "k": "kelvin"}
STEPS = {
    "°c": "delta_degC", "c": "delta_degC", "°f": "delta_degF", "f": "delta_degF", "°f(difference)": "delta_degF",
    "k": "kelvin",
}  # fmt: skip
SI = {
    "m3/s": "meter**3/second",
    "s/m2": "second/meter**2",
    "1": "dimensionless",
    "m2": "meter**2",
    "m3": "meter**3",
    "kg/m3": "kilogram/meter**3",
    "K": "kelvin",
}


@cache
def _library() -> Any:
    return pytest.importorskip("pint").UnitRegistry()


def _spellings() -> Iterator[tuple[str, str]]:
    return ((kind.name, spelling) for kind in KINDS.values() for spelling in kind.units)


@pytest.mark.parametrize(("kind_name", "spelling"), list(_spellings()))
def test_factor_and_offset_agree_with_the_library(kind_name: str, spelling: str) -> None:
    library = _library()
    kind = KINDS[kind_name]
    names = {"temperature": SCALES, "temperature_step": STEPS}.get(kind_name, ORACLE)
    factor, offset = kind.units[spelling]
    for value in (0.0, 1.0, 37.5):
        expected = library.Quantity(value, names[spelling]).to(SI.get(kind.si, kind.si)).magnitude
        assert math.isclose(value * factor + offset, expected, rel_tol=1e-9, abs_tol=1e-15), (spelling, expected)


def test_the_trap_that_the_closed_table_avoids() -> None:
    assert _library()("1 cfm").dimensionality != {"[length]": 3, "[time]": -1}, "the library would read cfm"
