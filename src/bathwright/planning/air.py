"""The air of one attempt: place the releases on the clock, run the model, find when the fan may stop and who may be
back, and lay out zones, flows, courses and exposures for the file."""

from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

import numpy as np

from bathwright.domain.air import (
    AirFlow,
    AirInterval,
    AirPlan,
    AirSetup,
    Course,
    Emission,
    Exposure,
    Limit,
    Release,
    Vapour,
    Zone,
)
from bathwright.domain.steps import Step
from bathwright.knowledge.book import Knowledge
from bathwright.simulation import air, exposures
from bathwright.simulation.air import CASES, AirRun

_HORIZON_S = 30 * 86400.0
_HOUR_S = 3600.0
_NO_FLOW_M3_S = 1e-9


@dataclass(frozen=True)
class Aired:
    """The air of an attempt."""

    plan: AirPlan
    courses: tuple[Course, ...]
    exposures: tuple[Exposure, ...]
    fan_off: datetime | None


def breathe(
    steps: tuple[Step, ...],
    releases: tuple[Release, ...],
    setup: AirSetup,
    vapours: tuple[Vapour, ...],
    law_of: str | None,
    knowledge: Knowledge,
) -> Aired:
    """The air from the first release to 30 days later."""
    by_id = {step.id: step for step in steps}
    begin = min(_start(by_id[release.step]) for release in releases)
    timed = tuple(
        (release, _seconds(begin, _start(by_id[release.step])), _seconds(begin, _end(by_id[release.step])))
        for release in releases
    )
    stays = _stays(steps, begin, knowledge)
    marks = tuple(sorted({edge for stay in stays for edge in (stay.starts_s, stay.ends_s)}))
    last = max(end for _, _, end in timed)
    run = air.run(setup, vapours, timed, marks, _HORIZON_S)
    stop = _fan_may_stop(run, setup, last, knowledge) if setup.fan_flow else None
    fan_off_s = float(run.edges_s[stop]) if stop is not None else None
    if stop is not None:
        run = air.fan_stopped(run, stop)
    readers = exposures.Readers(start=begin, law_of=law_of, stays=stays)
    hazardous = knowledge.number("air.explosion.hazardous_share").value
    found = exposures.exposures(run, vapours, readers, knowledge, hazardous)
    back = exposures.back_at_s(run, 1, knowledge, last)
    basin = exposures.back_at_s(run, 0, knowledge, last)
    home = exposures.back_at_s(run, 2, knowledge, 0.0)
    fan_off = begin + timedelta(seconds=fan_off_s) if fan_off_s is not None else None
    horizon = begin + timedelta(seconds=_HORIZON_S)
    plan = AirPlan(
        zones=_zones(setup),
        intervals=_intervals(setup, begin, fan_off or horizon, horizon),
        emissions=tuple(_emission(r, s, e, begin, setup, vapours) for r, s, e in timed),
        limits=_limits(found),
        setup=f"{setup.fan or 'no-fan'}-{setup.inlet}",
        fan=setup.fan,
        fan_flow_m3_s=setup.fan_flow,
        back_at=None if back is None else _up(begin + timedelta(seconds=back)),
        basin_at=None if basin is None else _up(begin + timedelta(seconds=basin)),
        vapour_kg=sum(r.mass_kg.central for r, _, _ in timed if "water" not in knowledge.substances[r.cas].tags),
        horizon=horizon,
        away_from=begin if home is None or home > 0 else None,
        away_until=None if home is None or home == 0 else _up(begin + timedelta(seconds=home)),
    )
    return Aired(plan=plan, courses=_courses(run, knowledge, begin, steps), exposures=found, fan_off=fan_off)


def _start(step: Step) -> datetime:
    assert step.starts is not None
    return step.starts


def _end(step: Step) -> datetime:
    assert step.ends is not None
    return step.ends


def _seconds(begin: datetime, instant: datetime) -> float:
    return (instant - begin).total_seconds()


def _up(instant: datetime, minutes: int = 5) -> datetime:
    """The instant, rounded up to five minutes: never earlier than computed."""
    base = instant.replace(second=0, microsecond=0)
    while base < instant or base.minute % minutes:
        base += timedelta(minutes=1)
    return base


def _stays(steps: tuple[Step, ...], begin: datetime, knowledge: Knowledge) -> tuple[exposures.Presence, ...]:
    """When the painter is in the bathroom, from the first release on."""
    out = []
    for step in steps:
        if _end(step) <= begin or step.attendance == "unattended":
            continue
        name = {"coat": "coat", "solvent_wipe": "wipe"}.get(step.act, "sand")
        head = knowledge.band(f"air.person.head_in_basin_{name}")
        out.append(
            exposures.Presence(
                starts_s=max(0.0, _seconds(begin, _start(step))),
                ends_s=_seconds(begin, _end(step)),
                head=head,
                step=step.id,
            )
        )
    return tuple(out)


def _fan_may_stop(run: AirRun, setup: AirSetup, last_s: float, knowledge: Knowledge) -> int | None:
    """The first step of the run, an hour or more after the last release, from which, with the fan off, what the film
    still lets out would stay below the public values in the room (steady state of emission over the quiet exchange);
    None when not within the horizon."""
    weights = _public_weights(run.cas, knowledge)
    quiet = max(setup.room_exchange.low, _NO_FLOW_M3_S)
    home = max(setup.home_air_changes.low * setup.home_m3.low, _NO_FLOW_M3_S)
    steady = np.einsum("csn,s->cn", np.maximum(run.emission_kg_s, 0.0), weights) * (1 / quiet + 1 / home)
    over = np.flatnonzero(steady.max(axis=0) > 1.0)
    first = float(run.edges_s[over[-1] + 1]) if over.size else 0.0
    later = np.flatnonzero(run.edges_s[:-1] >= max(first, last_s + _HOUR_S))
    return int(later[0]) if later.size else None


