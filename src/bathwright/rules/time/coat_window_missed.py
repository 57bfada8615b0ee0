"""The next coat comes too late.

What
    The timetable cannot keep the most time between two coats.
Why
    After its window a coat does not bond to the next one by itself.
Strength
    Maker's demand; binds nobody. The sheet says what then: roughen and wipe (met), strip (nothing cures it), or
    nothing: then the maker is asked.
Fires
    "window missed, the sheet says roughen", "window missed, the sheet says strip".
Stays silent
    "window kept", "another wait missed".
Sources
    The sheet of the coating. common-practice: roughen after the window.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.steps import Clash, Demand
from bathwright.rules.facts import Facts
from bathwright.rules.measures import ask_maker
from bathwright.rules.say import amount, with_measures

CODE = "coat-window-missed"
SOURCES = ("common-practice",)


def check(facts: Facts) -> tuple[Said, ...]:
    """What the sheet asks for, for each window between coats that is missed."""
    demands = {demand.id: demand for step in facts.steps if step.act == "coat" for demand in step.demands}
    said: list[Said] = []
    for clash in facts.timetable.clashes if facts.timetable else ():
        demand = demands.get(clash.demand)
        if demand is not None and demand.most_s is not None and _between_coats(facts, demand):
            said += _say(facts, clash, demand)
    return tuple(said)


def _between_coats(facts: Facts, demand: Demand) -> bool:
    return any(step.id == demand.after and step.act == "coat" for step in facts.steps)


def _say(facts: Facts, clash: Clash, demand: Demand) -> tuple[Said, ...]:
    if demand.on_miss in ("abrade", "abrade_and_wipe"):
        abrade = Measure(id="abrade-and-wipe", act="abrade_and_wipe", who="painter", feasible="have", when="during")
        return with_measures(_finding(clash, demand, "must_do"), abrade)
    if demand.on_miss == "strip":
        return (_finding(clash, demand, "stops"),)
    return with_measures(_finding(clash, demand, "stops"), ask_maker(facts.coating, "recoat"))


def _finding(clash: Clash, demand: Demand, effect: str) -> Finding:
    most = demand.most_s or 0.0
    late = clash.missed_by_s
    return Finding(
        code=CODE,
        about=(clash.step, demand.id),
        strength="maker",
        consequence="ruins",
        effect="stops" if effect == "stops" else "must_do",
        value=None if late is None else most + late,
        limit=most,
        kind="time",
        basis="printed",
        margin=None if late is None or not most else -late / most,
        values=(amount("limit", most, "time"),),
        relax="other_hours",
    )
