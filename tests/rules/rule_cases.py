"""From a short case in TOML to the facts that a rule looks at, and to the cases that the runner makes by itself."""

import copy
import tomllib
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from functools import cache
from pathlib import Path
from typing import Any

from bathwright.domain.air import AirPlan, Emission, Exposure, Limit
from bathwright.domain.plan import AreaPart, Material, Mix
from bathwright.domain.sheet import FACT_KINDS, Amount, Choice, Conditions, Fact, Instruction, Range, Sheet
from bathwright.domain.steps import Clash, Clock, Demand, Step, Timetable, Use
from bathwright.domain.survey import Survey, Wish
from bathwright.domain.values import Band
from bathwright.door.reader import read_record
from bathwright.door.sheet import read_sheet
from bathwright.knowledge import load
from bathwright.rules.facts import Facts, Link, OutOfRange, Weather
from bathwright.units import read_quantity

HERE = Path(__file__).parent
START = datetime(2026, 9, 7, 13, tzinfo=UTC)
NOT_TOLD = "not told"
Case = dict[str, Any]


@cache
def base() -> Case:
    """The quiet home."""
    return tomllib.loads((HERE / "base.toml").read_text(encoding="utf-8"))


@cache
def sheets() -> dict[str, Sheet]:
    """The small sheets of the cases, by file name."""
    return {path.stem: read_sheet(path) for path in sorted((HERE / "sheets").glob("*.toml"))}


def amount(value: Any, kind: str) -> float:
    """A typed quantity, or a bare SI number that the runner made."""
    return read_quantity(value, kind) if isinstance(value, str) else float(value)


def facts_of(case: Case) -> Facts:
    """The facts of the quiet home with the changes of one case."""
    made = base()["facts"] | {key: value for key, value in case.items() if key in base()["facts"] or key in _EXTRA}
    survey = _survey(case.get("set", {}))
    fixture = survey.fixtures[0]
    coating = _changed(sheets()[made["system"]], made.get("sheet", {}))
    seen = {entry.what: entry.result for entry in fixture.observations}
    steps = tuple(_step(number, entry) for number, entry in enumerate(made["steps"]))
    volatile = {key: amount(value, "mass") for key, value in made["volatile"].items()}
    return Facts(
        at=made["at"],
        survey=survey,
        fixture=fixture,
        knowledge=load(),
        coating=coating,
        method=made.get("method", "roller"),
        substrate="old_coating" if seen.get("earlier_coat") == "sound" else fixture.material,
        sheets=(coating, *(sheets()[name] for name in made["beside"])),
        wishes=tuple(
            (Wish(sheet=name, use=made.get("wish_use", "strip")), sheets().get(name)) for name in made.get("wishes", [])
        ),
        dropped=tuple(made.get("dropped", [])),
        area=_area(made["area"]),
        steps=steps,
        chain=tuple(_link(entry) for entry in made["chain"]),
        materials=tuple(_material(entry) for entry in made["materials"]),
        mixes=tuple(_mix(entry) for entry in made["mixes"]),
        timetable=Timetable(
            starts=START,
            ends=START + timedelta(hours=len(steps)),
            chain=(),
            states=(),
            clashes=tuple(_clash(entry) for entry in made["clashes"]),
        ),
        unplaced=tuple(_clash(entry) for entry in made["unplaced"]),
        weather=_weather(made["weather"]),
        air=_air(made["air"]),
        exposures=tuple(_exposure(entry) for entry in made["exposures"]),
        clocks=tuple(_clock(name, at) for name, at in made["clocks"].items()),
        volatile_by_voc_kg=volatile.get("voc"),
        volatile_by_solids_kg=volatile.get("solids"),
        volatile_by_composition_kg=volatile.get("composition"),
        outside_range=tuple(_out_of_range(entry) for entry in made["outside_range"]),
    )


_EXTRA = ("method", "wishes", "wish_use", "dropped", "sheet")


def _survey(changes: dict[str, Any]) -> Survey:
    data = copy.deepcopy(base()["survey"])
    fixture = copy.deepcopy(base()["fixture"])
    seen = dict(base()["observations"])
    for path, value in changes.items():
        if path.startswith("fixture.observations."):
            _put(seen, [path.removeprefix("fixture.observations.")], value)
        elif path.startswith("fixture."):
            _put(fixture, path.split(".")[1:], value)
        else:
            _put(data, path.split("."), value)
    fixture["observations"] = [{"what": what, "result": result} for what, result in seen.items()]
    data["fixtures"] = [fixture]
    survey, faults = read_record(Survey, data, "case", "")
    assert survey is not None and not faults, [fault.text() for fault in faults]
    return survey


