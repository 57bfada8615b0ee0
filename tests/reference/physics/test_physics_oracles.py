"""Independent libraries as judges: scipy for the propagator and closed forms, psychrolib and CoolProp for air."""

import numpy as np
import psychrolib
import pytest
from CoolProp.HumidAirProp import HAPropsSI
from scipy.integrate import quad, solve_ivp
from scipy.linalg import expm

from bathwright.physics import cure, dilution, emission, humid_air, near_far, vapour, zones

psychrolib.SetUnitSystem(psychrolib.SI)


def zone_matrices(batch: int, size: int, scale: float, seed: int) -> np.ndarray:
    """Random zone-like matrices: not negative off the diagonal, columns summing to a loss."""
    rng = np.random.default_rng(seed)
    matrices = rng.random((batch, size, size)) * (rng.random((batch, size, size)) < 0.4) * scale
    diagonal = np.arange(size)
    matrices[:, diagonal, diagonal] = 0.0
    matrices[:, diagonal, diagonal] = -matrices.sum(axis=1) - rng.random((batch, size)) * scale / 3
    return matrices


@pytest.mark.parametrize("scale", [1e-6, 1e-3, 0.02, 0.1, 0.5, 3.0, 30.0, 200.0])
@pytest.mark.parametrize(("batch", "size"), [(15, 9), (3, 12), (1, 2)])
def test_exponential_against_scipy(batch: int, size: int, scale: float) -> None:
    matrices = zone_matrices(batch, size, scale, seed=size)
    expected = expm(matrices)
    found = zones.expm_taylor(matrices)
    assert np.abs(found - expected).max() <= 1e-12 * np.abs(expected).max()


def test_exponential_of_any_sign_against_scipy() -> None:
    matrices = np.random.default_rng(7).normal(size=(6, 8, 8))
    assert zones.expm_taylor(matrices) == pytest.approx(expm(matrices), rel=1e-10, abs=1e-12)


@pytest.mark.parametrize("dt_s", [1.0, 60.0, 600.0])
def test_propagate_against_solve_ivp(dt_s: float) -> None:
    rng = np.random.default_rng(3)
    matrices = zone_matrices(4, 6, 0.02, seed=5)
    source, state = rng.random((4, 6)) * 1e-3, rng.random((4, 6))
    end, mean = zones.propagate(matrices, source, state, dt_s)
    for i in range(4):

        def slope(_: float, y: np.ndarray, i: int = i) -> np.ndarray:
            return np.concatenate((matrices[i] @ y[:6] + source[i], y[:6]))

        start = np.concatenate((state[i], np.zeros(6)))
        solved = solve_ivp(slope, (0.0, dt_s), start, method="DOP853", rtol=1e-12, atol=1e-14).y[:, -1]
        assert end[i] == pytest.approx(solved[:6], rel=1e-9)
        assert mean[i] == pytest.approx(solved[6:] / dt_s, rel=1e-9)


@pytest.mark.parametrize("changes_per_h", [0.4, 5.238, 20.0])
@pytest.mark.parametrize("minutes", [3.0, 20.0, 21.0, 240.0])
def test_brushed_source_against_solve_ivp(changes_per_h: float, minutes: float) -> None:
    """Continuous application (astm-stp-15627s), also where k equals λ: closed form, ODE and propagator agree."""
    mass, brushed_s, k, volume = 0.236, 1200.0, 5.238 / 3600, 9.0
    flow, time_s = changes_per_h / 3600 * volume, minutes * 60

    def slope(t: float, y: np.ndarray) -> np.ndarray:
        emitted = emission.continuous_application_rate_kg_s(t, mass, brushed_s, k)
        return np.array([(emitted - flow * y[0]) / volume])

    value = 0.0
    for begin, end in ((0.0, min(time_s, brushed_s)), (brushed_s, time_s)):
        if end > begin:
            value = solve_ivp(slope, (begin, end), [value], method="DOP853", rtol=1e-11, atol=1e-14).y[0, -1]
    closed = emission.continuous_application_concentration(time_s, mass, brushed_s, k, flow, volume)
    assert closed == pytest.approx(value, rel=1e-8)

    matrix = np.array([[-k, 0.0], [k / volume, -flow / volume]])
    state, _ = zones.propagate(matrix, np.array([mass / brushed_s, 0.0]), np.zeros(2), min(time_s, brushed_s))
    state, _ = zones.propagate(matrix, np.zeros(2), state, max(0.0, time_s - brushed_s))
    assert closed == pytest.approx(state[1], rel=1e-10)


