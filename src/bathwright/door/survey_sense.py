"""Whether a survey makes sense: impossible sizes, words that nobody knows, hours that overlap."""

import re
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo, available_timezones

from bathwright.domain.codes import OBSERVATIONS
from bathwright.domain.survey import Air, Calendar, Fixture, Hours, Observation, Sizes, Survey
from bathwright.door.countries import COUNTRIES
from bathwright.door.faults import nearest
from bathwright.door.reader import Finding
from bathwright.door.reader import Path as Place
from bathwright.door.shapes import UNREAD
from bathwright.door.survey_home import home
from bathwright.units import QuantityError, read_quantity

# plausible sizes in metres, low and high: common practice, no source; outside them a typing error is likelier
SIZES: dict[str, dict[str, tuple[float, float]]] = {
    "bath": {"length": (0.9, 2.3), "width": (0.5, 1.6), "depth": (0.15, 0.85), "height": (0.3, 1.2)},
    "basin": {"length": (0.2, 1.2), "width": (0.2, 0.8), "depth": (0.05, 0.4)},
    "kitchen_sink": {"length": (0.3, 1.5), "width": (0.3, 0.8), "depth": (0.08, 0.4)},
    "shower_tray": {"length": (0.6, 2.3), "width": (0.6, 1.6), "depth": (0.01, 0.3)},
    "wall_tile": {"length": (0.2, 20.0), "height": (0.2, 4.0)},
}
_ANY_FIXTURE = {"area": (0.05, 60.0), "apron_height": (0.0, 1.0), "rim_width": (0.0, 0.5)}
_NOT_ZERO = ("length", "width", "depth", "height")
_FLOW = (1e-6, 3.0, "is no plausible flow of a fan", "above 0, up to 3 m3/s (6,400 cfm)")
_NUMBERS: dict[str, dict[str, tuple[float, float, str, str]]] = {
    # list of the survey -> field -> low, high in SI, what is wrong, what is right; common practice, no source
    "equipment": {"rating": _FLOW, "real_flow": _FLOW},
    "spaces": {
        "floor_area": (0.1, 5000.0, "is no plausible floor area", "0.1 to 5 000 m2"),
        "height": (1.5, 15.0, "is no plausible height of a room", "1.5 to 15 m"),
        "air_change_rate": (0.0, 60 / 3600, "is no plausible air change rate", "0 to 60 1/h"),
    },
    "openings": {"area": (0.0, 50.0, "is no plausible area of an opening", "0 to 50 m2")},
}
_MOST_HOURS = 50
ID = r"[a-z0-9][a-z0-9_-]{0,39}"


def sense(survey: Survey) -> Iterator[Finding]:
    """All that makes no sense in a survey that has the right structure: place, what is wrong, what would be right."""
    yield from _place(survey)
    yield from _ids(survey)
    yield from id_of_file(survey.id)
    if not survey.fixtures:
        yield ("fixtures",), "is empty", "a survey needs one fixture at least"
    if len(survey.fixtures) > 1:
        wrong = f"is one of {len(survey.fixtures)} fixtures, and this edition plans one"
        yield ("fixtures", 1), wrong, "make one survey for each fixture"
    for index, fixture in enumerate(survey.fixtures):
        yield from _fixture(("fixtures", index), fixture)
    yield from _openings(survey)
    yield from _calendar(survey.calendar)
    for which, air in (("indoor", survey.climate.indoor), ("outdoor", survey.climate.outdoor)):
        if air:
            yield from _air(("climate", which), air)
    yield from _numbers(survey)
    yield from home(survey)


def id_of_file(text: str) -> Iterator[Finding]:
    """The id of a survey or sheet: it names files and plans."""
    if not re.fullmatch(ID, text):
        yield ("id",), f"{text[:40]!r} is no id", "small letters, digits and - _ only"


def _numbers(survey: Survey) -> Iterator[Finding]:
    for key, fields in _NUMBERS.items():
        for index, entry in enumerate(getattr(survey, key) or ()):
            for name, (low, high, wrong, right) in fields.items():
                value = getattr(entry, name)
                if value is not None and not low <= value <= high:
                    yield (key, index, name), wrong, right
    if survey.longest_absence is not None and survey.longest_absence > 400 * 86400:
        yield ("longest_absence",), "is longer than a year", "check the unit (h, days)"
    years = survey.purpose.years_wanted
    if years is not None and not 0 <= years <= 100:
        yield ("purpose", "years_wanted"), f"{years:g} is no plausible number of years", "0 to 100"


