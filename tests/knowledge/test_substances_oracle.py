"""Substance values against the open `chemicals` data, where those are measured ones (see docs/decisions)."""

import pytest
from chemicals import MW
from chemicals.safety import LFL, LFL_methods
from chemicals.vapor_pressure import Psat_data_VDI_PPDS_3

from bathwright.knowledge import load

SUBSTANCES = load().substances
COMMON = [
    "67-64-1",
    "78-93-3",
    "108-10-1",
    "141-78-6",
    "123-86-4",
    "100-41-4",
    "108-88-3",
    "67-63-0",
    "64-17-5",
    "75-09-2",
]


@pytest.mark.parametrize("cas", COMMON)
def test_molar_mass(cas: str) -> None:
    assert SUBSTANCES[cas].molar_mass.value * 1000 == pytest.approx(MW(cas), rel=1e-3)


@pytest.mark.parametrize("cas", [cas for cas in COMMON if cas in Psat_data_VDI_PPDS_3.index])
def test_vapour_pressure_within_the_spread_of_sources(cas: str) -> None:
    """1 to 3 % between sources is what the EPA mixture example shows; 8 % leaves room for a fit at one end."""
    from math import exp

    a, b, c, d, tc, pc, *_ = Psat_data_VDI_PPDS_3.loc[cas, ["A", "B", "C", "D", "Tc", "Pc"]]
    tau = 1 - 298.15 / tc
    ours = SUBSTANCES[cas].vapour_pressure
    assert ours is not None
    wagner = pc * exp((a * tau + b * tau**1.5 + c * tau**2.5 + d * tau**5) / (1 - tau))
    assert ours.value == pytest.approx(wagner, rel=0.08)


def test_most_common_solvents_have_an_independent_vapour_pressure() -> None:
    assert sum(cas in Psat_data_VDI_PPDS_3.index for cas in COMMON) >= 8


@pytest.mark.parametrize("cas", [cas for cas in COMMON if cas != "75-09-2"])  # no NFPA or IEC row for it
def test_lower_limit_is_never_above_the_published_ones(cas: str) -> None:
    published = [
        LFL(CASRN=cas, method=method) for method in LFL_methods(CASRN=cas) if "NFPA" in method or "IEC" in method
    ]
    ours = SUBSTANCES[cas].lower_limit
    assert ours is not None and published
    assert ours.value <= min(published) + 1e-9
    assert ours.value >= 0.5 * min(published)
