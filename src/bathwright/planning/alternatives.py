"""What else could be done, and by whom."""

import dataclasses

from bathwright.domain.codes import Who
from bathwright.domain.plan import Alternative
from bathwright.domain.survey import Fixture, Survey
from bathwright.planning.attempt import Attempt
from bathwright.procedure.job import seen

# open stops that a firm with supplied air and trained people can lift; the others stay with the bath
_FOR_A_FIRM = (
    "painter-vapour-limit", "painter-above-immediately-dangerous", "isocyanate-sprayed",
    "no-air-path", "lead-renovation-covered", "lone-work",
)  # fmt: skip
_BATH_ITSELF = ("structural-crack", "floor-flexes", "rust-through", "already-lined")


def deciding(one: Attempt) -> tuple[str, ...]:
    """Codes of the findings that make a no, each once, in the order of telling: open stops, and what must be done and
    cannot."""
    found = [f.code for f in one.judgement.findings if f.effect == "stops" and f.status != "met"]
    found += [f.code for f in one.judgement.findings if f.effect == "must_do" and f.measures and f.status == "open"]
    return tuple(dict.fromkeys(found))


def who(survey: Survey, best: Attempt) -> Who:
    """Who may do it: the household or firm of the survey; a firm when only its means are missing; else nobody."""
    if best.judgement.verdict != "no":
        certified = any(m.act == "certified_firm" for m in best.measures)
        return "firm" if certified or survey.work.who == "firm" else "self"
    return "firm" if all(code in _FOR_A_FIRM for code in deciding(best)) else "neither"


def alternatives(
    fixture: Fixture, best: Attempt, others: tuple[Attempt, ...], without_stripper: tuple[Attempt, ...], fits: bool
) -> tuple[Alternative, ...]:
    """The other systems with what decides; and after a "no" what is left for this bath, the best first.

    without_stripper: the attempts once more without the stripper that was wished, where that is what kills.
    """
    systems = [_system(one) for one in (*(() if fits else (best,)), *others)]
    if best.judgement.verdict != "no":
        return tuple(systems)
    possible = [entry for entry in systems if entry.verdict != "no"]
    ruled_out = [entry for entry in systems if entry.verdict == "no"]
    if without_stripper:
        ruled_out = []
    return (*possible, *_other_stripping(without_stripper), *_instead(fixture, deciding(best)), *ruled_out)


def _system(one: Attempt) -> Alternative:
    job = one.job
    bath = next((clock.at for clock in one.clocks if clock.name == "full_bath"), None)
    refused = one.judgement.verdict == "no"
    return Alternative(
        kind="system",
        system=job.coating.id,
        product=job.coating.product,
        verdict=one.judgement.verdict,
        because=deciding(one) if refused else tuple(f.code for f in one.judgement.findings[:2]),
        vapour_kg=job.volatile.used_kg * job.one_coat.central * job.film.coats if job.mixed.composition_told else None,
        full_bath=None if refused else bath,
    )


def _other_stripping(tries: tuple[Attempt, ...]) -> list[Alternative]:
    """The same bath without the wished stripper, with the coating that then comes out best."""
    if not tries:
        return []
    return [dataclasses.replace(_system(tries[0]), kind="other_stripping")]


def _instead(fixture: Fixture, stops: tuple[str, ...]) -> list[Alternative]:
    """What is left for the bath itself; each kind speaks for itself."""
    body = any(code in _BATH_ITSELF for code in stops)
    found: list[Alternative] = []
    if stops and all(code in _FOR_A_FIRM for code in stops):
        found.append(Alternative(kind="firm_with_supplied_air"))
    if any(code.endswith("-outside-window") or code == "dew-point-spread-too-small" for code in stops):
        found.append(Alternative(kind="warmer_room"))
    if not body and seen(fixture, "chips") in ("few", "none"):
        found.append(Alternative(kind="local_repair"))
    after = (Alternative(kind="leave_as_it_is"), Alternative(kind="replacement"))
    return [*found, *(reversed(after) if body else after)]
