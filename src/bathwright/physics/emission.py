"""Sources that fade: exponential release, and brushing for a while with each part then fading. No numpy."""

import math
from typing import Final

from .checks import not_negative, positive
from .dilution import phi_1
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}
"""The closed forms are exact for their assumptions. How long a real film follows them is not known here."""


def _difference(a_per_s: float, b_per_s: float, time_s: float) -> float:
    """(e^(−b·t) − e^(−a·t))/(a − b), also where a = b (then t·e^(−a·t)); symmetric, never negative."""
    slow, apart = min(a_per_s, b_per_s), abs(a_per_s - b_per_s)
    return time_s * math.exp(-slow * time_s) * phi_1(-apart * time_s)


def exponential_source_rate_kg_s(time_s: float, mass_kg: float, rate_per_s: float) -> float:
    """Emission in kg/s of a mass that leaves at a constant rate k: E = k·M0·e^(−k·t).

    Source: astm-stp-15627s (exponential emission), abstract verified.
    """
    not_negative(time_s=time_s, mass_kg=mass_kg, rate_per_s=rate_per_s)
    return rate_per_s * mass_kg * math.exp(-rate_per_s * time_s)


def exponential_source_concentration(
    time_s: float, mass_kg: float, rate_per_s: float, flow_m3_s: float, volume_m3: float
) -> float:
    """One-box level in kg/m³ over an exponential source: k·M0/(V(k − λ))·(e^(−λt) − e^(−kt)), λ = Q/V.

    At k = λ the limit (M0/V)·k·t·e^(−k·t). Never above M0/V. Source: own-computation (agrees with an ODE
    solution), own; the source term: astm-stp-15627s, abstract verified.
    """
    not_negative(time_s=time_s, mass_kg=mass_kg, rate_per_s=rate_per_s, flow_m3_s=flow_m3_s)
    positive(volume_m3=volume_m3)
    return rate_per_s * mass_kg / volume_m3 * _difference(rate_per_s, flow_m3_s / volume_m3, time_s)


def exponential_source_peak_time_s(rate_per_s: float, air_changes_per_s: float) -> float:
    """Time in s of the peak over an exponential source: ln(k/λ)/(k − λ), 1/k at k = λ.

    Source: own-computation, own.
    """
    positive(rate_per_s=rate_per_s, air_changes_per_s=air_changes_per_s)
    apart = rate_per_s - air_changes_per_s
    return math.log1p(apart / air_changes_per_s) / apart if apart != 0.0 else 1.0 / rate_per_s


def continuous_application_rate_kg_s(time_s: float, mass_kg: float, application_s: float, rate_per_s: float) -> float:
    """Emission in kg/s while a mass is brushed on evenly for `application_s`, each part fading at k.

    E = (M/ta)(1 − e^(−k·t)) up to ta, then (M/ta)(1 − e^(−k·ta))·e^(−k(t − ta)); in all exactly M.
    Source: astm-stp-15627s, abstract verified; formula: own-computation, own.
    """
    not_negative(time_s=time_s, mass_kg=mass_kg, rate_per_s=rate_per_s)
    positive(application_s=application_s)
    brushed_s = min(time_s, application_s)
    built = -math.expm1(-rate_per_s * brushed_s)
    return mass_kg / application_s * built * math.exp(-rate_per_s * (time_s - brushed_s))


def continuous_application_concentration(
    time_s: float,
    mass_kg: float,
    application_s: float,
    rate_per_s: float,
    flow_m3_s: float,
    volume_m3: float,
) -> float:
    """One-box level in kg/m³ over the source of `continuous_application_rate_kg_s`, also at k = λ.

    With D the difference (e^(−kt) − e^(−λt))/(λ − k): up to ta f(t) = M/(ta·V)·[(1 − e^(−λt))/λ − D(t)],
    then f(ta)·e^(−λτ) + M/(ta·V)·(1 − e^(−k·ta))·D(τ), τ = t − ta.
    Source: astm-stp-15627s, abstract verified; formula: own-computation (agrees with an ODE solution), own.
    """
    not_negative(time_s=time_s, mass_kg=mass_kg, rate_per_s=rate_per_s, flow_m3_s=flow_m3_s)
    positive(application_s=application_s, volume_m3=volume_m3)
    changes_per_s = flow_m3_s / volume_m3
    brushed_s, after_s = min(time_s, application_s), max(0.0, time_s - application_s)
    constant = brushed_s * phi_1(-changes_per_s * brushed_s)
    during = max(0.0, constant - _difference(rate_per_s, changes_per_s, brushed_s))
    fading = -math.expm1(-rate_per_s * brushed_s) * _difference(rate_per_s, changes_per_s, after_s)
    return mass_kg / (application_s * volume_m3) * (during * math.exp(-changes_per_s * after_s) + fading)
