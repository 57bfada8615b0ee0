"""Areas of a fixture by part, from its sizes; what was not told is assumed and said."""

from bathwright.domain.codes import Mark, Part
from bathwright.domain.plan import AreaPart, Assumption
from bathwright.domain.survey import Fixture, Sizes
from bathwright.domain.values import Number
from bathwright.knowledge.book import Knowledge
from bathwright.physics import geometry

_BOXES = ("bath", "basin", "shower_tray", "kitchen_sink")


def areas(fixture: Fixture, country: str, knowledge: Knowledge) -> tuple[tuple[AreaPart, ...], tuple[Assumption, ...]]:
    """Areas by part in m2, and the assumptions that they rest on.

    A bath, basin, tray or sink is a rounded tapered box; tile is a rectangle, a large one where a side was not told.
    A told area wins over sizes.
    """
    sizes = fixture.sizes
    if sizes.area is not None:
        return (_part(fixture, "face", sizes.area, "told", "own"),), ()
    if fixture.kind == "wall_tile":
        return _tile(fixture, knowledge)
    assumed: list[Assumption] = []
    box = _Box(sizes, _defaults(fixture, country, knowledge), assumed)
    inside = geometry.tub_inside_areas_m2(
        box.opening_length,
        box.opening_width,
        box.floor_length,
        box.floor_width,
        box.depth,
        rim_corner_radius_m=box.corner,
        floor_corner_radius_m=min(box.corner, box.floor_width / 2, box.floor_length / 2) * 0.6,
        cove_radius_m=box.cove,
    )
    rim = geometry.rim_area_m2(box.length, box.width, box.opening_length, box.opening_width, box.corner)
    parts = [
        _part(fixture, "floor", inside.floor, "rounded tapered box", "own"),
        _part(fixture, "walls", inside.walls, "rounded tapered box", "own"),
        _part(fixture, "rim", rim, "outer rectangle less opening", "own"),
    ]
    if fixture.coat_apron and sizes.apron_height:
        parts.append(_part(fixture, "apron", box.length * sizes.apron_height, "rectangle", "own"))
    return tuple(parts), tuple(assumed)


def _tile(fixture: Fixture, knowledge: Knowledge) -> tuple[tuple[AreaPart, ...], tuple[Assumption, ...]]:
    length, height = fixture.sizes.length, fixture.sizes.height
    if length is not None and height is not None:
        return (_part(fixture, "face", geometry.rectangle_area_m2(length, height), "rectangle", "own"),), ()
    usual = knowledge.band("fixtures.wall_tile.area")
    assumed = Assumption(code="size-area", value=usual.high, kind=usual.kind, source=usual.source, mark=usual.mark)
    return (_part(fixture, "face", usual.high, "assumed", usual.mark),), (assumed,)


def basin_m3(fixture: Fixture, country: str, knowledge: Knowledge) -> float | None:
    """Volume of a box to its rim in m3, the basin in which heavy vapour lies; None for tile or a told area alone."""
    if fixture.kind == "wall_tile":
        return None
    box = _Box(fixture.sizes, _defaults(fixture, country, knowledge), [])
    return geometry.frustum_volume_m3(
        box.opening_length, box.opening_width, box.floor_length, box.floor_width, box.depth
    )  # fmt: skip


def total_area(parts: tuple[AreaPart, ...]) -> float:
    """Sum of the parts in m2."""
    return sum(part.area_m2 for part in parts)


def _part(fixture: Fixture, part: Part, area: float, how: str, mark: Mark) -> AreaPart:
    return AreaPart(fixture=fixture.id, part=part, area_m2=area, how=how, mark=mark)


def _defaults(fixture: Fixture, country: str, knowledge: Knowledge) -> dict[str, Number]:
    """Default shape numbers of this kind of fixture; the place's usual size where it has one."""
    base = f"fixtures.{fixture.kind}."
    usual = f"fixtures.{fixture.kind}.usual.{'us' if country in ('US', 'CA') else 'metric'}."
    out: dict[str, Number] = {}
    for key, value in knowledge.bands.items():
        if isinstance(value, Number):
            for prefix in (base, usual):
                name = key.removeprefix(prefix)
                if name != key and "." not in name:
                    out[name] = value
    return out


class _Box:
    """The box of a fixture: told sizes first, then defaults, each default noted."""

    def __init__(self, sizes: Sizes, defaults: dict[str, Number], assumed: list[Assumption]) -> None:
        def size(name: str, told: float | None) -> float:
            if told is not None:
                return told
            number = defaults[name]
            assumed.append(
                Assumption(
                    code=f"size-{name.replace('_', '-')}",
                    value=number.value,
                    kind=number.kind,
                    source=number.source,
                    mark=number.mark,
                )
            )
            return number.value

        self.length = size("length", sizes.length)
        self.width = size("width", sizes.width)
        self.depth = size("depth", sizes.depth)
        rim = size("rim_width", sizes.rim_width)
        self.opening_length = self.length - 2 * min(rim, 0.4 * self.length)
        self.opening_width = self.width - 2 * min(rim, 0.4 * self.width)
        told_floor = sizes.floor_length, sizes.floor_width
        self.floor_length = self._floor(told_floor[0], self.opening_length, size, "floor_length_share")
        self.floor_width = self._floor(told_floor[1], self.opening_width, size, "floor_width_share")
        corner = size("corner_radius", sizes.corner_radius)
        self.corner = min(corner, 0.49 * min(self.opening_length, self.opening_width))
        self.cove = min(size("cove_radius", None), 0.3 * self.depth, 0.2 * min(self.floor_length, self.floor_width))

    @staticmethod
    def _floor(told: float | None, opening: float, size: object, name: str) -> float:
        if told is not None:
            return min(told, opening)
        return float(size(name, None)) * opening  # type: ignore[operator]
