"""The sheet of the coating or of the sealant does not tell something that decides.

What
    The papers of the coating say nothing, for the method of this plan, about: first water and full bath, the number of
    coats, the next coat (with two coats or more), mix ratio (with two parts), pot life (with a mix), drying before,
    unmasking, handling, sealing, the air temperature, or what evaporates (neither VOC nor composition). Or: no sealant
    is known, or its papers say nothing about first water or full bath. Or: no day for the full bath comes out.
Why
    Silence is no yes. A guess would be a promise that the maker never made.
Strength
    A question to the maker, judged at the worse answer: it blocks. A full bath without a day, although the papers
    speak, stops the job.
Fires
    "no time for the full bath", "neither VOC nor composition", "no sealant in the plan", "the film never gets there".
Stays silent
    "everything printed", "one coat needs no time for the next".
Sources
    own-judgement: what decides.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, planned_sheets
from bathwright.rules.say import question, word

CODE = "sheet-silent"
SOURCES = ("own-judgement",)

_ALWAYS = (
    "full_bath", "first_water", "coats", "air_temperature", "dry_before", "unmask", "handle", "seal_after",
)  # fmt: skip
_OF_SEALANT = ("first_water", "full_bath")


def check(facts: Facts) -> tuple[Said, ...]:
    """A blocking question for each silence that decides, and a note that names it; a stop without a day to bathe."""
    silent = [(facts.coating, kind) for kind in _silent(facts)]
    sealant = next((sheet for sheet in planned_sheets(facts) if sheet.role == "sealant"), None)
    if sealant is not None:
        silent += [(sealant, kind) for kind in _OF_SEALANT if not _told(facts, sealant, kind)]
    said: list[Said] = [_asked(sheet.id, kind) for sheet, kind in silent]
    if sealant is None:
        said.append(question("sealant", CODE, "none", (_stop(),), "name_a_product"))
    said += [_note(sheet, kind) for sheet, kind in silent]
    if not any(kind == "full_bath" for _, kind in silent):
        said += _no_day(facts)
    return tuple(said)


def _asked(sheet_id: str, kind: str) -> Said:
    return question("sheet_fact", CODE, "worst", (_stop(),), "ask_maker", about=(sheet_id, kind))


def _stop() -> Finding:
    return Finding(code=CODE, strength="maker", consequence="ruins", effect="stops")


def _no_day(facts: Facts) -> tuple[Said, ...]:
    """The papers speak about the full bath, and still no day comes out: it never gets there, or nothing starts it."""
    if all(clock.at is not None for clock in facts.clocks if clock.name == "full_bath"):
        return ()
    return (
        Finding(
            code=CODE,
            about=(facts.coating.id, "full_bath"),
            strength="maker",
            consequence="ruins",
            effect="stops",
            status="unknown",
            values=(word("product", facts.coating.product), word("fact", "full_bath")),
            relax="ask_maker",
        ),
    )


def _told(facts: Facts, sheet: Sheet, kind: str) -> bool:
    found = views.facts_of(sheet, kind)
    return bool(views.in_scope(found, method=facts.method, substrate=facts.substrate, coat=None))


def _silent(facts: Facts) -> list[str]:
    """The kinds of which the coating's papers say nothing for this method and this surface."""
    sheet = facts.coating
    coats = views.strictest(sheet, "coats", method=facts.method, substrate=facts.substrate)
    wanted = list(_ALWAYS)
    wanted += ["recoat"] if coats is None or coats.value > 1 else []
    wanted += ["mix_ratio"] if len(sheet.parts) > 1 else []
    wanted += ["pot_life"] if len(sheet.parts) > 1 or views.ratio(sheet) else []
    missing = [kind for kind in wanted if not _told(facts, sheet, kind)]
    listed = any(part.composition for part in sheet.parts)
    return [*missing, *([] if listed or _told(facts, sheet, "voc") else ["voc"])]


def _note(sheet: Sheet, kind: str) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, kind),
        strength="maker",
        consequence="note",
        effect="tells",
        status="unknown",
        values=(word("product", sheet.product), word("fact", kind)),
        relax="ask_maker",
    )
