"""A batch sets before it is used up.

What
    The time from the end of mixing to the last roller stroke is longer than the pot life at the warmest temperature.
Why
    Paint that begins to set does not wet the surface and does not level. Thinning it again does not bring it back.
Strength
    Maker's demand; binds nobody. Nothing cures it but smaller batches, more hands or a cooler room: another plan.
Fires
    "batch used for 100 min, pot life 90 min".
Stays silent
    "batch used for 40 min, pot life 90 min", "pot life not printed": sheet-silent asks.
Sources
    The sheet of the coating. common-practice: never re-thin.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount, margin_upper

CODE = "pot-life-too-short"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for each batch that outlasts its pot life."""
    return tuple(
        Finding(
            code=CODE,
            about=(mix.id, mix.sheet),
            strength="maker",
            consequence="ruins",
            effect="stops",
            value=mix.use_s,
            limit=mix.pot_life_s,
            kind="time",
            basis="upper_bound",
            margin=margin_upper(mix.use_s, mix.pot_life_s),
            values=(amount("pot_life", mix.pot_life_s, "time"), amount("work", mix.use_s, "time")),
            relax="smaller_batches",
        )
        for mix in facts.mixes
        if mix.pot_life_s > 0 and mix.use_s > mix.pot_life_s
    )
