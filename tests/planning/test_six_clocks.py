"""The six clocks: never before the paper, in order, the later of coating and sealant, never before the air."""

from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.sheet import Amount, Conditions, Fact, Paper, Sheet
from bathwright.domain.steps import Clock, Step
from bathwright.domain.values import Band
from bathwright.knowledge import load
from bathwright.planning.clocks import NAMES, clocks
from bathwright.simulation.climate import Weather

BOOK = load()
BEGIN = datetime(2026, 12, 9, 14, tzinfo=UTC)
HOUR = timedelta(hours=1)
PRINTED = {"touch": 4.0, "handle": 24.0, "first_water": 72.0, "full_bath": 120.0, "care": 168.0, "hard": 336.0}
SEALING = {"touch": 1.0, "handle": 2.0, "first_water": 24.0, "full_bath": 48.0, "care": 168.0, "hard": 168.0}


def step(name: str, act: str, starts_h: float) -> Step:
    band = Band(low=3600, central=3600, high=3600, kind="time", source="test", mark="own")
    at = BEGIN + starts_h * HOUR
    return Step(id=name, phase="coat", act=act, work_s=band, starts=at, ends=at + HOUR)


STEPS = (
    step("coat-1", "coat", -10), step("coat-2", "coat", -1), step("unmask", "unmask", 5), step("seal", "seal", 48),
)  # fmt: skip
COATED, UNMASKED, SEALED = BEGIN, BEGIN + 6 * HOUR, BEGIN + 49 * HOUR


def sheet(hours: dict[str, float], celsius: float | None = 21.0, starts: Any = "last_coat", **more: Any) -> Sheet:
    at = Conditions(temperature=None if celsius is None else celsius + 273.15)
    facts = tuple(
        Fact(id=name, kind=name, value=Amount(value=hours_ * 3600, kind="time"), at=at, starts_from=starts)
        for name, hours_ in hours.items()
    )
    usual: dict[str, Any] = {
        "format": "bathwright-sheet/1", "id": "made", "product": "Made", "family": "epoxy", "role": "coating",
        "papers": (Paper(id="data", kind="data", revision="1"),), "facts": facts,
    }  # fmt: skip
    return Sheet(**{**usual, **more})


COATING = sheet(PRINTED)
SEALANT = sheet(SEALING, starts="caulked", role="sealant", id="sealant")


def air(celsius: float = 21.0, humidity: float = 0.6, **more: Any) -> Weather:
    usual: dict[str, Any] = {
        "kind": "constant", "low_k": celsius + 273.15, "high_k": celsius + 273.15, "humidity": humidity,
        "surface_offset_k": 0.0, "told": True, "surface_told": True, "zone": "America/Chicago",
    }  # fmt: skip
    return Weather(**{**usual, **more})


def six(coating: Sheet = COATING, sealant: Sheet | None = None, weather: Weather | None = None,
        back: datetime | None = None) -> dict[str, Clock]:  # fmt: skip
    return {clock.name: clock for clock in clocks(coating, sealant, STEPS, weather or air(30.0), back, BOOK)}


def test_there_are_six_of_them_in_order_and_each_runs_from_the_last_coat() -> None:
    found = six()
    assert tuple(found) == NAMES
    assert {clock.runs_from for clock in found.values()} == {"coat-2"}
    assert [(clock.at - COATED) / HOUR for clock in found.values() if clock.at] == pytest.approx(list(PRINTED.values()))
    assert {clock.why for clock in found.values()} == {"printed"}
    assert all(clock.facts == (f"made/{clock.name}",) for clock in found.values())


def test_a_time_from_the_unmasking_runs_from_it() -> None:
    found = six(sheet(PRINTED, starts="demasked"))
    assert found["handle"].at == UNMASKED + 24 * HOUR
    assert found["handle"].runs_from == "unmask"


def test_in_the_cold_they_are_later_and_say_so() -> None:
    cold = six(weather=air(15.0))
    assert {clock.why for clock in cold.values()} == {"cold"}
    for name, clock in cold.items():
        assert clock.used_s is not None
        assert clock.computed_s is not None
        assert clock.used_s == clock.computed_s.high > PRINTED[name] * 3600
        assert clock.printed_s == PRINTED[name] * 3600


