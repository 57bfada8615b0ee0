"""Views on a sheet's bag of facts: the strictest of what its papers say at given conditions."""

from collections.abc import Iterable
from dataclasses import replace

from bathwright.domain.codes import MethodCode, SubstrateCode
from bathwright.domain.record import record
from bathwright.domain.sheet import FACT_KINDS, Amount, Choice, Fact, Instruction, Range, Ratio, Sheet


@record
class Strict:
    """The fact that decides, the others of its kind, and those that contradict it at the same conditions."""

    fact: Fact
    others: tuple[Fact, ...]
    contradictions: tuple[Fact, ...]

    @property
    def value(self) -> float:
        """The SI value of an amount, or the strict end of a range (low end unless the kind is a 'most')."""
        return strict_end(self.fact)


def facts_of(sheet: Sheet, kind: str) -> tuple[Fact, ...]:
    """All facts of one kind, in the order of the sheet."""
    return tuple(fact for fact in sheet.facts if fact.kind == kind)


def in_scope(
    facts: Iterable[Fact], *, method: MethodCode | None, substrate: SubstrateCode | None, coat: int | None
) -> tuple[Fact, ...]:
    """Facts that hold for this method, substrate and coat; a fact without a scope holds for any."""
    return tuple(
        fact
        for fact in facts
        if fact.scope.method in (None, method)
        and (substrate is None or fact.scope.substrate in (None, substrate))
        and (coat is None or fact.scope.coat in (None, coat))
    )


def narrowed(sheet: Sheet, method: MethodCode, substrate: SubstrateCode | None) -> Sheet:
    """The sheet as it speaks to one method and substrate: facts for another one are left out, facts for this one hold
    without their scope. An unknown substrate keeps all."""
    kept = []
    for fact in sheet.facts:
        other_method = fact.scope.method not in (None, method)
        other_substrate = substrate is not None and fact.scope.substrate not in (None, substrate)
        if fact.kind not in ("method", "surface") and (other_method or other_substrate):
            continue
        kept.append(replace(fact, scope=replace(fact.scope, method=None, substrate=None)))
    return replace(sheet, facts=tuple(kept))


def strict_end(fact: Fact) -> float:
    """The number that counts: an amount, or the low end of a range (its high end when low is open)."""
    value = fact.value
    if isinstance(value, Amount):
        return value.value
    if isinstance(value, Range):
        end = value.low if value.low is not None else value.high
        if end is not None:
            return end
    raise ValueError(f"fact {fact.id} holds no number")


def strictest(
    sheet: Sheet,
    kind: str,
    *,
    temperature_k: float | None = None,
    method: MethodCode | None = None,
    substrate: SubstrateCode | None = None,
    coat: int | None = None,
) -> Strict | None:
    """The strictest fact of a kind, or None when the sheet is silent.

    Among facts at several temperatures, the one printed for the nearest temperature at or below `temperature_k`
    counts for a least wait (a colder row is the longer one), at or above for a most wait; without such a row the
    nearest. Facts at the same temperature that differ are contradictions: the larger wins for a least wait and
    the smaller for a most wait.
    """
    facts = in_scope(facts_of(sheet, kind), method=method, substrate=substrate, coat=coat)
    if not facts:
        return None
    side = FACT_KINDS[kind][2]
    row = _row(facts, temperature_k, side)
    same = [fact for fact in facts if fact.at.temperature in (row, None)]
    best = min(same, key=strict_end) if side == "most" else max(same, key=strict_end)
    contradictions = tuple(fact for fact in same if abs(strict_end(fact) - strict_end(best)) > 1e-9)
    return Strict(fact=best, others=tuple(f for f in facts if f is not best), contradictions=contradictions)


def _row(facts: tuple[Fact, ...], temperature_k: float | None, side: str) -> float | None:
    rows = sorted({fact.at.temperature for fact in facts if fact.at.temperature is not None})
    if not rows:
        return None
    if temperature_k is None:
        return rows[-1] if side == "most" else rows[0]
    if side == "most":
        above = [row for row in rows if row >= temperature_k]
        return above[0] if above else rows[-1]
    below = [row for row in rows if row <= temperature_k]
    return below[-1] if below else rows[0]


def table(
    sheet: Sheet, kind: str, *, method: MethodCode | None = None, substrate: SubstrateCode | None = None
) -> tuple[tuple[float, float], ...]:
    """(temperature_k, value) of a kind that is printed at several temperatures, the strict value at each, sorted."""
    facts = in_scope(facts_of(sheet, kind), method=method, substrate=substrate, coat=None)
    side = FACT_KINDS[kind][2]
    rows: dict[float, float] = {}
    for fact in facts:
        if fact.at.temperature is None:
            continue
        value = strict_end(fact)
        known = rows.get(fact.at.temperature)
        pick = min if side == "most" else max
        rows[fact.at.temperature] = value if known is None else pick(known, value)
    return tuple(sorted(rows.items()))


def choice(sheet: Sheet, kind: str, code: str) -> bool | None:
    """Whether the sheet allows a word of a closed list; None = the sheet is silent; a "no" beats a "yes"."""
    said = [f.value.allowed for f in facts_of(sheet, kind) if isinstance(f.value, Choice) and f.value.code == code]
    return all(said) if said else None


def allowed(sheet: Sheet, kind: str) -> tuple[str, ...]:
    """The words of a closed list that the sheet allows and does not refuse elsewhere."""
    words = dict.fromkeys(f.value.code for f in facts_of(sheet, kind) if isinstance(f.value, Choice))
    return tuple(word for word in words if choice(sheet, kind, word))


def bounds(sheet: Sheet, kind: str) -> tuple[float | None, float | None, tuple[str, ...]]:
    """The tightest window over all facts of a kind: low, high, ids of the facts."""
    ranges = [(f.id, f.value) for f in facts_of(sheet, kind) if isinstance(f.value, Range)]
    lows = [value.low for _, value in ranges if value.low is not None]
    highs = [value.high for _, value in ranges if value.high is not None]
    ids = tuple(fact_id for fact_id, _ in ranges)
    return (max(lows) if lows else None, min(highs) if highs else None, ids)


def ratio(sheet: Sheet) -> Ratio | None:
    """The mix ratio, by volume if the sheet gives both."""
    found = [f.value for f in facts_of(sheet, "mix_ratio") if isinstance(f.value, Ratio)]
    return next((value for value in found if value.by == "volume"), found[0] if found else None)


def instruction(sheet: Sheet, kind: str) -> tuple[Instruction, str] | None:
    """The first instruction of a kind with the id of its fact."""
    return next(((f.value, f.id) for f in facts_of(sheet, kind) if isinstance(f.value, Instruction)), None)
