"""There is a liner over the bath or tray.

What
    A formed plastic sheet was glued over the fixture earlier.
Why
    The glue gives, water stands under the sheet, and a coat on it cracks and lifts.
Strength
    Good practice; binds nobody. Nothing cures it but taking the liner out.
Fires
    "a liner was told", "the material told is a liner".
Stays silent
    "no liner told, but the bath feels cold", "no liner told, but the bath rings": a liner feels warm and sounds
    hollow. Basins, sinks and tile get no liners.
Sources
    trade-pages: a common ground for refusing a job.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import question

CODE = "already-lined"
SOURCES = ("trade-pages",)

_BARE_BODY = ("dark_iron", "bright_steel", "clay", "white_filler", "glass_strands")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop when lined; a question when nothing told excludes it."""
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        relax="take_liner_out",
    )
    told = observed(facts.fixture, "liner")
    if told == "lined" or "liner" in (facts.substrate, facts.fixture.material):
        return (finding,)
    if told is not None or _excluded(facts):
        return ()
    return (question("liner", CODE, "lined", (finding,), "look_at_drain_edge", about=(facts.fixture.id,)),)


def _excluded(facts: Facts) -> bool:
    """Fixtures that get no liner, and tests that reach the body: its cold, its sound, a chip."""
    if facts.fixture.kind not in ("bath", "shower_tray"):
        return True
    if observed(facts.fixture, "touch") == "cold" or observed(facts.fixture, "tap") in ("dull", "ringing"):
        return True
    return observed(facts.fixture, "chip_shows") in _BARE_BODY
