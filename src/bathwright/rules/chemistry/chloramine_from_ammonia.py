"""Bleach and ammonia, or an amine, meet.

What
    A chlorine cleaner and ammonia, a quaternary disinfectant or an amine hardener follow each other on one surface or
    drain with too little between them: for ammonia a full flush and a day, for the others a full flush and dry.
Why
    Together they give chloramine gases, which burn the lungs within minutes in a closed room.
Strength
    Danger, everywhere. Met when the steps hold flush and day, or when one of the two is left out.
Fires
    "ammonia cleaner an hour ago, then bleach".
Stays silent
    "bleach flushed and dry before the amine hardener", "ammonia and no bleach".
Sources
    nejm-1999-tanen: a published poisoning. cdc-bleach-dilution: never mix. own-judgement: what must lie between.
"""

from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts
from bathwright.rules.meetings import NITROGEN, check_family

CODE = "chloramine-from-ammonia"
SOURCES = ("nejm-1999-tanen", "cdc-bleach-dilution", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop where bleach and ammonia or an amine would meet."""
    return check_family(CODE, NITROGEN, facts)
