"""Where the numbers of a plan come from: formula, inputs, sources, by path in the plan file."""

import dataclasses
from typing import Any

from bathwright.domain.codes import Mark
from bathwright.domain.plan import Plan, Traced
from bathwright.domain.values import Value
from bathwright.planning.attempt import Attempt
from bathwright.sources import load as load_sources


def traces(best: Attempt) -> tuple[Traced, ...]:
    """One entry per computed number or group of numbers; `*` in a path stands for any position."""
    job = best.job
    area = Value(name="area", value=job.area_m2, kind="area")
    film = job.film
    coat = (
        area,
        Value(name="dry film of one coat", value=film.dry_central_m, kind="film"),
        Value(name="solids by volume", value=film.solids_by_volume, kind="share"),
        Value(name="coats", value=float(film.coats), kind="count"),
    )
    out = [
        _trace("area[*].area_m2", "rounded tapered box, floor and walls by quadrature; rim: outside less opening",
               (), ("own-computation",), "own"),
        _trace("materials[1].needed_m3", "coats · area · dry film / (solids by volume · (1 − loss))", coat,
               ("ufc-3-190-06", job.one_coat.source), job.one_coat.mark),
        _trace("materials[1].packs", "needed volume / pack volume, rounded up", coat[:1], ("makers-sheet",),
               "verified"),
        _trace("mixes[*].volume_m3", "volume of one coat / number of batches", coat, ("own-computation",), "own"),
        _trace("mixes[*].pot_life_s", "printed pot life / max(1, exp(E/R · (1/T printed − 1/T warmest)))",
               (Value(name="warmest air", value=best.weather.high_k, kind="temperature"),),
               ("makers-sheet", "dgeba-ea-2006"), "judgement"),
        _trace("clocks[*]", "the later of the printed time and the equivalent age ∫ exp(E/R · (1/T ref − 1/T)) dt at "
               "the surface of the fixture; never before the sealant and the air allow it",
               (Value(name="coldest surface", value=best.weather.low_k - best.weather.surface_offset_k,
                      kind="temperature"),),
               ("makers-sheet", "astm-c1074"), "own"),
    ]  # fmt: skip
    if best.air:
        plan = best.air.plan
        emitted = sum(e.mass_kg.central for e in plan.emissions)
        air_inputs = (Value(name="mass let out", value=emitted, kind="mass"),)
        out += [
            _trace("air.emissions[*].mass_kg", "volume · density · share by weight; the shares scaled up to the "
                   "largest of VOC, 1 − solids by weight, composition", air_inputs,
                   ("makers-sheet", "own-computation"), "own"),
            _trace("air.fan_flow_m3_s", "rating · real share of its kind, or the flow as measured", (),
                   (plan.fan_flow_m3_s.source,) if plan.fan_flow_m3_s else ("own-judgement",), "judgement"),
            _trace("air.back_at", "first time from which the sum of concentration over public value stays at or "
                   "below 1 in the room for 30 days, in all four cases", air_inputs, ("minnesota-ihb-2023",), "own"),
            _trace("exposures[*]", "basin, room and home as zones with the film's solvent as a state, exact for "
                   "constant pieces; the highest moving mean; the worst of four cases is the upper value", air_inputs,
                   ("mackay-van-wesenbeeck-2014", "own-computation"), "own"),
        ]  # fmt: skip
    return tuple(out)


def _trace(path: str, formula: str, inputs: tuple[Value, ...], sources: tuple[str, ...], mark: Mark) -> Traced:
    return Traced(path=path, formula=formula, inputs=inputs, sources=sources, mark=mark)


def cited(plan: Plan) -> tuple[str, ...]:
    """Ids of the bibliography that the plan cites anywhere, sorted."""
    known = load_sources()
    found: set[str] = set()

    def walk(value: Any) -> None:
        if isinstance(value, str):
            if value in known:
                found.add(value)
        elif isinstance(value, tuple):
            for entry in value:
                walk(entry)
        elif dataclasses.is_dataclass(value) and not isinstance(value, type):
            for field in dataclasses.fields(value):
                walk(getattr(value, field.name))

    for name in (
        "findings",
        "assumptions",
        "area",
        "materials",
        "steps",
        "air",
        "exposures",
        "clocks",
        "emergency",
        "traces",
    ):
        walk(getattr(plan, name))
    return tuple(sorted(found))
