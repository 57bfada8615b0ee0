"""The drain runs slowly.

What
    Water stands in the fixture because the drain is slow.
Why
    Slurry and rinse water stand on the surface and in the trap, where one product meets the next; later, standing water
    lifts the coat at the drain. A drain cleaner must not come near the work.
Strength
    Good practice of the trade; binds nobody. It is mended before the start, by hand and not by a chemical.
Fires
    "slow drain".
Stays silent
    "drain runs", "nobody told about the drain".
Sources
    trade-pages: slow drains are mended before the job.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import with_measures

CODE = "drain-slow"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """The drain is mended before the start."""
    if observed(facts.fixture, "drain") != "slow" or facts.fixture.kind == "wall_tile":
        return ()
    mend = Measure(id="mend-drain", act="mend_drain", who="household", feasible="have", when="before_start")
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="must_do",
        relax="mend_drain",
    )
    return with_measures(finding, mend)
