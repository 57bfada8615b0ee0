"""Lead may be in what is sanded or scraped.

What
    Lead was found, or nothing excludes it in an old glaze or an old coat, and the steps sand or scrape. Then: work
    wet, keep children and pregnant people out, seal the waste.
Why
    Lead dust harms children in amounts that nobody sees.
Strength
    Advice, everywhere. For a covered paid job in the US the law asks for more: see lead-renovation-covered.
    Old: a coat of before 1978, a glaze of before 1996 (trade figure, weak); a year that was not told counts as old.
Fires
    "old glaze is sanded", "lead found in a new house", "year not told".
Stays silent
    "glaze of 2005", "X-ray reading found no lead", "acrylic never coated".
Sources
    cfr-40-745-85: the practices. cfr-1926-62: what sanding sets free. trade-lead-survey: years of leaded glaze, weak.
    cdc-mmwr-2021-70-43: children.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import (
    Facts,
    disturbs,
    has_old_coat,
    may_be_glazed,
    observed,
    others,
    year_built,
)
from bathwright.rules.measures import stay_out_of_dust
from bathwright.rules.say import measure_id, question, with_measures, word

CODE = "lead-dust-control"
SOURCES = ("cfr-40-745-85", "cfr-1926-62", "trade-lead-survey", "cdc-mmwr-2021-70-43")

COAT_BEFORE, GLAZE_BEFORE = 1978, 1996
_TESTS = ("lead_xrf", "lead_wipe_lab", "lead_chip_lab_coat")


def check(facts: Facts) -> tuple[Said, ...]:
    """What must be done where lead is found or not excluded, and the question that would settle it."""
    if not disturbs(facts):
        return ()
    found = [name for name in _TESTS if observed(facts.fixture, name) == "found"]
    if not found and not _glaze(facts) and not _coat(facts):
        return ()
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="advice",
        consequence="harms",
        effect="must_do",
        values=(word("lead", "found" if found else "not_excluded"),),
        relax="test_lead",
    )
    measures = [_measure("work_wet", "painter"), *_out(facts), _measure("seal_waste", "painter")]
    return (*with_measures(finding, *measures), *_asked(facts, bool(found)))


def _glaze(facts: Facts) -> bool:
    """A glaze that may be old and that no X-ray reading cleared."""
    year = year_built(facts)
    old = year is None or year < GLAZE_BEFORE
    return may_be_glazed(facts) and old and observed(facts.fixture, "lead_xrf") != "none"


def _coat(facts: Facts) -> bool:
    """A coat that may be there and may be old, and that no reading or chip cleared."""
    year = year_built(facts)
    old = year is None or year < COAT_BEFORE
    cleared = "none" in (observed(facts.fixture, "lead_xrf"), observed(facts.fixture, "lead_chip_lab_coat"))
    return has_old_coat(facts) is not False and old and not cleared


def _measure(act: str, who: str) -> Measure:
    return Measure(id=measure_id(act), act=act, who=who, feasible="have", when="during")


def _out(facts: Facts) -> list[Measure]:
    """Children and pregnant people stay out, where there are any or where nobody told."""
    people = others(facts)
    sensitive = [p for p in people or () if "child" in (p.age_band or "") or p.age_band == "infant" or _pregnant(p)]
    return [stay_out_of_dust(facts)] if people is None or sensitive else []


def _pregnant(person: object) -> bool:
    return "pregnant" in (getattr(person, "traits", None) or ())


def _asked(facts: Facts, found: bool) -> tuple[Said, ...]:
    """The test that settles it; no question when lead was found."""
    if found:
        return ()
    said: list[Said] = [question("lead", CODE, "found", (), "laboratory_or_inspector", about=(facts.fixture.id,))]
    if year_built(facts) is None:
        said.append(question("year", CODE, "before_1978", (), "deed_or_tax_paper"))
    return tuple(said)