def _public_weights(order: tuple[str, ...], knowledge: Knowledge) -> air.Array:
    """One over the stricter public value of each substance, in m3/kg; 0 for water and for what has no value."""
    weights = np.zeros(len(order))
    for i, cas in enumerate(order):
        limits = exposures.public_limit(cas, knowledge)
        if limits is not None and "water" not in knowledge.substances[cas].tags:
            weights[i] = 1.0 / min(limit.value_kg_m3 for limit in limits.values())
    return weights


def _zones(setup: AirSetup) -> tuple[Zone, ...]:
    sizes = (("basin", setup.basin_m3), ("room", setup.room_m3), ("home", setup.home_m3.central))
    return tuple(Zone(id=name, volume_m3=volume, temperature_k=setup.temperature_k) for name, volume in sizes)


def _intervals(setup: AirSetup, begin: datetime, fan_off: datetime, horizon: datetime) -> tuple[AirInterval, ...]:
    """The central flows, with the fan on and after it."""
    still = [
        ("basin", "room", setup.basin_exchange.central),
        ("room", "basin", setup.basin_exchange.central),
        ("outdoors", "home", setup.home_air_changes.central * setup.home_m3.central),
        ("home", "outdoors", setup.home_air_changes.central * setup.home_m3.central),
    ]
    quiet = [("room", "home", setup.room_exchange.central), ("home", "room", setup.room_exchange.central)]
    if setup.fan_flow is None:
        return (_interval(begin, horizon, still + quiet, "no-fan"),)
    flow, door = setup.fan_flow.central, setup.passages.central
    path = ["outdoors", "home", "room", "basin", "outdoors"] if setup.inlet == "basin" else [
        "outdoors", "home", "room", "outdoors"]  # fmt: skip
    moved = [(a, b, flow) for a, b in pairwise(path)]
    doors = [("room", "home", door), ("home", "room", door)]
    on = _interval(begin, fan_off, still + moved + doors, "fan-on")
    return (on, _interval(fan_off, horizon, still + quiet, "fan-off")) if fan_off < horizon else (on,)


def _interval(starts: datetime, ends: datetime, flows: list[tuple[str, str, float]], setup: str) -> AirInterval:
    summed: dict[tuple[str, str], float] = {}
    for source, target, flow in flows:
        summed[source, target] = summed.get((source, target), 0.0) + flow
    made = tuple(AirFlow(source=a, target=b, flow_m3_s=flow) for (a, b), flow in summed.items())
    return AirInterval(starts=starts, ends=ends, flows=made, setup=setup)


def _emission(
    release: Release, starts_s: float, ends_s: float, begin: datetime, setup: AirSetup, vapours: tuple[Vapour, ...]
) -> Emission:
    vapour = next(v for v in vapours if v.cas == release.cas)
    return Emission(
        id=release.id,
        step=release.step,
        substance=release.substance,
        cas=release.cas,
        zone=setup.target,
        surface_m2=release.surface_m2,
        mass_kg=release.mass_kg,
        starts=begin + timedelta(seconds=starts_s),
        ends=begin + timedelta(seconds=ends_s),
        form=release.form,
        slow_share=setup.slow_share.central,
        slow_rate_per_s=setup.slow_rate.central,
        transfer_m_s=setup.transfer.central,
        activity_coefficient=release.activity_coefficient,
        saturation_kg_m3=vapour.saturation_central_kg_m3,
        model="film with back pressure",
        source=release.source,
        mark=release.mark,
    )


def _limits(found: tuple[Exposure, ...]) -> tuple[Limit, ...]:
    seen = {exposure.limit.id: exposure.limit for exposure in found if exposure.limit}
    return tuple(seen.values())


def _courses(run: AirRun, knowledge: Knowledge, begin: datetime, steps: tuple[Step, ...]) -> tuple[Course, ...]:
    """Share of the public values (sum over substances) in basin, room and home, thinned to a few hundred points."""
    offset = int(_seconds(_start(steps[0]), begin))
    weights = _public_weights(run.cas, knowledge)
    total = np.einsum("cszn,s->czn", run.ends, weights)
    keep = _thin(run.edges_s[1:], total)
    central = CASES.index("central")
    return tuple(
        Course(
            of=zone,
            reads="share_of_public_values",
            unit="1",
            t_s=tuple(int(t) + offset for t in run.edges_s[1:][keep]),
            central=tuple(float(v) for v in total[central, z, keep]),
            upper=tuple(float(v) for v in total[:, z, keep].max(axis=0)),
            kept_to=0.02,
        )
        for z, zone in enumerate(("basin", "room", "home"))
    )


def _thin(times: np.ndarray[tuple[int], np.dtype[np.float64]], total: air.Array) -> list[int]:
    """Indices to keep: every point that moves a curve by more than 2 % of its peak or by a tenth of itself (down to a
    thousandth of the peak), the points before such a move, and both ends."""
    peak = np.maximum(total.max(axis=2, keepdims=True), 1e-12)
    shape = np.maximum(total / peak, 1e-3)
    kept = [0]
    for j in range(1, len(times) - 1):
        last = shape[..., kept[-1]]
        moved = np.abs(shape[..., j] - last)
        if float(moved.max()) > 0.02 or float((moved / last).max()) > 0.1:
            kept += [j - 1, j] if j - 1 > kept[-1] else [j]
    return [*kept, len(times) - 1] if len(times) > 1 else kept
