"""The sheet of the coating does not tell something that decides.

What
    The papers say nothing about: the full bath, the next coat (with two coats or more), the pot life (with a mix), the
    air temperature, or what evaporates (neither VOC nor composition).
Why
    Silence is no yes. A guess would be a promise that the maker never made.
Strength
    A question to the maker, judged at the worse answer. Without clock, window or vapour it blocks.
Fires
    "no time for the full bath", "neither VOC nor composition".
Stays silent
    "everything printed", "one coat needs no time for the next".
Sources
    own-judgement: what decides.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import question, word

CODE = "sheet-silent"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A blocking question for each silence that decides; a note that names them."""
    silent = _silent(facts)
    stop = Finding(code=CODE, strength="maker", consequence="ruins", effect="stops")
    said: list[Said] = [
        question("sheet_fact", CODE, "worst", (stop,), "ask_maker", about=(facts.coating.id, kind)) for kind in silent
    ]
    return (*said, *(_note(facts, kind) for kind in silent))


def _silent(facts: Facts) -> list[str]:
    sheet = facts.coating
    coats = views.strictest(sheet, "coats")
    wanted = ["full_bath", "air_temperature"]
    wanted += ["recoat"] if coats is None or coats.value > 1 else []
    wanted += ["pot_life"] if len(sheet.parts) > 1 or views.ratio(sheet) else []
    missing = [kind for kind in wanted if not views.facts_of(sheet, kind)]
    listed = any(part.composition for part in sheet.parts)
    return [*missing, *([] if listed or views.facts_of(sheet, "voc") else ["voc"])]


def _note(facts: Facts, kind: str) -> Finding:
    return Finding(
        code=CODE,
        about=(facts.coating.id, kind),
        strength="maker",
        consequence="note",
        effect="tells",
        status="unknown",
        values=(word("product", facts.coating.product), word("fact", kind)),
        relax="ask_maker",
    )
