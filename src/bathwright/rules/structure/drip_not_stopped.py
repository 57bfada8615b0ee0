"""A tap or shower drips.

What
    Water drips into the fixture and nobody has stopped it.
Why
    One drop marks the fresh coat, and a drip wears the hard one through.
Strength
    Good practice and common maker's demand; binds nobody. It is mended before the start.
Fires
    "tap drips".
Stays silent
    "drip stopped", "no drip".
Sources
    trade-pages: taps are mended before the job.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import question, with_measures

CODE = "drip-not-stopped"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop that mending lifts; a blocking question when nobody told."""
    told = observed(facts.fixture, "drip")
    if facts.fixture.kind == "wall_tile" or told in ("none", "stopped"):
        return ()
    mend = Measure(id="mend-drip", act="mend_drip", who="household", feasible="ask", when="before_start")
    if told is None:
        return (question("drip", CODE, "drips", (mend,), "paper_under_spout", about=(facts.fixture.id,)),)
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        relax="mend_drip",
    )
    return with_measures(finding, mend)
