"""Any survey that the door lets in gets a plan: parts left out, other sizes, air, places, hours, people, histories."""

import dataclasses
import json
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, get_args

from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.domain.codes import OBSERVATIONS, AgeBand, Chemistry, SubstrateCode, Trait
from bathwright.domain.plan import Options, Plan
from bathwright.domain.survey import (
    Air,
    Building,
    Calendar,
    Climate,
    Equipment,
    Fixture,
    Hours,
    Household,
    Observation,
    Person,
    Place,
    ProductUse,
    Sizes,
    Space,
    Survey,
    Wish,
    Work,
)
from bathwright.door.survey import read_survey
from bathwright.door.survey_sense import SIZES, sense
from bathwright.door.writing import to_json
from bathwright.knowledge import load
from bathwright.planning import make_plan

BOOK = load()
FOLDER = Path(__file__).parents[2] / "examples" / "surveys"
DEMO, EASY = read_survey(FOLDER / "demo.toml"), read_survey(FOLDER / "easy-go.toml")
AT = datetime(2026, 3, 5, 15, tzinfo=UTC)  # days before clocks change in many places
CFM = 0.3048**3 / 60
PLACES = [
    ("US", "America/New_York"), ("US", "America/Chicago"), ("CA", "America/Toronto"), ("GB", "Europe/London"),
    ("DE", "Europe/Berlin"), ("IN", "Asia/Kolkata"), ("AU", "Australia/Lord_Howe"), ("JP", "UTC"),
]  # fmt: skip
EVERY_DAY = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


def words(of: Any) -> st.SearchStrategy[Any]:
    return st.sampled_from(get_args(of))


