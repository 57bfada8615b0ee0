"""What the mask rules share: the mask that the makers' papers ask for, when a mask is worn, and the razor."""

from dataclasses import replace

from bathwright.domain import views
from bathwright.domain.findings import Measure, Said
from bathwright.domain.sheet import Instruction, Sheet
from bathwright.rules.facts import Facts, planned_sheets, volatile_steps
from bathwright.rules.say import question

CARTRIDGES = ("half_mask_vapour", "full_mask_vapour")
MASKS = (*CARTRIDGES, "supplied_air")  # each keeps out more than the one before
SHAVE = Measure(id="shave", act="shave", who="painter", feasible="have", when="before_start")
_ROLES = ("coating", "primer", "solvent", "stripper")


def asked_by(sheet: Sheet) -> tuple[str, ...]:
    """All words of a sheet on the mask that it asks for, over all its papers."""
    found = [fact.value for fact in views.facts_of(sheet, "respirator")]
    return tuple(dict.fromkeys(name for value in found if isinstance(value, Instruction) for name in value.values))


def papers(facts: Facts) -> tuple[Sheet, ...]:
    """The opened products whose word on masks counts: coating, primer, solvent, stripper."""
    return tuple(sheet for sheet in planned_sheets(facts) if sheet.role in _ROLES)


def maker_mask(facts: Facts) -> tuple[Sheet, str] | None:
    """The strongest mask that an opened product asks for, and the product; None when no paper asks for one."""
    found = [(sheet, name) for sheet in papers(facts) for name in asked_by(sheet) if name in MASKS]
    return max(found, key=lambda entry: MASKS.index(entry[1]), default=None)


def worn_while(facts: Facts, mask: Measure) -> Measure:
    """The mask with its hours: each attended step from the first that lets vapour out until the air is good again."""
    vapour = [step for step in volatile_steps(facts) if step.starts is not None]
    if not vapour or facts.air is None:
        return mask
    first, back = vapour[0].starts, facts.air.back_at
    worn_in = [
        step
        for step in facts.steps
        if step.starts and first and step.starts >= first and (back is None or step.starts < back)
    ]
    ends = max((step.ends for step in worn_in if step.ends), default=None)
    return replace(mask, starts=first, ends=ends, effect_on=tuple(step.id for step in worn_in))


def sealed(facts: Facts, mask: Measure) -> tuple[Measure, ...]:
    """The mask, and the razor where a beard would break its seal."""
    bearded = mask.what in CARTRIDGES and facts.survey.work.clean_shaven is False
    return (mask, SHAVE) if bearded else (mask,)


def shaven(facts: Facts, mask: Measure, code: str) -> tuple[Said, ...]:
    """The question whether the face is clean-shaven, where it was not told."""
    if mask.what not in CARTRIDGES or facts.survey.work.clean_shaven is not None:
        return ()
    return (question("clean_shaven", code, "no", (SHAVE,), "say_yes_or_no"),)
