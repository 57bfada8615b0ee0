"""Somebody of the home cannot leave, and the coating asks for an empty home.

What
    The coating is solvent-borne, holds an isocyanate or is sprayed, or the computed air of the home is unfit, and
    somebody who does not work cannot leave, or all cannot be away for so long.
Why
    Nobody but the one who works may be in that air, and vapour goes under doors.
Strength
    Good practice of the trade; binds nobody. Nothing cures it but another coating.
Fires
    "somebody cannot leave, solvent-borne coating", "all can leave, but not for so long".
Stays silent
    "somebody cannot leave, water-borne coating and clean air", "everybody can leave".
Sources
    trade-pages: go or no-go. own-judgement: which coatings.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, holds_isocyanate, is_solvent_borne, others
from bathwright.rules.measures import leave_home
from bathwright.rules.say import amount, question

CODE = "household-cannot-leave"
SOURCES = ("trade-pages", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop when somebody cannot leave; a question when nobody told."""
    if not _home_must_be_empty(facts):
        return ()
    people = others(facts)
    stuck = len([p for p in people or () if p.can_leave is False])
    finding = Finding(
        code=CODE,
        about=("people",),
        strength="good_practice",
        consequence="harms",
        effect="stops",
        values=(amount("people", float(stuck), None),) if stuck else (),
        relax="other_system",
    )
    if people is None:
        return (question("people", CODE, "cannot_leave", (finding,), "ask_each"),)
    if stuck or (people and leave_home(facts).feasible == "no"):
        return (finding,)
    if any(p.can_leave is None for p in people):
        return (question("can_leave", CODE, "cannot_leave", (finding,), "ask_each"),)
    return ()


def _home_must_be_empty(facts: Facts) -> bool:
    if facts.air is not None:
        sprayed = facts.method in ("spray", "aerosol") and holds_isocyanate(facts, facts.coating)
        return sprayed or facts.air.away_from is not None
    harsh = is_solvent_borne(facts, facts.coating) or holds_isocyanate(facts, facts.coating)
    return harsh or facts.method in ("spray", "aerosol")
