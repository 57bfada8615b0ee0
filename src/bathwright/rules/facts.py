"""What the rules share: the facts of one attempt, and small questions on them. Compares nothing with a limit."""

import re
from datetime import date, datetime

from bathwright.domain.air import AirPlan, Emission, Exposure
from bathwright.domain.codes import MethodCode, SubstrateCode
from bathwright.domain.plan import AreaPart, Material, Mix
from bathwright.domain.record import record
from bathwright.domain.sheet import Component, Sheet
from bathwright.domain.steps import Clash, Clock, Step, Timetable
from bathwright.domain.survey import Equipment, Fixture, Person, Survey, Wish
from bathwright.knowledge.book import Knowledge
from bathwright.knowledge.records import Substance

# acts that sand or scrape glaze or an old coat
DISTURBING = ("scrape_old_coat", "wet_sand", "dry_sand", "machine_sand", "scuff")
GLAZED = ("enamelled_cast_iron", "enamelled_steel", "vitreous_china", "ceramic_tile")
PLASTIC = ("acrylic", "glass_fibre", "abs_backed_sheet")
SOLVENTS = frozenset(
    {"acetone", "alcohol", "lacquer-thinner", "mineral-spirits", "benzyl-alcohol", "nmp", "dichloromethane"}
)
DICHLOROMETHANE = "75-09-2"
LEAST_UNDISCLOSED = 0.05  # up to this much of a can may stay unnamed: judgement
# diisocyanates and their oligomers that the knowledge has no record of: numbers from memory
_ISOCYANATES = frozenset(
    {"101-68-8", "584-84-9", "26471-62-5", "4098-71-9", "53880-05-0", "9016-87-9", "822-06-0", "28182-81-2"}
)
_ISOCYANATE_NAME = re.compile(r"urethane|isocyanat|(?<![a-z])(?:nco|p?mdi|tdi|hdi|ipdi)(?![a-z])", re.IGNORECASE)
_DICHLOROMETHANE_NAME = re.compile(
    r"(?<!tri)dichloromethane|methylene (?:di)?chloride|(?<![a-z])dcm(?![a-z])", re.IGNORECASE
)


@record
class Link:
    """One product on a surface, drain or waste, in order of use; what lies between it and the one before."""

    chemistries: tuple[str, ...]
    on: str
    at: datetime | None
    step: str | None
    rinses_since: int | None
    hours_since: float | None
    ph_checked: bool
    dry: bool


@record
class Weather:
    """The air and the bath in the hours that matter for the film: from the first coat to the end of its window."""

    air_low_k: float
    air_high_k: float
    surface_low_k: float
    surface_high_k: float
    humidity_low: float
    humidity_high: float
    spread_low_k: float
    told: bool
    surface_told: bool


@record
class OutOfRange:
    """A published model that was used outside the range for which it holds."""

    model: str
    quantity: str
    value: float
    low: float
    high: float
    kind: str | None
    source: str


@record
class Facts:
    """Everything that a rule may look at. None = not known, not computed, or not told."""

    at: datetime
    survey: Survey
    fixture: Fixture
    knowledge: Knowledge
    coating: Sheet
    method: MethodCode
    substrate: SubstrateCode | None
    sheets: tuple[Sheet, ...]
    wishes: tuple[tuple[Wish, Sheet | None], ...] = ()
    dropped: tuple[str, ...] = ()
    area: tuple[AreaPart, ...] = ()
    steps: tuple[Step, ...] = ()
    chain: tuple[Link, ...] = ()
    materials: tuple[Material, ...] = ()
    mixes: tuple[Mix, ...] = ()
    timetable: Timetable | None = None
    unplaced: tuple[Clash, ...] = ()
    weather: Weather | None = None
    air: AirPlan | None = None
    exposures: tuple[Exposure, ...] = ()
    clocks: tuple[Clock, ...] = ()
    volatile_by_voc_kg: float | None = None
    volatile_by_solids_kg: float | None = None
    volatile_by_composition_kg: float | None = None
    outside_range: tuple[OutOfRange, ...] = ()


def observed(fixture: Fixture, what: str) -> str | None:
    """The last told result of a test or sight; None = not told."""
    found = [seen.result for seen in fixture.observations if seen.what == what]
    return found[-1] if found else None


def law_set(facts: Facts) -> str:
    """ "US", "GB", "EU", or "none" where no local law was looked at."""
    place = facts.knowledge.places.get(facts.survey.place.country)
    return place.law_set if place else "none"


