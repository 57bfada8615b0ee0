"""Steps of the sample plan: written by hand, with invented numbers."""

from datetime import UTC, datetime, timedelta

from bathwright.domain.steps import BathState, Clock, Demand, Look, Step, Timetable, Use
from bathwright.domain.values import Band, Value

COATING = "sample-epoxy"
START = datetime(2026, 12, 10, 14, 0, tzinfo=UTC)  # 09:00 in New York
H = 3600.0


def after(hours: float) -> datetime:
    """An instant so many hours after the start."""
    return START + timedelta(hours=hours)


def minutes(low: float, central: float, high: float) -> Band:
    return Band(
        low=low * 60,
        central=central * 60,
        high=high * 60,
        kind="time",
        source="common-practice",
        mark="common_practice",
    )


# id, phase, act, start in hours, minutes of work, state of the room
_PLAIN = (
    ("empty-room", "ready_room", "empty_room", 0.0, 30, "free"),
    ("set-up-air", "ready_room", "set_up_air", 0.5, 40, "free"),
    ("warm-room", "ready_room", "warm_room", 1.25, 15, "free"),
    ("remove-fittings", "strip_down", "remove_fittings", 1.5, 20, "no_water"),
    ("cut-caulk", "strip_down", "cut_caulk", 2.0, 45, "no_water"),
    ("wash", "clean", "wash_detergent", 3.0, 40, "no_water"),
    ("rinse-wash", "clean", "rinse", 3.75, 10, "no_water"),
    ("descale", "clean", "descale", 4.0, 30, "no_water"),
    ("flush", "clean", "flush_and_check", 4.5, 20, "no_water"),
    ("wet-sand", "profile", "wet_sand", 5.0, 90, "no_water"),
    ("fill-chips", "repair", "fill_chips", 7.0, 20, "no_water"),
    ("sand-filler", "repair", "sand_filler", 24.0, 25, "no_water"),
    ("dry-bath", "dry", "dry_bath", 24.5, 20, "no_water"),
    ("mask-room", "mask", "mask_room", 25.0, 60, "no_water"),
    ("wipe", "wipe", "solvent_wipe", 27.0, 20, "locked"),
    ("tack", "wipe", "tack_wipe", 27.6, 10, "locked"),
    ("mix-1", "mix", "mix_batch", 27.8, 15, "locked"),
    ("coat-1", "coat", "coat", 28.1, 45, "locked"),
    ("mix-2", "mix", "mix_batch", 48.0, 15, "locked"),
    ("coat-2", "coat", "coat", 48.3, 45, "locked"),
    ("cure", "cure", "cure", 49.1, 1440, "locked"),
    ("unmask", "unmask", "unmask", 74.0, 30, "no_water"),
    ("refit", "refit", "refit_fittings", 96.0, 20, "no_water"),
    ("seal", "seal", "seal", 97.0, 30, "no_water"),
    ("inspect", "hand_over", "inspect", 99.0, 20, "no_water"),
)


def _coat_demands(step: str, before: str, number: int) -> tuple[Demand, ...]:
    again = Demand(
        id=f"{step}-recoat",
        step=step,
        kind="wait",
        strength="maker",
        because=(f"{COATING}/recoat",),
        after=before,
        least_s=(18.0 if number == 2 else 0.0) * H,
        most_s=(48.0 if number == 2 else 0.5) * H,
        printed_least_s=(16.0 if number == 2 else 0.0) * H,
        law="cures",
        on_miss="abrade_and_wipe" if number == 2 else None,
    )
    air = Demand(
        id=f"{step}-air-temperature",
        step=step,
        kind="window",
        strength="maker",
        because=(f"{COATING}/air-temperature",),
        reads="air_temperature",
        low=291.15,
        high=302.15,
        until_s=24 * H,
    )
    spread = Demand(
        id=f"{step}-spread", step=step, kind="window", strength="good_practice", because=("iso-8502-4-2017",),
        reads="spread", low=3.0, until_s=24 * H,
    )  # fmt: skip
    return (again, air, spread)


