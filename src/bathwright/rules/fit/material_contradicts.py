"""The told material and a told test do not fit together.

What
    A magnet sticks, or a chip shows something, that the told material cannot do: a magnet that sticks on acrylic, one
    that does not stick on enamelled iron or steel, dark iron below a plastic face.
Why
    One of the two is wrong. Cleaner, abrasive and coating follow from the material; on the wrong one the coat comes
    off.
Strength
    Good practice; the question blocks until material and test agree. Tap, touch and press alone contradict nothing:
    they are too weak.
Fires
    "magnet sticks on acrylic", "magnet does not stick on enamelled steel", "dark iron in a chip of acrylic".
Stays silent
    "magnet sticks on enamelled steel", "sounds hollow on enamelled steel".
Sources
    trade-pages and home-pages-fixtures: the tests and what they sort, weak sources.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, body, observed
from bathwright.rules.materials import LEAVES
from bathwright.rules.say import question, word

CODE = "material-contradicts"
SOURCES = ("trade-pages", "home-pages-fixtures")

_STRONG = ("magnet", "chip_shows")
_SORTED = frozenset(code for fitting in LEAVES.values() for code in fitting)


def check(facts: Facts) -> tuple[Said, ...]:
    """The note that names both, and the question that blocks."""
    told = body(facts)
    if told not in _SORTED or observed(facts.fixture, "liner") == "lined":
        return ()
    against = [name for name in _STRONG if told not in LEAVES.get((name, observed(facts.fixture, name) or ""), (told,))]
    if not against:
        return ()
    about = (facts.fixture.id,)
    finding = Finding(
        code=CODE,
        about=about,
        strength="good_practice",
        consequence="ruins",
        effect="tells",
        status="unknown",
        values=(
            word("material", told),
            word("test", against[0]),
            word("result", observed(facts.fixture, against[0]) or ""),
        ),
        relax="test_again",
    )
    worse = Finding(code="substrate-refused", strength="maker", consequence="ruins", effect="stops")
    return (finding, question("material", CODE, "refused", (worse,), against[0], about=about))
