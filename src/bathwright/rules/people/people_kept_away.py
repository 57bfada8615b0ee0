"""People or animals in the home who must stay further away than others.

What
    While vapour or lead dust is let out, and somebody told in the survey is a child under six, pregnant, has asthma or
    an allergy to such products, a heart illness, or is a bird: they are away. Out of the home while a solvent-borne or
    sprayed coating, or air above the values for everybody, makes it unfit; else out of the bathroom. Whoever of them
    would do the work lets somebody else do it.
Why
    They are harmed by less, and birds die first. Some effects last for life.
Strength
    Advice of public bodies and judgement; binds nobody. Whose trait it is stays private.
Fires
    "a small child, solvent-borne coating", "a bird, water-borne coating", "the one who works is pregnant".
Stays silent
    "adults only", "a child, and nothing but water leaves".
Sources
    cdc-mmwr-2021-70-43: lead and children. niosh-96-111 and joeh-2013-10-597: allergy, bystanders.
    own-judgement: out of the home or of the room.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.facts import (
    Facts,
    disturbs,
    is_solvent_borne,
    lets_vapour_out,
    may_be_glazed,
    observed,
    others,
    people_with,
    planned_sheets,
)
from bathwright.rules.measures import leave_home, stay_out
from bathwright.rules.say import question, with_measures

CODE = "people-kept-away"
SOURCES = ("cdc-mmwr-2021-70-43", "niosh-96-111", "joeh-2013-10-597", "own-judgement")

_SENSITIVE = ("infant", "child_under_6", "pregnant", "asthma", "sensitised", "heart", "bird")


def check(facts: Facts) -> tuple[Said, ...]:
    """Who is away from what, and who should not do the work."""
    if not _something_in_air(facts):
        return ()
    people = others(facts)
    if people is None:
        return (question("people", CODE, "worst", (), "ask_each"),)
    told = people_with(facts, *_SENSITIVE)
    said: list[Said] = []
    if any(not person.works for person in told):
        said += with_measures(_finding("must_do", "people"), _away(facts))
    if any(person.works for person in told):
        said += with_measures(_finding("stops", "painter"), _somebody_else())
    untold = [p for p in facts.survey.people or () if p.traits is None or p.age_band is None]
    return (*said, *([question("people", CODE, "worst", (), "ask_each")] if untold else []))


def _something_in_air(facts: Facts) -> bool:
    found = "found" in (observed(facts.fixture, "lead_xrf"), observed(facts.fixture, "lead_wipe_lab"))
    return lets_vapour_out(facts) or (found and may_be_glazed(facts) and disturbs(facts))


def _away(facts: Facts) -> Measure:
    """Out of the home for solvent, spray or air above the values for everybody; else out of the bathroom."""
    far = facts.method in ("spray", "aerosol") or (facts.air is not None and facts.air.away_from is not None)
    far = far or any(is_solvent_borne(facts, s) and s.role in ("coating", "primer") for s in planned_sheets(facts))
    return leave_home(facts) if far else stay_out(facts)


def _somebody_else() -> Measure:
    return Measure(
        id="another-person-works", act="another_person_works", who="household", feasible="ask", when="before_start"
    )


def _finding(effect: str, about: str) -> Finding:
    return Finding(
        code=CODE,
        about=(about,),
        strength="advice",
        consequence="harms",
        effect="stops" if effect == "stops" else "must_do",
        relax="leave_home",
    )