def _extras(step_id: str) -> dict[str, object]:
    look_wet = Look(what="wet_film", reads="wet_film", low=90e-6, high=140e-6, kind="film")
    if step_id in ("coat-1", "coat-2"):
        number = int(step_id[-1])
        before = "mix-1" if number == 1 else "coat-1"
        return {
            "demands": _coat_demands(step_id, before, number),
            "uses": (Use(sheet=COATING, chemistry=("epoxy-resin",), volume_m3=3.1e-4, mix=f"mix-{number}"),),
            "values": (
                Value(name="coat", value=float(number)),
                Value(name="wet_film", value=1.15e-4, kind="film"),
                Value(name="method", value="roller"),
            ),
            "wears": ("wear-mask", "wear-gloves"),
            "look_for": (look_wet, Look(what="even_film")),
            "decides": f"{step_id}-recoat",
            "emits": (f"{step_id}-toluene",),
        }
    known: dict[str, dict[str, object]] = {
        "set-up-air": {
            "values": (Value(name="flow", value=0.055, kind="flow"),),
            "look_for": (Look(what="tissue_leans_in"),),
        },
        "wet-sand": {"values": (Value(name="grit", value="400"),), "look_for": (Look(what="even_matt"),)},
        "rinse-wash": {"values": (Value(name="rinses", value=2.0, kind="count"),)},
        "flush": {
            "look_for": (Look(what="ph", reads="ph", low=6.0, high=8.0, if_not="rinse_again"),),
            "because": ("cdc-mmwr-1991-40-36",),
        },
        "descale": {"uses": (Use(sheet="sample-descaler", chemistry=("descaler",), volume_m3=2e-4),)},
        "wipe": {
            "uses": (Use(sheet="sample-wipe", chemistry=("alcohol",), volume_m3=1.2e-4),),
            "wears": ("wear-mask", "wear-gloves"),
            "decides": "hours",
        },
        "cure": {"attendance": "unattended", "values": (Value(name="until", value="2026-12-13T15:10:00Z"),)},
    }
    return known.get(step_id, {})


def steps() -> tuple[Step, ...]:
    """All steps, placed."""
    out: list[Step] = []
    for name, phase, act, start, length, state in _PLAIN:
        more = {"work_s": minutes(length * 0.7, length, length * 1.5), "room_state": state} | _extras(name)
        decides = out[-1].id if out else "earliest"
        more.setdefault("decides", decides)
        out.append(
            Step(
                id=name,
                phase=phase,  # type: ignore[arg-type]
                act=act,
                on=("bath",),
                starts=after(start),
                ends=after(start + length / 60),
                **more,  # type: ignore[arg-type]
            )
        )
    return tuple(out)


def timetable() -> Timetable:
    """Spans of what bath, bathroom and home are good for."""
    return Timetable(
        starts=START,
        ends=after(99.4),
        chain=("coat-2", "cure"),
        valid_until=START,
        states=(
            BathState(starts=after(1.5), ends=after(27), bath="no_water", room="free"),
            BathState(starts=after(27), ends=after(60), bath="no_water", room="locked", home="leave_home"),
            BathState(starts=after(60), ends=after(74), bath="no_water", room="locked"),
            BathState(starts=after(74), ends=after(145), bath="no_water", room="free"),
            BathState(starts=after(145), ends=after(241), bath="first_water", room="free"),
        ),
    )


def clocks() -> tuple[Clock, ...]:
    """All six."""
    rows = (
        ("touch", "coat-2", 8, 10.4, "cold"),
        ("handle", "coat-2", 24, 31.2, "cold"),
        ("first_water", "seal", 48, 48.0, "sealant"),
        ("full_bath", "coat-2", 144, 192.0, "cold"),
        ("care", "coat-2", 168, 224.0, "cold"),
        ("hard", "coat-2", None, None, "sheet_silent"),
    )
    ends = {"coat-2": 49.05, "seal": 97.5}
    return tuple(
        Clock(
            name=name,
            runs_from=start,
            printed_s=None if printed is None else printed * H,
            computed_s=None,
            used_s=None if used is None else used * H,
            at=None if used is None else after(ends[start] + used),
            why=why,
        )
        for name, start, printed, used, why in rows
    )
