"""Kinds of quantity: accepted spellings, factors to SI, decimals in files, units to show.

A closed table. User text never reaches a general unit library (`cfm` would read as centifermi).
Factors are exact by definition where one exists (inch, pound, US gallon: NIST SP 811); the test
suite compares every factor with an independent library.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

_FT = 0.3048
_LB = 0.45359237
_US_GAL = 231 * 0.0254**3
_UK_GAL = 4.54609e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """One kind of quantity.

    `units` maps an accepted spelling (lower case, no blanks) to (factor, offset): SI = value * factor + offset.
    `shown` gives (unit, decimals) for "si" and "us". `decimals` is the number of decimals in a written file.
    `refused` maps a tempting but ambiguous spelling to what would be right.
    """

    name: str
    si: str
    decimals: int
    units: Mapping[str, tuple[float, float]]
    shown: Mapping[str, tuple[str, int]]
    examples: tuple[str, str]
    refused: Mapping[str, str] = field(default_factory=dict)
    negative: bool = False


def _spelt(factors: dict[str, float]) -> dict[str, tuple[float, float]]:
    return {name: (factor, 0.0) for name, factor in factors.items()}


_LENGTH = _spelt(
    {
        "m": 1.0, "metre": 1.0, "metres": 1.0, "meter": 1.0, "meters": 1.0,
        "cm": 0.01, "mm": 0.001, "µm": 1e-6, "um": 1e-6, "micron": 1e-6, "microns": 1e-6,
        "in": 0.0254, "inch": 0.0254, "inches": 0.0254, '"': 0.0254, "″": 0.0254,
        "ft": _FT, "foot": _FT, "feet": _FT, "'": _FT, "′": _FT,
        "mil": 2.54e-5, "mils": 2.54e-5, "thou": 2.54e-5,
    }
)  # fmt: skip
_VOLUME = _spelt(
    {
        "m3": 1.0, "m³": 1.0, "l": 1e-3, "litre": 1e-3, "litres": 1e-3, "liter": 1e-3, "liters": 1e-3,
        "ml": 1e-6, "cm3": 1e-6, "ft3": _FT**3, "ft³": _FT**3, "cuft": _FT**3,
        "usgal": _US_GAL, "usqt": _US_GAL / 4, "uspt": _US_GAL / 8, "usfloz": _US_GAL / 128,
        "ukgal": _UK_GAL, "impgal": _UK_GAL, "ukpt": _UK_GAL / 8, "ukfloz": _UK_GAL / 160,
    }
)  # fmt: skip
_TIME = _spelt(
    {
        "s": 1.0, "sec": 1.0, "second": 1.0, "seconds": 1.0,
        "min": 60.0, "mins": 60.0, "minute": 60.0, "minutes": 60.0,
        "h": 3600.0, "hr": 3600.0, "hrs": 3600.0, "hour": 3600.0, "hours": 3600.0,
        "d": 86400.0, "day": 86400.0, "days": 86400.0, "week": 604800.0, "weeks": 604800.0,
    }
)  # fmt: skip
_WHICH_VOLUME = {
    "gal": "US gal or UK gal", "gallon": "US gal or UK gal", "gallons": "US gal or UK gal",
    "qt": "US qt", "quart": "US qt", "quarts": "US qt",
    "pt": "US pt or UK pt", "pint": "US pt or UK pt", "pints": "US pt or UK pt",
    "floz": "US fl oz or UK fl oz", "oz": "US fl oz or UK fl oz (a volume, not a weight)",
}  # fmt: skip
_CELSIUS = {"°c": (1.0, 273.15), "c": (1.0, 273.15), "degc": (1.0, 273.15), "k": (1.0, 0.0)}
_FAHRENHEIT = (5 / 9, 273.15 - 32 * 5 / 9)
_PERCENT = {"%": (0.01, 0.0), "percent": (0.01, 0.0)}

KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind(
            name="length", si="m", decimals=4, units=_LENGTH,
            shown={"si": ("m", 2), "us": ("in", 1)}, examples=("1.52 m", "60 in"),
        ),
        Kind(
            name="film", si="m", decimals=9, units=_LENGTH,
            shown={"si": ("µm", 0), "us": ("mil", 1)}, examples=("60 µm", "2.4 mil"),
        ),
        Kind(
            name="area", si="m2", decimals=4,
            units=_spelt({"m2": 1.0, "m²": 1.0, "sqm": 1.0, "cm2": 1e-4, "ft2": _FT**2, "ft²": _FT**2,
                          "sqft": _FT**2, "in2": 0.0254**2, "in²": 0.0254**2}),
            shown={"si": ("m²", 2), "us": ("ft²", 1)}, examples=("2.1 m2", "22 ft2"),
        ),
        Kind(
            name="volume", si="m3", decimals=7, units=_VOLUME,
            shown={"si": ("m³", 2), "us": ("ft³", 0)}, examples=("9.1 m3", "320 ft3"),
            refused=_WHICH_VOLUME,
        ),
        Kind(
            name="liquid", si="m3", decimals=7, units=_VOLUME,
            shown={"si": ("mL", 0), "us": ("US fl oz", 1)}, examples=("950 mL", "32 US fl oz"),
            refused=_WHICH_VOLUME,
        ),
        Kind(
            name="mass", si="kg", decimals=6,
            units=_spelt({"kg": 1.0, "g": 1e-3, "mg": 1e-6, "lb": _LB, "lbs": _LB, "oz": _LB / 16}),
            shown={"si": ("g", 0), "us": ("oz", 1)}, examples=("250 g", "8.8 oz"),
        ),
        Kind(
            name="temperature", si="K", decimals=2,
            units={**_CELSIUS, "°f": _FAHRENHEIT, "f": _FAHRENHEIT, "degf": _FAHRENHEIT},
            shown={"si": ("°C", 1), "us": ("°F", 0)}, examples=("21 °C", "70 °F"), negative=True,
        ),
        Kind(
            name="temperature_step", si="K", decimals=2,
            units={"k": (1.0, 0.0), "°c": (1.0, 0.0), "c": (1.0, 0.0), "°f": (5 / 9, 0.0), "f": (5 / 9, 0.0),
                   "°f(difference)": (5 / 9, 0.0)},
            shown={"si": ("K", 1), "us": ("°F (difference)", 1)}, examples=("3 K", "5 °F"), negative=True,
        ),
        Kind(
            name="time", si="s", decimals=0, units=_TIME, shown={"si": ("h", 1), "us": ("h", 1)},
            examples=("90 min", "24 h"), refused={"m": "min (minutes) or h (hours)"},
        ),
        Kind(
            name="flow", si="m3/s", decimals=6,
            units=_spelt({"m3/s": 1.0, "m³/s": 1.0, "m3/h": 1 / 3600, "m³/h": 1 / 3600, "m3/min": 1 / 60,
                          "l/s": 1e-3, "cfm": _FT**3 / 60, "ft3/min": _FT**3 / 60}),
            shown={"si": ("m³/h", 0), "us": ("cfm", 0)}, examples=("460 m3/h", "270 cfm"),
        ),
        Kind(
            name="rate", si="1/s", decimals=9,
            units=_spelt({"1/s": 1.0, "1/min": 1 / 60, "1/h": 1 / 3600, "ach": 1 / 3600}),
            shown={"si": ("1/h", 2), "us": ("1/h", 2)}, examples=("0.4 1/h", "6 ACH"),
        ),
        Kind(
            name="speed", si="m/s", decimals=6,
            units=_spelt({"m/s": 1.0, "m/h": 1 / 3600, "fpm": _FT / 60, "ft/min": _FT / 60}),
            shown={"si": ("m/s", 2), "us": ("ft/min", 0)}, examples=("0.1 m/s", "20 fpm"),
        ),
        Kind(
            name="pressure", si="Pa", decimals=2,
            units=_spelt({"pa": 1.0, "kpa": 1000.0, "hpa": 100.0, "mbar": 100.0, "mmhg": 133.322387415,
                          "torr": 101325 / 760, "inwg": 249.08891, "atm": 101325.0}),
            shown={"si": ("Pa", 1), "us": ("in wg", 3)}, examples=("12.6 kPa", "95 mmHg"), negative=True,
        ),
        Kind(
            name="share", si="1", decimals=6,
            units={**_PERCENT, "ppm": (1e-6, 0.0), "ppb": (1e-9, 0.0), "g/g": (1.0, 0.0)},
            shown={"si": ("%", 1), "us": ("%", 1)}, examples=("46 %", "0.9 %"),
        ),
        Kind(
            name="humidity", si="1", decimals=4, units={**_PERCENT, "%rh": (0.01, 0.0)},
            shown={"si": ("%", 0), "us": ("%", 0)}, examples=("50 %", "85 %"),
        ),
        Kind(
            name="concentration", si="kg/m3", decimals=12,
            units=_spelt({"kg/m3": 1.0, "g/l": 1.0, "g/m3": 1e-3, "mg/m3": 1e-6, "mg/m³": 1e-6, "µg/m3": 1e-9,
                          "ug/m3": 1e-9, "lb/usgal": _LB / _US_GAL}),
            shown={"si": ("g/L", 0), "us": ("lb/US gal", 2)}, examples=("206 g/L", "1.72 lb/US gal"),
            refused={"lb/gal": "lb/US gal", "ppm": "mg/m3 (ppm needs a substance)"},
        ),
        Kind(
            name="density", si="kg/m3", decimals=2,
            units=_spelt({"kg/m3": 1.0, "kg/l": 1000.0, "g/ml": 1000.0, "g/cm3": 1000.0, "lb/usgal": _LB / _US_GAL}),
            shown={"si": ("kg/L", 2), "us": ("lb/US gal", 1)}, examples=("1.21 kg/L", "10.1 lb/US gal"),
            refused={"lb/gal": "lb/US gal"},
        ),
        Kind(
            name="vapour_ppm", si="1", decimals=9, units=_spelt({"ppm": 1e-6, "ppb": 1e-9, "%": 1e-2}),
            shown={"si": ("ppm", 0), "us": ("ppm", 0)}, examples=("50 ppm", "20 ppb"),
        ),
        Kind(
            name="molar_mass", si="kg/mol", decimals=6, units=_spelt({"g/mol": 1e-3, "kg/mol": 1.0}),
            shown={"si": ("g/mol", 1), "us": ("g/mol", 1)}, examples=("72.11 g/mol", "92.14 g/mol"),
        ),
        Kind(
            name="molar_energy", si="J/mol", decimals=1, units=_spelt({"kj/mol": 1000.0, "j/mol": 1.0}),
            shown={"si": ("kJ/mol", 1), "us": ("kJ/mol", 1)}, examples=("55 kJ/mol", "45 kJ/mol"),
        ),
        Kind(
            name="work_rate", si="s/m2", decimals=3, units=_spelt({"s/m2": 1.0, "min/m2": 60.0, "min/m²": 60.0}),
            shown={"si": ("min/m²", 1), "us": ("min/m²", 1)}, examples=("6 min/m2", "12 min/m2"),
        ),
        Kind(
            name="count", si="1", decimals=3, units={"": (1.0, 0.0), "times": (1.0, 0.0), "x": (1.0, 0.0)},
            shown={"si": ("", 0), "us": ("", 0)}, examples=("2", "3"),
        ),
    )
}  # fmt: skip


def kind_of(name: str) -> Kind:
    """The kind by its name. KeyError for a name that is not in the closed table."""
    return KINDS[name]


def rounded(value: float, kind: str) -> float:
    """The value with the fixed number of decimals that files of this project use for its kind."""
    out = round(value, KINDS[kind].decimals)
    return 0.0 if out == 0 else out
