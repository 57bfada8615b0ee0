"""Published examples that need more than one call: purge table, two zones, mixtures, dilution, affinity."""

import math
import tomllib
from pathlib import Path

import numpy as np
import pytest

from bathwright.physics import cure, dilution, evaporation, vapour, zones
from bathwright.physics.exposure import highest_mean

HERE = Path(__file__).parent
PURGE = tomllib.loads((HERE / "dilution.toml").read_text(encoding="utf-8"))["purge"]
CURE = tomllib.loads((HERE / "cure.toml").read_text(encoding="utf-8"))
FT3_M3 = 0.3048**3
PINT_M3 = 231 * 0.0254**3 / 8
WATER_KG_M3 = 998.0
T_70F_K = (70 + 459.67) * 5 / 9


@pytest.mark.parametrize(
    ("per_hour", "removal", "minutes"),
    [(row[0], share, row[1 + i]) for row in PURGE for i, share in enumerate((0.9, 0.99, 0.999))],
)
def test_purge_table(per_hour: int, removal: float, minutes: int) -> None:
    """cdc-mmwr-1994-rr13, Table S3-1, all 78 cells, ± 0.5 min [verified]."""
    assert dilution.purge_time_s(1.0, 1.0 - removal, per_hour / 3600) / 60 == pytest.approx(minutes, abs=0.5)


B2Z = [  # minutes, near, far in mg/m³
    (0.04, 73.6404, 3.3909),
    (0.1, 77.9702, 7.7107),
    (0.2, 83.3872, 13.1154),
    (0.5, 91.6014, 21.3109),
    (1.0, 95.0916, 24.7931),
    (2.0, 95.7530, 25.4530),
]
BETA_M3_S, Q_M3_S, G_KG_S = 5 / 60, 13.8 / 60, 351.5e-6 / 60
V_NEAR_M3, V_FAR_M3 = math.pi * 1e-3, 3.8


@pytest.mark.parametrize(("minutes", "near", "far"), B2Z)
def test_two_zones_closed_form(minutes: float, near: float, far: float) -> None:
    """b2z-1-4, data set ex1: formula and parameters [verified], values [own]; 0.1 %."""
    found = zones.near_far_field(minutes * 60, G_KG_S, BETA_M3_S, Q_M3_S, V_NEAR_M3, V_FAR_M3)
    assert [c * 1e6 for c in found] == pytest.approx([near, far], rel=1e-4)


@pytest.mark.parametrize(("minutes", "near", "far"), B2Z)
def test_two_zones_propagated(minutes: float, near: float, far: float) -> None:
    """The same published case through the general propagator."""
    matrix = np.array(
        [
            [-BETA_M3_S / V_NEAR_M3, BETA_M3_S / V_NEAR_M3],
            [BETA_M3_S / V_FAR_M3, -(BETA_M3_S + Q_M3_S) / V_FAR_M3],
        ]
    )
    end, _ = zones.propagate(matrix, np.array([G_KG_S / V_NEAR_M3, 0.0]), np.zeros(2), minutes * 60)
    assert list(end * 1e6) == pytest.approx([near, far], rel=1e-4)


def test_two_zones_steady() -> None:
    """b2z-1-4, steady 95.7710 and 25.4710 mg/m³ [own]; the transient ends there."""
    steady = zones.near_far_steady(G_KG_S, BETA_M3_S, Q_M3_S)
    assert [c * 1e6 for c in steady] == pytest.approx([95.7710, 25.4710], rel=1e-5)
    late = zones.near_far_field(3600, G_KG_S, BETA_M3_S, Q_M3_S, V_NEAR_M3, V_FAR_M3)
    assert late == pytest.approx(steady, rel=1e-12)


def test_hemisphere() -> None:
    """nicas-1996: r 0.5 m, 0.06 m/s: 0.262 m³ and 2.83 m³/min; r 1 m: 2.094 m³ [memory, evaluated own]."""
    volume, beta = zones.near_field_hemisphere(0.5, 0.06)
    assert (volume, beta * 60) == (pytest.approx(0.262, abs=5e-4), pytest.approx(2.83, abs=5e-3))
    assert zones.near_field_hemisphere(1.0, 0.06)[0] == pytest.approx(2.094, abs=5e-4)


def test_raoult_aerospace() -> None:
    """epa-aerospace-ctg: composite partial pressure 9.8 mmHg at 20 °C, printed [verified]; 1 %."""
    grams = (80.5, 160.2, 79.2, 500.0, 79.2)  # MEK, MIBK type, methanol, water, exempt acetone
    molar = (72.1, 100.2, 32.0, 18.0, 58.1)
    mmhg = (70.6, 14.4, 95.5, 0.0, 0.0)  # the method counts only the regulated solvents
    moles = [g / m for g, m in zip(grams, molar, strict=True)]
    parts = vapour.raoult_partial_pressures(moles, [p * 101325 / 760 for p in mmhg], [1.0] * 5)
    assert sum(parts) * 760 / 101325 == pytest.approx(9.8, rel=0.01)


def dilution_cfm(pints_per_min: float, gravity: float, molar_kg: float, limit_ppm: float, k: float) -> float:
    generation = pints_per_min / 60 * PINT_M3 * gravity * WATER_KG_M3
    limit = vapour.kg_m3_from_ppm(limit_ppm, molar_kg, T_70F_K)
    return dilution.dilution_flow_m3_s(generation, limit, k) * 60 / FT3_M3


