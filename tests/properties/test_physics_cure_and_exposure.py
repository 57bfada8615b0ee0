"""Properties of cure and exposure, and of the ranges beside the models."""

import importlib
import inspect
import math
import pkgutil

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright import physics
from bathwright.physics import cure, exposure
from bathwright.physics.validity import Validity, outside, unbounded

CHECK = settings(derandomize=True, deadline=None, max_examples=60)
kelvins = st.floats(268.0, 318.0)
energies = st.floats(20e3, 110e3)
pieces = st.lists(st.tuples(st.floats(1.0, 20000.0), kelvins), min_size=2, max_size=6)
REFERENCE_K = 296.15


def history(rows: list[tuple[float, float]]) -> tuple[list[float], list[float]]:
    times = [0.0, *np.cumsum([row[0] for row in rows[1:]])]
    return [float(t) for t in times], [row[1] for row in rows]


@CHECK
@given(pieces, energies, st.one_of(st.none(), kelvins))
def test_equivalent_age_adds_up(rows: list[tuple[float, float]], e: float, floor: float | None) -> None:
    times, temperatures = history(rows)
    whole = cure.equivalent_age_s(times, temperatures, REFERENCE_K, e, floor_k=floor)
    parts = [
        cure.equivalent_age_s(times[i : i + 2], temperatures[i : i + 2], REFERENCE_K, e, floor_k=floor)
        for i in range(len(times) - 1)
    ]
    assert whole == pytest.approx(math.fsum(parts), rel=1e-12)
    split = 0.3 * times[1]
    middle = temperatures[0] + 0.3 * (temperatures[1] - temperatures[0])
    cut = cure.equivalent_age_s(
        [0.0, split, *times[1:]],
        [temperatures[0], middle, *temperatures[1:]],
        REFERENCE_K,
        e,
        floor_k=floor,
    )
    assert cut == pytest.approx(whole, rel=1e-6, abs=1e-6)


@CHECK
@given(pieces, energies, kelvins)
def test_warmer_is_older_and_a_floor_only_takes_away(rows: list[tuple[float, float]], e: float, floor: float) -> None:
    times, temperatures = history(rows)
    age = cure.equivalent_age_s(times, temperatures, REFERENCE_K, e)
    assert cure.equivalent_age_s(times, [t + 1.0 for t in temperatures], REFERENCE_K, e) > age
    floored = cure.equivalent_age_s(times, temperatures, REFERENCE_K, e, floor_k=floor)
    assert 0.0 <= floored <= age * (1 + 1e-6)
    assert cure.equivalent_age_s(times, temperatures, REFERENCE_K, e, floor_k=400.0) == 0.0


@CHECK
@given(st.floats(1.0, 1e5), kelvins, energies)
def test_constant_temperature_scales_time(age_s: float, t_k: float, e: float) -> None:
    factor = cure.rate_factor_arrhenius(t_k, REFERENCE_K, e)
    found = cure.time_to_age_s(lambda _: t_k, age_s, REFERENCE_K, e, floor_k=None, limit_s=3e7, step_s=1e6)
    assert found is not None
    assert found == pytest.approx(age_s / factor, rel=1e-9, abs=1e-6)
    at_reference = cure.rate_factor_arrhenius(REFERENCE_K, REFERENCE_K, e)
    assert at_reference == 1.0


@CHECK
@given(pieces, energies, st.floats(0.05, 0.95), st.one_of(st.none(), st.floats(275.0, 290.0)))
def test_time_to_age_inverts_the_age(
    rows: list[tuple[float, float]], e: float, part: float, floor: float | None
) -> None:
    times = [600.0 * i for i in range(len(rows))]
    temperatures = [row[1] for row in rows]
    age = part * cure.equivalent_age_s(times, temperatures, REFERENCE_K, e, floor_k=floor)
    if age == 0.0:
        return

    def at(t: float) -> float:
        return float(np.interp(t, times, temperatures))

    found = cure.time_to_age_s(at, age, REFERENCE_K, e, floor_k=floor, limit_s=times[-1])
    assert found is not None
    inner = [t for t in times if t < found]
    back = cure.equivalent_age_s([*inner, found], [at(t) for t in [*inner, found]], REFERENCE_K, e, floor_k=floor)
    assert back == pytest.approx(age, rel=1e-5, abs=1e-6)


