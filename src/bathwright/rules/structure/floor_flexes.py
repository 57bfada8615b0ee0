"""The floor of the fixture gives underfoot.

What
    The floor of a bath or tray moves when somebody stands in it, or feels spongy.
Why
    A coat cracks on a floor that moves. A spongy floor has a wet or loose core, which stays wet under a coat.
Strength
    Good practice; binds nobody. A floor that flexes may be supported from below first; a spongy one is not cured.
Fires
    "floor flexes", "floor is spongy".
Stays silent
    "floor does not move", "cast iron does not flex".
Sources
    trade-pages: floors, cores, and why glued inlays and foam are a short-term repair.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import Facts, body, observed
from bathwright.rules.say import question, with_measures

CODE = "floor-flexes"
SOURCES = ("trade-pages",)

_RIGID = ("enamelled_cast_iron", "vitreous_china", "ceramic_tile", "cultured_marble")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for a floor that moves; a question when it may move and nobody told."""
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        relax="support_from_below",
    )
    told = observed(facts.fixture, "floor_flex")
    if told == "spongy":
        return (finding,)
    if told == "flexes":
        support = Measure(id="support-floor", act="support_floor", who="household", feasible="ask", when="before_start")
        return with_measures(finding, support)
    if told is not None or _cannot(facts):
        return ()
    return (question("floor_flex", CODE, "flexes", (finding,), "stand_in_it", about=(facts.fixture.id,)),)


def _cannot(facts: Facts) -> bool:
    """Fixtures that nobody stands in, bodies that do not give, and a press test that found it rigid."""
    if facts.fixture.kind not in ("bath", "shower_tray") or body(facts) in _RIGID:
        return True
    return observed(facts.fixture, "press") == "rigid"
