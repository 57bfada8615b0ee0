"""There is mould, and no product against mould in the plan.

What
    Mould was told, and no bleach and no peroxide is in the plan: the mould is washed off with detergent.
Why
    A coat on mould does not hold, and whoever sees mould reaches for bleach. Bleach near acid, solvent or ammonia makes
    poison.
Strength
    A note.
Fires
    "mould and no wish", "the bleach was dropped".
Stays silent
    "mould and bleach in the plan", "no mould".
Sources
    own-judgement: washing is enough on a hard surface that is sanded afterwards.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, observed, planned_sheets

CODE = "mould-washed"
SOURCES = ("own-judgement",)

_AGAINST_MOULD = {"bleach", "peroxide"}


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells that detergent does it."""
    treated = any(_AGAINST_MOULD & set(sheet.chemistries) for sheet in planned_sheets(facts))
    if observed(facts.fixture, "mould") != "some" or treated:
        return ()
    return (
        Finding(
            code=CODE,
            about=(facts.fixture.id,),
            strength="good_practice",
            consequence="note",
            effect="tells",
            relax="wash_twice",
        ),
    )