def maybe(strategy: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
    return st.none() | strategy


@st.composite
def fixtures(draw: st.DrawFn) -> Fixture:
    kind = draw(st.sampled_from(["bath", "bath", "bath", "basin", "shower_tray", "kitchen_sink", "wall_tile"]))
    sizes = {name: draw(maybe(st.floats(low, high))) for name, (low, high) in SIZES[kind].items()}
    told = draw(st.lists(st.sampled_from(sorted(OBSERVATIONS)), unique=True, max_size=12))
    seen = [Observation(what=what, result=draw(st.sampled_from(OBSERVATIONS[what])), value="17 °C") for what in told]
    past = st.builds(
        ProductUse, chemistry=words(Chemistry), rinses=maybe(st.integers(0, 5)), ph_checked=maybe(st.booleans()),
        at=maybe(st.datetimes(datetime(2026, 2, 20), datetime(2026, 3, 9, 12))),  # noqa: DTZ001
        on=st.sampled_from(["surface", "drain"]),
    )  # fmt: skip
    return Fixture(
        id="bath", kind=kind, material=draw(maybe(words(SubstrateCode))), sizes=Sizes(**sizes),
        year=draw(maybe(st.integers(1900, 2026))), coat_apron=draw(st.booleans()), observations=tuple(seen),
        outside_wall=draw(maybe(st.booleans())), void_under=draw(maybe(st.booleans())),
        used_lately=draw(maybe(st.lists(past, max_size=2).map(tuple))),
    )  # fmt: skip


@st.composite
def airs(draw: st.DrawFn) -> Air | None:
    humidity = draw(maybe(st.floats(0.05, 1.0)))
    low = draw(st.floats(273.15, 303.15))
    return draw(
        st.sampled_from(
            [
                None, Air(temperature=low, humidity=humidity), Air(humidity=humidity),
                Air(kind="typed_day", low=low, high=low + 6.0, humidity=humidity),
            ]
        )
    )  # fmt: skip


@st.composite
def calendars(draw: st.DrawFn) -> Calendar:
    opens, length = draw(st.integers(0, 20)), draw(st.sampled_from([1, 3, 8, 11, 24]))
    days = draw(st.lists(st.sampled_from(EVERY_DAY), unique=True, min_size=1, max_size=7))
    hours = Hours(days=tuple(days), starts=f"{opens:02}:00", ends=f"{min(24, opens + length):02}:00")
    earliest = draw(maybe(st.datetimes(datetime(2026, 3, 6), datetime(2026, 4, 1))))  # noqa: DTZ001
    return Calendar(
        earliest=earliest, working=draw(st.sampled_from([(), (hours,)])),
        wanted_back=None if earliest is None else earliest.replace(month=5, day=1),
        closed=draw(st.sampled_from([(), (date(2026, 3, 8), date(2026, 3, 9))])),
    )  # fmt: skip


KINDS = ["ceiling_fan", "duct_fan", "box_fan_filter", "half_mask_vapour"]
equipment = st.builds(
    Equipment, id=st.just("fan"), kind=st.sampled_from(KINDS),
    have=st.sampled_from(["have", "hire", "buy", "no"]), rating=maybe(st.floats(20 * CFM, 2000 * CFM)),
    discharges=st.sampled_from([None, "outdoors", "shared_duct", "home"]), rated_for_vapour=maybe(st.booleans()),
    inlet=st.sampled_from([None, "room", "basin"]),
)  # fmt: skip
people = st.builds(
    Person, id=st.just("p"), age_band=maybe(words(AgeBand)), can_leave=maybe(st.booleans()), works=st.booleans(),
    traits=maybe(st.lists(words(Trait), unique=True, max_size=2).map(tuple)),
)  # fmt: skip


@st.composite
def surveys(draw: st.DrawFn, base: Survey = DEMO, least_kept: int = 0) -> Survey:
    """A known survey in which all but some parts are other ones."""
    country, zone = draw(st.sampled_from(PLACES))
    volume = draw(maybe(st.floats(2.0, 40.0)))
    wished = draw(st.sampled_from([(), (("strong-stripper", "strip"),), (("household-bleach", "mould"),)]))
    changed: dict[str, Any] = {
        "place": Place(country=country, time_zone=zone),
        "building": draw(st.sampled_from([Building(), base.building, Building(year=2015, tenure="landlord")])),
        "work": draw(st.sampled_from([Work(), base.work, Work(who="firm", paid=True, employer=True)])),
        "fixtures": (draw(fixtures()),),
        "spaces": draw(st.sampled_from([(), (Space(id="bathroom", kind="bathroom", volume=volume),)])),
        "openings": None,
        "appliances": draw(st.sampled_from([None, ()])),
        "people": draw(maybe(st.lists(people, max_size=1).map(tuple))),
        "equipment": tuple(draw(st.lists(equipment, max_size=1))),
        "household": draw(st.sampled_from([Household(), base.household])),
        "calendar": draw(calendars()),
        "climate": Climate(indoor=draw(airs())),
        "wishes": tuple(Wish(sheet=name, use=use) for name, use in wished),
        "longest_absence": draw(maybe(st.floats(3600.0, 20 * 86400.0))),
    }
    kept = draw(st.sets(st.sampled_from(sorted(changed)), min_size=least_kept))
    return dataclasses.replace(base, **{name: value for name, value in changed.items() if name not in kept})


def spaces_fit(survey: Survey) -> Survey:
    """Without what hangs on a space that was left out."""
    known = {space.id for space in survey.spaces} | {"outdoors"}
    openings = tuple(o for o in survey.openings or () if set(o.between) <= known)
    appliances = None if survey.appliances is None else tuple(a for a in survey.appliances if a.space in known)
    return dataclasses.replace(survey, openings=openings or None, appliances=appliances)


def must_hold(made: Plan) -> None:
    assert made.verdict in ("go", "not-yet", "no")
    assert json.loads(to_json(made))["id"] == made.id
    at = [clock.at for clock in made.clocks if clock.at]
    assert at == sorted(at)
    for clock in made.clocks:
        assert clock.used_s is None or clock.printed_s is None or clock.used_s >= clock.printed_s - 1e-6
    for entry in made.exposures:
        assert 0 <= entry.outside.low <= entry.outside.central <= entry.outside.high
        assert entry.limit_value > 0
    for mix in made.mixes:
        assert mix.pot_life_s <= mix.printed_pot_life_s
    if made.verdict == "go":
        assert made.system is not None
        assert made.steps
        assert made.timetable is not None
        assert not [f for f in made.findings if f.effect == "stops" and f.status != "met"]
        assert not [m for m in made.measures if m.when == "before_start" and not m.done]
        assert not [q for q in made.questions if q.blocks]
        assert not [clash for clash in made.timetable.clashes if clash.missed_by_s is None]
        assert made.climate is not None
        assert made.climate.told


@given(surveys())
def test_every_survey_gets_a_plan_that_can_be_written(survey: Survey) -> None:
    asked = spaces_fit(survey)
    assert list(sense(asked)) == []  # such a survey passes the door
    must_hold(make_plan(asked, BOOK.sheets, BOOK, AT, Options()))


@settings(max_examples=25)
@given(surveys(EASY, 11), st.sampled_from(["waterborne-epoxy", "solvent-epoxy"]))
def test_a_system_that_is_asked_for_is_the_one_of_the_plan(survey: Survey, system: str) -> None:
    made = make_plan(spaces_fit(survey), BOOK.sheets, BOOK, AT, Options(systems=(system,)))
    assert made.system is not None
    assert made.system.id == made.made_for.system == system
    must_hold(made)
