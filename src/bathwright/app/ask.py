"""Plan, check, why: what a person asks for, from files to records."""

from datetime import UTC, datetime
from pathlib import Path

from bathwright.domain.plan import Options, Plan
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Survey
from bathwright.door.faults import DoorError, Fault, in_order, nearest
from bathwright.door.reader import fault_at
from bathwright.door.sheet import read_sheet
from bathwright.door.survey import read_survey
from bathwright.door.toml_file import line_of, read_toml

# the years in which a plan may start: clocks and dates of the law are not known far outside them
_FIRST, _LAST = datetime(2000, 1, 1), datetime(2100, 1, 1)  # noqa: DTZ001 (wall clocks of the home)
# the role that a product must have for what it is wished for
_ROLE_OF: dict[str, str] = {
    "clean": "cleaner", "descale": "cleaner", "mould": "cleaner", "strip": "stripper", "fill": "filler",
    "seal": "sealant", "wipe": "solvent",
}  # fmt: skip


def gather(
    survey_path: Path, sheets_dir: Path | None, faults: tuple[Fault, ...] = ()
) -> tuple[Survey, tuple[Sheet, ...]]:
    """The survey and the sheets to plan with. DoorError with the faults of all files together, and with `faults`."""
    from bathwright.knowledge import load

    found = list(faults)
    survey: Survey | None = None
    sheets: tuple[Sheet, ...] | None = None
    try:
        survey = read_survey(survey_path)
    except DoorError as error:
        found += error.faults
    try:
        sheets = read_sheets(sheets_dir) if sheets_dir else load().sheets
    except DoorError as error:
        found += error.faults
    if survey is not None and sheets is not None:
        found += _wrong_products(survey, survey_path, sheets)
    if found or survey is None or sheets is None:
        raise DoorError(found)
    return survey, sheets


def _wrong_products(survey: Survey, path: Path, sheets: tuple[Sheet, ...]) -> list[Fault]:
    """Products of the survey that no sheet describes, or that cannot do what they are wished for."""
    role_of = {sheet.id: sheet.role for sheet in sheets}
    named: list[tuple[tuple[str | int, ...], str]] = [
        (("wishes", index, "sheet"), wish.sheet) for index, wish in enumerate(survey.wishes)
    ]
    named += [(("at_hand", index), name) for index, name in enumerate(survey.at_hand)]
    found = [
        (place, f"there is no sheet {name[:40]!r}", nearest(name, [*role_of]))
        for place, name in named
        if name not in role_of
    ]
    for index, wish in enumerate(survey.wishes):
        role, wanted = role_of.get(wish.sheet), _ROLE_OF[wish.use]
        if role not in (None, wanted):
            fitting = ", ".join(sheet.id for sheet in sheets if sheet.role == wanted) or "no sheet here"
            wrong = f"{wish.sheet!r} is a {role}, and {wish.use!r} wants a {wanted}"
            found.append((("wishes", index, "use"), wrong, f"fits: {fitting}"))
    text = read_toml(path)[1] if found else ""
    return [fault_at(str(path), text, finding) for finding in found]


def instant(text: str) -> datetime:
    """The time of --at: a date and time, with or without a zone. DoorError for anything else."""
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        right = "write 2026-12-01T09:00"
        raise DoorError([Fault("--at", "", f"{text[:40]!r} is no date and time", right)]) from None
    if not _FIRST <= at.replace(tzinfo=None) <= _LAST:
        wrong = f"{text[:40]!r} lies outside the years that can be planned"
        raise DoorError([Fault("--at", "", wrong, "from 2000-01-01 to 2100-01-01")])
    return at


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


def plan(
    survey_path: Path, sheets_dir: Path | None, at: datetime | str | None, options: Options, now: datetime
) -> Plan:
    """The plan of a survey.

    `at` as text is read here, so that its fault comes with the others; without a zone it is the wall clock of the
    home, and one that does not exist there (clocks go forward) moves forward. `now` stands in when it is None.
    """
    from bathwright.knowledge import load
    from bathwright.planning import make_plan
    from bathwright.planning.pipeline import NoSystemError

    faults: list[Fault] = []
    try:
        at = instant(at) if isinstance(at, str) else at
    except DoorError as error:
        faults += error.faults
    survey, sheets = gather(survey_path, sheets_dir, tuple(faults))
    starts = now if at is None or isinstance(at, str) else _of_home(at, survey)
    try:
        return make_plan(survey, sheets, load(), starts.replace(microsecond=0), options)
    except NoSystemError as error:
        raise DoorError([Fault(str(sheets_dir or "the sheets"), "", str(error))]) from None


def _of_home(at: datetime, survey: Survey) -> datetime:
    from zoneinfo import ZoneInfo

    from bathwright.schedule.hours import to_utc

    return at.astimezone(UTC) if at.tzinfo else to_utc(at, ZoneInfo(survey.place.time_zone))


def check(paths: tuple[Path, ...]) -> tuple[list[str], list[Fault]]:
    """Check surveys and sheets: (a line for each good file, all faults of the others)."""
    good: list[str] = []
    faults: list[Fault] = []
    for path in paths:
        try:
            good.append(f"{path}: {_check_one(path)}")
        except DoorError as error:
            faults += error.faults
    return good, in_order(faults)


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
