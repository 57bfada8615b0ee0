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
    """A stop for each substance that passes the value; supplied air for a firm."""
    said: list[Said] = []
    for exposure in facts.exposures:
        limit = exposure.limit
        if exposure.who != "painter" or limit is None or limit.measure != "idlh":
            continue
        if exposure.outside.high > exposure.limit_value:
            firm = facts.survey.work.who == "firm"
            finding = _finding(facts, exposure)
            said += with_measures(finding, supplied_air(facts)) if firm else (finding,)
    return tuple(said)


def _finding(facts: Facts, exposure: Exposure) -> Finding:
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
        values=(word("substance", name_of(facts, exposure.substance)),),
        relax="more_air_or_less_at_a_time",
        sources=(limit.source,) if limit else (),
        marks=(limit.mark,) if limit else (),
    )
