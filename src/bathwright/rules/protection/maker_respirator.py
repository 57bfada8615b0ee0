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

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, equipment, planned_sheets
from bathwright.rules.measures import supplied_air, worn
from bathwright.rules.say import question, with_measures, word

CODE = "maker-respirator"
SOURCES = ("makers-sheet", "cfr-1910-134-table-1")

_MASKS = ("half_mask_vapour", "full_mask_vapour", "supplied_air")
_NOTHING = ("none", "not_needed")
_ROLES = ("coating", "primer", "solvent", "stripper")


def check(facts: Facts) -> tuple[Said, ...]:
    """One finding for the strictest demand of the opened products; a question for a word that is not known."""
    asked = {sheet.id: (sheet, _asked(sheet)) for sheet in planned_sheets(facts) if sheet.role in _ROLES}
    said: list[Said] = []
    best: tuple[Sheet, str] | None = None
    for sheet, words in asked.values():
        unknown = [name for name in words if name not in _MASKS and name not in (*_NOTHING, "dust_mask")]
        if unknown:
            stop = _finding(sheet, unknown[0])
            said.append(question("mask_kind", CODE, "supplied_air", (stop,), "ask_maker", about=(sheet.id, *unknown)))
        for name in words:
            if name in _MASKS and (best is None or _MASKS.index(name) > _MASKS.index(best[1])):
                best = (sheet, name)
    return (*said, *(_worn(facts, *best) if best else ()))


def _asked(sheet: Sheet) -> tuple[str, ...]:
    found = views.instruction(sheet, "respirator")
    return found[0].values if found else ()


def _worn(facts: Facts, sheet: Sheet, name: str) -> tuple[Said, ...]:
    finding = _finding(sheet, name)
    if name == "supplied_air":
        return with_measures(finding, supplied_air(facts)) if facts.survey.work.who == "firm" else (finding,)
    enough = [kind for kind in _MASKS[_MASKS.index(name) : 2] if equipment(facts, kind)]
    kind = next((k for k in enough if any(item.have == "have" for item in equipment(facts, k))), name)
    return with_measures(finding, worn(facts, kind, "buy", facts.knowledge.number(f"air.respirator.{kind}").value))


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
