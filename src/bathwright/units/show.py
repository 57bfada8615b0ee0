"""Showing an SI value in the units that the user chose, or in both."""

from bathwright.units.kinds import KINDS


def _text(value: float, kind_name: str, system: str, decimals: int | None) -> str:
    kind = KINDS[kind_name]
    unit, standard = kind.shown[system]
    factor, offset = kind.units[unit.lower().replace(" ", "")]
    number = (value - offset) / factor
    places = standard if decimals is None else decimals
    if kind_name in ("vapour_ppm", "liquid", "mass") and 0 < abs(number) < 10:
        places = max(places, 1 if abs(number) >= 1 else 2)
    text = f"{number:.{places}f}"
    if text.startswith("-") and float(text) == 0:
        text = text[1:]
    return f"{text} {unit}".strip()


def show(value: float, kind_name: str, system: str = "si", decimals: int | None = None) -> str:
    """The value as text in one system ("si" or "us"), rounded for reading."""
    return _text(value, kind_name, system, decimals)


def show_both(value: float, kind_name: str, system: str = "si") -> str:
    """The value in the user's system with the other one in brackets, for safety-critical values."""
    first = _text(value, kind_name, system, None)
    second = _text(value, kind_name, "us" if system == "si" else "si", None)
    return first if first == second else f"{first} ({second})"
