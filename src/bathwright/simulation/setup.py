"""From survey and knowledge to the zones, flows and vapours that the air model works on."""

from bathwright.domain.air import AirSetup, Release, Vapour
from bathwright.domain.plan import Assumption
from bathwright.domain.survey import Equipment, Survey
from bathwright.domain.values import Band
from bathwright.knowledge.book import Knowledge
from bathwright.knowledge.records import Substance
from bathwright.physics import humid_air, vapour
from bathwright.simulation.climate import Weather

_FANS = ("duct_fan", "window_fan", "box_fan_filter", "box_fan", "ceiling_fan")
_PASSAGES_PER_S = 2 / 3600  # the door is passed twice an hour while the fan runs: judgement
# measured over predicted evaporation 0.76 to 1.24 (inverse of the published 0.81 to 1.32), widened: judgement
_TRANSFER_SPREAD = (0.75, 1.0, 1.3)
# a rating alone is credited up to 400 cfm: more needs an opening of 1.2 to 1.7 square feet for the air that comes in
# (own computation by the orifice equation at 2.5 to 5 Pa); a measured flow is credited as measured
MOST_CREDITED_M3_S = 0.1888
_NO_BASIN_M3 = 0.2  # tile on a wall has no basin: an idle zone of this size stands in for it
_LITTLE_BATHROOM_M3 = 6.0  # where the room's volume was not told: smaller than usual, so that it errs to the bad side


def _scaled(band: Band, factor: float, kind: str) -> Band:
    return Band(
        low=band.low * factor,
        central=band.central * factor,
        high=band.high * factor,
        kind=kind,
        source=band.source,
        mark=band.mark,
    )


def _told(value: float | None, kind: str) -> Band | None:
    """A value of the survey as a band of no width; None when it was not told."""
    if value is None:
        return None
    return Band(low=value, central=value, high=value, kind=kind, source="survey", mark="verified")


def fan_flow(item: Equipment, knowledge: Knowledge) -> Band | None:
    """Real flow of a fan in m3/s: as measured, else its rating times the real share of its kind; None = not known."""
    if item.real_flow is not None:
        flow = item.real_flow
        return Band(
            low=0.9 * flow, central=flow, high=1.1 * flow, kind="flow", source="own-judgement", mark="judgement"
        )
    kind = knowledge.fans.get(item.kind)
    if kind is None:
        return None
    if kind.real_flow is not None:
        return kind.real_flow
    if item.rating is None or kind.real_share is None:
        return None
    rated = _scaled(kind.real_share, item.rating, "flow")
    low, central, high = (min(value, MOST_CREDITED_M3_S) for value in (rated.low, rated.central, rated.high))
    return Band(low=low, central=central, high=high, kind="flow", source=rated.source, mark=rated.mark)


def best_fan(survey: Survey, knowledge: Knowledge) -> tuple[Equipment, Band] | None:
    """The fan that moves most air outdoors, of those at hand or to be hired or bought; None when there is none.

    A fan that blows into a shared duct or back into the home does not count, nor one whose discharge is not told; no
    fan counts where it was told that no air can come into the bathroom.
    """
    found: list[tuple[float, str, Equipment, Band]] = []
    if not _air_comes_in(survey):
        return None
    for item in survey.equipment:
        if item.kind in _FANS and item.have != "no" and item.discharges == "outdoors":
            flow = fan_flow(item, knowledge)
            if flow is not None and flow.low > 0:
                found.append((flow.low, item.id, item, flow))
    if not found:
        return None
    _, _, item, flow = max(found, key=lambda entry: (entry[0], entry[1]))
    return item, flow


def _air_comes_in(survey: Survey) -> bool:
    """Whether the bathroom has a way in for air: not told counts as a door; told openings must hold one not sealed."""
    if survey.openings is None:
        return True
    rooms = {space.id for space in survey.spaces if space.kind == "bathroom"}
    ways = ("door", "undercut", "window", "grille")
    return any(o.kind in ways and o.state != "sealed" and (rooms & set(o.between)) for o in survey.openings)


def room_volume(survey: Survey) -> float | None:
    """Volume of the bathroom in m3, as told or from floor and height; None = not told."""
    for space in survey.spaces:
        if space.kind == "bathroom":
            if space.volume is not None:
                return space.volume
            if space.floor_area is not None and space.height is not None:
                return space.floor_area * space.height
    return None


