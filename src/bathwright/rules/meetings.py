"""What the rules on pairs share: which products would meet, and whether enough lies between them.

The sequences are those of the pairs in the knowledge. Two rinses, three rinses with pH strip and dry surface, a day
between: judgement, after a case in which one rinse between acid and bleach filled a ward (cdc-mmwr-1991-40-36).
"""

from collections.abc import Callable
from itertools import combinations

from bathwright.domain.codes import Consequence, Effect
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.record import record
from bathwright.domain.sheet import Sheet
from bathwright.knowledge.records import Pair
from bathwright.rules.facts import Facts, Link, planned_sheets, wished_sheets
from bathwright.rules.measures import leave_out
from bathwright.rules.say import question, with_measures, word

CHLORINE = frozenset({"bleach", "chlorinated-abrasive"})
ACIDS = frozenset({"hydrochloric-acid", "vinegar", "descaler", "oxalic-acid", "fluoride-acid"})
NITROGEN = frozenset({"ammonia", "quat", "amine-hardener"})
SOLVENTS = frozenset({"acetone", "alcohol", "lacquer-thinner", "mineral-spirits", "benzyl-alcohol", "nmp"})
FEW_RINSES, FULL_RINSES, DAY_H = 2, 3, 24.0
_WORST = ("bleach", "hydrochloric-acid", "descaler", "ammonia", "quat")
_SERIOUS = ("kills", "serious")
Wanted = Callable[[Pair], bool]
_UNKNOWN = Link(
    chemistries=("unknown-cleaner",), on="surface", at=None, step=None, rinses_since=None, hours_since=None,
    ph_checked=False, dry=False,
)  # fmt: skip


@record
class Meeting:
    """Two links on one surface or drain with too little between them. `known`: all that lies between was told."""

    first: Link
    second: Link
    pair: Pair
    known: bool


def check_family(code: str, partners: frozenset[str], facts: Facts) -> tuple[Said, ...]:
    """Findings for chlorine releasers that meet one of the partners, for dropped products, and what must be asked."""
    return check_pairs(code, lambda pair: chlorine_with(partners, pair), facts)


def chlorine_with(partners: frozenset[str], pair: Pair) -> bool:
    """Whether a pair is a chlorine releaser and one of the partners."""
    return (pair.a in CHLORINE and pair.b in partners) or (pair.b in CHLORINE and pair.a in partners)


def check_pairs(code: str, wanted: Wanted, facts: Facts) -> tuple[Said, ...]:
    """Findings for the wanted pairs that meet, for products that stay out of the job, and what must be asked."""
    said: list[Said] = list(_dropped(code, wanted, facts))
    told = facts.fixture.used_lately is not None
    chain = facts.chain if told else tuple(link for link in facts.chain if link.step is not None)
    for meeting in _worst_of_each(_meetings(chain, wanted, facts)):
        said += _say(code, meeting, facts)
    if not told:
        said += _not_told(code, chain, wanted, facts)
    return tuple(said)


def _not_told(code: str, chain: tuple[Link, ...], wanted: Wanted, facts: Facts) -> tuple[Said, ...]:
    """What was used before is not told: judged as a cleaner that nobody can name."""
    drain = Link(
        chemistries=_UNKNOWN.chemistries, on="drain", at=None, step=None, rinses_since=None, hours_since=None,
        ph_checked=False, dry=False,
    )  # fmt: skip
    found = [m for m in _meetings((_UNKNOWN, drain, *chain), wanted, facts) if m.first.step is None]
    if not found:
        return ()
    worse = tuple(_finding(code, meeting) for meeting in found if not _cured(meeting, facts))
    return (question("used_lately", code, "unknown-cleaner", worse, "look_at_bottles", about=(facts.fixture.id,)),)


def _say(code: str, meeting: Meeting, facts: Facts) -> tuple[Said, ...]:
    finding = _finding(code, meeting)
    if _cured(meeting, facts):
        return with_measures(finding, _wait())
    if meeting.pair.severity not in _SERIOUS:
        return with_measures(finding, _rinse())
    if not meeting.known:
        return (
            question("used_lately", code, "rinses_not_told", (finding,), "ph_strip", about=(facts.fixture.id,)),
        )  # fmt: skip
    return (finding,)


def _wait() -> Measure:
    return Measure(id="rinse-and-wait", act="rinse_and_wait", who="painter", feasible="have", when="during")


def _rinse() -> Measure:
    return Measure(id="rinse-between", act="rinse_between", who="painter", feasible="have", when="during")


def _finding(code: str, meeting: Meeting) -> Finding:
    kinds: dict[str, Consequence] = {"kills": "kills", "serious": "harms"}
    effect: Effect = "stops" if meeting.pair.severity in _SERIOUS else "must_do"
    about = (meeting.second.on, *([meeting.second.step] if meeting.second.step else []))
    return Finding(
        code=code,
        about=about,
        strength="danger",
        consequence=kinds.get(meeting.pair.severity, "harms"),
        effect=effect,
        values=(
            word("first", _called(meeting.first, meeting.pair)),
            word("second", _called(meeting.second, meeting.pair)),
            word("makes", meeting.pair.makes),
            word("sequence", meeting.pair.sequence),
        ),
        relax="leave_out_or_wait",
        sources=(meeting.pair.source,),
        marks=(meeting.pair.mark,),
    )


def _called(link: Link, pair: Pair) -> str:
    """What the household calls the product: the chemistry as told, or "unknown-cleaner"."""
    return next((code for code in link.chemistries if code in (pair.a, pair.b)), link.chemistries[0])


