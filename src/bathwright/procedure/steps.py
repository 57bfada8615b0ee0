"""The steps in the order of the trade, from the empty room to the inspection."""

import math

from bathwright.domain import views
from bathwright.domain.codes import Attendance, Phase, RoomState
from bathwright.domain.plan import Mix
from bathwright.domain.record import record
from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Demand, Look, Step, SurfaceState, Use
from bathwright.domain.values import Band, Value
from bathwright.procedure.job import Job, dust_may_hold_lead, seen
from bathwright.procedure.waits import pot_life_s, wait

_DAY_S = 86400.0
_POT_MARGIN_S = 300.0  # five minutes to lay the last roller down: judgement
_NOTHING_FAST = 1e9
_AT_ONCE_S = 600.0  # a mixed batch is laid on within ten minutes: judgement
_SAME_SESSION_S = 7200.0  # the last wipe and the first coat belong together, two hours at most: judgement


@record
class Procedure:
    """The steps with their batches."""

    steps: tuple[Step, ...]
    mixes: tuple[Mix, ...]


class _Builder:
    """Collects steps in order; each step follows the one before unless it says otherwise."""

    def __init__(self, job: Job, cold_k: float, warm_k: float) -> None:
        self.job, self.cold_k, self.warm_k = job, cold_k, warm_k
        self.dusty = dust_may_hold_lead(job.survey, job.fixture)
        self.steps: list[Step] = []
        self.mixes: list[Mix] = []

    def work(self, act: str) -> Band:
        """Work time of an act: its rate per m2 times the area, or its fixed time, from the defaults."""
        base = self.job.knowledge.band(f"coating_defaults.{_work_key(act, self.job.method)}")
        factor = self.job.area_m2 if base.kind == "work_rate" else 1.0
        return Band(
            low=_whole_minutes(base.low * factor),
            central=_whole_minutes(base.central * factor),
            high=_whole_minutes(base.high * factor),
            kind="time",
            source=base.source,
            mark=base.mark,
        )

    def add(
        self,
        step_id: str,
        phase: Phase,
        act: str,
        *,
        demands: tuple[Demand | None, ...] = (),
        uses: tuple[Use, ...] = (),
        leaves: SurfaceState | None = None,
        values: tuple[Value, ...] = (),
        look_for: tuple[Look, ...] = (),
        room_state: RoomState = "no_water",
        attendance: Attendance = "attended",
        because: tuple[str, ...] = (),
        work_s: Band | None = None,
    ) -> Step:
        step = Step(
            id=step_id,
            phase=phase,
            act=act,
            values=values,
            on=(self.job.fixture.id,),
            work_s=work_s or self.work(act),
            attendance=attendance,
            demands=tuple(demand for demand in demands if demand),
            uses=uses,
            leaves=leaves,
            look_for=look_for,
            room_state=room_state,
            because=because,
        )
        self.steps.append(step)
        return step

    def sheet_wait(self, sheet: Sheet, kind: str, step: str, after: str) -> Demand | None:
        """The wait that a sheet prints, counted from the step that it names; `after` where it names none."""
        found = views.strictest(sheet, kind, temperature_k=self.cold_k)
        anchor = _ANCHORS.get(found.fact.starts_from or "", after) if found else after
        anchor = anchor if any(known.id == anchor for known in self.steps) else after
        return wait(
            sheet, kind, step=step, after=anchor, knowledge=self.job.knowledge, temperature_k=self.cold_k,
            warm_k=self.warm_k,
        )  # fmt: skip


_ANCHORS = {"demasked": "unmask", "caulked": "seal"}
_TWICE = (Value(name="rinses", value=2.0),)
_RATES = {
    "wash_detergent": "clean", "rinse": "rinse", "descale": "descale", "wet_sand": "sand", "dry_bath": "dry",
    "mask_room": "mask", "solvent_wipe": "wipe", "tack_wipe": "wipe", "unmask": "unmask", "scrape_old_coat": "strip",
}  # fmt: skip


def _work_key(act: str, method: str) -> str:
    """Where the work time of an act stands: a rate per m2, or a fixed time."""
    if act == "coat":
        return f"work_rate.coat_{method}"
    return f"work_rate.{_RATES[act]}" if act in _RATES else f"work_time.{act}"


def _whole_minutes(seconds: float) -> float:
    return float(math.ceil(seconds / 60.0 - 1e-9) * 60)


