"""A paper lists a substance that is not known here.

What
    The composition of the coating or of a solvent names a substance by a number that this edition does not know, or
    the composition of a can is missing, or lists nothing that evaporates although VOC or solids say that something
    does. Where the papers show that all that evaporates is known already (the known
    volatile substances reach the share that does not stay as solids, to 15 %), it is told, no more.
Why
    What is not known may be the worst of the mixture. Unknown never counts as harmless.
Strength
    A question to the maker, judged at its worse answer: it blocks. Binds nobody.
Fires
    "a can without composition", "an unknown number and no solids printed", "VOC but nothing volatile listed".
Stays silent
    "every substance known".
Sources
    own-judgement: unknown never passes as harmless, and 15 %.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, planned_sheets
from bathwright.rules.say import question, word

CODE = "substance-unknown"
SOURCES = ("own-judgement",)
_NEAR = 0.85
LEAST_KG = 0.005  # less than this in the whole job is nothing to ask about: judgement
_ROLES = ("coating", "primer", "solvent", "stripper")


def check(facts: Facts) -> tuple[Said, ...]:
    """A question for each product whose vapour cannot be known; a note where the unknown part stays in the film."""
    said: list[Said] = []
    for sheet in planned_sheets(facts):
        if sheet.role not in _ROLES:
            continue
        unknown = _unknown(facts, sheet)
        if _untold(sheet) or _hidden(facts, sheet) or (unknown and not _accounted(facts, sheet)):
            stop = Finding(code=CODE, about=(sheet.id,), strength="advice", consequence="harms", effect="stops")
            said.append(question("composition", CODE, "harmful", (stop,), "ask_maker", about=(sheet.id, *unknown)))
        elif unknown:
            said.append(_note(sheet, unknown))
    return tuple(said)


def _untold(sheet: Sheet) -> bool:
    return not sheet.parts or any(part.composition is None for part in sheet.parts)


def _hidden(facts: Facts, sheet: Sheet) -> bool:
    """Whether VOC or solids let something evaporate of which the composition lists nothing."""
    if sheet.id != facts.coating.id or facts.volatile_by_composition_kg:
        return False
    return max(facts.volatile_by_voc_kg or 0.0, facts.volatile_by_solids_kg or 0.0) > LEAST_KG


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
        values=(word("product", sheet.product), word("substances", ", ".join(unknown))),
        relax="ask_maker",
    )
