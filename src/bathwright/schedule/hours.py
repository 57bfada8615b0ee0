"""Working hours of the household: wall clock of the home's zone in, spans of UTC out, right over clock changes."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from bathwright.domain.survey import Calendar
from bathwright.domain.values import Span

_DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
DEFAULT_HOURS = ("08:00", "20:00")  # where no hours were told: judgement, and the plan says so


def to_utc(local: datetime, zone: ZoneInfo) -> datetime:
    """Instant of a wall-clock time without zone: one that does not exist moves forward, a doubled one is the first."""
    return local.replace(tzinfo=zone, fold=0).astimezone(UTC)


def working_spans(calendar: Calendar, zone: ZoneInfo, from_day: date, days: int) -> Iterator[Span]:
    """Spans in which attended work may run, in order; hours that meet are joined."""
    pending: Span | None = None
    for offset in range(days):
        day = from_day + timedelta(days=offset)
        for span in _spans_of(calendar, zone, day):
            if pending and span.starts <= pending.ends:
                pending = Span(starts=pending.starts, ends=max(pending.ends, span.ends))
                continue
            if pending:
                yield pending
            pending = span
    if pending:
        yield pending


def _spans_of(calendar: Calendar, zone: ZoneInfo, day: date) -> list[Span]:
    if day in calendar.closed:
        return []
    if not calendar.working:
        hours = [DEFAULT_HOURS]
    else:
        hours = sorted((h.starts, h.ends) for h in calendar.working if _DAYS[day.weekday()] in h.days)
    spans = [Span(starts=_at(day, starts, zone), ends=_at(day, ends, zone)) for starts, ends in hours]
    return [span for span in spans if span.ends > span.starts]


def _at(day: date, text: str, zone: ZoneInfo) -> datetime:
    hour, minute = (int(part) for part in text.split(":"))
    if hour == 24:
        return to_utc(datetime.combine(day + timedelta(days=1), time()), zone)
    return to_utc(datetime.combine(day, time(hour, minute)), zone)
