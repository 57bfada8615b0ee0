"""Refusal of inputs that no formula can mean: not a number, infinite, of the wrong sign."""

import math
from collections.abc import Iterable


def finite(**values: float) -> None:
    """Raise ValueError, with its name, for a value that is nan or infinite."""
    for name, value in values.items():
        if not math.isfinite(value):
            raise ValueError(f"{name} must be finite, got {value!r}")


def positive(**values: float) -> None:
    """Raise ValueError, with its name, for a value that is not finite and above 0."""
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0.0):
            raise ValueError(f"{name} must be finite and above 0, got {value!r}")


def not_negative(**values: float) -> None:
    """Raise ValueError, with its name, for a value that is not finite and at least 0."""
    for name, value in values.items():
        if not (math.isfinite(value) and value >= 0.0):
            raise ValueError(f"{name} must be finite and at least 0, got {value!r}")


def share(**values: float) -> None:
    """Raise ValueError, with its name, for a value outside 0..1."""
    for name, value in values.items():
        if not 0.0 <= value <= 1.0:
            raise ValueError(f"{name} must be a share from 0 to 1, got {value!r}")


def positive_share(**values: float) -> None:
    """Raise ValueError, with its name, for a value that is not above 0 and at most 1."""
    for name, value in values.items():
        if not 0.0 < value <= 1.0:
            raise ValueError(f"{name} must be a share above 0 and at most 1, got {value!r}")


def same_length(**columns: Iterable[float]) -> int:
    """Return the common length of the columns; raise ValueError when they differ or are empty."""
    lengths = {name: len(tuple(column)) for name, column in columns.items()}
    if len(set(lengths.values())) != 1 or 0 in lengths.values():
        raise ValueError(f"columns must be equally long and not empty, got {lengths}")
    return next(iter(lengths.values()))
