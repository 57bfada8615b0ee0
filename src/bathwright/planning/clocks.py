"""The six clocks: each the later of printed and computed, of coating and sealant, never before the air is back."""

from datetime import datetime, timedelta

from bathwright.domain import views
from bathwright.domain.codes import ClockName
from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Clock, Demand, Step
from bathwright.domain.values import Band
from bathwright.knowledge.book import Knowledge
from bathwright.procedure.waits import wait
from bathwright.simulation.climate import Weather
from bathwright.simulation.cure_time import wait_ends

NAMES: tuple[ClockName, ...] = ("touch", "handle", "first_water", "full_bath", "care", "hard")
_NEEDS_AIR = ("first_water", "full_bath", "care")
_NEEDS_SEALANT = ("first_water", "full_bath", "care")


def clocks(
    coating: Sheet,
    sealant: Sheet | None,
    steps: tuple[Step, ...],
    weather: Weather,
    back_at: datetime | None,
    knowledge: Knowledge,
) -> tuple[Clock, ...]:
    """All six, in order; none is earlier than the one before it."""
    out: list[Clock] = []
    floor: datetime | None = None
    for name in NAMES:
        clock = _clock(name, coating, steps, weather, knowledge)
        if sealant and name in _NEEDS_SEALANT:
            clock = _later(clock, _clock(name, sealant, steps, weather, knowledge), "sealant")
        if name in _NEEDS_AIR and back_at is not None and clock.at is not None and back_at > clock.at:
            clock = _moved(clock, back_at, "air")
        if floor is not None and clock.at is not None and clock.at < floor:
            clock = _moved(clock, floor, clock.why)
        floor = clock.at or floor
        out.append(clock)
    return tuple(out)


def _anchor(starts_from: str | None, role: str, steps: tuple[Step, ...]) -> Step | None:
    """The step from whose end a time of the sheet runs; where it does not say, a sealant's runs from the sealing."""
    acts = {"demasked": "unmask", "caulked": "seal"}
    act = acts.get(starts_from or "", "seal" if role == "sealant" else "coat")
    found = [step for step in steps if step.act == act]
    return found[-1] if found else None


def _clock(name: ClockName, sheet: Sheet, steps: tuple[Step, ...], weather: Weather, knowledge: Knowledge) -> Clock:
    cold = weather.low_k - weather.surface_offset_k
    found = views.strictest(sheet, name, temperature_k=cold)
    anchor = _anchor(found.fact.starts_from if found else None, sheet.role, steps)
    runs_from = anchor.id if anchor else ""
    if found is None or anchor is None or anchor.ends is None:
        return Clock(
            name=name, runs_from=runs_from, printed_s=None, computed_s=None, used_s=None, at=None, why="sheet_silent"
        )  # fmt: skip
    law = "moisture_cures" if sheet.role == "sealant" else "cures"
    demand = wait(
        sheet, name, step=name, after=anchor.id, knowledge=knowledge, temperature_k=cold,
        law=law,  # type: ignore[arg-type]
    )  # fmt: skip
    assert demand is not None
    band = _computed(demand, anchor.ends, weather)
    if band is None:
        return Clock(
            name=name, runs_from=runs_from, printed_s=found.value, computed_s=None, used_s=None, at=None,
            why="never_cures", facts=demand.because,
        )  # fmt: skip
    used = max(found.value, band.high)
    why = "cold" if band.high > found.value + 60 else "printed"
    return Clock(
        name=name,
        runs_from=runs_from,
        printed_s=found.value,
        computed_s=band,
        used_s=used,
        at=_minute_up(anchor.ends + timedelta(seconds=used)),
        why="dry_air" if why == "cold" and law == "moisture_cures" else why,
        facts=demand.because,
    )


def _computed(demand: Demand, starts: datetime, weather: Weather) -> Band | None:
    """Computed wait: as modelled, and with the bath colder by what its temperature is unsure."""
    unsure = weather.unsure_k
    ends = [wait_ends(demand, starts, weather, colder, computed_alone=True) for colder in (-unsure, 0.0, unsure)]
    seconds = [(end - starts).total_seconds() for end in ends if end is not None]
    if len(seconds) < 3:
        return None
    low, central, high = sorted(seconds)
    return Band(low=low, central=central, high=high, kind="time", source="astm-c1074", mark="own")


def _later(first: Clock, second: Clock, why: str) -> Clock:
    if second.at is None:
        return first if second.why == "sheet_silent" else second
    if first.at is None:
        return first
    if second.at <= first.at:
        return first
    return Clock(
        name=second.name,
        runs_from=second.runs_from,
        printed_s=second.printed_s,
        computed_s=second.computed_s,
        used_s=second.used_s,
        at=second.at,
        why=why,
        facts=second.facts,
    )


def _moved(clock: Clock, at: datetime, why: str) -> Clock:
    used = clock.used_s
    if used is not None and clock.at is not None:
        used += (at - clock.at).total_seconds()
    return Clock(
        name=clock.name,
        runs_from=clock.runs_from,
        printed_s=clock.printed_s,
        computed_s=clock.computed_s,
        used_s=used,
        at=_minute_up(at),
        why=why,
        facts=clock.facts,
    )


def _minute_up(instant: datetime) -> datetime:
    floor = instant.replace(second=0, microsecond=0)
    return floor if floor == instant else floor + timedelta(minutes=1)