@pytest.mark.parametrize("ratio", [0.1, 0.999999, 1.0, 3.0])
def test_exponential_source_against_propagate(ratio: float) -> None:
    k, volume, mass = 1e-3, 8.0, 0.05
    flow = ratio * k * volume
    matrix = np.array([[-k, 0.0], [k / volume, -flow / volume]])
    for time_s in (10.0, 1000.0, 7200.0):
        state, _ = zones.propagate(matrix, np.zeros(2), np.array([mass, 0.0]), time_s)
        found = emission.exponential_source_concentration(time_s, mass, k, flow, volume)
        assert found == pytest.approx(state[1], rel=1e-11)
    peak_s = emission.exponential_source_peak_time_s(k, flow / volume)
    peak = emission.exponential_source_concentration(peak_s, mass, k, flow, volume)
    for nearby_s in (0.98 * peak_s, 1.02 * peak_s):
        assert emission.exponential_source_concentration(nearby_s, mass, k, flow, volume) < peak


def test_brushed_source_gives_off_its_mass() -> None:
    def rate(t: float) -> float:
        return emission.continuous_application_rate_kg_s(t, 0.236, 1200.0, 0.0015)

    total = quad(rate, 0.0, 1200.0)[0] + quad(rate, 1200.0, 30000.0)[0]
    assert total == pytest.approx(0.236, rel=1e-9)


def test_one_box_against_solve_ivp() -> None:
    solved = solve_ivp(lambda _, c: (2e-5 - 0.03 * c) / 8.0, (0, 900), [1e-4], rtol=1e-11, atol=1e-15).y[0, -1]
    assert dilution.one_box_concentration(900, 2e-5, 0.03, 8.0, 1e-4) == pytest.approx(solved, rel=1e-8)


def test_near_far_against_solve_ivp() -> None:
    beta, q, g, v_near, v_far = 0.047, 0.02, 1e-5, 0.26, 7.7

    def slope(_: float, c: np.ndarray) -> list[float]:
        return [(g + beta * (c[1] - c[0])) / v_near, (beta * (c[0] - c[1]) - q * c[1]) / v_far]

    for time_s in (1.0, 60.0, 1800.0):
        solved = solve_ivp(slope, (0, time_s), [0.0, 0.0], method="DOP853", rtol=1e-12, atol=1e-18).y[:, -1]
        assert near_far.near_far_field(time_s, g, beta, q, v_near, v_far) == pytest.approx(solved, rel=1e-8)


def test_equivalent_age_against_quad() -> None:
    times, temperatures = [0.0, 3600.0, 9000.0, 40000.0], [278.15, 303.15, 288.15, 296.15]

    def factor(t: float) -> float:
        return cure.rate_factor_arrhenius(float(np.interp(t, times, temperatures)), 296.15, 55e3)

    expected = quad(factor, 0.0, 40000.0, points=times[1:-1], epsabs=0.0, epsrel=1e-11, limit=200)[0]
    assert cure.equivalent_age_s(times, temperatures, 296.15, 55e3) == pytest.approx(expected, rel=1e-6)


CELSIUS = [-15.0, -3.0, 0.5, 5.0, 12.0, 18.0, 22.0, 30.0, 45.0]
HUMIDITY = [0.05, 0.3, 0.5, 0.85, 1.0]


