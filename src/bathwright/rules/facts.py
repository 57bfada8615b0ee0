"""What the rules share: the facts of one attempt at a plan, and small questions on them. Compares nothing with a limit."""

from datetime import date, datetime

from bathwright.domain.air import AirPlan, Exposure
from bathwright.domain.codes import MethodCode, SubstrateCode
from bathwright.domain.plan import AreaPart, Material, Mix
from bathwright.domain.record import record
from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Clock, Step, Timetable
from bathwright.domain.survey import Equipment, Fixture, Person, Survey, Wish
from bathwright.knowledge.book import Knowledge
from bathwright.knowledge.records import Substance


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
    weather: Weather | None = None
    air: AirPlan | None = None
    exposures: tuple[Exposure, ...] = ()
    clocks: tuple[Clock, ...] = ()
    volatile_by_voc_kg: float | None = None
    volatile_by_solids_kg: float | None = None
    volatile_by_composition_kg: float | None = None


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
    components = [c for part in sheet.parts for c in part.composition or ()]
    return tuple(facts.knowledge.substances.get(component.cas) for component in components)


def has_tag(facts: Facts, sheet: Sheet, tag: str) -> bool:
    """Whether a sheet holds a substance with this tag."""
    return any(substance is not None and tag in substance.tags for substance in contents(facts, sheet))


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


def first_coat(facts: Facts) -> Step | None:
    """The first coat, or None when no step was made."""
    coats = steps_of(facts, "coat")
    return coats[0] if coats else None


def volatile_steps(facts: Facts) -> tuple[Step, ...]:
    """Steps that let vapour out."""
    return tuple(step for step in facts.steps if step.emits)