def test_below_the_lowest_temperature_of_the_sheet_nothing_hardens() -> None:
    from bathwright.domain.sheet import Range

    lowest = Fact(id="air", kind="air_temperature", value=Range(low=288.15, high=303.15, kind="temperature"))
    held = sheet(PRINTED, facts=(*COATING.facts, lowest))
    found = six(held, weather=air(14.0))
    assert {(clock.why, clock.at, clock.used_s) for clock in found.values()} == {("never_cures", None, None)}
    assert all(clock.at for clock in six(held, weather=air(17.0)).values())
    # just at the limit the bath may be colder than the model says: nobody may count on it
    assert {clock.at for clock in six(held, weather=air(15.1)).values()} == {None}


def test_the_later_of_coating_and_sealant_counts_for_water_only() -> None:
    soon = sheet({**PRINTED, "first_water": 30.0, "full_bath": 40.0})
    found = six(soon, SEALANT)
    assert (found["first_water"].at, found["first_water"].why) == (SEALED + 24 * HOUR, "sealant")
    assert found["first_water"].runs_from == "seal"
    assert found["full_bath"].at == SEALED + 48 * HOUR
    assert found["handle"].at == COATED + 24 * HOUR
    assert six(COATING, SEALANT)["full_bath"].at == COATED + 120 * HOUR


def test_a_sealant_that_does_not_say_from_when_runs_from_the_sealing() -> None:
    soon = sheet({**PRINTED, "first_water": 30.0})
    assert six(soon, sheet(SEALING, starts=None, role="sealant"))["first_water"].at == SEALED + 24 * HOUR


def test_a_sealant_waits_for_water_from_the_air() -> None:
    soon = sheet({**PRINTED, "first_water": 30.0, "full_bath": 40.0})
    dry, damp = (six(soon, SEALANT, air(21.0, humidity))["first_water"] for humidity in (0.15, 0.9))
    assert dry.at is not None
    assert damp.at is not None
    assert dry.at > damp.at == SEALED + 24 * HOUR


def test_nobody_bathes_before_the_air_is_back() -> None:
    back = COATED + 130 * HOUR + timedelta(seconds=20)
    found = six(back=back)
    whole = COATED + 130 * HOUR + timedelta(minutes=1)
    assert (found["first_water"].at, found["first_water"].why) == (whole, "air")
    assert (found["full_bath"].at, found["full_bath"].why) == (whole, "air")
    assert found["touch"].at == COATED + 4 * HOUR
    assert found["care"].at == COATED + 168 * HOUR
    assert found["first_water"].used_s == pytest.approx(130 * 3600 + 20)


def test_what_the_sheet_does_not_say_is_not_known() -> None:
    found = six(sheet({"touch": 4.0, "hard": 336.0}), SEALANT)
    for name in ("handle", "first_water", "full_bath", "care"):
        assert (found[name].at, found[name].used_s, found[name].why) == (None, None, "sheet_silent")
    assert found["hard"].at == COATED + 336 * HOUR


def test_a_paper_that_prints_them_out_of_order_is_put_in_order() -> None:
    found = six(sheet({**PRINTED, "full_bath": 48.0}))
    assert found["full_bath"].at == found["first_water"].at == COATED + 72 * HOUR


@st.composite
def papers(draw: st.DrawFn) -> tuple[Sheet, Sheet | None, dict[str, float]]:
    hours = {name: draw(st.floats(0.5, 400.0)) for name in NAMES if draw(st.integers(0, 5))}
    sealing = {name: draw(st.floats(0.5, 200.0)) for name in NAMES if draw(st.integers(0, 5))}
    sealant = sheet(sealing, starts="caulked", role="sealant") if draw(st.booleans()) else None
    return sheet(hours, draw(st.sampled_from([None, 15.0, 21.0, 25.0]))), sealant, hours


@given(papers(), st.floats(5.0, 30.0), st.floats(0.0, 6.0), st.none() | st.floats(0.0, 400.0))
def test_they_are_in_order_and_never_before_paper_sealant_or_air(
    told: tuple[Sheet, Sheet | None, dict[str, float]], celsius: float, colder: float, back_h: float | None
) -> None:
    coating, sealant, hours = told
    back = None if back_h is None else COATED + back_h * HOUR
    here = six(coating, sealant, air(celsius), back)
    there = six(coating, sealant, air(celsius - colder), back)
    at = [clock.at for clock in here.values() if clock.at]
    assert at == sorted(at)
    for name, clock in here.items():
        if clock.at is None:
            assert there[name].at is None
            continue
        assert clock.at >= COATED + hours[name] * HOUR
        assert clock.at.second == clock.at.microsecond == 0
        assert clock.used_s is not None
        later = there[name].at
        assert later is None or later >= clock.at
        if back and name in ("first_water", "full_bath", "care"):
            assert clock.at >= back
