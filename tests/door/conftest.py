"""Texts of the invented examples, and the lines of all faults of a text."""

from collections.abc import Callable
from pathlib import Path

import pytest

from bathwright.door.faults import DoorError
from bathwright.door.sheet import sheet_from_text
from bathwright.door.survey import survey_from_text

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def demo() -> str:
    return (ROOT / "examples" / "surveys" / "demo.toml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def sheet() -> str:
    return (ROOT / "src" / "bathwright" / "knowledge" / "sheets" / "solvent-epoxy.toml").read_text(encoding="utf-8")


def lines_of_faults(text: str, read: Callable[[str, str], object]) -> list[str]:
    try:
        read(text, "in.toml")
    except DoorError as error:
        assert str(error) == "\n".join(fault.text() for fault in error.faults)
        for fault in error.faults:
            assert fault.text().startswith("in.toml")
            assert "\n" not in fault.text()
            assert len(fault.text()) <= 900
        return [fault.text() for fault in error.faults]
    return []


@pytest.fixture(scope="session")
def survey_faults() -> Callable[[str], list[str]]:
    return lambda text: lines_of_faults(text, survey_from_text)


@pytest.fixture(scope="session")
def sheet_faults() -> Callable[[str], list[str]]:
    return lambda text: lines_of_faults(text, sheet_from_text)
