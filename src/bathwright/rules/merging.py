"""From what single rules say to what all say: sources filled in, the same measure and the same question once."""

from dataclasses import replace
from datetime import datetime

from bathwright import sources
from bathwright.domain.findings import Finding, Measure, Question, Said
from bathwright.rules.say import hardest

_WHEN = ("before_start", "during", "after")


def cited(finding: Finding, source_ids: tuple[str, ...]) -> Finding:
    """The finding with the rule's sources behind its own, and the mark of each."""
    known = sources.load()
    ids = tuple(dict.fromkeys((*finding.sources, *source_ids)))
    own = dict(zip(finding.sources, finding.marks, strict=False))
    marks = tuple(own.get(name) or (known[name].mark if name in known else "memory") for name in ids)
    return replace(finding, sources=ids, marks=marks)  # type: ignore[arg-type]


def merged(said: list[Said]) -> tuple[Said, ...]:
    """Findings as told; measures once by id, questions once by what they ask about, each at its first place."""
    out: dict[object, Said] = {}
    for entry in said:
        key = _key(entry)
        known = out.get(key)
        if isinstance(known, Measure) and isinstance(entry, Measure):
            out[key] = _one_measure(known, entry)
        elif isinstance(known, Question) and isinstance(entry, Question):
            out[key] = _one_question(known, entry)
        else:
            out[key] = entry
    return tuple(out.values())


def _key(entry: Said) -> object:
    if isinstance(entry, Measure):
        return ("measure", entry.id)
    if isinstance(entry, Question):
        return ("question", entry.asks, entry.about)
    return entry


def _one_measure(one: Measure, other: Measure) -> Measure:
    """Earliest start, latest end, hardest availability, earliest when, done only if both are, strongest factor."""
    factors = [factor for factor in (one.factor, other.factor) if factor is not None]
    return replace(
        one,
        starts=_outer(one.starts, other.starts, earliest=True),
        ends=_outer(one.ends, other.ends, earliest=False),
        feasible=hardest(one.feasible, other.feasible),
        when=min(one.when, other.when, key=_WHEN.index),
        done=one.done and other.done,
        effect_on=tuple(dict.fromkeys((*one.effect_on, *other.effect_on))),
        factor=max(factors, default=None),
        values=tuple(dict.fromkeys((*one.values, *other.values))),
    )


def _outer(one: datetime | None, other: datetime | None, *, earliest: bool) -> datetime | None:
    """The outer of two instants. None = not known, so the outer one is not known either."""
    if one is None or other is None:
        return None
    return min(one, other) if earliest else max(one, other)


def _one_question(one: Question, other: Question) -> Question:
    """The one that blocks, else the first."""
    return other if other.blocks and not one.blocks else one
