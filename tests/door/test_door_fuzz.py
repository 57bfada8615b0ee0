"""Whatever stands in a file: the door reads it or raises DoorError, nothing else."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from bathwright.door.faults import DoorError
from bathwright.door.sheet import sheet_from_text
from bathwright.door.survey import survey_from_text
from bathwright.door.toml_file import parse_toml

ROOT = Path(__file__).parents[2]
DEMO = (ROOT / "examples" / "surveys" / "demo.toml").read_text(encoding="utf-8")
SHEET = (ROOT / "src" / "bathwright" / "knowledge" / "sheets" / "solvent-epoxy.toml").read_text(encoding="utf-8")
SCOPE = settings(derandomize=True, deadline=None, max_examples=150)

VALUES = st.sampled_from(
    [
        "nan", "inf", "-inf", "true", "false", "0", "-1", "1e308", "99999999999999999999999", '""', '"x"', '" "',
        '"60 in"', '"1e999 m"', '"-5 °C"', '"½"', '"100 %"', '"1/0 in"', "[]", "{}", "[[]]", '["x"]', "[1, 'a', true]",
        "{ a = 1 }", "{ low = 1 }", '{ low = "1 h", high = "0 h" }', "{ code = 1 }", "{ numbers = [] }",
        "{ by = 'volume', numbers = [0.0] }", "2026-12-05", "08:00:00", "2026-12-05T08:00:00Z", "0001-01-01",
        "9999-12-31T23:59:59.999999-23:59", '"\\u0000"', '"\\U0010FFFF"', '"""a\nb"""', "'''\n'''", "", "= =",
    ]
)  # fmt: skip
HEADS = st.sampled_from(
    ["[x]", "[[x]]", "[place]", "[[fixtures]]", "[[facts]]", "[[parts]]", "[a.b.c]", "[", "]", "]]"]
)


@st.composite
def mutated(draw: st.DrawFn, text: str) -> str:
    lines = text.split("\n")
    for _ in range(draw(st.integers(1, 6))):
        at = draw(st.integers(0, len(lines) - 1))
        how = draw(st.integers(0, 6))
        if how == 0:
            del lines[at]
        elif how == 1:
            lines.insert(at, lines[draw(st.integers(0, len(lines) - 1))])
        elif how == 2:
            lines[at] = f"{lines[at].split('=')[0]}= {draw(VALUES)}"
        elif how == 3:
            lines.insert(at, draw(HEADS))
        elif how == 4:
            cut = draw(st.integers(0, len(lines[at])))
            lines[at] = lines[at][:cut] + draw(st.text(max_size=3)) + lines[at][cut + 1 :]
        elif how == 5:
            lines.insert(at, f"{draw(st.text('abcXYZ_-.019', min_size=1, max_size=12))} = {draw(VALUES)}")
        else:
            other = draw(st.integers(0, len(lines) - 1))
            lines[at], lines[other] = lines[other], lines[at]
        lines = lines or [""]
    return "\n".join(lines)


def _read_or_refuse(read: Callable[[str, str], object], text: str) -> None:
    try:
        read(text, "in.toml")
    except DoorError as error:
        assert error.faults
        assert all(fault.wrong and "\n" not in fault.text() for fault in error.faults)


@given(text=mutated(DEMO))
@SCOPE
def test_a_changed_survey_is_read_or_refused(text: str) -> None:
    _read_or_refuse(survey_from_text, text)


@given(text=mutated(SHEET))
@SCOPE
def test_a_changed_sheet_is_read_or_refused(text: str) -> None:
    _read_or_refuse(sheet_from_text, text)


@given(text=st.text(max_size=400))
@SCOPE
def test_any_text_is_read_or_refused(text: str) -> None:
    _read_or_refuse(survey_from_text, 'format = "bathwright-survey/1"\n' + text)
    _read_or_refuse(sheet_from_text, 'format = "bathwright-sheet/1"\n' + text)


@given(text=st.text("ab=.,[]{}\"'#\\\n 1", max_size=200))
@settings(derandomize=True, deadline=None, max_examples=400)
def test_the_limits_change_no_text_that_is_within_them(text: str) -> None:
    try:
        expected: Any = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        expected = None
    try:
        assert parse_toml(text, "in.toml") == expected
    except DoorError as error:
        assert expected is None or "nests too deep" in str(error)
