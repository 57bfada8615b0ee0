"""Humid air after ASHRAE: saturation pressure, dew point, humidity ratio, enthalpy, standard pressure.

Water vapour and air are taken as ideal gases: humidity ratios come out up to 0.5 % low (25 °C).
"""

import math
from typing import Final

from .checks import not_negative, positive, positive_share, share
from .constants import STANDARD_PRESSURE_PA, ZERO_CELSIUS_K
from .validity import Validity

MOLAR_MASS_RATIO: Final = 0.621945
"""Water to dry air, by mass. Source: ashrae-hof-2017, ch. 1, memory (equal to psychrolib's)."""

_ICE: Final = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
_WATER: Final = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)

_ASHRAE_RANGE: Final = Validity("temperature_k", 173.15, 473.15, "K", "ashrae-hof-2017", "secondary")
_RH: Final = Validity("relative_humidity", 0.0, 1.0, "1", "own-computation", "own")

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {
    "saturation_pressure_pa": (_ASHRAE_RANGE,),
    "vapour_pressure_pa": (_ASHRAE_RANGE, _RH),
    "dew_point_k": (_ASHRAE_RANGE, _RH),
    "dew_point_k_magnus_wmo": (Validity("temperature_k", 228.15, 333.15, "K", "wmo-8-annex-4b", "memory"), _RH),
    "humidity_ratio": (Validity("temperature_k", 223.15, 323.15, "K", "ashrae-hof-2017", "secondary"), _RH),
    "standard_pressure_pa": (Validity("altitude_m", -500.0, 10000.0, "m", "ashrae-hof-2017", "secondary"),),
}


def _log_pressure(temperature_k: float, constants: tuple[float, ...]) -> float:
    c1, c2, c3, c4, c5, c6, c7 = constants
    t = temperature_k
    return c1 / t + c2 + t * (c3 + t * (c4 + t * (c5 + t * c6))) + c7 * math.log(t)


def _log_pressure_slope(temperature_k: float, constants: tuple[float, ...]) -> float:
    c1, _, c3, c4, c5, c6, c7 = constants
    t = temperature_k
    return -c1 / t**2 + c3 + t * (2.0 * c4 + t * (3.0 * c5 + t * 4.0 * c6)) + c7 / t


def saturation_pressure_pa(temperature_k: float) -> float:
    """Saturation pressure of water vapour after Hyland and Wexler, in Pa: over ice below 0 °C, else over water.

    ln p = C1/T + C2 + C3·T + C4·T² + C5·T³ + C6·T⁴ + C7·ln T. Range −100..200 °C, within 0.03 % of the
    published table. Raises ValueError for a temperature that is not above 0 K.
    Source: ashrae-hof-2017, ch. 1, eq. 5 and 6 (constants memory; Table 3 verified through a test-suite).
    """
    positive(temperature_k=temperature_k)
    return math.exp(_log_pressure(temperature_k, _ICE if temperature_k < ZERO_CELSIUS_K else _WATER))


def vapour_pressure_pa(temperature_k: float, relative_humidity: float) -> float:
    """Partial pressure of water vapour in Pa: RH · p_ws(T). RH is a share 0..1. Source: ashrae-hof-2017."""
    share(relative_humidity=relative_humidity)
    return relative_humidity * saturation_pressure_pa(temperature_k)


def dew_point_k(temperature_k: float, relative_humidity: float) -> float:
    """Dew point in K: the exact inverse of `saturation_pressure_pa`, by Newton steps; frost point below 0 °C.

    `relative_humidity` is a share above 0 and at most 1; 0 has no dew point and raises ValueError. The answer
    never lies above the air temperature. Source: ashrae-hof-2017, ch. 1, verified through a test-suite.
    """
    positive_share(relative_humidity=relative_humidity)
    target = math.log(vapour_pressure_pa(temperature_k, relative_humidity))
    if target >= _log_pressure(ZERO_CELSIUS_K, _WATER):
        constants = _WATER
    elif target <= _log_pressure(ZERO_CELSIUS_K, _ICE):
        constants = _ICE
    else:  # the two curves differ by 0.06 Pa at 0 °C
        return min(ZERO_CELSIUS_K, temperature_k)
    dew_k = temperature_k
    for _ in range(60):
        step = (_log_pressure(dew_k, constants) - target) / _log_pressure_slope(dew_k, constants)
        dew_k = max(dew_k - step, 0.5 * dew_k)
        if abs(step) < 1e-10:
            break
    return min(dew_k, temperature_k)


def dew_point_k_magnus_wmo(temperature_k: float, relative_humidity: float) -> float:
    """Dew point in K by the Magnus form over water: Td = b·g/(a − g), g = ln RH + a·t/(b + t), t in °C.

    a = 17.62, b = 243.12 °C. A sibling to check `dew_point_k`: within 0.04 K of it while both air and dew
    point lie above 0 °C; below 0 °C this one stays over water and lies lower. RH is a share above 0, up to 1.
    Source: wmo-8-annex-4b, secondary.
    """
    positive(temperature_k=temperature_k)
    positive_share(relative_humidity=relative_humidity)
    a, b = 17.62, 243.12
    celsius = temperature_k - ZERO_CELSIUS_K
    g = math.log(relative_humidity) + a * celsius / (b + celsius)
    return ZERO_CELSIUS_K + b * g / (a - g)


