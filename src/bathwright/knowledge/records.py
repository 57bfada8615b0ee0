"""The records of the knowledge files."""

from datetime import date

from bathwright.domain.codes import Mark
from bathwright.domain.record import record
from bathwright.domain.values import Band, Number

VOLATILE_PA = 10.0  # the union's definition of a volatile organic compound, at 20 °C (eu-2010-75), memory


@record
class Substance:
    """A substance by CAS number. None = no such value known (never zero)."""

    cas: str
    code: str
    name_us: str
    name_gb: str
    molar_mass: Number
    density: Number | None
    vapour_pressure: Number | None
    vapour_pressure_at_k: float
    heat_of_vaporisation: Number | None
    lower_limit: Number | None
    flash_point: Number | None
    tags: tuple[str, ...]

    @property
    def volatile(self) -> bool:
        """Whether it counts as a solvent that leaves the film: 10 Pa or more, no water (eu-2010-75, article 3 (45)).

        Hardeners below that react into the film; isocyanates and amines have rules of their own.
        """
        pressure = self.vapour_pressure
        return pressure is not None and pressure.value >= VOLATILE_PA and "water" not in self.tags


@record
class LimitEntry:
    """An exposure limit as published: a share of air (kind "vapour_ppm") or kg/m3 (kind "concentration")."""

    id: str
    cas: str
    body: str
    measure: str
    value: Number
    for_whom: str
    kind: str
    law_in: tuple[str, ...]
    year: int | None


@record
class Pair:
    """Two materials that meet: how bad, what must lie between them on one surface, what they make."""

    a: str
    b: str
    severity: str
    sequence: str
    makes: str
    source: str
    mark: Mark


@record
class Fan:
    """A kind of fan: what share of its rating, or which flow, is real behind hose or filter."""

    kind: str
    name_us: str
    name_gb: str
    real_share: Band | None
    real_flow: Band | None
    motor_in_stream: bool
    source: str
    mark: Mark


@record
class PlaceEntry:
    """A country: its numbers to call and which set of law was looked at."""

    country: str
    emergency: str
    poison: str | None
    law_set: str
    source: str
    mark: Mark


@record
class RuleDate:
    """When a rule of law took effect."""

    code: str
    jurisdiction: str
    holds_from: date
    text: str
    source: str
    mark: Mark
    edition_read: str
