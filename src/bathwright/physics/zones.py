"""The general propagator of linear zones, exact for constant pieces, batched over scenarios.

dx/dt = A·x + b. Arrays: `matrix` (..., n, n), `source` and `state` (..., n); the leading axes are scenarios
and broadcast. The closed forms of one and two zones are here by name too; they live in `dilution`,
`emission` and `near_far`, which need no numpy.
"""

import math
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from .dilution import dilution_flow_m3_s, one_box_concentration, one_box_time_to, purge_time_s
from .emission import (
    continuous_application_concentration,
    continuous_application_rate_kg_s,
    exponential_source_concentration,
    exponential_source_peak_time_s,
    exponential_source_rate_kg_s,
)
from .near_far import near_far_field, near_far_steady, near_field_hemisphere
from .validity import Validity

__all__ = [
    "VALIDITY",
    "Transition",
    "advance",
    "continuous_application_concentration",
    "continuous_application_rate_kg_s",
    "dilution_flow_m3_s",
    "expm_taylor",
    "exponential_source_concentration",
    "exponential_source_peak_time_s",
    "exponential_source_rate_kg_s",
    "near_far_field",
    "near_far_steady",
    "near_field_hemisphere",
    "one_box_concentration",
    "one_box_time_to",
    "propagate",
    "purge_time_s",
    "transition",
]

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}
"""The propagator is exact up to rounding: relative error about 1e-16 times (largest rate · step)."""

Array = NDArray[np.float64]

_DEGREES: Final = ((0.0024, 4), (0.09, 8), (0.41, 12), (1.0, 16))
"""Largest norm for which φ1's Taylor sum of that degree is exact to rounding: θ^(m+1) ≤ 2^-53·(m+2)!."""


