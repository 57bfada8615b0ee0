"""Lead may be in what is sanded or scraped.

What
    Lead was found, or nothing excludes it in an old glaze or an old coat, and the steps sand or scrape. Then: work
    wet, close off floor and door, keep children and pregnant people out, clean up, seal the waste. Where lead was
    found, or somebody is or may be paid, the clean-up asks for a filter vacuum; an unpaid owner may use damp wipes.
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
    cfr-40-745-85: the practices; the filter vacuum. cfr-1926-62: what sanding sets free. trade-lead-survey: years of
    leaded glaze, weak. cdc-mmwr-2021-70-43: children.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.dust import lead_dust, lead_found
from bathwright.rules.facts import Facts, equipment, is_paid, others, year_built
from bathwright.rules.measures import dust_span, stay_out_of_dust
from bathwright.rules.say import best_available, measure_id, question, with_measures, word

CODE = "lead-dust-control"
SOURCES = ("cfr-40-745-85", "cfr-1926-62", "trade-lead-survey", "cdc-mmwr-2021-70-43")


def check(facts: Facts) -> tuple[Said, ...]:
    """What must be done where lead is found or not excluded, and the question that would settle it."""
    if not lead_dust(facts):
        return ()
    found = lead_found(facts)
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="advice",
        consequence="harms",
        effect="must_do",
        values=(word("lead", "found" if found else "not_excluded"),),
        relax="test_lead",
    )
    measures = [_measure("work_wet"), *_out(facts), _sheets(facts), _clean_up(facts), _measure("seal_waste")]
    return (*with_measures(finding, *measures), *_asked(facts, found))


def _measure(act: str) -> Measure:
    return Measure(id=measure_id(act), act=act, who="painter", feasible="have", when="during")


def _sheets(facts: Facts) -> Measure:
    """Sheets on floor and door from before the first dust to the end of the clean-up."""
    starts, ends = dust_span(facts)
    return Measure(
        id="lay-dust-sheets",
        act="lay_dust_sheets",
        who="painter",
        starts=starts,
        ends=ends,
        feasible="have",
        when="during",
    )


def _clean_up(facts: Facts) -> Measure:
    """A filter vacuum where lead was found or the work is, or may be, paid; else damp wipes are enough.

    Where the home has none, whoever is paid is asked to bring it.
    """
    if not lead_found(facts) and is_paid(facts) is False:
        return _measure("damp_wipes")
    feasible = best_available(equipment(facts, "hepa_vacuum"), "hire")
    if feasible == "no" and is_paid(facts):
        feasible = "ask"
    return Measure(
        id="filter-vacuum",
        act="filter_vacuum",
        who="painter",
        what="hepa_vacuum",
        feasible=feasible,
        when="during" if feasible == "have" else "before_start",
    )


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
