"""Small set-ups for the tests of the air: every band one number, so that all cases of a run are the same."""

from typing import Any

import numpy as np

from bathwright.domain.air import AirSetup, Release, Vapour
from bathwright.domain.values import Band
from bathwright.simulation import air

GAS = 8.31446261815324
PRESSURE = 101325.0
ROOM_K = 294.15
CFM = 0.3048**3 / 60  # m3/s
CENTRAL = air.CASES.index("central")
HOUR, DAY = 3600.0, 86400.0


def one(value: float, kind: str = "flow") -> Band:
    return Band(low=value, central=value, high=value, kind=kind, source="test", mark="own")


def setup(**changed: Any) -> AirSetup:
    """A bathroom of 9 m3 with the bath's 0.25 m3, a home of 480 m3, a fan of 100 cubic feet a minute in the room."""
    usual: dict[str, Any] = {
        "basin_m3": 0.25, "room_m3": 8.75, "home_m3": one(480.0), "fan": "fan", "fan_flow": one(100 * CFM),
        "inlet": "room", "target": "basin", "basin_exchange": one(0.4 / 60), "room_exchange": one(0.6 * 9 / HOUR),
        "passages": one(2 * 50 * 0.3048**3 / HOUR), "home_air_changes": one(0.4 / HOUR),
        "transfer": one(3.63 / HOUR), "slow_share": one(0.15), "slow_rate": one(0.06 / HOUR), "temperature_k": ROOM_K,
    }  # fmt: skip
    return AirSetup(**{**usual, **changed})


def vapour(cas: str, molar: float, pressure_pa: float, background: float = 0.0) -> Vapour:
    saturation = pressure_pa * molar / (GAS * ROOM_K)
    return Vapour(
        cas=cas, molar_mass_kg_mol=molar, saturation_central_kg_m3=saturation, saturation_high_kg_m3=saturation,
        lower_limit=0.01, background_kg_m3=background,
    )  # fmt: skip


# vapour pressures near 21 °C, rounded: they only have to be of the right size here
TOLUENE = vapour("108-88-3", 0.09214, 2950.0)
BUTANONE = vapour("78-93-3", 0.07211, 10000.0)
XYLENES = vapour("1330-20-7", 0.10617, 850.0)
GLYCOL_ETHER = vapour("107-98-2", 0.09012, 1250.0)
WATER = vapour("7732-18-5", 0.018015, 2490.0, background=0.009)
BARELY = vapour("100-51-6", 0.2, 5.0)


def release(of: Vapour, kg: float, step: str = "coat-1", area: float = 2.3, activity: float = 1.0) -> Release:
    return Release(
        id=f"{step}-{of.cas}", step=step, substance="a solvent", cas=of.cas, surface_m2=area, mass_kg=one(kg, "mass"),
        form="film", activity_coefficient=activity, source="test", mark="own",
    )  # fmt: skip


Timed = tuple[Release, float, float]


def run(
    made: AirSetup, vapours: tuple[Vapour, ...], timed: tuple[Timed, ...], hours: float = 6.0, **more: Any
) -> air.AirRun:
    off_s = more.get("fan_off_s")
    marks = (*more.get("marks", ()), *(() if off_s is None else (off_s,)))
    whole = air.run(made, vapours, timed, marks, hours * HOUR)
    return whole if off_s is None else air.fan_stopped(whole, int(np.searchsorted(whole.edges_s, off_s)))


def ppm(kg_m3: Any, molar: float) -> Any:
    return np.asarray(kg_m3) / molar * GAS * ROOM_K / PRESSURE * 1e6


def kg_m3(parts_per_million: float, molar: float) -> float:
    return parts_per_million * 1e-6 * PRESSURE * molar / (GAS * ROOM_K)
