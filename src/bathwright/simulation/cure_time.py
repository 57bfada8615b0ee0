"""When a wait ends: printed time or computed age, whichever is later. Below the sheet's lowest temperature nothing
accumulates."""

from collections.abc import Callable
from datetime import datetime, timedelta

from bathwright.domain.steps import Demand
from bathwright.physics import cure, humid_air
from bathwright.simulation.climate import Weather

_LONGEST_S = 90 * 86400.0
_DAY_S = 86400.0
_STEP_S = 1800.0
_STANDARD_VAPOUR_PA = humid_air.vapour_pressure_pa(296.15, 0.5)  # 23 °C and 50 %: the usual reference of sealants


def wait_ends(
    demand: Demand, starts: datetime, weather: Weather, colder_k: float = 0.0, *, computed_alone: bool = False
) -> datetime | None:
    """The instant at which a least wait that began at `starts` ends; None when it does not within 90 days.

    fixed: the printed time. cures, dries: the later of the printed time and the equivalent age at the bath's surface
    (astm-c1074), the rate never above that of the printed temperature (or of a floor above it). moisture_cures:
    printed time, longer when the air holds less water than the reference (depth grows with the root of vapour
    pressure times time: coating of sealants, comyn-1998). `colder_k` lowers the surface for a cautious answer.
    `computed_alone`: the computed instant even when it is earlier than printed, to be shown beside it, never used by
    itself.
    """
    least = demand.least_s or 0.0
    printed_end = starts + timedelta(seconds=least)
    if demand.law == "fixed" or least <= 0:
        return printed_end
    if demand.law == "moisture_cures":
        vapour = humid_air.vapour_pressure_pa(weather.low_k, weather.humidity)
        return starts + timedelta(seconds=least * max(1.0, _STANDARD_VAPOUR_PA / max(vapour, 1.0)))
    age_s = _needed_age_s(demand)
    reference = demand.reference_k or 294.15
    energy = demand.activation_energy_j_mol or 0.0
    floor = _floor(demand)
    warmest = reference if floor is None else max(reference, floor)

    def film_k(seconds: float) -> float:
        return min(warmest, weather.surface_k(starts + timedelta(seconds=seconds)) - colder_k)

    needed = _time_to_age_s(film_k, age_s, reference, energy, floor)
    if needed is None:
        return None
    computed = starts + timedelta(seconds=needed)
    return computed if computed_alone else max(printed_end, computed)


def _time_to_age_s(
    film_k: Callable[[float], float], age_s: float, reference_k: float, energy: float, floor_k: float | None
) -> float | None:
    """Time to an equivalent age where the temperature repeats day by day: whole days first, then the rest."""
    if age_s <= _DAY_S:
        return cure.time_to_age_s(
            film_k, age_s, reference_k, energy, floor_k=floor_k, step_s=_STEP_S, limit_s=_LONGEST_S
        )
    times = [i * _STEP_S for i in range(int(_DAY_S / _STEP_S) + 1)]
    a_day = cure.equivalent_age_s(times, [film_k(t) for t in times], reference_k, energy, floor_k=floor_k)
    days = int(age_s / a_day) if a_day > 0 else 0
    if a_day <= 0 or days * _DAY_S > _LONGEST_S:
        return None
    rest = cure.time_to_age_s(
        film_k,
        max(0.0, age_s - days * a_day),
        reference_k,
        energy,
        floor_k=floor_k,
        step_s=_STEP_S,
        limit_s=_DAY_S + _STEP_S,
    )
    return None if rest is None else days * _DAY_S + rest


def _needed_age_s(demand: Demand) -> float:
    """Equivalent age at the reference temperature that the printed time stands for."""
    return demand.age_s if demand.age_s is not None else demand.least_s or 0.0


def _floor(demand: Demand) -> float | None:
    """The floor, half a hundredth of a kelvin lower, so that a rounded limit counts as reached."""
    return None if demand.floor_k is None else demand.floor_k - 0.005
