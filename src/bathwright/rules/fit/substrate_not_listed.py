"""The maker's sheet does not name this surface.

What
    The sheet of the coating names neither a yes nor a no for the surface.
Why
    Silence is no yes. A coat on a surface that nobody tried may not hold.
Strength
    Maker's demand: the maker is asked, in writing, before the start.
Fires
    "stainless steel, which the sheet does not name".
Stays silent
    "enamelled cast iron, which the sheet allows".
Sources
    The sheet of the coating. common-practice: ask the maker.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.measures import ask_maker
from bathwright.rules.say import with_measures, word

CODE = "substrate-not-listed"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that the maker's answer may lift, when the sheet is silent on the surface."""
    if facts.substrate is None or views.choice(facts.coating, "surface", facts.substrate) is not None:
        return ()
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id, facts.coating.id),
        strength="maker",
        consequence="ruins",
        effect="stops",
        values=(word("material", facts.substrate), word("product", facts.coating.product)),
        relax="ask_maker",
    )
    return with_measures(finding, ask_maker(facts.coating, "surface"))
