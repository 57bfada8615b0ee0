"""Reading a TOML file behind limits that are checked before parsing, and finding a line by its path."""

import re
import tomllib
from pathlib import Path
from typing import Any

from bathwright.door.faults import DoorError, Fault

LARGEST_BYTES = 1_000_000
LONGEST_LINE = 10_000
DEEPEST = 20


def read_toml(path: Path) -> tuple[dict[str, Any], str]:
    """The parsed file and its text. DoorError with one plain line for anything that is no such file."""
    text = read_text(path)
    return parse_toml(text, str(path)), text


def read_text(path: Path) -> str:
    """The text of a file of at most 1 MB. DoorError for a folder, a missing, too large or binary file."""
    name = str(path)
    try:
        if path.is_dir():
            raise _refuse(name, "is a folder", "give a file")
        if not path.exists():
            raise _refuse(name, "does not exist", "check the name")
        if not path.is_file():
            raise _refuse(name, "is no ordinary file", "give a TOML file")
        size = path.stat().st_size
        if size > LARGEST_BYTES:
            raise _refuse(name, f"is {size / 1e6:.1f} MB large", "a survey or sheet has at most 1 MB")
        raw = path.read_bytes()
    except OSError as error:
        raise _refuse(name, f"cannot be read ({error.strerror})", "check the rights of the file") from None
    except ValueError:
        raise _refuse(name, "is no usable file name", "check the name") from None
    if b"\x00" in raw:
        raise _refuse(name, "is binary, not text", "give a TOML file (plain text)")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise _refuse(name, f"is not UTF-8 text (byte {error.start})", "save it as UTF-8") from None


def parse_toml(text: str, name: str) -> dict[str, Any]:
    """The parsed text. DoorError with line number for broken TOML, too long lines, too deep nesting."""
    for number, line in enumerate(text.splitlines(), 1):
        if len(line) > LONGEST_LINE:
            raise _refuse(name, f"has {len(line)} characters in one line", f"at most {LONGEST_LINE}", number)
        if line.split("=", 1)[0].count(".") > DEEPEST or _depth(line) > DEEPEST:
            raise _refuse(name, "nests too deep", f"at most {DEEPEST} levels", number)
    if _depth(text) > DEEPEST:
        raise _refuse(name, "nests too deep", f"at most {DEEPEST} levels")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = re.search(r"\(at line (\d+), column \d+\)", str(error))
        message = re.sub(r"\s*\(at .*\)$", "", str(error))
        line_number = int(found[1]) if found else None
        raise _refuse(name, f"is broken TOML ({message})", 'write key = "value"', line_number) from None
    except (RecursionError, ValueError) as error:
        raise _refuse(name, f"is broken TOML ({error})", 'write key = "value"') from None


def _depth(text: str) -> int:
    """Deepest nesting of brackets outside quoted text (comments count: stricter, never looser)."""
    deepest = depth = 0
    quote = ""
    for char in text:
        if quote:
            quote = "" if char in (quote, "\n") else quote
        elif char in "\"'":
            quote = char
        elif char in "[{":
            depth += 1
            deepest = max(deepest, depth)
        elif char in "]}":
            depth = max(0, depth - 1)
    return deepest


def line_of(text: str, path: tuple[str | int, ...]) -> int | None:
    """Number of the line that sets the given path, or the nearest enclosing table; None when not found."""
    best: int | None = None
    best_depth = 0
    table: tuple[str | int, ...] = ()
    counters: dict[tuple[str | int, ...], int] = {}
    for number, line in enumerate(text.splitlines(), 1):
        header = re.match(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]", line)
        if header:
            table = _table_path(header[2], header[1] == "[[", counters)
            here = table
        else:
            key = re.match(r"\s*([A-Za-z0-9_.\-\"]+)\s*=", line)
            if not key:
                continue
            here = (*table, *key[1].replace('"', "").split("."))
        if len(here) > best_depth and path[: len(here)] == here:
            best, best_depth = number, len(here)
    return best


def _table_path(name: str, repeated: bool, counters: dict[tuple[str | int, ...], int]) -> tuple[str | int, ...]:
    path: tuple[str | int, ...] = ()
    parts = [part.strip().strip('"') for part in name.split(".")]
    for position, part in enumerate(parts):
        path = (*path, part)
        if repeated and position == len(parts) - 1:
            counters[path] = counters.get(path, -1) + 1
            for deeper in [known for known in counters if len(known) > len(path) and known[: len(path)] == path]:
                del counters[deeper]
        if path in counters:
            path = (*path, counters[path])
    return path


def _refuse(name: str, wrong: str, right: str, line: int | None = None) -> DoorError:
    return DoorError([Fault(name, "", wrong, right, line)])
