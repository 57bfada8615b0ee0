"""Bleach and a solvent meet.

What
    A chlorine cleaner and acetone, alcohol, thinner or a stripper's solvent follow each other on one surface, drain
    or in one waste bag with too little between them: three rinses, a pH strip between 6 and 8, dry.
Why
    Together they give chloroform and heat; bleach feeds a fire.
Strength
    Danger, everywhere. Met when the steps hold the flush, or when one of the two is left out.
Fires
    "bleach, then alcohol wipe without rinse".
Stays silent
    "bleach flushed and dry before the alcohol wipe", "mineral spirits, which bleach leaves alone".
Sources
    odabasi-2008: chlorinated vapour measured in rooms. general-chemistry: the reactions. own-judgement: the sequence.
"""

from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts
from bathwright.rules.meetings import SOLVENTS, check_family

CODE = "bleach-with-solvent"
SOURCES = ("odabasi-2008", "general-chemistry", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop where bleach and a solvent would meet."""
    return check_family(CODE, SOLVENTS, facts)
