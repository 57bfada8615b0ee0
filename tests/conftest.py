"""What every test shares: the profile of the property tests, and the parts that a run may lack.

A file named `*_oracle.py` needs the heavy reference libraries, one named `*_browser.py` a browser. Where a part is
missing its files are not collected, and the run ends by naming them; BATHWRIGHT_ALL_PARTS=1 makes that a failure.
"""

import importlib.util
import os
import shutil
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

settings.register_profile(
    "bathwright",
    derandomize=True,
    deadline=None,
    max_examples=400 if os.environ.get("BATHWRIGHT_SLOW") else 50,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("bathwright")

ROOT = Path(__file__).parent.parent
_ORACLES = ("chemicals", "jsonschema", "pint")
_NOT_RUN: dict[str, list[str]] = {}


def _missing(name: str) -> str | None:
    """The part that a test file needs and this machine lacks."""
    if name.endswith("_oracle.py"):
        lacking = [lib for lib in _ORACLES if importlib.util.find_spec(lib) is None]
        return f"heavy reference libraries ({', '.join(lacking)})" if lacking else None
    if name.endswith("_browser.py"):
        driver = importlib.util.find_spec("playwright") is not None
        return None if driver and shutil.which("chromium") else "a browser (Debian's chromium and its driver)"
    return None


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    part = _missing(collection_path.name)
    if part is None:
        return None
    _NOT_RUN.setdefault(part, []).append(collection_path.name)
    return True


def pytest_sessionfinish(session: pytest.Session, exitstatus: int) -> None:
    if _NOT_RUN and os.environ.get("BATHWRIGHT_ALL_PARTS") and exitstatus == 0:
        session.exitstatus = 1


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    if not _NOT_RUN:
        terminalreporter.write_line("Run: everything.")
    for part, names in sorted(_NOT_RUN.items()):
        terminalreporter.write_line(f"NOT run for lack of {part}: {', '.join(sorted(names))}")
    if _NOT_RUN and os.environ.get("BATHWRIGHT_ALL_PARTS"):
        terminalreporter.write_line("BATHWRIGHT_ALL_PARTS is set: a part that was not run is a failure.")
