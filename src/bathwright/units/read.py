"""Reading a typed quantity: "60 in", "1,52 m", "5 ft 3 in", "1 1/2 in", "68 °F"."""

import math
import re

from bathwright.units.kinds import KINDS, Kind

_VULGAR = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8"}
_NUMBER = r"[-+−]?(?:\d+\s+\d+/\d+|\d+/\d+|\d{1,3}(?: \d{3})+(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(?:e[-+]?\d+)?"
_TERM = re.compile(rf"\s*({_NUMBER})\s*(1/[a-z]+|[^\d\s.,+\-].*?|)\s*$", re.IGNORECASE)
_FEET_INCHES = re.compile(
    rf"^\s*(\d+)\s*(?:ft|feet|foot|'|′)\s*({_NUMBER})\s*(?:in|inch|inches|\"|″)\s*$", re.IGNORECASE
)
_LONGEST = 60


class QuantityError(ValueError):
    """A typed quantity that cannot be read; the message says what would be right."""


def read_quantity(text: str, kind_name: str) -> float:
    """SI value of a typed quantity.

    text: number and unit, decimal point or comma, at most 60 characters.
    kind_name: a kind of the closed table in `bathwright.units.kinds`.
    Raises QuantityError with one plain line when the text is no such quantity.
    """
    kind = KINDS[kind_name]
    if len(text) > _LONGEST:
        raise QuantityError(f"is too long for {_article(kind)}; write for example {_examples(kind)}")
    for sign, plain in (*_VULGAR.items(), ("μ", "µ"), ("º", "°")):
        text = text.replace(sign, plain)
    value = _read(text, kind)
    if not math.isfinite(value):
        raise QuantityError(f"is not a finite number; write for example {_examples(kind)}")
    if value < 0 and not kind.negative:
        raise QuantityError(f"is negative; {_article(kind)} is zero or more")
    if kind.name == "temperature" and value < 0:
        raise QuantityError("lies below absolute zero")
    return value


def _read(text: str, kind: Kind) -> float:
    feet = _FEET_INCHES.match(text)
    if feet and "ft" in kind.units:
        return _number(feet[1], kind) * 0.3048 + _number(feet[2], kind) * 0.0254
    match = _TERM.match(text)
    if not match:
        raise QuantityError(f"{text!r} is not {_article(kind)}; write for example {_examples(kind)}")
    unit = re.sub(r"[\s.]", "", match[2]).lower()
    if unit not in kind.units:
        raise QuantityError(_unit_fault(text, match[2].strip(), unit, kind))
    factor, offset = kind.units[unit]
    return _number(match[1], kind) * factor + offset


def _unit_fault(text: str, typed: str, unit: str, kind: Kind) -> str:
    if not unit:
        return f"{text!r} has no unit; {_article(kind)} needs one, for example {_examples(kind)}"
    if unit in kind.refused:
        return f"{text!r}: the unit {typed!r} is ambiguous here; write {kind.refused[unit]}"
    return f"{text!r}: {typed!r} is no unit for {_article(kind)}; write for example {_examples(kind)}"


def _number(text: str, kind: Kind) -> float:
    text = text.strip().replace("−", "-")
    if "/" in text:
        *whole, fraction = text.lstrip("+-").split()
        top, bottom = fraction.split("/")
        if float(bottom) == 0:
            raise QuantityError(f"{text!r} divides by zero")
        size = sum(map(float, whole)) + float(top) / float(bottom)
        return -size if text.startswith("-") else size
    text = text.replace(" ", "")
    if "," in text and "." in text:
        raise QuantityError(f"{text!r} mixes comma and point; write the number without thousands separators")
    if re.fullmatch(r"[-+]?\d{1,3},\d{3}", text) and not text.lstrip("+-").startswith("0"):
        raise QuantityError(
            f"{text!r} may be a decimal or a thousand; write {text.replace(',', '.')} or {text.replace(',', '')}"
        )
    try:
        return float(text.replace(",", "."))
    except ValueError:
        raise QuantityError(f"{text!r} is no number; write for example {_examples(kind)}") from None


def _article(kind: Kind) -> str:
    words = {
        "film": "film thickness", "vapour_ppm": "share of vapour in air", "share": "share",
        "temperature_step": "temperature difference", "liquid": "volume", "work_rate": "work rate",
    }  # fmt: skip
    name = words.get(kind.name, kind.name.replace("_", " "))
    return ("an " if name[0] in "aeiou" else "a ") + name


def _examples(kind: Kind) -> str:
    return " or ".join(f'"{example}"' for example in kind.examples)