def fixed_wait(step: str, after: str, least_s: float, because: str, *, most_s: float | None = None) -> Demand:
    """A wait that does not change with temperature."""
    return Demand(
        id=f"{step}-after-{after}",
        step=step,
        kind="wait",
        strength="good_practice",
        because=(because,),
        after=after,
        least_s=least_s,
        most_s=most_s,
        printed_least_s=least_s,
        printed_most_s=most_s,
    )


def use(sheet: Sheet, volume_m3: float | None = None, mix: str | None = None) -> Use:
    """A product used in a step."""
    return Use(sheet=sheet.id, chemistry=sheet.chemistries, volume_m3=volume_m3, mix=mix)


def procedure(job: Job, cold_k: float, warm_k: float, first_acid_after_s: float | None) -> Procedure:
    """The whole procedure.

    cold_k, warm_k: lowest and highest temperature that is expected at the film and in the pot.
    first_acid_after_s: seconds from the flush until an acid or a bleach may follow what was used before (None = no
    such history).
    """
    b = _Builder(job, cold_k, warm_k)
    _ready(b)
    _clean(b, first_acid_after_s)
    _profile_and_repair(b)
    _last_before_coat(b)
    last_coat = _coats(b)
    _after(b, last_coat)
    return Procedure(steps=tuple(b.steps), mixes=tuple(b.mixes))


def _ready(b: _Builder) -> None:
    b.add("empty-room", "ready_room", "empty_room", room_state="free")
    if seen(b.job.fixture, "drip") == "drips":
        b.add("stop-drip", "ready_room", "stop_drip", room_state="free")
    b.add("set-up-air", "ready_room", "set_up_air", room_state="free")
    b.add("remove-fittings", "strip_down", "remove_fittings")
    b.add("cut-caulk", "strip_down", "cut_caulk")
    if seen(b.job.fixture, "earlier_coat") == "failing" or seen(b.job.fixture, "cut_and_tape") == "lifts":
        _contain_dust(b)
        b.add("scrape-old-coat", "strip_down", "scrape_old_coat", room_state="locked")


def _contain_dust(b: _Builder) -> None:
    """Sheets on floor and door before the first dust, once, where it may hold lead."""
    if b.dusty and not any(step.act == "contain_dust" for step in b.steps):
        b.add("contain-dust", "ready_room", "contain_dust", room_state="locked", because=("cfr-40-745-85",))


def _clean(b: _Builder, first_acid_after_s: float | None) -> None:
    beside = b.job.beside
    if first_acid_after_s is not None:
        _flush(b, "flush-old-products")
    if beside.cleaner:
        b.add("wash", "clean", "wash_detergent", uses=(use(beside.cleaner),), leaves=_left(beside.cleaner))
    else:
        b.add("wash", "clean", "wash_detergent")
    b.add("rinse-wash", "clean", "rinse", values=_TWICE, leaves=SurfaceState(rinses=2))
    if beside.bleach:
        held = _held("treat-mould", first_acid_after_s)
        b.add("treat-mould", "clean", "treat_mould", demands=held, uses=(use(beside.bleach),),
              leaves=_left(beside.bleach))  # fmt: skip
        _flush(b, "flush-bleach")
    if beside.descaler:
        held = _held("descale", first_acid_after_s)
        b.add("descale", "clean", "descale", demands=held, uses=(use(beside.descaler),), leaves=_left(beside.descaler))
        _flush(b, "flush-descaler")


def _held(step: str, after_s: float | None) -> tuple[Demand, ...]:
    """The wait between the flush of what was used before and a product that must not meet it."""
    return () if after_s is None else (fixed_wait(step, "flush-old-products", after_s, "cdc-mmwr-1991-40-36"),)


def _left(sheet: Sheet) -> SurfaceState:
    return SurfaceState(last=sheet.chemistries)


def _flush(b: _Builder, step_id: str) -> None:
    """Three rinses with overflow, drain and caulk line, the trap flushed with 10 L, a pH strip between 6 and 8."""
    look = Look(what="ph", reads="ph", low=6.0, high=8.0, if_not="rinse_again")
    b.add(
        step_id, "clean", "flush_and_check", leaves=SurfaceState(rinses=3, ph_checked=True), look_for=(look,)
    )  # fmt: skip


