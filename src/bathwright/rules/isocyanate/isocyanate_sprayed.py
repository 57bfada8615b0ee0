"""A coating with an isocyanate hardener is sprayed.

What
    The coating, or a product beside it, holds an isocyanate, and the method is spraying or a spray can.
Why
    As mist it goes deep into the lungs. One strong breath can make a person allergic for life; deaths are known.
    Measured while baths were sprayed, the air held about 120 times a workplace limit. Cartridge masks give no warning
    when they fail.
Strength
    Danger, everywhere. A household cannot cure it. A firm works with supplied air, and nobody else is in the home.
    Rolling lowers what is breathed very much; vapour rules still look at it.
Fires
    "household sprays an isocyanate coating", "firm sprays it with supplied air to be asked for".
Stays silent
    "the same coating rolled", "epoxy sprayed".
Sources
    hse-mr2: air-fed masks only, others out. niosh-96-111: deaths, allergy for life.
    michigan-occupational-health-1970: brush and roller. nco-bath-spraying-2007: measured values.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, holds_isocyanate, others, planned_sheets
from bathwright.rules.measures import leave_home, supplied_air
from bathwright.rules.say import with_measures, word

CODE = "isocyanate-sprayed"
SOURCES = ("hse-mr2", "niosh-96-111", "michigan-occupational-health-1970", "nco-bath-spraying-2007")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop when isocyanate is sprayed; supplied air and an empty home for a firm."""
    if facts.method not in ("spray", "aerosol"):
        return ()
    said: list[Said] = []
    for sheet in planned_sheets(facts):
        if not holds_isocyanate(facts, sheet) or sheet.role not in ("coating", "primer"):
            continue
        finding = Finding(
            code=CODE,
            about=(sheet.id,),
            strength="danger",
            consequence="kills",
            effect="stops",
            values=(word("product", sheet.product),),
            relax="firm_with_supplied_air",
        )
        said += _by_firm(facts, finding) if facts.survey.work.who == "firm" else (finding,)
    return tuple(said)


def _by_firm(facts: Facts, finding: Finding) -> tuple[Said, ...]:
    """Supplied air, and the home empty of everybody else; open when somebody cannot leave."""
    people = others(facts)
    if any(person.can_leave is False for person in people or ()):
        return (finding,)
    away = () if people == () else (leave_home(facts),)
    return with_measures(finding, supplied_air(facts), *away)
