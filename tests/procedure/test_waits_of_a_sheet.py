"""Waits, laws of cure and pot life from one row, two rows, ranges, silence and contradiction of a sheet."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from made_sheets import HOUR, amount, sheet, span

from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Demand
from bathwright.knowledge import load
from bathwright.procedure.waits import cure_law, pot_life_s, wait

BOOK = load()
GAS = 8.31446261815324
TABLE = (amount("handle", 24 * HOUR, 23), amount("handle", 45 * HOUR, 15))


def asked(made: Sheet, kind: str, celsius: float, **more: Any) -> Demand | None:
    return wait(made, kind, step="b", after="a", knowledge=BOOK, temperature_k=celsius + 273.15, **more)


def test_a_silent_sheet_asks_for_nothing() -> None:
    assert asked(sheet(), "handle", 20) is None
    assert pot_life_s(sheet(), 293.15, BOOK) is None


def test_two_printed_temperatures_give_the_law() -> None:
    law = cure_law(sheet(*TABLE), "handle", BOOK)
    energy = GAS * math.log(45 / 24) / (1 / 288.15 - 1 / 296.15)
    assert law.from_table
    assert not law.contradicts
    assert law.activation_energy_j_mol == pytest.approx(energy)
    assert law.reference_k == pytest.approx(296.15)


@pytest.mark.parametrize(("celsius", "hours"), [(10, 45), (15, 45), (18, 45), (23, 24), (28, 24)])
def test_the_row_at_or_below_the_temperature_is_the_printed_wait(celsius: float, hours: float) -> None:
    got = asked(sheet(*TABLE), "handle", celsius)
    assert got is not None
    assert got.least_s == got.printed_least_s == hours * HOUR
    assert got.age_s == 24 * HOUR
    assert (got.law, got.after, got.step) == ("cures", "a", "b")


def test_one_printed_time_follows_the_chemistry_and_its_usual_temperature() -> None:
    plain = cure_law(sheet(amount("handle", HOUR), family="epoxy_acrylic"), "handle", BOOK)
    watery = cure_law(sheet(amount("handle", HOUR, 25), family="waterborne_epoxy"), "handle", BOOK)
    urethane = cure_law(sheet(amount("handle", HOUR), chemistries=("isocyanate-hardener",)), "handle", BOOK)
    energies = "coating_defaults.activation_energy."
    assert plain.activation_energy_j_mol == BOOK.band(f"{energies}epoxy_amine").central
    assert watery.activation_energy_j_mol == BOOK.band(f"{energies}waterborne_epoxy").central
    assert urethane.activation_energy_j_mol == BOOK.band(f"{energies}urethane").central
    assert (plain.reference_k, watery.reference_k) == (pytest.approx(294.15), pytest.approx(298.15))
    assert not plain.from_table


def test_a_table_in_which_warm_is_slower_is_not_believed() -> None:
    law = cure_law(sheet(amount("handle", 30 * HOUR, 23), amount("handle", 20 * HOUR, 15)), "handle", BOOK)
    assert law.contradicts
    assert law.activation_energy_j_mol == BOOK.band("coating_defaults.activation_energy.epoxy_amine").central


def test_the_floor_is_the_highest_of_the_lowest_temperatures() -> None:
    warm = sheet(span("air_temperature", 285.15, 303.15), span("surface_temperature", 288.15, 303.15), *TABLE)
    assert cure_law(warm, "handle", BOOK).floor_k == pytest.approx(288.15)
    assert cure_law(sheet(*TABLE), "handle", BOOK).floor_k is None
    assert cure_law(sheet(span("air_temperature", None, 303.15)), "handle", BOOK).floor_k is None


RECOAT = (span("recoat", 8 * HOUR, 72 * HOUR, 23), span("recoat", 15 * HOUR, 132 * HOUR, 15, on_miss="abrade"))


@pytest.mark.parametrize(
    ("celsius", "least", "most"), [(12, 15, 72), (15, 15, 72), (18, 15, 72), (23, 8, 72), (27, 8, 72)]
)
def test_a_window_takes_the_longer_least_and_the_shorter_most(celsius: float, least: float, most: float) -> None:
    """In between the rows the colder one says when the earliest, the warmer one when the latest."""
    got = asked(sheet(*RECOAT), "recoat", celsius)
    assert got is not None
    assert (got.least_s, got.most_s) == (least * HOUR, most * HOUR)
    assert got.printed_most_s == got.most_s


def test_a_window_keeps_what_to_do_when_it_is_missed_and_its_fact() -> None:
    got = asked(sheet(*RECOAT), "recoat", 15)
    assert got is not None
    assert (got.on_miss, got.because) == ("abrade", ("made/recoat-15",))


def test_two_papers_that_differ_the_longer_least_and_the_shorter_most_count() -> None:
    said = (span("recoat", 4 * HOUR, 24 * HOUR, id="one"), span("recoat", 6 * HOUR, 48 * HOUR, id="two"))
    got = asked(sheet(*said), "recoat", 20)
    assert got is not None
    assert (got.least_s, got.most_s) == (6 * HOUR, 24 * HOUR)


rows = st.tuples(st.floats(5, 20), st.floats(0.5, 15), st.floats(600, 400000), st.floats(1.0, 4.0))


@given(rows, st.floats(-5, 40), st.floats(0, 15))
def test_a_printed_least_wait_is_never_shorter_where_it_is_colder(
    table: tuple[float, float, float, float], celsius: float, colder: float
) -> None:
    cold, apart, warm_s, factor = table
    made = sheet(amount("handle", warm_s, cold + apart), amount("handle", warm_s * factor, cold))
    here, there = asked(made, "handle", celsius), asked(made, "handle", celsius - colder)
    assert here is not None
    assert there is not None
    assert (there.least_s or 0) >= (here.least_s or 0)


POT = (amount("pot_life", 90 * 60, 23), amount("pot_life", 165 * 60, 15))


@pytest.mark.parametrize(("celsius", "printed_min"), [(10, 165), (15, 165), (18, 90), (23, 90), (30, 90)])
def test_pot_life_takes_the_row_at_or_above_the_temperature(celsius: float, printed_min: float) -> None:
    got = pot_life_s(sheet(*POT), celsius + 273.15, BOOK)
    assert got is not None
    used, printed, fact = got
    assert printed == printed_min * 60
    assert used <= printed
    assert (used < printed) == (celsius > 23)
    assert fact.startswith("made/pot_life-")


def test_pot_life_halves_in_about_ten_kelvin() -> None:
    """The trade's rule: 10 °C (18 °F) halve pot life, which is 51 kJ/mol from 20 to 30 °C (own computation, own)."""
    made = sheet(amount("pot_life", 3600.0, 20), family="epoxy_acrylic")
    warm = pot_life_s(made, 303.15, BOOK)
    assert warm is not None
    assert warm[0] == pytest.approx(1800, rel=0.08)


@given(rows, st.floats(-5, 45), st.floats(0, 15))
def test_pot_life_is_never_longer_than_printed_nor_longer_where_it_is_warmer(
    table: tuple[float, float, float, float], celsius: float, warmer: float
) -> None:
    cold, apart, warm_s, factor = table
    made = sheet(amount("pot_life", warm_s, cold + apart), amount("pot_life", warm_s * factor, cold))
    here, there = (pot_life_s(made, t + 273.15, BOOK) for t in (celsius, celsius + warmer))
    assert here is not None
    assert there is not None
    assert here[0] <= here[1]
    assert there[0] <= here[0] * (1 + 1e-9)
