"""The hour at which people may be back was not reached.

What
    Vapour is let out, and within the time that was computed the air of the bathroom does not come below the values
    for everybody.
Why
    Without that hour nobody can say who may sleep where.
Strength
    Advice; binds nobody. Nothing cures it but more air or another coating.
Fires
    "no hour of return within the horizon".
Stays silent
    "return on the next day", "nothing but water leaves".
Sources
    minnesota-ihb-2023 and uba-air-guide-values: the values. own-judgement: no hour, no go.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.values import Value
from bathwright.rules.facts import Facts, organic_emissions

CODE = "return-not-reached"
SOURCES = ("minnesota-ihb-2023", "uba-air-guide-values", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop when vapour is let out and no hour of return was found."""
    air = facts.air
    if air is None or air.back_at is not None or not organic_emissions(facts):
        return ()
    values: tuple[Value, ...] = ()
    if air.horizon is not None:
        begin = min(e.starts for e in organic_emissions(facts))
        values = (Value(name="horizon", value=(air.horizon - begin).total_seconds(), kind="time"),)
    return (
        Finding(
            code=CODE,
            about=("room",),
            strength="advice",
            consequence="harms",
            effect="stops",
            values=values,
            relax="more_air_or_other_system",
        ),
    )
