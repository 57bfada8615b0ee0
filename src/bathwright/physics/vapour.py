"""Vapour in air: ppm and mass, vapour pressures, mixtures, lower explosive limits, shares of limits."""

import math
from collections.abc import Sequence
from typing import Final

from .checks import finite, not_negative, positive, positive_share, same_length
from .constants import GAS_CONSTANT_J_MOL_K, ROOM_TEMPERATURE_K, STANDARD_PRESSURE_PA, TORR_PA, ZERO_CELSIUS_K
from .validity import Validity

_LFL: Final = Validity("lower_limit_fraction", 0.0, 1.0, "1", "own-computation", "own")

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {"dilution_air_m3": (_LFL,)}
"""Ideal gas is taken throughout: good for vapour in room air. The ranges of Antoine and Clausius-Clapeyron
constants belong to the substance, so none stands here."""


def molar_volume_m3_mol(temperature_k: float, pressure_pa: float = STANDARD_PRESSURE_PA) -> float:
    """Volume of a mole of ideal gas in m³/mol: R·T/p (0.024465 at 25 °C and 1 atm).

    Source: own-computation, own.
    """
    positive(temperature_k=temperature_k, pressure_pa=pressure_pa)
    return GAS_CONSTANT_J_MOL_K * temperature_k / pressure_pa


def ppm_from_kg_m3(
    kg_m3: float,
    molar_mass_kg_mol: float,
    temperature_k: float = ROOM_TEMPERATURE_K,
    pressure_pa: float = STANDARD_PRESSURE_PA,
) -> float:
    """Parts per million by volume from mass per volume: 10⁶ · c · (R·T/p) / M.

    Exposure limits use 25 °C and 1 atm, whatever the air is. Source: own-computation, own; the published
    pairs of limits (150 ppm = 710 mg/m³ for n-butyl acetate) agree within their rounding.
    """
    not_negative(kg_m3=kg_m3)
    positive(molar_mass_kg_mol=molar_mass_kg_mol)
    return 1e6 * kg_m3 * molar_volume_m3_mol(temperature_k, pressure_pa) / molar_mass_kg_mol


def kg_m3_from_ppm(
    ppm: float,
    molar_mass_kg_mol: float,
    temperature_k: float = ROOM_TEMPERATURE_K,
    pressure_pa: float = STANDARD_PRESSURE_PA,
) -> float:
    """Mass per volume in kg/m³ from parts per million: the inverse of `ppm_from_kg_m3`.

    Source: own-computation, own.
    """
    not_negative(ppm=ppm)
    positive(molar_mass_kg_mol=molar_mass_kg_mol)
    return 1e-6 * ppm * molar_mass_kg_mol / molar_volume_m3_mol(temperature_k, pressure_pa)


def vapour_pressure_clausius_pa(p_ref_pa: float, t_ref_k: float, enthalpy_j_mol: float, temperature_k: float) -> float:
    """Vapour pressure in Pa after Clausius and Clapeyron: p_ref · exp[ΔH/R · (1/T_ref − 1/T)].

    ΔH (vaporisation) is taken as constant: use it near the reference temperature only; how near depends on
    the substance and is not stated. Source: crowl-louvar (textbook relation), memory.
    """
    positive(p_ref_pa=p_ref_pa, t_ref_k=t_ref_k, temperature_k=temperature_k)
    not_negative(enthalpy_j_mol=enthalpy_j_mol)
    return p_ref_pa * math.exp(enthalpy_j_mol / GAS_CONSTANT_J_MOL_K * (1.0 / t_ref_k - 1.0 / temperature_k))


def vapour_pressure_antoine_pa(a: float, b: float, c: float, temperature_k: float) -> float:
    """Vapour pressure in Pa after Antoine: log10 p = a − b/(c + t), with p in mmHg and t in °C.

    The constants must be those of this form (log10, mmHg, °C); their range belongs to them. Raises
    ValueError at and below the pole t = −c. Source: crowl-louvar (textbook relation), memory.
    """
    finite(a=a, b=b)
    denominator = c + (temperature_k - ZERO_CELSIUS_K)
    positive(temperature_k=temperature_k, c_plus_celsius=denominator)
    return TORR_PA * float(10.0 ** (a - b / denominator))


def saturation_kg_m3(p_pa: float, molar_mass_kg_mol: float, temperature_k: float) -> float:
    """The most vapour that air can hold, in kg/m³: p·M/(R·T). No course of air may pass it.

    Source: own-computation, own.
    """
    not_negative(p_pa=p_pa)
    positive(molar_mass_kg_mol=molar_mass_kg_mol, temperature_k=temperature_k)
    return p_pa * molar_mass_kg_mol / (GAS_CONSTANT_J_MOL_K * temperature_k)


