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
from bathwright.domain.codes import FixtureKind, SubstrateCode
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, body, observed
from bathwright.rules.measures import ask_maker
from bathwright.rules.say import question

CODE = "material-unknown"
SOURCES = ("trade-pages", "home-pages-fixtures")

_IRON: tuple[SubstrateCode, ...] = ("enamelled_cast_iron", "enamelled_steel")
_PLASTIC: tuple[SubstrateCode, ...] = ("acrylic", "glass_fibre", "abs_backed_sheet")
_FIRED: tuple[SubstrateCode, ...] = ("vitreous_china", "ceramic_tile")
_USUAL: dict[FixtureKind, tuple[SubstrateCode, ...]] = {
    "bath": (*_IRON, *_PLASTIC, "cultured_marble"),
    "basin": ("vitreous_china", *_IRON, "acrylic", "cultured_marble"),
    "shower_tray": ("enamelled_steel", *_PLASTIC, "cultured_marble", "vitreous_china"),
    "kitchen_sink": (*_IRON, "stainless_steel", "vitreous_china"),
    "wall_tile": ("ceramic_tile",),
}
_LEAVES: dict[tuple[str, str], tuple[SubstrateCode, ...]] = {
    ("magnet", "sticks"): (*_IRON, "stainless_steel"),
    ("magnet", "does_not_stick"): (*_PLASTIC, *_FIRED, "cultured_marble", "stainless_steel"),
    ("tap", "dull"): (*_IRON, *_FIRED),
    ("tap", "ringing"): (*_IRON, *_FIRED, "stainless_steel"),
    ("tap", "hollow"): _PLASTIC,
    ("tap", "dead"): ("cultured_marble",),
    ("touch", "cold"): (*_IRON, *_FIRED, "stainless_steel"),
    ("touch", "warm"): _PLASTIC,
    ("press", "rigid"): (*_IRON, *_FIRED, "cultured_marble", "stainless_steel"),
    ("press", "drums"): ("enamelled_steel", "stainless_steel"),
    ("press", "gives"): _PLASTIC,
    ("chip_shows", "dark_iron"): ("enamelled_cast_iron",),
    ("chip_shows", "bright_steel"): ("enamelled_steel", "stainless_steel"),
    ("chip_shows", "same_colour"): ("acrylic", "abs_backed_sheet"),
    ("chip_shows", "glass_strands"): ("glass_fibre", "acrylic"),
    ("chip_shows", "white_filler"): ("cultured_marble",),
    ("chip_shows", "clay"): _FIRED,
}
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
    usual = _USUAL[facts.fixture.kind]
    left = usual
    for name in _TESTS:
        result = observed(facts.fixture, name)
        fitting = _LEAVES.get((name, result or ""))
        left = left if fitting is None else tuple(code for code in left if code in fitting)
    return left or usual


def _worse(facts: Facts) -> tuple[Said, ...]:
    said = [views.choice(facts.coating, "surface", code) for code in _left(facts)]
    if False in said:
        return (Finding(code="substrate-refused", strength="maker", consequence="ruins", effect="stops"),)
    return (ask_maker(facts.coating, "surface"),) if None in said else ()
