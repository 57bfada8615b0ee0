"""A crack whose edges move.

What
    A crack that moves under load, or that has a dark or wet line.
Why
    No coat bridges moving edges. Water gets behind it, the coat lifts, what is below rots.
Strength
    Good practice of the trade; binds nobody. No coat cures it.
Fires
    "crack told as structural".
Stays silent
    "web of fine cracks in the skin": that may be sanded, filled, coated.
Sources
    trade-pages: damage diagnosis.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import question

CODE = "structural-crack"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for a crack that moves; a blocking question when nobody told."""
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        relax="replace_fixture",
    )
    told = observed(facts.fixture, "crack")
    if told is None:
        return (question("crack", CODE, "structural", (finding,), "press_beside_crack", about=(facts.fixture.id,)),)
    return (finding,) if told == "structural" else ()
