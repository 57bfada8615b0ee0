"""A fan that pulls the flue gas of a burner back into the home.

What
    The home has a burner with a natural-draught flue (or one whose flue was not told), and the plan runs a fan that
    blows outdoors. The burner is off, gas cock shut, for as long as the fan runs; it is lit again when the fan is off
    and the flue draws.
Why
    A fan lowers the pressure in the home by a few pascals. That turns the draught of such a flue, and carbon monoxide
    comes into the rooms. Nobody smells it.
Strength
    Danger, everywhere. Met when the burner can be off; one that cannot be off stops the job; not told is asked. How
    many pascals this fan makes in this home is not computed in this edition.
Fires
    "boiler with an open flue that can be off", "gas heater that cannot be off", "boiler whose flue was not told",
    "no word about burners".
Stays silent
    "electric heater", "sealed boiler", "no fan in the plan".
Sources
    bpi-depressurisation: 2 to 5 Pa are enough (memory). cgsb-51-71: the test for spillage.
"""

from bathwright.domain.findings import Finding, Measure, Said
from bathwright.domain.survey import Appliance
from bathwright.domain.values import Value
from bathwright.rules.facts import Facts
from bathwright.rules.say import measure_id, question, with_measures, word

CODE = "backdraught"
SOURCES = ("bpi-depressurisation", "cgsb-51-71")


def check(facts: Facts) -> tuple[Said, ...]:
    """Each burner of the home that a fan may draw back."""
    if facts.air is None or facts.air.fan is None:
        return ()
    if facts.survey.appliances is None:
        stop = _finding("")
        return (question("appliances", CODE, "worst", (stop,), "walk_through_rooms"),)
    said: list[Said] = []
    for appliance in facts.survey.appliances:
        if _may_spill(appliance):
            said += _one(facts, appliance)
    return tuple(said)


def _may_spill(appliance: Appliance) -> bool:
    """Told natural draught; or a flame whose flue was not told."""
    if appliance.natural_draught is None:
        return appliance.ignition == "flame"
    return appliance.natural_draught


def _one(facts: Facts, appliance: Appliance) -> tuple[Said, ...]:
    finding = _finding(appliance.id, word("appliance", appliance.kind))
    if appliance.can_be_off:
        return with_measures(finding, _off(facts, appliance))
    if appliance.can_be_off is None:
        return (question("can_be_off", CODE, "no", (finding,), "find_valve_and_breaker", about=(appliance.id,)),)
    return (finding,)


def _finding(about: str, *values: Value) -> Finding:
    return Finding(
        code=CODE,
        about=(about,) if about else (),
        strength="danger",
        consequence="kills",
        effect="stops",
        values=values,
        relax="turn_off_while_the_fan_runs",
    )


def _off(facts: Facts, appliance: Appliance) -> Measure:
    on = [interval for interval in facts.air.intervals if interval.setup == "fan-on"] if facts.air else []
    return Measure(
        id=measure_id("natural_draught_off", appliance.id),
        act="natural_draught_off",
        who="household",
        what=appliance.kind,
        starts=on[0].starts if on else None,
        ends=on[-1].ends if on else None,
        feasible="have",
        when="during",
    )
