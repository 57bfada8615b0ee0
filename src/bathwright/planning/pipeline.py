"""The pipeline in plain order: candidates, one attempt each, the best, the frozen plan."""

import hashlib
import json
import platform
from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime
from importlib.metadata import PackageNotFoundError, version

from bathwright import __version__
from bathwright.domain.plan import (
    ClimatePlan,
    Emergency,
    MadeFor,
    MadeWith,
    Options,
    Plan,
    SheetUsed,
    System,
)
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Fixture, Survey
from bathwright.door.writing import plain, private_paths
from bathwright.judge import rank_of
from bathwright.knowledge.book import Knowledge
from bathwright.planning.after import care_rules, waste_rules
from bathwright.planning.alternatives import alternatives, deciding, who
from bathwright.planning.attempt import Attempt, attempt
from bathwright.planning.exposed import with_measures
from bathwright.planning.states import timetable_with_states
from bathwright.planning.trace import cited, traces
from bathwright.planning.wearing import with_wears
from bathwright.procedure.job import with_chemistries
from bathwright.procedure.waits import cure_law
from bathwright.simulation.air import CASES


class NoSystemError(ValueError):
    """No coating to plan with: the names that were asked for are not among the sheets, or there is no sheet."""


def make_plan(survey: Survey, sheets: tuple[Sheet, ...], knowledge: Knowledge, at: datetime, options: Options) -> Plan:
    """The plan for one survey.

    at: "now", aware. Without a system in the options every coating of the sheets is tried; the best is the one with
    the better verdict, then fewer open stops, less vapour, the earlier bath. A plan whose best coating does not fit
    the bath has no system.
    """
    fixture = survey.fixtures[0]
    sheets = with_chemistries(sheets, knowledge)
    tries = _tried(survey, fixture, candidates(sheets, options), sheets, knowledge, at)
    best = tries[0]
    refused = best.judgement.verdict == "no"
    others = tries[1:]
    if refused and options.systems:
        asked = {one.job.coating.id for one in tries}
        rest = [s for s in candidates(sheets, Options()) if s.id not in asked]
        others = (*others, *_tried(survey, fixture, rest, sheets, knowledge, at))
    mild = _without_stripper(survey, fixture, best, sheets, knowledge, at)
    fits = not refused or bool(options.systems)
    return _frozen(survey, fixture, best, others, mild, fits, sheets, knowledge, at, options)


def _tried(
    survey: Survey,
    fixture: Fixture,
    coatings: Iterable[Sheet],
    sheets: tuple[Sheet, ...],
    knowledge: Knowledge,
    at: datetime,
) -> tuple[Attempt, ...]:
    """An attempt for each coating, the best first."""
    return tuple(sorted((attempt(survey, fixture, s, sheets, knowledge, at) for s in coatings), key=_preference))


def _without_stripper(
    survey: Survey, fixture: Fixture, best: Attempt, sheets: tuple[Sheet, ...], knowledge: Knowledge, at: datetime
) -> tuple[Attempt, ...]:
    """The attempts without the wished stripper, when that is what kills; else none."""
    if best.judgement.verdict != "no" or not any(code.startswith("dichloromethane") for code in deciding(best)):
        return ()
    milder = replace(survey, wishes=tuple(wish for wish in survey.wishes if wish.use != "strip"))
    if milder.wishes == survey.wishes:
        return ()
    return _tried(milder, fixture, candidates(sheets, Options()), sheets, knowledge, at)


def candidates(sheets: tuple[Sheet, ...], options: Options) -> tuple[Sheet, ...]:
    """The coatings that are asked for, or all. NoSystemError names what is missing."""
    coatings = {sheet.id: sheet for sheet in sheets if sheet.role == "coating"}
    missing = [name for name in options.systems if name not in coatings]
    known = ", ".join(sorted(coatings)) or "none"
    if missing:
        raise NoSystemError(f"no coating system {', '.join(map(repr, missing))}; known: {known}")
    if not coatings:
        raise NoSystemError("no coating among the sheets; give a folder with one sheet of role coating at least")
    return tuple(coatings[name] for name in dict.fromkeys(options.systems)) if options.systems else (
        tuple(coatings.values()))  # fmt: skip


def _preference(one: Attempt) -> tuple[int, int, float, str, str]:
    stops = [f for f in one.judgement.findings if f.effect == "stops" and f.status != "met"]
    bath = next((c.at for c in one.clocks if c.name == "full_bath" and c.at), None)
    return (
        rank_of(one.judgement.verdict),
        len(stops),
        round(one.job.volatile.used_kg * one.job.one_coat.central * one.job.film.coats, 4),
        bath.isoformat() if bath else "9999",
        one.job.coating.id,
    )


