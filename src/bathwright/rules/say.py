"""How a rule speaks: findings with margins, measures with stable ids, questions judged at their worse answer."""

from bathwright.domain.codes import Availability
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.survey import Equipment

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
    asks: str, why: str, worse_answer: str, worse: tuple[Finding | Measure, ...], cheapest_test: str | None = None
) -> Question:
    """A question about a fact that was not told, judged by what its worse answer would bring.

    `worse`: what the rule would say at the worse answer. It blocks when that would stop, or would have to be done
    before the start.
    """
    stops = any(isinstance(said, Finding) and said.effect == "stops" for said in worse)
    before = any(isinstance(said, Measure) and said.when == "before_start" for said in worse)
    return Question(asks=asks, why=why, worse_answer=worse_answer, blocks=stops or before, cheapest_test=cheapest_test)
