"""One attempt: one fixture with one coating, through fit, steps, clock, air, rules, judge."""

from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from bathwright import rules
from bathwright.domain import views
from bathwright.domain.codes import SubstrateCode
from bathwright.domain.findings import Finding, Measure, Question, Said
from bathwright.domain.plan import AreaPart, Assumption, Material
from bathwright.domain.sheet import Sheet
from bathwright.domain.steps import Clock, Step, Timetable
from bathwright.domain.survey import Fixture, Survey, Wish
from bathwright.judge import Judgement, judge
from bathwright.knowledge.book import Knowledge
from bathwright.planning import air as air_plan
from bathwright.planning.clocks import clocks
from bathwright.planning.history import chain, first_acid_after_s
from bathwright.planning.ranges import out_of_range
from bathwright.planning.timing import place_steps
from bathwright.planning.weather import weather_of
from bathwright.procedure import quantities
from bathwright.procedure.areas import areas
from bathwright.procedure.job import Job, make_job, seen
from bathwright.procedure.releases import releases
from bathwright.procedure.steps import Procedure, procedure
from bathwright.rules.facts import Facts
from bathwright.rules.facts import Weather as FilmWeather
from bathwright.schedule.fixpoint import Placed
from bathwright.schedule.fixpoint import chain as deciding_chain
from bathwright.simulation.climate import Weather
from bathwright.simulation.setup import air_setup, vapours


@dataclass(frozen=True)
class Attempt:
    """Everything that one attempt came to."""

    job: Job
    weather: Weather
    assumptions: tuple[Assumption, ...]
    procedure: Procedure
    placed: Placed
    steps: tuple[Step, ...]
    air: air_plan.Aired | None
    clocks: tuple[Clock, ...]
    materials: tuple[Material, ...]
    facts: Facts
    measures: tuple[Measure, ...]
    questions: tuple[Question, ...]
    judgement: Judgement


def attempt(
    survey: Survey,
    fixture: Fixture,
    coating: Sheet,
    sheets: tuple[Sheet, ...],
    knowledge: Knowledge,
    at: datetime,
) -> Attempt:
    """Try one coating on one fixture."""
    parts, assumed = areas(fixture, survey.place.country, knowledge)
    weather, assumed_air = weather_of(survey, fixture)
    job = make_job(survey, fixture, coating, parts, sheets, knowledge)
    cold, warm = weather.low_k - weather.surface_offset_k, weather.high_k
    steps = procedure(job, cold, warm, first_acid_after_s(fixture, job.beside))
    placed = place_steps(survey, steps.steps, weather, at)
    timed = placed.steps
    aired, assumed_setup = _air(job, timed, weather, knowledge) if timed else (None, ())
    six = clocks(job.coating, job.beside.sealant, timed, weather, _bathing_air(aired), knowledge) if timed else ()
    facts = _facts(job, parts, steps, placed, timed, weather, aired, six, sheets, at)
    said = rules.run_all(facts)
    measures = tuple(entry for entry in said if isinstance(entry, Measure))
    questions = tuple(entry for entry in said if isinstance(entry, Question))
    judgement = judge(_findings(said), measures, questions)
    return Attempt(
        job=job,
        weather=weather,
        assumptions=(*assumed, *assumed_air, *assumed_setup),
        procedure=steps,
        placed=placed,
        steps=facts.steps if timed else (),
        air=aired,
        clocks=six,
        materials=facts.materials,
        facts=facts,
        measures=measures,
        questions=questions,
        judgement=judgement,
    )


def _bathing_air(aired: air_plan.Aired | None) -> datetime | None:
    """When the air inside the bath is good again: nobody lies in it before; the horizon when it was not reached."""
    if aired is None:
        return None
    return aired.plan.basin_at or aired.plan.horizon


def _findings(said: tuple[Said, ...]) -> tuple[Finding, ...]:
    return tuple(entry for entry in said if isinstance(entry, Finding))


def _air(
    job: Job, steps: tuple[Step, ...], weather: Weather, knowledge: Knowledge
) -> tuple[air_plan.Aired | None, tuple[Assumption, ...]]:
    let_out = releases(job, steps)
    if not let_out:
        return None, ()
    setup, assumed = air_setup(job.survey, job.basin_m3, weather, knowledge)
    law = knowledge.places.get(job.survey.place.country)
    at_work = job.survey.work.who == "firm" or bool(job.survey.work.paid)
    aired = air_plan.breathe(
        steps, let_out, setup, vapours(let_out, weather, knowledge), law.law_set if law and at_work else None, knowledge
    )
    emitted = {e.step for e in aired.plan.emissions}
    return (aired, assumed) if emitted else (None, assumed)


