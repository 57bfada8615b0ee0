"""Reading a TOML file behind limits that are checked before parsing, and finding a line by its path."""

import errno
import re
import tomllib
from functools import lru_cache
from pathlib import Path
from typing import Any

from bathwright.door.faults import DoorError, Fault

LARGEST_BYTES = 1_000_000
LONGEST_LINE = 10_000
DEEPEST = 20
DEEPEST_DATA = 40

_MARK = re.compile(r"""\"{3}|'{3}|["'#\[\]{}.=,\n]""")
_REST = {
    # what opens a string or a comment -> all that belongs to it; possessive, so that no text is read twice
    '"""': re.compile(r'(?:[^"\\]|\\.|"(?!""))*+"{3,5}', re.DOTALL),
    "'''": re.compile(r"(?:[^']|'(?!''))*+'{3,5}", re.DOTALL),
    '"': re.compile(r'(?:[^"\\\n]|\\[^\n])*+"?'),
    "'": re.compile(r"[^'\n]*+'?"),
    "#": re.compile(r"[^\n]*+"),
}
_Path = tuple[str | int, ...]


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
            raise _refuse(name, *_why_not_there(path))
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


def _why_not_there(path: Path) -> tuple[str, str]:
    """What is wrong with a path at which no file is."""
    try:
        path.stat()
    except OSError as error:
        if error.errno == errno.ELOOP:
            return "is a link that leads in a circle", "give the file itself"
    if path.is_symlink():
        return "is a link to a file that does not exist", "give the file itself"
    return "does not exist", "check the name"


def parse_toml(text: str, name: str) -> dict[str, Any]:
    """The parsed text. DoorError with line number for broken TOML, too long lines, too deep nesting."""
    for number, line in enumerate(text.split("\n"), 1):
        if len(line) > LONGEST_LINE:
            raise _refuse(name, f"has {len(line)} characters in one line", f"at most {LONGEST_LINE}", number)
    too_deep = _too_deep(text)
    if too_deep:
        raise _refuse(name, "nests too deep", f"at most {DEEPEST} levels", too_deep)
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        found = re.search(r"\(at line (\d+), column \d+\)", str(error))
        message = re.sub(r"\s*\(at .*\)$", "", str(error))
        line_number = int(found[1]) if found else None
        raise _refuse(name, f"is broken TOML ({message})", 'write key = "value"', line_number) from None
    except (RecursionError, ValueError):
        raise _refuse(name, "holds a value that cannot be read", "shorten the number, or write it as text") from None
    if _levels(data) > DEEPEST_DATA:
        raise _refuse(name, "nests too deep", f"at most {DEEPEST} levels")
    return data


def _too_deep(text: str) -> int | None:
    """Line where brackets nest, or one key has parts, beyond the limit; strings and comments do not count.

    One pass in linear time. An unclosed string ends the search: such a text is broken anyway.
    """
    depth = dots = position = 0
    while mark := _MARK.search(text, position):
        sign, position = mark[0], mark.end()
        if sign in _REST:
            rest = _REST[sign].match(text, position)
            if rest is None:
                return None
            position = rest.end()
        elif sign == ".":
            dots += 1
        else:
            dots = 0
            depth = depth + 1 if sign in "[{" else max(0, depth - 1) if sign in "]}" else depth
        if max(depth, dots) > DEEPEST:
            return text.count("\n", 0, position) + 1
    return None


def _levels(data: object) -> int:
    """Levels of tables and lists in parsed data, counted without recursion up to just over the limit."""
    levels, nodes = 0, [data]
    while nodes and levels <= DEEPEST_DATA:
        levels += 1
        tables = [node.values() if isinstance(node, dict) else node for node in nodes if isinstance(node, dict | list)]
        nodes = [child for table in tables for child in table]
    return levels


def line_of(text: str, path: _Path) -> int | None:
    """Number of the line that sets the given path, or the nearest enclosing table; None when not found."""
    lines = _lines(text)
    heads = [path, (*path, 0), *(path[:size] for size in range(len(path) - 1, 0, -1))]
    return next((lines[head] for head in heads if head in lines), None)


@lru_cache(maxsize=4)
def _lines(text: str) -> dict[_Path, int]:
    """Line of each table, key and entry of a list that stands one entry to a line."""
    found: dict[_Path, int] = {}
    table: _Path = ()
    counters: dict[_Path, int] = {}
    array: _Path | None = None
    entry = 0
    for number, line in enumerate(text.split("\n"), 1):
        if array is not None:
            if line.lstrip().startswith("]"):
                array = None
            elif line.lstrip()[:1] not in ("", "#"):
                found.setdefault((*array, entry), number)
                entry += 1
            continue
        header = re.match(r"\s*(\[\[?)\s*([^\[\]]+?)\s*\]", line)
        key = re.match(r"\s*([A-Za-z0-9_.\-\"]+)\s*=(.*)", line)
        if header:
            table = _table_path(header[2], header[1] == "[[", counters)
            found.setdefault(table, number)
        elif key:
            here = (*table, *key[1].replace('"', "").split("."))
            found.setdefault(here, number)
            if re.fullmatch(r"\s*\[\s*(#.*)?", key[2]):
                array, entry = here, 0
    return found


def _table_path(name: str, repeated: bool, counters: dict[_Path, int]) -> _Path:
    path: _Path = ()
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
