"""What the one who works breathes, against limits for people at work.

What
    Each substance and the sum of all, at the upper value, outside any mask. Where that passes the limit, the least mask
    that brings it inside is worn: half mask (a tenth gets in), full mask (a fiftieth). A better mask that is at hand
    beats one that must be bought. A cartridge counts for nothing against dichloromethane, sprayed isocyanate, a
    substance that is not known, or above the value at which a person may not get out alone. A beard comes off before
    the start. Supplied air counts where a firm works.
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
from dataclasses import replace

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import (
    DICHLOROMETHANE,
    Facts,
    holds_isocyanate,
    law_set,
    name_of,
    planned_sheets,
    volatile_steps,
)
from bathwright.rules.measures import supplied_air, worn
from bathwright.rules.say import amount, margin_upper, question, with_measures, word

CODE = "painter-vapour-limit"
SOURCES = ("cfr-1910-134-table-1", "cfr-1910-1000-d", "own-judgement")

_CARTRIDGES = ("half_mask_vapour", "full_mask_vapour")
_SHAVE = Measure(id="shave", act="shave", who="painter", feasible="have", when="before_start")
_EASE = ("have", "hire", "buy", "ask")


def check(facts: Facts) -> tuple[Said, ...]:
    """Stops for what passes a limit, met by the mask that is enough."""
    over = [e for e in facts.exposures if _counts(e) and e.outside.high > e.limit_value]
    if not over:
        return ()
    mask = _worn_while(facts, _mask(facts, over))
    said: list[Said] = []
    for exposure in _worst(over):
        finding = _finding(facts, exposure)
        said += with_measures(finding, *_sealed(facts, mask)) if mask else (finding,)
    if mask and mask.what in _CARTRIDGES and facts.survey.work.clean_shaven is None:
        said.append(question("clean_shaven", CODE, "no", (_SHAVE,), "say_yes_or_no"))
    return tuple(said)


def _worn_while(facts: Facts, mask: Measure | None) -> Measure | None:
    """The mask with its hours: each attended step from the first that lets vapour out until the air is good again."""
    vapour = [step for step in volatile_steps(facts) if step.starts is not None]
    if mask is None or not vapour or facts.air is None:
        return mask
    first, back = vapour[0].starts, facts.air.back_at
    worn_in = [
        step
        for step in facts.steps
        if step.starts and first and step.starts >= first and (back is None or step.starts < back)
    ]
    ends = max((step.ends for step in worn_in if step.ends), default=None)
    return replace(mask, starts=first, ends=ends, effect_on=tuple(step.id for step in worn_in))


def _sealed(facts: Facts, mask: Measure) -> tuple[Measure, ...]:
    """The mask, and the razor where a beard would break its seal."""
    bearded = mask.what in _CARTRIDGES and facts.survey.work.clean_shaven is False
    return (mask, _SHAVE) if bearded else (mask,)


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
    allowed = [] if _no_cartridge(facts, over) else [_cartridge(facts, kind) for kind in _CARTRIDGES]
    if facts.survey.work.who == "firm":
        allowed.append(supplied_air(facts))
    enough = [m for m in allowed if (m.factor or 1.0) >= needed and m.feasible != "no"]
    return min(enough, key=lambda m: (_EASE.index(m.feasible), m.factor or 1.0), default=None)


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


def _finding(facts: Facts, exposure: Exposure) -> Finding:
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
        ),
        relax="mask_or_more_air",
        sources=(limit.source,) if limit else (),
        marks=(limit.mark,) if limit else (),
    )