def _facts(
    job: Job,
    parts: tuple[AreaPart, ...],
    steps: Procedure,
    placed: Placed,
    timed: tuple[Step, ...],
    weather: Weather,
    aired: air_plan.Aired | None,
    six: tuple[Clock, ...],
    sheets: tuple[Sheet, ...],
    at: datetime,
) -> Facts:
    emitting: dict[str, list[str]] = {e.step: [] for e in aired.plan.emissions} if aired else {}
    for emission in aired.plan.emissions if aired else ():
        emitting[emission.step].append(emission.id)
    shown = timed or steps.steps
    shown = tuple(replace(step, emits=tuple(emitting.get(step.id, ()))) for step in shown)
    by_id = {sheet.id: sheet for sheet in sheets}
    wishes: tuple[tuple[Wish, Sheet | None], ...] = tuple((w, by_id.get(w.sheet)) for w in job.survey.wishes)
    volume = job.one_coat.central * job.film.coats
    volatile = job.volatile
    return Facts(
        at=at,
        survey=job.survey,
        fixture=job.fixture,
        knowledge=job.knowledge,
        coating=job.coating,
        method=job.method,
        substrate=substrate(job.fixture),
        sheets=(job.coating, *job.beside.all()),
        wishes=wishes,
        dropped=job.beside.dropped,
        area=parts,
        steps=shown,
        chain=chain(job.fixture, shown, ZoneInfo(job.survey.place.time_zone)),
        materials=_materials(job),
        mixes=steps.mixes,
        timetable=_timetable(timed, placed),
        unplaced=() if timed else placed.clashes,
        weather=_film_weather(job, timed, weather),
        air=aired.plan if aired else None,
        exposures=aired.exposures if aired else (),
        clocks=six,
        volatile_by_voc_kg=_times(volatile.by_voc_kg, volume),
        volatile_by_solids_kg=_times(volatile.by_solids_kg, volume),
        volatile_by_composition_kg=_times(volatile.by_composition_kg, volume),
        outside_range=out_of_range(job, weather, aired is not None),
    )


def _timetable(timed: tuple[Step, ...], placed: Placed) -> Timetable | None:
    """The timetable without the bathroom's states: those follow from the measures."""
    if not timed or timed[0].starts is None or timed[-1].ends is None:
        return None
    return Timetable(
        starts=timed[0].starts, ends=timed[-1].ends, chain=deciding_chain(timed), states=(), clashes=placed.clashes
    )  # fmt: skip


def _times(value: float | None, volume: float) -> float | None:
    return None if value is None else value * volume


def substrate(fixture: Fixture) -> SubstrateCode | None:
    """What the coating lies on: an earlier coat that holds, else the material; None = not told."""
    if seen(fixture, "earlier_coat") == "sound":
        return "old_coating"
    return fixture.material


def _materials(job: Job) -> tuple[Material, ...]:
    made = [quantities.coating_material(job.coating, job.film, job.one_coat, job.area_m2)]
    reasons = {"cleaner": "wash", "filler": "fill_chips", "solvent": "wipe", "sealant": "seal"}
    for sheet in job.beside.all():
        reason = "descale" if sheet is job.beside.descaler else reasons.get(sheet.role, "wash")
        made.append(quantities.other_material(sheet, job.area_m2, reason, job.knowledge))
    return tuple(replace(material, have=material.sheet in job.survey.at_hand) for material in made)


def _film_weather(job: Job, steps: tuple[Step, ...], weather: Weather) -> FilmWeather | None:
    """Extremes from the first coat to the end of the time for which the sheet wants the room held."""
    coats = [step for step in steps if step.act == "coat" and step.starts and step.ends]
    if not coats or coats[0].starts is None or coats[-1].ends is None:
        return None
    hold = views.strictest(job.coating, "hold_temperature_for")
    starts, ends = coats[0].starts, coats[-1].ends + timedelta(seconds=hold.value if hold else 0.0)
    air = weather.extremes("air_temperature", starts, ends)
    surface = weather.extremes("surface_temperature", starts, ends)
    spread = weather.extremes("spread", starts, ends)
    return FilmWeather(
        air_low_k=air[0],
        air_high_k=air[1],
        surface_low_k=surface[0],
        surface_high_k=surface[1],
        humidity_low=weather.humidity,
        humidity_high=weather.humidity,
        spread_low_k=spread[0],
        told=weather.told,
        surface_told=weather.surface_told,
    )