def in_force(facts: Facts, code: str, jurisdiction: str) -> bool:
    """Whether a dated rule of law had taken effect on the day of the plan."""
    day: date = facts.at.date()
    return any(
        entry.holds_from <= day
        for entry in facts.knowledge.rule_dates
        if entry.code == code and entry.jurisdiction == jurisdiction
    )


def is_paid(facts: Facts) -> bool | None:
    """Work for compensation: paid, a firm, or a landlord (rent counts). None = not told."""
    work, tenure = facts.survey.work, facts.survey.building.tenure
    if work.who == "firm" or work.paid or tenure == "landlord":
        return True
    return work.paid


def year_built(facts: Facts) -> int | None:
    """The older of the years of the house and of the fixture, as far as told (the older is the worse)."""
    years = [year for year in (facts.survey.building.year, facts.fixture.year) if year is not None]
    return min(years) if years else None


def contents(facts: Facts, sheet: Sheet) -> tuple[Substance | None, ...]:
    """Substances of a sheet's composition; None stands for each that the knowledge does not know."""
    return tuple(facts.knowledge.substances.get(component.cas) for component in components(sheet))


def components(sheet: Sheet) -> tuple[Component, ...]:
    """All that the composition lists; an entry whose highest share is nothing is no content."""
    return tuple(entry for part in sheet.parts for entry in part.composition or () if entry.high > 0)


def has_tag(facts: Facts, sheet: Sheet, tag: str) -> bool:
    """Whether a sheet holds a substance with this tag."""
    return any(substance is not None and tag in substance.tags for substance in contents(facts, sheet))


def undisclosed_share(facts: Facts, sheet: Sheet) -> float:
    """The share by weight, of the worst can, that may be anything: not named, not known here, or not listed at all."""
    known = facts.knowledge.substances
    shares = [1.0] if not sheet.parts else []
    for part in sheet.parts:
        listed = part.composition or ()
        unknown = sum(entry.high for entry in listed if entry.cas not in known)
        shares.append(max(unknown, 1.0 - sum(entry.high for entry in listed)))
    return round(max(shares), 6)


def people_with(facts: Facts, *wanted: str) -> tuple[Person, ...]:
    """People of the home with one of these traits or age bands (the one who works included)."""
    return tuple(
        person
        for person in facts.survey.people or ()
        if person.age_band in wanted or any(trait in wanted for trait in person.traits or ())
    )


def equipment(facts: Facts, *kinds: str) -> tuple[Equipment, ...]:
    """Equipment of these kinds that the survey names, whatever its availability."""
    return tuple(item for item in facts.survey.equipment if item.kind in kinds)


def steps_of(facts: Facts, *acts: str) -> tuple[Step, ...]:
    """Steps with one of these acts, in order."""
    return tuple(step for step in facts.steps if step.act in acts)


def disturbing_steps(facts: Facts) -> tuple[Step, ...]:
    """Steps that sand or scrape what lies on the fixture (sanding of new filler is none)."""
    return steps_of(facts, *DISTURBING)


def disturbs(facts: Facts) -> bool:
    """Whether glaze or old coat is sanded or scraped; true without steps: every way of coating asks for it."""
    return not facts.steps or bool(disturbing_steps(facts))


def has_old_coat(facts: Facts) -> bool | None:
    """Whether somebody coated the fixture before. None = not told or unsure."""
    if facts.substrate == "old_coating":
        return True
    told = {"none": False, "sound": True, "failing": True}
    return told.get(observed(facts.fixture, "earlier_coat") or "")


def body(facts: Facts) -> str | None:
    """The material below any coat: as told; None = not told."""
    below = facts.substrate if facts.substrate != "old_coating" else None
    return facts.fixture.material or below


def may_be_glazed(facts: Facts) -> bool:
    """Whether the surface is fired glaze or enamel, or may be (material not told)."""
    return body(facts) is None or body(facts) in GLAZED


def wished_sheets(facts: Facts) -> tuple[Sheet, ...]:
    """Sheets of the wished products that are known."""
    return tuple(sheet for _, sheet in facts.wishes if sheet is not None)


def every_sheet(facts: Facts) -> tuple[Sheet, ...]:
    """The coating, the products beside it and the wished ones, each once."""
    found = {sheet.id: sheet for sheet in (facts.coating, *facts.sheets, *wished_sheets(facts))}
    return tuple(found.values())


def planned_sheets(facts: Facts) -> tuple[Sheet, ...]:
    """The coating and the products beside it that this plan opens, each once."""
    found = {sheet.id: sheet for sheet in (facts.coating, *facts.sheets)}
    return tuple(sheet for sheet in found.values() if sheet.id not in facts.dropped)