def test_a_floor_cuts_a_ramp_where_it_crosses() -> None:
    for rising in (False, True):
        ends, above = (283.15, 293.15), (288.15, 293.15)
        cut = cure.equivalent_age_s([0.0, 1000.0], ends if rising else ends[::-1], REFERENCE_K, 55e3, floor_k=288.15)
        assert cut == pytest.approx(cure.equivalent_age_s([0.0, 500.0], above, REFERENCE_K, 55e3), rel=1e-9)


def test_an_age_out_of_reach_is_none() -> None:
    assert cure.time_to_age_s(lambda _: 280.0, 1.0, 296.15, 55e3, floor_k=283.15, limit_s=1e5) is None
    assert cure.time_to_age_s(lambda _: 296.15, 7201.0, 296.15, 55e3, floor_k=None, limit_s=7200.0) is None
    assert cure.time_to_age_s(lambda _: 296.15, 0.0, 296.15, 55e3, floor_k=None, limit_s=0.0) == 0.0
    on_the_floor = cure.time_to_age_s(lambda _: 283.15, 60.0, 283.15, 55e3, floor_k=283.15, limit_s=600.0)
    assert on_the_floor == pytest.approx(60.0)


@CHECK
@given(energies, st.floats(275.0, 290.0), st.floats(2.0, 30.0), st.floats(60.0, 1e6))
def test_energy_from_two_times_comes_back(e: float, cold_k: float, apart_k: float, time_s: float) -> None:
    faster = cure.rate_factor_arrhenius(cold_k + apart_k, cold_k, e)
    found = cure.activation_energy_from_two_times(time_s, cold_k, time_s / faster, cold_k + apart_k)
    assert found == pytest.approx(e, rel=1e-9)


def test_cure_refuses_what_cannot_be() -> None:
    for times, temperatures in (
        ([0.0, 1.0], [290.0]),
        ([1.0, 0.0], [290.0, 290.0]),
        ([0.0, 1.0], [290.0, -1.0]),
        ([0.0, math.nan], [290.0, 291.0]),
    ):
        with pytest.raises(ValueError, match="must be"):
            cure.equivalent_age_s(times, temperatures, REFERENCE_K, 55e3)
    with pytest.raises(ValueError, match="must differ"):
        cure.activation_energy_from_two_times(1.0, 290.0, 2.0, 290.0)


series = st.lists(st.tuples(st.floats(0.5, 4000.0), st.floats(0.0, 1e3)), min_size=1, max_size=12)


def course(rows: list[tuple[float, float]]) -> tuple[np.ndarray, np.ndarray]:
    return np.concatenate(([0.0], np.cumsum([row[0] for row in rows]))), np.array([row[1] for row in rows])


def moving_mean(times: np.ndarray, values: np.ndarray, start: float, end: float) -> float:
    """The mean from start to end, step by step: slow and plain, to judge the fast one."""
    overlap = np.minimum(times[1:], end) - np.maximum(times[:-1], start)
    return float((values * np.clip(overlap, 0.0, None)).sum() / (end - start))


@CHECK
@given(series, st.floats(1.0, 9000.0))
def test_highest_mean_is_reached_and_not_passed(rows: list[tuple[float, float]], window: float) -> None:
    times, values = course(rows)
    value, start = exposure.highest_mean(times, values, window)
    assert value == pytest.approx(moving_mean(times, values, start, start + window), rel=1e-9, abs=1e-9)
    for tried in np.linspace(-window, times[-1], 200):
        assert moving_mean(times, values, tried, tried + window) <= value * (1 + 1e-9) + 1e-9
    assert value <= values.max() * (1 + 1e-12)


@CHECK
@given(series, st.floats(0.0, 1e3), st.one_of(st.just(0.0), st.floats(1.0, 9000.0)))
def test_after_the_time_every_mean_is_below(rows: list[tuple[float, float]], limit: float, window: float) -> None:
    times, values = course(rows)
    found = exposure.first_time_after_which_below(times, values, limit, window)
    if values[-1] > limit:
        assert found is None
        return
    assert found is not None
    length = window if window > 0.0 else 1e-6
    for start in np.linspace(found, times[-1], 100, endpoint=False):
        end = min(start + length, times[-1])
        assert moving_mean(times, values, start, end) <= limit * (1 + 1e-6) + 1e-6
    if found > 0.0:
        before = found - min(1e-3, 0.5 * found)
        just_before = moving_mean(times, values, before, min(before + length, times[-1]))
        assert just_before >= limit * (1 - 1e-9) - 1e-9


