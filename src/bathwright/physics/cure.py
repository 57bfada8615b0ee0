"""Speed of cure against temperature: Arrhenius rate, equivalent age, time to an age.

No function has a range here: how far a cure law holds is told by the sheet of the coating, not by a formula.
"""

import math
from collections.abc import Callable, Sequence
from typing import Final

from .checks import finite, not_negative, positive, same_length
from .constants import GAS_CONSTANT_J_MOL_K
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}

_PANEL_K: Final = 5.0
_GAUSS: Final = ((0.5 - math.sqrt(0.15), 5.0 / 18.0), (0.5, 8.0 / 18.0), (0.5 + math.sqrt(0.15), 5.0 / 18.0))


def rate_factor_arrhenius(temperature_k: float, reference_k: float, activation_energy_j_mol: float) -> float:
    """How much faster cure runs at a temperature than at the reference: exp[E/R · (1/T_ref − 1/T)].

    Pure number; 1 at the reference. Raises ValueError for temperatures not above 0 K.
    Source: astm-c1074 (affinity ratio; Carino 1984), verified; same form in rpmodel, verified.
    """
    positive(temperature_k=temperature_k, reference_k=reference_k)
    finite(activation_energy_j_mol=activation_energy_j_mol)
    return math.exp(activation_energy_j_mol / GAS_CONSTANT_J_MOL_K * (1.0 / reference_k - 1.0 / temperature_k))


def activation_energy_from_two_times(
    time_1_s: float, temperature_1_k: float, time_2_s: float, temperature_2_k: float
) -> float:
    """Activation energy in J/mol from two printed times: R · ln(t1/t2) / (1/T1 − 1/T2).

    Negative when the warmer time is the longer one: then the two times do not fit this law. Raises
    ValueError for equal temperatures. Source: own-computation (Arrhenius solved for E), own.
    """
    positive(time_1_s=time_1_s, time_2_s=time_2_s)
    positive(temperature_1_k=temperature_1_k, temperature_2_k=temperature_2_k)
    if temperature_1_k == temperature_2_k:
        raise ValueError("the two temperatures must differ")
    inverse_k = 1.0 / temperature_1_k - 1.0 / temperature_2_k
    return GAS_CONSTANT_J_MOL_K * math.log(time_1_s / time_2_s) / inverse_k


def _above_floor(duration_s: float, start_k: float, end_k: float, floor_k: float | None) -> tuple[float, float, float]:
    """Cut a piece of linear temperature down to its part at or above the floor."""
    if floor_k is None or min(start_k, end_k) >= floor_k:
        return duration_s, start_k, end_k
    if max(start_k, end_k) < floor_k:
        return 0.0, start_k, end_k
    kept_s = duration_s * (max(start_k, end_k) - floor_k) / abs(end_k - start_k)
    return kept_s, max(start_k, floor_k), max(end_k, floor_k)


def _piece_age_s(
    duration_s: float,
    start_k: float,
    end_k: float,
    reference_k: float,
    activation_energy_j_mol: float,
    floor_k: float | None,
) -> float:
    """Equivalent age of one piece of linear temperature: 3-point Gauss on panels of at most 5 K."""
    duration_s, start_k, end_k = _above_floor(duration_s, start_k, end_k, floor_k)
    if duration_s <= 0.0:
        return 0.0
    panels = max(1, math.ceil(abs(end_k - start_k) / _PANEL_K))
    slope_k = (end_k - start_k) / panels
    total = 0.0
    for panel in range(panels):
        for node, weight in _GAUSS:
            temperature_k = start_k + slope_k * (panel + node)
            total += weight * rate_factor_arrhenius(temperature_k, reference_k, activation_energy_j_mol)
    return total * duration_s / panels


def equivalent_age_s(
    times_s: Sequence[float],
    temperatures_k: Sequence[float],
    reference_k: float,
    activation_energy_j_mol: float,
    *,
    floor_k: float | None = None,
) -> float:
    """Time at the reference temperature that gives the same cure: ∫ exp[E/R·(1/T_ref − 1/T)] dt, in s.

    `times_s` (not decreasing) and `temperatures_k` are the corners of a piecewise linear history, equally
    long. Below `floor_k` nothing is added; at it, cure counts. Relative error under 1e-6. Raises ValueError
    for times that go back. Source: astm-c1074 (equivalent age), scope verified; quadrature: own.
    """
    count = same_length(times_s=times_s, temperatures_k=temperatures_k)
    positive(**{f"temperatures_k[{i}]": t for i, t in enumerate(temperatures_k)})
    total = 0.0
    for i in range(count - 1):
        duration_s = times_s[i + 1] - times_s[i]
        not_negative(duration_s=duration_s)
        total += _piece_age_s(
            duration_s,
            temperatures_k[i],
            temperatures_k[i + 1],
            reference_k,
            activation_energy_j_mol,
            floor_k,
        )
    return total


def time_to_age_s(
    temperature_at: Callable[[float], float],
    age_s: float,
    reference_k: float,
    activation_energy_j_mol: float,
    *,
    floor_k: float | None,
    step_s: float = 600.0,
    limit_s: float,
) -> float | None:
    """Time in s after which the equivalent age reaches `age_s`; None when not within `limit_s`.

    `temperature_at(t)` gives K at t s after the start; it is read every `step_s` and taken as linear between.
    Below `floor_k` nothing is added. Raises ValueError for a negative age or a step not above 0.
    Source: astm-c1074 (equivalent age), scope verified; the march: own-computation, own.
    """
    not_negative(age_s=age_s, limit_s=limit_s)
    positive(step_s=step_s)
    if age_s == 0.0:
        return 0.0
    begin_s, begin_k, done_s = 0.0, temperature_at(0.0), 0.0
    while begin_s < limit_s:
        duration_s = min(step_s, limit_s - begin_s)
        end_k = temperature_at(begin_s + duration_s)

        def age_after(part: float, span: float = duration_s, a_k: float = begin_k, b_k: float = end_k) -> float:
            at_k = a_k + part * (b_k - a_k)
            return _piece_age_s(part * span, a_k, at_k, reference_k, activation_energy_j_mol, floor_k)

        gained_s = age_after(1.0)
        if done_s + gained_s >= age_s:
            return begin_s + duration_s * _first_part(age_after, age_s - done_s)
        begin_s, begin_k, done_s = begin_s + duration_s, end_k, done_s + gained_s
    return None


def _first_part(age_after: Callable[[float], float], needed_s: float) -> float:
    """Smallest share of a piece after which the needed age is there, by halving, rounded up."""
    low, high = 0.0, 1.0
    for _ in range(50):
        middle = 0.5 * (low + high)
        if age_after(middle) >= needed_s:
            high = middle
        else:
            low = middle
    return high