def _put(table: Any, path: list[str], value: Any) -> None:
    for part in path[:-1]:
        table = table[part]
    if value == NOT_TOLD:
        table.pop(path[-1], None)
    else:
        table[path[-1]] = value


def _changed(sheet: Sheet, changes: dict[str, Any]) -> Sheet:
    """The sheet with facts taken out (remove), set (a kind and its value) or added (add)."""
    removed = [*changes.get("remove", []), *(key for key in changes if key in FACT_KINDS)]
    facts = [fact for fact in sheet.facts if fact.kind not in removed and fact.id not in removed]
    added = [{"kind": key, "value": value} for key, value in changes.items() if key in FACT_KINDS]
    facts += [_fact(number, entry) for number, entry in enumerate([*added, *changes.get("add", [])])]
    parts = (
        sheet.parts if changes.get("composition", True) else tuple(replace(p, composition=None) for p in sheet.parts)
    )
    return replace(sheet, facts=tuple(facts), parts=parts)


def _fact(number: int, entry: Case) -> Fact:
    kind, value = entry["kind"], entry["value"]
    form, quantity, _ = FACT_KINDS[kind]
    made: Any
    if form == "choice":
        made = Choice(code=value, allowed=entry.get("allowed", True))
    elif form == "instruction":
        made = Instruction(act="wear", values=tuple(value))
    elif form == "range":
        low, high = (amount(value[s], str(quantity)) if s in value else None for s in ("low", "high"))
        made = Range(low=low, high=high, kind=str(quantity))
    else:
        made = Amount(value=amount(value, str(quantity)), kind=str(quantity))
    at = Conditions(temperature=amount(entry["at"], "temperature")) if "at" in entry else Conditions()
    return Fact(id=f"case-{number}", kind=kind, value=made, at=at)


def _area(value: Any) -> tuple[AreaPart, ...]:
    if value == NOT_TOLD:
        return ()
    return (AreaPart(fixture="bath", part="walls", area_m2=amount(value, "area"), how="case", mark="own"),)


def _band(value: float, kind: str) -> Band:
    return Band(low=0.25 * value, central=0.5 * value, high=value, kind=kind, source="own-computation", mark="own")


def _step(number: int, entry: Case) -> Step:
    starts = START + timedelta(hours=number)
    uses = (Use(sheet="case", chemistry=tuple(entry["uses"])),) if entry.get("uses") else ()
    return Step(
        id=entry["id"],
        phase=entry["phase"],
        act=entry["act"],
        work_s=_band(3600.0, "time"),
        uses=uses,
        emits=(f"{entry['id']}-vapour",) if entry.get("emits") else (),
        wears=tuple(entry.get("wears", [])),
        demands=(_demand(entry),) if "after" in entry else ((_window(entry),) if entry.get("window") else ()),
        starts=starts,
        ends=starts + timedelta(hours=1),
    )


def _demand(entry: Case) -> Demand:
    least, most = (amount(entry[k], "time") if k in entry else None for k in ("least", "most"))
    return Demand(
        id=f"{entry['id']}-after-{entry['after']}",
        step=entry["id"],
        kind="wait",
        strength="maker",
        after=entry["after"],
        least_s=least,
        most_s=most,
        on_miss=entry.get("on_miss"),
        law=entry.get("law", "fixed"),
    )


def _window(entry: Case) -> Demand:
    return Demand(id=f"{entry['id']}-window", step=entry["id"], kind="window", strength="maker", reads="humidity")


def _link(entry: Case) -> Link:
    return Link(
        chemistries=tuple(entry["chemistries"]),
        on=entry.get("on", "surface"),
        at=entry.get("at"),
        step=entry.get("step"),
        rinses_since=entry.get("rinses"),
        hours_since=entry.get("hours"),
        ph_checked=entry.get("ph_checked", False),
        dry=entry.get("dry", False),
    )


def _material(entry: Case) -> Material:
    needed = amount(entry["needed"], "liquid")
    pack = amount(entry["pack"], "liquid") if "pack" in entry else None
    return Material(
        sheet=entry["sheet"], product=entry["sheet"], needed_m3=_band(needed, "liquid"), pack_m3=pack, packs=None,
        left_over_m3=None, dry_film_m=None, wet_film_m=None, have=entry.get("have", True),
        reason="coat", section="coating",
    )  # fmt: skip


