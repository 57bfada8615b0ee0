"""What everybody else in the home breathes, against values for everybody.

What
    Each substance and the sum of all in the rest of the home, at the upper value, as if people stayed. Where it passes
    the hour or day value for everybody, the others leave the home until it is below, and whoever works does not sleep
    or stay there off duty either.
Why
    Limits for workers are for the healthy, for a shift. Children, the sick and sleepers need the lower ones.
Strength
    Advice of public bodies, a stand-in where no public value is known; binds nobody.
    Met when everybody can leave for so long; somebody who cannot, or a span longer than the household can be away,
    stops the job; not told is asked and blocks.
Fires
    "three times the hour value, everybody can leave", "somebody cannot leave".
Stays silent
    "half of the hour value".
Sources
    minnesota-ihb-2023 and uba-air-guide-values: the values. own-judgement: stand-ins, the upper value counts.
"""

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.survey import Person
from bathwright.rules.facts import Facts, name_of, others
from bathwright.rules.measures import leave_home, sleep_elsewhere, stay_out
from bathwright.rules.say import amount, margin_upper, question, with_measures, word

CODE = "others-vapour-limit"
SOURCES = ("minnesota-ihb-2023", "uba-air-guide-values", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for air that others may not breathe, met by leaving."""
    over = [e for e in facts.exposures if e.who == "others" and e.outside.high > e.limit_value]
    if not over and (facts.air is None or facts.air.away_from is None):
        return ()
    worst = max(over, key=lambda e: e.outside.high / e.limit_value, default=None)
    finding = _finding(facts, worst)
    people = others(facts)
    if people is None:
        return (question("people", CODE, "cannot_leave", (finding,), "ask_each"),)
    if any(person.can_leave is False for person in people):
        return (finding,)
    said = with_measures(finding, *_out(facts, alone=not people))
    concerned = people or _living_workers(facts)
    if any(person.can_leave is None for person in concerned):
        return (*said, question("can_leave", CODE, "cannot_leave", (finding,), "ask_each"))
    return said


def _living_workers(facts: Facts) -> tuple[Person, ...]:
    """Who works and lives there; a firm goes home."""
    if facts.survey.work.who == "firm":
        return ()
    return tuple(person for person in facts.survey.people or () if person.works)


def _out(facts: Facts, *, alone: bool) -> tuple[Measure, ...]:
    """Others out of the home; the painter too, off duty, unless a firm works; in an empty home the room is closed."""
    own = () if facts.survey.work.who == "firm" else (sleep_elsewhere(facts),)
    if alone:
        return own or (stay_out(facts),)
    return (leave_home(facts), *own)


def _finding(facts: Facts, worst: Exposure | None) -> Finding:
    if worst is None:
        return Finding(
            code=CODE, about=("others",), strength="advice", consequence="harms", effect="stops", relax="leave_home"
        )
    upper, limit = worst.outside.high, worst.limit
    return Finding(
        code=CODE,
        about=("others", worst.substance, worst.measure),
        strength="advice",
        consequence="harms",
        effect="stops",
        value=upper,
        limit=worst.limit_value,
        kind="share" if worst.substance == "mixture" else "concentration",
        basis=worst.basis,
        margin=margin_upper(upper, worst.limit_value),
        values=(
            word("substance", name_of(facts, worst.substance)),
            word("measure", worst.measure),
            amount("times", upper / worst.limit_value, None),
        ),
        relax="leave_home",
        sources=(limit.source,) if limit else (),
        marks=(limit.mark,) if limit else (),
    )
