"""Areas by part: the frustum as a check, what was told goes first, what was assumed is said, no size breaks it."""

import itertools
import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.domain.survey import Fixture, Sizes
from bathwright.door.survey_sense import SIZES
from bathwright.knowledge import load
from bathwright.procedure.areas import areas, basin_m3, total_area

BOOK = load()
INCH = 0.0254
BATH = Sizes(
    length=60 * INCH, width=30 * INCH, depth=13 * INCH, rim_width=2.5 * INCH, floor_length=44 * INCH,
    floor_width=21 * INCH, apron_height=14 * INCH,
)  # fmt: skip
BOXES = ("bath", "basin", "shower_tray", "kitchen_sink")


def fixture(kind: Any = "bath", sizes: Sizes = BATH, **told: Any) -> Fixture:
    return Fixture(id="f", kind=kind, sizes=sizes, **told)


def by_part(made: Fixture, country: str = "US") -> dict[str, float]:
    return {part.part: part.area_m2 for part in areas(made, country, BOOK)[0]}


def test_a_measured_bath_is_a_little_less_than_its_frustum() -> None:
    """The open frustum of 55 × 25 in to 44 × 21 in, 13 in deep, has 1.85513 m2 (own, a mesh agrees)."""
    found = by_part(fixture())
    inside = found["floor"] + found["walls"]
    assert 0.85 * 1.85513 < inside < 1.85513
    assert found["floor"] < 44 * 21 * INCH**2
    # rim: the outer rectangle less the opening with round corners
    assert 60 * 30 * INCH**2 - 55 * 25 * INCH**2 < found["rim"] < 60 * 30 * INCH**2 - 0.9 * 55 * 25 * INCH**2
    assert set(found) == {"floor", "walls", "rim"}


def test_the_apron_counts_only_when_it_is_to_be_coated() -> None:
    assert by_part(fixture(coat_apron=True))["apron"] == pytest.approx(60 * 14 * INCH**2)
    assert "apron" not in by_part(fixture())


def test_the_basin_is_the_frustum_to_its_rim() -> None:
    """0.243318 m3 (own, a mesh agrees)."""
    assert basin_m3(fixture(), "US", BOOK) == pytest.approx(0.243318, rel=1e-5)
    assert basin_m3(fixture("wall_tile", Sizes(length=3.0, height=1.8)), "US", BOOK) is None


def test_a_told_area_goes_before_sizes() -> None:
    parts, assumed = areas(fixture(sizes=Sizes(length=1.5, area=2.75)), "US", BOOK)
    assert [(part.part, part.area_m2, part.how) for part in parts] == [("face", 2.75, "told")]
    assert assumed == ()
    assert total_area(parts) == 2.75


def test_tile_is_a_rectangle() -> None:
    assert by_part(fixture("wall_tile", Sizes(length=3.2, height=1.75))) == {"face": pytest.approx(5.6)}


@pytest.mark.parametrize("sizes", [Sizes(), Sizes(length=3.0), Sizes(height=1.8)])
def test_tile_of_unknown_size_is_a_large_usual_one_and_never_nothing(sizes: Sizes) -> None:
    parts, assumed = areas(fixture("wall_tile", sizes), "US", BOOK)
    assert total_area(parts) == BOOK.band("fixtures.wall_tile.area").high > 4
    assert [entry.code for entry in assumed] == ["size-area"]


def test_what_was_not_told_is_said_with_its_source() -> None:
    _, assumed = areas(fixture(sizes=Sizes(length=60 * INCH)), "US", BOOK)
    assert {entry.code for entry in assumed} == {
        "size-width", "size-depth", "size-rim-width", "size-floor-length-share", "size-floor-width-share",
        "size-corner-radius", "size-cove-radius",
    }  # fmt: skip
    assert all(entry.source and entry.mark for entry in assumed)
    _, fewer = areas(fixture(), "US", BOOK)
    assert {entry.code for entry in fewer} == {"size-corner-radius", "size-cove-radius"}


def test_the_usual_size_is_that_of_the_place() -> None:
    there, here = (areas(fixture(sizes=Sizes()), country, BOOK)[1] for country in ("CA", "DE"))
    lengths = [next(e.value for e in assumed if e.code == "size-length") for assumed in (there, here)]
    assert lengths == [pytest.approx(60 * INCH), pytest.approx(1.7)]


@pytest.mark.parametrize("kind", BOXES)
@pytest.mark.parametrize("country", ["US", "DE"])
def test_the_usual_fixture_has_a_usual_area(kind: str, country: str) -> None:
    """Nominal areas, floor, walls and rim: fixtures.toml, own or judgement, so a wide band."""
    nominal = BOOK.band(f"fixtures.{kind}.area")
    got = sum(by_part(fixture(kind, Sizes()), country).values())
    assert 0.8 * nominal.low <= got <= 1.2 * nominal.high


@st.composite
def told(draw: st.DrawFn) -> Fixture:
    """Any fixture that the door lets in."""
    kind = draw(st.sampled_from([*BOXES, "wall_tile"]))
    ranges = {**SIZES[kind], "rim_width": (0.0, 0.5), "apron_height": (0.0, 1.0), "corner_radius": (0.0, 0.8)}
    ranges |= {"floor_length": (0.05, 2.2), "floor_width": (0.05, 1.5)}
    sizes = {name: draw(st.none() | st.floats(low, high)) for name, (low, high) in ranges.items()}
    length, width = sizes["length"], sizes.get("width")
    if sizes["floor_length"] and length and sizes["floor_length"] >= length:
        sizes["floor_length"] = None
    if sizes["floor_width"] and width and sizes["floor_width"] >= width:
        sizes["floor_width"] = None
    for edge in ("rim_width", "corner_radius"):
        if width is not None and sizes[edge] is not None and 2 * sizes[edge] >= width:
            sizes[edge] = None
    return fixture(kind, Sizes(**sizes), coat_apron=draw(st.booleans()))


@settings(max_examples=200)
@given(told(), st.sampled_from(["US", "GB", "DE", "ZZ"]))
def test_whatever_the_door_lets_in_has_areas_and_a_basin(made: Fixture, country: str) -> None:
    parts, _ = areas(made, country, BOOK)
    assert parts
    assert all(math.isfinite(part.area_m2) and part.area_m2 >= 0 for part in parts)
    assert total_area(parts) > 0
    basin = basin_m3(made, country, BOOK)
    assert (basin is None) == (made.kind == "wall_tile")
    assert basin is None or (math.isfinite(basin) and basin > 0)


def test_a_larger_bath_has_more_area() -> None:
    sizes = [Sizes(length=a, width=b, depth=c) for a, b, c in itertools.product((1.4, 1.9), (0.6, 0.9), (0.3, 0.5))]
    areas_m2 = [sum(by_part(fixture(sizes=each)).values()) for each in sizes]
    for (one, a), (other, b) in itertools.combinations(zip(sizes, areas_m2, strict=True), 2):
        pair = [(one.length, other.length), (one.width, other.width), (one.depth, other.depth)]
        if all(x is not None and y is not None and x <= y for x, y in pair):
            assert a < b
