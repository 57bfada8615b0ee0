"""The log of what was done: append-only; undo is an entry."""

from datetime import datetime
from typing import Literal

from bathwright.domain.record import record
from bathwright.domain.values import Value


@record
class Entry:
    """One line of the log. Never edited."""

    id: str
    plan_id: str
    step_id: str | None
    what: Literal["start", "end", "reading", "mix", "undo", "wrong", "note"]
    value: Value | None
    at: datetime
    seen_at: datetime
    by: str | None


@record
class Log:
    """All entries of one job, in the order in which they were written."""

    format: Literal["bathwright-log/1"]
    plan_id: str
    entries: tuple[Entry, ...]
