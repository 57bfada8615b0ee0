"""The book of knowledge: loads the data files once and answers by key."""

import hashlib
import tomllib
from dataclasses import dataclass
from functools import cache, cached_property
from importlib.resources import files
from typing import Any

from bathwright.domain.sheet import Sheet
from bathwright.domain.values import Band, Number
from bathwright.door.sheet import sheet_from_text
from bathwright.knowledge import readers
from bathwright.knowledge.records import Fan, LimitEntry, Pair, PlaceEntry, RuleDate, Substance

DATA_FILES = (
    "air", "coating_defaults", "dates", "exposure_limits", "fans", "fixtures", "pairs", "places",
    "substances",
)  # fmt: skip


def data_text(name: str) -> str:
    """The text of one data file of the package."""
    return files("bathwright.knowledge").joinpath("data", f"{name}.toml").read_text(encoding="utf-8")


@dataclass(frozen=True)
class Knowledge:
    """All knowledge, read on first use. `texts` are the data files by name."""

    texts: dict[str, str]

    def _table(self, name: str) -> dict[str, Any]:
        return tomllib.loads(self.texts[name])  # our own file: no need of the door's limits

    @cached_property
    def version(self) -> str:
        """Digest over all data files: the same knowledge has the same version."""
        digest = hashlib.sha256()
        for name in sorted(self.texts):
            digest.update(name.encode() + self.texts[name].encode())
        return digest.hexdigest()[:12]

    @cached_property
    def substances(self) -> dict[str, Substance]:
        """Substances by CAS number."""
        return {s.cas: s for s in map(readers.substance, self._table("substances")["substance"])}

    @cached_property
    def limits(self) -> tuple[LimitEntry, ...]:
        """All exposure limits."""
        return tuple(map(readers.limit, self._table("exposure_limits")["limit"]))

    @cached_property
    def limits_of(self) -> dict[str, tuple[LimitEntry, ...]]:
        """Exposure limits by CAS number."""
        out: dict[str, tuple[LimitEntry, ...]] = {}
        for entry in self.limits:
            out[entry.cas] = (*out.get(entry.cas, ()), entry)
        return out

    @cached_property
    def pairs(self) -> dict[frozenset[str], Pair]:
        """Pairs of materials by the set of their two codes."""
        found = map(readers.pair, self._table("pairs")["pair"])
        return {frozenset((pair.a, pair.b)): pair for pair in found}

    @cached_property
    def fans(self) -> dict[str, Fan]:
        """Fans by kind."""
        return {fan.kind: fan for fan in map(readers.fan, self._table("fans")["fan"])}

    @cached_property
    def places(self) -> dict[str, PlaceEntry]:
        """Places by country code."""
        return {place.country: place for place in map(readers.place, self._table("places")["place"])}

    @cached_property
    def rule_dates(self) -> tuple[RuleDate, ...]:
        """When rules of law took effect."""
        return tuple(map(readers.rule_date, self._table("dates")["rule_date"]))

    @cached_property
    def bands(self) -> dict[str, Band | Number]:
        """Numbers and bands of air, coating and fixtures by "file.table.key"."""
        out: dict[str, Band | Number] = {}
        for name in ("air", "coating_defaults", "fixtures"):
            out.update(readers.tree(self._table(name), name))
        return out

    def band(self, key: str) -> Band:
        """The band with this key. KeyError when there is none."""
        found = self.bands[key]
        if isinstance(found, Band):
            return found
        value = found.value
        return Band(low=value, central=value, high=value, kind=found.kind, source=found.source, mark=found.mark)

    def number(self, key: str) -> Number:
        """The number with this key. KeyError when there is none or it is a band."""
        found = self.bands[key]
        if isinstance(found, Number):
            return found
        raise KeyError(key)

    @cached_property
    def sheets(self) -> tuple[Sheet, ...]:
        """The invented sheets that come with the tool, by file name."""
        folder = files("bathwright.knowledge").joinpath("sheets")
        names = sorted(entry.name for entry in folder.iterdir() if entry.name.endswith(".toml"))
        return tuple(sheet_from_text(folder.joinpath(name).read_text(encoding="utf-8"), name) for name in names)


@cache
def load() -> Knowledge:
    """The knowledge of this package."""
    return Knowledge(texts={name: data_text(name) for name in DATA_FILES})