def _frozen(
    survey: Survey,
    fixture: Fixture,
    best: Attempt,
    others: tuple[Attempt, ...],
    mild: tuple[Attempt, ...],
    fits: bool,
    sheets: tuple[Sheet, ...],
    knowledge: Knowledge,
    at: datetime,
    options: Options,
) -> Plan:
    judged = best.judgement
    doable = judged.verdict != "no"  # steps of a plan that says no would be followed all the same
    aired = best.air if fits else None
    exposures = with_measures(aired.exposures, best.measures) if aired else ()
    plan = Plan(
        format="bathwright-plan/1",
        id=plan_id(survey, sheets, knowledge, at, options),
        made_for=MadeFor(survey_id=survey.id, system=best.job.coating.id if fits else None, at=at, options=options),
        survey=survey,
        private=private_paths(Survey),
        system=_system(best) if fits else None,
        verdict=judged.verdict,
        who=who(survey, best),
        findings=judged.findings,
        measures=best.measures,
        questions=best.questions,
        assumptions=best.assumptions,
        alternatives=alternatives(fixture, best, others, mild, fits),
        area=best.job.parts,
        materials=best.materials if doable else (),
        mixes=best.procedure.mixes if doable else (),
        steps=with_wears(best.steps, best.measures) if doable else (),
        timetable=timetable_with_states(best) if doable else None,
        air=aired.plan if aired else None,
        climate=_climate(best, knowledge),
        courses=aired.courses if aired else (),
        exposures=exposures,
        clocks=best.clocks if doable else (),
        care=care_rules(best.clocks) if doable else (),
        waste=waste_rules(best) if doable else (),
        cost=(),
        emergency=_emergency(survey, knowledge),
        traces=traces(best) if fits else (),
        sources=(),
        made_with=_made_with(knowledge),
    )
    return replace(plan, sources=cited(plan))


def plan_id(survey: Survey, sheets: tuple[Sheet, ...], knowledge: Knowledge, at: datetime, options: Options) -> str:
    """Digest over the inputs: survey, sheets, knowledge, options, "now", version. Never over what came out."""
    inputs = {
        "survey": plain(survey),
        "sheets": sorted((sheet.id, sheet.digest) for sheet in sheets),
        "knowledge": knowledge.version,
        "at": plain(at),
        "options": plain(options),
        "version": __version__,
    }
    return hashlib.sha256(json.dumps(inputs, sort_keys=True).encode()).hexdigest()[:16]


def _system(best: Attempt) -> System:
    job = best.job
    used = (job.coating, *job.beside.all())
    return System(
        id=job.coating.id,
        product=job.coating.product,
        family=job.coating.family,
        method=job.method,
        sheets=tuple(
            SheetUsed(
                id=sheet.id,
                product=sheet.product,
                role=sheet.role,
                revision=", ".join(f"{paper.kind}: {paper.revision}" for paper in sheet.papers),
                digest=sheet.digest,
                invented=sheet.invented,
            )
            for sheet in used
        ),
    )


def _climate(best: Attempt, knowledge: Knowledge) -> ClimatePlan:
    weather = best.weather
    law = cure_law(best.job.coating, "full_bath", knowledge)
    return ClimatePlan(
        kind=weather.kind,
        low_k=weather.low_k,
        high_k=weather.high_k,
        humidity=weather.humidity,
        surface_offset_k=weather.surface_offset_k,
        told=weather.told,
        cure_model="equivalent age, Arrhenius" + (", from the sheet's own table" if law.from_table else ""),
        activation_energy_j_mol=law.activation_energy_j_mol,
    )


def _emergency(survey: Survey, knowledge: Knowledge) -> Emergency:
    place = knowledge.places.get(survey.place.country)
    return Emergency(
        country=survey.place.country,
        emergency=place.emergency if place else "",
        poison=place.poison if place else None,
        clean_tap=survey.clean_tap,
        source=place.source if place else "own-judgement",
        mark=place.mark if place else "judgement",
    )


def _made_with(knowledge: Knowledge) -> MadeWith:
    return MadeWith(
        version=__version__,
        knowledge_version=knowledge.version,
        python=platform.python_version(),
        numpy=_version("numpy"),
        engine="numpy",
        tzdata=_version("tzdata"),
        seed=0,
        scenarios=len(CASES),
    )


def _version(package: str) -> str:
    try:
        return version(package)
    except PackageNotFoundError:
        return "unknown"
