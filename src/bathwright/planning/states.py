"""What the bathroom is good for over time: bath, room, home."""

import dataclasses
from datetime import datetime
from itertools import pairwise

from bathwright.domain.codes import RoomState
from bathwright.domain.steps import BathState, Timetable
from bathwright.planning.attempt import Attempt

_Held = tuple[datetime, datetime, RoomState]
_RANK: tuple[RoomState, ...] = ("free", "first_water", "no_water", "locked", "leave_home")


def timetable_with_states(best: Attempt) -> Timetable | None:
    """The timetable with the states of the bathroom filled in; None when no step could be placed."""
    table = best.facts.timetable
    if table is None:
        return None
    return dataclasses.replace(table, states=_states(best, table), valid_until=_valid_until(best))


def _valid_until(best: Attempt) -> datetime | None:
    """A plan holds until its first step would have to start."""
    return best.steps[0].starts if best.steps else None


def _states(best: Attempt, table: Timetable) -> tuple[BathState, ...]:
    at = {clock.name: clock.at for clock in best.clocks}
    bath = _bath_spans(best, table, at)
    room = _room_spans(best)
    home: list[_Held] = [
        (m.starts, m.ends, "leave_home") for m in best.measures if m.act == "leave_home" and m.starts and m.ends
    ]
    edges = sorted({edge for spans in (bath, room, home) for start, end, _ in spans for edge in (start, end) if edge})
    out: list[BathState] = []
    for start, end in pairwise(edges):
        state = BathState(
            starts=start, ends=end, bath=_worst(bath, start), room=_worst(room, start), home=_worst(home, start)
        )  # fmt: skip
        if out and (out[-1].bath, out[-1].room, out[-1].home) == (state.bath, state.room, state.home):
            out[-1] = dataclasses.replace(out[-1], ends=end)
        else:
            out.append(state)
    return tuple(out)


def _worst(spans: list[_Held], at: datetime) -> RoomState:
    found: list[RoomState] = [state for start, end, state in spans if start <= at < end]
    return max(found, key=_RANK.index, default="free")


def _bath_spans(best: Attempt, table: Timetable, at: dict[str, datetime | None]) -> list[_Held]:
    """No water from the first step that strips it down, until first water; then short showers until the full bath."""
    begin = next((s.starts for s in best.steps if s.room_state != "free" and s.starts), table.starts)
    first, full = at.get("first_water"), at.get("full_bath")
    horizon = max([table.ends, *(t for t in at.values() if t)])
    spans: list[_Held] = [(begin, first or horizon, "no_water")]
    if first and full and full > first:
        spans.append((first, full, "first_water"))
    return spans


def _room_spans(best: Attempt) -> list[_Held]:
    """Nobody but the painter in the room from the first vapour until the air is back, and from the first dust sheet to
    the clean-up."""
    spans: list[_Held] = []
    if best.air:
        plan = best.air.plan
        begin, end = min((e.starts for e in plan.emissions), default=None), plan.back_at or plan.horizon
        spans += [(begin, end, "locked")] if begin and end else []
    spans += _dust_span(best)
    spans += [(s.starts, s.ends, "locked") for s in best.steps if s.room_state == "locked" and s.starts and s.ends]
    return spans


def _dust_span(best: Attempt) -> list[_Held]:
    starts = [step.starts for step in best.steps if step.act == "contain_dust" and step.starts]
    ends = [step.ends for step in best.steps if step.act == "clean_up_dust" and step.ends]
    return [(starts[0], ends[-1], "locked")] if starts and ends else []