def _place(survey: Survey) -> Iterator[Finding]:
    country = survey.place.country
    if country not in COUNTRIES and country != UNREAD:
        right = {"UK": 'write "GB"', "EL": 'write "GR"'}.get(country, 'two capitals of ISO 3166, for example "US"')
        yield ("place", "country"), f"{country[:40]!r} is no country code", right
    zone = survey.place.time_zone
    try:
        ZoneInfo(zone)
    except (KeyError, ValueError, OSError):
        hint = nearest(zone, sorted(available_timezones()))
        yield ("place", "time_zone"), f"{zone[:40]!r} is no time zone", hint
    years = [(("building", "year"), survey.building.year)]
    years += [(("fixtures", i, "year"), f.year) for i, f in enumerate(survey.fixtures)]  # type: ignore[misc]
    for place, year in years:
        if year is not None and not 1700 <= year <= 2100:
            yield place, f"{year} is no plausible year", "1700 to 2100"
    if not 1 <= survey.work.hands <= 6:
        yield ("work", "hands"), f"{survey.work.hands} pairs of hands do not fit in a bathroom", "1 to 6"


def _ids(survey: Survey) -> Iterator[Finding]:
    lists: dict[str, tuple[Any, ...]] = {
        "fixtures": survey.fixtures, "spaces": survey.spaces, "openings": survey.openings or (),
        "appliances": survey.appliances or (), "people": survey.people or (), "equipment": survey.equipment,
    }  # fmt: skip
    for key, entries in lists.items():
        seen: set[str] = set()
        for index, entry in enumerate(entries):
            if not re.fullmatch(ID, entry.id):
                yield (key, index, "id"), f"{entry.id[:40]!r} is no id", "small letters, digits and - _ only"
            if entry.id in seen:
                yield (key, index, "id"), f"{entry.id!r} stands there twice", "each id once"
            seen.add(entry.id)


def _fixture(place: Place, fixture: Fixture) -> Iterator[Finding]:
    sizes = fixture.sizes
    ranges = {**_ANY_FIXTURE, **SIZES[fixture.kind]}
    for name, (low, high) in ranges.items():
        value = getattr(sizes, name)
        if value is not None and not low <= value <= high:
            unit = "m2" if name == "area" else "m"
            inches = "" if name == "area" else f" ({low / 0.0254:.0f} to {high / 0.0254:.0f} in)"
            wrong = f"{value:.2f} {unit} is no plausible {name.replace('_', ' ')} of a {fixture.kind.replace('_', ' ')}"
            yield (*place, "sizes", name), wrong, f"{low:g} to {high:g} {unit}{inches}"
    for name in _NOT_ZERO:
        if name not in ranges and getattr(sizes, name) == 0:
            yield (*place, "sizes", name), "is zero", "leave it out when it is not known"
    yield from _fits((*place, "sizes"), sizes)
    for index, seen in enumerate(fixture.observations):
        yield from _observation((*place, "observations", index), seen)
    for index, used in enumerate(fixture.used_lately or ()):
        if used.at is not None:
            yield from _wall_clock((*place, "used_lately", index, "at"), used.at)
        if used.rinses is not None and not 0 <= used.rinses <= 100:
            yield (*place, "used_lately", index, "rinses"), f"{used.rinses} is no plausible number", "0 to 100"


def _fits(place: Place, sizes: Sizes) -> Iterator[Finding]:
    for inner, outer in (("floor_length", "length"), ("floor_width", "width")):
        small, large = getattr(sizes, inner), getattr(sizes, outer)
        if small is not None and large is not None and small >= large:
            yield (*place, inner), f"is not smaller than the {outer}", "measure the flat floor inside"
    for edge, wrong in (("rim_width", "leaves no opening"), ("corner_radius", "is larger than the bath allows")):
        value = getattr(sizes, edge)
        if value is not None and sizes.width is not None and 2 * value >= sizes.width:
            yield (*place, edge), wrong, "less than half of the width"


def _observation(place: Place, seen: Observation) -> Iterator[Finding]:
    if seen.what not in OBSERVATIONS:
        wrong = f"{seen.what[:40]!r} is no known test or sight"
        yield (*place, "what"), wrong, nearest(seen.what, [*OBSERVATIONS])
    elif seen.result not in OBSERVATIONS[seen.what]:
        allowed = ", ".join(OBSERVATIONS[seen.what])
        yield (*place, "result"), f"{seen.result[:40]!r} is no result of {seen.what}", f"one of {allowed}"
    elif seen.what == "surface_temperature":
        yield from _measured((*place, "value"), seen.value)


