"""The air against the same equations solved by scipy with nothing frozen, against closed forms, and its own balance."""

import itertools
import math

import numpy as np
import pytest
from air_cases import (
    BARELY,
    BUTANONE,
    CENTRAL,
    CFM,
    DAY,
    GLYCOL_ETHER,
    HOUR,
    TOLUENE,
    WATER,
    XYLENES,
    Timed,
    kg_m3,
    one,
    ppm,
    release,
    run,
    setup,
    vapour,
)
from numpy.typing import NDArray
from scipy.integrate import solve_ivp

from bathwright.domain.air import AirSetup, Vapour
from bathwright.physics import emission, exposure
from bathwright.simulation.air import AirRun

Array = NDArray[np.float64]
OUTDOORS = 3
PAIR = (XYLENES, BUTANONE)
PAINT: tuple[Timed, ...] = ((release(XYLENES, 0.12), 0.0, 1260.0), (release(BUTANONE, 0.05), 0.0, 1260.0))
WATERY: tuple[Timed, ...] = (
    (release(GLYCOL_ETHER, 0.015, activity=5.0), 0.0, 1260.0),
    (release(WATER, 0.2), 0.0, 1260.0),
)
TWICE: tuple[Timed, ...] = (
    *PAINT,
    (release(XYLENES, 0.12, "coat-2"), 7200.0, 8460.0),
    (release(BUTANONE, 0.05, "coat-2"), 7200.0, 8460.0),
)
CASES: dict[str, tuple[AirSetup, tuple[Vapour, ...], tuple[Timed, ...]]] = {
    "fan in the room": (setup(), PAIR, PAINT),
    "fan in the basin": (setup(inlet="basin"), PAIR, PAINT),
    "no fan": (setup(fan=None, fan_flow=None), PAIR, PAINT),
    "tile": (setup(target="room"), PAIR, PAINT),
    "one light solvent": (setup(), (TOLUENE,), ((release(TOLUENE, 0.1), 0.0, 1800.0),)),
    "water-borne": (setup(), (GLYCOL_ETHER, WATER), WATERY),
    "two coats": (setup(), PAIR, TWICE),
}


def flows(made: AirSetup, from_basin: float = 1.0) -> dict[tuple[int, int], float]:
    """Central flows between basin 0, room 1, home 2 and outdoors, as the docstrings and the set-up say.

    from_basin: the share of the fan's air that an inlet in the basin draws out of it (half in the two heavy cases).
    """
    home = made.home_air_changes.central * made.home_m3.central
    out: dict[tuple[int, int], float] = {(OUTDOORS, 2): home, (2, OUTDOORS): home}
    out[0, 1] = out[1, 0] = made.basin_exchange.central
    out[1, 2] = out[2, 1] = (made.passages if made.fan_flow else made.room_exchange).central
    fan = made.fan_flow.central if made.fan_flow else 0.0
    drawn = fan * from_basin if made.inlet == "basin" else 0.0
    for path, flow in (((OUTDOORS, 2, 1, 0, OUTDOORS), drawn), ((OUTDOORS, 2, 1, OUTDOORS), fan - drawn)):
        for pair in itertools.pairwise(path):
            out[pair] = out.get(pair, 0.0) + flow
    return out


def solved(made: AirSetup, vapours: tuple[Vapour, ...], timed: tuple[Timed, ...], times: Array) -> Array:
    """Means of the zones (zone, substance, step) by an adaptive solver, with the activity changing all the time."""
    order = [v.cas for v in vapours]
    molar = np.array([v.molar_mass_kg_mol for v in vapours])
    saturation = np.array([v.saturation_central_kg_m3 for v in vapours])
    outdoors = np.array([v.background_kg_m3 for v in vapours])
    activity, applied = np.ones(len(order)), np.zeros(len(order))
    for laid, _, _ in timed:
        applied[order.index(laid.cas)] += laid.mass_kg.central
        activity[order.index(laid.cas)] = laid.activity_coefficient
    least = 1e-3 * (applied / molar).sum()
    volumes = np.array([made.basin_m3, made.room_m3, made.home_m3.central])
    share, rate = made.slow_share.central, made.slow_rate.central
    target = 0 if made.target == "basin" else 1
    moved = flows(made)

    def change(t: float, packed: Array) -> Array:
        film, slow, basin, room, home, *_ = state = packed.reshape(8, -1)
        laid_on, area = np.zeros(len(order)), 0.0
        for laid, start, end in timed:
            if start <= t < end:
                laid_on[order.index(laid.cas)] += laid.mass_kg.central / (end - start)
            area = max(area, laid.surface_m2 * min(max((t - start) / (end - start), 0.0), 1.0))
        moles = np.maximum(film, 0.0) / molar
        fraction = moles / max(moles.sum(), least)
        over_film = saturation * np.minimum(activity * fraction, 1.0)
        leaving = made.transfer.central * area * (over_film - state[2 + target])
        air = [basin, room, home, outdoors]
        gained = np.zeros((4, len(order)))
        for (a, b), flow in moved.items():
            gained[a] -= flow * air[a]
            gained[b] += flow * air[a]
        gained[target] += leaving
        lines = [laid_on * (1 - share) + rate * slow - leaving, laid_on * share - rate * slow]
        return np.concatenate([*lines, *(gained[:3] / volumes[:, None]), basin, room, home])

    start = np.zeros((8, len(order)))
    start[2:5] = outdoors
    found = solve_ivp(change, (0.0, times[-1]), start.ravel(), "LSODA", times, rtol=1e-8, atol=1e-12, max_step=20.0)
    assert found.success
    dose = found.y.reshape(8, len(order), -1)[5:8]
    means: Array = np.diff(dose, axis=2) / np.diff(times)
    return means


