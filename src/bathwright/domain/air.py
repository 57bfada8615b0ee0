"""What is let out, where it goes, what it comes to, and the limits it is held against. Recomputable from the file."""

from datetime import datetime
from typing import Literal

from bathwright.domain.codes import Basis, Mark
from bathwright.domain.record import record
from bathwright.domain.values import Band

EmissionForm = Literal["film", "open_pot", "spray_mist", "wipe", "rag", "reaction_gas", "dust"]
Measured = Literal["peak", "mean_15min", "mean_1h", "mean_8h", "mean_24h", "ceiling", "explosive_share"]


@record
class Emission:
    """A substance let out by a step over a time."""

    id: str
    step: str
    substance: str
    cas: str
    zone: str
    surface_m2: float
    mass_kg: Band
    starts: datetime
    ends: datetime
    form: EmissionForm
    slow_share: float
    slow_rate_per_s: float
    transfer_m_s: float
    activity_coefficient: float
    saturation_kg_m3: float
    model: str
    source: str
    mark: Mark


@record
class Zone:
    """A volume of air."""

    id: str
    volume_m3: float
    temperature_k: float


@record
class AirFlow:
    """Air from one zone to another ("outdoors" included)."""

    source: str
    target: str
    flow_m3_s: float


@record
class AirInterval:
    """Flows that hold over a span of the plan."""

    starts: datetime
    ends: datetime
    flows: tuple[AirFlow, ...]
    setup: str


@record
class Course:
    """One quantity over time: seconds from the plan's start, central and upper values."""

    of: str
    reads: str
    unit: str
    t_s: tuple[int, ...]
    central: tuple[float, ...]
    upper: tuple[float, ...]
    kept_to: float


@record
class Limit:
    """A limit for somebody: body, year, value as a share of air or kg/m3, kind, mark."""

    id: str
    cas: str
    body: str
    measure: str
    value_kg_m3: float
    for_whom: Literal["worker", "public"]
    kind: Literal["law", "advice"]
    law_in: tuple[str, ...]
    year: int | None
    source: str
    mark: Mark
    surrogate: bool = False
    molar_mass_kg_mol: float | None = None


@record
class Exposure:
    """What somebody breathes against a limit: outside the mask, inside it, and shares of the limit.

    `who` is "painter", "others" or a zone; `substance` is a CAS number or "mixture" (the additive sum).
    Values in kg/m3, for "mixture" and "explosive_share" a share. `at` is when the highest value ends.
    """

    who: str
    zone: str
    substance: str
    measure: Measured
    outside: Band
    inside: Band
    limit: Limit | None
    limit_value: float
    share_central: float
    share_upper: float
    basis: Basis
    at: datetime | None
    step: str | None = None
    protection: str = "none"


@record
class AirPlan:
    """The air of the plan.

    `back_at`: the bathroom is below the public values. `basin_at`: so is the inside of the bath; until then nobody
    leans over it. `vapour_kg`: what is let out in all, without water; None when it is not known.
    """

    zones: tuple[Zone, ...]
    intervals: tuple[AirInterval, ...]
    emissions: tuple[Emission, ...]
    limits: tuple[Limit, ...]
    setup: str | None
    fan: str | None
    fan_flow_m3_s: Band | None
    back_at: datetime | None
    basin_at: datetime | None
    vapour_kg: float | None
    horizon: datetime | None
    away_from: datetime | None
    away_until: datetime | None


@record
class Release:
    """A substance that a step will let out, before the clock is known. `mass_kg` is low, central, high."""

    id: str
    step: str
    substance: str
    cas: str
    surface_m2: float
    mass_kg: Band
    form: EmissionForm
    activity_coefficient: float
    source: str
    mark: Mark


@record
class Vapour:
    """What the air model must know of a substance: molar mass, saturation at two temperatures, lower limit.

    `lower_limit` is a share of air, None = none known. `background_kg_m3` is what outdoor air brings (water).
    """

    cas: str
    molar_mass_kg_mol: float
    saturation_central_kg_m3: float
    saturation_high_kg_m3: float
    lower_limit: float | None
    background_kg_m3: float = 0.0


@record
class AirSetup:
    """Zones and flows that the air model works on; each band is low, central, high of what is not known exactly.

    `inlet`: where the fan draws. `target`: the zone that the fixture lets its vapour into.
    """

    basin_m3: float
    room_m3: float
    home_m3: Band
    fan: str | None
    fan_flow: Band | None
    inlet: Literal["room", "basin"]
    target: Literal["basin", "room"]
    basin_exchange: Band
    room_exchange: Band
    passages: Band
    home_air_changes: Band
    transfer: Band
    slow_share: Band
    slow_rate: Band
    temperature_k: float
