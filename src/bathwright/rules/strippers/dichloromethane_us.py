"""Dichloromethane under the law of the United States.

What
    A product with dichloromethane in a job in the US. Sale of consumer paint removers with it is banned at any share;
    sale of other products by retailers from 0.1 % by weight; paid use, stripping of baths included, from 0.1 %.
Why
    The agency found the risk unreasonable after deaths in bathrooms.
Strength
    Law in the US. Sale: binds sellers, consumer removers since 22 November 2019 (day from memory), retailers since
    5 May 2025. Paid use: binds the firm since 28 April 2026 (day from memory). The private owner of an old can is not
    punished for using it; the danger is told by dichloromethane-kills.
Fires
    "wished stripper in the US", "firm that uses it in the US".
Stays silent
    "the same stripper in Great Britain", "share below 0.1 % in a wipe".
Sources
    fr-84-11420, fr-89-39254, epa-740s24001, cfr-40-751-b: bans and dates, as marked there.
"""

from bathwright.domain.findings import Finding, Said
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
from bathwright.rules.say import word

CODE = "dichloromethane-us"
SOURCES = ("fr-84-11420", "fr-89-39254", "epa-740s24001", "cfr-40-751-b")

LEAST_SHARE = 0.001


def check(facts: Facts) -> tuple[Said, ...]:
    """The sale ban, and the ban of paid use, on their days."""
    if law_set(facts) != "US":
        return ()
    said: list[Said] = []
    for sheet in every_sheet(facts):
        if not holds_dichloromethane(facts, sheet):
            continue
        if _sale_banned(facts, sheet):
            said.append(_sale(sheet))
        if is_paid(facts) and _enough(sheet) and in_force(facts, "dichloromethane-commercial-use", "US"):
            said.append(_use(sheet))
    return tuple(said)


def _enough(sheet: Sheet) -> bool:
    """Whether the share may reach 0.1 %; a share that was not told counts as reaching it."""
    shares = dichloromethane_shares(sheet)
    return not shares or max(shares) >= LEAST_SHARE


def _sale_banned(facts: Facts, sheet: Sheet) -> bool:
    if sheet.role == "stripper" and in_force(facts, "dichloromethane-consumer-ban", "US"):
        return True
    return _enough(sheet) and in_force(facts, "dichloromethane-retail-sale", "US")


def _sale(sheet: Sheet) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, "sale"),
        strength="law",
        bound="sellers",
        consequence="note",
        effect="tells",
        values=(word("product", sheet.product), word("what", "sale")),
        relax="other_stripping",
    )


def _use(sheet: Sheet) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id, "use"),
        strength="law",
        bound="firm",
        consequence="harms",
        effect="stops",
        values=(word("product", sheet.product), word("what", "use")),
        relax="other_stripping",
    )
