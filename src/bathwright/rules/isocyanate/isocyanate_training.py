"""Paid work with diisocyanates in the European Union or Great Britain asks for training.

What
    Work for pay with a product that holds 0.1 % or more of a diisocyanate, sprayed or rolled.
Why
    Whoever is made allergic once can never work with it again.
Strength
    Law in the EU since 24 August 2023 and in GB. Bound: whoever uses it for a living, and the employer. The private
    user is not bound; the danger is the same.
Fires
    "paid work with an isocyanate coating in Germany".
Stays silent
    "the same work unpaid", "less than 0.1 % told", "the same work in the US".
Sources
    reach-xvii-74: the duty. gb-si-2021-904: as retained in Great Britain.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, holds_isocyanate, in_force, is_paid, law_set, planned_sheets
from bathwright.rules.say import question, with_measures, word

CODE = "isocyanate-training"
SOURCES = ("reach-xvii-74", "gb-si-2021-904")

LEAST_SHARE = 0.001
_DUTY = {"EU": "reach-74-training", "GB": "gb-reach-74-training"}


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that training lifts; a question when nobody told whether the work is paid."""
    place = law_set(facts)
    duty = _DUTY.get(place)
    if duty is None or not in_force(facts, duty, place) or is_paid(facts) is False:
        return ()
    said: list[Said] = []
    for sheet in planned_sheets(facts):
        if holds_isocyanate(facts, sheet) and _enough(facts, sheet):
            said += _trained(sheet)
    if said and is_paid(facts) is None:
        return (question("paid", CODE, "yes", tuple(said), "who_pays_whom"),)
    return tuple(said)


def _enough(facts: Facts, sheet: Sheet) -> bool:
    """Whether the monomer may reach 0.1 %; without a listed monomer it may."""
    known = facts.knowledge.substances
    shares = [
        entry.high
        for part in sheet.parts
        for entry in part.composition or ()
        if entry.cas in known and "isocyanate" in known[entry.cas].tags and "resin" not in known[entry.cas].tags
    ]
    return not shares or max(shares) >= LEAST_SHARE


def _trained(sheet: Sheet) -> tuple[Said, ...]:
    finding = Finding(
        code=CODE,
        about=(sheet.id,),
        strength="law",
        bound="professionals",
        consequence="harms",
        effect="stops",
        values=(word("product", sheet.product),),
        relax="training_or_other_system",
    )
    training = Measure(
        id="isocyanate-training", act="isocyanate_training", who="painter", feasible="ask", when="before_start"
    )
    return with_measures(finding, training)
