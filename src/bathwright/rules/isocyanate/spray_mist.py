"""A coating is sprayed: mist in a small room.

What
    The method is spraying or a spray can. A coating of two parts that an unpaid household sprays stops the job: only
    a firm with supplied air does that. One part from a can: a mask with particle and vapour filters, and everybody
    else out of the home. Isocyanate as mist has a rule of its own, which is stricter.
Why
    Mist hangs for hours and goes deep into the lungs; resin and hardener that have not met yet go with it. A vapour
    filter alone does not hold drops back.
Strength
    Danger, everywhere; binds nobody who is unpaid.
Fires
    "household sprays two parts", "household with a spray can".
Stays silent
    "two parts rolled", "isocyanate sprayed has a rule of its own".
Sources
    hse-mr2: air-fed masks, others out. own-judgement: two parts by a household.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, equipment, holds_isocyanate, others
from bathwright.rules.measures import leave_home, supplied_air, worn
from bathwright.rules.say import best_available, question, with_measures, word

CODE = "spray-mist"
SOURCES = ("hse-mr2", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for two parts sprayed by a household; mask and an empty home for one part; supplied air for a firm."""
    sheet = facts.coating
    if facts.method not in ("spray", "aerosol") or holds_isocyanate(facts, sheet):
        return ()
    finding = _finding(facts, sheet)
    firm = facts.survey.work.who == "firm"
    if finding.effect == "stops" and not firm:
        return (finding,)
    people = others(facts)
    if people is None or any(person.can_leave is None for person in people):
        asks = "people" if people is None else "can_leave"
        asked: tuple[Said, ...] = (
            question(asks, CODE, "cannot_leave", (_finding(facts, sheet, "stops"),), "ask_each"),
        )
    else:
        asked = ()
    away = () if people == () else (leave_home(facts),)
    protects = (supplied_air(facts),) if firm else _mask(facts)
    return (*with_measures(finding, *protects, *away), *asked)


def _mask(facts: Facts) -> tuple[Measure, ...]:
    """The mask at hand, else a half mask, and a particle filter on it."""
    full = best_available(equipment(facts, "full_mask_vapour"), "no") == "have"
    half = best_available(equipment(facts, "half_mask_vapour"), "buy") == "have"
    kind = "full_mask_vapour" if full and not half else "half_mask_vapour"
    mask = worn(facts, kind, "buy", facts.knowledge.number(f"air.respirator.{kind}").value)
    particles = Measure(
        id="particle-filter", act="particle_filter", who="painter", feasible=mask.feasible, when=mask.when
    )
    return (mask, particles)


def _two_parts(sheet: Sheet) -> bool:
    return len(sheet.parts) > 1 or views.ratio(sheet) is not None or not sheet.parts


def _finding(facts: Facts, sheet: Sheet, effect: str = "") -> Finding:
    firm = facts.survey.work.who == "firm"
    stops = effect == "stops" or _two_parts(sheet) or firm
    return Finding(
        code=CODE,
        about=(sheet.id,),
        strength="danger",
        consequence="harms",
        effect="stops" if stops else "must_do",
        values=(word("product", sheet.product),),
        relax="firm_with_supplied_air",
    )
