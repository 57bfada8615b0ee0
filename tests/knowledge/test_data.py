"""The data files: every number has a source that exists and a mark; bands are in order."""

import re
import tomllib
from pathlib import Path

import pytest

from bathwright import sources
from bathwright.knowledge import load
from bathwright.knowledge.book import DATA_FILES, data_text

KNOWLEDGE = load()
SOURCE = Path(__file__).parent.parent.parent / "src"


def numbers(value: object, path: str):
    """All tables that hold a value or a band, with their path."""
    if isinstance(value, dict):
        if "value" in value or "central" in value:
            yield path, value
        for key, inner in value.items():
            yield from numbers(inner, f"{path}.{key}")
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from numbers(inner, f"{path}[{index}]")


@pytest.mark.parametrize("name", DATA_FILES)
def test_every_number_has_a_known_source_and_a_mark(name: str) -> None:
    marks = {"verified", "secondary", "memory", "own", "judgement", "common_practice"}
    found = list(numbers(tomllib.loads(data_text(name)), name))
    for path, table in found:
        assert table.get("source") in sources.load(), path
        assert table.get("mark") in marks, path


def test_every_record_of_a_data_file_cites_a_known_source() -> None:
    for name in DATA_FILES:
        for key, entries in tomllib.loads(data_text(name)).items():
            for entry in entries if isinstance(entries, list) else ():
                if "source" in entry:
                    assert entry["source"] in sources.load(), (name, key, entry)


def test_every_source_is_used_somewhere() -> None:
    """A source that nothing cites is clutter, or a citation that got lost."""
    text = "".join(data_text(name) for name in DATA_FILES)
    roots = (SOURCE, SOURCE.parent / "tests")
    for root in roots:
        for suffix in ("*.py", "*.toml"):
            text += "".join(p.read_text("utf-8") for p in root.rglob(suffix) if p.name != "sources.toml")
    listed = set(re.findall(r"[a-z0-9]+(?:-[a-z0-9]+)*", text))
    unused = [name for name in sources.load() if name not in listed]
    assert unused == []


def test_sources_are_unique_and_complete() -> None:
    raw = tomllib.loads((SOURCE / "bathwright/sources/sources.toml").read_text("utf-8"))["source"]
    assert len(raw) == len({entry["id"] for entry in raw})
    for entry in raw:
        assert entry["citation"].strip() and entry["mark"] and entry["read"], entry["id"]


def test_every_pair_of_the_25_materials_is_there_once() -> None:
    materials = {name for pair in KNOWLEDGE.pairs for name in pair}
    assert len(materials) == 25
    assert len(KNOWLEDGE.pairs) == 25 * 24 // 2


def test_bleach_and_acid_can_kill_and_one_rinse_is_not_enough() -> None:
    """MMWR 1991;40(36):619: rinsed once after 4 % phosphoric acid, then bleach: gas, ward evacuated [verified]."""
    pair = KNOWLEDGE.pairs[frozenset(("bleach", "descaler"))]
    assert (pair.severity, pair.sequence) == ("kills", "another_day")


def test_limits_name_substances_that_are_known() -> None:
    for limit in KNOWLEDGE.limits:
        assert limit.cas in KNOWLEDGE.substances, limit.id
        assert limit.value.value > 0
        assert limit.kind == "law" or not limit.law_in, limit.id


@pytest.mark.parametrize(
    ("cas", "body", "measure", "ppm"),
    [
        # air.md 6.2, marked there [verified]
        ("67-64-1", "OSHA", "mean_8h", 1000),
        ("123-86-4", "OSHA", "mean_8h", 150),
        ("1330-20-7", "OSHA", "mean_8h", 100),
        ("108-88-3", "OSHA", "mean_8h", 200),
        ("75-09-2", "OSHA", "mean_8h", 25),
        ("75-09-2", "OSHA", "mean_15min", 125),
        ("108-88-3", "NIOSH", "idlh", 500),
        ("123-86-4", "NIOSH", "idlh", 1700),
        ("75-09-2", "NIOSH", "idlh", 2300),
    ],
)
def test_published_workplace_limits(cas: str, body: str, measure: str, ppm: float) -> None:
    found = [x for x in KNOWLEDGE.limits if (x.cas, x.body, x.measure) == (cas, body, measure)]
    assert [x.value.value * 1e6 for x in found] == [pytest.approx(ppm)]


@pytest.mark.parametrize(
    ("cas", "micrograms", "ppm"),
    [
        # Minnesota Pollution Control Agency, Inhalation Health Benchmarks (2023), acute [verified]
        ("67-64-1", 19000, 8.0), ("108-88-3", 5000, 1.33), ("1330-20-7", 22000, 5.07), ("78-93-3", 3000, 1.02),
        ("75-09-2", 10000, 2.88), ("67-63-0", 3200, 1.30), ("100-41-4", 10000, 2.30),
    ],
)  # fmt: skip
def test_public_acute_values(cas: str, micrograms: float, ppm: float) -> None:
    from bathwright.physics.vapour import kg_m3_from_ppm
    from bathwright.simulation.exposures import limits_for

    (limit,) = [
        e for e in KNOWLEDGE.limits if e.cas == cas and e.body == "Minnesota" and e.measure == "mean_1h"
    ]  # fmt: skip
    assert (
        limits_for(cas, ("mean_1h",), "public", None, KNOWLEDGE)["mean_1h"][0].value_kg_m3 <= micrograms * 1e-9 * 1.01
    )
    molar = KNOWLEDGE.substances[cas].molar_mass.value
    value = limit.value.value if limit.value.kind == "concentration" else kg_m3_from_ppm(limit.value.value * 1e6, molar)
    assert value == pytest.approx(micrograms * 1e-9, rel=0.01)
    assert kg_m3_from_ppm(ppm, molar) == pytest.approx(micrograms * 1e-9, rel=0.01)
