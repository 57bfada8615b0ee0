"""Whether rooms, fans, people and the clean tap of a survey make sense together.

A room that is too large, a fan above its rating or a second bathroom would soften what the plan says of the air.
The bounds are common practice, no source: outside them a typing error is likelier.
"""

import re
from collections.abc import Iterator

from bathwright.domain.survey import Space, Survey
from bathwright.door.reader import Finding
from bathwright.door.reader import Path as Place

_FT3 = 0.3048**3
_VOLUMES: dict[str, tuple[float, float]] = {
    "bathroom": (2.0, 60.0),
    "rest_of_home": (0.3, 3000.0),
    "neighbour": (0.3, 20000.0),
}
_APART = 0.2  # how far a told volume may lie from floor area times height: sloping ceilings, cupboards
_OWN_TAP = {"bath", "bathroom", "bathtub", "tub", "shower"}
_SMALL_WORDS = {"the", "a", "our", "my", "in", "of", "at", "tap", "faucet", "sink", "basin", "room"}


def home(survey: Survey) -> Iterator[Finding]:
    """All that makes no sense among spaces, fans, people and the clean tap: place, what is wrong, what is right."""
    yield from _one_bathroom(survey.spaces)
    for index, space in enumerate(survey.spaces):
        yield from _space(("spaces", index), space)
    for index, entry in enumerate(survey.equipment):
        if entry.rating is not None and entry.real_flow is not None and entry.real_flow > entry.rating:
            wrong = "is above the rating, and a fan never moves more than in free air"
            yield ("equipment", index, "real_flow"), wrong, "measure again, or leave it out"
    working = [index for index, person in enumerate(survey.people or ()) if person.works]
    for index in working[1:]:
        yield ("people", index, "works"), "names one more person who works", "this edition plans one; name one"
    if survey.clean_tap is not None:
        yield from _clean_tap(survey.clean_tap, survey.spaces)


def _one_bathroom(spaces: tuple[Space, ...]) -> Iterator[Finding]:
    bathrooms = [index for index, space in enumerate(spaces) if space.kind == "bathroom"]
    if spaces and not bathrooms:
        yield ("spaces",), "names no bathroom", 'one space has kind = "bathroom"; or leave all spaces out'
    if len(bathrooms) > 1:
        wrong = f"names {len(bathrooms)} bathrooms, and this edition plans one"
        yield ("spaces",), wrong, 'give the others kind = "rest_of_home"'


def _space(place: Place, space: Space) -> Iterator[Finding]:
    volume = space.volume
    if volume is None:
        return
    low, high = _VOLUMES[space.kind]
    if not low <= volume <= high:
        what = {"bathroom": "bathroom", "rest_of_home": "home", "neighbour": "home next door"}[space.kind]
        right = f"{low:g} to {high:g} m3 ({low / _FT3:.0f} to {high / _FT3:.0f} ft3); check ft3 against m3"
        yield (*place, "volume"), f"{volume:.4g} m3 is no plausible volume of a {what}", right
    elif space.floor_area is not None and space.height is not None:
        box = space.floor_area * space.height
        if not (1 - _APART) * box <= volume <= (1 + _APART) * box:
            wrong = f"{volume:.4g} m3 does not fit floor area times height, {box:.4g} m3"
            yield (*place, "volume"), wrong, "measure again, or leave one of the three out"


def _clean_tap(told: str, spaces: tuple[Space, ...]) -> Iterator[Finding]:
    """The tap for a splash in the eye lies outside the room with the vapour."""
    words = set(re.findall(r"[a-z0-9]+", told.lower()))
    if not words and not told.strip():
        yield ("clean_tap",), "is empty", 'name another room, for example "kitchen"; or leave it out'
    rooms = [set(re.findall(r"[a-z0-9]+", space.id)) for space in spaces if space.kind == "bathroom"]
    left = words - _SMALL_WORDS
    if left and (left <= _OWN_TAP or any(words == room for room in rooms)):
        wrong = f"{told[:40]!r} is the tap of the room that is worked in"
        yield ("clean_tap",), wrong, 'name a tap of another room, for example "kitchen"'
