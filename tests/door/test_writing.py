"""Records written back: decimals by kind, instants in UTC, files whole or not at all."""

import json
import math
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bathwright.domain.record import record
from bathwright.domain.sheet import Amount, Range
from bathwright.domain.survey import Place, Sizes, Survey
from bathwright.domain.values import Band, Number, Span, Value
from bathwright.door.sheet import read_sheet
from bathwright.door.survey import read_survey, survey_from_text
from bathwright.door.writing import field_kinds, plain, private_paths, to_json, write_files
from bathwright.units import KINDS, rounded

ROOT = Path(__file__).parents[2]
SURVEYS = sorted((ROOT / "examples" / "surveys").glob("*.toml"))
SHEETS = sorted((ROOT / "src" / "bathwright" / "knowledge" / "sheets").glob("*.toml"))


@record
class Sample:
    """Fields whose unit stands at the end of their name."""

    wait_s: float = 1.6
    air_k: float = 293.14999
    volume_m3: float = 0.00094635294
    film_m: float = 5.0812345678e-5
    flow_m3_s: float = 0.1274258
    area_m2: float = 2.123456
    loss_kg: float = 0.1234567
    level_kg_m3: float = 1.2345678901234e-4
    pull_pa: float = 2.3456
    change_per_s: float = 1.23456789012e-4
    speed_m_s: float = 0.1
    energy_j_mol: float = 55000.04
    share: float = 0.123456789
    nothing: float | None = None
    whole: int = 3
    yes: bool = True


def test_numbers_are_rounded_by_the_unit_in_their_name() -> None:
    assert plain(Sample()) == {
        "wait_s": 2.0, "air_k": 293.15, "volume_m3": 0.0009464, "film_m": 5.0812e-5, "flow_m3_s": 0.127426,
        "area_m2": 2.1235, "loss_kg": 0.123457, "level_kg_m3": 0.000123456789, "pull_pa": 2.35,
        "change_per_s": 0.000123457, "speed_m_s": 0.1, "energy_j_mol": 55000.0, "share": 0.123457, "nothing": None,
        "whole": 3, "yes": True,
    }  # fmt: skip


def test_numbers_are_rounded_by_the_kind_that_stands_beside_them() -> None:
    assert plain(Amount(value=5400.4, kind="time"))["value"] == 5400.0
    assert plain(Range(low=None, high=293.1549, kind="temperature")) == {
        "low": None,
        "high": 293.15,
        "kind": "temperature",
    }
    assert plain(Value(name="film", value=5.08123456789e-5, kind="film"))["value"] == 5.0812e-5
    assert plain(Value(name="word", value="wet", kind=None))["value"] == "wet"
    assert plain(Number(value=0.33333333, kind="share", source="x", mark="own"))["value"] == 0.333333
    band = Band(low=0.11111111, central=0.2, high=0.3, kind="flow", source="x", mark="own")
    assert plain(band)["low"] == 0.111111


def test_measured_fields_know_their_kind() -> None:
    assert field_kinds(Sizes)["length"] == "length"
    assert field_kinds(Sizes)["area"] == "area"
    assert "country" not in field_kinds(Place)
    assert plain(Sizes(length=1.52399999))["length"] == 1.524
    assert private_paths(Survey) == ("people",)


@given(value=st.floats(-1e12, 1e12))
def test_no_minus_zero_and_no_growth(value: float) -> None:
    for kind in KINDS:
        out = plain(Amount(value=value, kind=kind))["value"]
        assert out == rounded(value, kind)
        assert not (out == 0 and math.copysign(1.0, out) < 0)


@given(
    when=st.datetimes(min_value=datetime.fromisoformat("2000-01-01"), max_value=datetime.fromisoformat("2100-01-01")),
    zone=st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes))),
)
def test_instants_are_written_in_utc(when: datetime, zone: timezone) -> None:
    aware = when.replace(tzinfo=zone, microsecond=0)
    text = plain(Span(starts=aware, ends=aware))["starts"]
    assert text.endswith("Z")
    assert datetime.fromisoformat(text) == aware
    assert datetime.fromisoformat(text).tzinfo == UTC


def test_wall_clocks_and_days_stay_as_they_are() -> None:
    assert plain(datetime.fromisoformat("2026-12-05T08:00:00")) == "2026-12-05T08:00:00"
    assert plain(date(2026, 12, 5)) == "2026-12-05"
    assert plain((1.0, (date(2026, 12, 5),)), "wait_s") == [1.0, ["2026-12-05"]]


def test_json_refuses_what_is_no_number() -> None:
    with pytest.raises(ValueError, match="JSON compliant"):
        to_json(Amount(value=math.nan, kind="time"))
    with pytest.raises(ValueError, match="JSON compliant"):
        to_json(Sample(wait_s=math.inf))


@pytest.mark.parametrize("path", SURVEYS, ids=lambda path: path.stem)
def test_a_survey_that_was_read_and_written_keeps_its_numbers(path: Path) -> None:
    survey = read_survey(path)
    written = json.loads(to_json(survey))
    assert to_json(survey) == to_json(read_survey(path))
    assert _differences(survey, written, "") == []


@pytest.mark.parametrize("path", SHEETS, ids=lambda path: path.stem)
def test_a_sheet_that_was_read_and_written_keeps_its_numbers(path: Path) -> None:
    sheet = read_sheet(path)
    assert _differences(sheet, json.loads(to_json(sheet)), "") == []
    assert len(sheet.digest) == 16


