"""A product with dichloromethane is planned or wished.

What
    Any product of this job, used or wished, that holds dichloromethane (methylene chloride).
Why
    At least fourteen people died in the US from 2000 to 2012 while they stripped baths with it. The vapour fills the
    bath, takes consciousness without warning, and no cartridge holds it back.
Strength
    Danger, everywhere, whoever works and whatever the law says. Nothing that a household or firm has cures it.
Fires
    "wished stripper with dichloromethane".
Stays silent
    "wished stripper with benzyl alcohol".
Sources
    cdc-mmwr-2012-61-7, osha-niosh-2013-110, jama-intern-med-2021: the deaths.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import DICHLOROMETHANE, Facts, every_sheet, holds
from bathwright.rules.say import word

CODE = "dichloromethane-kills"
SOURCES = ("cdc-mmwr-2012-61-7", "osha-niosh-2013-110", "jama-intern-med-2021")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that nothing cures, for each product that holds it."""
    return tuple(
        Finding(
            code=CODE,
            about=(sheet.id,),
            strength="danger",
            consequence="kills",
            effect="stops",
            values=(word("product", sheet.product),),
            relax="other_stripping",
        )
        for sheet in every_sheet(facts)
        if holds(sheet, DICHLOROMETHANE, "dichloromethane")
    )
