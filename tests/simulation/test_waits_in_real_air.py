"""When a wait ends in the air of the room: never before the paper, later in the cold, never below the floor."""

import math
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from bathwright.domain.steps import Demand
from bathwright.physics import humid_air
from bathwright.simulation.climate import Weather
from bathwright.simulation.cure_time import wait_ends

BEGIN = datetime(2026, 12, 8, 20, 37, tzinfo=UTC)
HOUR = 3600.0
GAS = 8.31446261815324


def weather(low: float = 294.15, high: float | None = None, **changed: Any) -> Weather:
    usual: dict[str, Any] = {
        "kind": "typed_day", "low_k": low, "high_k": low if high is None else high, "humidity": 0.5,
        "surface_offset_k": 0.0, "told": True, "surface_told": True, "zone": "America/Chicago",
    }  # fmt: skip
    return Weather(**{**usual, **changed})


def wait(hours: float = 24.0, law: Any = "cures", **changed: Any) -> Demand:
    usual: dict[str, Any] = {
        "id": "w", "step": "b", "kind": "wait", "strength": "maker", "after": "a", "least_s": hours * HOUR, "law": law,
        "reference_k": 294.15, "age_s": hours * HOUR, "activation_energy_j_mol": 55000.0, "floor_k": None,
    }  # fmt: skip
    return Demand(**{**usual, **changed})


def taken_s(demand: Demand, air: Weather, colder_k: float = 0.0) -> float | None:
    end = wait_ends(demand, BEGIN, air, colder_k)
    return None if end is None else (end - BEGIN).total_seconds()


kelvin = st.floats(280.0, 300.0)
hours = st.floats(0.5, 120.0)


def test_a_fixed_wait_is_elapsed_time_whatever_the_air() -> None:
    assert taken_s(wait(law="fixed"), weather(270.0)) == 24 * HOUR
    # over the change of clocks in New York a day has 23 hours on the wall, 24 in the wait
    end = wait_ends(wait(law="fixed"), datetime(2026, 3, 7, 17, tzinfo=UTC), weather(zone="America/New_York"))
    assert end == datetime(2026, 3, 8, 17, tzinfo=UTC)


def test_at_the_printed_temperature_the_wait_is_as_printed() -> None:
    assert taken_s(wait(), weather()) == pytest.approx(24 * HOUR, abs=0.01)


def test_published_ratios_of_rate() -> None:
    """Rate ratios from 15 to 25 °C and 25 to 35 °C by activation energy: own computation, own."""
    for energy, ratio in ((50e3, 2.014), (55e3, 2.160), (60e3, 2.316)):
        cold = taken_s(wait(10, reference_k=298.15, activation_energy_j_mol=energy), weather(288.15))
        assert cold == pytest.approx(ratio * 10 * HOUR, rel=5e-4)


def test_the_equivalent_age_over_a_day_is_that_of_adaptive_quadrature() -> None:
    """The integral that astm-c1074 describes, with scipy and the cosine of the typed day written out anew."""
    demand, air = wait(40.0, reference_k=296.15), weather(286.0, 295.0, surface_offset_k=1.0)

    def rate(t: float) -> float:
        local = (BEGIN + timedelta(seconds=t)).timestamp() / 3600 - 6.0  # Chicago in winter
        kelvin = 290.5 - 4.5 * math.cos((local % 24 - 5) / 24 * 2 * math.pi) - 1.0
        return math.exp(55000.0 / GAS * (1 / 296.15 - 1 / kelvin))

    def missing(t: float) -> float:
        return quad(rate, 0.0, t, limit=400)[0] - 40.0 * HOUR

    assert taken_s(demand, air) == pytest.approx(brentq(missing, HOUR, 400 * HOUR), rel=2e-4)


@given(hours, kelvin, st.floats(0.0, 8.0), st.sampled_from(["fixed", "cures", "dries", "moisture_cures"]))
def test_no_wait_is_ever_shorter_than_printed(printed: float, low: float, swing: float, law: Any) -> None:
    got = taken_s(wait(printed, law), weather(low, low + swing))
    assert got is None or got >= printed * HOUR - 1e-3


@given(hours, kelvin, st.floats(0.0, 6.0), st.floats(0.1, 6.0))
def test_colder_air_or_a_colder_bath_is_never_earlier(printed: float, low: float, swing: float, less: float) -> None:
    usual = taken_s(wait(printed), weather(low, low + swing))
    for got in (
        taken_s(wait(printed), weather(low - less, low - less + swing)),
        taken_s(wait(printed), weather(low, low + swing, surface_offset_k=less)),
        taken_s(wait(printed), weather(low, low + swing), less),
    ):
        assert got is None or (usual is not None and got >= usual - 1e-3)