@pytest.mark.parametrize("name", CASES)
def test_the_air_is_that_of_the_equations(name: str) -> None:
    made, vapours, timed = CASES[name]
    got = run(made, vapours, timed, hours=4.0)
    want = solved(made, vapours, timed, got.edges_s)
    ours, lengths = got.means[CENTRAL].transpose(1, 0, 2), np.diff(got.edges_s)
    for zone, substance in itertools.product(range(3), range(len(vapours))):
        mine, theirs = ours[zone, substance], want[zone, substance]
        for window in (900.0, HOUR, 4 * HOUR):
            expected = exposure.highest_mean(got.edges_s, theirs, window)[0]
            assert exposure.highest_mean(got.edges_s, mine, window)[0] == pytest.approx(expected, rel=0.02)
        assert mine.max() == pytest.approx(theirs.max(), rel=0.07)
        assert np.abs(mine - theirs) @ lengths <= 0.03 * (theirs @ lengths)


def balance(made: AirSetup, got: AirRun, case: int) -> Array:
    """Kilograms per substance: what is in film and air at the end, and what has left the home in all."""
    volumes = np.array([made.basin_m3, made.room_m3, made.home_m3.central])
    lengths = np.diff(got.edges_s)
    moved = flows(made, 1.0 if case < 2 else 0.5)
    outflow = np.array([sum(flow for (a, b), flow in moved.items() if (a, b) == (zone, OUTDOORS)) for zone in range(3)])
    dose = (got.means[case] * lengths).sum(axis=2)
    left: Array = got.film_kg[case, :, -1] + got.ends[case, :, :, -1] @ volumes + dose @ outflow
    return left


@pytest.mark.parametrize("name", [name for name in CASES if name != "water-borne"])
@pytest.mark.parametrize("hours", [0.5, 6.0, 240.0])
def test_nothing_is_lost_and_nothing_appears(name: str, hours: float) -> None:
    made, vapours, timed = CASES[name]
    timed = tuple(entry for entry in timed if entry[2] <= hours * HOUR)
    got = run(made, vapours, timed, hours)
    applied = np.array([sum(laid.mass_kg.central for laid, _, _ in timed if laid.cas == v.cas) for v in vapours])
    for case in range(4):
        assert balance(made, got, case) == pytest.approx(applied, rel=1e-9)
    # the emission that is told is what has left the film
    emitted = (got.emission_kg_s[CENTRAL] * np.diff(got.edges_s)).sum(axis=1)
    assert emitted == pytest.approx(applied - got.film_kg[CENTRAL, :, -1], rel=1e-9)


def test_outdoor_water_stays_as_it_is_where_nothing_is_laid_on() -> None:
    got = run(setup(), (TOLUENE, WATER), ((release(TOLUENE, 1e-9), 0.0, 600.0), (release(WATER, 1e-12), 0.0, 600.0)))
    assert got.means[:, 1] == pytest.approx(np.full_like(got.means[:, 1], WATER.background_kg_m3), rel=1e-3)


CLOSED = {"fan": None, "fan_flow": None, "room_exchange": one(1e-9), "home_air_changes": one(1e-9)}


@pytest.mark.parametrize("of", [TOLUENE, BARELY], ids=["light", "barely volatile"])
@pytest.mark.parametrize("kg", [0.01, 0.5, 3.0])
def test_no_air_holds_more_than_saturation_or_than_was_laid_on(of: Vapour, kg: float) -> None:
    made = setup(**CLOSED)
    got = run(made, (of,), ((release(of, kg), 0.0, 1800.0),), hours=120.0)
    most = of.saturation_central_kg_m3
    for values in (got.means, got.ends):
        assert values.min() >= 0.0
        assert values.max() <= most * 1.002
        assert values[:, 0, 0].max() <= kg / made.basin_m3
        assert values[:, 0, 1].max() <= kg / made.room_m3
    ceiling = min(most, kg / (made.basin_m3 + made.room_m3))
    assert got.ends[CENTRAL, 0, 1, -1] <= ceiling * 1.002
    assert got.ends[CENTRAL, 0, 1, -1] >= ceiling * (0.95 if kg > 0.01 or of is TOLUENE else 0.9)


