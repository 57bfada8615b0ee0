"""The vapour may come near the share that explodes.

What
    The highest computed share of the lower explosive limit, in the room or low in the bath, at its upper value.
    Above a tenth: hazardous air, nobody goes in. Above a quarter: more than spraying places may ever have.
Why
    Air in a bathroom is not even. Where the mean is a tenth, a pocket may explode.
Strength
    Above a tenth: advice (a workplace definition; it binds employers in closed spaces). Above a quarter: danger.
    No measure cures it: less at a time or more air makes another plan.
Fires
    "12 % of the lower limit in the bath", "30 % of the lower limit in the bath".
Stays silent
    "4 % of the lower limit".
Sources
    cfr-1910-146: a tenth. nfpa-33: a quarter (quoted).
"""

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount, margin_upper, word

CODE = "explosive-share"
SOURCES = ("cfr-1910-146", "nfpa-33")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for the highest share when it passes a tenth of the lower limit."""
    shares = [e for e in facts.exposures if e.measure == "explosive_share"]
    if not shares:
        return ()
    worst = max(shares, key=lambda e: e.outside.high)
    hazardous = facts.knowledge.number("air.explosion.hazardous_share").value
    ceiling = facts.knowledge.number("air.explosion.spray_ceiling").value
    if worst.outside.high <= hazardous:
        return ()
    return (_finding(worst, ceiling if worst.outside.high > ceiling else hazardous, worst.outside.high > ceiling),)


def _finding(worst: Exposure, limit: float, danger: bool) -> Finding:
    upper = worst.outside.high
    return Finding(
        code=CODE,
        about=(worst.zone,),
        strength="danger" if danger else "advice",
        consequence="kills",
        effect="stops",
        value=upper,
        limit=limit,
        kind="share",
        basis=worst.basis,
        margin=margin_upper(upper, limit),
        values=(
            word("zone", worst.zone),
            amount("share", upper, "share"),
            amount("central", worst.outside.central, "share"),
        ),
        relax="more_air_or_less_at_a_time",
    )
