"""Sheets for the tests of the procedure, made from the records and invented."""

from typing import Any

from bathwright.domain.sheet import (
    Amount,
    Choice,
    Component,
    Conditions,
    Fact,
    Instruction,
    Paper,
    Range,
    Ratio,
    Sheet,
    SheetPart,
)

HOUR = 3600.0


def amount(kind: str, value: float, celsius: float | None = None, **more: Any) -> Fact:
    return fact(kind, Amount(value=value, kind="any"), celsius, **more)


def span(kind: str, low: float | None, high: float | None, celsius: float | None = None, **more: Any) -> Fact:
    return fact(kind, Range(low=low, high=high, kind="any"), celsius, **more)


def fact(kind: str, value: Any, celsius: float | None = None, **more: Any) -> Fact:
    at = Conditions(temperature=None if celsius is None else celsius + 273.15)
    name = kind if celsius is None else f"{kind}-{celsius:g}"
    return Fact(**{"id": name, "kind": kind, "value": value, "at": at, **more})


def allowed(kind: str, code: str, yes: bool = True) -> Fact:
    return Fact(id=f"{kind}-{code}", kind=kind, value=Choice(code=code, allowed=yes))


def ratio(by: Any, *numbers: float) -> Fact:
    return fact("mix_ratio", Ratio(by=by, numbers=numbers))


def told(kind: str, *words: str) -> Fact:
    return fact(kind, Instruction(act=kind, values=words))


def part(name: str, density: float | None = None, weight: float | None = None, volume: float | None = None,
         contents: dict[str, tuple[float, float]] | None = None) -> SheetPart:  # fmt: skip
    composition = None
    if contents is not None:
        composition = tuple(Component(substance=cas, cas=cas, low=a, high=b) for cas, (a, b) in contents.items())
    return SheetPart(
        id=name, density=density, solids_by_weight=weight, solids_by_volume=volume, composition=composition
    )


def sheet(*facts: Fact, parts: tuple[SheetPart, ...] = (), role: Any = "coating", **more: Any) -> Sheet:
    usual: dict[str, Any] = {
        "format": "bathwright-sheet/1", "id": "made", "product": "Made", "family": "epoxy", "role": role,
        "invented": True, "papers": (Paper(id="data", kind="data", revision="1"),), "parts": parts, "facts": facts,
    }  # fmt: skip
    return Sheet(**{**usual, **more})