def _profile_and_repair(b: _Builder) -> None:
    grit = views.instruction(b.job.coating, "abrasive")
    words = tuple(Value(name="grit", value=word) for word in (grit[0].values if grit else ()))
    because = (f"{b.job.coating.id}/{grit[1]}",) if grit else ()
    _contain_dust(b)
    b.add(
        "wet-sand",
        "profile",
        "wet_sand",
        room_state="locked" if b.dusty else "no_water",
        values=words,
        because=because,
        look_for=(Look(what="even_matt"),),
    )
    b.add(
        "rinse-sand",
        "profile",
        "rinse",
        values=_TWICE,
        leaves=SurfaceState(rinses=2),
        look_for=(Look(what="water_sheets"),),
    )
    if b.dusty:
        b.add("clean-up-dust", "profile", "clean_up_dust", room_state="locked", because=("cfr-40-745-85",))
    filler = b.job.beside.filler
    if filler:
        dry = fixed_wait("fill-chips", "rinse-sand", 3600.0, "common-practice")
        b.add("fill-chips", "repair", "fill_chips", uses=(use(filler),), demands=(dry,), leaves=_left(filler))
        ready = b.sheet_wait(filler, "recoat", "sand-filler", "fill-chips")
        b.add("sand-filler", "repair", "sand_filler", demands=(ready,), look_for=(Look(what="edge_not_felt"),))


def _last_before_coat(b: _Builder) -> None:
    job = b.job
    b.add("dry-bath", "dry", "dry_bath", leaves=SurfaceState(dry=True), look_for=(Look(what="gaps_dry"),))
    b.add("mask-room", "mask", "mask_room", room_state="no_water")
    after_dry = b.sheet_wait(job.coating, "dry_before", "wipe", "dry-bath")
    after_dry = None if after_dry is None else _as_fixed(after_dry)
    if job.beside.wipe:
        rate = views.strictest(job.beside.wipe, "use_rate")
        volume = (rate.value if rate else job.knowledge.band("coating_defaults.use.solvent").central) * job.area_m2
        product = use(job.beside.wipe, volume)
        left = _left(job.beside.wipe)
        b.add("wipe", "wipe", "solvent_wipe", demands=(after_dry,), uses=(product,), leaves=left, room_state="locked")
    else:
        b.add("wipe", "wipe", "tack_wipe", demands=(after_dry,), room_state="locked")


def _as_fixed(demand: Demand) -> Demand:
    """The same wait without a temperature law (drying of water is told, not computed, in this edition)."""
    import dataclasses

    return dataclasses.replace(demand, law="fixed", reference_k=None, activation_energy_j_mol=None, floor_k=None)


def _windows(b: _Builder, step: str) -> tuple[Demand, ...]:
    """The conditions that the sheet asks for while coating and for a time after; the spread rule when it is silent."""
    job = b.job
    hold = views.strictest(job.coating, "hold_temperature_for")
    until = hold.value if hold else 0.0
    out = []
    for kind in ("air_temperature", "surface_temperature", "humidity"):
        low, high, ids = views.bounds(job.coating, kind)
        if ids:
            because = tuple(f"{job.coating.id}/{fact}" for fact in ids)
            out.append(_window(step, kind, low, high, until, because))
    spread = views.strictest(job.coating, "dew_point_spread")
    if spread:
        out.append(_window(step, "spread", spread.value, None, until, (f"{job.coating.id}/{spread.fact.id}",)))
    else:
        rule = job.knowledge.number("coating_defaults.climate.dew_point_spread_iso")
        out.append(_window(step, "spread", rule.value, None, until, (rule.source,)))
    return tuple(out)


def _window(
    step: str, reads: str, low: float | None, high: float | None, until_s: float, because: tuple[str, ...]
) -> Demand:
    return Demand(
        id=f"{step}-{reads.replace('_', '-')}",
        step=step,
        kind="window",
        strength="maker",
        because=because,
        reads=reads,  # type: ignore[arg-type]
        low=low,
        high=high,
        until_s=until_s,
    )


