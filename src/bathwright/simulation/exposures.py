"""From the courses to what people breathe, beside the limits that are meant for them. Compares nothing."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from bathwright.domain.air import Exposure, Limit, Vapour
from bathwright.domain.record import record
from bathwright.domain.values import Band
from bathwright.knowledge.book import Knowledge
from bathwright.knowledge.records import LimitEntry
from bathwright.physics import exposure, vapour
from bathwright.simulation.air import CASES, AirRun

Array = NDArray[np.float64]
_CENTRAL = CASES.index("central")
_WINDOWS = {
    "peak": 0.0,
    "ceiling": 0.0,
    "mean_15min": 900.0,
    "mean_1h": 3600.0,
    "mean_8h": 28800.0,
    "mean_24h": 86400.0,
}
_SURROGATE = 100.0  # no public value known: a hundredth of the strictest workplace day value: judgement


@record
class Presence:
    """When the painter is in the bathroom and how much of it with the head in the basin (low, central, high)."""

    starts_s: float
    ends_s: float
    head: Band
    step: str


@dataclass(frozen=True)
class Breathed:
    """A course of one reader: time edges and means (cases, steps) of one substance or of a sum of shares."""

    edges_s: Array
    values: Array


def painter_means(run: AirRun, stays: tuple[Presence, ...]) -> Array:
    """What the painter's air holds (cases, substances, steps): basin and room by share of time, else the home."""
    out = run.means[:, :, 2, :].copy()
    middle = (run.edges_s[:-1] + run.edges_s[1:]) / 2
    for stay in stays:
        inside = (middle >= stay.starts_s) & (middle < stay.ends_s)
        head = np.array([stay.head.low, stay.head.central, stay.head.high, stay.head.high])[:, None, None]
        mixed = head * run.means[:, :, 0, :] + (1 - head) * run.means[:, :, 1, :]
        out[:, :, inside] = mixed[:, :, inside]
    return out


def limits_for(
    cas: str, measures: Iterable[str], for_whom: str, law_of: str | None, knowledge: Knowledge
) -> dict[str, list[Limit]]:
    """Limits of a substance by measure: the strictest published one as advice, and the place's law when asked for."""
    substance = knowledge.substances[cas]
    out: dict[str, list[Limit]] = {}
    for measure in measures:
        known = knowledge.limits_of.get(cas, ())
        found = [e for e in known if e.measure == measure and e.for_whom == for_whom]
        if not found:
            continue
        molar = substance.molar_mass.value
        strict = min(found, key=lambda e: (_kg_m3(e, molar), e.id))
        out[measure] = [_limit(strict, molar, "advice")]
        legal = [e for e in found if e.kind == "law" and law_of in e.law_in]
        if law_of and legal:
            law = min(legal, key=lambda e: (_kg_m3(e, molar), e.id))
            out[measure].append(_limit(law, molar, "law"))
    return out


def _kg_m3(entry: LimitEntry, molar: float) -> float:
    if entry.value.kind == "concentration":
        return entry.value.value
    return vapour.kg_m3_from_ppm(entry.value.value * 1e6, molar)


def _limit(entry: LimitEntry, molar: float, kind: str) -> Limit:
    return Limit(
        id=entry.id,
        cas=entry.cas,
        body=entry.body,
        measure=entry.measure,
        value_kg_m3=_kg_m3(entry, molar),
        for_whom=entry.for_whom,  # type: ignore[arg-type]
        kind=kind,  # type: ignore[arg-type]
        law_in=entry.law_in,
        year=entry.year,
        source=entry.value.source,
        mark=entry.value.mark,
        molar_mass_kg_mol=molar,
    )


