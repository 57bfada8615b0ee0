"""Two papers of one product differ about the same thing.

What
    Two facts of one kind, for the same part, coat, method, surface and at the same conditions, give different values.
Why
    One of them is out of date or wrong. The plan takes the stricter one.
Strength
    Good practice; binds nobody. It is told, and the maker may be asked.
Fires
    "two pot lives at one temperature".
Stays silent
    "two pot lives at two temperatures", "two flash points of two parts".
Sources
    own-judgement: the stricter paper wins.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import FACT_KINDS, Amount, Fact, Range, Sheet
from bathwright.rules.facts import Facts, planned_sheets
from bathwright.rules.say import word

CODE = "sheet-contradicts-itself"
SOURCES = ("own-judgement",)

_SAME = 1e-9


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells each kind of fact on which the papers differ, once a sheet."""
    return tuple(_finding(sheet, kind) for sheet in planned_sheets(facts) for kind in _differing(sheet))


def _differing(sheet: Sheet) -> list[str]:
    groups: dict[tuple[object, ...], list[Fact]] = {}
    for fact in sheet.facts:
        if FACT_KINDS[fact.kind][1] is not None:
            groups.setdefault((fact.kind, fact.scope, fact.at, fact.starts_from), []).append(fact)
    kinds = [group[0].kind for group in groups.values() if any(_differ(group[0], other) for other in group[1:])]
    return list(dict.fromkeys(kinds))


def _differ(one: Fact, other: Fact) -> bool:
    pairs = zip(_ends(one), _ends(other), strict=True)
    return any((a is None) != (b is None) or (a is not None and b is not None and abs(a - b) > _SAME) for a, b in pairs)


def _ends(fact: Fact) -> tuple[float | None, float | None]:
    value = fact.value
    if isinstance(value, Range):
        return value.low, value.high
    return (value.value, value.value) if isinstance(value, Amount) else (None, None)


def _finding(sheet: Sheet, kind: str) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, kind),
        strength="good_practice",
        consequence="note",
        effect="tells",
        values=(word("product", sheet.product), word("fact", kind)),
        relax="ask_maker",
    )
