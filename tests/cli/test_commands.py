"""The commands as a person calls them: a process of its own, its exit code, what it prints, what it writes."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent.parent
SURVEYS = ROOT / "examples" / "surveys"
AT = ("--at", "2026-12-01T09:00")


def call(*words: object, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "src"), "COLUMNS": "88"}
    return subprocess.run(
        [sys.executable, "-m", "bathwright", *map(str, words)],
        capture_output=True, text=True, cwd=cwd, env=environment, check=False,
    )  # fmt: skip


def plan_json(*words: object) -> tuple[int, dict]:
    done = call("plan", *words, *AT, "--json")
    assert done.stderr == ""
    return done.returncode, json.loads(done.stdout)


VERDICT_OF_CODE = {0: "go", 4: "not-yet", 3: "no"}


@pytest.mark.parametrize("name", sorted(path.name for path in SURVEYS.glob("*.toml")))
def test_every_example_gives_a_plan_whose_exit_code_is_its_verdict(name: str) -> None:
    code, plan = plan_json(SURVEYS / name)
    assert plan["verdict"] == VERDICT_OF_CODE[code]


@pytest.mark.parametrize(
    ("name", "words", "verdicts"),
    [
        ("demo.toml", (), {"go", "not-yet"}),  # an ordinary bath: never "no"
        ("easy-go.toml", (), {"go"}),
        ("lead-and-children.toml", (), {"not-yet", "no"}),
        ("pilot-flame.toml", ("--system", "solvent-epoxy"), {"not-yet", "no"}),
        ("stripper.toml", (), {"no"}),
    ],
)
def test_verdicts_of_the_examples(name: str, words: tuple[str, ...], verdicts: set[str]) -> None:
    assert plan_json(SURVEYS / name, *words)[1]["verdict"] in verdicts


@pytest.mark.parametrize(
    ("name", "words", "codes"),
    [
        ("lead-and-children.toml", (), {"lead-renovation-covered", "lead-dust-control", "people-kept-away"}),
        ("pilot-flame.toml", ("--system", "solvent-epoxy"), {"flame-near-vapour"}),
        ("stripper.toml", (), {"dichloromethane-kills"}),
        ("mixed-chemistry.toml", (), {"chlorine-from-acid"}),
    ],
)
def test_findings_that_must_be_said(name: str, words: tuple[str, ...], codes: set[str]) -> None:
    plan = plan_json(SURVEYS / name, *words)[1]
    assert codes <= {finding["code"] for finding in plan["findings"]}


def test_plan_writes_both_files_and_says_so(tmp_path: Path) -> None:
    done = call("plan", SURVEYS / "demo.toml", *AT, "--out", tmp_path / "out")
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == ["plan.html", "plan.json"]
    plan = json.loads((tmp_path / "out" / "plan.json").read_text("utf-8"))
    assert done.returncode in VERDICT_OF_CODE and plan["format"] == "bathwright-plan/1"
    assert "plan.html" in done.stdout


def test_text_begins_with_the_verdict_line() -> None:
    first = call("plan", SURVEYS / "easy-go.toml", *AT).stdout.splitlines()[0]
    assert first == "Go, as planned below"
    assert call("plan", SURVEYS / "stripper.toml", *AT).stdout.startswith("No: not here, not this way. Instead: ")


def test_same_input_same_bytes() -> None:
    words = ("plan", SURVEYS / "demo.toml", *AT, "--json")
    assert call(*words).stdout == call(*words).stdout


def test_units_are_shown_as_asked() -> None:
    si = call("plan", SURVEYS / "demo.toml", *AT, "--units", "si").stdout
    us = call("plan", SURVEYS / "demo.toml", *AT, "--units", "us").stdout
    assert "m²" in si and "ft²" in us


def test_plan_json_is_valid_by_its_own_schema() -> None:
    plan = plan_json(SURVEYS / "demo.toml")[1]
    schema = json.loads(call("schema", "plan").stdout)
    assert set(schema["required"]) <= set(plan) <= set(schema["properties"])


@pytest.mark.parametrize("of", ["survey", "sheet", "plan"])
def test_schema_prints_a_json_schema(of: str) -> None:
    done = call("schema", of)
    schema = json.loads(done.stdout)
    assert done.returncode == 0 and schema["$schema"].startswith("https://json-schema.org/") and schema["$defs"]


def test_check_tells_all_faults_of_all_files_and_exits_2(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text('format = "bathwright-survey/1"\nid = "x"\nfixtures = []\n[place]\ncountry = "usa"\n', "utf-8")
    worse = tmp_path / "worse.toml"
    worse.write_text("[[[", "utf-8")
    done = call("check", SURVEYS / "demo.toml", bad, worse)
    assert done.returncode == 2
    assert "a good survey" in done.stdout
    assert "bad.toml" in done.stderr and "worse.toml" in done.stderr and "Traceback" not in done.stderr
    assert all(len(line) < 500 for line in done.stderr.splitlines())


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("plan", "nowhere.toml"), "does not exist"),
        (("plan", SURVEYS), "is a folder"),
        (("plan", SURVEYS / "demo.toml", "--system", "sovlent-epoxy"), "solvent-epoxy"),
        (("plan", SURVEYS / "demo.toml", "--at", "tomorrow"), "2026-12-01T09:00"),
        (("plan", SURVEYS / "demo.toml", "--sheets", SURVEYS / "demo.toml"), "is no folder"),
        (("rules", "strctural-crack"), "structural-crack"),
        (("sources", "cfr-1910-107x"), "cfr-1910-107"),
        (("why", SURVEYS / "demo.toml", "id"), "is no JSON file"),
    ],
)
def test_bad_input_is_one_clear_line_and_exit_2(words: tuple[object, ...], said: str) -> None:
    done = call(*words)
    assert done.returncode == 2, done.stdout + done.stderr
    assert said in done.stderr and "Traceback" not in done.stderr and done.stdout == ""


def test_bad_input_writes_nothing(tmp_path: Path) -> None:
    call("plan", "nowhere.toml", "--out", tmp_path / "out")
    assert not (tmp_path / "out").exists()


def test_an_output_folder_that_cannot_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file in the way", "utf-8")
    done = call("plan", SURVEYS / "demo.toml", *AT, "--out", tmp_path / "out")
    assert done.returncode == 2 and "nothing was written" in done.stderr
    assert (tmp_path / "out").read_text("utf-8") == "a file in the way"


def test_why_traces_a_clock_and_a_measured_value(tmp_path: Path) -> None:
    call("plan", SURVEYS / "demo.toml", *AT, "--out", tmp_path)
    clock = call("why", tmp_path / "plan.json", "clocks[4].used_s").stdout
    assert "formula:" in clock and "source:" in clock and "fact of a sheet:" in clock
    told = call("why", tmp_path / "plan.json", "survey.fixtures[1].sizes.length").stdout
    assert "told in the survey" in told
    wrong = call("why", tmp_path / "plan.json", "clocks[9].used_s")
    assert wrong.returncode == 2 and "[1] to [6]" in wrong.stderr


def test_rules_and_sources_list_and_show() -> None:
    assert "structural-crack" in call("rules").stdout
    assert "Why" in call("rules", "chlorine-from-acid").stdout
    assert "cfr-1910-1000-d" in call("sources").stdout
    assert "1910.1000" in call("sources", "cfr-1910-1000-d").stdout


def test_help_and_version() -> None:
    assert "Exit codes" in call("--help").stdout
    assert call("--version").stdout.startswith("bathwright ")