def _coats(b: _Builder) -> str:
    """Mix and coat, coat by coat; a coat that outlasts the pot life is done in several batches."""
    job = b.job
    life = pot_life_s(job.coating, b.warm_k, job.knowledge)
    stir = views.strictest(job.coating, "stir")
    stand = views.strictest(job.coating, "induction")
    stir_s = stir.value if stir else 300.0
    stand_s = stand.value if stand else 0.0
    whole = b.work("coat")
    usable = max(_whole_minutes(whole.high / 12), (life[0] if life else _NOTHING_FAST) - stand_s - _POT_MARGIN_S)
    batches = max(1, math.ceil(whole.high / usable))
    before_coat = ""
    for coat in range(1, job.film.coats + 1):
        last = ""
        for batch in range(1, batches + 1):
            tail = f"{coat}" if batches == 1 else f"{coat}-{batch}"
            mix_id, coat_id = f"mix-{tail}", f"coat-{tail}"
            share = 1.0 / batches
            flash = (_flash(mix_id, job.beside.wipe),) if not before_coat and batch == 1 else ()
            mix_work = job.knowledge.band("coating_defaults.work_time.mix_batch")
            minutes = _whole_minutes(mix_work.central + stir_s + stand_s)
            mixing = Band(
                low=minutes, central=minutes, high=minutes, kind="time", source=mix_work.source, mark=mix_work.mark
            )
            told = (
                Value(name="coat", value=float(coat)),
                Value(name="stir", value=stir_s, kind="time"),
                *((Value(name="stand", value=stand_s, kind="time"),) if stand_s else ()),
            )
            b.add(mix_id, "mix", "mix_batch", demands=flash, room_state="locked", work_s=mixing, values=told)
            b.mixes.append(_mix(b, mix_id, share, life, stir_s, stand_s, whole.high * share))
            coating = Band(
                low=_whole_minutes(whole.low * share),
                central=_whole_minutes(whole.central * share),
                high=_whole_minutes(whole.high * share),
                kind="time",
                source=whole.source,
                mark=whole.mark,
            )
            most = _AT_ONCE_S if life is None else min(_AT_ONCE_S, max(0.0, life[0] - stand_s - coating.high))
            recoat = b.sheet_wait(job.coating, "recoat", coat_id, before_coat) if before_coat and batch == 1 else None
            at_once = fixed_wait(coat_id, mix_id, 0.0, life[2] if life else "common-practice", most_s=most)
            b.add(
                coat_id, "coat", "coat", demands=(at_once, recoat, *_windows(b, coat_id)), room_state="locked",
                uses=(use(job.coating, job.one_coat.central * share, mix_id),), work_s=coating,
                values=(Value(name="coat", value=float(coat)), Value(name="coats", value=float(job.film.coats)),
                        Value(name="method", value=job.method),
                        Value(name="wet_film", value=job.film.wet_central_m, kind="film")),
                leaves=_left(job.coating),
                look_for=(Look(what="wet_film", reads="wet_film", low=job.film.dry_low_m / job.film.solids_by_volume,
                               high=job.film.dry_high_m / job.film.solids_by_volume, kind="film"),),
            )  # fmt: skip
            last = coat_id
        before_coat = last
    return before_coat


def _flash(step: str, wipe: Sheet | None) -> Demand:
    """From the last wipe to the first batch: the solvent's flash-off at least, the same session at most."""
    if wipe is None:
        return fixed_wait(step, "wipe", 0.0, "own-judgement", most_s=_SAME_SESSION_S)
    found = views.strictest(wipe, "flash_off")
    least = found.value if found else 900.0
    because = f"{wipe.id}/{found.fact.id}" if found else "own-judgement"
    return fixed_wait(step, "wipe", least, because, most_s=least + _SAME_SESSION_S)


def _mix(
    b: _Builder,
    mix_id: str,
    share: float,
    life: tuple[float, float, str] | None,
    stir_s: float,
    stand_s: float,
    use_s: float,
) -> Mix:
    job = b.job
    volume = job.one_coat.central * share
    parts = tuple(
        Value(name=part.name, value=float(part.value) * volume, kind="liquid") for part in job.mixed.parts
    )  # fmt: skip
    return Mix(
        id=mix_id,
        step=mix_id,
        sheet=job.coating.id,
        volume_m3=volume,
        parts=parts,
        stir_s=stir_s,
        stand_s=stand_s,
        pot_life_s=life[0] if life else 0.0,
        printed_pot_life_s=life[1] if life else 0.0,
        use_s=_whole_minutes(use_s) + stand_s,
    )


def _after(b: _Builder, last_coat: str) -> None:
    """Tape off, fittings back, sealant, a look in strong light."""
    job = b.job
    b.add("unmask", "unmask", "unmask", demands=(b.sheet_wait(job.coating, "unmask", "unmask", last_coat),))
    handle = b.sheet_wait(job.coating, "handle", "refit-fittings", last_coat)
    b.add("refit-fittings", "refit", "refit_fittings", demands=(handle,))
    seal = b.sheet_wait(job.coating, "seal_after", "seal", last_coat)
    sealant = job.beside.sealant
    products = (use(sealant),) if sealant else ()
    b.add("seal", "seal", "seal", demands=(seal,), uses=products, leaves=_left(sealant) if sealant else None)
    b.add("inspect", "hand_over", "inspect", room_state="no_water", look_for=(Look(what="runs_pinholes_edges"),))
