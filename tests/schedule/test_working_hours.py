"""Wall clock in, spans of UTC out: changes of the clock, closed days, hours that meet."""

import itertools
from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.survey import Calendar, Hours
from bathwright.domain.values import Span
from bathwright.schedule.hours import DEFAULT_HOURS, to_utc, working_spans

NEW_YORK, LONDON, KOLKATA = ZoneInfo("America/New_York"), ZoneInfo("Europe/London"), ZoneInfo("Asia/Kolkata")
EVERY_DAY = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def at(text: str) -> datetime:
    return datetime.fromisoformat(text).replace(tzinfo=UTC)


def spans(calendar: Calendar, zone: ZoneInfo, day: date, days: int = 1) -> list[tuple[datetime, datetime]]:
    return [(span.starts, span.ends) for span in working_spans(calendar, zone, day, days)]


def daily(starts: str, ends: str) -> Calendar:
    return Calendar(working=(Hours(days=EVERY_DAY, starts=starts, ends=ends),))


# the days of change follow from the laws of the places: second Sunday of March and first of November (US), last
# Sundays of March and October (GB); the instants were worked out by hand
@pytest.mark.parametrize(
    ("zone", "local", "instant"),
    [
        (NEW_YORK, "2026-03-08T01:59", "2026-03-08T06:59"),
        (NEW_YORK, "2026-03-08T02:00", "2026-03-08T07:00"),  # does not exist: read as 03:00
        (NEW_YORK, "2026-03-08T02:30", "2026-03-08T07:30"),  # does not exist: read as 03:30
        (NEW_YORK, "2026-03-08T03:00", "2026-03-08T07:00"),
        (NEW_YORK, "2026-11-01T00:59", "2026-11-01T04:59"),
        (NEW_YORK, "2026-11-01T01:30", "2026-11-01T05:30"),  # doubled: the first
        (NEW_YORK, "2026-11-01T02:00", "2026-11-01T07:00"),
        (LONDON, "2026-03-29T01:30", "2026-03-29T01:30"),  # does not exist: read as 02:30 of summer
        (LONDON, "2026-10-25T01:30", "2026-10-25T00:30"),  # doubled: the first
        (LONDON, "2026-10-25T02:00", "2026-10-25T02:00"),
    ],
)
def test_a_wall_clock_time_over_the_change(zone: ZoneInfo, local: str, instant: str) -> None:
    assert to_utc(datetime.fromisoformat(local), zone) == at(instant)
    assert to_utc(datetime.fromisoformat(local).replace(fold=1), zone) == at(instant)


def every_reading(zone: ZoneInfo, around: datetime) -> Iterator[tuple[datetime, datetime]]:
    """(instant, wall clock) of every minute of three days: the other way round than the code goes."""
    start = around.replace(tzinfo=UTC, minute=0) - timedelta(hours=36)
    for minute in range(72 * 60):
        instant = start + timedelta(minutes=minute)
        yield instant, instant.astimezone(zone).replace(tzinfo=None, fold=0)


@given(
    st.sampled_from(["America/New_York", "Europe/London", "Australia/Lord_Howe", "Asia/Kolkata"]),
    st.integers(0, 364 * 24 * 60).map(lambda minute: datetime.fromisoformat("2026-01-01") + timedelta(minutes=minute)),
)
def test_a_time_is_the_first_instant_that_shows_it_or_a_later_reading(name: str, local: datetime) -> None:
    zone = ZoneInfo(name)
    found = to_utc(local, zone)
    shown = [instant for instant, reading in every_reading(zone, local) if reading == local]
    if shown:
        assert found == shown[0]
    else:
        assert found.astimezone(zone).replace(tzinfo=None) > local


def test_the_day_that_loses_an_hour_has_one_hour_less_of_work() -> None:
    assert spans(daily("01:00", "05:00"), NEW_YORK, date(2026, 3, 8)) == [
        (at("2026-03-08T06:00"), at("2026-03-08T09:00"))
    ]
    assert spans(daily("02:15", "02:45"), NEW_YORK, date(2026, 3, 8)) == [
        (at("2026-03-08T07:15"), at("2026-03-08T07:45"))
    ]
    # 02:30 is read as 03:30, after the end: no work, and never a span that runs backwards
    assert spans(daily("02:30", "03:15"), NEW_YORK, date(2026, 3, 8)) == []


