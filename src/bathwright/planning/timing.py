"""The steps on the clock: working hours, waits at the real temperature, windows of the climate."""

from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from bathwright.domain.steps import Demand, Step
from bathwright.domain.survey import Survey
from bathwright.schedule.fixpoint import Frame, Placed, place
from bathwright.schedule.hours import to_utc, working_spans
from bathwright.simulation.climate import Weather
from bathwright.simulation.cure_time import wait_ends

_HORIZON_DAYS = 75
_HALF_HOUR = timedelta(minutes=30)
_ROUNDING = 1e-6


def earliest_start(survey: Survey, at: datetime) -> datetime:
    """The earliest start that was told, never before "now"; the next whole hour when none was told."""
    zone = ZoneInfo(survey.place.time_zone)
    if survey.calendar.earliest is not None:
        return max(at, to_utc(survey.calendar.earliest, zone))
    return at.replace(minute=0, second=0, microsecond=0) + timedelta(hours=1)


def place_steps(survey: Survey, steps: tuple[Step, ...], weather: Weather, at: datetime) -> Placed:
    """The steps placed as early as they may run."""
    zone = ZoneInfo(survey.place.time_zone)
    start = earliest_start(survey, at)
    first_day = start.astimezone(zone).date()
    frame = Frame(
        earliest=start,
        working=tuple(working_spans(survey.calendar, zone, first_day, _HORIZON_DAYS)),
        wait_ends=lambda demand, since: wait_ends(demand, since, weather, weather.unsure_k),
        next_open=lambda demand, since, work_s: next_open(demand, since, work_s, weather),
    )
    return place(steps, frame)


def next_open(demand: Demand, since: datetime, work_s: float, weather: Weather) -> datetime | None:
    """The first start from which a window of the climate holds for the work and for its time after.

    The air repeats day by day, so that a window which never opens within a day never opens: None.
    """
    reads = demand.reads or "air_temperature"
    start = since
    for _ in range(49):
        low, high = weather.extremes(reads, start, start + timedelta(seconds=work_s + demand.until_s))
        above = demand.low is None or low >= demand.low - _ROUNDING
        below = demand.high is None or high <= demand.high + _ROUNDING
        if above and below:
            return start
        start += _HALF_HOUR
    return None
