"""What was used before, the air as told or at its worse, windows of the climate, the first start."""

import dataclasses
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.steps import Demand, Step, SurfaceState, Use
from bathwright.domain.survey import Air, Calendar, Climate, Fixture, Observation, ProductUse, Survey
from bathwright.domain.values import Band
from bathwright.door.survey import read_survey
from bathwright.planning.history import chain, first_acid_after_s
from bathwright.planning.timing import earliest_start, next_open
from bathwright.planning.weather import weather_of
from bathwright.procedure.job import Beside
from bathwright.simulation.climate import Weather

DEMO = read_survey(Path(__file__).parents[2] / "examples" / "surveys" / "demo.toml")
BATH = DEMO.fixtures[0]
CHICAGO = ZoneInfo("America/Chicago")
NOON = datetime(2026, 12, 5, 18, tzinfo=UTC)
DAY = 86400.0


def used(*chemistries: Any, **told: Any) -> tuple[ProductUse, ...]:
    return tuple(ProductUse(chemistry=chemistry, **told) for chemistry in chemistries)


def with_history(past: tuple[ProductUse, ...] | None) -> Fixture:
    return dataclasses.replace(BATH, used_lately=past)


def beside(**told: Any) -> Beside:
    nothing = dict.fromkeys(("cleaner", "descaler", "bleach", "filler", "wipe", "sealant"))
    return Beside(**{**nothing, "dropped": (), **told})


ACID: dict[str, Any] = {"descaler": object()}


@pytest.mark.parametrize(
    ("past", "other", "seconds"),
    [
        (None, ACID, DAY),  # not told is an unknown cleaner
        (None, {"bleach": object()}, DAY),
        (None, {}, 0.0),
        ((), ACID, None),  # told none
        (used("dish-detergent", "water"), ACID, None),
        (used("bleach"), ACID, DAY),
        (used("dish-detergent", "unknown-cleaner"), {}, 0.0),
    ],
)
def test_a_day_between_what_was_used_and_acid_or_bleach(past: Any, other: dict[str, Any], seconds: Any) -> None:
    assert first_acid_after_s(with_history(past), beside(**other)) == seconds


def step(name: str, act: str, starts_h: float, *chemistry: Any, leaves: SurfaceState | None = None) -> Step:
    band = Band(low=3600, central=3600, high=3600, kind="time", source="test", mark="own")
    at = NOON + timedelta(hours=starts_h)
    uses = (Use(sheet="s", chemistry=chemistry),) if chemistry else ()
    return Step(
        id=name, phase="clean", act=act, work_s=band, uses=uses, leaves=leaves, starts=at, ends=at + timedelta(hours=1)
    )


FLUSH = SurfaceState(rinses=3, ph_checked=True)


def test_hours_since_are_counted_from_the_wall_clock_of_the_home() -> None:
    past = with_history(used("bleach", at=datetime(2026, 12, 4, 12), rinses=2, ph_checked=False))  # noqa: DTZ001
    steps = (step("flush", "flush_and_check", 0, leaves=FLUSH), step("descale", "descale", 4, "descaler"))
    links = chain(past, steps, CHICAGO)
    assert [(link.chemistries, link.on, link.step) for link in links] == [
        (("bleach",), "surface", None), (("descaler",), "surface", "descale"), (("descaler",), "drain", "descale"),
    ]  # fmt: skip
    assert links[1].hours_since == pytest.approx(28.0)
    assert (links[1].rinses_since, links[1].ph_checked) == (5, True)


def test_without_a_date_only_the_flush_dates_what_was_before() -> None:
    steps = (step("flush", "flush_and_check", 0, leaves=FLUSH), step("descale", "descale", 25, "descaler"))
    dated, undated = (chain(with_history(used("bleach")), s, CHICAGO)[-1] for s in (steps, steps[1:]))
    assert dated.hours_since == pytest.approx(24.0)
    assert undated.hours_since is None
    assert undated.rinses_since == 0
    assert not undated.ph_checked


def test_each_product_of_the_steps_starts_the_count_anew() -> None:
    steps = (
        step("wash", "wash_detergent", 0, "dish-detergent"),
        step("rinse", "rinse", 1, leaves=SurfaceState(rinses=2)),
        step("dry", "dry_bath", 2, leaves=SurfaceState(dry=True)),
        step("wipe", "solvent_wipe", 4, "alcohol"),
        step("coat", "coat", 5, "epoxy-resin"),
    )
    links = {link.step: link for link in chain(with_history(()), steps, CHICAGO) if link.on == "surface"}
    assert (links["wipe"].rinses_since, links["wipe"].dry, links["wipe"].hours_since) == (2, True, pytest.approx(3.0))
    assert (links["coat"].rinses_since, links["coat"].dry, links["coat"].hours_since) == (0, False, pytest.approx(0.0))


def survey(air: Air | None, **bath: Any) -> Survey:
    fixture = dataclasses.replace(BATH, **bath)
    return dataclasses.replace(DEMO, climate=Climate(indoor=air), fixtures=(fixture,))


