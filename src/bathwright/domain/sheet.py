"""A maker's sheet: head, parts, papers, and a bag of facts. Code asks a view, never `sheet.pot_life`."""

from datetime import date
from typing import Literal

from bathwright.domain.codes import Chemistry, Mark, MethodCode, Role, SubstrateCode
from bathwright.domain.record import Density, Humidity, Mass, Share, Temperature, record
from bathwright.domain.values import Told


@record
class Paper:
    """A paper of the maker: kind, revision, when it was read."""

    id: str
    kind: Literal["data", "leaflet", "label", "safety", "guide"]
    revision: str
    read_on: date | None = None


@record
class Component:
    """A substance in a part, by its CAS number (text "mixture" when the paper gives none), share by weight."""

    substance: str
    cas: str
    low: Share
    high: Share


@record
class SheetPart:
    """One can of the set."""

    id: str
    density: Density | None = None
    solids_by_weight: Share | None = None
    solids_by_volume: Share | None = None
    composition: tuple[Component, ...] | None = None


@record
class Conditions:
    """At which conditions a fact holds. None = not stated."""

    temperature: Temperature | None = None
    humidity: Humidity | None = None
    mass: Mass | None = None


@record
class Scope:
    """Which part, coat, method, substrate, product a fact is about. None = any."""

    part: str | None = None
    coat: int | None = None
    method: MethodCode | None = None
    substrate: SubstrateCode | None = None
    product: str | None = None


@record
class Amount:
    """One SI value of a kind."""

    value: float
    kind: str


@record
class Range:
    """A range of one kind; None = open on that side."""

    low: float | None
    high: float | None
    kind: str


@record
class Choice:
    """One word of a closed list, allowed or not."""

    code: str
    allowed: bool = True


@record
class Ratio:
    """Parts by volume or by weight, in the order of the sheet's parts."""

    by: Literal["volume", "weight"]
    numbers: tuple[float, ...]


@record
class Instruction:
    """An act that the sheet asks for, with words as values."""

    act: str
    values: tuple[str, ...] = ()


FactValue = Amount | Range | Choice | Ratio | Instruction
StartsFrom = Literal["mixed", "coat_applied", "last_coat", "demasked", "caulked"]
OnMiss = Literal["abrade", "abrade_and_wipe", "strip", "ask"]
Certainty = Literal["certain", "confirm", "contradicted", "inferred"]


@record
class Fact:
    """One fact of a paper, with its words and place."""

    id: str
    kind: str
    value: FactValue
    scope: Scope = Scope()
    at: Conditions = Conditions()
    starts_from: StartsFrom | None = None
    on_miss: OnMiss | None = None
    paper: str | None = None
    place: str | None = None
    words: str | None = None
    certainty: Certainty = "certain"
    confirmed: Told | None = None
    mark: Mark = "verified"


@record
class Sheet:
    """A product as its papers describe it."""

    format: Literal["bathwright-sheet/1"]
    id: str
    product: str
    family: str
    role: Role
    invented: bool = False
    note: str | None = None
    region: str | None = None
    chemistries: tuple[Chemistry, ...] = ()
    contents: tuple[str, ...] = ()
    not_included: tuple[str, ...] = ()
    papers: tuple[Paper, ...]
    parts: tuple[SheetPart, ...] = ()
    facts: tuple[Fact, ...] = ()
    digest: str = ""


# kind of fact -> (form of its value, kind of quantity, which side is the strict one)
#   "least": a least wait or a lower limit, the larger is stricter; "most": the smaller is stricter; "both": a window
FACT_KINDS: dict[str, tuple[str, str | None, str]] = {
    "pot_life": ("amount", "time", "most"),
    "stir": ("amount", "time", "least"),
    "induction": ("amount", "time", "least"),
    "recoat": ("range", "time", "both"),
    "coats": ("amount", "count", "least"),
    "dry_film_per_coat": ("range", "film", "both"),
    "wet_film_per_coat": ("range", "film", "both"),
    "pack_volume": ("amount", "liquid", "most"),
    "pack_reach": ("amount", "area", "most"),
    "voc": ("amount", "concentration", "least"),
    "thinner_limit": ("amount", "share", "most"),
    "air_temperature": ("range", "temperature", "both"),
    "surface_temperature": ("range", "temperature", "both"),
    "humidity": ("range", "humidity", "both"),
    "dew_point_spread": ("amount", "temperature_step", "least"),
    "hold_temperature_for": ("amount", "time", "least"),
    "touch": ("amount", "time", "least"),
    "handle": ("amount", "time", "least"),
    "unmask": ("range", "time", "both"),
    "seal_after": ("amount", "time", "least"),
    "first_water": ("amount", "time", "least"),
    "full_bath": ("amount", "time", "least"),
    "care": ("amount", "time", "least"),
    "hard": ("amount", "time", "least"),
    "dry_before": ("amount", "time", "least"),
    "flash_off": ("amount", "time", "least"),
    "dwell": ("amount", "time", "most"),
    "rinses": ("amount", "count", "least"),
    "flash_point": ("amount", "temperature", "most"),
    "use_rate": ("amount", "liquid", "least"),
    "surface": ("choice", None, "both"),
    "method": ("choice", None, "both"),
    "abrasive": ("instruction", None, "both"),
    "ventilation": ("instruction", None, "both"),
    "respirator": ("instruction", None, "both"),
    "gloves": ("instruction", None, "both"),
    "wipe_with": ("instruction", None, "both"),
    "mix_ratio": ("ratio", None, "both"),
}
