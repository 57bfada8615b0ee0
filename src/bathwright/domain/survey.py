"""What somebody told us about a home, its bath and its people. None = not told; "none" or an empty list = told none."""

from datetime import date, datetime
from typing import Annotated, Literal

from bathwright.domain.codes import (
    AgeBand,
    Availability,
    Chemistry,
    EquipmentKind,
    FixtureKind,
    Ignition,
    SubstrateCode,
    Trait,
)
from bathwright.domain.record import (
    PRIVATE,
    Area,
    Duration,
    Flow,
    Humidity,
    Length,
    Rate,
    Temperature,
    Volume,
    record,
)
from bathwright.domain.values import Told

Weekday = Literal["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


@record
class Place:
    """Where the home stands: ISO country code, region, IANA time zone."""

    country: str
    time_zone: str
    region: str | None = None


@record
class Building:
    """The house: year built, who owns it, what it was before."""

    year: int | None = None
    tenure: Literal["owner", "tenant", "landlord"] | None = None
    earlier_use: str | None = None


@record
class Work:
    """Who does the work. `paid`: for money or rent. `outside_helper`: a second adult who stays out of the vapour."""

    who: Literal["self", "firm"] = "self"
    paid: bool | None = None
    employer: bool | None = None
    hands: int = 1
    outside_helper: bool | None = None
    clean_shaven: bool | None = None


@record
class Sizes:
    """Sizes of a fixture. Length, width: outside. Depth: inside, floor to rim. The rest refine the area."""

    length: Length | None = None
    width: Length | None = None
    depth: Length | None = None
    height: Length | None = None
    rim_width: Length | None = None
    floor_length: Length | None = None
    floor_width: Length | None = None
    corner_radius: Length | None = None
    apron_height: Length | None = None
    area: Area | None = None


@record
class Observation:
    """Dated evidence: what was tested or looked at, what came out. Never a bare flag."""

    what: str
    result: str
    value: str | None = None
    told: Told | None = None


@record
class ProductUse:
    """A product that was used on the fixture lately: its chemistry, when, how often rinsed since."""

    chemistry: Chemistry
    on: Literal["surface", "drain", "room", "waste"] = "surface"
    at: datetime | None = None
    rinses: int | None = None
    ph_checked: bool | None = None


@record
class Fixture:
    """One thing to be coated."""

    id: str
    kind: FixtureKind
    material: SubstrateCode | None = None
    sizes: Sizes
    year: int | None = None
    coat_apron: bool = False
    outside_wall: bool | None = None
    void_under: bool | None = None
    observations: tuple[Observation, ...] = ()
    used_lately: tuple[ProductUse, ...] | None = None


@record
class Space:
    """A room or the rest of the home, as a volume of air."""

    id: str
    kind: Literal["bathroom", "rest_of_home", "neighbour"]
    volume: Volume | None = None
    floor_area: Area | None = None
    height: Length | None = None
    air_change_rate: Rate | None = None


@record
class Opening:
    """A path of air between two spaces, or a space and "outdoors"."""

    id: str
    between: tuple[str, str]
    kind: Literal["door", "undercut", "window", "grille", "shared_duct", "air_handler"]
    area: Area | None = None
    state: Literal["open", "closed", "sealed"] | None = None
    above_bath: bool | None = None


@record
class Appliance:
    """A thing that can light vapour or that breathes the room's air."""

    id: str
    kind: str
    space: str
    ignition: Ignition | None = None
    connected_to_bathroom: bool | None = None
    can_be_off: bool | None = None
    natural_draught: bool | None = None


@record
class Person:
    """Somebody who lives or stays in the home, animals included. Private throughout."""

    id: str
    age_band: AgeBand | None = None
    traits: tuple[Trait, ...] | None = None
    can_leave: bool | None = None
    works: bool = False


@record
class Equipment:
    """A fan, mask, heater or tool. `rating`: the maker's free-air flow of a fan."""

    id: str
    kind: EquipmentKind
    have: Availability = "have"
    rating: Flow | None = None
    real_flow: Flow | None = None
    discharges: Literal["outdoors", "shared_duct", "home"] | None = None
    rated_for_vapour: bool | None = None
    inlet: Literal["room", "basin"] | None = None


@record
class Household:
    """Other places to wash. None = not told."""

    other_bath: bool | None = None
    other_wc: bool | None = None


@record
class Hours:
    """Working hours on the wall clock of the home: days, from, until ("HH:MM")."""

    days: tuple[Weekday, ...]
    starts: str
    ends: str


@record
class Calendar:
    """When work may be done, and when the bath is wanted back. Local times of the home."""

    earliest: datetime | None = None
    wanted_back: datetime | None = None
    working: tuple[Hours, ...] = ()
    closed: tuple[date, ...] = ()


@record
class Air:
    """Air as a constant (`temperature`) or a typed day (`low` at night, `high` in the afternoon), with humidity."""

    kind: Literal["constant", "typed_day"] = "constant"
    temperature: Temperature | None = None
    low: Temperature | None = None
    high: Temperature | None = None
    humidity: Humidity | None = None


@record
class Climate:
    """Air indoors while the work goes on, and outdoors."""

    indoor: Air | None = None
    outdoor: Air | None = None


@record
class Purpose:
    """What the bath is for afterwards."""

    kind: Literal["keep", "sell", "let"] | None = None
    used_by: tuple[AgeBand, ...] | None = None
    years_wanted: float | None = None


@record
class Wish:
    """A product that the household wants to use, by the id of its sheet, and what for."""

    sheet: str
    use: Literal["clean", "descale", "mould", "strip", "fill", "seal", "wipe"]


@record
class ShownIn:
    """How the household reads: units and language."""

    units: Literal["us", "si"] | None = None
    language: Literal["en-US", "en-GB"] | None = None


@record
class Survey:
    """The whole survey. `at_hand`: ids of the sheets whose products stand in the home already, enough of each."""

    format: Literal["bathwright-survey/1"]
    id: str
    invented: bool = False
    note: str | None = None
    place: Place
    building: Building = Building()
    work: Work = Work()
    fixtures: tuple[Fixture, ...]
    spaces: tuple[Space, ...] = ()
    openings: tuple[Opening, ...] | None = None
    appliances: tuple[Appliance, ...] | None = None
    people: Annotated[tuple[Person, ...] | None, PRIVATE] = None
    equipment: tuple[Equipment, ...] = ()
    household: Household = Household()
    calendar: Calendar = Calendar()
    climate: Climate = Climate()
    purpose: Purpose = Purpose()
    wishes: tuple[Wish, ...] = ()
    at_hand: tuple[str, ...] = ()
    clean_tap: str | None = None
    shown_in: ShownIn = ShownIn()
    longest_absence: Duration | None = None