def test_the_day_that_gains_an_hour_has_one_hour_more_of_work() -> None:
    assert spans(daily("00:00", "03:00"), NEW_YORK, date(2026, 11, 1)) == [
        (at("2026-11-01T04:00"), at("2026-11-01T08:00"))
    ]
    assert spans(daily("08:00", "20:00"), LONDON, date(2026, 10, 25)) == [
        (at("2026-10-25T08:00"), at("2026-10-25T20:00"))
    ]


def test_the_same_wall_clock_lies_at_other_instants_before_and_after_the_change() -> None:
    found = spans(daily("08:00", "19:00"), NEW_YORK, date(2026, 3, 7), 3)
    assert [start.hour for start, _ in found] == [13, 12, 12]
    assert [end - start for start, end in found] == [timedelta(hours=11)] * 3


def test_hours_round_midnight_are_joined() -> None:
    night = Calendar(
        working=(Hours(days=("fri",), starts="20:00", ends="24:00"), Hours(days=("sat",), starts="00:00", ends="02:00"))
    )
    assert spans(night, KOLKATA, date(2026, 6, 5), 2) == [(at("2026-06-05T14:30"), at("2026-06-05T20:30"))]
    assert spans(daily("00:00", "24:00"), NEW_YORK, date(2026, 3, 7), 3) == [
        (at("2026-03-07T05:00"), at("2026-03-10T04:00"))
    ]


def test_closed_days_and_other_weekdays_hold_no_work() -> None:
    calendar = Calendar(
        working=(
            Hours(days=("mon", "wed"), starts="09:00", ends="12:00"),
            Hours(days=("mon",), starts="13:00", ends="15:00"),
        ),
        closed=(date(2026, 6, 10),),
    )
    found = spans(calendar, LONDON, date(2026, 6, 7), 8)  # Sunday to Sunday; summer time: one hour before UTC
    assert found == [
        (at("2026-06-08T08:00"), at("2026-06-08T11:00")),
        (at("2026-06-08T12:00"), at("2026-06-08T14:00")),
    ]  # fmt: skip


def test_hours_of_one_day_are_in_order_however_they_were_told() -> None:
    calendar = Calendar(
        working=(Hours(days=("mon",), starts="13:00", ends="15:00"), Hours(days=("mon",), starts="09:00", ends="12:00"))
    )
    starts = [start for start, _ in spans(calendar, KOLKATA, date(2026, 6, 8))]
    assert starts == sorted(starts)
    assert len(starts) == 2


def test_without_told_hours_every_day_has_the_default_ones() -> None:
    assert DEFAULT_HOURS == ("08:00", "20:00")
    assert spans(Calendar(), LONDON, date(2026, 1, 3), 2) == [
        (at("2026-01-03T08:00"), at("2026-01-03T20:00")),
        (at("2026-01-04T08:00"), at("2026-01-04T20:00")),
    ]


@given(
    st.sampled_from([NEW_YORK, LONDON, KOLKATA]),
    st.dates(date(2026, 1, 1), date(2026, 12, 1)),
    st.lists(
        st.tuples(st.integers(0, 23), st.integers(1, 24), st.sets(st.sampled_from(EVERY_DAY), min_size=1)), max_size=4
    ),
)
def test_spans_are_aware_in_order_apart_and_never_empty(
    zone: ZoneInfo, day: date, told: list[tuple[int, int, set[str]]]
) -> None:
    hours = tuple(
        Hours(days=tuple(sorted(days)), starts=f"{a:02}:00", ends=f"{b:02}:00")  # type: ignore[arg-type]
        for a, b, days in told
        if a < b
    )
    found = list(working_spans(Calendar(working=hours), zone, day, 20))
    assert all(isinstance(span, Span) and span.starts.utcoffset() == timedelta(0) for span in found)
    assert all(span.starts < span.ends for span in found)
    assert all(one.ends < other.starts for one, other in itertools.pairwise(found))
