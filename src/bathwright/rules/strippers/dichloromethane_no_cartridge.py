"""A cartridge mask does not hold dichloromethane back.

What
    A product with dichloromethane was wished. No mask with cartridges counts against it.
Why
    It passes a vapour cartridge early, and its smell comes above the limit, so nothing warns.
Strength
    Danger, everywhere. (Workplace rules in the US name supplied air only; they bind employers.)
Fires
    "wished stripper with dichloromethane and a half mask at hand".
Stays silent
    "wished stripper with benzyl alcohol", "nothing wished".
Sources
    niosh-npg-appendix-e: supplied air only. cfr-1910-1052: the workplace rule.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, holds_dichloromethane, wished_sheets
from bathwright.rules.say import word

CODE = "dichloromethane-no-cartridge"
SOURCES = ("niosh-npg-appendix-e", "cfr-1910-1052")


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells, for each wished product that holds it."""
    return tuple(
        Finding(
            code=CODE,
            about=(sheet.id,),
            strength="danger",
            consequence="kills",
            effect="tells",
            values=(word("product", sheet.product),),
            relax="other_stripping",
        )
        for sheet in wished_sheets(facts)
        if holds_dichloromethane(facts, sheet)
    )
