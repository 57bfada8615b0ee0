"""Filling a text of the catalogue: {name}, {name|other words}, [shown only when its values are known]."""

import re
from collections.abc import Mapping

_OPTIONAL = re.compile(r"\[([^\[\]]*)\]")
_HOLE = re.compile(r"\{(\w+)(?:\|([^{}]*))?\}")
_PLAIN = re.compile(r"[-_]+")
_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]+")
_LONGEST = 600


def clean(text: str) -> str:
    """Text that somebody typed, as one line: no control or direction characters, at most 600 characters."""
    out = " ".join(_CONTROL.sub(" ", text).split())
    return out if len(out) <= _LONGEST else out[: _LONGEST - 1] + "…"


def plain(code: str) -> str:
    """A code in plain words: hyphens and underscores become blanks."""
    return clean(_PLAIN.sub(" ", code))


def holes(text: str) -> tuple[str, ...]:
    """Names of all values that a text can take."""
    return tuple(dict.fromkeys(match[1] for match in _HOLE.finditer(text)))


def fill(text: str, values: Mapping[str, str]) -> tuple[str, tuple[str, ...]]:
    """The filled text, and the names that it needed and did not get.

    A part in brackets falls away when one of its values is not known. Values are put in once and never read again as
    a text with holes.
    """

    def keep(match: re.Match[str]) -> str:
        inner = match[1]
        return inner if all(hole[2] is not None or hole[1] in values for hole in _HOLE.finditer(inner)) else ""

    missing: list[str] = []

    def put(match: re.Match[str]) -> str:
        if match[1] in values:
            return values[match[1]]
        if match[2] is None:
            missing.append(match[1])
        return match[2] or ""

    kept = _OPTIONAL.sub(keep, text)
    return tidy(_HOLE.sub(put, kept)), tuple(dict.fromkeys(missing))


def tidy(text: str) -> str:
    """One blank between words, none before a comma or full stop."""
    return re.sub(r" +([,.;:])(?= |$)", r"\1", " ".join(text.split()))


def capital(text: str) -> str:
    """The text with a capital first letter."""
    return text[:1].upper() + text[1:]
