"""People or animals in the home who must stay further away than others.

What
    While vapour or dust that holds lead, or may hold it, is let out, and somebody told in the survey is a child under
    six, pregnant, has asthma or an allergy to such products, a heart illness, or is a bird: they are away. Out of the
    home while a solvent-borne or sprayed coating, or air above the values for everybody, makes it unfit; else out of
    the bathroom. Out of the bathroom from the first dust sheet to the clean-up. Whoever of them would do the work lets
    somebody else do it (where only dust is let out: who is pregnant).
Why
    They are harmed by less, and birds die first. Some effects last for life.
Strength
    Advice of public bodies and judgement; binds nobody. Whose trait it is stays private.
Fires
    "a small child, solvent-borne coating", "a bird, water-borne coating", "old glaze is sanded, a small child",
    "the one who works is pregnant".
Stays silent
    "adults only", "a child, and nothing but water leaves".
Sources
    cdc-mmwr-2021-70-43: lead and children. niosh-96-111 and joeh-2013-10-597: allergy, bystanders.
    own-judgement: out of the home or of the room.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.rules.dust import lead_dust
from bathwright.rules.facts import (
    Facts,
    is_solvent_borne,
    lets_vapour_out,
    others,
    people_with,
    planned_sheets,
)
from bathwright.rules.measures import leave_home, stay_out, stay_out_of_dust
from bathwright.rules.say import question, with_measures

CODE = "people-kept-away"
SOURCES = ("cdc-mmwr-2021-70-43", "niosh-96-111", "joeh-2013-10-597", "own-judgement")

_SENSITIVE = ("infant", "child_under_6", "pregnant", "asthma", "sensitised", "heart", "bird")
_TO_LEAD = ("infant", "child_under_6", "pregnant")


def check(facts: Facts) -> tuple[Said, ...]:
    """Who is away from what, and who should not do the work."""
    vapour, dust = lets_vapour_out(facts), lead_dust(facts)
    if not vapour and not dust:
        return ()
    people = others(facts)
    if people is None:
        return (question("people", CODE, "worst", (), "ask_each"),)
    said: list[Said] = []
    if any(not person.works for person in people_with(facts, *_SENSITIVE)):
        away = [*([_away(facts)] if vapour else []), *([stay_out_of_dust(facts)] if dust else [])]
        said += with_measures(_finding("must_do", "people"), *away)
    if any(person.works for person in people_with(facts, "child", *(_SENSITIVE if vapour else _TO_LEAD))):
        said += with_measures(_finding("stops", "painter"), _somebody_else())
    untold = [p for p in facts.survey.people or () if p.traits is None or p.age_band is None]
    return (*said, *([question("people", CODE, "worst", (), "ask_each")] if untold else []))


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