def air_setup(
    survey: Survey, basin_m3: float | None, weather: Weather, knowledge: Knowledge
) -> tuple[AirSetup, tuple[Assumption, ...]]:
    """The set-up with the best fan that the survey names."""
    assumed = []
    volume = room_volume(survey)
    if volume is None:
        volume = _LITTLE_BATHROOM_M3
        assumed.append(_assume("room-volume", volume, "volume", "own-judgement", "judgement"))
    told_rates: dict[str, float] = {}
    for space in survey.spaces:
        if space.air_change_rate is not None:
            told_rates[space.kind] = min(space.air_change_rate, told_rates.get(space.kind, space.air_change_rate))
    home = knowledge.band("air.home.volume")
    told = sum(space.volume for space in survey.spaces if space.kind == "rest_of_home" and space.volume)
    if told:
        home = _told(told, "volume") or home
    else:
        assumed.append(_assume("home-volume", home.central, "volume", home.source, home.mark))
    fan = best_fan(survey, knowledge)
    room_rate = _told(told_rates.get("bathroom"), "rate") or knowledge.band("air.home.room_air_change_rate")
    home_rate = _told(told_rates.get("rest_of_home"), "rate") or knowledge.band("air.home.air_change_rate")
    passage = knowledge.band("air.door.passage_exchange")
    transfer = knowledge.number("air.film.mass_transfer")
    low, central, high = (transfer.value * factor for factor in _TRANSFER_SPREAD)
    basin = basin_m3 if basin_m3 is not None else _NO_BASIN_M3
    setup = AirSetup(
        basin_m3=basin,
        room_m3=max(volume - basin, 0.5 * volume),
        home_m3=home,
        fan=fan[0].id if fan else None,
        fan_flow=fan[1] if fan else None,
        inlet=(fan[0].inlet or "room") if fan else "room",
        target="room" if basin_m3 is None else "basin",
        basin_exchange=knowledge.band("air.basin.exchange"),
        room_exchange=_scaled(room_rate, volume, "flow"),
        passages=_scaled(passage, _PASSAGES_PER_S, "flow"),
        home_air_changes=home_rate,
        transfer=Band(low=low, central=central, high=high, kind="speed", source=transfer.source, mark="judgement"),
        slow_share=knowledge.band("air.film.slow_share"),
        slow_rate=knowledge.band("air.film.slow_rate"),
        temperature_k=(weather.low_k + weather.high_k) / 2,
    )
    return setup, tuple(assumed)


def _assume(code: str, value: float, kind: str, source: str, mark: str) -> Assumption:
    return Assumption(code=code, value=value, kind=kind, source=source, mark=mark)  # type: ignore[arg-type]


def saturation(substance: Substance, temperature_k: float) -> float:
    """Saturation in kg/m3 at a temperature, by Clausius-Clapeyron from the tabled vapour pressure."""
    if substance.vapour_pressure is None:
        return 0.0
    pressure = substance.vapour_pressure.value
    if substance.heat_of_vaporisation is not None:
        pressure = vapour.vapour_pressure_clausius_pa(
            pressure, substance.vapour_pressure_at_k, substance.heat_of_vaporisation.value, temperature_k
        )
    return vapour.saturation_kg_m3(min(pressure, 101325.0), substance.molar_mass.value, temperature_k)


def vapours(releases: tuple[Release, ...], weather: Weather, knowledge: Knowledge) -> tuple[Vapour, ...]:
    """The vapours of the releases, each once, with saturation at the mean and at the warmest surface."""
    middle = (weather.low_k + weather.high_k) / 2
    out = []
    for cas in dict.fromkeys(release.cas for release in releases):
        substance = knowledge.substances[cas]
        background = 0.0
        if "water" in substance.tags:
            pressure = humid_air.vapour_pressure_pa(middle, weather.humidity)
            background = vapour.saturation_kg_m3(pressure, substance.molar_mass.value, middle)
        out.append(
            Vapour(
                cas=cas,
                molar_mass_kg_mol=substance.molar_mass.value,
                saturation_central_kg_m3=saturation(substance, middle),
                saturation_high_kg_m3=saturation(substance, weather.high_k),
                lower_limit=substance.lower_limit.value if substance.lower_limit else None,
                background_kg_m3=background,
            )
        )
    return tuple(out)