@given(hours, st.floats(285.0, 296.0), st.floats(0.0, 4.0))
def test_a_floor_only_makes_it_later_and_below_it_nothing_ever_ends(printed: float, floor: float, above: float) -> None:
    free = taken_s(wait(printed), weather(floor + above - 3, floor + above))
    held = taken_s(wait(printed, floor_k=floor), weather(floor + above - 3, floor + above))
    assert held is None or (free is not None and held >= free - 1e-3)
    assert taken_s(wait(printed, floor_k=floor), weather(floor - 2, floor - 0.1)) is None
    assert taken_s(wait(printed, floor_k=floor), weather(floor)) is not None


def test_only_the_hours_above_the_floor_count() -> None:
    # a day that is above its middle for twelve hours, counted from the middle up and as if at the reference: half a day
    air = weather(284.15, 294.15)
    got = taken_s(wait(24.0, floor_k=289.15, reference_k=289.15), air)
    assert got is not None
    assert got == pytest.approx(48 * HOUR, abs=13 * HOUR)
    assert got > 36 * HOUR


def test_a_table_of_the_sheet_may_move_the_wait_but_not_below_the_row_that_counts() -> None:
    """Printed 45 h at 15 °C and 24 h at 23 °C: in between and below the law, never less than the row that counts."""
    energy = GAS * math.log(45 / 24) / (1 / 288.15 - 1 / 296.15)
    demand = wait(45.0, reference_k=296.15, age_s=24 * HOUR, activation_energy_j_mol=energy)
    assert taken_s(demand, weather(288.15)) == pytest.approx(45 * HOUR, rel=1e-4)
    assert taken_s(demand, weather(292.15)) == 45 * HOUR
    colder = taken_s(demand, weather(286.15))
    assert colder is not None
    assert colder > 45 * HOUR


@given(st.floats(278.0, 300.0), st.floats(0.1, 0.9), st.floats(0.0, 0.1))
def test_a_sealant_waits_longer_where_the_air_holds_less_water(low: float, humidity: float, drier: float) -> None:
    usual = taken_s(wait(24.0, "moisture_cures"), weather(low, humidity=humidity))
    dry = taken_s(wait(24.0, "moisture_cures"), weather(low, humidity=humidity - drier))
    assert usual is not None
    assert dry is not None
    assert dry >= usual >= 24 * HOUR
    at_reference = humid_air.vapour_pressure_pa(296.15, 0.5)
    assert usual == pytest.approx(24 * HOUR * max(1.0, at_reference / humid_air.vapour_pressure_pa(low, humidity)))


def test_a_typed_day_is_coldest_before_dawn_and_warmest_in_the_afternoon() -> None:
    air = weather(289.0, 295.0, surface_offset_k=1.5)
    five, seventeen = datetime(2026, 12, 8, 11, tzinfo=UTC), datetime(2026, 12, 8, 23, tzinfo=UTC)  # 05:00 and 17:00
    assert air.air_k(five) == pytest.approx(289.0)
    assert air.air_k(seventeen) == pytest.approx(295.0)
    assert air.surface_k(seventeen) == pytest.approx(293.5)
    summer = datetime(2026, 7, 8, 10, tzinfo=UTC)  # 05:00 of summer time
    assert air.air_k(summer) == pytest.approx(289.0)


@given(st.integers(0, 47), st.floats(0.2, 60.0), st.sampled_from(["air_temperature", "surface_temperature", "spread"]))
def test_extremes_hold_every_reading_of_the_span(start: int, length: float, reads: str) -> None:
    air = weather(288.0, 296.0, surface_offset_k=1.0)
    begin = BEGIN + timedelta(minutes=30 * start)
    low, high = air.extremes(reads, begin, begin + timedelta(hours=length))
    readings = [air.reading(reads, begin + timedelta(hours=length * n / 60)) for n in range(61)]
    assert low <= min(readings) + 0.05
    assert high >= max(readings) - 0.05
    assert min(readings) - 0.05 <= low <= high <= max(readings) + 0.05


def test_the_spread_is_surface_less_dew_point() -> None:
    air = weather(294.15, humidity=0.6, surface_offset_k=2.0)
    dew = humid_air.dew_point_k(294.15, 0.6)
    assert air.reading("spread", BEGIN) == pytest.approx(292.15 - dew, abs=1e-6)
    assert air.reading("humidity", BEGIN) == 0.6
