"""Plan, check, why: what a person asks for, from files to records."""

from datetime import datetime
from pathlib import Path

from bathwright.domain.plan import Options, Plan
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Survey
from bathwright.door.faults import DoorError, Fault
from bathwright.door.sheet import read_sheet
from bathwright.door.survey import read_survey
from bathwright.door.toml_file import line_of, read_toml


def gather(survey_path: Path, sheets_dir: Path | None) -> tuple[Survey, tuple[Sheet, ...]]:
    """The survey and the sheets to plan with. DoorError with the faults of all files together."""
    from bathwright.knowledge import load

    faults: list[Fault] = []
    survey: Survey | None = None
    sheets: tuple[Sheet, ...] = ()
    try:
        survey = read_survey(survey_path)
    except DoorError as error:
        faults += error.faults
    try:
        sheets = read_sheets(sheets_dir) if sheets_dir else load().sheets
    except DoorError as error:
        faults += error.faults
    if faults or survey is None:
        raise DoorError(faults)
    faults = [*_cannot_plan(survey, survey_path), *_unknown_wishes(survey, survey_path, sheets)]
    if faults:
        raise DoorError(faults)
    return survey, sheets


def _cannot_plan(survey: Survey, path: Path) -> list[Fault]:
    """What this edition cannot plan, said before anything is left out in silence."""
    if len(survey.fixtures) > 1:
        wrong = f"names {len(survey.fixtures)} fixtures, and this edition plans one"
        return [Fault(str(path), "fixtures", wrong, "make one survey for each fixture")]
    return []


def _unknown_wishes(survey: Survey, path: Path, sheets: tuple[Sheet, ...]) -> list[Fault]:
    known = [sheet.id for sheet in sheets]
    text = ""
    faults = []
    for index, wish in enumerate(survey.wishes):
        if wish.sheet not in known:
            from bathwright.door.faults import nearest

            text = text or read_toml(path)[1]
            line = line_of(text, ("wishes", index, "sheet"))
            place = f"wishes[{index + 1}].sheet"
            faults.append(
                Fault(str(path), place, f"there is no sheet {wish.sheet[:40]!r}", nearest(wish.sheet, known), line)
            )
    return faults


def read_sheets(folder: Path) -> tuple[Sheet, ...]:
    """All sheets (*.toml) of a folder, by file name. DoorError with the faults of all of them."""
    if not folder.is_dir():
        raise DoorError([Fault(str(folder), "", "is no folder", "give a folder with one TOML file a sheet")])
    sheets: list[Sheet] = []
    faults: list[Fault] = []
    for path in sorted(folder.glob("*.toml")):
        try:
            sheet = read_sheet(path)
        except DoorError as error:
            faults += error.faults
            continue
        twin = next((known for known in sheets if known.id == sheet.id), None)
        if twin:
            faults.append(Fault(str(path), "id", f"{sheet.id!r} is the id of another sheet too", "each id once"))
        sheets.append(sheet)
    if not sheets and not faults:
        faults.append(Fault(str(folder), "", "holds no sheet", "put one TOML file a sheet into it"))
    if faults:
        raise DoorError(faults)
    return tuple(sheets)


def plan(survey_path: Path, sheets_dir: Path | None, at: datetime | None, options: Options, now: datetime) -> Plan:
    """The plan of a survey. `at` without a zone is the wall clock of the home; `now` stands in when it is None."""
    from bathwright.knowledge import load
    from bathwright.planning import make_plan
    from bathwright.planning.pipeline import NoSystemError
    from bathwright.schedule.hours import to_utc

    survey, sheets = gather(survey_path, sheets_dir)
    if at is None:
        instant = now
    else:
        from datetime import UTC
        from zoneinfo import ZoneInfo

        zone = ZoneInfo(survey.place.time_zone)
        instant = at.astimezone(UTC) if at.tzinfo else to_utc(at, zone)
    try:
        return make_plan(survey, sheets, load(), instant.replace(microsecond=0), options)
    except NoSystemError as error:
        raise DoorError([Fault(str(sheets_dir or "the sheets"), "", str(error))]) from None


def check(paths: tuple[Path, ...]) -> tuple[list[str], list[Fault]]:
    """Check surveys and sheets: (a line for each good file, all faults of the others)."""
    good: list[str] = []
    faults: list[Fault] = []
    for path in paths:
        try:
            good.append(f"{path}: {_check_one(path)}")
        except DoorError as error:
            faults += error.faults
    return good, faults


def _check_one(path: Path) -> str:
    data, text = read_toml(path)
    kind = data.get("format")
    if kind == "bathwright-survey/1":
        survey = read_survey(path)
        return f"a good survey ({survey.id})"
    if kind == "bathwright-sheet/1":
        sheet = read_sheet(path)
        return f"a good sheet ({sheet.id}, {len(sheet.facts)} facts)"
    wrong = "is missing" if kind is None else f"{str(kind)[:40]!r} is no known format"
    right = 'write format = "bathwright-survey/1" or "bathwright-sheet/1"'
    raise DoorError([Fault(str(path), "format", wrong, right, line_of(text, ("format",)))])