def public_limit(cas: str, knowledge: Knowledge) -> dict[str, Limit] | None:
    """The hour and day value for everybody: the listed ones, the day value for the hour where only it is listed, else
    a marked surrogate; None when no limit of any kind is known."""
    found = limits_for(cas, ("mean_1h", "mean_24h"), "public", None, knowledge)
    hour, day = found.get("mean_1h"), found.get("mean_24h")
    if hour or day:
        either = (hour or day or [])[0]
        return {"mean_1h": either, "mean_24h": (day or [either])[0]}
    worker = limits_for(cas, ("mean_8h", "mean_15min"), "worker", None, knowledge)
    entries = [limit for limits in worker.values() for limit in limits]
    if not entries:
        return None
    base = min(entries, key=lambda limit: limit.value_kg_m3)
    made = Limit(
        id=f"surrogate-{base.id}",
        cas=cas,
        body=base.body,
        measure="mean_1h",
        value_kg_m3=base.value_kg_m3 / _SURROGATE,
        for_whom="public",
        kind="advice",
        law_in=(),
        year=base.year,
        source="own-judgement",
        mark="judgement",
        surrogate=True,
        molar_mass_kg_mol=base.molar_mass_kg_mol,
    )
    return {"mean_1h": made, "mean_24h": made}


def highest(run: AirRun, values: Array, measure: str) -> tuple[Band, float]:
    """Highest value of a measure over (cases, steps): low, central, upper of the cases, and when its window ends."""
    window = _WINDOWS[measure]
    each = [exposure.highest_mean(run.edges_s, row, window) for row in values]
    found = [value for value, _ in each]
    top = int(np.argmax(found))
    band = Band(
        low=min(found),
        central=min(max(found[_CENTRAL], min(found)), max(found)),
        high=max(found),
        kind="concentration",
        source="own-computation",
        mark="own",
    )
    return band, each[top][1] + window


def make(
    who: str,
    zone: str,
    cas: str,
    measure: str,
    band: Band,
    at: datetime,
    limit: Limit | None,
    limit_value: float,
    step: str | None = None,
) -> Exposure:
    """An exposure without any mask: inside equals outside until a measure changes it. A mixture is a sum of shares."""
    if cas == "mixture":
        band = replace(band, kind="share")
    return Exposure(
        who=who,
        zone=zone,
        substance=cas,
        measure=measure,  # type: ignore[arg-type]
        outside=band,
        inside=band,
        limit=limit,
        limit_value=limit_value,
        share_central=band.central / limit_value,
        share_upper=band.high / limit_value,
        basis="upper_bound",
        at=at,
        step=step,
    )


def _sum_of_shares(values: Array, limits: dict[str, float], order: tuple[str, ...]) -> Array:
    """Additive shares over substances: (cases, substances, steps) over each limit, summed."""
    weights = np.array([1.0 / limits[cas] if cas in limits else 0.0 for cas in order])
    summed: Array = np.einsum("csn,s->cn", values, weights)
    return summed


@record
class Readers:
    """Who is looked at and by which law."""

    start: datetime
    law_of: str | None
    stays: tuple[Presence, ...]


def exposures(
    run: AirRun, vapours: tuple[Vapour, ...], readers: Readers, knowledge: Knowledge, hazardous_share: float
) -> tuple[Exposure, ...]:
    """All exposures: the painter against workplace values, the others against public ones, the explosive share."""
    organic = tuple(
        v.cas for v in vapours if v.background_kg_m3 == 0 and "water" not in knowledge.substances[v.cas].tags
    )
    found: list[Exposure] = []
    painter = painter_means(run, readers.stays)
    found += _painter(run, painter, organic, readers, knowledge)
    found += _others(run, organic, readers, knowledge)
    found += _explosive(run, vapours, organic, readers.start, hazardous_share)
    return tuple(found)


