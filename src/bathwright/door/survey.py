"""Reading a survey: structure first, then sense, all faults together."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo, available_timezones

from bathwright.domain.codes import OBSERVATIONS
from bathwright.domain.survey import Air, Fixture, Survey
from bathwright.door.faults import DoorError, Fault, nearest
from bathwright.door.reader import Path as Place
from bathwright.door.reader import read_record, show_place
from bathwright.door.toml_file import line_of, read_toml

FORMAT = "bathwright-survey/1"
# plausible sizes in metres, low and high: common practice, no source; outside them a typing error is likelier
SIZES: dict[str, dict[str, tuple[float, float]]] = {
    "bath": {"length": (0.9, 2.3), "width": (0.5, 1.6), "depth": (0.15, 0.85)},
    "basin": {"length": (0.2, 1.2), "width": (0.2, 0.8), "depth": (0.05, 0.4)},
    "kitchen_sink": {"length": (0.3, 1.5), "width": (0.3, 0.8), "depth": (0.08, 0.4)},
    "shower_tray": {"length": (0.6, 2.3), "width": (0.6, 1.6), "depth": (0.01, 0.3)},
    "wall_tile": {"length": (0.2, 20.0), "height": (0.2, 4.0)},
}
Finding = tuple[Place, str, str]


def read_survey(path: Path) -> Survey:
    """The survey in a TOML file. DoorError with all faults."""
    data, text = read_toml(path)
    name = str(path)
    given = data.get("format")
    if given != FORMAT:
        raise DoorError([wrong_format(name, text, given, FORMAT, "survey")])
    survey, faults = read_record(Survey, data, name, text)
    if survey:
        for place, wrong, right in _sense(survey):
            faults.append(Fault(name, show_place(place), wrong, right, line_of(text, place)))
    if faults or survey is None:
        raise DoorError(faults)
    return survey


def wrong_format(name: str, text: str, given: object, wanted: str, what: str) -> Fault:
    """The fault of a file that is another kind of file, or says none."""
    if given is None:
        return Fault(name, "format", "is missing", f'a {what} begins with format = "{wanted}"')
    kinds = {
        "bathwright-survey/1": "a survey",
        "bathwright-sheet/1": "a sheet",
        "bathwright-plan/1": "a plan",
    }
    found = kinds.get(str(given), f"of the unknown format {str(given)[:40]!r}")
    return Fault(
        name,
        "format",
        f"this file is {found}",
        f'a {what} has format = "{wanted}"',
        line_of(text, ("format",)),
    )


def _sense(survey: Survey) -> Iterator[Finding]:
    yield from _place(survey)
    yield from _ids(survey)
    if not survey.fixtures:
        yield ("fixtures",), "is empty", "a survey needs one fixture at least"
    for index, fixture in enumerate(survey.fixtures):
        yield from _fixture(("fixtures", index), fixture)
    yield from _openings(survey)
    yield from _calendar(survey)
    for which, air in (("indoor", survey.climate.indoor), ("outdoor", survey.climate.outdoor)):
        if air:
            yield from _air(("climate", which), air)
    for index, item in enumerate(survey.equipment):
        if item.rating is not None and not 0 < item.rating <= 3.0:
            yield ("equipment", index, "rating"), "is no plausible flow of a fan", "up to 3 m3/s (6,400 cfm)"
    for index, space in enumerate(survey.spaces):
        if space.volume is not None and not 1.0 <= space.volume <= 20000:
            yield ("spaces", index, "volume"), "is no plausible volume of a room or home", "1 to 20 000 m3"


def _place(survey: Survey) -> Iterator[Finding]:
    if not re.fullmatch(r"[A-Z]{2}", survey.place.country):
        yield (
            ("place", "country"),
            f"{survey.place.country!r} is no country code",
            'two capitals, for example "US"',
        )
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
            if not re.fullmatch(r"[a-z0-9][a-z0-9_-]{0,39}", entry.id):
                yield (key, index, "id"), f"{entry.id[:40]!r} is no id", "small letters, digits and - _ only"
            if entry.id in seen:
                yield (key, index, "id"), f"{entry.id!r} stands there twice", "each id once"
            seen.add(entry.id)


def _fixture(place: Place, fixture: Fixture) -> Iterator[Finding]:
    sizes = fixture.sizes
    for name, (low, high) in SIZES[fixture.kind].items():
        value = getattr(sizes, name)
        if value is not None and not low <= value <= high:
            right = f"{low:g} to {high:g} m ({low / 0.0254:.0f} to {high / 0.0254:.0f} in)"
            yield (*place, "sizes", name), f"{value:.2f} m is no plausible {name} of a {fixture.kind}", right
    for inner, outer in (("floor_length", "length"), ("floor_width", "width")):
        small, large = getattr(sizes, inner), getattr(sizes, outer)
        if small is not None and large is not None and small >= large:
            yield (
                (*place, "sizes", inner),
                f"is not smaller than the {outer}",
                "measure the flat floor inside",
            )
    width = sizes.width
    if sizes.rim_width is not None and width is not None and 2 * sizes.rim_width >= width:
        yield (*place, "sizes", "rim_width"), "leaves no opening", "less than half of the width"
    for name in ("length", "width", "depth", "height", "area"):
        if getattr(sizes, name) == 0:
            yield (*place, "sizes", name), "is zero", "leave it out when it is not known"
    for index, seen in enumerate(fixture.observations):
        here = (*place, "observations", index)
        if seen.what not in OBSERVATIONS:
            yield (
                (*here, "what"),
                f"{seen.what[:40]!r} is no known test or sight",
                nearest(seen.what, [*OBSERVATIONS]),
            )
        elif seen.result not in OBSERVATIONS[seen.what]:
            allowed = ", ".join(OBSERVATIONS[seen.what])
            yield (*here, "result"), f"{seen.result[:40]!r} is no result of {seen.what}", f"one of {allowed}"


def _openings(survey: Survey) -> Iterator[Finding]:
    known = [space.id for space in survey.spaces] + ["outdoors"]
    for index, opening in enumerate(survey.openings or ()):
        for side, space in enumerate(opening.between):
            if space not in known:
                yield (
                    ("openings", index, "between", side),
                    f"{space[:40]!r} is no space of this survey",
                    nearest(space, known),
                )
    for index, appliance in enumerate(survey.appliances or ()):
        if appliance.space not in known:
            yield (
                ("appliances", index, "space"),
                f"{appliance.space[:40]!r} is no space of this survey",
                nearest(appliance.space, known),
            )


def _calendar(survey: Survey) -> Iterator[Finding]:
    calendar = survey.calendar
    for name in ("earliest", "wanted_back"):
        when = getattr(calendar, name)
        if when is not None and when.tzinfo is not None:
            yield (
                ("calendar", name),
                "has a time zone of its own",
                "write the wall clock of the home, without zone",
            )
    start, back = calendar.earliest, calendar.wanted_back
    if start and back and not (start.tzinfo or back.tzinfo) and back <= start:
        yield ("calendar", "wanted_back"), "is not after the earliest start", "a later time"
    taken: dict[str, list[tuple[str, str]]] = {}
    for index, hours in enumerate(calendar.working):
        here: Place = ("calendar", "working", index)
        good = all(re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d|24:00", text) for text in (hours.starts, hours.ends))
        if not good:
            yield (
                here,
                f"{hours.starts[:9]!r} to {hours.ends[:9]!r} are no times of day",
                'write "08:00" and "18:00"',
            )
        elif hours.starts >= hours.ends:
            yield (
                here,
                f"ends at {hours.ends}, before it starts at {hours.starts}",
                "split hours over midnight in two",
            )
        else:
            for day in hours.days:
                if any(hours.starts < ends and starts < hours.ends for starts, ends in taken.get(day, [])):
                    yield here, f"overlaps other hours on {day}", "each hour once"
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
    if air.kind == "constant" and air.temperature is None and (air.low is not None or air.high is not None):
        yield place, "has low or high but is constant", 'add kind = "typed_day"'
