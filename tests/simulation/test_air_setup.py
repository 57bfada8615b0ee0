"""From a survey to zones, fans and vapours: what counts as a fan, what is assumed, saturation at a temperature."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.air import Release
from bathwright.domain.survey import Equipment, Fixture, Place, Sizes, Space, Survey
from bathwright.domain.values import Band
from bathwright.knowledge import load
from bathwright.simulation import setup
from bathwright.simulation.climate import Weather

BOOK = load()
CFM = 0.3048**3 / 60


def fan(name: str = "fan", **told: Any) -> Equipment:
    usual: dict[str, Any] = {"kind": "duct_fan", "rating": 200 * CFM, "discharges": "outdoors"}
    return Equipment(id=name, **{**usual, **told})


def survey(*equipment: Equipment, spaces: tuple[Space, ...] = ()) -> Survey:
    return Survey(
        format="bathwright-survey/1", id="home", place=Place(country="US", time_zone="America/Chicago"),
        fixtures=(Fixture(id="bath", kind="bath", sizes=Sizes()),), spaces=spaces, equipment=equipment,
    )  # fmt: skip


def weather(kelvin: float = 294.15, humidity: float = 0.5) -> Weather:
    return Weather(
        kind="constant", low_k=kelvin, high_k=kelvin, humidity=humidity, surface_offset_k=1.0, told=True,
        surface_told=True, zone="America/Chicago",
    )  # fmt: skip


def test_a_fan_moves_a_share_of_its_rating_and_never_all_of_it() -> None:
    flow = setup.fan_flow(fan(), BOOK)
    share = BOOK.fans["duct_fan"].real_share
    assert flow is not None
    assert share is not None
    assert (flow.low, flow.central, flow.high) == pytest.approx(
        tuple(200 * CFM * part for part in (share.low, share.central, share.high))
    )
    assert flow.high < 200 * CFM


def test_a_box_fan_with_a_filter_has_the_measured_flow_and_never_its_nameplate() -> None:
    """272 cfm without and 400 cfm with a shroud, flow hood (box-fan-test-2021) [verified]."""
    flow = setup.fan_flow(fan(kind="box_fan_filter", rating=2000 * CFM), BOOK)
    assert flow is not None
    assert flow.low == pytest.approx(272 * CFM, rel=0.02)
    assert flow.high == pytest.approx(400 * CFM, rel=0.01)


def test_a_measured_flow_goes_before_any_rating() -> None:
    flow = setup.fan_flow(fan(rating=500 * CFM, real_flow=60 * CFM), BOOK)
    assert flow is not None
    assert flow.central == 60 * CFM
    assert flow.low < 60 * CFM < flow.high


@pytest.mark.parametrize(
    "useless",
    [
        {"discharges": "shared_duct"},
        {"discharges": "home"},
        {"discharges": None},
        {"have": "no"},
        {"kind": "heater"},
        {"rating": None},
    ],
)
def test_what_does_not_move_air_outdoors_is_no_fan(useless: dict[str, Any]) -> None:
    assert setup.best_fan(survey(fan(**useless)), BOOK) is None
    assert setup.best_fan(survey(fan("good", rating=20 * CFM), fan("bad", **useless)), BOOK) is not None


def test_the_fan_that_surely_moves_most_is_taken() -> None:
    found = setup.best_fan(survey(fan("a", rating=100 * CFM), fan("b", rating=300 * CFM), fan("c")), BOOK)
    assert found is not None
    assert found[0].id == "b"


BATHROOM = Space(id="bathroom", kind="bathroom", volume=9.0)
HOME = Space(id="home", kind="rest_of_home", volume=270.0)


def test_the_zones_are_as_told() -> None:
    made, assumed = setup.air_setup(survey(fan(), spaces=(BATHROOM, HOME)), 0.25, weather(), BOOK)
    assert (made.basin_m3, made.room_m3, made.home_m3.central) == (0.25, 8.75, 270.0)
    assert (made.fan, made.target, made.inlet) == ("fan", "basin", "room")
    assert assumed == ()
    tile, _ = setup.air_setup(survey(spaces=(BATHROOM, HOME)), None, weather(), BOOK)
    assert (tile.target, tile.fan, tile.fan_flow) == ("room", None, None)


def test_a_volume_follows_from_floor_and_height() -> None:
    told = Space(id="b", kind="bathroom", floor_area=4.0, height=2.4)
    assert setup.room_volume(survey(spaces=(told,))) == pytest.approx(9.6)
    assert setup.room_volume(survey(spaces=(Space(id="b", kind="bathroom", floor_area=4.0),))) is None


def test_what_was_not_told_is_taken_at_its_worse_and_said() -> None:
    made, assumed = setup.air_setup(survey(), 0.25, weather(), BOOK)
    told, _ = setup.air_setup(survey(spaces=(BATHROOM, HOME)), 0.25, weather(), BOOK)
    assert {entry.code for entry in assumed} == {"room-volume", "home-volume"}
    assert made.room_m3 < told.room_m3
    assert made.home_m3.low < made.home_m3.central


def test_the_bath_takes_at_most_half_of_a_tiny_room() -> None:
    tiny = Space(id="b", kind="bathroom", volume=0.4)
    made, _ = setup.air_setup(survey(spaces=(tiny,)), 0.35, weather(), BOOK)
    assert made.room_m3 == pytest.approx(0.2)


@pytest.mark.parametrize(
    ("cas", "ppm"),
    [("123-86-4", 16000), ("108-88-3", 37500), ("78-93-3", 119000), ("67-63-0", 57000), ("75-09-2", 566000)],
)
def test_saturation_at_25_degrees(cas: str, ppm: float) -> None:
    """Saturation ceilings of the table of limits at 25 °C: own computation from vapour pressures of a library, own."""
    substance = BOOK.substances[cas]
    air_kg_m3 = 101325 * substance.molar_mass.value / (8.314463 * 298.15)
    assert setup.saturation(substance, 298.15) / air_kg_m3 * 1e6 == pytest.approx(ppm, rel=0.06)


@given(st.sampled_from(["108-88-3", "67-63-0", "107-98-2", "75-09-2"]), st.floats(275, 315), st.floats(0.1, 10))
def test_warmer_air_holds_more_and_never_more_than_pure_vapour(cas: str, kelvin: float, warmer: float) -> None:
    substance = BOOK.substances[cas]
    cold, warm = (setup.saturation(substance, t) for t in (kelvin, kelvin + warmer))
    assert cold > 0
    pure = 101325 * substance.molar_mass.value / (8.314463 * (kelvin + warmer))
    assert warm <= pure * 1.0001
    assert warm > cold or warm == pytest.approx(pure, rel=1e-6)


def test_without_a_vapour_pressure_nothing_evaporates() -> None:
    assert setup.saturation(BOOK.substances["25068-38-6"], 294.15) == 0.0


def test_each_vapour_is_listed_once_and_water_has_the_humidity_of_the_room() -> None:
    mass = Band(low=0.1, central=0.1, high=0.1, kind="mass", source="test", mark="own")
    laid = tuple(
        Release(
            id=f"{step}-{cas}", step=step, substance="x", cas=cas, surface_m2=2.0, mass_kg=mass, form="film",
            activity_coefficient=1.0, source="test", mark="own",
        )
        for step in ("coat-1", "coat-2")
        for cas in ("107-98-2", "7732-18-5")
    )  # fmt: skip
    ether, water = setup.vapours(laid, weather(294.15, 0.6), BOOK)
    assert (ether.cas, water.cas) == ("107-98-2", "7732-18-5")
    assert ether.background_kg_m3 == 0.0
    # 2.49 kPa over water at 21 °C, six tenths of it
    assert water.background_kg_m3 == pytest.approx(0.6 * 2490 * 0.018015 / (8.314463 * 294.15), rel=0.01)
    assert water.background_kg_m3 < water.saturation_central_kg_m3