@pytest.mark.parametrize("celsius", CELSIUS)
def test_air_against_psychrolib(celsius: float) -> None:
    kelvin = celsius + 273.15
    assert humid_air.saturation_pressure_pa(kelvin) == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-9)
    for humidity in HUMIDITY:
        ratio = humid_air.humidity_ratio(kelvin, humidity, 95461.0)
        assert ratio == pytest.approx(psychrolib.GetHumRatioFromRelHum(celsius, humidity, 95461.0), rel=1e-6)
        dew = humid_air.dew_point_k(kelvin, humidity) - 273.15
        assert dew == pytest.approx(psychrolib.GetTDewPointFromRelHum(celsius, humidity), abs=0.005)
        enthalpy = psychrolib.GetMoistAirEnthalpy(celsius, ratio)
        assert humid_air.enthalpy_j_kg(kelvin, ratio) == pytest.approx(enthalpy, rel=1e-6, abs=1e-3)
        volume = psychrolib.GetMoistAirVolume(celsius, ratio, 95461.0)
        assert humid_air.specific_volume_m3_kg(kelvin, ratio, 95461.0) == pytest.approx(volume, rel=1e-5)
        back = humid_air.relative_humidity_from_ratio(kelvin, ratio, 95461.0)
        assert back == pytest.approx(humidity, rel=1e-9)


@pytest.mark.parametrize(("dry", "wet"), [(40.0, 20.0), (30.0, 25.0), (22.0, 15.0), (-1.0, -5.0), (5.0, 5.0)])
def test_wet_bulb_against_psychrolib(dry: float, wet: float) -> None:
    found = humid_air.humidity_ratio_from_wet_bulb(dry + 273.15, wet + 273.15, 95461.0)
    assert found == pytest.approx(psychrolib.GetHumRatioFromTWetBulb(dry, wet, 95461.0), rel=1e-6)


@pytest.mark.parametrize("celsius", [5.0, 15.0, 22.0, 30.0, 45.0])
def test_air_against_coolprop(celsius: float) -> None:
    """Real gas: dew point within 0.03 K, ratio within 0.7 %, enthalpy within 0.3 % of its span."""
    kelvin, pressure = celsius + 273.15, 101325.0
    for humidity in (0.45, 0.7, 0.95):
        at = ("T", kelvin, "R", humidity, "P", pressure)
        if HAPropsSI("T_dp", *at) > 273.2:
            assert humid_air.dew_point_k(kelvin, humidity) == pytest.approx(HAPropsSI("T_dp", *at), abs=0.03)
        ratio = humid_air.humidity_ratio(kelvin, humidity, pressure)
        assert ratio == pytest.approx(HAPropsSI("W", *at), rel=0.007)
        expected = HAPropsSI("H", "T", kelvin, "W", ratio, "P", pressure)
        assert humid_air.enthalpy_j_kg(kelvin, ratio) == pytest.approx(expected, rel=0.003, abs=50.0)
        volume = HAPropsSI("V", "T", kelvin, "W", ratio, "P", pressure)
        assert humid_air.specific_volume_m3_kg(kelvin, ratio, pressure) == pytest.approx(volume, rel=0.001)


def test_vapour_pressure_forms_agree_for_water() -> None:
    """Siblings in their overlap: Antoine (memory constants), Clausius-Clapeyron, ASHRAE."""
    for celsius in (10.0, 25.0, 60.0, 95.0):
        ashrae = humid_air.saturation_pressure_pa(celsius + 273.15)
        antoine = vapour.vapour_pressure_antoine_pa(8.07131, 1730.63, 233.426, celsius + 273.15)
        assert antoine == pytest.approx(ashrae, rel=0.006)
    clausius = vapour.vapour_pressure_clausius_pa(3169.7, 298.15, 44.0e3, 293.15)
    assert clausius == pytest.approx(humid_air.saturation_pressure_pa(293.15), rel=0.002)


def test_magnus_sibling() -> None:
    """wmo-8-annex-4b [secondary]: within 0.04 K of the ASHRAE inverse while T and Td lie above 0 °C."""
    for celsius in range(1, 46, 4):
        for humidity in np.arange(0.05, 1.0001, 0.05):
            dew = humid_air.dew_point_k(celsius + 273.15, float(min(humidity, 1.0)))
            if dew > 273.16:
                magnus = humid_air.dew_point_k_magnus_wmo(celsius + 273.15, float(min(humidity, 1.0)))
                assert magnus == pytest.approx(dew, abs=0.04)
