"""An old coat that does not hold.

What
    An earlier coat peels, or a test showed that it does not hold: it must come off, to the sound body.
Why
    A new coat comes off together with the old one. On acrylic and glass fibre a solvent stripper melts the body: there
    only blade and sanding are left.
Strength
    Good practice; binds nobody. Met when the steps hold the scraping; on plastic a planned stripper stops the job.
Fires
    "old coat told as failing, no scraping planned", "tape lifts the old coat", "stripper on glass fibre".
Stays silent
    "never coated before", "old coat sound and tape holds".
Sources
    trade-pages: flush-edge test, cut-and-tape test, no stripper on plastic.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import PLASTIC, Facts, body, every_sheet, observed, steps_of
from bathwright.rules.say import question, with_measures, word

CODE = "old-coat-fails"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """The stripping that a failing coat asks for; a question when nobody told whether it holds."""
    if _fails(facts):
        return (*_must_come_off(facts), *_stripper_on_plastic(facts))
    if observed(facts.fixture, "earlier_coat") in ("none", "sound"):
        return ()
    worse = _must_come_off(facts)
    return (question("earlier_coat", CODE, "failing", worse, "cut_and_tape", about=(facts.fixture.id,)),)


def _fails(facts: Facts) -> bool:
    seen = facts.fixture
    return (
        observed(seen, "earlier_coat") == "failing"
        or observed(seen, "cut_and_tape") == "lifts"
        or observed(seen, "flush_edge_test") == "bare_patch_grows"
    )


def _finding(facts: Facts) -> Finding:
    return Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        values=(word("way", "blade_or_sanding" if body(facts) in PLASTIC else "any"),),
        relax="strip_old_coat",
    )


def _must_come_off(facts: Facts) -> tuple[Said, ...]:
    if not steps_of(facts, "scrape_old_coat"):
        return (_finding(facts),)
    scrape = Measure(
        id="strip-old-coat", act="strip_old_coat", who="painter", what="blade", feasible="have", when="during"
    )
    return with_measures(_finding(facts), scrape)


def _stripper_on_plastic(facts: Facts) -> tuple[Said, ...]:
    if body(facts) not in PLASTIC:
        return ()
    strippers = [s for s in every_sheet(facts) if s.role == "stripper" and s.id not in facts.dropped]
    return tuple(
        Finding(
            code=CODE,
            about=(facts.fixture.id, sheet.id),
            strength="good_practice",
            consequence="ruins",
            effect="stops",
            values=(word("product", sheet.product), word("material", str(body(facts)))),
            relax="leave_out_product",
        )
        for sheet in strippers
    )
