"""Properties of film and geometry: inverses, the rounded bath inside its frustum, known solids, a mesh."""

import itertools
import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.physics import film, geometry

CHECK = settings(derandomize=True, deadline=None, max_examples=60)
films = st.floats(1e-6, 1e-3)
solids = st.floats(0.05, 1.0)
thinner = st.floats(0.0, 0.5)


@CHECK
@given(films, solids, thinner)
def test_wet_and_dry_film_are_inverse(dry: float, vs: float, t: float) -> None:
    wet = film.wet_film_m(dry, vs, t)
    assert wet >= dry
    assert film.dry_film_m(wet, vs, t) == pytest.approx(dry, rel=1e-12)
    assert film.solids_after_thinning(vs, t) <= vs


@CHECK
@given(st.floats(0.1, 10.0), films, solids, st.floats(0.0, 0.9))
def test_volume_covers_the_area_after_loss(area: float, dry: float, vs: float, loss: float) -> None:
    volume = film.coating_volume_m3(area, dry, vs, loss)
    assert volume * (1 - loss) * film.spreading_rate_m2_m3(vs, dry) == pytest.approx(area, rel=1e-12)


@st.composite
def tubs(draw: st.DrawFn) -> tuple[tuple[float, ...], dict[str, float]]:
    rim_l, rim_w = draw(st.floats(1.0, 1.9)), draw(st.floats(0.5, 0.9))
    floor_l, floor_w = rim_l * draw(st.floats(0.6, 1.0)), rim_w * draw(st.floats(0.6, 1.0))
    depth = draw(st.floats(0.25, 0.6))
    radii = {
        "rim_corner_radius_m": draw(st.floats(0.0, 0.5)) * rim_w,
        "floor_corner_radius_m": draw(st.floats(0.0, 0.5)) * floor_w,
        "cove_radius_m": draw(st.floats(0.0, 0.3)) * min(floor_w, depth),
    }
    return (rim_l, rim_w, floor_l, floor_w, depth), radii


@CHECK
@given(tubs())
def test_a_rounded_bath_has_no_more_area_than_its_frustum(
    tub: tuple[tuple[float, ...], dict[str, float]],
) -> None:
    size, radii = tub
    areas = geometry.tub_inside_areas_m2(*size, **radii)
    whole = geometry.frustum_area_m2(*size)
    assert 0.5 * whole < areas.total <= whole * (1 + 1e-9)
    assert 0.0 < areas.floor <= size[2] * size[3] * (1 + 1e-12)


@CHECK
@given(tubs())
def test_sharp_bath_is_the_frustum(tub: tuple[tuple[float, ...], dict[str, float]]) -> None:
    size, _ = tub
    areas = geometry.tub_inside_areas_m2(*size, rim_corner_radius_m=0.0, floor_corner_radius_m=0.0, cove_radius_m=0.0)
    assert areas.total == pytest.approx(geometry.frustum_area_m2(*size), rel=1e-12)
    assert areas.floor == pytest.approx(size[2] * size[3], rel=1e-12)


@CHECK
@given(tubs())
def test_a_mesh_of_the_same_levels_agrees(tub: tuple[tuple[float, ...], dict[str, float]]) -> None:
    """Without a cove the walls join two rounded rectangles: a triangle mesh between them has their area."""
    size, radii = tub
    radii["cove_radius_m"] = 0.0
    found = geometry.tub_inside_areas_m2(*size, **radii).walls
    rim = outline(size[0], size[1], radii["rim_corner_radius_m"])
    floor = outline(size[2], size[3], radii["floor_corner_radius_m"])
    top = np.column_stack((rim, np.full(len(rim), size[4])))
    base = np.column_stack((floor, np.zeros(len(floor))))
    assert found == pytest.approx(strip_area(base, top), rel=2e-4)


def outline(length: float, width: float, radius: float, steps: int = 64) -> np.ndarray:
    """Points round a rounded rectangle, corner by corner, the same number for every radius."""
    points = []
    for quarter, (x, y) in enumerate(((1, 1), (-1, 1), (-1, -1), (1, -1))):
        angles = np.linspace(0.0, math.pi / 2, steps + 1) + quarter * math.pi / 2
        centre = np.array([x * (length / 2 - radius), y * (width / 2 - radius)])
        points.append(centre + radius * np.column_stack((np.cos(angles), np.sin(angles))))
    return np.concatenate(points)


def strip_area(base: np.ndarray, top: np.ndarray) -> float:
    """Area of the closed strip of triangles between two rings of points."""
    next_base, next_top = np.roll(base, -1, axis=0), np.roll(top, -1, axis=0)
    lower = np.cross(next_base - base, top - base)
    upper = np.cross(next_base - top, next_top - top)
    return float(0.5 * (np.linalg.norm(lower, axis=1) + np.linalg.norm(upper, axis=1)).sum())


def test_half_sphere() -> None:
    areas = geometry.tub_inside_areas_m2(
        2.0, 2.0, 2.0, 2.0, 1.0, rim_corner_radius_m=1.0, floor_corner_radius_m=1.0, cove_radius_m=1.0
    )
    assert areas.total == pytest.approx(2.0 * math.pi, rel=1e-6)
    assert areas.floor == pytest.approx(0.0, abs=1e-9)


