"""A dust mask, or a fan with a dust filter, is no protection against vapour.

What
    Vapour is let out, and all that the household named against it is a dust mask, or a fan with a filter that blows
    back into the home.
Why
    A dust filter stops dust. Vapour passes it as if it were not there.
Strength
    Danger, everywhere. It is told; the plan counts such a thing as nothing.
Fires
    "only a dust mask", "a filter fan that blows into the home".
Stays silent
    "a half mask beside the dust mask", "nothing but water leaves".
Sources
    cfr-42-84: what particle filters are tested for.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, equipment, lets_vapour_out
from bathwright.rules.say import word

CODE = "dust-mask-no-vapour"
SOURCES = ("cfr-42-84",)


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells for each thing that is counted as nothing."""
    if not lets_vapour_out(facts):
        return ()
    masks = equipment(facts, "half_mask_vapour", "full_mask_vapour", "supplied_air")
    dust = equipment(facts, "dust_mask")
    said = [_finding("dust_mask")] if dust and not masks else []
    fans = equipment(facts, "box_fan_filter")
    if fans and not (facts.air and facts.air.fan) and all(fan.discharges == "home" for fan in fans):
        said.append(_finding("box_fan_filter"))
    return tuple(said)


def _finding(what: str) -> Finding:
    return Finding(
        code=CODE,
        about=(what,),
        strength="danger",
        consequence="harms",
        effect="tells",
        values=(word("what", what),),
        relax="vapour_mask",
    )
