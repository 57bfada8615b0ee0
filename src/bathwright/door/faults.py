"""Faults of a user's file: values with a place, collected and shown together."""

import re
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
        """Keep the faults, those of one file by line."""
        self.faults = in_order(faults)
        super().__init__("\n".join(fault.text() for fault in self.faults))


def in_order(faults: list[Fault]) -> list[Fault]:
    """The faults by file as first named, then by line; those without a line first, a count of more faults last."""
    files = list(dict.fromkeys(fault.file for fault in faults))

    def rank(fault: Fault) -> tuple[int, bool, int]:
        return files.index(fault.file), not fault.place and fault.line is None, fault.line or 0

    return sorted(faults, key=rank)


def one_line(text: str, longest: int = 900) -> str:
    """The text without control signs or line ends, cut at `longest` characters."""
    clean = "".join(char if char.isprintable() else " " for char in text)
    return clean if len(clean) <= longest else clean[: longest - 1] + "…"


_MOST_LISTED = 40
_MOST_MEANT = 6


def nearest(word: str, known: list[str]) -> str:
    """A hint: the known word that is clearly meant, or all known words when they are few (40 at most)."""
    if not known:
        return ""
    meant = _meant(word[:80], known)
    if len(meant) == 1:
        return f'did you mean "{meant[0]}"?'
    if meant:
        return "did you mean one of " + ", ".join(meant) + "?"
    if len(known) <= _MOST_LISTED:
        return "known here: " + ", ".join(sorted(known))
    return f"one of {len(known)} known words; the nearest is not clear"


def _meant(word: str, known: list[str]) -> list[str]:
    """The known words that hold all parts of the word; else the one that is spelt almost like it."""
    import difflib

    parts = _parts(word)
    holding = [entry for entry in known if parts and parts <= _parts(entry)]
    same = [entry for entry in holding if parts == _parts(entry)]
    if same or 0 < len(holding) <= _MOST_MEANT:
        return same or holding
    lower = {entry.lower(): entry for entry in known}
    cutoff = 0.75 if len(word) <= 5 else 0.8
    return [lower[entry] for entry in difflib.get_close_matches(word.lower(), list(lower), n=1, cutoff=cutoff)]


def _parts(word: str) -> set[str]:
    return {part for part in re.split(r"[^a-z0-9]+", word.lower()) if part}
