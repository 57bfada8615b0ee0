"""One well-mixed room: build-up, time to a level, purge, dilution flow. Closed forms, no numpy.

"kg" may be any amount (kg, or m³ of vapour); concentrations are then that amount per m³.
"""

import math
from typing import Final

from .checks import not_negative, positive
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {
    "purge_time_s": (Validity("mixing_factor", 1.0, 10.0, "1", "cdc-mmwr-1994-rr13", "verified"),),
    "dilution_flow_m3_s": (Validity("mixing_factor", 1.0, 10.0, "1", "kumar-ventilation-formulae", "verified"),),
}


def phi_1(z: float) -> float:
    """(e^z − 1)/z, with its limit 1 at z = 0: the mean of e^(z·s) over s from 0 to 1."""
    return math.expm1(z) / z if z != 0.0 else 1.0


def one_box_concentration(
    time_s: float, generation_kg_s: float, flow_m3_s: float, volume_m3: float, start_kg_m3: float = 0.0
) -> float:
    """Concentration in kg/m³ after `time_s`: C0·e^(−Qt/V) + (G/Q)(1 − e^(−Qt/V)); without flow C0 + G·t/V.

    Clean air comes in, the room is well mixed. Source: kumar-ventilation-formulae, verified.
    """
    not_negative(time_s=time_s, generation_kg_s=generation_kg_s, flow_m3_s=flow_m3_s, start_kg_m3=start_kg_m3)
    positive(volume_m3=volume_m3)
    changes = flow_m3_s * time_s / volume_m3
    return start_kg_m3 * math.exp(-changes) + generation_kg_s * time_s / volume_m3 * phi_1(-changes)


def one_box_time_to(
    target_kg_m3: float,
    generation_kg_s: float,
    flow_m3_s: float,
    volume_m3: float,
    start_kg_m3: float = 0.0,
) -> float | None:
    """Time in s until the room reaches the target, rising or falling; None when it never does.

    t = −(V/Q)·ln[(G − Q·C)/(G − Q·C0)]; without flow V·(C − C0)/G. The steady level G/Q itself is never
    reached. Source: kumar-ventilation-formulae, verified.
    """
    not_negative(target_kg_m3=target_kg_m3, generation_kg_s=generation_kg_s)
    not_negative(flow_m3_s=flow_m3_s, start_kg_m3=start_kg_m3)
    positive(volume_m3=volume_m3)
    if target_kg_m3 == start_kg_m3:
        return 0.0
    if flow_m3_s == 0.0:
        rising = generation_kg_s > 0.0 and target_kg_m3 > start_kg_m3
        return volume_m3 * (target_kg_m3 - start_kg_m3) / generation_kg_s if rising else None
    left = generation_kg_s - flow_m3_s * target_kg_m3
    begun = generation_kg_s - flow_m3_s * start_kg_m3
    if begun == 0.0 or not 0.0 < left / begun < 1.0:
        return None
    return -volume_m3 / flow_m3_s * math.log(left / begun)


def purge_time_s(c1: float, c2: float, air_changes_per_s: float, mixing_factor: float = 1.0) -> float:
    """Time in s to purge from c1 to c2 after the source has stopped: K · ln(c1/c2) / N.

    Same unit for c1 and c2, both above 0; 0 when c2 is not below c1. A wet film is a source: then this does
    not hold. `mixing_factor` K (1 to 10) multiplies the time where the air mixes badly.
    Source: cdc-mmwr-1994-rr13, Table S3-1, verified.
    """
    positive(c1=c1, c2=c2, air_changes_per_s=air_changes_per_s, mixing_factor=mixing_factor)
    return mixing_factor * max(0.0, math.log(c1 / c2)) / air_changes_per_s


def dilution_flow_m3_s(generation_kg_s: float, limit_kg_m3: float, mixing_factor: float = 1.0) -> float:
    """Clean air in m³/s that holds the steady level at the limit: Q = K·G/C.

    Source: kumar-ventilation-formulae, verified; they trace to acgih-industrial-ventilation, memory.
    """
    not_negative(generation_kg_s=generation_kg_s)
    positive(limit_kg_m3=limit_kg_m3, mixing_factor=mixing_factor)
    return mixing_factor * generation_kg_s / limit_kg_m3
