"""Rags wet with a drying oil.

What
    A product of this job holds a drying oil (linseed, tung, some alkyds): its rags are spread flat outdoors in one
    layer, or put under water in a closed metal can.
Why
    In a heap they heat up by themselves and burn within hours, without a spark.
Strength
    Danger, everywhere.
Fires
    "coating with linseed oil".
Stays silent
    "acetone and alcohol rags": they light at a spark but do not heat up. "epoxy coating".
Sources
    nfpa-2011-evarts: the fires. rag-self-heating-notes and astm-d6801: what self-heats.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, has_tag, planned_sheets
from bathwright.rules.say import with_measures, word

CODE = "rags-drying-oil"
SOURCES = ("nfpa-2011-evarts", "rag-self-heating-notes", "astm-d6801")


def check(facts: Facts) -> tuple[Said, ...]:
    """Rags spread, for each product that holds a drying oil."""
    found = [sheet for sheet in planned_sheets(facts) if has_tag(facts, sheet, "drying_oil")]
    if not found:
        return ()
    finding = Finding(
        code=CODE,
        about=tuple(sheet.id for sheet in found),
        strength="danger",
        consequence="kills",
        effect="must_do",
        values=(word("product", found[0].product),),
        relax="rags_outdoors",
    )
    spread = Measure(id="spread-rags", act="spread_rags", who="painter", feasible="have", when="during")
    return with_measures(finding, spread)
