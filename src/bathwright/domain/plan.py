"""The plan: one frozen record from which page, terminal and JSON are views."""

from datetime import date, datetime
from typing import Literal

from bathwright.domain.air import AirPlan, Course, Exposure
from bathwright.domain.codes import Mark, Part, Verdict, Who
from bathwright.domain.findings import Finding, Measure, Question
from bathwright.domain.record import record
from bathwright.domain.steps import Clock, Step, Timetable
from bathwright.domain.survey import Survey
from bathwright.domain.values import Band, Value

Section = Literal["coating", "repair", "cleaning", "protection", "sealing", "air", "tools"]


@record
class Options:
    """What was asked for beside the survey."""

    systems: tuple[str, ...] = ()
    units: Literal["us", "si"] | None = None


@record
class MadeFor:
    """The inputs that the plan's id is made from."""

    survey_id: str
    system: str | None
    at: datetime
    options: Options


@record
class SheetUsed:
    """A sheet that the plan was made from."""

    id: str
    product: str
    role: str
    revision: str
    digest: str
    invented: bool


@record
class System:
    """The chosen system: the coating and the products beside it."""

    id: str
    product: str
    family: str
    method: str
    sheets: tuple[SheetUsed, ...]


@record
class AreaPart:
    """Area of one part of a fixture."""

    fixture: str
    part: Part
    area_m2: float
    how: str
    mark: Mark


@record
class Material:
    """How much of a product is needed: volume on the surface, loss, packs."""

    sheet: str
    product: str
    needed_m3: Band
    pack_m3: float | None
    packs: int | None
    left_over_m3: float | None
    dry_film_m: float | None
    wet_film_m: float | None
    have: bool
    reason: str
    section: Section


@record
class Mix:
    """One batch that fits inside its pot life."""

    id: str
    step: str
    sheet: str
    volume_m3: float
    parts: tuple[Value, ...]
    stir_s: float | None
    stand_s: float | None
    pot_life_s: float
    printed_pot_life_s: float
    use_s: float


@record
class Assumption:
    """A value that nobody told, with its source and mark."""

    code: str
    value: float | str
    kind: str | None
    source: str
    mark: Mark


@record
class Alternative:
    """Another way, with its verdict and the codes of what decides."""

    kind: Literal[
        "system",
        "local_repair",
        "firm_with_supplied_air",
        "liner",
        "replacement",
        "leave_as_it_is",
        "warmer_room",
        "other_stripping",
    ]
    system: str | None = None
    product: str | None = None
    verdict: Verdict | None = None
    because: tuple[str, ...] = ()
    vapour_kg: float | None = None
    full_bath: datetime | None = None
    ruled_out_by: tuple[str, ...] = ()


@record
class ClimatePlan:
    """The climate as used."""

    kind: str
    low_k: float
    high_k: float
    humidity: float
    surface_offset_k: float
    told: bool
    cure_model: str
    activation_energy_j_mol: float


@record
class CareRule:
    """What to do or not to do with the finished bath, until when."""

    code: str
    until: datetime | None = None


@record
class WasteRule:
    """Where a leftover goes."""

    code: str
    about: str | None = None


@record
class Cost:
    """Money as a band, by place and date; empty in this edition."""

    item: str
    band: Band
    place: str
    at: date


@record
class Emergency:
    """The numbers of the place, as data."""

    country: str
    emergency: str
    poison: str | None
    clean_tap: str | None
    source: str
    mark: Mark


@record
class Traced:
    """One number of the plan, its formula and what it was made from."""

    path: str
    formula: str
    inputs: tuple[Value, ...]
    sources: tuple[str, ...]
    mark: Mark


@record
class MadeWith:
    """What made the plan."""

    version: str
    knowledge_version: str
    python: str
    numpy: str
    engine: str
    tzdata: str
    seed: int
    scenarios: int


@record
class Plan:
    """The plan. `id` is a digest over the inputs, never over floats that came out."""

    format: Literal["bathwright-plan/1"]
    id: str
    made_for: MadeFor
    survey: Survey
    private: tuple[str, ...]
    system: System | None
    verdict: Verdict
    who: Who
    findings: tuple[Finding, ...]
    measures: tuple[Measure, ...]
    questions: tuple[Question, ...]
    assumptions: tuple[Assumption, ...]
    alternatives: tuple[Alternative, ...]
    area: tuple[AreaPart, ...]
    materials: tuple[Material, ...]
    mixes: tuple[Mix, ...]
    steps: tuple[Step, ...]
    timetable: Timetable | None
    air: AirPlan | None
    climate: ClimatePlan | None
    courses: tuple[Course, ...]
    exposures: tuple[Exposure, ...]
    clocks: tuple[Clock, ...]
    care: tuple[CareRule, ...]
    waste: tuple[WasteRule, ...]
    cost: tuple[Cost, ...]
    emergency: Emergency
    traces: tuple[Traced, ...]
    sources: tuple[str, ...]
    made_with: MadeWith
