"""What the rules say: findings, measures, questions. Codes and typed values; words are made at the edge."""

from datetime import datetime

from bathwright.domain.codes import Availability, Basis, Consequence, Effect, Mark, Status, Strength, When
from bathwright.domain.record import record
from bathwright.domain.values import Value


@record
class Finding:
    """One thing that a rule says about the job.

    strength and consequence never merge. `margin` = (limit - value) / limit, negative = beyond (reversed for lower
    limits). `relax` is the code of what would change it.
    """

    code: str
    about: tuple[str, ...] = ()
    strength: Strength
    bound: str | None = None
    consequence: Consequence
    effect: Effect
    status: Status = "open"
    value: float | None = None
    limit: float | None = None
    kind: str | None = None
    basis: Basis | None = None
    margin: float | None = None
    values: tuple[Value, ...] = ()
    measures: tuple[str, ...] = ()
    relax: str | None = None
    sources: tuple[str, ...] = ()
    marks: tuple[Mark, ...] = ()


@record
class Measure:
    """Something that the plan relies on: who does what, from when, until when, and can it be had."""

    id: str
    act: str
    who: str
    what: str | None = None
    starts: datetime | None = None
    ends: datetime | None = None
    feasible: Availability
    when: When = "during"
    done: bool = False
    effect_on: tuple[str, ...] = ()
    factor: float | None = None
    values: tuple[Value, ...] = ()


@record
class Question:
    """A fact that was not told, why it matters, its worse answer, whether that would stop, the cheapest test."""

    asks: str
    about: tuple[str, ...] = ()
    why: str
    worse_answer: str
    blocks: bool
    cheapest_test: str | None = None


Said = Finding | Measure | Question