def read(air: Air | None, **bath: Any) -> tuple[Weather, dict[str, Any]]:
    made = survey(air, **bath)
    weather, assumed = weather_of(made, made.fixtures[0])
    return weather, {entry.code: entry.value for entry in assumed}


def test_air_that_nobody_told_is_cold_and_damp_and_it_is_said() -> None:
    weather, assumed = read(None)
    told, said = read(Air(temperature=294.15, humidity=0.5))
    assert not weather.told
    assert weather.low_k == weather.high_k <= 289.15
    assert weather.humidity >= 0.75
    assert set(assumed) == {"indoor-temperature", "indoor-humidity", "surface-colder-than-air"}
    assert told.told
    assert (told.low_k, told.high_k, told.humidity) == (294.15, 294.15, 0.5)
    assert set(said) == {"surface-colder-than-air"}


def test_a_day_with_humidity_untold_is_damp() -> None:
    weather, assumed = read(Air(kind="typed_day", low=290.0, high=296.0))
    assert (weather.low_k, weather.high_k) == (290.0, 296.0)
    assert weather.humidity >= 0.75
    assert "indoor-humidity" in assumed


@pytest.mark.parametrize(
    ("outside", "void", "colder"),
    [(True, True, 2.0), (False, False, 1.0), (False, None, 2.0), (None, False, 2.0), (None, None, 2.0)],
)
def test_an_unmeasured_bath_is_colder_than_the_air(outside: Any, void: Any, colder: float) -> None:
    weather, assumed = read(Air(temperature=294.15, humidity=0.5), outside_wall=outside, void_under=void)
    assert weather.surface_offset_k == assumed["surface-colder-than-air"] == colder
    assert not weather.surface_told


def test_a_measured_bath_is_as_measured_and_never_warmer_than_the_air() -> None:
    def bath(value: str) -> dict[str, Any]:
        return {"observations": (Observation(what="surface_temperature", result="measured", value=value),)}

    air = Air(temperature=294.15, humidity=0.5)
    cold, assumed = read(air, **bath("18 °C"))
    assert cold.surface_offset_k == pytest.approx(3.0)
    assert cold.surface_told
    assert not assumed
    assert read(air, **bath("25 °C"))[0].surface_offset_k == 0.0
    assert not read(air, **bath("rather cold"))[0].surface_told


def test_the_first_start_is_the_told_one_but_never_before_now() -> None:
    told = dataclasses.replace(DEMO, calendar=Calendar(earliest=datetime(2026, 12, 5, 8)))  # noqa: DTZ001
    assert earliest_start(told, datetime(2026, 12, 1, tzinfo=UTC)) == datetime(2026, 12, 5, 14, tzinfo=UTC)
    late = datetime(2026, 12, 6, 3, 7, tzinfo=UTC)
    assert earliest_start(told, late) == late
    untold = dataclasses.replace(DEMO, calendar=Calendar())
    assert earliest_start(untold, late) == datetime(2026, 12, 6, 4, tzinfo=UTC)


def window(low: float | None, high: float | None, until_s: float = 0.0) -> Demand:
    return Demand(
        id="w",
        step="coat",
        kind="window",
        strength="maker",
        reads="air_temperature",
        low=low,
        high=high,
        until_s=until_s,
    )


def day(low: float, high: float) -> Weather:
    return Weather(
        kind="typed_day", low_k=low, high_k=high, humidity=0.5, surface_offset_k=0.0, told=True, surface_told=True,
        zone="America/Chicago",
    )  # fmt: skip


@given(st.floats(285, 292), st.floats(0, 10), st.floats(286, 298), st.integers(0, 47), st.floats(600, 20000))
def test_a_window_opens_at_the_first_half_hour_from_which_all_of_the_work_fits(
    low: float, swing: float, floor: float, half_hours: int, work_s: float
) -> None:
    weather, since = day(low, low + swing), NOON + timedelta(minutes=30 * half_hours)
    found = next_open(window(floor, None), since, work_s, weather)

    def fits(start: datetime) -> bool:
        times = [start + timedelta(seconds=work_s * n / 40) for n in range(41)]
        return min(weather.air_k(t) for t in times) >= floor - 0.1

    if found is None:
        assert low < floor
        return
    assert fits(found)
    assert found >= since
    earlier = [since + timedelta(minutes=30 * n) for n in range(48) if since + timedelta(minutes=30 * n) < found]
    strict = [min(weather.air_k(t + timedelta(seconds=work_s * n / 40)) for n in range(41)) for t in earlier]
    assert all(value < floor + 0.1 for value in strict)


def test_a_window_must_hold_for_the_time_after_the_work_too() -> None:
    weather = day(288.0, 296.0)
    assert next_open(window(290.0, None), NOON, 3600, weather) is not None
    assert next_open(window(290.0, None, until_s=72 * 3600.0), NOON, 3600, weather) is None
    assert next_open(window(288.0, 296.0, until_s=72 * 3600.0), NOON, 3600, weather) == NOON
    assert next_open(window(None, 295.0, until_s=72 * 3600.0), NOON, 3600, weather) is None
