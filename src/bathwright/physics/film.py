"""Wet and dry film, solids after thinning, spreading rate, volume of coating.

The formulas follow from the definition of volume solids: what stays of a wet film is its solid share.
"""

from typing import Final

from .checks import not_negative, positive, positive_share, share
from .validity import Validity

_SOLIDS: Final = Validity("solids_by_volume", 0.0, 1.0, "1", "own-computation", "own")

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {
    "dry_film_m": (_SOLIDS,),
    "wet_film_m": (_SOLIDS,),
    "solids_after_thinning": (_SOLIDS,),
    "spreading_rate_m2_m3": (_SOLIDS,),
    "coating_volume_m3": (_SOLIDS, Validity("loss", 0.0, 0.95, "1", "own-computation", "judgement")),
}


def solids_after_thinning(solids_by_volume: float, thinner_by_volume: float) -> float:
    """Volume solids after thinning: VS / (1 + t).

    `thinner_by_volume` is the volume of thinner per volume of paint as mixed (both parts). Share, 0..1.
    Volumes are taken to add. Raises ValueError for a share outside 0..1 or a negative thinner volume.
    Source: ufc-3-190-06 (a new VS must be computed first), verified; the formula: own-computation, own.
    """
    share(solids_by_volume=solids_by_volume)
    not_negative(thinner_by_volume=thinner_by_volume)
    return solids_by_volume / (1.0 + thinner_by_volume)


def dry_film_m(wet_film_m: float, solids_by_volume: float, thinner_by_volume: float = 0.0) -> float:
    """Dry film from wet film: DFT = WFT · VS, in m, with VS after thinning.

    Raises ValueError for a negative film. Source: ufc-3-190-06, s. 2.1.5, verified.
    """
    not_negative(wet_film_m=wet_film_m)
    return wet_film_m * solids_after_thinning(solids_by_volume, thinner_by_volume)


def wet_film_m(dry_film_m: float, solids_by_volume: float, thinner_by_volume: float = 0.0) -> float:
    """Wet film that leaves the dry film: WFT = DFT · (1 + t) / VS, in m.

    Raises ValueError for a negative film or for solids of 0. Source: ufc-3-190-06, s. 2.1.5, verified.
    """
    not_negative(dry_film_m=dry_film_m)
    positive_share(solids_by_volume=solids_by_volume)
    return dry_film_m / solids_after_thinning(solids_by_volume, thinner_by_volume)


def spreading_rate_m2_m3(solids_by_volume: float, dry_film_m: float) -> float:
    """Theoretical spreading rate: VS / DFT, in m² per m³ of paint (1000 m²/m³ = 1 m²/L).

    No loss is taken off. `solids_by_volume` is the share after thinning. Raises ValueError for a film of 0.
    Source: ufc-3-190-06, s. 2.1.5; spreading-rate-note and paintpro-5-4 (1604 ft² per gallon, mil), verified.
    """
    share(solids_by_volume=solids_by_volume)
    positive(dry_film_m=dry_film_m)
    return solids_by_volume / dry_film_m


def coating_volume_m3(area_m2: float, dry_film_m: float, solids_by_volume: float, loss: float) -> float:
    """Paint to buy for one coat: A · DFT / VS / (1 − loss), in m³.

    `loss` is the share that does not stay on the surface (1 − transfer efficiency), 0 up to below 1.
    Raises ValueError for solids of 0 or a loss of 1. Source: ufc-3-190-06, s. 2.1.5, verified; the loss
    term: own-computation, own.
    """
    not_negative(area_m2=area_m2, dry_film_m=dry_film_m)
    positive_share(solids_by_volume=solids_by_volume, kept=1.0 - loss)
    return area_m2 * dry_film_m / solids_by_volume / (1.0 - loss)
