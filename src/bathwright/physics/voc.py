"""Volatile organic content as regulations count it, and how much solvent a coating can give off."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from .checks import not_negative, positive, same_length, share
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {
    "volatile_mass_candidates_kg": (
        Validity("solids_by_weight", 0.0, 1.0, "1", "own-computation", "own"),
        Validity("composition_share", 0.0, 1.0, "1", "own-computation", "own"),
    ),
}


def voc_regulatory_kg_m3(
    volatile_kg: float,
    water_kg: float,
    exempt_kg: float,
    volume_m3: float,
    water_m3: float,
    exempt_m3: float,
) -> float:
    """VOC less water and exempt solvents, in kg/m³ (= g/L): (Wv − Ww − We)/(V − Vw − Ve).

    "VOC" leaves the exempt solvents (acetone is one) out: it does not tell how much vapour the film gives
    off. Raises ValueError when more is taken off than is there. Source: cfr-40-59, 59.104(a)(1), verified.
    """
    organic_kg = volatile_kg - water_kg - exempt_kg
    not_negative(volatile_kg=volatile_kg, water_kg=water_kg, exempt_kg=exempt_kg, organic_kg=organic_kg)
    not_negative(water_m3=water_m3, exempt_m3=exempt_m3)
    positive(volume_m3=volume_m3, rest_m3=volume_m3 - water_m3 - exempt_m3)
    return organic_kg / (volume_m3 - water_m3 - exempt_m3)


def voc_actual_kg_m3(volatile_kg: float, water_kg: float, exempt_kg: float, volume_m3: float) -> float:
    """VOC per volume of material as it is, in kg/m³: (Wv − Ww − We)/V. Exempt solvents are left out here too.

    Source: cfr-40-59, 59.104 (low-solids form), verified.
    """
    return voc_regulatory_kg_m3(volatile_kg, water_kg, exempt_kg, volume_m3, 0.0, 0.0)


def voc_mixed_kg_m3(volumes_m3: Sequence[float], voc_kg_m3: Sequence[float]) -> float:
    """VOC of parts mixed by volume, in kg/m³: Σ(V·VOC)/ΣV. For parts without water and exempt solvents.

    Volumes are taken to add, and nothing to react away. Source: own-computation, own.
    """
    same_length(volumes_m3=volumes_m3, voc_kg_m3=voc_kg_m3)
    for volume, voc in zip(volumes_m3, voc_kg_m3, strict=True):
        not_negative(volumes_m3=volume, voc_kg_m3=voc)
    total = math.fsum(volumes_m3)
    positive(total_m3=total)
    return math.fsum(v * c for v, c in zip(volumes_m3, voc_kg_m3, strict=True)) / total


@dataclass(frozen=True, slots=True)
class VolatileMass:
    """Mass of solvent in a volume of coating, in kg, by each way that is known; None where not told.

    `used` is the largest that is known, None when none is. `spread` is largest/smallest − 1, None with
    fewer than two, infinite when the smallest is 0.
    """

    by_voc: float | None
    by_solids: float | None
    by_composition: float | None
    used: float | None
    spread: float | None


def _spread(known: Sequence[float]) -> float | None:
    if len(known) < 2:
        return None
    if min(known) > 0.0:
        return max(known) / min(known) - 1.0
    return 0.0 if max(known) == 0.0 else math.inf


def volatile_mass_candidates_kg(
    volume_m3: float,
    density_kg_m3: float | None,
    solids_by_weight: float | None,
    voc_kg_m3: float | None,
    composition_share: float | None,
) -> VolatileMass:
    """Mass of volatile matter in kg by three ways; the largest known one is to be used.

    V·VOC; V·ρ·(1 − solids by weight), which counts water too; V·ρ·(share of volatile substances in the
    composition). "VOC" leaves out exempt solvents, so `by_voc` alone can be far too low. None = not told.
    Raises ValueError for negative values or shares outside 0..1. Source: own-computation, own.
    """
    not_negative(volume_m3=volume_m3)
    by_voc = by_solids = by_composition = None
    if voc_kg_m3 is not None:
        not_negative(voc_kg_m3=voc_kg_m3)
        by_voc = volume_m3 * voc_kg_m3
    if density_kg_m3 is not None:
        positive(density_kg_m3=density_kg_m3)
        if solids_by_weight is not None:
            share(solids_by_weight=solids_by_weight)
            by_solids = volume_m3 * density_kg_m3 * (1.0 - solids_by_weight)
        if composition_share is not None:
            share(composition_share=composition_share)
            by_composition = volume_m3 * density_kg_m3 * composition_share
    known = [mass for mass in (by_voc, by_solids, by_composition) if mass is not None]
    return VolatileMass(by_voc, by_solids, by_composition, max(known, default=None), _spread(known))
