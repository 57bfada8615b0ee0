"""How much of each product: film, loss, packs; and the batches that fit inside their pot life."""

import dataclasses
import math

from bathwright.domain import views
from bathwright.domain.codes import MethodCode
from bathwright.domain.plan import Material, Section
from bathwright.domain.record import record
from bathwright.domain.sheet import Range, Sheet
from bathwright.domain.values import Band
from bathwright.knowledge.book import Knowledge
from bathwright.physics import film
from bathwright.procedure.mixture import Mixture

_SECTIONS: dict[str, Section] = {
    "filler": "repair",
    "sealant": "sealing",
    "cleaner": "cleaning",
    "solvent": "coating",
}


@record
class Film:
    """The film of one coat, dry and wet, and how many coats."""

    coats: int
    dry_low_m: float
    dry_central_m: float
    dry_high_m: float
    wet_central_m: float
    solids_by_volume: float
    told: bool


def coat_film(sheet: Sheet, mixed: Mixture, knowledge: Knowledge) -> Film:
    """Film per coat from the sheet: its dry range, else its wet range times the solids; else the default of coating.

    The largest number of coats that the sheet asks for counts.
    """
    coats = views.strictest(sheet, "coats")
    solids = mixed.solids_by_volume
    solids_told = solids is not None
    solids = solids if solids is not None else knowledge.number("coating_defaults.film.solids_by_volume").value
    dry = _range(sheet, "dry_film_per_coat")
    if dry is None:
        wet = _range(sheet, "wet_film_per_coat")
        dry = (wet[0] * solids, wet[1] * solids) if wet else None
    told = dry is not None and solids_told
    if dry is None:
        default = knowledge.band("coating_defaults.film.dry_per_coat")
        dry = (default.low, default.high)
    central = (dry[0] + dry[1]) / 2
    return Film(
        coats=max(1, math.ceil(coats.value)) if coats else 1,
        dry_low_m=dry[0],
        dry_central_m=central,
        dry_high_m=dry[1],
        wet_central_m=film.wet_film_m(central, solids),
        solids_by_volume=solids,
        told=told,
    )


def _range(sheet: Sheet, kind: str) -> tuple[float, float] | None:
    values = [f.value for f in views.facts_of(sheet, kind) if isinstance(f.value, Range)]
    if not values:
        return None
    value = values[0]
    low = value.low if value.low is not None else value.high
    high = value.high if value.high is not None else value.low
    return (low, high) if low is not None and high is not None else None


def coat_volume(area_m2: float, coat: Film, method: MethodCode, knowledge: Knowledge) -> Band:
    """Volume of mixed coating for one coat in m3: area, dry film, solids, loss by method; low to high of each."""
    loss = knowledge.band(f"coating_defaults.loss.{method}")
    solids = coat.solids_by_volume
    return Band(
        low=film.coating_volume_m3(area_m2, coat.dry_low_m, solids, loss.low),
        central=film.coating_volume_m3(area_m2, coat.dry_central_m, solids, loss.central),
        high=film.coating_volume_m3(area_m2, coat.dry_high_m, solids, loss.high),
        kind="liquid",
        source=loss.source,
        mark=loss.mark,
    )


def coating_material(sheet: Sheet, coat: Film, one_coat: Band, area_m2: float) -> Material:
    """Volume and packs of the coating for all coats. Packs cover the central need, and the reach (once over, one
    pack) that the sheet states when that is stricter."""
    needed = Band(
        low=one_coat.low * coat.coats,
        central=one_coat.central * coat.coats,
        high=one_coat.high * coat.coats,
        kind="liquid",
        source=one_coat.source,
        mark=one_coat.mark,
    )
    reach = views.strictest(sheet, "pack_reach")
    least = math.ceil(area_m2 * coat.coats / reach.value - 1e-9) if reach else 1
    made = _material(sheet, needed, least, "coat", "coating")
    return dataclasses.replace(made, dry_film_m=coat.dry_central_m * coat.coats, wet_film_m=coat.wet_central_m)


def other_material(sheet: Sheet, area_m2: float, reason: str, knowledge: Knowledge) -> Material:
    """Volume of a product beside the coating: its use rate times the area (or once when the sheet gives no rate)."""
    rate = views.strictest(sheet, "use_rate")
    default = knowledge.band(f"coating_defaults.use.{sheet.role}")
    if rate:
        volume = rate.value * area_m2
        needed = Band(low=volume, central=volume, high=volume, kind="liquid", source="makers-sheet", mark="verified")
    else:
        needed = Band(
            low=default.low * area_m2,
            central=default.central * area_m2,
            high=default.high * area_m2,
            kind="liquid",
            source=default.source,
            mark=default.mark,
        )
    return _material(sheet, needed, 1, reason, _SECTIONS.get(sheet.role, "cleaning"))


def _material(sheet: Sheet, needed: Band, least_packs: int, reason: str, section: Section) -> Material:
    """Packs for the central need, `least_packs` at least; None where the sheet prints no pack."""
    pack = views.strictest(sheet, "pack_volume")
    packs = max(least_packs, math.ceil(needed.central / pack.value - 1e-9)) if pack else None
    return Material(
        sheet=sheet.id,
        product=sheet.product,
        needed_m3=needed,
        pack_m3=pack.value if pack else None,
        packs=packs,
        left_over_m3=packs * pack.value - needed.central if pack and packs else None,
        dry_film_m=None,
        wet_film_m=None,
        have=False,
        reason=reason,
        section=section,
    )
