"""The range in which a published model holds, as data beside the function.

A model module has `VALIDITY: dict[str, tuple[Validity, ...]]`, keyed by the function's name. A name or a
quantity that is missing there has an unknown range. It never means "everywhere".
"""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Validity:
    """One quantity of a model and the closed range [low, high] in which the model holds.

    `quantity` is the name of the function's parameter, `unit` its SI unit ("1" for a share), `source` the id
    of the source that states the range, `mark` how well that is known (verified, secondary, memory, own,
    judgement, common_practice).
    """

    quantity: str
    low: float
    high: float
    unit: str
    source: str
    mark: str

    def holds(self, value: float) -> bool:
        """Tell whether the value lies in the range; nan does not."""
        return self.low <= value <= self.high


def outside(validities: Iterable[Validity], **values: float) -> tuple[Validity, ...]:
    """Return the ranges that the values leave, in the order given.

    Each value is named after the quantity, in its SI unit. A quantity that has a range but no value is
    returned too: what is not known cannot be inside. See `unbounded` for the values that have no range.
    """
    return tuple(v for v in validities if v.quantity not in values or not v.holds(values[v.quantity]))


def unbounded(validities: Iterable[Validity], **values: float) -> tuple[str, ...]:
    """Return the names of the values for which no range is known, sorted. Unknown is not "everywhere"."""
    known = {v.quantity for v in validities}
    return tuple(sorted(name for name in values if name not in known))
