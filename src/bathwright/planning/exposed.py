"""What a measure changes: the air inside a mask, never the air outside it."""

import dataclasses
from collections.abc import Iterable

from bathwright.domain.air import Exposure
from bathwright.domain.findings import Measure
from bathwright.domain.values import Band


def with_measures(exposures: tuple[Exposure, ...], measures: Iterable[Measure]) -> tuple[Exposure, ...]:
    """The painter's exposures inside the mask that the measures name; all others as they are."""
    masks = [m for m in measures if m.act == "wear_mask" and m.factor and m.feasible != "no"]
    if not masks:
        return exposures
    best = max(masks, key=lambda m: (m.factor or 1.0, m.id))
    return tuple(_inside(exposure, best) if exposure.who == "painter" else exposure for exposure in exposures)


def _inside(exposure: Exposure, mask: Measure) -> Exposure:
    if exposure.measure == "peak":
        return exposure
    factor = mask.factor or 1.0
    out = exposure.outside
    inside = Band(
        low=out.low / factor,
        central=out.central / factor,
        high=out.high / factor,
        kind=out.kind,
        source=out.source,
        mark=out.mark,
    )
    return dataclasses.replace(
        exposure,
        inside=inside,
        share_central=inside.central / exposure.limit_value,
        share_upper=inside.high / exposure.limit_value,
        protection=mask.what or mask.act,
    )
