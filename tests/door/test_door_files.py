"""Files that are no such files: too large, too deep, binary, missing, broken. Each gives one plain line."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from bathwright.door.faults import DoorError
from bathwright.door.sheet import read_sheet
from bathwright.door.survey import read_survey
from bathwright.door.toml_file import LARGEST_BYTES, parse_toml

READERS = [read_survey, read_sheet]
Reader = Callable[[Path], object]

TEXTS = {
    "broken TOML": ('format = "bathwright-survey/1"\nid = \n', "broken TOML", ":2:"),
    "unclosed string": ('a = 1\nid = "x\n', "broken TOML", ":2:"),
    "same key twice": ("a = 1\na = 2\n", "broken TOML", ":2"),
    "impossible date": ("a = 2026-02-31\n", "broken TOML", ":1"),
    "one line of 40 kB": ("a = 1\n# " + "x" * 40_000, "40002 characters in one line", ":2:"),
    "a key of 20,000 parts": (".".join(["a"] * 20_000) + " = 1", "characters in one line", ":1:"),
    "a key of 3,000 parts": ("a = 1\n" + ".".join(["b"] * 3_000) + " = 1", "nests too deep", ":2:"),
    "a quoted key of 30 parts": (" . ".join(['"b"'] * 30) + " = 1", "nests too deep", ":1:"),
    "a long key inside an inline table": ("x = { " + ".".join(["a"] * 3_000) + " = 1 }", "nests too deep", ":1:"),
    "a long table name": ("\n[" + ".".join(["a"] * 30) + "]", "nests too deep", ":2:"),
    "1,000 brackets": ("a = " + "[" * 1_000 + "]" * 1_000, "nests too deep", ":1:"),
    "1,000 brackets over lines": ("a = " + "[\n" * 1_000 + "]\n" * 1_000, "nests too deep", ":21:"),
    "1,000 braces": ("a = " + "{a=" * 1_000 + "1" + "}" * 1_000, "nests too deep", ":1:"),
    "brackets behind an escaped quote": ('a = ["\\"", ' + "[" * 300 + "]" * 300 + "]", "nests too deep", ":1:"),
    "brackets behind a literal string": ("a = ['\\', " + "[" * 300 + "]" * 300 + "]", "nests too deep", ":1:"),
    "deep by many steps": (
        "[a.b.c.d.e.f.g.h.i.j.k.l.m.n.o]\n" + "x = " + "{a.b.c = " * 15 + "1" + "}" * 15,
        "deep",
        "",
    ),
    "a number of 5,000 digits": ("a = " + "9" * 5_000, "cannot be read", ""),
}


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("name", list(TEXTS))
def test_a_text_that_is_refused_before_it_is_read(tmp_path: Path, reader: Reader, name: str) -> None:
    text, words, line = TEXTS[name]
    path = tmp_path / "in.toml"
    path.write_text(text, encoding="utf-8")
    message = _refusal(reader, path)
    assert words in message
    assert f"in.toml{line}" in message


def _refusal(reader: Reader, path: Path) -> str:
    with pytest.raises(DoorError) as caught:
        reader(path)
    assert len(caught.value.faults) == 1
    assert "\n" not in str(caught.value)
    assert "; " in str(caught.value)  # what is wrong; what would be right
    return str(caught.value)


@pytest.mark.parametrize("reader", READERS)
def test_files_that_cannot_be_read(tmp_path: Path, reader: Reader) -> None:
    assert "is a folder; give a file" in _refusal(reader, tmp_path)
    assert "does not exist; check the name" in _refusal(reader, tmp_path / "none.toml")
    assert "does not exist" in _refusal(reader, tmp_path / ("n" * 20) / "none.toml")
    assert _refusal(reader, tmp_path / ("n" * 5_000))
    assert _refusal(reader, Path("nul\x00.toml"))
    binary = tmp_path / "picture.toml"
    binary.write_bytes(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR")
    assert "is binary, not text; give a TOML file" in _refusal(reader, binary)
    binary.write_bytes("format = 'bathwright-survey/1'".encode("utf-16"))
    assert "is binary" in _refusal(reader, binary)
    binary.write_bytes(b"id = '\xff\xfe'")
    assert "is not UTF-8 text (byte 6); save it as UTF-8" in _refusal(reader, binary)


@pytest.mark.parametrize("reader", READERS)
def test_links_that_lead_nowhere(tmp_path: Path, reader: Reader) -> None:
    (tmp_path / "a.toml").symlink_to(tmp_path / "b.toml")
    (tmp_path / "b.toml").symlink_to(tmp_path / "a.toml")
    (tmp_path / "c.toml").symlink_to(tmp_path / "gone.toml")
    assert "is a link that leads in a circle; give the file itself" in _refusal(reader, tmp_path / "a.toml")
    assert "is a link to a file that does not exist" in _refusal(reader, tmp_path / "c.toml")


@pytest.mark.parametrize("reader", READERS)
def test_a_file_of_50_mb_is_refused_by_its_size(tmp_path: Path, reader: Reader) -> None:
    path = tmp_path / "large.toml"
    with path.open("wb") as out:
        out.truncate(50_000_000)
    assert "is 50.0 MB large; a survey or sheet has at most 1 MB" in _refusal(reader, path)
    path.write_text("#" * 9_000 + "\n" * (LARGEST_BYTES - 9_000), encoding="utf-8")
    assert "format: is missing" in _refusal(reader, path)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this system")
def test_a_pipe_is_no_file(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.toml")
    assert "is no ordinary file" in _refusal(read_survey, tmp_path / "pipe.toml")


def test_strings_and_comments_may_hold_any_sign() -> None:
    signs = "[" * 50 + "{" * 50 + "." * 50
    text = (
        f'# {signs}\na = "{signs}"\nb = \'{signs}\'\nc = """\n{signs} "quoted" \\" \n"""\nd = \'\'\'{signs}\n\'\'\'\n'
    )
    assert parse_toml(text, "in.toml")["a"] == signs


def test_ordinary_nesting_is_read() -> None:
    assert parse_toml("a = " + "[" * 19 + "]" * 19, "in.toml")
    assert parse_toml("a.b.c.d.e = { f.g.h = [1.5, 2.5, 2026-11-25T08:00:00.123] }", "in.toml")


def test_a_byte_order_mark_is_no_matter(tmp_path: Path, demo: str) -> None:
    path = tmp_path / "in.toml"
    path.write_bytes(b"\xef\xbb\xbf" + demo.replace("\n", "\r\n").encode())
    assert read_survey(path)
