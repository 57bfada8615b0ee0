"""Laying out words in a terminal: wrapping, headings, a box, tables in columns or one below the other."""

import re
import textwrap
from collections.abc import Iterable, Iterator

from bathwright.report.context import Row, Table

_BOLD, _REVERSE, _END = "\x1b[1m", "\x1b[7;1m", "\x1b[0m"
_NARROWEST = 9
_READABLE = 14  # characters of a column, on average, from four columns on
_SIGN = re.compile(r"(?<=\d) (?=[%×])")
_BETWEEN = "  "


class Sheet:
    """Lines of text of one width, with bold and reverse only when colour is asked for."""

    def __init__(self, width: int, colour: bool) -> None:
        """width: characters in a line, at least 40."""
        self.width = max(width, 40)
        self.colour = colour
        self.lines: list[str] = []

    def text(self) -> str:
        """All lines, one line end at the end."""
        return "\n".join(line.rstrip() for line in self.lines) + "\n"

    def blank(self) -> None:
        """One empty line, never two."""
        if self.lines and self.lines[-1]:
            self.lines.append("")

    def _styled(self, line: str, style: str) -> str:
        return f"{style}{line}{_END}" if self.colour and style and line else line

    def say(self, text: str, *, first: str = "", rest: str = "", strong: bool = False, loud: bool = False) -> None:
        """A paragraph. first, rest: what its first and its other lines begin with."""
        style = _REVERSE if loud else _BOLD if strong else ""
        for line in wrap(text, self.width, first, rest):
            self.lines.append(self._styled(line, style))

    def heading(self, text: str) -> None:
        """A heading with a line below it."""
        self.blank()
        self.say(text, strong=True)
        self.lines.append("─" * min(len(text), self.width))

    def items(self, texts: Iterable[str], sign: str = "• ") -> None:
        """A list."""
        for text in texts:
            self.say(text, first=sign, rest=" " * len(sign))

    def numbered(self, texts: Iterable[str]) -> None:
        """A list with numbers."""
        for number, text in enumerate(texts, 1):
            self.say(text, first=f"{number}. ", rest="   ")

    def pair(self, label: str, text: str) -> None:
        """A label and its text."""
        self.say(text, first=f"{label}: ", rest="  ")

    def box(self, title: str, texts: Iterable[str]) -> None:
        """A box with a title."""
        inner = self.width - 4
        self.lines.append(f"┌─ {title} " + "─" * max(self.width - len(title) - 5, 0) + "┐")
        for text in texts:
            for line in wrap(text, inner, "", "  "):
                self.lines.append(f"│ {line.ljust(inner)} │")
        self.lines.append("└" + "─" * (self.width - 2) + "┘")

    def table(self, table: Table) -> None:
        """A table in columns; when the columns would be too narrow, each row as a paragraph with labels."""
        widths = column_widths(table, self.width)
        if widths is None:
            self._stacked(table)
            return
        self.lines.extend(self._styled(line, _BOLD) for line in columns(table.head, widths))
        self.lines.append(_BETWEEN.join("─" * width for width in widths))
        for group in table.groups:
            if group.title:
                self.say(group.title, strong=True)
            for row in group.rows:
                self.lines.extend(columns(row, widths))

    def _stacked(self, table: Table) -> None:
        for group in table.groups:
            if group.title:
                self.say(group.title, strong=True)
            for row in group.rows:
                self.say(row[0], first="• ", rest="  ", strong=True)
                cells = zip(table.head[1:], row[1:], strict=True)
                told = [f"{label.rstrip('?')}: {text.rstrip('.')}" for label, text in cells if text not in ("", "–")]
                self.say("; ".join(told) + ".", first="  ", rest="  ")


def wrap(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """Lines of at most `width` characters; a word that is longer is cut. A number keeps its % or × beside it."""
    glued = _SIGN.sub("\u00a0", text)
    lines = textwrap.wrap(glued, width=width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)
    return [line.replace("\u00a0", " ") for line in lines] or [first.rstrip()]


def columns(row: Row, widths: tuple[int, ...]) -> Iterator[str]:
    """The lines of one row."""
    cells = [wrap(text, width) for text, width in zip(row, widths, strict=True)]
    for number in range(max(len(cell) for cell in cells)):
        parts = [(cell[number] if number < len(cell) else "").ljust(w) for cell, w in zip(cells, widths, strict=True)]
        yield _BETWEEN.join(parts)


def column_widths(table: Table, width: int) -> tuple[int, ...] | None:
    """Widths that fill the line: each column gets what it needs, the widest give way; None when too narrow to read."""
    rows = [table.head, *(row for group in table.groups for row in group.rows)]
    wanted = [max(len(row[column]) for row in rows) for column in range(len(table.head))]
    least = [min(max(_longest_word(row[column]) for row in rows), 16) for column in range(len(table.head))]
    least = [max(value, min(want, _NARROWEST)) for value, want in zip(least, wanted, strict=True)]
    room = width - len(_BETWEEN) * (len(wanted) - 1)
    crowded = len(wanted) > 3 and room < _READABLE * len(wanted) and sum(wanted) > room
    if sum(least) > room or len(wanted) > 5 or crowded:
        return None
    while sum(wanted) > room:
        widest = max(range(len(wanted)), key=lambda column: wanted[column] - least[column])
        wanted[widest] -= 1
    return tuple(wanted)


def _longest_word(text: str) -> int:
    return max((len(word) for word in text.split()), default=0)
