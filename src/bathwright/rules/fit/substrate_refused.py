"""The maker says no to this surface.

What
    The sheet of the coating names the surface among those on which it must not be used.
Why
    On a refused surface a coat comes off in sheets, and the bath is worse than before.
Strength
    Maker's demand. It binds nobody by law; nothing cures it but another coating.
Fires
    "cultured marble under a coating that refuses it".
Stays silent
    "enamelled steel under a coating that allows it".
Sources
    The sheet of the coating. trade-pages: what happens when it is not followed.
"""

from bathwright.domain import views
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import word

CODE = "substrate-refused"
SOURCES = ("trade-pages",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop when the sheet refuses the surface."""
    if facts.substrate is None or views.choice(facts.coating, "surface", facts.substrate) is not False:
        return ()
    return (
        Finding(
            code=CODE,
            about=(facts.fixture.id, facts.coating.id),
            strength="maker",
            consequence="ruins",
            effect="stops",
            values=(word("material", facts.substrate), word("product", facts.coating.product)),
            relax="other_system",
        ),
    )
