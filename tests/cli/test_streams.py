"""Hostile ends of a process: ASCII terminals, readers that go away, full disks, closed streams, wrong calls."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent.parent
DEMO = ROOT / "examples" / "surveys" / "demo.toml"
PLAN = ("plan", str(DEMO), "--at", "2026-12-01T09:00")
HERE = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "COLUMNS": "88"}
FULL = Path("/dev/full")


def command(*words: str) -> list[str]:
    return [sys.executable, "-m", "bathwright", *words]


@pytest.mark.parametrize(
    "more",
    [
        {"PYTHONIOENCODING": "ascii"},
        {"LANG": "C", "LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"},
    ],
    ids=["ascii", "LANG=C"],
)
def test_signs_that_a_terminal_cannot_show_become_question_marks(more: dict[str, str], tmp_path: Path) -> None:
    for words in ((*PLAN, "--units", "si", "--out", str(tmp_path)), ("sources",)):
        done = subprocess.run(command(*words), capture_output=True, env={**HERE, **more}, check=False)
        assert done.returncode in (0, 4)
        assert done.stderr == b""
        assert done.stdout.isascii()
        assert b"?" in done.stdout
    assert "°C" in (tmp_path / "plan.html").read_text("utf-8")


def test_a_reader_that_goes_away_is_no_fault() -> None:
    reads, writes = os.pipe()
    os.close(reads)
    with os.fdopen(writes, "wb") as out:
        done = subprocess.run(command(*PLAN, "--json"), stdout=out, stderr=subprocess.PIPE, env=HERE, check=False)
    assert done.returncode == 141
    assert done.stderr == b""


@pytest.mark.skipif(not FULL.exists(), reason="no /dev/full on this system")
@pytest.mark.parametrize("words", [PLAN, (*PLAN, "--json"), ("sources",), ("schema", "plan")], ids=str)
def test_a_full_disk_is_told_in_one_line(words: tuple[str, ...]) -> None:
    with FULL.open("wb") as out:
        done = subprocess.run(command(*words), stdout=out, stderr=subprocess.PIPE, env=HERE, check=False)
    assert done.returncode == 2
    lines = done.stderr.decode().splitlines()
    assert len(lines) == 1
    assert "the output cannot be written" in lines[0]


def test_closed_streams_change_no_verdict() -> None:
    for closed, code in ((">&-", 4), ("2>&-", 4), (">&- 2>&-", 4)):
        line = f'"{sys.executable}" -m bathwright {" ".join(PLAN)} {closed}'
        done = subprocess.run(line, shell=True, capture_output=True, env=HERE, check=False)
        assert done.returncode == code, closed
        assert b"Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((*PLAN, "--foo"), "No such option: --foo"),
        (("plan",), "Missing argument"),
        (("schema", "sheets"), "is not one of 'survey', 'sheet', 'plan'"),
        (("plans",), "No such command"),
        (("rules", "a", "b"), "unexpected extra argument"),
    ],
)
def test_a_wrong_call_is_one_line_and_exit_2(words: tuple[str, ...], said: str) -> None:
    done = subprocess.run(command(*words), capture_output=True, env=HERE, text=True, check=False)
    assert done.returncode == 2
    assert done.stdout == ""
    assert len(done.stderr.splitlines()) == 1
    assert said in done.stderr
    assert "--help" in done.stderr


def test_a_call_without_a_word_gets_the_help() -> None:
    done = subprocess.run(command(), capture_output=True, env=HERE, text=True, check=False)
    assert "Exit codes" in done.stdout + done.stderr
    assert "Traceback" not in done.stderr
