"""Only fired glaze is sanded, for pay, in old housing in the United States.

What
    Paid work in housing built before 1978 that disturbs nothing but the original glaze or enamel.
Why
    The agency answered that its renovation rule reaches paint and other surface coatings, not glaze that was burnt on.
    Lawyers call the answer not binding. The dust of old glaze may hold lead all the same.
Strength
    Advice. The renovation rule does not apply; rules for employees about lead at work still may.
Fires
    "firm sands the original glaze in a house of 1960".
Stays silent
    "the bath was coated before", "unpaid owner", "acrylic has no glaze".
Sources
    epa-glaze-reply-2014 and cfr-16-1303-2: what a surface coating is. cfr-1926-62: employees.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import GLAZED, Facts, body, disturbs, has_old_coat, is_paid, law_set, observed

CODE = "lead-glaze-not-covered"
SOURCES = ("epa-glaze-reply-2014", "cfr-16-1303-2", "cfr-1926-62")

BUILT_BEFORE = 1978


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells that the renovation rule does not reach glaze, and that the advice stays."""
    year = facts.survey.building.year
    old = year is not None and year < BUILT_BEFORE
    glaze_only = body(facts) in GLAZED and has_old_coat(facts) is False and disturbs(facts)
    lead_free = observed(facts.fixture, "lead_xrf") == "none"
    if law_set(facts) != "US" or is_paid(facts) is not True or not old or not glaze_only or lead_free:
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