def _measured(place: Place, value: str | None) -> Iterator[Finding]:
    """A temperature of the bath's surface decides when a coat may go on: without its number it says nothing."""
    right = 'write for example value = "17 °C"'
    if value is None:
        yield place, "is missing", right
        return
    try:
        kelvin = read_quantity(value, "temperature")
    except QuantityError as error:
        yield place, str(error), ""
        return
    if not 263.15 <= kelvin <= 313.15:
        yield place, f"is {kelvin - 273.15:.0f} °C, no plausible temperature of a bath", "-10 to 40 °C; check the unit"


def _openings(survey: Survey) -> Iterator[Finding]:
    known = [space.id for space in survey.spaces] + ["outdoors"]
    named: list[tuple[Place, str]] = []
    for index, opening in enumerate(survey.openings or ()):
        named += [(("openings", index, "between", side), space) for side, space in enumerate(opening.between)]
        if opening.between[0] == opening.between[1]:
            yield ("openings", index, "between"), "names the same space twice", 'two spaces, or a space and "outdoors"'
    named += [(("appliances", i, "space"), entry.space) for i, entry in enumerate(survey.appliances or ())]
    spaces = set(known)
    for place, space in named:
        if space not in spaces and UNREAD not in spaces:
            yield place, f"{space[:40]!r} is no space of this survey", nearest(space, known)


def _wall_clock(place: Place, when: datetime | date) -> Iterator[Finding]:
    if isinstance(when, datetime) and when.tzinfo is not None:
        yield place, "has a time zone of its own", "write the wall clock of the home, without zone"
    if not 2000 <= when.year <= 2100:
        yield place, f"lies in the year {when.year}", "2000 to 2100"


def _calendar(calendar: Calendar) -> Iterator[Finding]:
    start, back = calendar.earliest, calendar.wanted_back
    for name, when in (("earliest", start), ("wanted_back", back)):
        if when is not None:
            yield from _wall_clock(("calendar", name), when)
    for index, day in enumerate(calendar.closed):
        yield from _wall_clock(("calendar", "closed", index), day)
    if start and back and not (start.tzinfo or back.tzinfo) and back <= start:
        yield ("calendar", "wanted_back"), "is not after the earliest start", "a later time"
    if len(calendar.working) > _MOST_HOURS:
        yield ("calendar", "working"), f"has {len(calendar.working)} entries", f"at most {_MOST_HOURS}"
        return
    taken: dict[str, list[tuple[str, str]]] = {}
    for index, hours in enumerate(calendar.working):
        yield from _hours(("calendar", "working", index), hours, taken)


def _hours(place: Place, hours: Hours, taken: dict[str, list[tuple[str, str]]]) -> Iterator[Finding]:
    if not all(re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d|24:00", text) for text in (hours.starts, hours.ends)):
        wrong = f"{hours.starts[:9]!r} to {hours.ends[:9]!r} are no times of day"
        yield place, wrong, 'write "08:00" and "18:00"'
        return
    if not hours.days:
        yield (*place, "days"), "is empty", 'name the days, for example ["sat", "sun"]'
    if hours.starts >= hours.ends:
        wrong = f"ends at {hours.ends}, before it starts at {hours.starts}"
        yield place, wrong, "split hours over midnight in two"
        return
    for day in hours.days:
        if any(hours.starts < ends and starts < hours.ends for starts, ends in taken.get(day, [])):
            yield place, f"overlaps other hours on {day}", "each hour once"
        taken.setdefault(day, []).append((hours.starts, hours.ends))


def _air(place: Place, air: Air) -> Iterator[Finding]:
    for name in ("temperature", "low", "high"):
        value = getattr(air, name)
        if value is not None and not 233.15 <= value <= 323.15:
            yield (*place, name), f"{value - 273.15:.0f} °C is no plausible air temperature", "-40 to 50 °C"
    if air.humidity is not None and air.humidity > 1:
        yield (*place, "humidity"), "is over 100 %", "0 to 100 %"
    if air.low is not None and air.high is not None and air.low > air.high:
        yield (*place, "low"), "is above high", "low is the night, high the afternoon"
    if air.kind == "typed_day" and (air.low is None or air.high is None):
        yield place, "is a typed day without low and high", 'give low = "16 °C" and high = "21 °C"'
    if air.kind == "constant" and (air.low is not None or air.high is not None):
        yield place, "has low or high but is constant", 'add kind = "typed_day", or give temperature alone'
    if air.kind == "typed_day" and air.temperature is not None:
        yield (*place, "temperature"), "stands beside low and high", "a typed day has low and high only"