def raoult_partial_pressures(
    moles: Sequence[float], pressures_pa: Sequence[float], activity_coefficients: Sequence[float]
) -> tuple[float, ...]:
    """Partial pressure of each part of a liquid in Pa: x_i · γ_i · p_i, x_i the share of the moles.

    Three columns, equally long. γ = 1 is ideal; in water-borne products ideal Raoult can be 5 times too low,
    so an unknown γ must not be taken as 1 there. Raises ValueError for no moles at all.
    Source: epa-aerospace-ctg (composite partial pressure), verified.
    """
    same_length(moles=moles, pressures_pa=pressures_pa, activity_coefficients=activity_coefficients)
    for n, p, gamma in zip(moles, pressures_pa, activity_coefficients, strict=True):
        not_negative(moles=n, pressures_pa=p, activity_coefficients=gamma)
    total = math.fsum(moles)
    positive(total_moles=total)
    rows = zip(moles, pressures_pa, activity_coefficients, strict=True)
    return tuple(n / total * gamma * p for n, p, gamma in rows)


def lower_limit_le_chatelier(fractions: Sequence[float], lower_limits: Sequence[float]) -> float:
    """Lower flammable limit of a mixture of vapours: Σy / Σ(y_i/LFL_i), a share of the air.

    `fractions` are shares of the fuel (any scale: they are divided by their sum), `lower_limits` shares of
    the air. For vapours that burn alike; not for an inert or halogenated part.
    Source: crowl-louvar, memory; a documented example in a public package, verified.
    """
    same_length(fractions=fractions, lower_limits=lower_limits)
    for fraction, limit in zip(fractions, lower_limits, strict=True):
        not_negative(fractions=fraction)
        positive_share(lower_limits=limit)
    total = math.fsum(fractions)
    positive(sum_of_fractions=total)
    return total / math.fsum(y / limit for y, limit in zip(fractions, lower_limits, strict=True))


def share_of_lower_limit(ppm: Sequence[float], lower_limits_fraction: Sequence[float]) -> float:
    """How near the air is to its lower flammable limit: Σ (C_i · 10⁻⁶ / LFL_i). 1 = it can burn.

    Le Chatelier on the air basis; `ppm` by volume, the limits as shares of the air.
    Source: crowl-louvar, memory.
    """
    for limit in lower_limits_fraction:
        positive_share(lower_limits_fraction=limit)
    return 1e-6 * additive_share(ppm, lower_limits_fraction)


def dilution_air_m3(vapour_m3: float, lower_limit_fraction: float, share: float = 0.25) -> float:
    """Air in m³ that keeps a volume of vapour at a share of its lower limit: V · (1 − LFL) / (share · LFL).

    The default share of 0.25 is the regulation's factor 4. Source: cfr-1910-94-c, (c)(6)(ii), memory.
    """
    not_negative(vapour_m3=vapour_m3)
    positive_share(lower_limit_fraction=lower_limit_fraction, share=share)
    return vapour_m3 * (1.0 - lower_limit_fraction) / (share * lower_limit_fraction)


def additive_share(concentrations: Sequence[float], limits: Sequence[float]) -> float:
    """Mixture exposure E_m = Σ C_i/L_i, a pure number; above 1 the mixture is over its limit.

    Both columns in the same unit, equally long. For effects that add.
    Source: cfr-1910-1000-d, (d)(2), verified.
    """
    same_length(concentrations=concentrations, limits=limits)
    for concentration, limit in zip(concentrations, limits, strict=True):
        not_negative(concentrations=concentration)
        positive(limits=limit)
    return math.fsum(c / limit for c, limit in zip(concentrations, limits, strict=True))


def time_weighted_average(values: Sequence[float], durations_s: Sequence[float], over_s: float) -> float:
    """Time-weighted average Σ(C·t)/T in the unit of the values; hours that are not listed count as 0.

    `over_s` is the window T (28 800 for a working day); the durations may not be longer in sum.
    Source: cfr-1910-1000-d, (d)(1), verified.
    """
    same_length(values=values, durations_s=durations_s)
    positive(over_s=over_s)
    for value, duration_s in zip(values, durations_s, strict=True):
        not_negative(values=value, durations_s=duration_s)
    if math.fsum(durations_s) > over_s * (1.0 + 1e-12):
        raise ValueError("the durations are longer than the window")
    return math.fsum(v * d for v, d in zip(values, durations_s, strict=True)) / over_s
