"""A flame, spark or glowing wire near vapour that burns.

What
    A product is opened whose flash point is at or below 100 °F (37.8 °C), or whose vapour may pass a tenth of the share
    that explodes; and something in the bathroom or in a room open to it can light it: pilot, burner, heater, relay.
    All such things are off before the can is opened, and stay off until the air is good again.
Why
    The vapour is heavier than air, creeps along the floor, and burns back from a pilot light in the next room. An open
    window was no protection in a published burn.
Strength
    Danger, everywhere. (The workplace rule that gives 100 °F and 20 feet binds employers who spray.)
    Without a printed flash point 10 % of substances that burn count, in water 15 %: judgement.
    Met when each thing can be off; what cannot be off stops the job; what was not told is asked, and told as not known.
Fires
    "pilot light that can be off", "boiler that must stay on", "wiping alcohol and a gas heater".
Stays silent
    "water-borne coating and a pilot light", "electric heating without a spark", "flame in a room with no way to it".
Sources
    cfr-1910-107: 100 °F, 20 feet. cfr-1910-146: a tenth of the lower limit. oregon-osha-2012: the burn.
    own-judgement: products without a printed flash point.
"""

from dataclasses import replace

from bathwright.domain import views
from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.sheet import Amount, Sheet
from bathwright.domain.survey import Appliance
from bathwright.rules.facts import Facts, planned_sheets
from bathwright.rules.say import amount, measure_id, question, with_measures, word

CODE = "flame-near-vapour"
SOURCES = ("cfr-1910-107", "cfr-1910-146", "oregon-osha-2012", "own-judgement")

FLASH_POINT_K = 310.93  # 100 °F
# of substances that burn, in a product whose papers give no flash point: judgement
LEAST_SHARE, LEAST_SHARE_IN_WATER = 0.10, 0.15
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
    """By its flash point; without one by chemistry and composition; None when nothing tells."""
    points = [f.value.value for f in views.facts_of(sheet, "flash_point") if isinstance(f.value, Amount)]
    if points:
        return min(points) <= FLASH_POINT_K
    if _IN_THE_HEAD & set(sheet.chemistries):
        return True
    listed = [entry for part in sheet.parts for entry in part.composition or ()]
    if not listed:
        return None if sheet.role in _ASKED else False
    known = facts.knowledge.substances
    watery = any(entry.cas in known and "water" in known[entry.cas].tags for entry in listed)
    burning = sum(
        entry.high
        for entry in listed
        if entry.cas in known and (point := known[entry.cas].flash_point) and point.value <= FLASH_POINT_K
    )
    return burning >= (LEAST_SHARE_IN_WATER if watery else LEAST_SHARE)


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
    """Whether vapour of the bathroom reaches it: in the bathroom, or told as open to it. None = not told."""
    rooms = [space.id for space in facts.survey.spaces if space.kind == "bathroom"]
    return True if appliance.space in rooms else appliance.connected_to_bathroom


def _one(facts: Facts, sheet: Sheet, appliance: Appliance) -> tuple[Said, ...]:
    finding = _finding(sheet, appliance)
    if appliance.can_be_off:
        return with_measures(finding, _off(facts, appliance))
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


def _off(facts: Facts, appliance: Appliance) -> Measure:
    return Measure(
        id=measure_id("flames_off", appliance.id),
        act="flames_off",
        who="household",
        what=appliance.kind,
        ends=facts.air.back_at if facts.air else None,
        feasible="have",
        when="during",
    )


def _finding(sheet: Sheet, appliance: Appliance | None) -> Finding:
    points = [f.value.value for f in views.facts_of(sheet, "flash_point") if isinstance(f.value, Amount)]
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
