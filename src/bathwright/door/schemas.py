"""JSON Schema of the files: surveys and sheets as people write them, plans as the program writes them.

A sheet's facts are written in short forms (text with a unit, { low, high }, { code, allowed }, …) and read into
records; the schema describes what is written. What the door checks beyond that (sizes, sums, hours) is not in it.
"""

from typing import Any

from bathwright.domain.codes import OBSERVATIONS
from bathwright.domain.plan import Plan
from bathwright.domain.sheet import FACT_KINDS, Sheet
from bathwright.domain.survey import Survey
from bathwright.door.countries import COUNTRIES
from bathwright.door.reader import adapter
from bathwright.door.sheet import FACT_WORDS
from bathwright.door.survey_sense import ID
from bathwright.units import KINDS

_RECORDS: dict[str, type[Any]] = {"survey": Survey, "sheet": Sheet, "plan": Plan}
_LOCAL_TIME = {"type": "string", "pattern": r"^\d{4}-\d{2}-\d{2}[T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?$"}
_READ_INTO = ("Amount", "Range", "Choice", "Ratio", "Instruction")


def json_schema(of: str) -> dict[str, Any]:
    """The schema of "survey", "sheet" (as files are written by people) or "plan" (as the program writes it)."""
    mode = "serialization" if of == "plan" else "validation"
    made: dict[str, Any] = adapter(_RECORDS[of]).json_schema(mode=mode)  # type: ignore[arg-type]
    if of != "plan":
        made = _as_written(made)
    if of == "survey":
        _survey(made)
    if of == "sheet":
        _sheet(made)
    return {**made, "$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"bathwright {of}"}


def _as_written(node: Any) -> Any:
    """Without null (TOML has none), and with times of day as wall clocks without zone."""
    if isinstance(node, list):
        return [_as_written(entry) for entry in node]
    if not isinstance(node, dict):
        return node
    out = {key: _as_written(entry) for key, entry in node.items() if not (key == "default" and entry is None)}
    if out.get("format") == "date-time":
        out = {key: entry for key, entry in out.items() if key != "format"} | _LOCAL_TIME
    arms = out.get("anyOf")
    if isinstance(arms, list) and {"type": "null"} in arms:
        kept = [arm for arm in arms if arm != {"type": "null"}]
        rest = {key: entry for key, entry in out.items() if key != "anyOf"}
        return rest | (kept[0] if len(kept) == 1 else {"anyOf": kept})
    return out


def _survey(made: dict[str, Any]) -> None:
    made["properties"]["id"]["pattern"] = f"^{ID}$"
    made["$defs"]["Place"]["properties"]["country"]["enum"] = [*COUNTRIES]
    seen = made["$defs"]["Observation"]
    seen["properties"]["what"]["enum"] = [*OBSERVATIONS]
    seen["properties"]["result"]["enum"] = list(
        dict.fromkeys(word for words in OBSERVATIONS.values() for word in words)
    )
    seen["allOf"] = [_when("what", what, "result", {"enum": [*words]}) for what, words in OBSERVATIONS.items()]
    seen["allOf"].append({"if": _is("what", "surface_temperature"), "then": {"required": ["value"]}})


def _sheet(made: dict[str, Any]) -> None:
    made["properties"]["id"]["pattern"] = f"^{ID}$"
    del made["properties"]["digest"]
    for name in _READ_INTO:
        del made["$defs"][name]
    fact = made["$defs"]["Fact"]
    fact["properties"]["kind"]["enum"] = [*FACT_KINDS]
    fact["properties"]["value"] = {"description": "its form depends on the kind of the fact"}
    fact["allOf"] = [_when("kind", kind, "value", _value(kind)) for kind in FACT_KINDS]


def _is(key: str, word: str) -> dict[str, Any]:
    return {"properties": {key: {"const": word}}, "required": [key]}


def _when(key: str, word: str, other: str, schema: dict[str, Any]) -> dict[str, Any]:
    return {"if": _is(key, word), "then": {"properties": {other: schema}}}


def _value(kind: str) -> dict[str, Any]:
    """The form in which a sheet writes the value of a kind of fact."""
    form, quantity, _ = FACT_KINDS[kind]
    if form == "amount":
        return _amount(str(quantity))
    text = {"type": "string"}
    if form == "range":
        return {**_table(low=_amount(str(quantity)), high=_amount(str(quantity))), "minProperties": 1}
    if form == "choice":
        return _table(["code"], code={"enum": FACT_WORDS[kind]}, allowed={"type": "boolean"})
    if form == "ratio":
        numbers = {"type": "array", "items": {"type": "number", "exclusiveMinimum": 0}, "minItems": 1}
        return _table(["by", "numbers"], by={"enum": ["volume", "weight"]}, numbers=numbers)
    return _table(["act"], act=text, values={"type": "array", "items": text})


def _amount(quantity: str) -> dict[str, Any]:
    text = {"type": "string", "description": f"{quantity} with unit", "examples": [*KINDS[quantity].examples]}
    return {"anyOf": [{"type": "integer", "minimum": 0}, text]} if quantity == "count" else text


def _table(required: list[str] | None = None, **properties: Any) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": properties,
        "required": required or [],
        "additionalProperties": False,
    }