def _block_coefficients(degree: int) -> Array:
    """Coefficients 1/(k+1)! of φ1, four powers in a row, the last power with the last row."""
    rows = np.zeros((degree // 4, 5))
    for k in range(degree):
        rows[k // 4, k % 4] = 1.0 / math.factorial(k + 1)
    rows[-1, 4] = 1.0 / math.factorial(degree + 1)
    return rows


_BLOCKS: Final = {degree: _block_coefficients(degree) for _, degree in _DEGREES}


def _norm(matrices: Array) -> float:
    """Largest over the scenarios of the smaller of the row norm and the column norm."""
    size = np.abs(matrices)
    each = np.minimum(size.sum(axis=-1).max(axis=-1), size.sum(axis=-2).max(axis=-1))
    largest = float(each.max(initial=0.0))
    if not math.isfinite(largest):
        raise ValueError("the matrix must be finite")
    return largest


def _phi_1(matrices: Array, degree: int) -> Array:
    """φ1(M) = Σ M^k/(k+1)! for matrices of norm up to 1, by Paterson and Stockmeyer's grouping."""
    powers = np.empty((5, *matrices.shape))
    powers[0] = np.eye(matrices.shape[-1])
    powers[1] = matrices
    np.matmul(powers[1], powers[1], out=powers[2])
    np.matmul(powers[2], powers[1:3], out=powers[3:5])
    coefficients = _BLOCKS[degree]
    blocks = (coefficients @ powers.reshape(5, -1)).reshape(-1, *matrices.shape)
    total: Array = blocks[-1]
    for block in blocks[-2::-1]:
        total = np.matmul(total, powers[4])
        total += block
    return total


def _exponential_and_mean(matrices: Array, norm: float) -> tuple[Array, Array]:
    """e^M and φ1(M) = ∫₀¹ e^(M·s) ds of (..., n, n): Taylor on a halved matrix, then doubling.

    Off the diagonal not negative (Metzler): nothing below 0 comes out. The scaled matrix has a norm, so a
    diagonal, of at most 1, where both Taylor sums have no negative term in A + c·I; the doublings only add
    and multiply what is not negative.
    """
    doublings = math.frexp(norm)[1] if norm > 1.0 else 0
    scaled = matrices * 0.5**doublings
    degree = next(d for limit, d in _DEGREES if norm * 0.5**doublings <= limit)
    size = matrices.shape[-1]
    both = np.empty((*matrices.shape[:-1], 2 * size))
    both[..., size:] = _phi_1(scaled, degree)
    np.matmul(scaled, both[..., size:], out=both[..., :size])
    np.einsum("...ii->...i", both[..., :size])[...] += 1.0
    for _ in range(doublings):
        doubled = np.matmul(both[..., :size], both)
        doubled[..., size:] += both[..., size:]
        both = doubled
    return both[..., :size], both[..., size:] * 0.5**doublings


def expm_taylor(matrices: Array) -> Array:
    """Matrix exponential of a batch (..., n, n), dimensionless, by scaled Taylor sums and squaring.

    Relative error of about 1e-16 times the norm. For matrices that are not negative off the diagonal, the
    answer has no negative entry. Raises ValueError for entries that are not finite or a matrix not square.
    Source: own-computation (tested against scipy.linalg.expm), own.
    """
    matrices = np.asarray(matrices, dtype=np.float64)
    if matrices.ndim < 2 or matrices.shape[-1] != matrices.shape[-2]:
        raise ValueError(f"matrices must have the shape (..., n, n), got {matrices.shape}")
    return _exponential_and_mean(matrices, _norm(matrices))[0]


class Transition(NamedTuple):
    """What a step of fixed length does to any state: two matrices (..., n + 1, n + 1) on (state, 1)."""

    end: Array
    mean: Array


def transition(matrix: Array, source: Array, dt_s: float) -> Transition:
    """Work out the step of dx/dt = A·x + b over `dt_s`; use it again while A, b and the step stay the same.

    `matrix` (..., n, n) in 1/s, `source` (..., n) in state units per s. Raises ValueError for a negative step,
    wrong shapes or values that are not finite. Source: own-computation (tested against scipy), own.
    """
    matrix, source = np.asarray(matrix, dtype=np.float64), np.asarray(source, dtype=np.float64)
    size = matrix.shape[-1]
    if matrix.ndim < 2 or matrix.shape[-2] != size or source.shape[-1:] != (size,):
        raise ValueError(f"matrix (..., n, n) and source (..., n) do not fit: {matrix.shape}, {source.shape}")
    if not (math.isfinite(dt_s) and dt_s >= 0.0):
        raise ValueError(f"dt_s must be finite and at least 0, got {dt_s!r}")
    leading = np.broadcast_shapes(matrix.shape[:-2], source.shape[:-1])
    augmented = np.zeros((*leading, size + 1, size + 1))
    augmented[..., :size, :size] = matrix
    augmented[..., :size, size] = source
    augmented *= dt_s
    if not np.isfinite(augmented[..., size]).all():
        raise ValueError("the source must be finite")
    return Transition(*_exponential_and_mean(augmented, _norm(augmented[..., :size, :size])))


def advance(step: Transition, state: Array) -> tuple[Array, Array]:
    """Take a state (..., n) through a worked-out step: (state at its end, mean over it), both exact."""
    state = np.asarray(state, dtype=np.float64)
    size = step.end.shape[-1] - 1
    column = state[..., np.newaxis]
    end = step.end[..., :size, :size] @ column + step.end[..., :size, size:]
    mean = step.mean[..., :size, :size] @ column + step.mean[..., :size, size:]
    return end[..., 0], mean[..., 0]


def propagate(matrix: Array, source: Array, state: Array, dt_s: float) -> tuple[Array, Array]:
    """Exact step of dx/dt = A·x + b with constant A and b: (state at the end, mean over the step).

    `matrix` (..., n, n) in 1/s, `source` (..., n) per s, `state` (..., n); scenarios lead and broadcast.
    Where A is not negative off its diagonal and b and x are not negative, no answer is negative. The balance
    end − start = (A·mean + b)·dt holds to rounding. Raises ValueError as `transition` does.
    Source: own-computation (tested against scipy), own.
    """
    return advance(transition(matrix, source, dt_s), state)
