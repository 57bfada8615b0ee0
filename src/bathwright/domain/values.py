"""Small records that the others are made of."""

from datetime import date, datetime

from bathwright.domain.codes import Mark
from bathwright.domain.record import record


@record
class Band:
    """low <= central <= high of one SI quantity, with source and mark."""

    low: float
    central: float
    high: float
    kind: str
    source: str
    mark: Mark


@record
class Number:
    """One value that a person could question: SI value, kind, source id, mark, date from which it holds."""

    value: float
    kind: str
    source: str
    mark: Mark
    holds_from: date | None = None
    note: str = ""


@record
class Told:
    """Who told a thing, when, by which test or paper, in which words."""

    by: str | None = None
    at: date | None = None
    how: str | None = None
    words: str | None = None


@record
class Span:
    """Two instants, UTC and aware, start before end."""

    starts: datetime
    ends: datetime


@record
class Value:
    """A typed value for a sentence: name, number or word, kind of quantity (None for a word or a bare count)."""

    name: str
    value: float | str
    kind: str | None = None
