"""The records of the knowledge files."""

from datetime import date

from bathwright.domain.codes import Mark
from bathwright.domain.record import record
from bathwright.domain.values import Band, Number


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
        """Whether it leaves the film as vapour: it has a vapour pressure and is no water."""
        return self.vapour_pressure is not None and "water" not in self.tags


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
