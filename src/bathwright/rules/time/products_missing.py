"""Products of the plan that are not in the home yet.

What
    The plan uses a product that was not told to be at hand (`at_hand` in the survey).
Why
    A job that stops for a missing can misses its windows, and the room stays shut.
Strength
    Good practice; binds nobody. Met by getting it before the start.
Fires
    "nothing at hand", "one of two at hand".
Stays silent
    "all at hand".
Sources
    own-judgement: everything stands ready before the first step.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount, measure_id, with_measures

CODE = "products-missing"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """One finding with a measure for each product."""
    missing = [material for material in facts.materials if not material.have]
    if not missing:
        return ()
    finding = Finding(
        code=CODE,
        about=tuple(material.sheet for material in missing),
        strength="good_practice",
        consequence="delays",
        effect="must_do",
        values=(amount("products", float(len(missing)), None),),
        relax="get_the_products",
    )
    measures = [
        Measure(
            id=measure_id("buy_product", material.sheet),
            act="buy_product",
            who="household",
            what=material.product,
            feasible="buy",
            when="before_start",
        )
        for material in missing
    ]
    return with_measures(finding, *measures)
