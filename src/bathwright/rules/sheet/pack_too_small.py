"""One pack is not enough.

What
    The need of a product, at its upper value, is more than one pack holds.
Why
    Paint that is stretched makes a thin film that wears through. A second pack must be at hand before the first coat.
Strength
    Good practice; binds nobody. It is told, with the number of packs.
Fires
    "1.3 L needed, pack of 1 L".
Stays silent
    "0.6 L needed, pack of 1 L", "pack not printed".
Sources
    own-computation: area, film, loss. The pack is from the sheet.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.plan import Material
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount, margin_upper, word

CODE = "pack-too-small"
SOURCES = ("own-computation",)


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells for each product of which one pack is not enough."""
    return tuple(
        _finding(material, material.pack_m3)
        for material in facts.materials
        if material.pack_m3 and material.needed_m3.high > material.pack_m3
    )


def _finding(material: Material, pack_m3: float) -> Finding:
    needed = material.needed_m3.high
    values = [
        word("product", material.product),
        amount("needed", needed, "liquid"),
        amount("pack", pack_m3, "liquid"),
    ]
    values += [amount("packs", float(material.packs), None)] if material.packs else []
    return Finding(
        code=CODE,
        about=(material.sheet,),
        strength="good_practice",
        consequence="note",
        effect="tells",
        value=needed,
        limit=pack_m3,
        kind="liquid",
        basis="upper_bound",
        margin=margin_upper(needed, pack_m3),
        values=tuple(values),
        relax="more_packs",
    )
