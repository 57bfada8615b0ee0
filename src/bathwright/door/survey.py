"""Reading a survey: structure first, then sense, all faults together."""

from pathlib import Path

from bathwright.domain.survey import Survey
from bathwright.door.faults import DoorError, Fault
from bathwright.door.reader import faults_of_meaning, read_record
from bathwright.door.survey_sense import sense
from bathwright.door.toml_file import line_of, parse_toml, read_text

FORMAT = "bathwright-survey/1"


def read_survey(path: Path) -> Survey:
    """The survey in a TOML file. DoorError with all faults."""
    return survey_from_text(read_text(path), str(path))


def survey_from_text(text: str, name: str) -> Survey:
    """The survey in a TOML text; `name` stands in the faults. DoorError with all faults."""
    data = parse_toml(text, name)
    given = data.get("format")
    if given != FORMAT:
        raise DoorError([wrong_format(name, text, given, FORMAT, "survey")])
    survey, faults = read_record(Survey, data, name, text)
    if survey:
        faults += faults_of_meaning(sense(survey), faults, name, text)
    if faults or survey is None:
        raise DoorError(faults)
    return survey


def wrong_format(name: str, text: str, given: object, wanted: str, what: str) -> Fault:
    """The fault of a file that is another kind of file, or says none."""
    if given is None:
        return Fault(name, "format", "is missing", f'a {what} begins with format = "{wanted}"')
    kinds = {
        "bathwright-survey/1": "a survey",
        "bathwright-sheet/1": "a sheet",
        "bathwright-plan/1": "a plan",
    }
    found = kinds.get(str(given), f"of the unknown format {str(given)[:40]!r}")
    return Fault(
        name,
        "format",
        f"this file is {found}",
        f'a {what} has format = "{wanted}"',
        line_of(text, ("format",)),
    )
