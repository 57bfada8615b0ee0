"""The air of the sample plan: written by hand, with invented numbers."""

import math

from sample_steps import after

from bathwright.domain.air import AirFlow, AirInterval, AirPlan, Course, Emission, Exposure, Limit, Zone
from bathwright.domain.values import Band

TOLUENE = "108-88-3"


def _mass(value: float, kind: str = "concentration") -> Band:
    return Band(low=value * 0.5, central=value, high=value * 2, kind=kind, source="own-computation", mark="own")


def _limit(name: str, measure: str, value: float, kind: str, whom: str, surrogate: bool = False) -> Limit:
    return Limit(
        id=name,
        cas=TOLUENE,
        body="Sample body",
        measure=measure,
        value_kg_m3=value,
        for_whom=whom,  # type: ignore[arg-type]
        kind=kind,  # type: ignore[arg-type]
        law_in=("US",) if kind == "law" else (),
        year=2020,
        source="cfr-1910-1000",
        mark="verified",
        surrogate=surrogate,
    )


LIMITS = (
    _limit("sample-8h", "mean_8h", 7.5e-5, "advice", "worker"),
    _limit("sample-15min", "mean_15min", 3.8e-4, "law", "worker"),
    _limit("sample-idlh", "idlh", 1.9e-3, "advice", "worker"),
    _limit("sample-day", "mean_24h", 3.8e-6, "advice", "public", True),
)


def exposures() -> tuple[Exposure, ...]:
    """Painter against workplace values, others against those for everybody, the explosive share."""
    rows = (
        ("painter", "room", TOLUENE, "mean_8h", 1.6e-4, LIMITS[0], 7.5e-5, "half_mask_vapour"),
        ("painter", "room", TOLUENE, "mean_15min", 5.2e-4, LIMITS[1], 3.8e-4, "half_mask_vapour"),
        ("painter", "room", TOLUENE, "peak", 6.1e-4, LIMITS[2], 1.9e-3, "none"),
        ("painter", "room", "mixture", "mean_8h", 2.4, None, 1.0, "half_mask_vapour"),
        ("others", "home", TOLUENE, "mean_24h", 1.1e-6, LIMITS[3], 3.8e-6, "none"),
        ("basin", "basin", "mixture", "explosive_share", 0.021, None, 0.1, "none"),
    )
    out = []
    for who, zone, substance, measure, value, limit, limit_value, mask in rows:
        factor = 10.0 if mask != "none" else 1.0
        kind = "concentration" if substance != "mixture" else "share"
        outside, inside = _mass(value, kind), _mass(value / factor, kind)
        out.append(
            Exposure(
                who=who,
                zone=zone,
                substance=substance,
                measure=measure,  # type: ignore[arg-type]
                outside=outside,
                inside=inside,
                limit=limit,
                limit_value=limit_value,
                share_central=inside.central / limit_value,
                share_upper=inside.high / limit_value,
                basis="upper_bound",
                at=after(28.9),
                protection=mask,
            )
        )
    return tuple(out)


def courses() -> tuple[Course, ...]:
    """Two bursts that die away, in three places."""
    times = tuple(int(27 * 3600 + 900 * index) for index in range(480))
    out = []
    for place, height in (("basin", 2200.0), ("room", 310.0), ("home", 1.4)):
        central = tuple(_bursts(time / 3600, height) for time in times)
        out.append(
            Course(
                of=place,
                reads="share_of_public_values",
                unit="1",
                t_s=times,
                central=central,
                upper=tuple(value * 3 for value in central),
                kept_to=0.02,
            )
        )
    return tuple(out)


def _bursts(hour: float, height: float) -> float:
    return sum(
        height * part * math.exp(-(hour - at) / 6) for at, part in ((27.1, 0.4), (28.4, 1), (48.6, 1)) if hour > at
    )


def air() -> AirPlan:
    """Zones, flows and who is out."""
    flow = Band(low=0.04, central=0.055, high=0.07, kind="flow", source="own-judgement", mark="judgement")
    return AirPlan(
        zones=tuple(
            Zone(id=name, volume_m3=volume, temperature_k=294.0)
            for name, volume in (("basin", 0.25), ("room", 10.2), ("home", 220.0))
        ),
        intervals=(
            AirInterval(
                starts=after(27),
                ends=after(121),
                flows=(AirFlow(source="room", target="outdoors", flow_m3_s=0.055),),
                setup="fan-on",
            ),
        ),
        emissions=(
            Emission(
                id="coat-1-toluene",
                step="coat-1",
                substance="toluene",
                cas=TOLUENE,
                zone="basin",
                surface_m2=2.2,
                mass_kg=_mass(0.06, "mass"),
                starts=after(28.1),
                ends=after(28.9),
                form="film",
                slow_share=0.1,
                slow_rate_per_s=1e-5,
                transfer_m_s=0.003,
                activity_coefficient=1.0,
                saturation_kg_m3=0.14,
                model="film with back pressure",
                source="makers-sheet",
                mark="verified",
            ),
        ),
        limits=LIMITS,
        setup="fan-1-basin",
        fan="fan-1",
        fan_flow_m3_s=flow,
        basin_at=None,
        vapour_kg=None,
        back_at=after(74),
        horizon=after(27 + 720),
        away_from=after(27),
        away_until=after(60),
    )
