"""Which published models this plan uses outside the range for which they hold."""

from bathwright.physics import evaporation, humid_air
from bathwright.physics.validity import Validity, outside
from bathwright.procedure.job import Job
from bathwright.procedure.waits import cure_law
from bathwright.rules.facts import OutOfRange
from bathwright.simulation.climate import Weather

_BEYOND_TABLE_K = 5.0  # so far below its coldest printed time a cure law is a guess: judgement
_KINDS = {"temperature_k": "temperature", "relative_humidity": "humidity"}


def out_of_range(job: Job, weather: Weather, with_air: bool) -> tuple[OutOfRange, ...]:
    """Evaporation and dew point at the air's extremes; the cure law at the coldest surface."""
    values = [
        {"temperature_k": weather.low_k, "relative_humidity": weather.humidity},
        {"temperature_k": weather.high_k, "relative_humidity": weather.humidity},
    ]
    models = [("dew-point", humid_air.VALIDITY["dew_point_k"])]
    models += [("evaporation", evaporation.VALIDITY["mass_transfer_mackay_m_s"])] if with_air else []
    found: dict[tuple[str, str], OutOfRange] = {}
    for name, validities in models:
        for told in values:
            for validity in outside(validities, **told):
                found.setdefault((name, validity.quantity), _entry(name, validity, told[validity.quantity]))
    return (*found.values(), *_cure(job, weather))


def _entry(model: str, validity: Validity, value: float) -> OutOfRange:
    return OutOfRange(
        model=model,
        quantity=validity.quantity,
        value=value,
        low=validity.low,
        high=validity.high,
        kind=_KINDS.get(validity.quantity),
        source=validity.source,
    )


def _cure(job: Job, weather: Weather) -> tuple[OutOfRange, ...]:
    """The cure law reaches from the coldest printed time (less a little) to the warmest."""
    law = cure_law(job.coating, "full_bath", job.knowledge)
    coldest = weather.low_k - weather.surface_offset_k
    low = law.coldest_k - _BEYOND_TABLE_K
    if coldest >= low:
        return ()
    return (
        OutOfRange(
            model="cure",
            quantity="temperature_k",
            value=coldest,
            low=low,
            high=law.reference_k,
            kind="temperature",
            source="own-judgement",
        ),
    )
