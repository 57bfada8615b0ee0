"""Care of the finished bath and where the leftovers go."""

from collections.abc import Sequence

from bathwright.domain.plan import CareRule, WasteRule
from bathwright.domain.steps import Clock
from bathwright.planning.attempt import Attempt

_ALWAYS = (
    "soft_cloth_mild_soap", "no_abrasives", "no_bleach_acid_solvent", "no_suction_mat", "no_standing_bottles",
    "mend_drips", "report_chips",
)  # fmt: skip


def care_rules(six: Sequence[Clock]) -> tuple[CareRule, ...]:
    """Rules for the first weeks with their end, then the lasting ones."""
    at = {clock.name: clock.at for clock in six}
    return (
        CareRule(code="no_hot_water_before", until=at.get("full_bath")),
        CareRule(code="wipe_dry_first_weeks", until=at.get("hard")),
        *(CareRule(code=code) for code in _ALWAYS),
    )


def waste_rules(best: Attempt) -> tuple[WasteRule, ...]:
    """By what the steps leave over."""
    job = best.job
    out = [WasteRule(code="hardened_leftovers", about=job.coating.id)]
    if job.beside.wipe:
        out.insert(0, WasteRule(code="solvent_rags_outdoors", about=job.beside.wipe.id))
    out.append(WasteRule(code="liquid_leftovers_collection"))
    if any(step.act in ("wet_sand", "scrape_old_coat") for step in best.procedure.steps):
        out.append(WasteRule(code="sanding_slurry_bagged"))
    return (*out, WasteRule(code="empty_cans"), WasteRule(code="masking_after_cure"))
