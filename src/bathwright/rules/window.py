"""What the climate rules share: how a value of the air or the bath outside the maker's window is told."""

from bathwright.domain.codes import Strength
from bathwright.domain.findings import Finding, Measure, Question, Said
from bathwright.domain.record import record
from bathwright.rules.facts import Facts
from bathwright.rules.say import margin_lower, margin_upper, question, with_measures, word


@record
class Reading:
    """One side of a window: the value that counts, its limit, which side, the facts of the sheet that say so."""

    code: str
    value: float
    limit: float
    lower: bool
    kind: str
    because: tuple[str, ...]
    strength: Strength = "maker"


def outside(facts: Facts, reading: Reading, *measures: Measure) -> tuple[Said, ...]:
    """The stop for a reading that lies outside; a question instead when the air indoors was not told."""
    margin = (margin_lower if reading.lower else margin_upper)(reading.value, reading.limit)
    finding = Finding(
        code=reading.code,
        about=("film", *reading.because),
        strength=reading.strength,
        consequence="ruins",
        effect="stops" if reading.strength == "maker" else "must_do",
        value=reading.value,
        limit=reading.limit,
        kind=reading.kind,
        basis="central",
        margin=margin,
        values=(word("product", facts.coating.product), word("side", "too_low" if reading.lower else "too_high")),
        relax="heat_or_wait",
    )
    if not told(facts):
        return (not_told(reading.code, finding),)
    return with_measures(finding, *measures)


def not_told(code: str, finding: Finding) -> Question:
    """The question about the air indoors, judged at a cold and damp bathroom."""
    return question("indoor_climate", code, "worst", (finding,), "thermometer_with_hygrometer")


def told(facts: Facts, *, humidity: bool = False) -> bool:
    """Whether the household told how warm (or how damp) the air indoors is."""
    air = facts.survey.climate.indoor
    if air is None:
        return False
    return air.humidity is not None if humidity else air.temperature is not None or air.low is not None


def untold(code: str, kind: str) -> tuple[Said, ...]:
    """The maker asks for a window and nobody told the air indoors: judged as lying outside."""
    finding = Finding(code=code, about=("film",), strength="maker", consequence="ruins", effect="stops", kind=kind)
    return (not_told(code, finding),)
