"""A product with dichloromethane is planned or wished.

What
    Any product of this job, used or wished, that holds dichloromethane (methylene chloride), by number, by name or by
    what its head says; a share of nothing is none. A stripper of which more than a twentieth is not named, or is not
    known here, may be one: it is asked, and counts as one until the maker says otherwise.
Why
    At least fourteen people died in the US from 2000 to 2012 while they stripped baths with it. The vapour fills the
    bath, takes consciousness without warning, and no cartridge holds it back.
Strength
    Danger, everywhere, whoever works and whatever the law says. Nothing that a household or firm has cures it.
Fires
    "wished stripper with dichloromethane", "wished stripper of which nothing is told".
Stays silent
    "wished stripper with benzyl alcohol".
Sources
    cdc-mmwr-2012-61-7, osha-niosh-2013-110, jama-intern-med-2021: the deaths. own-judgement: a twentieth.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import LEAST_UNDISCLOSED, Facts, every_sheet, holds_dichloromethane, undisclosed_share
from bathwright.rules.say import question, word

CODE = "dichloromethane-kills"
SOURCES = ("cdc-mmwr-2012-61-7", "osha-niosh-2013-110", "jama-intern-med-2021", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that nothing cures, for each product that holds it; a question for each stripper that may."""
    said: list[Said] = []
    for sheet in every_sheet(facts):
        if holds_dichloromethane(facts, sheet):
            said.append(_finding(sheet))
        elif sheet.role == "stripper" and undisclosed_share(facts, sheet) > LEAST_UNDISCLOSED:
            said.append(question("composition", CODE, "dichloromethane", (_finding(sheet),), "ask_maker", (sheet.id,)))
    return tuple(said)


def _finding(sheet: Sheet) -> Finding:
    stripping = [word("stripper", sheet.product)] if sheet.role == "stripper" else []
    return Finding(
        code=CODE,
        about=(sheet.id,),
        strength="danger",
        consequence="kills",
        effect="stops",
        values=(word("product", sheet.product), *stripping),
        relax="other_stripping" if stripping else "leave_out",
    )
