"""Rust that has gone through, or comes from behind.

What
    A hole, or rust that grows from the hidden side: round the drain, the overflow, at a seam.
Why
    Rust from behind returns under every coat.
Strength
    Good practice; binds nobody. No coat cures it.
Fires
    "rust has gone through", "rust from behind".
Stays silent
    "a rust spot on the surface": abrade, treat, fill. "acrylic does not rust".
Sources
    trade-pages: no firm guarantees against it.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, body, observed
from bathwright.rules.say import question, word

CODE = "rust-through"
SOURCES = ("trade-pages",)

_FERROUS = ("enamelled_cast_iron", "enamelled_steel", "zinc_coated_steel", None)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for deep rust; a blocking question when the body may rust and nobody told."""
    told = observed(facts.fixture, "rust")
    finding = Finding(
        code=CODE,
        about=(facts.fixture.id,),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        values=(word("rust", told or "through"),),
        relax="replace_fixture",
    )
    if told in ("through", "from_behind"):
        return (finding,)
    if told is not None or not _may_rust(facts):
        return ()
    return (question("rust", CODE, "through", (finding,), "look_below_drain", about=(facts.fixture.id,)),)


def _may_rust(facts: Facts) -> bool:
    """Iron, steel or not told; a magnet that does not stick excludes both; wall tile does not rust."""
    if facts.fixture.kind == "wall_tile" or observed(facts.fixture, "magnet") == "does_not_stick":
        return False
    return body(facts) in _FERROUS
