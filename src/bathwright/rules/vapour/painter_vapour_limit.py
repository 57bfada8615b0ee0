"""What the one who works breathes, against limits for people at work.

What
    Each substance and the sum of all, at the upper value, outside any mask. Where that passes the limit, the least mask
    that brings it inside is worn: half mask (a tenth gets in), full mask (a fiftieth). A better mask that is at hand
    beats one that must be bought. A cartridge counts for nothing against dichloromethane, sprayed isocyanate, a
    substance that is not known, or above the value at which a person may not get out alone. A beard comes off before
    the start. A mask that is less than a maker's paper asks for does not count. Supplied air counts where a firm works.
Why
    Too much vapour makes dizzy, then unconscious, with the head in the bath.
Strength
    Law where the limit is law of the place and binds: employers. For an unpaid owner the same numbers are advice.
    A limit for workers is no promise for a home.
Fires
    "three times the limit, half mask at hand", "three times the limit, no mask named", "sixty times the limit".
Stays silent
    "half of the limit".
Sources
    cfr-1910-134-table-1: how much each mask keeps out. cfr-1910-1000-d: the sum. Each limit brings its own source.
    own-judgement: the upper value counts.
"""

from collections.abc import Iterable

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import (
    DICHLOROMETHANE,
    Facts,
    holds_isocyanate,
    law_set,
    name_of,
    planned_sheets,
)
from bathwright.rules.masks import CARTRIDGES, MASKS, maker_mask, sealed, shaven, worn_while
from bathwright.rules.measures import supplied_air, worn
from bathwright.rules.say import amount, margin_upper, with_measures, word

CODE = "painter-vapour-limit"
SOURCES = ("cfr-1910-134-table-1", "cfr-1910-1000-d", "own-judgement")

_EASE = ("have", "hire", "buy", "ask")


def check(facts: Facts) -> tuple[Said, ...]:
    """Stops for what passes a limit, met by the mask that is enough."""
    over = [e for e in facts.exposures if _counts(e) and e.outside.high > e.limit_value]
    if not over:
        return ()
    mask = _mask(facts, over)
    mask = worn_while(facts, mask) if mask else None
    said: list[Said] = []
    for exposure in _worst(over):
        finding = _finding(facts, exposure, _also(facts, over, exposure))
        said += with_measures(finding, *sealed(facts, mask)) if mask else (finding,)
    said += shaven(facts, mask, CODE) if mask else ()
    return tuple(said)


def _counts(exposure: Exposure) -> bool:
    """A limit for people at work; the value of immediate danger has its own rule."""
    idlh = exposure.limit is not None and exposure.limit.measure == "idlh"
    return exposure.who == "painter" and exposure.measure != "explosive_share" and not idlh


def _worst(over: list[Exposure]) -> Iterable[Exposure]:
    """The worst of all, law and advice apart: the mask that is enough for it is enough for the others."""
    found: dict[str, Exposure] = {}
    for exposure in over:
        kind = exposure.limit.kind if exposure.limit else "advice"
        known = found.get(kind)
        if known is None or _times(exposure) > _times(known):
            found[kind] = exposure
    return found.values()


def _times(exposure: Exposure) -> float:
    return exposure.outside.high / exposure.limit_value


def _mask(facts: Facts, over: list[Exposure]) -> Measure | None:
    """The protection that is enough: what is at hand first, then the least; supplied air for a firm; else None."""
    needed = max(_times(exposure) for exposure in over)
    allowed = [] if _no_cartridge(facts, over) else [_cartridge(facts, kind) for kind in _papers_allow(facts)]
    if facts.survey.work.who == "firm":
        allowed.append(supplied_air(facts))
    enough = [m for m in allowed if (m.factor or 1.0) >= needed and m.feasible != "no"]
    return min(enough, key=lambda m: (_EASE.index(m.feasible), m.factor or 1.0), default=None)


def _papers_allow(facts: Facts) -> tuple[str, ...]:
    """The masks with cartridges that are no less than the makers' papers ask for."""
    asked = maker_mask(facts)
    least = MASKS.index(asked[1]) if asked else 0
    return tuple(kind for kind in CARTRIDGES if MASKS.index(kind) >= least)


def _cartridge(facts: Facts, kind: str) -> Measure:
    return worn(facts, kind, "buy", facts.knowledge.number(f"air.respirator.{kind}").value)


def _no_cartridge(facts: Facts, over: list[Exposure]) -> bool:
    """Whether cartridges count for nothing here."""
    if _immediately_dangerous(facts):
        return True
    sprayed = facts.method in ("spray", "aerosol")
    if sprayed and any(holds_isocyanate(facts, sheet) for sheet in planned_sheets(facts)):
        return True
    emitted = [e.cas for e in facts.air.emissions] if facts.air else []
    breathed = {e.substance for e in over if e.substance != "mixture"} | set(emitted)
    return any(cas == DICHLOROMETHANE or cas not in facts.knowledge.substances for cas in breathed)


def _immediately_dangerous(facts: Facts) -> bool:
    return any(
        e.who == "painter" and e.limit is not None and e.limit.measure == "idlh" and e.outside.high > e.limit_value
        for e in facts.exposures
    )


def _also(facts: Facts, over: list[Exposure], told: Exposure) -> tuple[str, ...]:
    """The other substances that pass a limit, the worst first."""
    ranked = sorted(over, key=lambda e: (-_times(e), e.substance))
    return tuple(dict.fromkeys(name_of(facts, e.substance) for e in ranked if e.substance != told.substance))


def _finding(facts: Facts, exposure: Exposure, also: tuple[str, ...]) -> Finding:
    limit, upper = exposure.limit, exposure.outside.high
    legal = limit is not None and limit.kind == "law" and law_set(facts) in limit.law_in
    law = legal and facts.survey.work.employer is not False
    kind = "share" if exposure.substance == "mixture" else "concentration"
    return Finding(
        code=CODE,
        about=("painter", exposure.substance, exposure.measure),
        strength="law" if law else "advice",
        bound="employers" if law else None,
        consequence="harms",
        effect="stops",
        value=upper,
        limit=exposure.limit_value,
        kind=kind,
        basis=exposure.basis,
        margin=margin_upper(upper, exposure.limit_value),
        values=(
            word("substance", name_of(facts, exposure.substance)),
            word("measure", exposure.measure),
            amount("times", _times(exposure), None),
            *((word("also", ", ".join(also)),) if also else ()),
        ),
        relax="mask_or_more_air",
        sources=(limit.source,) if limit else (),
        marks=(limit.mark,) if limit else (),
    )