# One box: tile in the room, almost no basin, a home so large and airy that it stays clean. All of what is laid on comes
# up slowly at rate k, over a film that holds nothing back: the closed form of a surface that is brushed for a while.
BOX = {
    "target": "room", "basin_m3": 1e-6, "basin_exchange": one(1e-3), "home_m3": one(1e7), "home_air_changes": one(1.0),
    "passages": one(0.0), "transfer": one(10.0),
}  # fmt: skip
EAGER = vapour("67-64-1", 0.05808, 5e6)  # a saturation that no film of it ever feels


@pytest.mark.parametrize(("flow", "rate"), [(50 * CFM, 0.4 / HOUR), (270 * CFM, 1.2 / HOUR), (10 * CFM, 6 / HOUR)])
def test_one_box_is_the_closed_form_of_brushing(flow: float, rate: float) -> None:
    box = setup(**BOX, room_m3=9.0, fan_flow=one(flow), slow_share=one(1.0), slow_rate=one(rate))
    got = run(box, (EAGER,), ((release(EAGER, 0.2), 0.0, 1800.0),), hours=12.0)
    want = [
        emission.continuous_application_concentration(t, 0.2, 1800.0, rate, flow, 9.0) for t in got.edges_s[1:].tolist()
    ]
    assert got.ends[CENTRAL, 0, 1] == pytest.approx(np.array(want), rel=2e-3)
    assert got.ends[CENTRAL, 0, 0] == pytest.approx(got.ends[CENTRAL, 0, 1], rel=0.02)


def test_the_published_build_up_in_one_box() -> None:
    """1.4 cfm of vapour, 2500 cfm of air, 75 000 ft3: 171.90 ppm after 11 min. Source: rehs-2021, verified."""
    box = setup(**BOX, room_m3=75000 * 0.3048**3, fan_flow=one(2500 * CFM), slow_share=one(0.0))
    per_s = kg_m3(1e6, EAGER.molar_mass_kg_mol) * 1.4 * CFM
    got = run(box, (EAGER,), ((release(EAGER, per_s * 1800), 0.0, 1800.0),), hours=1.0, marks=(660.0,))
    at = int(np.argmin(np.abs(got.edges_s - 660.0))) - 1
    assert ppm(got.ends[CENTRAL, 0, 1, at], EAGER.molar_mass_kg_mol) == pytest.approx(171.90, rel=0.005)


@pytest.mark.parametrize(
    ("changes_h", "removed", "minutes"), [(6, 0.99, 46), (6, 0.90, 23), (12, 0.999, 35), (2, 0.90, 69)]
)
def test_the_published_purge_of_one_box(changes_h: float, removed: float, minutes: float) -> None:
    """CDC, MMWR 1994;43(RR-13), Table S3-1: minutes to the whole minute (cdc-mmwr-1994-rr13) [verified]."""
    box = setup(**BOX, room_m3=9.0, fan_flow=one(9.0 * changes_h / HOUR), slow_share=one(0.0))
    begin = 900.0
    marks = (begin, begin + 60 * minutes - 30, begin + 60 * minutes + 30)
    got = run(box, (EAGER,), ((release(EAGER, 0.05), 0.0, 60.0),), hours=3.0, marks=marks)
    first, early, late = (got.ends[CENTRAL, 0, 1, int(np.argmin(np.abs(got.edges_s - mark))) - 1] for mark in marks)
    assert late <= first * (1 - removed) * 1.001
    assert early >= first * (1 - removed) * 0.999


def test_a_step_of_the_film_does_not_hang_on_how_finely_time_is_cut() -> None:
    """More marks cut the steps shorter: the means over a quarter of an hour must hardly move."""
    fine = run(setup(), PAIR, PAINT, hours=4.0, marks=tuple(np.arange(10.0, 3600.0, 10.0).tolist()))
    coarse = run(setup(), PAIR, PAINT, hours=4.0)
    for zone, substance in itertools.product(range(3), range(2)):
        pair = [exposure.highest_mean(r.edges_s, r.means[CENTRAL, substance, zone], 900.0)[0] for r in (fine, coarse)]
        assert pair[0] == pytest.approx(pair[1], rel=0.02)


def test_after_days_the_home_is_clean_again() -> None:
    got = run(setup(), PAIR, PAINT, hours=30 * DAY / HOUR)
    assert math.isclose(got.edges_s[-1], 30 * DAY)
    assert (got.ends[..., -1] < 1e-4 * got.means.max(axis=3)).all()
