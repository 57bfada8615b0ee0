"""Moving means and times over a limit, for a series of exact step means on steps of any length.

A series has `times_s` (n + 1 step edges, rising) and `values` (n means, one a step). Within a step the value
is taken as its mean, so a moving mean is exact through the cumulative integral.
"""

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}
"""Exact for the series given. Inside a step the true course may lie above its mean: use short steps."""

Array = NDArray[np.float64]
Series = Sequence[float] | Array


def _series(times_s: Series, values: Series, window_s: float) -> tuple[Array, Array, Array]:
    """Edges, values and the cumulative integral at the edges; ValueError for what is no series."""
    edges, means = np.asarray(times_s, dtype=np.float64), np.asarray(values, dtype=np.float64)
    if means.ndim != 1 or means.size == 0 or edges.shape != (means.size + 1,):
        raise ValueError(f"times_s needs one more entry than values, got {edges.shape} and {means.shape}")
    if not (np.isfinite(edges).all() and np.isfinite(means).all() and (np.diff(edges) > 0.0).all()):
        raise ValueError("times_s must rise and all numbers must be finite")
    if not (np.isfinite(window_s) and window_s >= 0.0):
        raise ValueError(f"window_s must be finite and at least 0, got {window_s!r}")
    dose = np.concatenate(([0.0], np.cumsum(means * np.diff(edges))))
    return edges, means, dose


def _distinct(values: Array) -> Array:
    """The values in rising order, each once. (numpy.unique costs the import of numpy.ma: 50 ms of a whole plan.)"""
    ordered = np.sort(values)
    return ordered[np.concatenate(([True], np.diff(ordered) > 0.0))]


def highest_mean(times_s: Series, values: Series, window_s: float) -> tuple[float, float]:
    """Largest moving mean over `window_s`: (its value, the time at which that window starts, s).

    The moving mean bends only where a window starts or ends on an edge, so those starts are tried and the
    answer is exact. A series shorter than the window is padded with 0: its dose is divided by the window
    (then the start is the first edge). `window_s` 0 gives the highest step mean. Ties: the earliest.
    Source: own-computation, own.
    """
    edges, means, dose = _series(times_s, values, window_s)
    if window_s == 0.0:
        highest = int(np.argmax(means))
        return float(means[highest]), float(edges[highest])
    if edges[-1] - edges[0] <= window_s:
        return float(dose[-1] / window_s), float(edges[0])
    last_start = edges[-1] - window_s
    starts = _distinct(np.clip(np.concatenate((edges, edges - window_s)), edges[0], last_start))
    doses = np.interp(starts + window_s, edges, dose) - np.interp(starts, edges, dose)
    highest = int(np.argmax(doses))
    return float(doses[highest] / window_s), float(starts[highest])


def time_above(times_s: Series, values: Series, limit: float) -> float:
    """Time in s that the series spends above the limit (a step exactly at it does not count).

    Source: own-computation, own.
    """
    edges, means, _ = _series(times_s, values, 0.0)
    if not np.isfinite(limit):
        raise ValueError(f"limit must be finite, got {limit!r}")
    return float(np.diff(edges)[means > limit].sum())


def first_time_after_which_below(times_s: Series, values: Series, limit: float, window_s: float) -> float | None:
    """Earliest time in s from which every moving mean that starts there or later stays at or below the limit.

    A window that would pass the end of the series is cut there and divided by what is left of it, never
    padded with 0. None when the series does not end below the limit: then it proves nothing.
    `window_s` 0 asks for the step means themselves. Source: own-computation, own.
    """
    edges, means, dose = _series(times_s, values, window_s)
    if not np.isfinite(limit):
        raise ValueError(f"limit must be finite, got {limit!r}")
    if means[-1] > limit:
        return None
    if window_s == 0.0:
        over = np.flatnonzero(means > limit)
        return float(edges[over[-1] + 1]) if over.size else float(edges[0])
    starts = _distinct(np.clip(np.concatenate((edges, edges - window_s)), edges[0], edges[-1]))
    ends = np.minimum(starts + window_s, edges[-1])
    excess = np.interp(ends, edges, dose) - np.interp(starts, edges, dose) - limit * (ends - starts)
    rounding = 1e-12 * abs(limit) * window_s
    over = np.flatnonzero(excess > rounding)
    if not over.size:
        return float(edges[0])
    i = int(over[-1])
    crossed = excess[i] / (excess[i] - min(excess[i + 1], 0.0))
    return float(starts[i] + crossed * (starts[i + 1] - starts[i]))
