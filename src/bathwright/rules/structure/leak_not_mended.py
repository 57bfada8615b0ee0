"""The fixture or its drain leaks.

What
    Water leaves the fixture where it should not: at drain, overflow, seam or caulk.
Why
    Water behind a coat lifts it, and what is below rots.
Strength
    Good practice; binds nobody. The leak is mended and tested before the start.
Fires
    "leak told".
Stays silent
    "no leak after an hour of water".
Sources
    trade-pages: leak test with a little water for an hour.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import question, with_measures

CODE = "leak-not-mended"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that mending lifts; a blocking question when nobody told."""
    told = observed(facts.fixture, "leak")
    if facts.fixture.kind == "wall_tile" or told == "none":
        return ()
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        relax="mend_leak",
    )
    if told is None:
        return (question("leak", CODE, "leaks", (finding,), "water_for_an_hour", about=(facts.fixture.id,)),)
    mend = Measure(id="mend-leak", act="mend_leak", who="household", feasible="ask", when="before_start")
    return with_measures(finding, mend)
