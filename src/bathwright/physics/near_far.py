"""Two zones, near field and far field: the closed form for a constant source. No numpy."""

import math
from typing import Final

from .checks import not_negative, positive
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}
"""The closed form is exact for its two zones. How well a bathroom is two zones is not known here: with a
person in the bath the near field is 10 to 25 % of the room."""


def near_far_steady(generation_kg_s: float, interzonal_m3_s: float, flow_m3_s: float) -> tuple[float, float]:
    """Steady levels (near, far) in kg/m³: C_F = G/Q, C_N = G/Q + G/β. Source: b2z-1-4, verified."""
    not_negative(generation_kg_s=generation_kg_s)
    positive(interzonal_m3_s=interzonal_m3_s, flow_m3_s=flow_m3_s)
    far = generation_kg_s / flow_m3_s
    return far + generation_kg_s / interzonal_m3_s, far


def near_far_field(
    time_s: float,
    generation_kg_s: float,
    interzonal_m3_s: float,
    flow_m3_s: float,
    near_volume_m3: float,
    far_volume_m3: float,
) -> tuple[float, float]:
    """Levels (near, far) in kg/m³ after `time_s` of a constant source in the near field, from clean air.

    V_N C_N' = G + β(C_F − C_N), V_F C_F' = β(C_N − C_F) − Q·C_F, by its two eigenvalues; written with
    e^(λt) − 1 so that nothing cancels near t = 0. Raises ValueError for flows or volumes not above 0.
    Source: b2z-1-4 (after Zhang 2009 and Nicas 1996), verified.
    """
    not_negative(time_s=time_s, generation_kg_s=generation_kg_s)
    positive(interzonal_m3_s=interzonal_m3_s, flow_m3_s=flow_m3_s)
    positive(near_volume_m3=near_volume_m3, far_volume_m3=far_volume_m3)
    beta, q, v_near, v_far = interzonal_m3_s, flow_m3_s, near_volume_m3, far_volume_m3
    product = beta * q / (v_near * v_far)
    total = (beta * v_far + (beta + q) * v_near) / (v_near * v_far)
    fast = -0.5 * (total + math.sqrt(total**2 - 4.0 * product))
    slow = product / fast
    scale = beta * q * v_near * (slow - fast)
    a_slow = generation_kg_s * (beta * q + fast * v_near * (beta + q)) / scale
    a_fast = generation_kg_s * (beta * q + slow * v_near * (beta + q)) / scale
    grown_slow, grown_fast = a_slow * math.expm1(slow * time_s), a_fast * math.expm1(fast * time_s)
    near = grown_slow - grown_fast
    far = (grown_slow * (slow * v_near + beta) - grown_fast * (fast * v_near + beta)) / beta
    return max(0.0, near), max(0.0, far)


def near_field_hemisphere(radius_m: float, air_speed_m_s: float) -> tuple[float, float]:
    """Half sphere round the work: (volume in m³, exchange β in m³/s): ⅔πr³ and ½·2πr²·s.

    `air_speed_m_s` is the random air speed s through its free surface. Source: nicas-1996, memory.
    """
    positive(radius_m=radius_m)
    not_negative(air_speed_m_s=air_speed_m_s)
    return 2.0 / 3.0 * math.pi * radius_m**3, math.pi * radius_m**2 * air_speed_m_s
