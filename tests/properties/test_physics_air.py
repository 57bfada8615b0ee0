"""Properties of humid air, vapour, mixtures, VOC and evaporation: round trips, monotony, refusals."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.physics import evaporation, humid_air, vapour, voc

CHECK = settings(derandomize=True, deadline=None, max_examples=80)
kelvins = st.floats(245.0, 333.0)
humidities = st.floats(0.01, 1.0)
pressures = st.floats(60e3, 108e3)
levels = st.floats(0.0, 1e5)
molar = st.floats(0.016, 0.4)


@CHECK
@given(kelvins, humidities)
def test_dew_point_is_not_above_the_air_and_inverts(t_k: float, rh: float) -> None:
    dew_k = humid_air.dew_point_k(t_k, rh)
    assert dew_k <= t_k
    target = humid_air.vapour_pressure_pa(t_k, rh)
    assert humid_air.saturation_pressure_pa(dew_k) == pytest.approx(target, rel=1.1e-4)
    if abs(dew_k - 273.15) > 1e-6:  # the ice and water curves leave a gap of 0.01 % at 0 °C
        assert humid_air.saturation_pressure_pa(dew_k) == pytest.approx(target, rel=1e-9)


def test_dew_point_of_saturated_air_is_its_temperature() -> None:
    for t_k in (250.0, 273.14, 273.15, 273.16, 300.0, 350.0):
        assert humid_air.dew_point_k(t_k, 1.0) == pytest.approx(t_k, abs=1e-9)


@CHECK
@given(kelvins, st.floats(0.01, 0.97), st.floats(1e-3, 0.02))
def test_dew_point_and_ratio_rise_with_humidity(t_k: float, rh: float, more: float) -> None:
    assert humid_air.dew_point_k(t_k, rh + more) >= humid_air.dew_point_k(t_k, rh)
    low = humid_air.humidity_ratio(t_k, rh, 101325.0)
    assert humid_air.humidity_ratio(t_k, rh + more, 101325.0) > low


@CHECK
@given(kelvins, st.floats(0.0, 1.0), pressures)
def test_humidity_round_trip(t_k: float, rh: float, p: float) -> None:
    ratio = humid_air.humidity_ratio(t_k, rh, p)
    assert humid_air.relative_humidity_from_ratio(t_k, ratio, p) == pytest.approx(rh, rel=1e-12, abs=1e-15)


@CHECK
@given(st.floats(245.0, 332.0), st.floats(0.01, 1.0))
def test_saturation_pressure_rises(t_k: float, more: float) -> None:
    assert humid_air.saturation_pressure_pa(t_k + more) > humid_air.saturation_pressure_pa(t_k)


@CHECK
@given(kelvins, humidities, kelvins)
def test_spread_is_surface_over_dew_point(t_k: float, rh: float, surface_k: float) -> None:
    spread = humid_air.dew_point_spread_k(t_k, rh, surface_k)
    assert spread + humid_air.dew_point_k(t_k, rh) == pytest.approx(surface_k)


@CHECK
@given(levels, molar, kelvins, pressures)
def test_ppm_round_trip(ppm: float, m: float, t_k: float, p: float) -> None:
    mass = vapour.kg_m3_from_ppm(ppm, m, t_k, p)
    assert vapour.ppm_from_kg_m3(mass, m, t_k, p) == pytest.approx(ppm, rel=1e-12)


@CHECK
@given(st.floats(1.0, 9e4), molar, kelvins)
def test_saturation_is_the_ppm_of_its_pressure(p: float, m: float, t_k: float) -> None:
    ppm = vapour.ppm_from_kg_m3(vapour.saturation_kg_m3(p, m, t_k), m, t_k)
    assert ppm == pytest.approx(1e6 * p / 101325.0, rel=1e-12)


@CHECK
@given(st.lists(st.tuples(st.floats(0.01, 1.0), st.floats(0.005, 0.2)), min_size=1, max_size=6))
def test_mixture_limit_lies_between_and_fits_its_share(rows: list[tuple[float, float]]) -> None:
    fractions, limits = [r[0] for r in rows], [r[1] for r in rows]
    mixed = vapour.lower_limit_le_chatelier(fractions, limits)
    assert min(limits) * (1 - 1e-12) <= mixed <= max(limits) * (1 + 1e-12)
    at_limit_ppm = [1e6 * mixed * f / math.fsum(fractions) for f in fractions]
    assert vapour.share_of_lower_limit(at_limit_ppm, limits) == pytest.approx(1.0)


@CHECK
@given(st.lists(st.tuples(st.floats(0.001, 9.0), st.floats(0.0, 5e4), st.floats(0.1, 9.0)), min_size=1, max_size=6))
def test_partial_pressures_stay_under_the_pure_ones(rows: list[tuple[float, float, float]]) -> None:
    moles, pressures_pa, gammas = ([row[i] for row in rows] for i in range(3))
    parts = vapour.raoult_partial_pressures(moles, pressures_pa, gammas)
    for part, pure, gamma in zip(parts, pressures_pa, gammas, strict=True):
        assert 0.0 <= part <= pure * gamma * (1 + 1e-12)


@CHECK
@given(st.lists(st.tuples(levels, st.floats(1.0, 1e4)), min_size=1, max_size=5), levels, st.floats(1.0, 1e4))
def test_another_substance_never_lowers_the_share(rows: list[tuple[float, float]], more: float, limit: float) -> None:
    found, limits = [r[0] for r in rows], [r[1] for r in rows]
    assert vapour.additive_share([*found, more], [*limits, limit]) >= vapour.additive_share(found, limits)


@CHECK
@given(st.floats(100.0, 5e4), molar, st.floats(0.02, 0.5), st.floats(0.2, 3.0))
def test_evaporation_rises_with_pressure_and_air(p: float, m: float, v: float, d: float) -> None:
    base = evaporation.evaporation_penetration_kg_m2_s(m, p, 298.15, v, d)
    assert evaporation.evaporation_penetration_kg_m2_s(m, 1.1 * p, 298.15, v, d) > base > 0.0
    assert evaporation.evaporation_penetration_kg_m2_s(m, p, 298.15, 1.1 * v, d) > base
    assert evaporation.evaporation_mackay_kg_m2_s(1.1 * p, m) > evaporation.evaporation_mackay_kg_m2_s(p, m)
    slow_s = evaporation.slow_release_t90_chinn_s(p)
    assert evaporation.slow_release_t90_chinn_s(1.1 * p) < slow_s
    k = evaporation.first_order_rate_from_t90_per_s(slow_s)
    assert math.exp(-k * slow_s) == pytest.approx(0.1)


known = st.one_of(st.none(), st.floats(0.0, 1.0))


@CHECK
@given(st.floats(1e-4, 0.01), st.floats(700.0, 1800.0), known, st.one_of(st.none(), st.floats(0.0, 900.0)), known)
def test_the_largest_known_mass_is_used(
    volume: float, density: float, solids: float | None, voc_kg_m3: float | None, share: float | None
) -> None:
    mass = voc.volatile_mass_candidates_kg(volume, density, solids, voc_kg_m3, share)
    told = [m for m in (mass.by_voc, mass.by_solids, mass.by_composition) if m is not None]
    assert len(told) == sum(value is not None for value in (solids, voc_kg_m3, share))
    assert mass.used == (max(told) if told else None)
    assert (mass.spread is None) is (len(told) < 2)
    assert mass.spread is None or mass.spread >= 0.0


def test_unknown_mass_is_not_zero() -> None:
    mass = voc.volatile_mass_candidates_kg(0.001, None, 0.4, None, 0.6)
    assert (mass.used, mass.spread) == (None, None)
    exempt = voc.volatile_mass_candidates_kg(0.001, 1000.0, 0.4, 100.0, None)
    assert exempt.used == pytest.approx(0.6)
    assert exempt.spread == pytest.approx(5.0)
    assert voc.volatile_mass_candidates_kg(0.001, 1000.0, 0.4, 0.0, None).spread == math.inf
    assert voc.volatile_mass_candidates_kg(0.001, 1000.0, 1.0, 0.0, None).spread == 0.0


@pytest.mark.parametrize(
    "call",
    [
        lambda: humid_air.dew_point_k(293.15, 0.0),
        lambda: humid_air.dew_point_k(293.15, 1.01),
        lambda: humid_air.dew_point_k(math.nan, 0.5),
        lambda: humid_air.humidity_ratio(380.0, 1.0, 101325.0),
        lambda: humid_air.humidity_ratio_from_wet_bulb(293.15, 294.15, 101325.0),
        lambda: humid_air.humidity_ratio_from_wet_bulb(313.15, 280.15, 101325.0),
        lambda: humid_air.standard_pressure_pa(50e3),
        lambda: vapour.ppm_from_kg_m3(-1.0, 0.1),
        lambda: vapour.ppm_from_kg_m3(1.0, 0.0),
        lambda: vapour.additive_share([1.0], [0.0]),
        lambda: vapour.additive_share([], []),
        lambda: vapour.additive_share([1.0, 2.0], [1.0]),
        lambda: vapour.share_of_lower_limit([100.0], [1.4]),
        lambda: vapour.time_weighted_average([1.0], [40000.0], 28800.0),
        lambda: vapour.raoult_partial_pressures([0.0], [100.0], [1.0]),
        lambda: vapour.vapour_pressure_antoine_pa(8.0, 1730.0, 233.0, 30.0),
        lambda: voc.voc_regulatory_kg_m3(0.1, 0.08, 0.03, 0.001, 0.0, 0.0),
        lambda: voc.volatile_mass_candidates_kg(0.001, 1000.0, 1.2, None, None),
        lambda: evaporation.slow_release_t90_chinn_s(0.0),
    ],
)
def test_what_cannot_be_is_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(ValueError, match=r"must|longer"):
        call()