def _mix(entry: Case) -> Mix:
    life = amount(entry["pot_life"], "time")
    return Mix(
        id="mix-1", step="mix-1", sheet="waterborne", volume_m3=3e-4, parts=(), stir_s=120.0, stand_s=0.0,
        pot_life_s=life, printed_pot_life_s=life, use_s=amount(entry["used_for"], "time"),
    )  # fmt: skip


def _clash(entry: Case) -> Clash:
    late = amount(entry["late"], "time") if "late" in entry else None
    return Clash(demand=entry["demand"], step=entry.get("step", "coat-2"), missed_by_s=late)


def _weather(entry: Any) -> Weather | None:
    if entry == NOT_TOLD:
        return None
    full = base()["facts"]["weather"] | entry
    air, surface = ([amount(v, "temperature") for v in full[key]] for key in ("air", "surface"))
    damp = [amount(v, "humidity") for v in full["humidity"]]
    return Weather(
        air_low_k=air[0], air_high_k=air[1], surface_low_k=surface[0], surface_high_k=surface[1],
        humidity_low=damp[0], humidity_high=damp[1], spread_low_k=amount(full["spread"], "temperature_step"),
        told=full.get("told", True), surface_told=full["surface_told"],
    )  # fmt: skip


def _air(entry: Any) -> AirPlan | None:
    if entry == NOT_TOLD:
        return None
    full = base()["facts"]["air"] | entry
    first = START + timedelta(hours=5)
    hours = {key: first + timedelta(seconds=amount(full[key], "time")) for key in ("back", "away") if key in full}
    hours = {key: value for key, value in hours.items() if full[key] != "0 h"}
    return AirPlan(
        zones=(),
        intervals=(),
        emissions=tuple(_emission(cas, first) for cas in full["emits"]),
        limits=(),
        setup=None,
        fan=full["fan"] or None,
        fan_flow_m3_s=None,
        basin_at=None,
        vapour_kg=None,
        back_at=hours.get("back"),
        horizon=first + timedelta(days=30),
        away_from=first if "away" in hours else None,
        away_until=hours.get("away"),
    )


def _emission(cas: str, starts: datetime) -> Emission:
    return Emission(
        id=f"coat-1-{cas}", step="coat-1", substance=cas, cas=cas, zone="basin", surface_m2=2.1,
        mass_kg=_band(0.05, "mass"), starts=starts, ends=starts + timedelta(hours=1), form="film", slow_share=0.15,
        slow_rate_per_s=1e-5, transfer_m_s=1e-3, activity_coefficient=1.0, saturation_kg_m3=0.05, model="case",
        source="own-computation", mark="own",
    )  # fmt: skip


def _exposure(entry: Case) -> Exposure:
    """An exposure; its limit is 0.001 kg/m3, or 1 for a sum of shares, or a tenth of the lower explosive limit."""
    mixture = entry["substance"] == "mixture"
    value = 0.1 if entry["measure"] == "explosive_share" else (1.0 if mixture else 1e-3)
    upper = amount(entry["share"], "share") if "share" in entry else float(entry["times"]) * value
    limit = None if mixture else _limit(entry, value)
    return Exposure(
        who=entry["who"], zone=entry.get("zone") or entry["who"], substance=entry["substance"],
        measure=entry["measure"],
        outside=_band(upper, "concentration"), inside=_band(upper, "concentration"), limit=limit, limit_value=value,
        share_central=0.5 * upper / value, share_upper=upper / value, basis="upper_bound", at=START,
    )  # fmt: skip


def _limit(entry: Case, value: float) -> Limit:
    return Limit(
        id="case-limit", cas=entry["substance"], body="case", measure=entry.get("limit") or entry["measure"],
        value_kg_m3=value, for_whom="worker" if entry["who"] == "painter" else "public",
        kind=entry.get("kind", "advice"), law_in=("US",), year=2020, source="niosh-pocket-guide", mark="verified",
        surrogate=entry.get("surrogate", False),
    )  # fmt: skip


def _clock(name: str, at: Any) -> Clock:
    when = None if at == NOT_TOLD else at
    return Clock(name=name, runs_from="coat-2", printed_s=None, computed_s=None, used_s=None, at=when, why="printed")


def _out_of_range(entry: Case) -> OutOfRange:
    low, high, value = (amount(entry[key], entry["kind"]) for key in ("low", "high", "value"))
    return OutOfRange(
        model=entry["model"], quantity=entry["quantity"], value=value, low=low, high=high, kind=entry["kind"],
        source="own-computation",
    )  # fmt: skip
