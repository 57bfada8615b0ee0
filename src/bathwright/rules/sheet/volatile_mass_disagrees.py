"""The papers disagree about how much evaporates.

What
    What leaves the coating as vapour can be had in three ways: the printed VOC, density and solids by weight, and the
    composition. The largest and the smallest differ by more than 15 % of the largest.
Why
    One of the papers is wrong or leaves something out: a VOC number leaves out exempt solvents such as acetone.
    The plan counts the largest.
Strength
    Good practice; binds nobody. It is told.
Fires
    "VOC far below the composition".
Stays silent
    "three ways within a tenth", "one way only".
Sources
    cfr-40-59: what a VOC number leaves out. own-judgement: 15 %.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount, margin_upper, word

CODE = "volatile-mass-disagrees"
SOURCES = ("cfr-40-59", "own-judgement")

LARGEST_DIFFERENCE = 0.15


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells when the ways differ by more than the limit."""
    ways = {
        "voc": facts.volatile_by_voc_kg,
        "solids": facts.volatile_by_solids_kg,
        "composition": facts.volatile_by_composition_kg,
    }
    known = {name: mass for name, mass in ways.items() if mass is not None}
    if len(known) < 2 or max(known.values()) <= 0:
        return ()
    smallest, largest = min(known, key=known.__getitem__), max(known, key=known.__getitem__)
    if known[smallest] >= (1 - LARGEST_DIFFERENCE) * known[largest]:
        return ()
    difference = 1 - known[smallest] / known[largest]
    return (
        Finding(
            code=CODE,
            about=(facts.coating.id,),
            strength="good_practice",
            consequence="note",
            effect="tells",
            value=difference,
            limit=LARGEST_DIFFERENCE,
            kind="share",
            basis="printed",
            margin=margin_upper(difference, LARGEST_DIFFERENCE),
            values=(
                word("product", facts.coating.product),
                word("smallest", smallest),
                amount("first", known[smallest], "mass"),
                word("largest", largest),
                amount("second", known[largest], "mass"),
            ),
            relax="ask_maker",
        ),
    )
