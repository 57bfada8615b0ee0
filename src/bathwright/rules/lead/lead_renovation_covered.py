"""Paid work on an old coat in old housing in the United States.

What
    Work for pay or in a let home, in housing built before 1978, that sands or scrapes a coat which somebody put on
    later, on more than 6 square feet, and no test has shown the coat free of lead.
Why
    Old coats may hold lead. The rule wants a certified firm, a closed work area, cleaning, and records.
Strength
    Law in the US since 22 April 2010. Bound: whoever renovates for pay, and landlords. Not bound: the unpaid owner.
    The year of the house counts, not that of the bath. Fired glaze is no coat under this rule.
Fires
    "paid strip of an old coat in a house of 1950", "landlord in his let flat".
Stays silent
    "the same work unpaid", "house of 1978", "only the glaze is sanded".
Sources
    cfr-40-745-82 and cfr-40-745-83: who is covered, 6 square feet. fr-73-21692: the date.
    epa-rrp-questions: rent counts as pay. epa-glaze-reply-2014: glaze is not reached.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, disturbs, has_old_coat, in_force, is_paid, law_set, observed
from bathwright.rules.say import amount, margin_upper, question, with_measures

CODE = "lead-renovation-covered"
SOURCES = ("cfr-40-745-82", "cfr-40-745-83", "fr-73-21692", "epa-rrp-questions", "epa-glaze-reply-2014")

BUILT_BEFORE = 1978
LARGEST_EXEMPT_M2 = 6 * 0.3048**2


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that a certified firm lifts; questions on year, pay and old coat where one of them decides."""
    if not _in_scope(facts):
        return ()
    covered = _covered(facts)
    year, paid, coat = facts.survey.building.year, is_paid(facts), has_old_coat(facts)
    said: list[Said] = []
    if year is None:
        said.append(question("year", CODE, "before_1978", covered, "deed_or_tax_paper"))
    if paid is None:
        said.append(question("paid", CODE, "yes", covered, "who_pays_whom"))
    if coat is None:
        about = (facts.fixture.id,)
        said.append(question("earlier_coat", CODE, "coated_before", covered, "look_under_overflow_plate", about=about))
    return tuple(said) if said else covered


def _in_scope(facts: Facts) -> bool:
    """Nothing told takes the job out of the rule's reach."""
    year = facts.survey.building.year
    tested = "none" in (observed(facts.fixture, "lead_xrf"), observed(facts.fixture, "lead_chip_lab_coat"))
    return (
        law_set(facts) == "US"
        and in_force(facts, "lead-renovation-work-practices", "US")
        and (year is None or year < BUILT_BEFORE)
        and is_paid(facts) is not False
        and has_old_coat(facts) is not False
        and disturbs(facts)
        and not tested
        and (not facts.area or _area(facts) > LARGEST_EXEMPT_M2)
    )


def _area(facts: Facts) -> float:
    return sum(part.area_m2 for part in facts.area)


def _covered(facts: Facts) -> tuple[Said, ...]:
    area = _area(facts) or None
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="law",
        bound="landlord" if facts.survey.building.tenure == "landlord" else "paid_renovators",
        consequence="harms",
        effect="stops",
        value=area,
        limit=LARGEST_EXEMPT_M2,
        kind="area",
        basis="central" if area else None,
        margin=margin_upper(area, LARGEST_EXEMPT_M2) if area else None,
        values=(amount("area", area, "area"),) if area else (),
        relax="certified_firm_or_test",
    )
    firm = Measure(id="certified-firm", act="certified_firm", who="household", feasible="ask", when="before_start")
    return with_measures(finding, firm)
