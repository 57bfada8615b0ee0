"""The bath is not ready when it is wanted back.

What
    The first full bath, by the longer of coating and sealant, lies after the time at which the household wants it.
Why
    A coat that is used too soon is lost.
Strength
    Good practice; binds nobody. It is told: another day, or another place to bathe.
Fires
    "wanted back two days before the full bath".
Stays silent
    "wanted back a week after the full bath", "no day told".
Sources
    own-computation: the clock. The waits are from the sheets.
"""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

from bathwright.domain.findings import Finding, Said
from bathwright.domain.values import Value
from bathwright.rules.facts import Facts

CODE = "wanted-back-missed"
SOURCES = ("own-computation",)


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells by how much the full bath is later than wanted."""
    wanted = facts.survey.calendar.wanted_back
    ready = max((c.at for c in facts.clocks if c.name == "full_bath" and c.at is not None), default=None)
    if wanted is None or ready is None:
        return ()
    if wanted.tzinfo is None:
        wanted = wanted.replace(tzinfo=ZoneInfo(facts.survey.place.time_zone))
    late = (ready - wanted).total_seconds()
    if late <= 0:
        return ()
    return (
        Finding(
            code=CODE,
            about=("full_bath",),
            strength="good_practice",
            consequence="delays",
            effect="tells",
            value=late,
            limit=0.0,
            kind="time",
            basis="p95",
            margin=-1.0,
            values=(
                Value(name="wanted", value=_instant(wanted)),
                Value(name="at", value=_instant(ready)),
                Value(name="late", value=late, kind="time"),
            ),
            relax="other_day",
        ),
    )


def _instant(when: datetime) -> str:
    """The instant as files write it: UTC."""
    return when.astimezone(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
