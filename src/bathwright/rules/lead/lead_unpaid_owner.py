"""An owner who works unpaid on an old coat in old housing in the United States.

What
    The same work that the renovation rule covers when it is paid, but done unpaid in the own home.
Why
    The rule does not bind this person. The dust is the same.
Strength
    Advice of the agency. No law binds the unpaid owner, and this finding says so.
Fires
    "owner sands an old coat in a house of 1950".
Stays silent
    "house of 1990", "no coat was put on later", "a firm does the work".
Sources
    epa-rrp-questions: unpaid work is not covered, the practices are advised all the same.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, disturbs, has_old_coat, is_paid, law_set, observed

CODE = "lead-unpaid-owner"
SOURCES = ("epa-rrp-questions",)

BUILT_BEFORE = 1978


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells that no law binds, and that the dust harms all the same."""
    year = facts.survey.building.year
    old = year is not None and year < BUILT_BEFORE
    tested = "none" in (observed(facts.fixture, "lead_xrf"), observed(facts.fixture, "lead_chip_lab_coat"))
    coat = has_old_coat(facts) is True and disturbs(facts)
    if law_set(facts) != "US" or is_paid(facts) is not False or not old or not coat or tested:
        return ()
    return (
        Finding(
            code=CODE,
            about=(facts.fixture.id,),
            strength="advice",
            consequence="harms",
            effect="tells",
            relax="test_lead",
        ),
    )
