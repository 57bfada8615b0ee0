"""How fast a liquid leaves an open surface: two independent correlations and a slow bound for films."""

import math
from typing import Final

from .checks import not_negative, positive
from .constants import GAS_CONSTANT_J_MOL_K, HOUR_S, ROOM_TEMPERATURE_K, STANDARD_PRESSURE_PA, TORR_PA
from .validity import Validity

_FOOT_PER_MINUTE_M_S: Final = 0.3048 / 60.0

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {
    "evaporation_penetration_kg_m2_s": (
        Validity("air_speed_m_s", 0.0, 100.0 * _FOOT_PER_MINUTE_M_S, "m/s", "epa-penetration-model", "memory"),
    ),
    "mass_transfer_mackay_m_s": (Validity("temperature_k", 283.15, 303.15, "K", "own-judgement", "judgement"),),
}
"""Mackay and van Wesenbeeck print 25 °C; 10 to 30 °C is judgement. The range of Chinn is not known here."""

_MACKAY_KG_M2_S: Final = 1464e-9 * 1e3 / HOUR_S
"""1464 µg/(m² h) per Pa and g/mol, in kg/(m² s) per Pa and kg/mol."""


def mass_transfer_mackay_m_s(temperature_k: float = ROOM_TEMPERATURE_K) -> float:
    """Mass-transfer coefficient in m/s that the rate of Mackay and van Wesenbeeck stands for: 3.63 m/h at 25 °C.

    1464 µg/(m² h Pa (g/mol)) · R · T. Still indoor air, about 0.1 m/s. Raises ValueError for a temperature not above
    0 K. Source: mackay-van-wesenbeeck-2014 (ER = 1464·P·M), verified.
    """
    positive(temperature_k=temperature_k)
    return _MACKAY_KG_M2_S * GAS_CONSTANT_J_MOL_K * temperature_k


def evaporation_mackay_kg_m2_s(vapour_pressure_pa: float, molar_mass_kg_mol: float) -> float:
    """Evaporation into clean air in kg/(m² s): ER (µg/m² h) = 1464 · P (Pa) · M (g/mol).

    `vapour_pressure_pa` is that of the surface (partial pressure in a mixture). The film may cool and slow
    down; this does not. Source: mackay-van-wesenbeeck-2014, verified.
    """
    not_negative(vapour_pressure_pa=vapour_pressure_pa)
    positive(molar_mass_kg_mol=molar_mass_kg_mol)
    return _MACKAY_KG_M2_S * vapour_pressure_pa * molar_mass_kg_mol


def evaporation_penetration_kg_m2_s(
    molar_mass_kg_mol: float,
    vapour_pressure_pa: float,
    temperature_k: float,
    air_speed_m_s: float,
    length_m: float,
    pressure_pa: float = STANDARD_PRESSURE_PA,
) -> float:
    """Evaporation in kg/(m² s) by the EPA penetration model, for air slower than 100 ft/min (0.508 m/s).

    G/A (g/s cm²) = 8.24e-8 · M^0.835 · VP · (1/29 + 1/M)^0.25 · v^0.5 / (T^0.05 · d^0.5 · P^0.5), M in g/mol,
    VP in torr, v in ft/min, d in cm along the air flow, P in atm. `length_m` is d; for a round pool its
    diameter. In air that stands still the answer is 0: never take it as a lower bound.
    Source: epa-penetration-model, memory.
    """
    not_negative(vapour_pressure_pa=vapour_pressure_pa, air_speed_m_s=air_speed_m_s)
    positive(molar_mass_kg_mol=molar_mass_kg_mol, temperature_k=temperature_k)
    positive(length_m=length_m, pressure_pa=pressure_pa)
    molar_mass = molar_mass_kg_mol * 1e3
    numerator = (
        8.24e-8
        * molar_mass**0.835
        * (vapour_pressure_pa / TORR_PA)
        * (1.0 / 29.0 + 1.0 / molar_mass) ** 0.25
        * math.sqrt(air_speed_m_s / _FOOT_PER_MINUTE_M_S)
    )
    atmospheres = pressure_pa / STANDARD_PRESSURE_PA
    g_cm2_s = numerator / (temperature_k**0.05 * math.sqrt(length_m * 100.0 * atmospheres))
    return float(g_cm2_s * 1e-3 / 1e-4)


def slow_release_t90_chinn_s(vapour_pressure_pa: float) -> float:
    """Time in s in which 90 % of a solvent leaves a film, after Chinn: t90 (h) = 145 / VP^0.9546, VP in torr.

    Used as the slow bound of release. Source: chinn-1981, memory.
    """
    positive(vapour_pressure_pa=vapour_pressure_pa)
    return HOUR_S * 145.0 / float((vapour_pressure_pa / TORR_PA) ** 0.9546)


def first_order_rate_from_t90_per_s(t90_s: float) -> float:
    """Rate k in 1/s of an exponential source that has lost 90 % after `t90_s`: ln 10 / t90.

    Source: own-computation, own.
    """
    positive(t90_s=t90_s)
    return math.log(10.0) / t90_s
