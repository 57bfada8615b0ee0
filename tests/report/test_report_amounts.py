"""Values and instants in words, against values written down by hand."""

import re
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.values import Band
from bathwright.report import amounts
from bathwright.report.scale import DecadeScale, decades_over, whole_days

NEW_YORK = ZoneInfo("America/New_York")


def test_instants_stand_on_the_wall_clock_of_the_home() -> None:
    assert amounts.instant(datetime(2026, 12, 10, 23, 0, tzinfo=UTC), NEW_YORK) == "Thu 10 Dec 2026, 18:00 EST"
    assert amounts.instant(datetime(2026, 7, 10, 22, 0, tzinfo=UTC), NEW_YORK) == "Fri 10 Jul 2026, 18:00 EDT"
    karachi = amounts.zone_of("Asia/Dubai")
    assert amounts.instant(datetime(2026, 1, 1, 0, 0, tzinfo=UTC), karachi) == "Thu 1 Jan 2026, 04:00 UTC+04"


def test_the_hour_that_comes_twice_is_told_by_its_zone() -> None:
    first = datetime(2026, 11, 1, 5, 30, tzinfo=UTC)
    assert amounts.instant(first, NEW_YORK) == "Sun 1 Nov 2026, 01:30 EDT"
    assert amounts.instant(first + timedelta(hours=1), NEW_YORK) == "Sun 1 Nov 2026, 01:30 EST"


def test_not_before_is_never_earlier_than_the_record() -> None:
    at = datetime(2026, 12, 10, 23, 0, 1, tzinfo=UTC)
    assert amounts.clock_time(at, NEW_YORK, "up") == "18:01"
    assert amounts.clock_time(at, NEW_YORK, "down") == "18:00"


def test_an_unknown_zone_is_read_as_utc() -> None:
    assert amounts.zone_of("Nowhere/Atall") is UTC
    assert amounts.zone_of("../../etc/passwd") is UTC
    assert not amounts.is_zone("Nowhere/Atall")


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (0, "0 s"), (45, "45 s"), (60, "1 min"), (5400, "1 h 30 min"), (23400, "6 h 30 min"), (86400, "24 h"),
        (172800, "48 h"), (172860, "2 days"), (273600, "3 days 4 h"), (604800, "7 days"),
    ],
)  # fmt: skip
def test_durations(seconds: float, words: str) -> None:
    assert amounts.duration(seconds) == words


@given(st.floats(0, 5e6))
def test_a_least_wait_is_never_shown_shorter_and_a_most_wait_never_longer(seconds: float) -> None:
    assert _seconds(amounts.duration(seconds, "up")) >= seconds - 1e-3
    assert _seconds(amounts.duration(seconds, "down")) <= seconds + 1e-3


def _seconds(words: str) -> float:
    units = {"s": 1, "min": 60, "h": 3600, "days": 86400}
    return sum(float(number) * units[unit] for number, unit in re.findall(r"(\d+) (s|min|h|days)", words))


@pytest.mark.parametrize(
    ("value", "words"), [(0.01834, "0.018"), (1.84, "1.8"), (184.2, "180"), (1843, "1,800"), (0.0996, "0.10"), (0, "0")]
)
def test_two_digits_that_say_something(value: float, words: str) -> None:
    assert amounts.significant(value) == words


def test_quantities_in_the_units_of_the_household() -> None:
    assert amounts.quantity(293.15, "temperature", "us", both=True) == "68 °F (20.0 °C)"
    assert amounts.quantity(3.0, "temperature_step", "us", both=True) == "5.4 °F (3.0 K)"
    assert amounts.quantity(2e-4, "vapour_ppm", "si") == "200 ppm"
    assert amounts.quantity(1.234e-4, "vapour_ppm", "si") == "120 ppm"
    assert amounts.quantity(3.77e-4, "concentration", "us") == "380 mg/m³"
    assert amounts.quantity(206.0, "concentration", "si") == "206 g/L"
    assert amounts.quantity(0.01, "liquid", "si") == "10 L"
    assert amounts.quantity(0.003, "share", "us") == "0.30 %"
    assert amounts.quantity(2.0, None, "us") == "2"


def test_bands_say_a_unit_once() -> None:
    band = Band(low=5e-4, central=6e-4, high=8e-4, kind="liquid", source="own-judgement", mark="judgement")
    assert amounts.band(band, "si") == "600 mL (500 to 800 mL)"
    long = Band(low=5400, central=7200, high=9000, kind="time", source="own-judgement", mark="judgement")
    assert amounts.band(long, "si") == "2 h (1 h 30 min to 2 h 30 min)"


def test_the_picture_runs_over_whole_days_of_the_home_and_shades_its_nights() -> None:
    scale = whole_days(datetime(2026, 10, 31, 15, tzinfo=UTC), datetime(2026, 11, 1, 20, tzinfo=UTC), NEW_YORK)
    assert scale.starts == datetime(2026, 10, 31, 4, tzinfo=UTC)
    assert scale.ends == datetime(2026, 11, 2, 5, tzinfo=UTC)  # the clock goes back: this day has 25 hours
    assert [night[1] - night[0] for night in scale.nights()] == [timedelta(hours=h) for h in (6, 9, 2)]
    assert [tick.label for tick in scale.ticks()] == ["Sat 31", "Sun 1 Nov"]


@given(st.floats(1e-9, 1e9), st.floats(1e-9, 1e9))
def test_the_upright_scale_holds_the_highest_value_and_the_limit(highest: float, reference: float) -> None:
    scale = decades_over(highest, reference)
    assert 10.0**scale.low < reference < 10.0**scale.high * (1 + 1e-9)
    assert highest <= 10.0**scale.high * (1 + 1e-9)
    assert 0 <= scale.place(reference) <= 1


def test_decades_have_the_same_height() -> None:
    scale = DecadeScale(low=-2, high=2)
    assert [scale.place(value) for value in (100, 1, 0.01, 0, 1e9)] == [0, 0.5, 1, 1, 0]
