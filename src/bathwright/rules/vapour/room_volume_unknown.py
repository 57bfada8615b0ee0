"""Nobody has told how big the bathroom is.

What
    Vapour is let out, and neither the volume of the bathroom nor its floor and height were told. The plan takes a
    small one.
Why
    The same vapour in a smaller room is stronger. With the real size the hours may become shorter.
Strength
    A question, no finding. It does not block: the small room errs to the bad side.
Fires
    "volume not told", "floor told without the height", "no bathroom among the spaces".
Stays silent
    "volume told", "nothing but water leaves".
Sources
    own-judgement: the small room.
"""

from bathwright.domain.findings import Said
from bathwright.rules.facts import Facts, organic_emissions
from bathwright.rules.say import question

CODE = "room-volume-unknown"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A question when vapour is let out into a room of unknown size."""
    if not organic_emissions(facts) or _told(facts):
        return ()
    return (question("room_volume", CODE, "smaller_than_usual", (), "tape_measure"),)


def _told(facts: Facts) -> bool:
    rooms = [space for space in facts.survey.spaces if space.kind == "bathroom"]
    return any(room.volume is not None or (room.floor_area is not None and room.height is not None) for room in rooms)