def test_upright_bath_with_cove() -> None:
    """Own closed form: straight walls, quarter cylinders along the floor, quarter tori in the corners."""
    length, width, depth, r, cove = 1.5, 0.7, 0.4, 0.2, 0.08
    areas = geometry.tub_inside_areas_m2(
        length, width, length, width, depth, rim_corner_radius_m=r, floor_corner_radius_m=r, cove_radius_m=cove
    )
    sides = 2 * (length - 2 * r) + 2 * (width - 2 * r)
    around = sides + 2 * math.pi * r
    torus = 2 * math.pi * cove * ((r - cove) * math.pi / 2 + cove)
    expected = around * (depth - cove) + sides * cove * math.pi / 2 + torus
    assert areas.walls == pytest.approx(expected, rel=1e-6)
    inner_floor = geometry.rounded_rectangle_area_m2(length - 2 * cove, width - 2 * cove, r - cove)
    assert areas.floor == pytest.approx(inner_floor, rel=1e-9)


def test_tapered_cove_without_corners() -> None:
    """Own closed form: every wall is a plane above, below it a round strip over the angle π/2 − atan m."""
    length, width, depth, run, cove = 1.5, 0.8, 0.4, 0.1, 0.06
    floor_length, floor_width = length - 2 * run, width - 2 * run
    areas = geometry.tub_inside_areas_m2(
        length,
        width,
        floor_length,
        floor_width,
        depth,
        rim_corner_radius_m=0.0,
        floor_corner_radius_m=0.0,
        cove_radius_m=cove,
    )
    slope = run / depth
    angle = math.pi / 2 - math.atan(slope)
    tangent = cove * math.tan(angle / 2)
    flat_length, flat_width = floor_length - 2 * tangent, floor_width - 2 * tangent
    assert areas.floor == pytest.approx(flat_length * flat_width, rel=1e-9)
    height = cove * (1 - math.cos(angle))
    edge_length, edge_width = floor_length + 2 * slope * height, floor_width + 2 * slope * height
    planes = geometry.frustum_area_m2(length, width, edge_length, edge_width, depth - height)
    planes -= edge_length * edge_width
    strips = 2 * cove * ((flat_length + flat_width) * angle + 4 * cove * (1 - math.cos(angle)))
    assert areas.walls == pytest.approx(planes + strips, rel=1e-8)


def profile(height: np.ndarray, half_rim: float, slope: float, depth: float, cove: float) -> np.ndarray:
    """Half width at a height: the plane of the wall, and under it the arc that touches plane and floor."""
    plane = half_rim - slope * (depth - height)
    tangent = cove * math.tan(0.5 * (math.pi / 2 - math.atan(slope)))
    centre = plane[0] - tangent
    arc = centre + np.sqrt(np.clip(cove**2 - (cove - height) ** 2, 0.0, None))
    return np.where(height < cove * (1 - math.sin(math.atan(slope))), arc, plane)


@pytest.mark.parametrize(("end_slope", "side_slope"), [(0.7, 0.0), (0.1, 0.5), (0.3, 0.3)])
def test_a_mesh_with_a_cove_agrees(end_slope: float, side_slope: float) -> None:
    depth, cove, half_length, half_width = 0.4, 0.15, 0.8, 0.45
    height = depth * np.linspace(0.0, 1.0, 4001) ** 2
    ends = profile(height, half_length, end_slope, depth, cove)
    sides = profile(height, half_width, side_slope, depth, cove)
    rings = [
        np.array([(x, y, h), (-x, y, h), (-x, -y, h), (x, -y, h)]) for x, y, h in zip(ends, sides, height, strict=True)
    ]
    expected = sum(strip_area(a, b) for a, b in itertools.pairwise(rings))
    areas = geometry.tub_inside_areas_m2(
        2 * half_length,
        2 * half_width,
        2 * (half_length - end_slope * depth),
        2 * (half_width - side_slope * depth),
        depth,
        rim_corner_radius_m=0.0,
        floor_corner_radius_m=0.0,
        cove_radius_m=cove,
    )
    assert areas.walls == pytest.approx(expected, rel=2e-5)
    assert areas.floor == pytest.approx(4 * ends[0] * sides[0], rel=1e-9)


def test_rim_is_outer_less_opening() -> None:
    assert geometry.rim_area_m2(1.6, 0.8, 1.4, 0.6, 0.0) == pytest.approx(0.44)
    rounded = geometry.rim_area_m2(1.6, 0.8, 1.4, 0.6, 0.1)
    assert rounded == pytest.approx(0.44 + (4 - math.pi) * 0.01)


@pytest.mark.parametrize(
    "call",
    [
        lambda: film.spreading_rate_m2_m3(0.5, 0.0),
        lambda: film.spreading_rate_m2_m3(50.0, 1e-4),
        lambda: film.coating_volume_m3(1.0, 1e-4, 0.0, 0.1),
        lambda: film.coating_volume_m3(1.0, 1e-4, 0.5, 1.0),
        lambda: film.coating_volume_m3(1.0, 1e-4, 0.5, -0.1),
        lambda: film.solids_after_thinning(0.5, -0.1),
        lambda: geometry.frustum_area_m2(1.0, 0.5, 1.1, 0.4, 0.4),
        lambda: geometry.frustum_area_m2(1.0, 0.5, 0.9, 0.4, math.nan),
        lambda: geometry.rim_area_m2(1.4, 0.8, 1.5, 0.6, 0.1),
        lambda: geometry.rounded_rectangle_area_m2(1.0, 0.5, 0.3),
        lambda: geometry.tub_inside_areas_m2(
            1.5, 0.7, 1.4, 0.6, 0.4, rim_corner_radius_m=0.1, floor_corner_radius_m=0.1, cove_radius_m=0.6
        ),
    ],
)
def test_what_cannot_be_is_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(ValueError, match="must be"):
        call()
