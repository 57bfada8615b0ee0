"""Nobody has told what the fixture is made of.

What
    The material decides cleaner, abrasive, coating. When it was not told, the tests that were told narrow it down, and
    each material that is left counts.
Why
    A coat on a material that its maker refuses comes off in sheets. One test alone sorts metal from plastic only.
Strength
    A question, no finding. It blocks when the coating refuses, or does not name, one of the materials that are left.
Fires
    "nothing told about the material": the water-borne coating refuses plastic-backed sheet, so the answer is needed.
Stays silent
    "material told": nothing to ask.
Sources
    trade-pages and home-pages-fixtures: the tests and what they sort, weak sources.
"""

from bathwright.domain import views
from bathwright.domain.codes import SubstrateCode
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, body, observed
from bathwright.rules.materials import LEAVES, USUAL
from bathwright.rules.measures import ask_maker
from bathwright.rules.say import question

CODE = "material-unknown"
SOURCES = ("trade-pages", "home-pages-fixtures")

_TESTS = ("magnet", "chip_shows", "press", "tap", "touch")


def check(facts: Facts) -> tuple[Said, ...]:
    """A question when the material was not told."""
    if body(facts) is not None:
        return ()
    worse = () if facts.substrate == "old_coating" else _worse(facts)
    test = next((name for name in _TESTS if observed(facts.fixture, name) is None), "underside")
    return (question("material", CODE, "refused", worse, test, about=(facts.fixture.id,)),)


def _left(facts: Facts) -> tuple[SubstrateCode, ...]:
    """Materials that all told tests leave; all usual ones when the tests contradict each other."""
    usual = USUAL[facts.fixture.kind]
    left = usual
    for name in _TESTS:
        result = observed(facts.fixture, name)
        fitting = LEAVES.get((name, result or ""))
        left = left if fitting is None else tuple(code for code in left if code in fitting)
    return left or usual


def _worse(facts: Facts) -> tuple[Said, ...]:
    said = [views.choice(facts.coating, "surface", code) for code in _left(facts)]
    if False in said:
        return (Finding(code="substrate-refused", strength="maker", consequence="ruins", effect="stops"),)
    return (ask_maker(facts.coating, "surface"),) if None in said else ()
