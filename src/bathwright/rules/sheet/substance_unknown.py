"""A paper lists a substance that is not known here.

What
    The composition of the coating or of a solvent names a substance by a number that this edition does not know, or
    the composition of a can is missing, or what it lists as volatile falls more than 15 % short of what VOC or solids
    say that evaporates; where neither is printed, what it lists at all leaves more than 15 % of a can open. Where the
    known volatile substances reach the share that does not stay as solids, to 15 %, it is told, no more. So is what a
    filler or a sealant does not name. A cleaner of which nothing is told is asked about beside an acid or bleach.
Why
    What is not known may be the worst of the mixture. Unknown never counts as harmless.
Strength
    A question to the maker, judged at its worse answer: it blocks. Binds nobody.
Fires
    "a can without composition", "an unknown number and no solids printed", "VOC but nothing volatile listed",
    "half of the vapour not listed", "a cleaner of which nothing is told, and a descaler".
Stays silent
    "every substance known".
Sources
    own-judgement: unknown never passes as harmless, and 15 %.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, planned_sheets
from bathwright.rules.meetings import ACIDS, CHLORINE
from bathwright.rules.say import question, word

CODE = "substance-unknown"
SOURCES = ("own-judgement",)
_NEAR = 0.85
LEAST_KG = 0.005  # less than this in the whole job is nothing to ask about: judgement
_ROLES = ("coating", "primer", "solvent", "stripper")
_STAY = ("filler", "sealant")
_WORST_BESIDE = ACIDS | CHLORINE


def check(facts: Facts) -> tuple[Said, ...]:
    """A question for each product whose vapour cannot be known; a note where the unknown part stays in the film."""
    said: list[Said] = []
    for sheet in planned_sheets(facts):
        unknown = _unknown(facts, sheet)
        if _asks(facts, sheet, unknown):
            said.append(_asked(sheet, unknown))
        elif unknown or (sheet.role in _STAY and _untold(sheet)):
            said += [_note(sheet, unknown)] if sheet.role in (*_ROLES, *_STAY) else []
    return tuple(said)


def _asks(facts: Facts, sheet: Sheet, unknown: tuple[str, ...]) -> bool:
    """Whether what is not told may harm, so that the maker is asked."""
    if sheet.role == "cleaner":
        return _bare_cleaner(sheet) and _beside_worst(facts)
    if sheet.role not in _ROLES:
        return False
    open_ = _untold(sheet) or _hidden(facts, sheet) or _left_open(facts, sheet)
    return open_ or (bool(unknown) and not _accounted(facts, sheet))


def _asked(sheet: Sheet, unknown: tuple[str, ...]) -> Said:
    stop = Finding(code=CODE, about=(sheet.id,), strength="advice", consequence="harms", effect="stops")
    return question("composition", CODE, "harmful", (stop,), "ask_maker", about=(sheet.id, *unknown))


def _untold(sheet: Sheet) -> bool:
    return not sheet.parts or any(part.composition is None for part in sheet.parts)


def _bare_cleaner(sheet: Sheet) -> bool:
    """Neither composition nor chemistry: the steps call such a product an unknown cleaner."""
    return _untold(sheet) and not set(sheet.chemistries) - {"unknown-cleaner"}


def _beside_worst(facts: Facts) -> bool:
    return any(_WORST_BESIDE & set(link.chemistries) for link in facts.chain)


def _hidden(facts: Facts, sheet: Sheet) -> bool:
    """Whether VOC or solids let more evaporate than the composition lists, by more than 15 %."""
    if sheet.id != facts.coating.id:
        return False
    over = max(facts.volatile_by_voc_kg or 0.0, facts.volatile_by_solids_kg or 0.0)
    return over > LEAST_KG and (facts.volatile_by_composition_kg or 0.0) < _NEAR * over


def _left_open(facts: Facts, sheet: Sheet) -> bool:
    """Without solids: whether what the papers list, at its high ends, leaves more than 15 % of a can open. (VOC alone
    proves nothing: it leaves out exempt solvents.)"""
    if sheet.id != facts.coating.id or facts.volatile_by_solids_kg is not None:
        return False
    return any(sum(entry.high for entry in part.composition or ()) < _NEAR for part in sheet.parts)


def _unknown(facts: Facts, sheet: Sheet) -> tuple[str, ...]:
    listed = [entry for part in sheet.parts for entry in part.composition or ()]
    return tuple(dict.fromkeys(e.cas for e in listed if e.cas not in facts.knowledge.substances))


def _accounted(facts: Facts, sheet: Sheet) -> bool:
    """Whether the known volatile part reaches what the printed solids leave over."""
    if sheet.id != facts.coating.id:
        return False
    known, over = facts.volatile_by_composition_kg, facts.volatile_by_solids_kg
    return known is not None and over is not None and known >= _NEAR * over


def _note(sheet: Sheet, unknown: tuple[str, ...]) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, *unknown),
        strength="advice",
        consequence="note",
        effect="tells",
        status="unknown",
        values=(word("product", sheet.product), *([word("substances", ", ".join(unknown))] if unknown else [])),
        relax="ask_maker",
    )
