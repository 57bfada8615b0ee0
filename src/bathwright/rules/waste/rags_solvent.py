"""Rags wet with a solvent that burns.

What
    The steps use a solvent, or a solvent-borne coating: its rags go outdoors at once, one by one, away from flames.
Why
    A heap of wet rags gives off vapour and lights at a spark. Such rags do not heat up by themselves.
Strength
    Danger, everywhere.
Fires
    "alcohol wipe".
Stays silent
    "water-borne coating, no solvent", "bleach and soap".
Sources
    rag-self-heating-notes: solvents do not self-heat. cfr-1910-107: rags away from sparks, every day.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, is_solvent_borne, planned_sheets
from bathwright.rules.say import with_measures, word

CODE = "rags-solvent"
SOURCES = ("rag-self-heating-notes", "cfr-1910-107")


def check(facts: Facts) -> tuple[Said, ...]:
    """Rags outdoors, for each product that is a solvent or holds one."""
    found = [sheet for sheet in planned_sheets(facts) if is_solvent_borne(facts, sheet)]
    if not found:
        return ()
    finding = Finding(
        code=CODE,
        about=tuple(sheet.id for sheet in found),
        strength="danger",
        consequence="harms",
        effect="must_do",
        values=(word("product", found[0].product),),
        relax="rags_outdoors",
    )
    spread = Measure(id="spread-rags", act="spread_rags", who="painter", feasible="have", when="during")
    return with_measures(finding, spread)
