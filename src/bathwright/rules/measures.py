"""Measures that more than one rule asks for: the same id wherever they are asked for, so that they become one."""

from datetime import datetime

from bathwright.domain.codes import Availability, When
from bathwright.domain.findings import Measure
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import DISTURBING, Facts, away_span, equipment, others
from bathwright.rules.say import best_available, measure_id


def leave_home(facts: Facts) -> Measure:
    """Everybody who does not work leaves the home while vapour is in it; no, where somebody cannot, or not so long."""
    starts, ends = away_span(facts)
    stuck = any(person.can_leave is False for person in others(facts) or ())
    feasible = "no" if stuck else _absence(facts, starts, ends)
    return Measure(
        id="leave-home",
        act="leave_home",
        who="others",
        starts=starts,
        ends=ends,
        feasible=feasible,
        when="before_start" if feasible == "ask" else "during",
    )


def sleep_elsewhere(facts: Facts) -> Measure:
    """The one who works is out of the home too when the work rests, nights as well."""
    starts, ends = away_span(facts)
    workers = [person for person in facts.survey.people or () if person.works]
    stuck = any(person.can_leave is False for person in workers)
    feasible = "no" if stuck else _absence(facts, starts, ends)
    return Measure(
        id="sleep-elsewhere",
        act="sleep_elsewhere",
        who="painter",
        starts=starts,
        ends=ends,
        feasible=feasible,
        when="before_start" if feasible == "ask" else "during",
    )


def _absence(facts: Facts, starts: datetime | None, ends: datetime | None) -> Availability:
    """Whether the household can be away so long: as told; an end that is not known is to be asked for."""
    longest = facts.survey.longest_absence
    if longest is None:
        return "have"
    if starts is None or ends is None:
        return "ask"
    return "no" if (ends - starts).total_seconds() > longest else "have"


def stay_out(facts: Facts, who: str = "others") -> Measure:
    """Everybody who does not work stays out of the bathroom until its air is good again."""
    starts, _ = away_span(facts)
    ends = facts.air.back_at if facts.air else None
    name = measure_id("stay_out_of_room", "" if who == "others" else who)
    return Measure(id=name, act="stay_out_of_room", who=who, starts=starts, ends=ends, feasible="have", when="during")


def dust_span(facts: Facts) -> tuple[datetime | None, datetime | None]:
    """From the first dust sheet, or the first sanding or scraping, to the end of the clean-up, or of the last of it."""
    steps = [step for step in facts.steps if step.act in ("contain_dust", "clean_up_dust", *DISTURBING)]
    starts = min((step.starts for step in steps if step.starts), default=None)
    return starts, max((step.ends for step in steps if step.ends), default=None)


def stay_out_of_dust(facts: Facts) -> Measure:
    """Everybody who does not work stays out of the bathroom from the first dust sheet to the end of the clean-up."""
    starts, ends = dust_span(facts)
    return Measure(
        id="stay-out-of-room-dust",
        act="stay_out_of_room",
        who="others",
        what="dust",
        starts=starts,
        ends=ends,
        feasible="have",
        when="during",
    )


def ask_maker(sheet: Sheet, what: str) -> Measure:
    """Ask the maker before the start; silence of a paper is no yes."""
    return Measure(
        id=measure_id("ask_maker", sheet.id, what),
        act="ask_maker",
        who="household",
        what=what,
        feasible="ask",
        when="before_start",
    )


def helper_outside(feasible: Availability) -> Measure:
    """A second adult outside the vapour: at hand, or to be asked before the start."""
    when: When = "during" if feasible == "have" else "before_start"
    return Measure(id="helper-outside", act="helper_outside", who="helper", feasible=feasible, when=when)


def supplied_air(facts: Facts) -> Measure:
    """Supplied air, which a firm brings: as told, else to be asked for."""
    return worn(facts, "supplied_air", "ask", facts.knowledge.number("air.respirator.supplied_air").value)


def worn(facts: Facts, kind: str, otherwise: Availability, factor: float) -> Measure:
    """A mask or supplied air: worn when it is at hand, else to be had before the start."""
    items = equipment(facts, kind)
    feasible = best_available(items, otherwise)
    when: When = "during" if feasible == "have" else "before_start"
    return Measure(
        id=measure_id("wear_mask", kind),
        act="wear_mask",
        who="painter",
        what=kind,
        feasible=feasible,
        when=when,
        factor=factor,
    )


def heat_room(facts: Facts) -> Measure:
    """Heat the room without a flame and tell the new air before the start: this plan was computed for the cold one."""
    feasible = best_available(equipment(facts, "heater"), "buy")
    return Measure(
        id="heat-room", act="heat_room", who="household", what="electric", feasible=feasible, when="before_start"
    )


def wait_for_weather() -> Measure:
    """Choose another day or hour, told anew before the start."""
    return Measure(id="wait-for-weather", act="wait_for_weather", who="household", feasible="have", when="before_start")


def leave_out(sheet_id: str) -> Measure:
    """A product stays out of this job."""
    return Measure(
        id=measure_id("leave_out_product", sheet_id),
        act="leave_out_product",
        who="household",
        what=sheet_id,
        feasible="have",
        when="during",
    )
