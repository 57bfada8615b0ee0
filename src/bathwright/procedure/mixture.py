"""A coating as it is applied: its parts mixed by the sheet's ratio. Volumes, solids, what evaporates."""

from bathwright.domain import views
from bathwright.domain.record import record
from bathwright.domain.sheet import Component, Sheet, SheetPart
from bathwright.domain.values import Value
from bathwright.knowledge.book import Knowledge
from bathwright.physics import voc

UNTOLD_DENSITY_KG_M3 = 1500.0  # the heavy end of paints, where a sheet prints no density: judgement


@record
class MixedShare:
    """A substance of the mixture, share by weight of the whole: low, central, high."""

    cas: str
    name: str
    low: float
    central: float
    high: float


@record
class Mixture:
    """The mixture of all parts. None = the sheet does not say enough."""

    parts: tuple[Value, ...]
    density_kg_m3: float | None
    solids_by_volume: float | None
    solids_by_weight: float | None
    shares: tuple[MixedShare, ...]
    composition_told: bool


def mixture(sheet: Sheet) -> Mixture:
    """Mix the parts by the sheet's ratio (one part: itself). Weight ratios are turned into volumes by density."""
    volumes = _volume_shares(sheet)
    parts = [part for part in sheet.parts if part.id in volumes]
    density = _mean([(volumes[p.id], p.density) for p in parts])
    weights = _weights(parts, volumes, density)
    return Mixture(
        parts=tuple(Value(name=part.id, value=volumes[part.id], kind="share") for part in parts),
        density_kg_m3=density,
        solids_by_volume=_mean([(volumes[p.id], p.solids_by_volume) for p in parts]),
        solids_by_weight=_mean([(weights[p.id], p.solids_by_weight) for p in parts]),
        shares=_shares(parts, weights),
        composition_told=bool(parts) and all(part.composition is not None for part in parts),
    )


def _volume_shares(sheet: Sheet) -> dict[str, float]:
    parts = sheet.parts
    if not parts:
        return {}
    ratio = views.ratio(sheet)
    if ratio is None or len(ratio.numbers) != len(parts):
        return {part.id: 1 / len(parts) for part in parts}
    raw = list(ratio.numbers)
    if ratio.by == "weight":
        raw = [number / (part.density or 1000.0) for number, part in zip(raw, parts, strict=True)]
    total = sum(raw)
    return {part.id: number / total for part, number in zip(parts, raw, strict=True)}


def _weights(parts: list[SheetPart], volumes: dict[str, float], density: float | None) -> dict[str, float]:
    if density is None:
        return volumes
    return {part.id: volumes[part.id] * (part.density or density) / density for part in parts}


def _mean(terms: list[tuple[float, float | None]]) -> float | None:
    if not terms or any(value is None for _, value in terms):
        return None
    return sum(weight * value for weight, value in terms if value is not None)


def _shares(parts: list[SheetPart], weights: dict[str, float]) -> tuple[MixedShare, ...]:
    """Shares by weight of the whole mixture; the central value of a range is its middle, the sum at most 1."""
    found: dict[str, MixedShare] = {}
    for part in parts:
        weight = weights[part.id]
        for entry in part.composition or ():
            known = found.get(entry.cas)
            low, middle, high = _range(entry, weight)
            found[entry.cas] = MixedShare(
                cas=entry.cas,
                name=entry.substance,
                low=low + (known.low if known else 0.0),
                central=middle + (known.central if known else 0.0),
                high=high + (known.high if known else 0.0),
            )
    return tuple(found.values())


def _range(entry: Component, weight: float) -> tuple[float, float, float]:
    return entry.low * weight, (entry.low + entry.high) / 2 * weight, entry.high * weight


@record
class Volatiles:
    """What evaporates from one m3 of the mixture, in kg, by three ways, and the one that is used (the largest)."""

    by_voc_kg: float | None
    by_solids_kg: float | None
    by_composition_kg: float | None
    used_kg: float
    water_kg: float
    organic: tuple[MixedShare, ...]
    unknown: tuple[str, ...]


def volatiles(sheet: Sheet, mixed: Mixture, knowledge: Knowledge) -> Volatiles:
    """Volatile mass of one m3 of mixture: the largest of VOC, density times (1 - solids by weight) less water, and
    the central composition.

    "VOC" leaves out exempt solvents, so it may be too low alone. `unknown` are CAS numbers that the knowledge does
    not know: they never count as harmless. `organic` are scaled up so that they sum to `used_kg`.
    """
    density = mixed.density_kg_m3 or UNTOLD_DENSITY_KG_M3
    organic, water, unknown = [], 0.0, []
    for share in mixed.shares:
        substance = knowledge.substances.get(share.cas)
        if substance is None:
            unknown.append(share.cas)
        elif "water" in substance.tags:
            water += share.central
        elif substance.volatile:
            organic.append(share)
    voc_told = views.strictest(sheet, "voc")
    stays = None if mixed.solids_by_weight is None else min(1.0, mixed.solids_by_weight + water)
    listed = min(1.0, sum(share.central for share in organic)) if mixed.composition_told else None
    mass = voc.volatile_mass_candidates_kg(1.0, density, stays, voc_told.value if voc_told else None, listed)
    used = mass.used or 0.0
    return Volatiles(
        by_voc_kg=mass.by_voc,
        by_solids_kg=mass.by_solids,
        by_composition_kg=mass.by_composition,
        used_kg=used,
        water_kg=water * density,
        organic=_scaled(organic, used / density),
        unknown=tuple(unknown),
    )


def _scaled(organic: list[MixedShare], total: float) -> tuple[MixedShare, ...]:
    """The shares, scaled up together so that their central values sum to `total` (never down)."""
    central = sum(share.central for share in organic)
    factor = max(1.0, total / central) if central else 1.0
    return tuple(
        MixedShare(
            cas=share.cas,
            name=share.name,
            low=share.low,
            central=share.central * factor,
            high=max(share.high, share.central * factor),
        )
        for share in organic
    )
