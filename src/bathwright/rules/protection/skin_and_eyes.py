"""Gloves and goggles for what burns skin and eyes or makes them allergic.

What
    A step opens an epoxy resin, an amine or isocyanate hardener, an acid, a chlorine cleaner, an alkali or a solvent:
    then chemical-resistant gloves and closed goggles are worn. Latex and thin rubber are no protection.
Why
    Resin and hardener are a leading cause of skin allergy at work, and it stays for life. A splash of hardener or acid
    eats the eye.
Strength
    Advice of public bodies; binds nobody who is unpaid. What is not at hand is had before the start.
Fires
    "epoxy, nothing at hand", "epoxy, gloves and goggles at hand".
Stays silent
    "soap and water only".
Sources
    hse-rr079: epoxy and skin. henriks-eckerman-2015: splashes only, change gloves when wetted.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, equipment, planned_sheets
from bathwright.rules.say import best_available, hardest, with_measures

CODE = "skin-and-eyes"
SOURCES = ("hse-rr079", "henriks-eckerman-2015")

_HARSH = {
    "epoxy-resin", "amine-hardener", "isocyanate-hardener", "descaler", "hydrochloric-acid", "oxalic-acid", "vinegar",
    "fluoride-acid", "bleach", "chlorinated-abrasive", "ammonia", "caustic", "trisodium-phosphate", "acetone",
    "alcohol", "lacquer-thinner", "mineral-spirits", "benzyl-alcohol", "nmp", "dichloromethane", "peroxide",
}  # fmt: skip


def check(facts: Facts) -> tuple[Said, ...]:
    """Gloves and goggles: worn when at hand, else had before the start."""
    if not any(_HARSH & set(sheet.chemistries) for sheet in planned_sheets(facts)):
        return ()
    gloves = best_available(equipment(facts, "nitrile_gloves", "butyl_gloves"), "buy")
    feasible = hardest(gloves, best_available(equipment(facts, "goggles"), "buy"))
    measure = Measure(
        id="wear-gloves-goggles",
        act="wear_gloves_goggles",
        who="painter",
        feasible=feasible,
        when="during" if feasible == "have" else "before_start",
    )
    finding = Finding(
        code=CODE, about=("painter",), strength="advice", consequence="harms", effect="must_do", relax="gloves_goggles"
    )
    return with_measures(finding, measure)
