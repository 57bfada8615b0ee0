"""A flame, spark or glowing wire near vapour that burns.

What
    A product is opened whose flash point is at or below 100 °F (37.8 °C), or whose vapour may pass a tenth of the share
    that explodes; and something in the bathroom or in a room open to it can light it: pilot, burner, heater, relay.
    Open is what was told as open, and every way of doors, gaps, grilles and air ducts that is not sealed: told as not
    connected does not beat such a way.
    All such things are off before the can is opened, and stay off until the air is good again.
Why
    The vapour is heavier than air, creeps along the floor, and burns back from a pilot light in the next room. An open
    window was no protection in a published burn.
Strength
    Danger, everywhere. (The workplace rule that gives 100 °F and 20 feet binds employers who spray.)
    10 % of substances that burn count, whatever the printed flash point says; where most is water the printed flash
    point decides, without one 15 %: judgement.
    Met when each thing can be off; what cannot be off stops the job; what was not told is asked, and told as not known.
Fires
    "pilot light that can be off", "boiler that must stay on", "wiping alcohol and a gas heater",
    "told as not connected, but the door has a gap".
Stays silent
    "water-borne coating and a pilot light", "electric heating without a spark", "flame in a room with no way to it".
Sources
    cfr-1910-107: 100 °F, 20 feet. cfr-1910-146: a tenth of the lower limit. oregon-osha-2012: the burn.
    own-judgement: products without a printed flash point.
"""

from dataclasses import replace
from datetime import datetime

from bathwright.domain import views
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Amount, Component, Sheet
from bathwright.domain.survey import Appliance
from bathwright.rules.facts import Facts, components, planned_sheets
from bathwright.rules.say import amount, measure_id, question, with_measures, word

CODE = "flame-near-vapour"
SOURCES = ("cfr-1910-107", "cfr-1910-146", "oregon-osha-2012", "own-judgement")

FLASH_POINT_K = 310.93  # 100 °F
# of substances that burn, in a product whose papers give no flash point: judgement
LEAST_SHARE, LEAST_SHARE_IN_WATER, MOSTLY = 0.10, 0.15, 0.5
_PATHS = ("door", "undercut", "grille", "air_handler")
_IN_THE_HEAD = {"acetone", "alcohol", "lacquer-thinner"}
_ASKED = ("coating", "primer", "solvent", "stripper")


def check(facts: Facts) -> tuple[Said, ...]:
    """Stops for what lights vapour, met by what can be off; questions on what was not told."""
    burning = [sheet for sheet in planned_sheets(facts) if _burns(facts, sheet)]
    unknown = [sheet for sheet in planned_sheets(facts) if _burns(facts, sheet) is None]
    if burning or _explosive(facts):
        return _near(facts, burning[0] if burning else facts.coating)
    said: list[Said] = []
    for sheet in unknown:
        worse = _near(facts, sheet)
        asked = question("flash_point", CODE, "burns", worse, "ask_maker", about=(sheet.id,))
        said += (asked,) if asked.blocks else (asked, *worse)
    return tuple(said)


def _burns(facts: Facts, sheet: Sheet) -> bool | None:
    """By flash point, composition and head, the stricter of what is told; None when nothing tells."""
    points = [f.value.value for f in views.facts_of(sheet, "flash_point") if isinstance(f.value, Amount)]
    listed = components(sheet)
    watery = _share(facts, listed, water=True) > MOSTLY
    if points and min(points) <= FLASH_POINT_K:
        return True
    if watery and points:
        return False
    if not watery and not points and _IN_THE_HEAD & set(sheet.chemistries):
        return True
    if listed:
        return _share(facts, listed, water=False) >= (LEAST_SHARE_IN_WATER if watery else LEAST_SHARE)
    return False if points or sheet.role not in _ASKED else None


def _share(facts: Facts, listed: tuple[Component, ...], *, water: bool) -> float:
    """The share of water, at its middle; or of what burns, at its high end."""
    known = [
        (entry, facts.knowledge.substances[e]) for entry in listed if (e := entry.cas) in facts.knowledge.substances
    ]
    if water:
        return sum((entry.low + entry.high) / 2 for entry, substance in known if "water" in substance.tags)
    return sum(
        entry.high
        for entry, substance in known
        if substance.flash_point is not None and substance.flash_point.value <= FLASH_POINT_K
    )


def _explosive(facts: Facts) -> bool:
    """Whether the upper value of the explosive share passes what counts as hazardous."""
    limit = facts.knowledge.number("air.explosion.hazardous_share").value
    return any(e.outside.high > limit for e in facts.exposures if e.measure == "explosive_share")