@given(length=st.integers(900, 2300), depth=st.integers(150, 850), flow=st.integers(1, 9000))
def test_any_typed_size_keeps_its_decimals(length: int, depth: int, flow: int) -> None:
    text = (ROOT / "examples" / "surveys" / "stripper.toml").read_text(encoding="utf-8")
    text = text.replace('length = "60 in"', f'length = "{length} mm"').replace(
        'depth = "14 in"', f'depth = "{depth} mm"'
    )
    text = text.replace('rating = "50 cfm"', f'rating = "{flow} m3/h"')
    survey = survey_from_text(text, "in.toml")
    written = json.loads(to_json(survey))
    assert written["fixtures"][0]["sizes"]["length"] == round(length / 1000, 4)
    assert written["fixtures"][0]["sizes"]["depth"] == round(depth / 1000, 4)
    assert abs(written["equipment"][0]["rating"] * 3600 - flow) <= 0.5e-6 * 3600
    assert _differences(survey, written, "") == []


def _differences(record: Any, written: Any, place: str, kind: str | None = None) -> list[str]:
    """Numbers that moved by more than half of the last decimal of their kind, or got lost."""
    if isinstance(record, float):
        step = 10.0 ** -KINDS[kind].decimals if kind else 1e-5 * abs(record)
        return [] if abs(record - written) <= step / 2 + 1e-12 else [f"{place}: {record} -> {written}"]
    if isinstance(record, tuple):
        lost = [] if len(record) == len(written) else [f"{place}: {len(record)} -> {len(written)}"]
        parts = enumerate(zip(record, written, strict=True))
        return lost + [d for i, (a, b) in parts for d in _differences(a, b, f"{place}[{i}]", kind)]
    if hasattr(record, "__dataclass_fields__"):
        own = getattr(record, "kind", None)
        kinds = field_kinds(type(record))
        out = []
        for name in record.__dataclass_fields__:
            beside = own if own in KINDS else None
            out += _differences(getattr(record, name), written[name], f"{place}.{name}", kinds.get(name) or beside)
        return out
    same = record == written or str(record) == written or record.isoformat() == written
    return [] if same else [f"{place}: {record!r} -> {written!r}"]


def test_files_are_written_whole(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "deep"
    places = write_files(folder, {"plan.json": "{}\n", "plan.html": "<p>µ</p>\r\n"})
    assert [place.name for place in places] == ["plan.json", "plan.html"]
    assert (folder / "plan.html").read_bytes() == "<p>µ</p>\r\n".encode()
    assert (folder / "plan.json").stat().st_mode & 0o777 == 0o644
    write_files(folder, {"plan.json": "[]\n"})
    assert (folder / "plan.json").read_text(encoding="utf-8") == "[]\n"
    assert sorted(entry.name for entry in folder.iterdir()) == ["plan.html", "plan.json"]


def _old(folder: Path) -> dict[str, str]:
    for name in ("a.txt", "b.txt"):
        (folder / name).write_text(f"old {name}", encoding="utf-8")
    return {name: f"new {name}" for name in ("a.txt", "b.txt", "c.txt")}


def _stands(folder: Path) -> dict[str, str]:
    return {e.name: e.read_text(encoding="utf-8") if e.is_file() else "folder" for e in sorted(folder.iterdir())}


def test_a_folder_in_the_way_changes_nothing(tmp_path: Path) -> None:
    files = _old(tmp_path)
    (tmp_path / "c.txt").mkdir()
    before = _stands(tmp_path)
    with pytest.raises(OSError, match="is a folder"):
        write_files(tmp_path, files)
    assert _stands(tmp_path) == before


@pytest.mark.parametrize("fails_at", [1, 2, 3, 4, 5])
def test_a_move_that_fails_half_way_is_taken_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails_at: int
) -> None:
    files = _old(tmp_path)
    before = _stands(tmp_path)
    calls: list[str] = []
    move = Path.replace

    def failing(self: Path, target: Path) -> Path:
        calls.append(self.name)
        if len(calls) == fails_at:
            raise PermissionError(13, "no room left")
        return move(self, target)

    monkeypatch.setattr(Path, "replace", failing)
    with pytest.raises(PermissionError):
        write_files(tmp_path, files)
    monkeypatch.undo()
    assert _stands(tmp_path) == before


def test_a_text_that_cannot_be_written_changes_nothing(tmp_path: Path) -> None:
    files = _old(tmp_path)
    before = _stands(tmp_path)
    with pytest.raises(UnicodeEncodeError):
        write_files(tmp_path, {**files, "d.txt": "\ud800"})
    assert _stands(tmp_path) == before


def test_a_file_where_the_folder_should_be(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file", encoding="utf-8")
    with pytest.raises(OSError):
        write_files(tmp_path / "out", {"a.txt": "x"})
    with pytest.raises(OSError):
        write_files(tmp_path / "out" / "deep", {"a.txt": "x"})
    assert _stands(tmp_path) == {"out": "a file"}


def test_a_folder_that_may_not_be_written_stays_as_it_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Root may write everywhere, so the refusal is played."""
    files = _old(tmp_path)
    before = _stands(tmp_path)

    def refuse(*_: object, **__: object) -> tuple[int, str]:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("bathwright.door.writing.tempfile.mkstemp", refuse)
    with pytest.raises(PermissionError):
        write_files(tmp_path, files)
    assert _stands(tmp_path) == before
