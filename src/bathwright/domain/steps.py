"""A step of the procedure and the one record for all constraints on it."""

from datetime import datetime
from typing import Literal

from bathwright.domain.codes import Attendance, Chemistry, Phase, RoomState, Strength, WaitLaw
from bathwright.domain.record import record
from bathwright.domain.values import Band, Value

DemandKind = Literal["wait", "window", "hours", "needs", "state", "before"]
OnMissed = Literal["abrade", "abrade_and_wipe", "strip", "ask"]


@record
class Demand:
    """One constraint.

    wait: `after` + `after_edge` say from which moment; `least_s` / `most_s` are what the timetable uses;
    `printed_least_s` / `printed_most_s` stay beside them; `law` says how a wait changes with temperature,
    `age_s` the equivalent age that it stands for at `reference_k`, `activation_energy_j_mol` how strongly it depends
    on temperature, `floor_k` below which nothing accumulates.
    window: `reads` between `low` and `high` (SI) while the step runs and until `until_s` after its end.
    """

    id: str
    step: str
    kind: DemandKind
    strength: Strength
    because: tuple[str, ...] = ()
    after: str | None = None
    after_edge: Literal["start", "end"] = "end"
    least_s: float | None = None
    most_s: float | None = None
    printed_least_s: float | None = None
    printed_most_s: float | None = None
    law: WaitLaw = "fixed"
    reference_k: float | None = None
    age_s: float | None = None
    activation_energy_j_mol: float | None = None
    floor_k: float | None = None
    on_miss: OnMissed | None = None
    reads: Literal["air_temperature", "surface_temperature", "humidity", "spread"] | None = None
    low: float | None = None
    high: float | None = None
    until_s: float = 0.0
    hours: Literal["working"] | None = None
    resource: str | None = None
    is_state: str | None = None


@record
class Use:
    """A product used in a step: sheet id, part, volume; `mix` when it is a mixed batch."""

    sheet: str
    chemistry: tuple[Chemistry, ...]
    volume_m3: float | None = None
    mix: str | None = None


@record
class Look:
    """What to look for, with a number where there is one."""

    what: str
    reads: str | None = None
    low: float | None = None
    high: float | None = None
    kind: str | None = None
    if_not: str | None = None


@record
class SurfaceState:
    """What a step leaves on the surface: chemistry walks over this."""

    last: tuple[Chemistry, ...] = ()
    rinses: int = 0
    ph_checked: bool = False
    dry: bool = False


@record
class Step:
    """One step. `starts` to `slack_s` are filled by the timetable."""

    id: str
    phase: Phase
    act: str
    values: tuple[Value, ...] = ()
    on: tuple[str, ...] = ()
    work_s: Band
    attendance: Attendance = "attended"
    hands: int = 1
    demands: tuple[Demand, ...] = ()
    uses: tuple[Use, ...] = ()
    emits: tuple[str, ...] = ()
    wears: tuple[str, ...] = ()
    leaves: SurfaceState | None = None
    takes: tuple[str, ...] = ("hands",)
    room_state: RoomState = "free"
    look_for: tuple[Look, ...] = ()
    because: tuple[str, ...] = ()
    starts: datetime | None = None
    ends: datetime | None = None
    earliest: datetime | None = None
    latest: datetime | None = None
    slack_s: float | None = None
    decides: str | None = None


@record
class BathState:
    """What the bathroom is good for in a span: bath, room, home."""

    starts: datetime
    ends: datetime
    bath: RoomState
    room: RoomState
    home: RoomState = "free"


@record
class Clash:
    """A demand that cannot be kept, and by how much it is missed."""

    demand: str
    step: str
    missed_by_s: float | None


@record
class Timetable:
    """When each step runs, which chain of demands decides the end, what clashes."""

    starts: datetime
    ends: datetime
    chain: tuple[str, ...]
    states: tuple[BathState, ...]
    clashes: tuple[Clash, ...] = ()
    valid_until: datetime | None = None


@record
class Clock:
    """One of the six clocks. used_s = the longer of printed and computed; `at` = the instant, never before it."""

    name: str
    runs_from: str
    printed_s: float | None
    computed_s: Band | None
    used_s: float | None
    at: datetime | None
    why: str
    facts: tuple[str, ...] = ()
