"""A product that the household wishes to use and that the plan does not use.

What
    Each wish that the plan leaves out, with its reason: the coating's paper names another solvent; a stripper is never
    in the steps; the product is of the wrong kind for this use; another one does this already; there is nothing to use
    it on. What was left out because two products must not meet, or because it has no place in a home, is told there.
Why
    Whoever told a wish must hear what became of it, or uses the product after all.
Strength
    A note.
Fires
    "another solvent than the paper names", "a stripper", "a sealant to fill chips".
Stays silent
    "the wish is used", "left out because of another product", "no wish".
Sources
    makers-sheet: the solvent that it names. own-judgement: the rest.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Wish
from bathwright.rules.facts import Facts, holds, holds_dichloromethane
from bathwright.rules.say import word

CODE = "wish-refused"
SOURCES = ("makers-sheet", "own-judgement")

_ROLES = {"strip": "stripper", "fill": "filler", "seal": "sealant", "wipe": "solvent"}
_NMP = "872-50-4"


def check(facts: Facts) -> tuple[Said, ...]:
    """A note for each wish that the plan leaves out and that no other rule tells."""
    used = {sheet.id for sheet in facts.sheets}
    return tuple(
        _finding(wish, sheet, _reason(facts, wish, sheet))
        for wish, sheet in facts.wishes
        if sheet is not None and sheet.id not in used and not _told_elsewhere(facts, wish, sheet)
    )


def _told_elsewhere(facts: Facts, wish: Wish, sheet: Sheet) -> bool:
    """Left out for chemistry, or a stripper that has rules of its own."""
    if wish.use != "strip":
        return sheet.id in facts.dropped
    return holds_dichloromethane(facts, sheet) or holds(sheet, _NMP, "nmp")


def _reason(facts: Facts, wish: Wish, sheet: Sheet) -> str:
    """Why the plan leaves it out."""
    if sheet.role != _ROLES.get(wish.use, "cleaner"):
        return "wrong_kind"
    if wish.use == "strip":
        return "no_stripper"
    if wish.use == "wipe":
        return "paper_names_another" if views.instruction(facts.coating, "wipe_with") else "one_is_enough"
    others = [other for other, _ in facts.wishes if other.use == wish.use]
    return "one_is_enough" if len(others) > 1 else "nothing_to_use_on"


def _finding(wish: Wish, sheet: Sheet, reason: str) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id,),
        strength="maker" if reason == "paper_names_another" else "good_practice",
        consequence="note",
        effect="tells",
        values=(word("product", sheet.product), word("use", f"to_{wish.use}"), word("reason", reason)),
        relax="other_wish",
    )
