"""What else could be done, and by whom."""

from bathwright.domain.codes import Who
from bathwright.domain.plan import Alternative
from bathwright.domain.survey import Fixture, Survey
from bathwright.planning.attempt import Attempt
from bathwright.procedure.job import seen

# open stops that a firm with supplied air and trained people can lift; the others stay with the bath
_FOR_A_FIRM = (
    "painter-vapour-limit", "painter-above-immediately-dangerous", "isocyanate-sprayed", "explosive-share",
    "no-air-path", "lead-renovation-covered", "lone-work",
)  # fmt: skip
_BATH_ITSELF = ("structural-crack", "floor-flexes", "rust-through", "already-lined")


def open_stops(one: Attempt) -> tuple[str, ...]:
    """Codes of the findings that stop and are not met, each once, in the order of telling."""
    return tuple(
        dict.fromkeys(f.code for f in one.judgement.findings if f.effect == "stops" and f.status != "met")
    )  # fmt: skip


def who(survey: Survey, best: Attempt) -> Who:
    """Who may do it: the household or firm of the survey; a firm when only its means are missing; else nobody."""
    if best.judgement.verdict != "no":
        certified = any(m.act == "certified_firm" for m in best.measures)
        return "firm" if certified or survey.work.who == "firm" else "self"
    return "firm" if all(code in _FOR_A_FIRM for code in open_stops(best)) else "neither"


def alternatives(fixture: Fixture, best: Attempt, others: tuple[Attempt, ...], fits: bool) -> tuple[Alternative, ...]:
    """The other systems with what decides; and after a "no" what is left for this bath, the best first."""
    out: list[Alternative] = []
    for one in (*(() if fits else (best,)), *others):
        mass = one.job.volatile.used_kg * one.job.one_coat.central * one.job.film.coats
        bath = next((clock.at for clock in one.clocks if clock.name == "full_bath"), None)
        out.append(
            Alternative(
                kind="system",
                system=one.job.coating.id,
                product=one.job.coating.product,
                verdict=one.judgement.verdict,
                because=open_stops(one) or tuple(f.code for f in one.judgement.findings[:2]),
                vapour_kg=mass,
                full_bath=bath if one.judgement.verdict != "no" else None,
            )
        )
    if best.judgement.verdict == "no":
        out = [*_instead(fixture, best), *out]
    return tuple(out)


def _instead(fixture: Fixture, best: Attempt) -> list[Alternative]:
    stops = open_stops(best)
    found: list[Alternative] = []
    if any(code.startswith("dichloromethane") for code in stops):
        found.append(Alternative(kind="other_stripping", because=stops))
    if stops and all(code in _FOR_A_FIRM for code in stops):
        found.append(Alternative(kind="firm_with_supplied_air", because=stops))
    if any(code.endswith("-outside-window") or code == "dew-point-spread-too-small" for code in stops):
        found.append(Alternative(kind="warmer_room", because=stops))
    if not any(code in _BATH_ITSELF for code in stops) and seen(fixture, "chips") in ("few", "none"):
        found.append(Alternative(kind="local_repair", because=stops))
    if any(code in _BATH_ITSELF for code in stops):
        found.append(Alternative(kind="replacement", because=stops))
    found.append(Alternative(kind="leave_as_it_is", because=stops))
    if not any(alternative.kind == "replacement" for alternative in found):
        found.append(Alternative(kind="replacement", because=stops))
    return found