def _near(facts: Facts, sheet: Sheet) -> tuple[Said, ...]:
    """What the rule says once something that burns is opened."""
    if facts.survey.appliances is None:
        asked = question("appliances", CODE, "worst", (_finding(sheet, None),), "walk_through_rooms")
        return (asked, *_not_known(_finding(sheet, None), None))
    said: list[Said] = []
    for appliance in facts.survey.appliances:
        if appliance.ignition != "none" and _reached(facts, appliance) is not False:
            said += _one(facts, sheet, appliance)
    return tuple(said)


def _reached(facts: Facts, appliance: Appliance) -> bool | None:
    """Whether vapour of the bathroom reaches it: in the bathroom, told as open to it, or by a way that is not sealed.

    None = not told. A way that was told beats a no.
    """
    if appliance.connected_to_bathroom or appliance.space in _open_to_bathroom(facts):
        return True
    return appliance.connected_to_bathroom


def _open_to_bathroom(facts: Facts) -> set[str]:
    """The bathroom and every space to which a way leads that is not sealed, over as many rooms as it takes."""
    found = {space.id for space in facts.survey.spaces if space.kind == "bathroom"}
    ways = [
        set(opening.between)
        for opening in facts.survey.openings or ()
        if opening.kind in _PATHS and opening.state != "sealed" and "outdoors" not in opening.between
    ]
    while more := {space for way in ways if way & found for space in way} - found:
        found |= more
    return found


def _one(facts: Facts, sheet: Sheet, appliance: Appliance) -> tuple[Said, ...]:
    finding = _finding(sheet, appliance)
    if appliance.can_be_off:
        return with_measures(finding, _off(facts, sheet, appliance))
    unsure = _reached(facts, appliance) is None or appliance.ignition is None
    if appliance.can_be_off is None:
        asked = question("can_be_off", CODE, "no", (finding,), "find_valve_and_breaker", about=(appliance.id,))
        return (asked, *_not_known(finding, appliance))
    if unsure:
        asked = question("appliances", CODE, "worst", (finding,), "walk_through_rooms", about=(appliance.id,))
        return (asked, *_not_known(finding, appliance))
    return (finding,)


def _not_known(finding: Finding, appliance: Appliance | None) -> tuple[Said, ...]:
    """The danger is told although its answer is open: somebody makes sure before the start."""
    sure = Measure(
        id=measure_id("flames_off", appliance.id if appliance else ""),
        act="flames_off",
        who="household",
        what=appliance.kind if appliance else None,
        feasible="ask",
        when="before_start",
    )
    return with_measures(replace(finding, effect="must_do", status="unknown"), sure)


def _off(facts: Facts, sheet: Sheet, appliance: Appliance) -> Measure:
    """Off from the first step that opens a product that burns until the air is good again."""
    return Measure(
        id=measure_id("flames_off", appliance.id),
        act="flames_off",
        who="household",
        what=appliance.kind,
        starts=_opened_at(facts, sheet),
        ends=facts.air.back_at if facts.air else None,
        feasible="have",
        when="during",
    )


def _opened_at(facts: Facts, sheet: Sheet) -> datetime | None:
    """Start of the first step that opens a product that burns, may burn, or lets vapour out; None without a clock."""
    opened = {sheet.id} | {other.id for other in planned_sheets(facts) if _burns(facts, other) is not False}
    first = [
        step.starts
        for step in facts.steps
        if step.starts is not None and (step.emits or step.act == "mix_batch" or opened & {u.sheet for u in step.uses})
    ]
    return min(first, default=None)


def _finding(sheet: Sheet, appliance: Appliance | None) -> Finding:
    printed = [f.value.value for f in views.facts_of(sheet, "flash_point") if isinstance(f.value, Amount)]
    points = [point for point in printed if point <= FLASH_POINT_K]  # a higher one is not what decides here
    values = [word("product", sheet.product)]
    values += [amount("flash_point", min(points), "temperature")] if points else []
    values += [word("appliance", appliance.kind)] if appliance else []
    return Finding(
        code=CODE,
        about=(sheet.id, appliance.id) if appliance else (sheet.id,),
        strength="danger",
        consequence="kills",
        effect="stops",
        value=min(points, default=None),
        limit=FLASH_POINT_K,
        kind="temperature",
        basis="printed" if points else None,
        values=tuple(values),
        relax="turn_off_or_other_system",
    )
