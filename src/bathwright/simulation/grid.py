"""The time steps of the air model: minutes while something is let out, then longer and longer."""

from bathwright.domain.record import record

# after the end of a release: (until, step) in seconds
_AFTER = ((3600.0, 120.0), (4 * 3600.0, 300.0), (24 * 3600.0, 1800.0), (5 * 86400.0, 7200.0), (1e12, 21600.0))
_DURING_S = 60.0


@record
class Source:
    """A release on the clock, in seconds from the start of the model."""

    index: int
    starts_s: float
    ends_s: float


def edges(sources: tuple[Source, ...], marks: tuple[float, ...], horizon_s: float) -> list[float]:
    """Edges of the time steps from 0 to the horizon, through every mark; finest near the releases."""
    fixed = sorted({0.0, horizon_s, *(m for m in marks if 0 < m < horizon_s), *(s.starts_s for s in sources),
                    *(s.ends_s for s in sources)})  # fmt: skip
    out = [0.0]
    for until in fixed[1:]:
        while out[-1] < until - 1e-6:
            step = _step(out[-1], sources)
            left = until - out[-1]
            out.append(until if left <= step * 1.5 else out[-1] + step)
    return out


def _step(now: float, sources: tuple[Source, ...]) -> float:
    since = []
    for source in sources:
        if source.starts_s <= now < source.ends_s:
            return _DURING_S
        if source.ends_s <= now:
            since.append(now - source.ends_s)
    if not since:
        return _AFTER[2][1]
    newest = min(since)
    return next(step for until, step in _AFTER if newest < until)
