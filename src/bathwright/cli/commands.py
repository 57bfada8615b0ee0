"""The commands. Heavy imports stand inside the commands that need them."""

import enum
import sys
from datetime import UTC, datetime
from pathlib import Path
from typing import Annotated

import typer

EXIT = {"go": 0, "not-yet": 4, "no": 3}
_HELP = """Advise a household on refinishing a worn bath: may it be done, with what, by whom, when can we bathe again.

bathwright computes with what it is told. It defers to the maker's sheet in your hand, to local codes and to licensed
practice. Exit codes: 0 go, 4 not yet, 3 no, 2 bad input, 1 a defect of our own.
"""
app = typer.Typer(
    help=_HELP, no_args_is_help=True, add_completion=False, rich_markup_mode=None, pretty_exceptions_enable=False
)


class Units(enum.StrEnum):
    """The units to show."""

    us = "us"
    si = "si"


class SchemaOf(enum.StrEnum):
    """The kinds of file that have a schema."""

    survey = "survey"
    sheet = "sheet"
    plan = "plan"


def _fail(lines: list[str]) -> typer.Exit:
    for line in lines:
        print(line, file=sys.stderr)
    return typer.Exit(2)


def _on_terminal() -> bool:
    """Whether a person reads: `main` keeps what is printed until the end, so the true stream is asked."""
    return sys.__stdout__ is not None and sys.__stdout__.isatty()


@app.command()
def plan(
    survey: Annotated[Path, typer.Argument(help="The survey, a TOML file.")],
    system: Annotated[
        list[str] | None, typer.Option("--system", help="Plan with this coating (id of its sheet); may be repeated.")
    ] = None,
    sheets: Annotated[
        Path | None, typer.Option("--sheets", help="Folder with the sheets; without it, the invented ones.")
    ] = None,
    at: Annotated[str | None, typer.Option("--at", help="Plan as if now were this time (home's clock).")] = None,
    units: Annotated[Units | None, typer.Option("--units", help="Units to show: us or si.")] = None,
    out: Annotated[Path | None, typer.Option("--out", help="Folder for plan.json and plan.html.")] = None,
    as_json: Annotated[bool, typer.Option("--json", help="Print the plan as JSON instead of text.")] = False,
) -> None:
    """Make a plan for a survey, print it, and say go, not yet or no."""
    from bathwright.app import ask
    from bathwright.domain.plan import Options
    from bathwright.door.faults import DoorError
    from bathwright.door.writing import to_json, write_files

    options = Options(systems=tuple(system or ()), units=units.value if units else None)
    try:
        made = ask.plan(survey, sheets, at, options, datetime.now(UTC))
    except DoorError as error:
        raise _fail([fault.text() for fault in error.faults]) from None
    text = to_json(made) if as_json or out else ""
    if out:
        from bathwright.report.page import plan_page

        try:
            write_files(out, {"plan.json": text, "plan.html": plan_page(made)})
        except OSError as error:
            raise _fail([f"{out}: cannot be written ({error.strerror}); nothing was written"]) from None
    if as_json:
        sys.stdout.write(text)
    else:
        from bathwright.report.text import plan_text

        print(plan_text(made, width=_width(), colour=_on_terminal()))
        if out:
            print(f"\nWritten: {out / 'plan.html'} (for people) and {out / 'plan.json'} (for machines).")
    raise typer.Exit(EXIT[made.verdict])


def _width() -> int:
    import shutil

    return max(60, min(100, shutil.get_terminal_size((88, 24)).columns))


@app.command()
def check(files: Annotated[list[Path], typer.Argument(help="Surveys and sheets.")]) -> None:
    """Check surveys and sheets: all faults at once, one line each."""
    from bathwright.app import ask

    good, faults = ask.check(tuple(files))
    for line in good:
        print(line)
    if faults:
        raise _fail([fault.text() for fault in faults])


@app.command()
def rules(code: Annotated[str | None, typer.Argument(help="Code of a rule, in words.")] = None) -> None:
    """List the rules, or show the manual page of one."""
    from bathwright import rules as book
    from bathwright.door.faults import nearest

    if code is None:
        for known, line in book.codes():
            print(f"{known:40} {line}")
        return
    page = book.page(code)
    if page is None:
        raise _fail([f"rules: there is no rule {code[:60]!r}; {nearest(code, [known for known, _ in book.codes()])}"])
    print(page)


@app.command()
def sources(source_id: Annotated[str | None, typer.Argument(metavar="[ID]", help="Id of a source.")] = None) -> None:
    """List the sources, or show one: what it is, how much of it was read, how far it may be trusted."""
    from bathwright import sources as bibliography
    from bathwright.door.faults import nearest

    known = bibliography.load()
    if source_id is None:
        for name, entry in known.items():
            print(f"{name:34} [{entry.mark}] {entry.citation}")
        return
    if source_id not in known:
        raise _fail([f"sources: there is no source {source_id[:60]!r}; {nearest(source_id, list(known))}"])
    entry = known[source_id]
    for label, text in (
        ("id", entry.id),
        ("what", entry.citation),
        ("place in it", entry.locator),
        ("kind", entry.kind),
        ("read", entry.read.replace("_", " ")),
        ("mark", entry.mark),
        ("edition read", entry.edition_read),
        ("note", entry.note),
    ):
        if text:
            print(f"{label + ':':14}{text}")


@app.command()
def schema(of: Annotated[SchemaOf, typer.Argument(help="survey, sheet or plan.")]) -> None:
    """Print the JSON Schema of a survey, sheet or plan file."""
    import json

    from bathwright.door.schemas import json_schema

    print(json.dumps(json_schema(of.value), indent=1, ensure_ascii=False))


@app.command()
def why(
    plan_file: Annotated[Path, typer.Argument(metavar="PLAN", help="A plan.json.")],
    number_path: Annotated[str, typer.Argument(metavar="NUMBER-PATH", help='For example "clocks[4].used_s".')],
) -> None:
    """Trace one number of a plan to its formula, inputs and sources."""
    from bathwright.app.why import why as answer
    from bathwright.door.faults import DoorError

    try:
        for line in answer(plan_file, number_path):
            print(line)
    except DoorError as error:
        raise _fail([fault.text() for fault in error.faults]) from None


@app.callback(invoke_without_command=True)
def _root(version: Annotated[bool, typer.Option("--version", help="Print the version.")] = False) -> None:
    if version:
        from bathwright import __version__

        print(f"bathwright {__version__}")
        raise typer.Exit(0)