def _painter(
    run: AirRun, painter: Array, organic: tuple[str, ...], readers: Readers, knowledge: Knowledge
) -> list[Exposure]:
    out: list[Exposure] = []
    sums: dict[str, dict[str, float]] = {"mean_15min": {}, "mean_8h": {}}
    for cas in organic:
        values = painter[:, run.cas.index(cas), :]
        limits = limits_for(cas, ("ceiling", "mean_15min", "mean_8h"), "worker", readers.law_of, knowledge)
        idlh = limits_for(cas, ("idlh",), "worker", None, knowledge).get("idlh", [])
        for measure, entries in (*limits.items(), ("peak", idlh)):
            band, at = highest(run, values, measure)
            when = readers.start + timedelta(seconds=at)
            out += [make("painter", "room", cas, measure, band, when, e, e.value_kg_m3) for e in entries]
            if measure in sums and entries:
                sums[measure][cas] = entries[0].value_kg_m3
    for measure, weights in sums.items():
        if len(weights) > 1:
            total = _sum_of_shares(painter, weights, run.cas)
            band, at = highest(run, total, measure)
            when = readers.start + timedelta(seconds=at)
            out.append(make("painter", "room", "mixture", measure, band, when, None, 1.0))
    return out


def _others(run: AirRun, organic: tuple[str, ...], readers: Readers, knowledge: Knowledge) -> list[Exposure]:
    out: list[Exposure] = []
    home = run.means[:, :, 2, :]
    sums: dict[str, dict[str, float]] = {"mean_1h": {}, "mean_24h": {}}
    for cas in organic:
        limits = public_limit(cas, knowledge)
        for measure, limit in (limits or {}).items():
            band, at = highest(run, home[:, run.cas.index(cas), :], measure)
            when = readers.start + timedelta(seconds=at)
            out.append(make("others", "home", cas, measure, band, when, limit, limit.value_kg_m3))
            sums[measure][cas] = limit.value_kg_m3
    for measure, weights in sums.items():
        if len(weights) > 1:
            band, at = highest(run, _sum_of_shares(home, weights, run.cas), measure)
            when = readers.start + timedelta(seconds=at)
            out.append(make("others", "home", "mixture", measure, band, when, None, 1.0))
    return out


def _explosive(
    run: AirRun, vapours: tuple[Vapour, ...], organic: tuple[str, ...], start: datetime, hazardous_share: float
) -> list[Exposure]:
    """Share of the lower limit (Le Chatelier on air) in basin and room, from the values at the ends of the steps."""
    lower = {
        v.cas: vapour.kg_m3_from_ppm(v.lower_limit * 1e6, v.molar_mass_kg_mol)
        for v in vapours
        if v.lower_limit is not None and v.cas in organic
    }
    if not lower:
        return []
    out = []
    for index, zone in enumerate(("basin", "room")):
        values = np.maximum(run.means[:, :, index, :], run.ends[:, :, index, :])
        band, at = highest(run, _sum_of_shares(values, lower, run.cas), "peak")
        when = start + timedelta(seconds=at)
        out.append(make(zone, zone, "mixture", "explosive_share", band, when, None, hazardous_share))
    return out


def back_at_s(run: AirRun, zone: int, knowledge: Knowledge, from_s: float) -> float | None:
    """Seconds from which the additive share of the public values in a zone (0 basin, 1 room, 2 home) stays at or
    below 1 in every case, to the horizon; None when it does not, or when a substance has no limit at all."""
    weights: dict[str, float] = {}
    for cas in run.cas:
        if "water" in knowledge.substances[cas].tags:
            continue
        limits = public_limit(cas, knowledge)
        if limits is None:
            return None
        weights[cas] = min(limit.value_kg_m3 for limit in limits.values())
    if not weights:
        return from_s
    ends, means = (_sum_of_shares(x[:, :, zone, :], weights, run.cas).max(axis=0) for x in (run.ends, run.means))
    starts = np.concatenate(([0.0], ends[:-1]))
    below = exposure.first_time_after_which_below(run.edges_s, np.maximum.reduce([starts, means, ends]), 1.0, 0.0)
    return None if below is None else max(below, from_s)
