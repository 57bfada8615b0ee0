"""Properties of the propagator and of the closed forms: balance, sign, bounds, parts of a step."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from bathwright.physics import dilution, emission, near_far, zones

CHECK = settings(derandomize=True, deadline=None, max_examples=60)
rates = st.one_of(st.just(0.0), st.floats(1e-7, 0.3))
amounts = st.floats(0.0, 10.0)
sizes = st.integers(1, 9)


@st.composite
def systems(draw: st.DrawFn, *, closed: bool) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """A batch of three zone systems in amounts: columns sum to 0 (closed) or to a loss."""
    size = draw(sizes)
    matrix = draw(arrays(np.float64, (3, size, size), elements=rates))
    diagonal = np.arange(size)
    matrix[:, diagonal, diagonal] = 0.0
    matrix[:, diagonal, diagonal] = -matrix.sum(axis=1)
    if not closed:
        matrix[:, diagonal, diagonal] -= draw(arrays(np.float64, (3, size), elements=rates))
    source = draw(arrays(np.float64, (3, size), elements=amounts))
    state = draw(arrays(np.float64, (3, size), elements=amounts))
    return matrix, source, state


@CHECK
@given(systems(closed=True), st.floats(0.0, 600.0))
def test_closed_system_keeps_its_mass(system: tuple[np.ndarray, ...], dt_s: float) -> None:
    matrix, _, state = system
    end, mean = zones.propagate(matrix, np.zeros_like(state), state, dt_s)
    for after in (end, mean):
        assert np.allclose(after.sum(axis=-1), state.sum(axis=-1), rtol=1e-12, atol=1e-300)


@CHECK
@given(systems(closed=True), st.floats(1.0, 600.0))
def test_closed_system_gains_what_is_put_in(system: tuple[np.ndarray, ...], dt_s: float) -> None:
    matrix, source, state = system
    end, _ = zones.propagate(matrix, source, state, dt_s)
    expected = state.sum(axis=-1) + dt_s * source.sum(axis=-1)
    assert np.allclose(end.sum(axis=-1), expected, rtol=1e-12, atol=1e-300)


@CHECK
@given(systems(closed=False), st.floats(0.0, 1e5))
def test_nothing_goes_below_zero(system: tuple[np.ndarray, ...], dt_s: float) -> None:
    end, mean = zones.propagate(*system, dt_s)
    assert (end >= 0.0).all()
    assert (mean >= 0.0).all()
    assert (zones.expm_taylor(system[0] * dt_s) >= 0.0).all()


@CHECK
@given(systems(closed=False), st.floats(1.0, 600.0))
def test_balance_of_the_step(system: tuple[np.ndarray, ...], dt_s: float) -> None:
    matrix, source, state = system
    end, mean = zones.propagate(matrix, source, state, dt_s)
    gained = dt_s * (np.einsum("bij,bj->bi", matrix, mean) + source)
    turned_over = dt_s * (np.einsum("bij,bj->bi", np.abs(matrix), mean) + source) + state
    assert (np.abs(end - state - gained) <= 1e-12 * (1e-300 + turned_over.max())).all()


@CHECK
@given(systems(closed=False), st.floats(1.0, 600.0))
def test_two_half_steps_are_one_step(system: tuple[np.ndarray, ...], dt_s: float) -> None:
    matrix, source, state = system
    end, mean = zones.propagate(matrix, source, state, dt_s)
    half = zones.transition(matrix, source, dt_s / 2)
    middle, first = zones.advance(half, state)
    last, second = zones.advance(half, middle)
    assert np.allclose(end, last, rtol=1e-11, atol=1e-13)
    assert np.allclose(mean, (first + second) / 2, rtol=1e-11, atol=1e-13)


@CHECK
@given(systems(closed=False))
def test_a_batch_is_its_members(system: tuple[np.ndarray, ...]) -> None:
    matrix, source, state = system
    end, mean = zones.propagate(matrix, source, state, 60.0)
    for i in range(3):
        alone_end, alone_mean = zones.propagate(matrix[i], source[i], state[i], 60.0)
        assert np.allclose(end[i], alone_end, rtol=1e-12, atol=1e-14)
        assert np.allclose(mean[i], alone_mean, rtol=1e-12, atol=1e-14)


def test_one_matrix_for_many_states() -> None:
    matrix, source = np.array([[-0.01, 0.0], [0.01, -0.02]]), np.array([1e-3, 0.0])
    states = np.arange(10.0).reshape(5, 2)
    end, mean = zones.propagate(matrix, source, states, 30.0)
    assert end.shape == mean.shape == (5, 2)
    assert end[3] == pytest.approx(zones.propagate(matrix, source, states[3], 30.0)[0])


def test_a_step_of_no_time_changes_nothing() -> None:
    state = np.array([1.0, 2.0])
    end, mean = zones.propagate(np.array([[-1.0, 0.5], [1.0, -0.5]]), np.ones(2), state, 0.0)
    assert (end == state).all()
    assert (mean == state).all()


@pytest.mark.parametrize(
    ("matrix", "source", "dt_s"),
    [
        (np.zeros((2, 3)), np.zeros(2), 1.0),
        (np.zeros((2, 2)), np.zeros(3), 1.0),
        (np.zeros((2, 2)), np.zeros(2), -1.0),
        (np.zeros((2, 2)), np.zeros(2), float("nan")),
        (np.full((2, 2), np.nan), np.zeros(2), 1.0),
        (np.zeros((2, 2)), np.array([np.inf, 0.0]), 1.0),
    ],
)
def test_what_is_no_system_is_refused(matrix: np.ndarray, source: np.ndarray, dt_s: float) -> None:
    with pytest.raises(ValueError, match=r"matri|source|dt_s"):
        zones.propagate(matrix, source, np.zeros(2), dt_s)


times = st.floats(0.0, 86400.0)
masses = st.floats(1e-6, 5.0)
decay = st.floats(1e-6, 0.02)
flows = st.floats(0.0, 0.5)
volumes = st.floats(1.0, 500.0)


@CHECK
@given(times, masses, decay, flows, volumes)
def test_a_fading_source_stays_under_its_mass(t: float, m: float, k: float, q: float, v: float) -> None:
    assert 0.0 <= emission.exponential_source_concentration(t, m, k, q, v) <= m / v * (1 + 1e-12)


@CHECK
@given(times, masses, st.floats(60.0, 7200.0), decay, flows, volumes)
def test_a_brushed_source_stays_under_its_mass(
    t: float, m: float, brushed_s: float, k: float, q: float, v: float
) -> None:
    level = emission.continuous_application_concentration(t, m, brushed_s, k, q, v)
    assert 0.0 <= level <= m / v * (1 + 1e-12)
    rate = emission.continuous_application_rate_kg_s(t, m, brushed_s, k)
    assert 0.0 <= rate <= m / brushed_s * (1 + 1e-12)


@CHECK
@given(times, masses, decay, flows, volumes)
def test_quick_brushing_is_a_fading_source(t: float, m: float, k: float, q: float, v: float) -> None:
    quick = emission.continuous_application_concentration(t + 0.005, m, 0.01, k, q, v)
    at_once = emission.exponential_source_concentration(t, m, k, q, v)
    assert quick == pytest.approx(at_once, rel=1e-3, abs=1e-4 * m / v)


@CHECK
@given(st.floats(1e-8, 1e-3), st.floats(1e-4, 0.5), volumes, st.floats(0.01, 0.99))
def test_build_up_and_time_to_are_inverse(g: float, q: float, v: float, part: float) -> None:
    target = part * g / q
    time_s = dilution.one_box_time_to(target, g, q, v)
    assert time_s is not None
    assert dilution.one_box_concentration(time_s, g, q, v) == pytest.approx(target, rel=1e-9)


@CHECK
@given(st.floats(1e-8, 1e-3), flows, volumes, st.floats(0.0, 80000.0), st.floats(1.0, 4000.0))
def test_build_up_rises_and_more_air_helps(g: float, q: float, v: float, t: float, later: float) -> None:
    level = dilution.one_box_concentration(t, g, q, v)
    assert dilution.one_box_concentration(t + later, g, q, v) >= level * (1 - 1e-12)
    assert dilution.one_box_concentration(t, g, q + 0.01, v) <= level * (1 + 1e-12)


def test_levels_that_are_never_reached() -> None:
    assert dilution.one_box_time_to(2.0, 1.0, 1.0, 1.0) is None
    assert dilution.one_box_time_to(1.0, 1.0, 1.0, 1.0) is None
    assert dilution.one_box_time_to(1.0, 0.0, 0.0, 1.0) is None
    assert dilution.one_box_time_to(0.5, 1.0, 1.0, 1.0, 1.0) is None
    assert dilution.one_box_time_to(2.0, 0.5, 0.0, 8.0) == 32.0
    assert dilution.one_box_time_to(0.5, 0.0, 1.0, 1.0, 1.0) == pytest.approx(0.6931471805599453)


@CHECK
@given(st.floats(1e-6, 1e6), st.floats(1e-6, 1e6), st.floats(1e-5, 0.1), st.floats(1.0, 10.0))
def test_purge_is_never_negative_and_mixing_lengthens(c1: float, c2: float, n: float, k: float) -> None:
    time_s = dilution.purge_time_s(c1, c2, n, k)
    assert time_s == pytest.approx(k * dilution.purge_time_s(c1, c2, n), rel=1e-12)
    assert time_s >= 0.0
    assert (time_s == 0.0) is (c2 >= c1)


@CHECK
@given(times, st.floats(1e-9, 1e-3), st.floats(0.001, 0.5), st.floats(0.001, 0.5), st.floats(0.05, 5.0), volumes)
def test_near_field_lies_above_far_field(
    t: float, g: float, beta: float, q: float, v_near: float, v_far: float
) -> None:
    near, far = near_far.near_far_field(t, g, beta, q, v_near, v_far)
    steady_near, steady_far = near_far.near_far_steady(g, beta, q)
    assert steady_near * (1 + 1e-9) >= near >= far * (1 - 1e-9) >= 0.0
    assert far <= steady_far * (1 + 1e-9)
    assert near * v_near + far * v_far <= g * t * (1 + 1e-9) + 1e-25
