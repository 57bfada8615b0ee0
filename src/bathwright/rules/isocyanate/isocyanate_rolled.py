"""A coating with an isocyanate hardener is rolled or brushed.

What
    A product of this plan holds an isocyanate, by number, by name or by what its head says, and it is not sprayed.
    Gloves, goggles and long sleeves keep it off the skin. Nobody with asthma or an allergy to such products works
    with it; such people leave the home meanwhile.
Why
    Rolling keeps most of it out of the air, not off the skin. Skin alone can make a person allergic for life, and
    whoever is allergic may not get the next breath of it without harm.
Strength
    Advice of public bodies; binds nobody who is unpaid. Whose trait it is stays private.
Fires
    "isocyanate coating rolled", "the one who works has asthma".
Stays silent
    "epoxy rolled", "isocyanate sprayed has a rule of its own".
Sources
    niosh-96-111: allergy for life. joeh-2013-10-597: bystanders. michigan-occupational-health-1970: brush and roller.
"""

from dataclasses import replace

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, equipment, holds_isocyanate, people_with, planned_sheets
from bathwright.rules.measures import leave_home
from bathwright.rules.say import best_available, hardest, question, with_measures, word

CODE = "isocyanate-rolled"
SOURCES = ("niosh-96-111", "joeh-2013-10-597", "michigan-occupational-health-1970")

_ALLERGIC = ("sensitised", "asthma")


def check(facts: Facts) -> tuple[Said, ...]:
    """Skin covered; people whom it harms at once do not work with it and are away."""
    if facts.method in ("spray", "aerosol"):
        return ()
    said: list[Said] = []
    for sheet in planned_sheets(facts):
        if holds_isocyanate(facts, sheet):
            said += with_measures(_finding(sheet, "skin"), _covered(facts))
            said += _allergic(facts, sheet)
    return tuple(said)


def _allergic(facts: Facts, sheet: Sheet) -> tuple[Said, ...]:
    stop = replace(_finding(sheet, "people"), effect="stops")
    found = people_with(facts, *_ALLERGIC)
    said: list[Said] = []
    if any(person.works for person in found):
        said.append(replace(stop, about=(sheet.id, "painter")))
    away = [person for person in found if not person.works]
    if any(person.can_leave is False for person in away):
        said.append(stop)
    elif away:
        said += with_measures(stop, leave_home(facts))
    if any(person.can_leave is None for person in away):
        said.append(question("can_leave", CODE, "cannot_leave", (stop,), "ask_each"))
    people = facts.survey.people
    if people is None or any(person.traits is None for person in people):
        said.append(question("people", CODE, "worst", (stop,), "ask_each"))
    return tuple(said)


def _covered(facts: Facts) -> Measure:
    """The same gloves and goggles that the rule on skin and eyes asks for."""
    gloves = best_available(equipment(facts, "nitrile_gloves", "butyl_gloves"), "buy")
    feasible = hardest(gloves, best_available(equipment(facts, "goggles"), "buy"))
    return Measure(
        id="wear-gloves-goggles",
        act="wear_gloves_goggles",
        who="painter",
        feasible=feasible,
        when="during" if feasible == "have" else "before_start",
    )


def _finding(sheet: Sheet, what: str) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, what),
        strength="advice",
        consequence="harms",
        effect="must_do",
        values=(word("product", sheet.product),),
        relax="other_system",
    )
