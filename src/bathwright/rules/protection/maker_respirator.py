"""The mask that the maker's paper asks for.

What
    The coating or the solvent of the plan comes with a paper that asks for a mask: then that mask, or a better one, is
    worn while it is open, whatever the computed air says. Supplied air is brought by a firm.
Why
    Computation may only be stricter than the paper. The maker knows what the model does not: mist, hardener, dust.
Strength
    The maker's demand. Met by the mask at hand; had before the start else. A household has no supplied air: it stops.
    A word of the paper that is not known here is asked.
Fires
    "half mask asked for, at hand", "half mask asked for, none at hand", "supplied air asked for, an owner works".
Stays silent
    "no mask asked for".
Sources
    makers-sheet: the demand. cfr-1910-134-table-1: which mask keeps out more.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, equipment
from bathwright.rules.masks import MASKS, asked_by, maker_mask, papers, sealed, shaven, worn_while
from bathwright.rules.measures import supplied_air, worn
from bathwright.rules.say import question, with_measures, word

CODE = "maker-respirator"
SOURCES = ("makers-sheet", "cfr-1910-134-table-1")

_KNOWN = (*MASKS, "dust_mask", "none", "not_needed")


def check(facts: Facts) -> tuple[Said, ...]:
    """One finding for the strictest demand of the opened products; a question for a word that is not known."""
    said: list[Said] = []
    for sheet in papers(facts):
        unknown = [name for name in asked_by(sheet) if name not in _KNOWN]
        if unknown:
            stop = _finding(sheet, unknown[0])
            said.append(question("mask_kind", CODE, "supplied_air", (stop,), "ask_maker", about=(sheet.id, *unknown)))
    best = maker_mask(facts)
    return (*said, *(_worn(facts, *best) if best else ()))


def _worn(facts: Facts, sheet: Sheet, name: str) -> tuple[Said, ...]:
    finding = _finding(sheet, name)
    if name == "supplied_air":
        air = worn_while(facts, supplied_air(facts))
        return with_measures(finding, air) if facts.survey.work.who == "firm" else (finding,)
    enough = MASKS[MASKS.index(name) : MASKS.index("supplied_air")]
    at_hand = (kind for kind in enough if any(item.have == "have" for item in equipment(facts, kind)))
    kind = next(at_hand, name)
    mask = worn(facts, kind, "buy", facts.knowledge.number(f"air.respirator.{kind}").value)
    mask = worn_while(facts, mask)
    return (*with_measures(finding, *sealed(facts, mask)), *shaven(facts, mask, CODE))


def _finding(sheet: Sheet, name: str) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id,),
        strength="maker",
        consequence="harms",
        effect="stops",
        values=(word("product", sheet.product), word("mask", name)),
        relax="wear_what_the_paper_asks",
    )
