"""How long the household has no bathroom and no bath.

What
    It was not told that there is another toilet, and the bathroom stays closed for others for more than a working day;
    or it was not told that there is another place to bathe. Then the plan tells for how long.
Why
    People who find out on the second day go in too early.
Strength
    A note. Binds nobody.
Fires
    "no other toilet, closed for 30 hours", "no other place to bathe", "nobody told about either".
Stays silent
    "another toilet and another bath", "no other toilet, closed for six hours".
Sources
    own-judgement: eight hours as a working day.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.values import Value
from bathwright.rules.facts import Facts
from bathwright.rules.say import amount

CODE = "room-closed"
SOURCES = ("own-judgement",)

WORKING_DAY_S = 8 * 3600.0


def check(facts: Facts) -> tuple[Said, ...]:
    """One note with the hours of the room and the days of the bath, as far as they were computed."""
    values = (*_room(facts), *_bath(facts))
    if not values:
        return ()
    return (
        Finding(
            code=CODE,
            about=("household",),
            strength="good_practice",
            consequence="delays",
            effect="tells",
            values=values,
            relax="other_place_to_wash",
        ),
    )


def _room(facts: Facts) -> tuple[Value, ...]:
    """From the first vapour until the air of the bathroom is good again; the horizon where it was not reached."""
    if facts.survey.household.other_wc or facts.air is None or not facts.air.emissions:
        return ()
    ends = facts.air.back_at or facts.air.horizon
    if ends is None:
        return ()
    closed = (ends - min(e.starts for e in facts.air.emissions)).total_seconds()
    return (amount("room", closed, "time"),) if closed > WORKING_DAY_S else ()


def _bath(facts: Facts) -> tuple[Value, ...]:
    """From the first step until the full bath."""
    full = next((clock.at for clock in facts.clocks if clock.name == "full_bath"), None)
    if facts.survey.household.other_bath or full is None or facts.timetable is None:
        return ()
    return (amount("bath", (full - facts.timetable.starts).total_seconds(), "time"),)
