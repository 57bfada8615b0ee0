"""What each step lets out: substances and masses, before the clock is known."""

from bathwright.domain.air import Release
from bathwright.domain.codes import Mark
from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Step
from bathwright.domain.values import Band
from bathwright.procedure.job import Job
from bathwright.procedure.mixture import UNTOLD_DENSITY_KG_M3, MixedShare, mixture, volatiles
from bathwright.procedure.quantities import other_material

TRACE_KG = 0.005  # a cleaner, filler or sealant that lets out less in its step is no source of its own: judgement


def releases(job: Job, steps: tuple[Step, ...]) -> tuple[Release, ...]:
    """Releases of all coats, of the solvent wipe, and of cleaner, filler and sealant that let out more than a trace.

    Mass of a coat: the share of the mixture times its volume, at the low, central and high of both; the water of a
    water-borne coating is a release too, since it thins the vapour over the film.
    """
    out: list[Release] = []
    water_borne = job.volatile.water_kg > 0
    for step in steps:
        for used in step.uses:
            if step.act == "coat":
                part = used.volume_m3 / job.one_coat.central if used.volume_m3 else 1.0
                out += _of_mixture(job, step, job.coating, part, water_borne)
            else:
                sheet = next((s for s in job.beside.all() if s.id == used.sheet), None)
                out += _of_product(job, step, sheet, used.volume_m3) if sheet else []
    return tuple(out)


def _of_mixture(job: Job, step: Step, sheet: Sheet, part: float, water_borne: bool) -> list[Release]:
    density = job.mixed.density_kg_m3 or UNTOLD_DENSITY_KG_M3
    volumes = [value * part * density for value in (job.one_coat.low, job.one_coat.central, job.one_coat.high)]
    gamma = job.knowledge.number("air.film.waterborne_activity")
    out = []
    for share in job.volatile.organic:
        masses = [v * s for v, s in zip(volumes, (share.low, share.central, share.high), strict=True)]
        factor = gamma.value if water_borne else 1.0
        mark: Mark = gamma.mark if water_borne else "own"
        out.append(_release(job, step, share, masses, "film", factor, sheet.id, mark))
    if water_borne:
        water = next(
            s for s in job.mixed.shares if "water" in _tags(job, s.cas)
        )  # fmt: skip
        masses = [v * s for v, s in zip(volumes, (water.low, water.central, water.high), strict=True)]
        out.append(_release(job, step, water, masses, "film", 1.0, sheet.id, "own"))
    return out


def _tags(job: Job, cas: str) -> tuple[str, ...]:
    substance = job.knowledge.substances.get(cas)
    return substance.tags if substance else ()


def _of_product(job: Job, step: Step, sheet: Sheet, volume_m3: float | None) -> list[Release]:
    """All that evaporates from a product used beside the coating: its use rate times the area."""
    mixed = mixture(sheet)
    found = volatiles(sheet, mixed, job.knowledge)
    volume = volume_m3 or other_material(sheet, job.area_m2, "", job.knowledge).needed_m3.central
    weight = volume * (mixed.density_kg_m3 or UNTOLD_DENSITY_KG_M3)
    form = "wipe" if step.act == "solvent_wipe" else "film"
    if form == "film" and found.used_kg * volume < TRACE_KG:
        return []
    return [
        _release(job, step, share, [weight * share.low, weight * share.central, weight * share.high], form, 1.0,
                 sheet.id, "own")
        for share in found.organic
    ]  # fmt: skip


def _release(
    job: Job, step: Step, share: MixedShare, masses: list[float], form: str, gamma: float, source: str, mark: Mark
) -> Release:
    low, central, high = sorted(masses)
    return Release(
        id=f"{step.id}-{share.cas}",
        step=step.id,
        substance=share.name,
        cas=share.cas,
        surface_m2=job.area_m2,
        mass_kg=Band(low=low, central=central, high=high, kind="mass", source=source, mark=mark),
        form=form,  # type: ignore[arg-type]
        activity_coefficient=gamma,
        source="mackay-van-wesenbeeck-2014",
        mark="judgement",
    )
