"""One bibliography. Every number and rule cites an id of it."""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One source: what it is, where in it, how much of it was read, how far it may be trusted."""

    id: str
    kind: str
    citation: str
    locator: str
    year: int
    read: str
    mark: str
    edition_read: str = ""
    note: str = ""


@cache
def load() -> dict[str, Source]:
    """All sources by id, in the order of the file."""
    text = files("bathwright.sources").joinpath("sources.toml").read_text(encoding="utf-8")
    return {entry["id"]: Source(**entry) for entry in tomllib.loads(text)["source"]}


def citation(source_id: str) -> str:
    """The citation with its place; the id itself when it is not in the bibliography."""
    source = load().get(source_id)
    if source is None:
        return source_id
    return f"{source.citation}, {source.locator}" if source.locator else source.citation
