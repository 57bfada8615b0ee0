"""Dichloromethane under the law of the European Union and of Great Britain.

What
    A paint stripper with 0.1 % dichloromethane or more. EU: no supply to the public or to professionals, no use by
    professionals. GB: no supply to the public; trained and certified professionals are excepted.
Why
    Deaths and injuries in small rooms.
Strength
    Law in the EU (supply 6 December 2011, professional use 6 June 2012) and in GB (exception since 1 December 2014).
    Bound: sellers; in the EU the firm too; in GB the firm that is not certified.
Fires
    "wished stripper in Germany", "paid work with it in Germany", "firm in Great Britain without certificate told".
Stays silent
    "the same stripper in the US", "share below 0.1 %".
Sources
    reach-xvii-59: the ban and its days. gb-si-2014-2882: the exception.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import (
    Facts,
    dichloromethane_shares,
    every_sheet,
    holds_dichloromethane,
    in_force,
    is_paid,
    law_set,
)
from bathwright.rules.say import with_measures, word

CODE = "dichloromethane-eu-gb"
SOURCES = ("reach-xvii-59", "gb-si-2014-2882")

LEAST_SHARE = 0.001


def check(facts: Facts) -> tuple[Said, ...]:
    """Supply and professional use, by place and day."""
    place = law_set(facts)
    said: list[Said] = []
    for sheet in every_sheet(facts) if place in ("EU", "GB") else ():
        if sheet.role != "stripper" or not _enough(facts, sheet):
            continue
        if in_force(facts, *_supply(place)):
            said.append(_finding(sheet, "sellers", "sale", stops=False))
        if is_paid(facts):
            said += _paid_use(facts, place, sheet)
    return tuple(said)


def _supply(place: str) -> tuple[str, str]:
    return ("reach-59-any-placing", "EU") if place == "EU" else ("gb-dichloromethane-certified", "GB")


def _enough(facts: Facts, sheet: Sheet) -> bool:
    shares = dichloromethane_shares(sheet)
    listed = holds_dichloromethane(facts, sheet)
    return listed and (not shares or max(shares) >= LEAST_SHARE)


def _paid_use(facts: Facts, place: str, sheet: Sheet) -> tuple[Said, ...]:
    if place == "EU":
        banned = in_force(facts, "reach-59-professional-use", "EU")
        return (_finding(sheet, "professionals", "use", stops=True),) if banned else ()
    certificate = Measure(
        id="stripper-certificate", act="certified_for_stripper", who="firm", feasible="ask", when="before_start"
    )
    return with_measures(_finding(sheet, "professionals", "use", stops=True), certificate)


def _finding(sheet: Sheet, bound: str, what: str, *, stops: bool) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, what),
        strength="law",
        bound=bound,
        consequence="harms" if stops else "note",
        effect="stops" if stops else "tells",
        values=(word("product", sheet.product), word("what", what)),
        relax="other_stripping",
    )
