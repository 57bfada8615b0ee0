"""What was used on the fixture before and what the steps use, as one chain per surface and drain."""

from datetime import datetime
from zoneinfo import ZoneInfo

from bathwright.domain.steps import Step
from bathwright.domain.survey import Fixture, ProductUse
from bathwright.procedure.job import Beside
from bathwright.rules.facts import Link
from bathwright.schedule.hours import to_utc

_DAY_S = 86400.0
_HARMLESS = ("dish-detergent", "water")


def first_acid_after_s(fixture: Fixture, beside: Beside) -> float | None:
    """Seconds that must lie between the first flush and an acid or bleach, for what was used before; None = nothing.

    Not told counts as an unknown cleaner: a day. A product that is no cleaner of concern needs no flush.
    """
    used = fixture.used_lately
    if used is not None and not [product for product in used if product.chemistry not in _HARMLESS]:
        return None
    return _DAY_S if beside.descaler or beside.bleach else 0.0


_DRAINED = ("wash_detergent", "treat_mould", "descale")


def chain(fixture: Fixture, steps: tuple[Step, ...], zone: ZoneInfo) -> tuple[Link, ...]:
    """Links in order of use: history first, then the steps; what is washed off goes down the drain too.

    `rinses_since`, `ph_checked`, `dry`, `hours_since` tell what lies between a link and the product before it. What
    was used lately is told on the wall clock of the home, `zone`.
    """
    out = [_past(product) for product in fixture.used_lately or ()]
    between = _Between(fixture, zone)
    for step in steps:
        chemistries = tuple(code for used in step.uses for code in used.chemistry)
        if chemistries:
            places = ("surface", "drain") if step.act in _DRAINED else ("surface",)
            out += [between.link(chemistries, place, step) for place in places]
            between.used(step)
        between.washed(step)
    return tuple(out)


class _Between:
    """What has been done since the last product."""

    def __init__(self, fixture: Fixture, zone: ZoneInfo) -> None:
        past = fixture.used_lately or ()
        self.rinses = min((product.rinses or 0 for product in past), default=0)
        self.ph_checked = bool(past) and all(product.ph_checked for product in past)
        self.dry = False
        known = [to_utc(product.at, zone) for product in past if product.at]
        self.since: datetime | None = max(known) if past and len(known) == len(past) else None

    def link(self, chemistries: tuple[str, ...], on: str, step: Step) -> Link:
        """The link of a step."""
        hours = (step.starts - self.since).total_seconds() / 3600 if self.since and step.starts else None
        return Link(
            chemistries=chemistries, on=on, at=step.starts, step=step.id, rinses_since=self.rinses, hours_since=hours,
            ph_checked=self.ph_checked, dry=self.dry,
        )  # fmt: skip

    def used(self, step: Step) -> None:
        """A product was used: count from here."""
        self.rinses, self.ph_checked, self.dry, self.since = 0, False, False, step.ends

    def washed(self, step: Step) -> None:
        """Rinses, pH strip, drying of a step; a first flush dates what was used at an unknown time before it."""
        left = step.leaves
        if left is None or left.last:
            return
        self.rinses += left.rinses
        self.ph_checked = self.ph_checked or left.ph_checked
        self.dry = self.dry or left.dry
        if self.since is None and left.ph_checked:
            self.since = step.ends


def _past(product: ProductUse) -> Link:
    return Link(
        chemistries=(product.chemistry,), on=product.on, at=None, step=None, rinses_since=None, hours_since=None,
        ph_checked=bool(product.ph_checked), dry=False,
    )  # fmt: skip