def holds(sheet: Sheet, cas: str, chemistry: str) -> bool:
    """Whether a sheet names a substance, by its CAS number or by the chemistry of its head."""
    return any(entry.cas == cas for entry in components(sheet)) or chemistry in sheet.chemistries


def dichloromethane_shares(sheet: Sheet) -> tuple[float, ...]:
    """The highest shares of dichloromethane that a sheet lists, by CAS number or by name."""
    return tuple(
        entry.high
        for entry in components(sheet)
        if entry.cas == DICHLOROMETHANE or _DICHLOROMETHANE_NAME.search(entry.substance)
    )


def holds_dichloromethane(facts: Facts, sheet: Sheet) -> bool:
    """Whether a sheet names dichloromethane: a substance, its head, or its family where the rest is not told."""
    if dichloromethane_shares(sheet) or "dichloromethane" in sheet.chemistries:
        return True
    family = _DICHLOROMETHANE_NAME.search(sheet.family.replace("_", " "))
    return bool(family) and undisclosed_share(facts, sheet) > LEAST_UNDISCLOSED


def holds_isocyanate(facts: Facts, sheet: Sheet) -> bool:
    """Whether a sheet holds an isocyanate: by its substances, the chemistry of its head, or a name that says so."""
    if "isocyanate-hardener" in sheet.chemistries or has_tag(facts, sheet, "isocyanate"):
        return True
    names = (sheet.family.replace("_", " "), *(entry.substance for entry in components(sheet)))
    numbers = {entry.cas for entry in components(sheet)}
    return bool(numbers & _ISOCYANATES) or any(_ISOCYANATE_NAME.search(name) for name in names)


def is_solvent_borne(facts: Facts, sheet: Sheet) -> bool:
    """Whether a product is a solvent, or a coating or stripper that is thinned with solvent rather than with water.

    By chemistry, else by which of solvent and water is the larger in the composition, else by the family's name; a
    coating of which nothing is told counts as solvent-borne.
    """
    if set(sheet.chemistries) & SOLVENTS:
        return True
    if sheet.role not in ("coating", "primer", "solvent", "stripper"):
        return False
    listed = [entry for part in sheet.parts for entry in part.composition or ()]
    if not listed:
        return "water" not in sheet.family
    return _middle(facts, sheet, "solvent") > _middle(facts, sheet, "water")


def _middle(facts: Facts, sheet: Sheet, tag: str) -> float:
    known = facts.knowledge.substances
    entries = [entry for part in sheet.parts for entry in part.composition or ()]
    return sum((e.low + e.high) / 2 for e in entries if e.cas in known and tag in known[e.cas].tags)


def lets_vapour_out(facts: Facts) -> bool:
    """Whether anything but water leaves as vapour; without an air model, whether any product is solvent-borne."""
    if facts.air is not None:
        return bool(organic_emissions(facts))
    return any(is_solvent_borne(facts, sheet) for sheet in planned_sheets(facts))


def organic_emissions(facts: Facts) -> tuple[Emission, ...]:
    """Emissions of vapour other than water; dust is none."""
    known = facts.knowledge.substances
    emitted = facts.air.emissions if facts.air else ()
    return tuple(e for e in emitted if e.form != "dust" and not (e.cas in known and "water" in known[e.cas].tags))


def others(facts: Facts) -> tuple[Person, ...] | None:
    """People and animals of the home who do not work on the bath. None = not told."""
    if facts.survey.people is None:
        return None
    return tuple(person for person in facts.survey.people if not person.works)


def away_span(facts: Facts) -> tuple[datetime | None, datetime | None]:
    """From when until when nobody else should be in the home, as far as it was computed; else the vapour's span."""
    air = facts.air
    if air is None:
        return None, None
    first = min((e.starts for e in organic_emissions(facts)), default=None)
    return air.away_from or first, air.away_until or air.back_at


def name_of(facts: Facts, cas: str) -> str:
    """The code of a substance, or its CAS number where it is not known."""
    substance = facts.knowledge.substances.get(cas)
    return substance.code if substance else cas


def first_coat(facts: Facts) -> Step | None:
    """The first coat, or None when no step was made."""
    coats = steps_of(facts, "coat")
    return coats[0] if coats else None


def volatile_steps(facts: Facts) -> tuple[Step, ...]:
    """Steps that let vapour out."""
    return tuple(step for step in facts.steps if step.emits)
