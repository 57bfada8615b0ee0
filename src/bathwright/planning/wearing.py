"""What is worn in which step: the measures of the plan, laid on the steps that they are for."""

import dataclasses
from collections.abc import Iterable

from bathwright.domain.findings import Measure
from bathwright.domain.steps import Step

_VAPOUR = ("solvent_wipe", "mix_batch", "coat", "abrade_and_wipe")


def with_wears(steps: tuple[Step, ...], measures: Iterable[Measure]) -> tuple[Step, ...]:
    """Masks for the steps that open or lay on what evaporates, gloves and goggles for those that use a product."""
    masks = [m.id for m in measures if m.act == "wear_mask" and m.feasible != "no"]
    gloves = [m.id for m in measures if m.act == "wear_gloves_goggles" and m.feasible != "no"]
    return tuple(dataclasses.replace(step, wears=tuple(_worn(step, masks, gloves))) for step in steps)


def _worn(step: Step, masks: list[str], gloves: list[str]) -> list[str]:
    worn = list(masks) if step.act in _VAPOUR else []
    if step.uses or step.act in _VAPOUR:
        worn += gloves
    return worn
