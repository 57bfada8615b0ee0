"""Air in which a person may no longer get out alone.

What
    The highest value that the one who works meets, outside any mask, against the value of immediate danger.
Why
    In such air a mask that slips or fills is death. Cartridge masks are not allowed in it.
Strength
    Danger, everywhere. Nothing that a household has cures it; a firm may work with supplied air.
Fires
    "twice the value of immediate danger".
Stays silent
    "half of the value of immediate danger".
Sources
    niosh-idlh: the values. cfr-1910-134-table-1: no cartridges above them.
"""

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, name_of
from bathwright.rules.measures import supplied_air
from bathwright.rules.say import margin_upper, with_measures, word

CODE = "painter-above-immediately-dangerous"
SOURCES = ("niosh-idlh", "cfr-1910-134-table-1")


def check(facts: Facts) -> tuple[Said, ...]:
    """One stop, for the substance that passes its value most; supplied air for a firm."""
    over = [
        e
        for e in facts.exposures
        if e.who == "painter" and e.limit is not None and e.limit.measure == "idlh" and e.outside.high > e.limit_value
    ]
    if not over:
        return ()
    over.sort(key=lambda e: (-e.outside.high / e.limit_value, e.substance))
    finding = _finding(facts, over[0], tuple(name_of(facts, e.substance) for e in over[1:]))
    return with_measures(finding, supplied_air(facts)) if facts.survey.work.who == "firm" else (finding,)


def _finding(facts: Facts, exposure: Exposure, also: tuple[str, ...]) -> Finding:
    upper, limit = exposure.outside.high, exposure.limit
    return Finding(
        code=CODE,
        about=("painter", exposure.substance),
        strength="danger",
        consequence="kills",
        effect="stops",
        value=upper,
        limit=exposure.limit_value,
        kind="concentration",
        basis=exposure.basis,
        margin=margin_upper(upper, exposure.limit_value),
        values=(
            word("substance", name_of(facts, exposure.substance)),
            *((word("also", ", ".join(also)),) if also else ()),
        ),
        relax="more_air_or_less_at_a_time",
        sources=(limit.source,) if limit else (),
        marks=(limit.mark,) if limit else (),
    )
