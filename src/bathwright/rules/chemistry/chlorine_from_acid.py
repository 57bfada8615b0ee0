"""Bleach and an acid meet.

What
    A chlorine cleaner and an acid follow each other on one surface or drain with too little between them: here it
    takes three rinses, a pH strip between 6 and 8, a dry surface, and a day. One that nobody can name counts as both.
Why
    Together they give chlorine gas. It lies low, in the bath. A teaspoon of bleach can bring a small bathroom to the
    value at which a person may not get out alone. One rinse between the two was not enough in a published case.
Strength
    Danger, everywhere; no law is needed for it. Met when the steps hold flush and day, or when one is left out.
Fires
    "bleach an hour ago, then descaler", "wished bleach was dropped for the descaler".
Stays silent
    "bleach rinsed, checked, dry, two days old": no alarm about residue that is gone. "bleach and no acid".
Sources
    cdc-mmwr-1991-40-36: the case with one rinse. cdc-mmwr-2020-69-23: vinegar. niosh-idlh-chlorine: the value.
    own-judgement: what must lie between.
"""

from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts
from bathwright.rules.meetings import ACIDS, check_family

CODE = "chlorine-from-acid"
SOURCES = ("cdc-mmwr-1991-40-36", "cdc-mmwr-2020-69-23", "niosh-idlh-chlorine", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop where bleach and acid would meet."""
    return check_family(CODE, ACIDS, facts)