def test_exposure_by_hand() -> None:
    times, values = [0.0, 60.0, 120.0, 300.0], [10.0, 40.0, 1.0]
    assert exposure.highest_mean(times, values, 60.0) == (40.0, 60.0)
    assert exposure.highest_mean(times, values, 120.0) == (25.0, 0.0)
    assert exposure.highest_mean(times, values, 3600.0) == (pytest.approx(3180.0 / 3600.0), 0.0)
    assert exposure.highest_mean(times, values, 0.0) == (40.0, 60.0)
    assert exposure.time_above(times, values, 10.0) == 60.0
    assert exposure.time_above(times, values, 9.9) == 120.0
    assert exposure.first_time_after_which_below(times, values, 10.0, 0.0) == 120.0
    # a window of 60 s holds 10 when 60·10 = 40·x + (60 − x)·1, x = 13.846 s before 120 s
    assert exposure.first_time_after_which_below(times, values, 10.0, 60.0) == pytest.approx(120 - 540 / 39)
    assert exposure.first_time_after_which_below(times, values, 0.9, 60.0) is None
    assert exposure.first_time_after_which_below(times, values, 40.0, 60.0) == 0.0
    assert exposure.first_time_after_which_below([0.0, 60.0, 90.0], [5.0, 0.0], 0.0, 30.0) == 60.0
    # 90 s hold 20 when 40·y + 1·(90 − y) = 1800: y = 1710/39 of the high minute are left, none before counts
    after = exposure.first_time_after_which_below(times, values, 20.0, 90.0)
    assert after == pytest.approx(120 - 1710 / 39)
    # the mean is 10 at a start of 0, 15 at 50 (the window ends on an edge), 13.667 at 100: 14 at 87.5
    hump = exposure.first_time_after_which_below([0.0, 100.0, 200.0, 400.0], [5.0, 20.0, 1.0], 14.0, 150.0)
    assert hump == pytest.approx(87.5)
    # a low end too short for the window is not padded: 10·20 + 5·5 = 225 s over 15 s is 15, above 10
    tail = exposure.first_time_after_which_below([0.0, 100.0, 110.0, 115.0], [0.0, 20.0, 5.0], 10.0, 100.0)
    assert tail == pytest.approx(110 - 2.5)


@pytest.mark.parametrize(
    ("times", "values", "window"),
    [
        ([0.0, 1.0], [], 1.0),
        ([0.0, 1.0], [1.0, 2.0], 1.0),
        ([0.0, 0.0], [1.0], 1.0),
        ([0.0, 1.0], [math.nan], 1.0),
        ([0.0, 1.0], [1.0], -1.0),
    ],
)
def test_exposure_refuses_what_is_no_series(times: list[float], values: list[float], window: float) -> None:
    with pytest.raises(ValueError, match=r"times_s|window_s"):
        exposure.highest_mean(times, values, window)


RANGE = (Validity("temperature_k", 280.0, 300.0, "K", "x", "own"), Validity("length_m", 0.0, 1.0, "m", "x", "own"))


def test_outside_and_unbounded() -> None:
    assert outside(RANGE, temperature_k=280.0, length_m=1.0) == ()
    assert outside(RANGE, temperature_k=279.9, length_m=1.0) == RANGE[:1]
    assert outside(RANGE, temperature_k=math.nan, length_m=2.0) == RANGE
    assert outside(RANGE, temperature_k=290.0) == RANGE[1:]  # not told is not inside
    assert unbounded(RANGE, temperature_k=290.0, area_m2=1.0) == ("area_m2",)
    assert unbounded((), area_m2=1.0) == ("area_m2",)


MODULES = [m.name for m in pkgutil.iter_modules(physics.__path__) if m.name not in {"checks", "constants", "validity"}]
MARKS = {"verified", "secondary", "memory", "own", "judgement", "common_practice"}


@pytest.mark.parametrize("name", MODULES)
def test_ranges_name_real_functions_and_parameters(name: str) -> None:
    module = importlib.import_module(f"bathwright.physics.{name}")
    for function, ranges in module.VALIDITY.items():
        parameters = inspect.signature(getattr(module, function)).parameters
        assert ranges
        for row in ranges:
            assert row.quantity in parameters
            assert row.low < row.high
            assert row.source
            assert row.mark in MARKS
            assert row.unit
