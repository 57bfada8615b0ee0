"""Areas and volume of a bath: an open frustum, and a tapered bath with round corners and a cove.

Lengths in m, areas in m². "Rim" is the opening at the top, "floor" the rectangle in which the wall planes
would meet the floor (before the cove rounds that edge). The floor may not be wider than the rim.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from .checks import not_negative, positive
from .validity import Validity

VALIDITY: Final[dict[str, tuple[Validity, ...]]] = {}
"""The formulas are exact for their shape. How near a real bath comes to that shape is not known here."""

_COVE_PANELS: Final = 96
_CORNER_PANELS: Final = 16


def rectangle_area_m2(length_m: float, width_m: float) -> float:
    """Area of a rectangle: L·W. Source: own-computation, own."""
    not_negative(length_m=length_m, width_m=width_m)
    return length_m * width_m


def rounded_rectangle_area_m2(length_m: float, width_m: float, corner_radius_m: float) -> float:
    """Area of a rectangle with round corners: L·W − (4 − π)·r². Raises ValueError for r above half a side."""
    not_negative(length_m=length_m, width_m=width_m, corner_radius_m=corner_radius_m)
    not_negative(room_for_corner_m=min(length_m, width_m) * (1.0 + 1e-12) - 2.0 * corner_radius_m)
    return length_m * width_m - (4.0 - math.pi) * corner_radius_m**2


def rim_area_m2(
    outer_length_m: float,
    outer_width_m: float,
    rim_length_m: float,
    rim_width_m: float,
    rim_corner_radius_m: float,
) -> float:
    """Flat rim: the outer rectangle less the rounded opening. Raises ValueError for an opening that is larger.

    Source: own-computation, own.
    """
    not_negative(rim_ends_m=outer_length_m - rim_length_m, rim_sides_m=outer_width_m - rim_width_m)
    opening = rounded_rectangle_area_m2(rim_length_m, rim_width_m, rim_corner_radius_m)
    return rectangle_area_m2(outer_length_m, outer_width_m) - opening


def _check_frustum(
    rim_length_m: float, rim_width_m: float, floor_length_m: float, floor_width_m: float, depth_m: float
) -> None:
    positive(rim_length_m=rim_length_m, rim_width_m=rim_width_m, depth_m=depth_m)
    not_negative(floor_length_m=floor_length_m, floor_width_m=floor_width_m)
    not_negative(taper_ends_m=rim_length_m - floor_length_m, taper_sides_m=rim_width_m - floor_width_m)


def frustum_area_m2(
    rim_length_m: float, rim_width_m: float, floor_length_m: float, floor_width_m: float, depth_m: float
) -> float:
    """Floor and four walls of an open rectangular frustum.

    A = L2·W2 + (L1 + L2)·√(D² + ((W1 − W2)/2)²) + (W1 + W2)·√(D² + ((L1 − L2)/2)²).
    Raises ValueError for a floor larger than the rim. Source: own-computation (a mesh agrees), own.
    """
    _check_frustum(rim_length_m, rim_width_m, floor_length_m, floor_width_m, depth_m)
    long_walls = (rim_length_m + floor_length_m) * math.hypot(depth_m, (rim_width_m - floor_width_m) / 2.0)
    end_walls = (rim_width_m + floor_width_m) * math.hypot(depth_m, (rim_length_m - floor_length_m) / 2.0)
    return floor_length_m * floor_width_m + long_walls + end_walls


def frustum_volume_m3(
    rim_length_m: float, rim_width_m: float, floor_length_m: float, floor_width_m: float, depth_m: float
) -> float:
    """Volume to the rim in m³ (prismatoid): D/6·[L1·W1 + L2·W2 + (L1 + L2)(W1 + W2)].

    Raises ValueError for a floor larger than the rim. Source: own-computation (a mesh agrees), own.
    """
    _check_frustum(rim_length_m, rim_width_m, floor_length_m, floor_width_m, depth_m)
    middle = (rim_length_m + floor_length_m) * (rim_width_m + floor_width_m)
    return depth_m / 6.0 * (rim_length_m * rim_width_m + floor_length_m * floor_width_m + middle)


@dataclass(frozen=True, slots=True)
class TubAreas:
    """Inside of a bath in m²: the flat floor, and the walls with the cove."""

    floor: float
    walls: float

    @property
    def total(self) -> float:
        """Floor and walls in m²."""
        return self.floor + self.walls


def _simpson(function: Callable[[float], float], low: float, high: float, panels: int) -> float:
    step = (high - low) / panels
    inner = math.fsum((4.0 if i % 2 else 2.0) * function(low + i * step) for i in range(1, panels))
    return step / 3.0 * (function(low) + inner + function(high))


def _corner_stretch(rise: float, end_run: float, side_run: float, corner_run: float) -> float:
    """∫ √(rise² + v²) over a quarter turn; v is the outward run of the wall in each direction."""

    def stretch(angle: float) -> float:
        c, s = math.cos(angle), math.sin(angle)
        return math.hypot(rise, (end_run - corner_run) * c + (side_run - corner_run) * s + corner_run)

    return _simpson(stretch, 0.0, math.pi / 2.0, _CORNER_PANELS)


@dataclass(frozen=True, slots=True)
class _Shape:
    """Half length, half width and corner radius of a level, or how they change from one level to the next."""

    end: float
    side: float
    corner: float

    def wall(self, rise: float, run: "_Shape") -> float:
        """Wall round this level while the level climbs by `rise` and moves out by `run`."""
        ends = 4.0 * (self.side - self.corner) * math.hypot(rise, run.end)
        sides = 4.0 * (self.end - self.corner) * math.hypot(rise, run.side)
        if self.corner <= 0.0:
            return ends + sides
        return ends + sides + 4.0 * self.corner * _corner_stretch(rise, run.end, run.side, run.corner)


def _cove_run(angle: float, slope: float, radius_m: float) -> float:
    """How far a wall moves out along the cove from its start on the floor (angle 0), arc then plane."""
    arc = min(angle, math.pi / 2.0 - math.atan(slope))
    return radius_m * (math.sin(arc) + slope * (math.cos(arc) - math.cos(angle)))


def _cove_level(angle: float, top: _Shape, slopes: _Shape, radius_m: float, end_angle: float) -> _Shape:
    """The level at an angle of the cove, taken down from the level at its top."""

    def back(slope: float) -> float:
        return _cove_run(end_angle, slope, radius_m) - _cove_run(angle, slope, radius_m)

    end, side = top.end - back(slopes.end), top.side - back(slopes.side)
    return _Shape(end, side, max(0.0, min(top.corner - back(slopes.corner), end, side)))


def tub_inside_areas_m2(
    rim_length_m: float,
    rim_width_m: float,
    floor_length_m: float,
    floor_width_m: float,
    depth_m: float,
    *,
    rim_corner_radius_m: float,
    floor_corner_radius_m: float,
    cove_radius_m: float,
) -> TubAreas:
    """Floor and walls of a tapered bath with round corners and a round edge between floor and wall.

    Each level is a rounded rectangle. Sides and corner radius change linearly with depth; near the floor they
    follow an arc of the cove radius that touches floor and wall. The area of this ruled surface is integrated
    numerically (converged to 1e-6). It equals the frustum when all radii are 0, and is never larger.
    Raises ValueError for a floor larger than the rim, a radius above half a side, or a cove that does not fit.
    Source: own-computation, own.
    """
    _check_frustum(rim_length_m, rim_width_m, floor_length_m, floor_width_m, depth_m)
    rounded_rectangle_area_m2(rim_length_m, rim_width_m, rim_corner_radius_m)
    rounded_rectangle_area_m2(floor_length_m, floor_width_m, floor_corner_radius_m)
    not_negative(cove_radius_m=cove_radius_m)
    rim = _Shape(rim_length_m / 2.0, rim_width_m / 2.0, rim_corner_radius_m)
    slopes = _Shape(
        (rim_length_m - floor_length_m) / 2.0 / depth_m,
        (rim_width_m - floor_width_m) / 2.0 / depth_m,
        (rim_corner_radius_m - floor_corner_radius_m) / depth_m,
    )
    end_angle = math.pi / 2.0 - math.atan(min(slopes.end, slopes.side))
    straight_m = depth_m - cove_radius_m * (1.0 - math.cos(end_angle))
    not_negative(wall_above_cove_m=straight_m)
    middle = _moved(rim, slopes, -straight_m / 2.0)
    top_of_cove = _moved(rim, slopes, -straight_m)
    walls = straight_m * middle.wall(1.0, slopes)
    floor = _cove_level(0.0, top_of_cove, slopes, cove_radius_m, end_angle)
    not_negative(flat_floor_m=min(floor.end, floor.side) + 1e-12)

    def cove(angle: float) -> float:
        rise, flat = math.sin(angle), math.cos(angle)
        run = _Shape(*(max(flat, slope * rise) for slope in (slopes.end, slopes.side, slopes.corner)))
        return _cove_level(angle, top_of_cove, slopes, cove_radius_m, end_angle).wall(rise, run)

    if cove_radius_m > 0.0:
        walls += cove_radius_m * _simpson(cove, 0.0, end_angle, _COVE_PANELS)
    return TubAreas(4.0 * floor.end * floor.side - (4.0 - math.pi) * floor.corner**2, walls)


def _moved(level: _Shape, slopes: _Shape, rise_m: float) -> _Shape:
    return _Shape(
        level.end + slopes.end * rise_m,
        level.side + slopes.side * rise_m,
        level.corner + slopes.corner * rise_m,
    )