def _meetings(chain: tuple[Link, ...], wanted: Wanted, facts: Facts) -> list[Meeting]:
    found = []
    for place in dict.fromkeys(link.on for link in chain):
        here = [link for link in chain if link.on == place]
        for i, j in combinations(range(len(here)), 2):
            if here[j].step is None:
                continue  # both lie in the past: nothing that this plan does brings them together
            if _same_product(here[i], here[j]):
                continue
            pair = _worst_pair(_spread(here[i]), _spread(here[j]), wanted, facts)
            if pair is not None and not _enough(pair.sequence, here[i], here[i + 1 : j + 1]):
                known = all(link.rinses_since is not None for link in here[i + 1 : j + 1])
                found.append(Meeting(first=here[i], second=here[j], pair=pair, known=known))
    return found


def _same_product(first: Link, second: Link) -> bool:
    """Whether two steps of the plan use what is the same for chemistry: its own parts are meant to be together."""
    if first.step is None or "unknown-cleaner" in first.chemistries:
        return False
    return set(first.chemistries) == set(second.chemistries)


def _spread(link: Link) -> tuple[str, ...]:
    """The chemistries of a link; a cleaner that nobody can name counts as bleach, acid, ammonia and quat at once."""
    return tuple(name for code in link.chemistries for name in (_WORST if code == "unknown-cleaner" else (code,)))


def _worst_pair(first: tuple[str, ...], second: tuple[str, ...], wanted: Wanted, facts: Facts) -> Pair | None:
    order = ("kills", "serious", "irritant")
    pairs = [facts.knowledge.pairs.get(frozenset((a, b))) for a in first for b in second]
    known = [pair for pair in pairs if pair is not None and pair.severity in order and wanted(pair)]
    return min(known, key=lambda pair: (order.index(pair.severity), pair.a, pair.b), default=None)


def _enough(sequence: str, first: Link, between: list[Link]) -> bool:
    """Whether what lies between the two, summed over the links, is what the sequence asks for."""
    rinses = sum(link.rinses_since or 0 for link in between)
    full = rinses >= FULL_RINSES and any(link.ph_checked for link in between) and any(link.dry for link in between)
    return {
        "any_order": True,
        "rinse": rinses >= FEW_RINSES,
        "flush_and_dry": full,
        "another_day": full and _hours(first, between) >= DAY_H,
    }.get(sequence, False)


def _hours(first: Link, between: list[Link]) -> float:
    last = between[-1]
    if first.at is not None and last.at is not None:
        return (last.at - first.at).total_seconds() / 3600
    return sum(link.hours_since or 0.0 for link in between)


def _worst_of_each(meetings: list[Meeting]) -> list[Meeting]:
    """One meeting for what came first and pair: told where the two come closest; surface and drain once.

    What lies between only grows with the steps, so the first step that brings them together is the worst.
    """
    seen: dict[tuple[str | None, tuple[str, ...], str, str], Meeting] = {}
    for meeting in meetings:
        first = meeting.first
        seen.setdefault((first.step, first.chemistries, meeting.pair.a, meeting.pair.b), meeting)
    return list(seen.values())


def _cured(meeting: Meeting, facts: Facts) -> bool:
    """Whether the steps hold the flush, and the day where it takes one, between the two."""
    if meeting.pair.sequence == "never":
        return False
    ids = [step.id for step in facts.steps]
    if meeting.second.step not in ids:
        return False
    end = ids.index(meeting.second.step)
    start = ids.index(meeting.first.step) + 1 if meeting.first.step in ids else 0
    between = {step.id: step.act for step in facts.steps[start:end]}
    if "rinse_and_wait" in between.values():
        return True
    flushes = [name for name, act in between.items() if act == "flush_and_check"]
    return bool(flushes) and (meeting.pair.sequence != "another_day" or _day_after(meeting, flushes, facts))


def _day_after(meeting: Meeting, flushes: list[str], facts: Facts) -> bool:
    step = next(step for step in facts.steps if step.id == meeting.second.step)
    return any(d.after in flushes and (d.least_s or 0.0) >= DAY_H * 3600 for d in step.demands)


def _dropped(code: str, wanted: Wanted, facts: Facts) -> tuple[Said, ...]:
    """A wished product that has no place in the steps and would have met a cleaner of this job, or what was used."""
    said: list[Said] = []
    used = {sheet.id for sheet in planned_sheets(facts)}
    for sheet in (s for s in wished_sheets(facts) if s.id not in used):
        found = _worst_in_job(sheet, wanted, facts)
        if found is not None:
            said += with_measures(_of_dropped(code, sheet, found), leave_out(sheet.id))
    return tuple(said)


def _worst_in_job(sheet: Sheet, wanted: Wanted, facts: Facts) -> Pair | None:
    cleaning = {step.id for step in facts.steps if step.phase in ("strip_down", "clean")} | {None}
    planned = tuple(name for link in facts.chain if link.step in cleaning for name in _spread(link))
    pair = _worst_pair(sheet.chemistries, planned, wanted, facts)
    return pair if pair is not None and pair.severity in _SERIOUS else None


def _of_dropped(code: str, sheet: Sheet, pair: Pair) -> Finding:
    own = pair.a if pair.a in sheet.chemistries else pair.b
    other = pair.b if own == pair.a else pair.a
    return Finding(
        code=code,
        about=(sheet.id,),
        strength="danger",
        consequence="kills" if pair.severity == "kills" else "harms",
        effect="stops",
        values=(word("first", own), word("second", other), word("makes", pair.makes)),
        relax="leave_out_or_wait",
        sources=(pair.source,),
        marks=(pair.mark,),
    )
