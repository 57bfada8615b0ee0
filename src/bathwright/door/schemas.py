"""JSON Schema of the files, made from the records."""

from typing import Any

from bathwright.domain.plan import Plan
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Survey
from bathwright.door.reader import adapter

_RECORDS: dict[str, type[Any]] = {"survey": Survey, "sheet": Sheet, "plan": Plan}


def json_schema(of: str) -> dict[str, Any]:
    """The schema of "survey", "sheet" (as read) or "plan" (as written)."""
    mode = "serialization" if of == "plan" else "validation"
    made: dict[str, Any] = adapter(_RECORDS[of]).json_schema(mode=mode)  # type: ignore[arg-type]
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "title": f"bathwright {of}", **made}
