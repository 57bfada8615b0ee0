"""What all records share: the decorator, measured values, the private mark."""

from dataclasses import dataclass
from typing import Annotated, Any, TypeVar, dataclass_transform

from bathwright.units import KINDS, read_quantity

_T = TypeVar("_T")


@dataclass_transform(kw_only_default=True, frozen_default=True)
def record(cls: type[_T]) -> type[_T]:
    """A frozen, slotted, keyword-only dataclass. The door refuses keys that it does not know."""
    made: Any = dataclass(frozen=True, slots=True, kw_only=True)(cls)
    made.__pydantic_config__ = {"extra": "forbid", "strict": True, "allow_inf_nan": False}
    return made  # type: ignore[no-any-return]


@dataclass(frozen=True, slots=True)
class Measured:
    """Marks a float field as a quantity of one kind: text with a unit outside, SI inside.

    The two hooks below are the door's protocol (pydantic calls them); they return plain tables, so
    that no record imports the door's library.
    """

    kind: str

    def parse(self, value: object) -> float:
        """SI value of the typed text. ValueError with one plain line when it is no such quantity."""
        if isinstance(value, str):
            return read_quantity(value, self.kind)
        example = " or ".join(f'"{text}"' for text in KINDS[self.kind].examples)
        what = "a bare number" if isinstance(value, int | float) and not isinstance(value, bool) else repr(value)[:40]
        raise ValueError(f"{what} stands where a quantity with its unit is needed; write {example}")

    def __get_pydantic_core_schema__(self, source: object, handler: object) -> dict[str, object]:
        """How the door reads the field: the text goes through `parse`."""
        return {"type": "function-plain", "function": {"type": "no-info", "function": self.parse}}

    def __get_pydantic_json_schema__(self, schema: object, handler: Any) -> dict[str, object]:
        """How the field is described: text with a unit when read, an SI number when written."""
        kind = KINDS[self.kind]
        if getattr(handler, "mode", "validation") == "serialization":
            return {"type": "number", "description": f"{self.kind}, in {kind.si}"}
        return {"type": "string", "description": f"{self.kind} with unit", "examples": list(kind.examples)}


class Private:
    """Marks a field whose content never leaves through anything published."""


PRIVATE = Private()

Length = Annotated[float, Measured("length")]
Film = Annotated[float, Measured("film")]
Area = Annotated[float, Measured("area")]
Volume = Annotated[float, Measured("volume")]
Liquid = Annotated[float, Measured("liquid")]
Mass = Annotated[float, Measured("mass")]
Temperature = Annotated[float, Measured("temperature")]
TemperatureStep = Annotated[float, Measured("temperature_step")]
Duration = Annotated[float, Measured("time")]
Flow = Annotated[float, Measured("flow")]
Rate = Annotated[float, Measured("rate")]
Share = Annotated[float, Measured("share")]
Humidity = Annotated[float, Measured("humidity")]
Concentration = Annotated[float, Measured("concentration")]
Density = Annotated[float, Measured("density")]
VapourPpm = Annotated[float, Measured("vapour_ppm")]