@pytest.mark.parametrize(
    ("pints", "gravity", "molar_kg", "limit_ppm", "k", "cfm"),
    [
        (1.5 / 60, 1.32, 0.1334, 350, 1, 285),
        (1.5 / 60, 1.32, 0.1334, 350, 5, 1425),
        (2 / 60, 0.805, 0.0721, 200, 4, 3000),
        (2 / 60, 0.866, 0.09213, 100, 5, 6313),
        # explosion dilution: 10 times under an LEL of 1.0 %, times 0.7 for the heat
        (2 / 60, 0.88, 0.106, 1e4 / 10 * 0.7, 1, 159),
    ],
)
def test_dilution_ventilation(
    pints: float, gravity: float, molar_kg: float, limit_ppm: float, k: float, cfm: float
) -> None:
    """acgih-industrial-ventilation, dilution chapter [memory]: tests the arithmetic; 0.5 %."""
    assert dilution_cfm(pints, gravity, molar_kg, limit_ppm, k) == pytest.approx(cfm, rel=0.005)


def test_dilution_constant_403() -> None:
    """kumar-ventilation-formulae: 403·10⁶·SG·ER·K/(MW·C) [verified]; it belongs to 70 °F [own]."""
    assert dilution_cfm(1.0, 1.0, 0.1, 100.0, 1.0) == pytest.approx(403e6 / (100 * 100), rel=0.002)


def test_oven_air_at_350_f() -> None:
    """acgih-industrial-ventilation: 159 → 243 cfm at 350 °F [memory]; 0.5 %."""
    hot = vapour.molar_volume_m3_mol((350 + 459.67) * 5 / 9) / vapour.molar_volume_m3_mol(T_70F_K)
    assert dilution_cfm(2 / 60, 0.88, 0.106, 700, 1) * hot == pytest.approx(243, rel=0.005)


@pytest.mark.parametrize("reference", [20, 23])
def test_affinity_table(reference: int) -> None:
    """astm-c1074, γ with Q = 5000 K: formula [verified], Q [memory], numbers [own]; last digit."""
    energy = CURE["gamma_q_k"] * 8.314462618
    found = [cure.rate_factor_arrhenius(t + 273.15, reference + 273.15, energy) for t in CURE["gamma_celsius"]]
    assert found == pytest.approx(CURE[f"gamma_{reference}"], abs=6e-5)


@pytest.mark.parametrize(("kj_mol", "to_25", "to_35"), CURE["ratios"])
def test_rate_ratios(kj_mol: float, to_25: float, to_35: float) -> None:
    """Rate ratios 15 → 25 and 25 → 35 °C [own]; last digit."""
    found = [cure.rate_factor_arrhenius(t + 10, t, kj_mol * 1e3) for t in (288.15, 298.15)]
    assert found == pytest.approx([to_25, to_35], abs=6e-4)


@pytest.mark.parametrize(
    ("pressure_pa", "molar_kg"),
    [(3799.7, 0.09214), (12057.7, 0.07211), (30797.0, 0.05808), (57350.0, 0.08493), (1621.0, 0.11616)],
)
def test_evaporation_siblings(pressure_pa: float, molar_kg: float) -> None:
    """Two independent correlations agree within 0-17 % at 20 ft/min, 1 m² round, 25 °C (stated [own])."""
    mackay = evaporation.evaporation_mackay_kg_m2_s(pressure_pa, molar_kg)
    penetration = evaporation.evaporation_penetration_kg_m2_s(molar_kg, pressure_pa, 298.15, 0.1016, 1.12838)
    assert penetration / mackay == pytest.approx(1.085, abs=0.09)


TWO_ROOMS = [  # exchange m³/h, changes per h, bath peak / 10 min / 1 h / 8 h, rest of house the same, ppm
    (35.0, 0.45, (2769.5, 2700.2, 1638.1, 247.1), (90.2, 90.1, 85.0, 33.3)),
    (107.0, 0.18, (1390.6, 1314.8, 679.6, 147.1), (119.6, 119.5, 115.8, 71.1)),
]


@pytest.mark.parametrize(("exchange", "changes", "bath", "house"), TWO_ROOMS)
def test_two_rooms_with_brushed_source(
    exchange: float, changes: float, bath: tuple[float, ...], house: tuple[float, ...]
) -> None:
    """A second implementation's numbers [own, separately computed]: 236 g over 20 min, k 0.0873/min; 0.2 %."""
    v_bath, v_house, q, k, brushed_s = 9.0, 483.0, exchange / 3600, 0.0873 / 60, 1200.0
    leak = changes / 3600
    matrix = np.array(  # film kg, bath kg/m³, house kg/m³
        [
            [-k, 0.0, 0.0],
            [k / v_bath, -q / v_bath - leak, q / v_bath],
            [0.0, q / v_house, -q / v_house - leak],
        ]
    )
    step_s = 20.0
    brushing = zones.transition(matrix, np.array([0.236 / brushed_s, 0.0, 0.0]), step_s)
    drying = zones.transition(matrix, np.zeros(3), step_s)
    state, means, ends = np.zeros(3), [], []
    for i in range(round(86400 / step_s)):
        state, mean = zones.advance(brushing if i * step_s < brushed_s else drying, state)
        means.append(mean)
        ends.append(state)
    edges = np.arange(len(means) + 1) * step_s
    for zone, published in ((1, bath), (2, house)):
        course = np.array([mean[zone] for mean in means])
        found = [max(end[zone] for end in ends)]
        found += [highest_mean(edges, course, window)[0] for window in (600.0, 3600.0, 28800.0)]
        assert [vapour.ppm_from_kg_m3(c, 0.08493) for c in found] == pytest.approx(published, rel=0.002)
