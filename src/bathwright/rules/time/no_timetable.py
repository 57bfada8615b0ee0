"""The steps do not fit into the hours.

What
    No day and hour was found for every step: a step is longer than the hours in which work may be done, a mixed batch
    cannot be laid on inside its pot life, or a wait never ends in such cold. (The maker's window of warmth and damp and
    the wait between coats have rules of their own.)
Why
    Without times nobody knows when to stay out, and a coat that waits too long is lost.
Strength
    Good practice; binds nobody. A wait that never ends is met by a warmer room, told anew before the start; nothing
    cures the others but other hours, more hands or another coating.
Fires
    "a step longer than the working hours", "a wait that never ends".
Stays silent
    "every step has its hour".
Sources
    own-computation: the search for hours. own-judgement: no times, no go.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.domain.steps import Clash, Demand
from bathwright.rules.facts import Facts
from bathwright.rules.measures import heat_room
from bathwright.rules.say import with_measures, word

CODE = "no-timetable"
SOURCES = ("own-computation", "own-judgement")


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop for each step without an hour; a wait that never ends is met by a warmer room, told anew."""
    clashes = facts.unplaced or (facts.timetable.clashes if facts.timetable else ())
    demands = {demand.id: demand for step in facts.steps for demand in step.demands}
    acts = {step.id: step.act for step in facts.steps}
    said: list[Said] = []
    for clash in clashes:
        demand = demands.get(clash.demand)
        if demand is not None and (demand.kind == "window" or _between_coats(demand, acts)):
            continue
        cold = demand is not None and demand.law == "cures" and clash.missed_by_s is None
        said += with_measures(_finding(clash), heat_room(facts)) if cold else (_finding(clash),)
    return tuple(said)


def _between_coats(demand: Demand, acts: dict[str, str]) -> bool:
    """A most wait between two coats has a rule of its own; so has the climate."""
    return demand.most_s is not None and acts.get(demand.step) == "coat" == acts.get(demand.after or "")


def _finding(clash: Clash) -> Finding:
    late = clash.missed_by_s
    return Finding(
        code=CODE,
        about=(clash.step, clash.demand),
        strength="good_practice",
        consequence="ruins",
        effect="stops",
        value=late,
        kind="time" if late is not None else None,
        values=(word("step", clash.step), word("demand", clash.demand)),
        relax="other_hours",
    )
