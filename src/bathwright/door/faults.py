"""Faults of a user's file: values with a place, collected and shown together."""

from dataclasses import dataclass

_LONGEST_NAME = 200


@dataclass(frozen=True, slots=True)
class Fault:
    """One fault: file, place in the file, what is wrong, what would be right."""

    file: str
    place: str
    wrong: str
    right: str = ""
    line: int | None = None

    def text(self) -> str:
        """The fault as one clear line."""
        file = self.file if len(self.file) <= _LONGEST_NAME else "…" + self.file[1 - _LONGEST_NAME :]
        where = file + (f":{self.line}" if self.line else "")
        parts = [where] + ([self.place] if self.place else [])
        tail = f"{self.wrong}; {self.right}" if self.right else self.wrong
        return one_line(": ".join([*parts, tail]))


MOST_FAULTS = 100


class DoorError(Exception):
    """All faults of the files that were given, at most a hundred of each kind and file."""

    def __init__(self, faults: list[Fault]) -> None:
        """Keep the faults in the order in which they were found."""
        super().__init__("\n".join(fault.text() for fault in faults))
        self.faults = faults


def one_line(text: str, longest: int = 400) -> str:
    """The text without control signs or line ends, cut at `longest` characters."""
    clean = "".join(char if char.isprintable() else " " for char in text)
    return clean if len(clean) <= longest else clean[: longest - 1] + "…"


def nearest(word: str, known: list[str]) -> str:
    """A hint that names the nearest known word, or all of them when they are few."""
    import difflib

    close = difflib.get_close_matches(word[:80], known, n=1, cutoff=0.5)
    if close:
        return f'did you mean "{close[0]}"?'
    if not known:
        return ""
    if len(known) <= 12:
        return "known here: " + ", ".join(sorted(known))
    return f"one of {len(known)} known words; the nearest is not clear"
