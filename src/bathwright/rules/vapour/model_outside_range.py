"""A model was used outside the range for which it holds.

What
    A published model of evaporation, air, heat or cure was fed a value outside the range that its source gives.
Why
    There its number is a hint, not a promise.
Strength
    Good practice; binds nobody. It is told, beside the number.
Fires
    "a model used at 45 °C that holds to 40 °C".
Stays silent
    "every model inside its range".
Sources
    own-judgement: outside the range the answer carries a finding, never silence.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, OutOfRange
from bathwright.rules.say import amount, margin_lower, margin_upper, word

CODE = "model-outside-range"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells for each value that lies outside the range of its model."""
    return tuple(_finding(entry) for entry in facts.outside_range if not entry.low <= entry.value <= entry.high)


def _finding(entry: OutOfRange) -> Finding:
    above = entry.value > entry.high
    limit = entry.high if above else entry.low
    margin = margin_upper(entry.value, limit) if above else margin_lower(entry.value, limit)
    return Finding(
        code=CODE,
        about=(entry.model, entry.quantity),
        strength="good_practice",
        consequence="note",
        effect="tells",
        status="unknown",
        value=entry.value,
        limit=limit,
        kind=entry.kind,
        margin=margin,
        values=(
            word("model", entry.model),
            amount("low", entry.low, entry.kind),
            amount("high", entry.high, entry.kind),
        ),
        sources=(entry.source,),
    )
