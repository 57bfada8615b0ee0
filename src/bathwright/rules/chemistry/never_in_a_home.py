"""A product that has no place in a home: fluoride acid; and dichloromethane that was used a short time ago.

What
    A product of this job, used, wished or used lately, with hydrofluoric acid or a bifluoride. What was used lately
    counts until a day has passed, with three rinses and a pH strip. Dichloromethane that was used on the fixture less
    than a day before the start: the room is aired for a day first.
Why
    Fluoride goes through skin and gloves without pain and stops the heart; a palm of it can kill. No household mask,
    glove or first aid is enough. Dichloromethane stays in the bath, in rags and in the trap, and kills unnoticed.
Strength
    Danger, everywhere, whoever works. Nothing cures a fluoride acid in the job.
Fires
    "descaler with fluoride acid, wished", "dichloromethane two hours before the start".
Stays silent
    "citric descaler", "dichloromethane two days before the start".
Sources
    hf-bifluoride-notes: fluoride. osha-niosh-2013-110: dichloromethane. own-judgement: a day.
"""

import re
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import ProductUse
from bathwright.rules.facts import Facts, components, every_sheet, has_tag
from bathwright.rules.say import with_measures, word
from bathwright.schedule.hours import to_utc

CODE = "never-in-a-home"
SOURCES = ("hf-bifluoride-notes", "osha-niosh-2013-110", "own-judgement")

_NAME = re.compile(r"bifluorid|hydrofluoric|hydrogen (?:di)?fluorid|fluoric acid|(?<![a-z])hf(?![a-z])", re.IGNORECASE)
_DAY = timedelta(days=1)
_RINSES = 3


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for each fluoride acid; an airing where dichloromethane was used a short time ago."""
    said: list[Said] = [
        _finding(sheet.id, "fluoride-acid", sheet.product) for sheet in every_sheet(facts) if _fluoride(facts, sheet)
    ]
    for product in facts.fixture.used_lately or ():
        said += _lately(facts, product)
    return tuple(dict.fromkeys(said))


def _fluoride(facts: Facts, sheet: Sheet) -> bool:
    named = any(_NAME.search(entry.substance) for entry in components(sheet))
    return "fluoride-acid" in sheet.chemistries or has_tag(facts, sheet, "fluoride") or named


def _lately(facts: Facts, product: ProductUse) -> tuple[Said, ...]:
    until = _day_after(facts, product)
    soon = until is None or _start(facts) < until
    finding = _finding(facts.fixture.id, product.chemistry, None)
    if product.chemistry == "fluoride-acid":
        gone = not soon and (product.rinses or 0) >= _RINSES and product.ph_checked
        return () if gone else (finding,)
    if product.chemistry == "dichloromethane" and soon:
        aired = Measure(
            id="air-out", act="air_out", who="household", ends=until, feasible="have", when="before_start"
        )  # fmt: skip
        return with_measures(finding, aired)
    return ()


def _start(facts: Facts) -> datetime:
    return facts.timetable.starts if facts.timetable else facts.at


def _day_after(facts: Facts, product: ProductUse) -> datetime | None:
    """A day after it was used; None when nobody told when."""
    if product.at is None:
        return None
    zone = ZoneInfo(facts.survey.place.time_zone)
    return (product.at if product.at.tzinfo else to_utc(product.at, zone)) + _DAY


def _finding(about: str, substance: str, product: str | None) -> Finding:
    return Finding(
        code=CODE,
        about=(about, substance),
        strength="danger",
        consequence="kills",
        effect="stops",
        values=(word("substance", substance), *([word("product", product)] if product else [])),
        relax="leave_out_or_wait",
    )
