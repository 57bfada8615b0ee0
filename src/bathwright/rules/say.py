"""How a rule speaks: findings with margins, measures with stable ids, questions judged at their worse answer."""

from dataclasses import replace

from bathwright.domain.codes import Availability
from bathwright.domain.findings import Finding, Measure, Question, Said
from bathwright.domain.survey import Equipment
from bathwright.domain.values import Value

_ORDER: tuple[Availability, ...] = ("have", "hire", "buy", "ask", "no")


def margin_upper(value: float, limit: float) -> float:
    """(limit - value) / limit for an upper limit; negative = beyond."""
    return (limit - value) / limit if limit else (0.0 if value == 0 else -1.0)


def margin_lower(value: float, limit: float) -> float:
    """(value - limit) / |limit| for a lower limit; negative = beyond."""
    return (value - limit) / abs(limit) if limit else value


def measure_id(act: str, *parts: str) -> str:
    """A stable id of words: act and what it is about."""
    return "-".join([act.replace("_", "-"), *(part.replace("_", "-") for part in parts if part)])


def best_available(items: tuple[Equipment, ...], otherwise: Availability = "buy") -> Availability:
    """The easiest way to have one of the items; `otherwise` when the survey names none."""
    return min((item.have for item in items), key=_ORDER.index, default=otherwise)


def question(
    asks: str,
    why: str,
    worse_answer: str,
    worse: tuple[Said, ...],
    cheapest_test: str | None = None,
    about: tuple[str, ...] = (),
) -> Question:
    """A question about a fact that was not told, judged by what its worse answer would bring.

    `worse`: what the rule would say at the worse answer. It blocks when that would stop with nothing to meet it, or
    when something would have to be done before the start.
    """
    can_be_had = {said.id for said in worse if isinstance(said, Measure) and said.feasible != "no"}
    stops = any(
        isinstance(said, Finding)
        and said.effect == "stops"
        and not (said.measures and set(said.measures) <= can_be_had)
        for said in worse
    )
    before = any(isinstance(said, Measure) and said.when == "before_start" for said in worse)
    return Question(
        asks=asks, about=about, why=why, worse_answer=worse_answer, blocks=stops or before, cheapest_test=cheapest_test
    )


def with_measures(finding: Finding, *measures: Measure) -> tuple[Said, ...]:
    """The finding that relies on these measures, and the measures."""
    return (replace(finding, measures=tuple(measure.id for measure in measures)), *measures)


def word(name: str, value: str) -> Value:
    """A word as a value."""
    return Value(name=name, value=value)


def amount(name: str, value: float, kind: str | None) -> Value:
    """A number as a value."""
    return Value(name=name, value=value, kind=kind)


def hardest(*availabilities: Availability) -> Availability:
    """The hardest way to have a thing of those given."""
    return max(availabilities, key=_ORDER.index)