def dew_point_spread_k(air_temperature_k: float, relative_humidity: float, surface_temperature_k: float) -> float:
    """How far a surface lies above the dew point of the air, in K; negative: dew falls on it.

    Which spread is enough (3 K, or 5 °F) is a rule, not physics. Source: iso-8502-4-2017, scope verified.
    """
    positive(surface_temperature_k=surface_temperature_k)
    return surface_temperature_k - dew_point_k(air_temperature_k, relative_humidity)


def _ratio_from_vapour_pressure(vapour_pa: float, pressure_pa: float) -> float:
    positive(pressure_pa=pressure_pa, dry_air_pressure_pa=pressure_pa - vapour_pa)
    return MOLAR_MASS_RATIO * vapour_pa / (pressure_pa - vapour_pa)


def humidity_ratio(temperature_k: float, relative_humidity: float, pressure_pa: float) -> float:
    """Humidity ratio in kg of water per kg of dry air: 0.621945 · p_w / (p − p_w).

    Ideal gas: up to 0.5 % low at 25 °C. Raises ValueError where the vapour pressure reaches the air pressure.
    Source: ashrae-hof-2017, ch. 1, eq. 20, verified through a test-suite.
    """
    return _ratio_from_vapour_pressure(vapour_pressure_pa(temperature_k, relative_humidity), pressure_pa)


def humidity_ratio_from_wet_bulb(temperature_k: float, wet_bulb_k: float, pressure_pa: float) -> float:
    """Humidity ratio in kg/kg from dry bulb and (thermodynamic) wet bulb.

    Above 0 °C: W = [(2501 − 2.326 t*)·Ws* − 1.006 (t − t*)] / (2501 + 1.86 t − 4.186 t*), °C; over ice the
    second form. Raises ValueError when the wet bulb lies above the dry bulb or so low that W is negative.
    Source: ashrae-hof-2017, ch. 1, eq. 33 and 35, memory; Example 1 verified through a test-suite.
    """
    t, wet = temperature_k - ZERO_CELSIUS_K, wet_bulb_k - ZERO_CELSIUS_K
    not_negative(wet_bulb_depression_k=t - wet)
    saturated = humidity_ratio(wet_bulb_k, 1.0, pressure_pa)
    if wet >= 0.0:
        ratio = ((2501.0 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501.0 + 1.86 * t - 4.186 * wet)
    else:
        ratio = ((2830.0 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830.0 + 1.86 * t - 2.1 * wet)
    not_negative(humidity_ratio=ratio)
    return ratio


def relative_humidity_from_ratio(temperature_k: float, ratio: float, pressure_pa: float) -> float:
    """Relative humidity as a share: p_w = p·W/(0.621945 + W), RH = p_w/p_ws(T). Above 1: water falls out.

    Source: ashrae-hof-2017, ch. 1, eq. 36, verified through a test-suite.
    """
    not_negative(ratio=ratio)
    positive(pressure_pa=pressure_pa)
    return pressure_pa * ratio / (MOLAR_MASS_RATIO + ratio) / saturation_pressure_pa(temperature_k)


def enthalpy_j_kg(temperature_k: float, ratio: float) -> float:
    """Enthalpy of moist air in J per kg of dry air, 0 for dry air at 0 °C: 1006 t + W (2 501 000 + 1860 t).

    Source: ashrae-hof-2017, ch. 1, eq. 30, verified through a test-suite; within 0.3 % at saturation, 25 °C.
    """
    positive(temperature_k=temperature_k)
    not_negative(ratio=ratio)
    celsius = temperature_k - ZERO_CELSIUS_K
    return 1006.0 * celsius + ratio * (2_501_000.0 + 1860.0 * celsius)


def specific_volume_m3_kg(temperature_k: float, ratio: float, pressure_pa: float) -> float:
    """Volume of moist air per kg of dry air, in m³/kg: 287.042 T (1 + W/0.621945) / p.

    Source: ashrae-hof-2017, ch. 1, eq. 26, verified through a test-suite (Example 1).
    """
    positive(temperature_k=temperature_k, pressure_pa=pressure_pa)
    not_negative(ratio=ratio)
    return 287.042 * temperature_k * (1.0 + ratio / MOLAR_MASS_RATIO) / pressure_pa


def standard_pressure_pa(altitude_m: float) -> float:
    """Pressure of the standard atmosphere in Pa: 101 325 (1 − 2.25577e-5 Z)^5.2559.

    Raises ValueError above about 44 km. Source: ashrae-hof-2017, ch. 1, eq. 3 (Table 1 verified through a
    test-suite, −500..10 000 m, ± 1 Pa).
    """
    base = 1.0 - 2.25577e-5 * altitude_m
    positive(height_factor=base)
    return STANDARD_PRESSURE_PA * float(base**5.2559)
