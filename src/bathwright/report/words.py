"""The message catalogue: texts by section and code, for en-US and en-GB, loaded once."""

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Any, Literal

from bathwright.report.fill import capital, fill, holes, plain

Language = Literal["en-US", "en-GB"]
LANGUAGES: tuple[Language, ...] = ("en-US", "en-GB")
_CODED = ("steps", "measures", "questions", "findings", "alternatives", "care", "waste")
_TABLED = ("general", "values")

Texts = Mapping[str, Mapping[str, str]]


@cache
def _files() -> dict[str, dict[str, Any]]:
    """All files of the catalogue by name, as written."""
    folder = files("bathwright.report") / "words"
    found = sorted((entry for entry in folder.iterdir() if entry.name.endswith(".toml")), key=lambda entry: entry.name)
    return {entry.name[:-5]: tomllib.loads(entry.read_text(encoding="utf-8")) for entry in found}


@cache
def catalogue(language: Language) -> Texts:
    """Flat catalogue of one language: "section" or "section.code" -> name -> text with holes for values.

    Sections of general.toml and values.toml stand under their own names ("mark"); the other files give one section per
    code ("findings.lone-work"). Terms and spelling of the language are already in the texts.
    """
    raw = _files()
    terms = _terms(raw["terms"], language)
    spelling = raw["terms"]["spelling"] if language == "en-US" else {}
    flat: dict[str, dict[str, str]] = {}
    for stem in _TABLED:
        flat |= {section: dict(texts) for section, texts in raw[stem].items()}
    for stem in _CODED:
        flat |= {f"{stem}.{code}": dict(texts) for code, texts in raw[stem].items()}
    if language == "en-GB":
        _override(flat, raw.get("en_gb", {}))
    return {
        section: {name: _speak(text, terms, spelling) for name, text in texts.items()}
        for section, texts in flat.items()
    }


def _terms(table: dict[str, Any], language: Language) -> dict[str, str]:
    terms: dict[str, str] = dict(table[language])
    return terms | {capital(name): capital(word) for name, word in terms.items()}


def _override(flat: dict[str, dict[str, str]], changes: dict[str, Any]) -> None:
    for section, texts in changes.items():
        for name, text in texts.items():
            if isinstance(text, dict):
                flat.setdefault(f"{section}.{name}", {}).update(text)
            else:
                flat.setdefault(section, {})[name] = text


def _speak(text: str, terms: Mapping[str, str], spelling: Mapping[str, str]) -> str:
    """The text with the words of the language: terms into their holes, spelling outside of holes."""
    for name, word in terms.items():
        text = text.replace("{" + name + "}", word)
    if not spelling:
        return text
    pattern = re.compile(r"(\{[^{}|]*)|\b(" + "|".join(spelling) + r")\b", re.IGNORECASE)

    def spell(match: re.Match[str]) -> str:
        if match[1] is not None:
            return match[1]
        word = spelling[match[2].lower()]
        return capital(word) if match[2][0].isupper() else word

    return pattern.sub(spell, text)


class Words:
    """The catalogue for one reader. A code or value that it lacks comes out in plain words and is kept in `missed`."""

    def __init__(self, language: Language) -> None:
        """language: "en-US" or "en-GB"."""
        self.language: Language = language
        self.missed: set[str] = set()
        self._texts = catalogue(language)
        self._swap: dict[str, str] = _files()["terms"]["plain_en_gb"] if language == "en-GB" else {}

    def has(self, section: str, name: str) -> bool:
        """Whether the catalogue has this text and it is not empty."""
        return bool(self._texts.get(section, {}).get(name))

    def get(self, section: str, name: str, /, **values: str) -> str:
        """Text `name` of a section, filled. Never raises: what it lacks is shown as the code in plain words."""
        text = self._texts.get(section, {}).get(name)
        if text is None:
            self.missed.add(f"{section}: {name}")
            return self.plain(name)
        filled, missing = fill(text, values)
        if missing:
            self.missed.add(f"{section}: {name}: no value for {', '.join(missing)}")
            return self.plain(name)
        return filled

    def of_code(self, kind: str, code: str, name: str, values: Mapping[str, str]) -> str:
        """Text `name` ("title", "do", "what") of a code of a kind ("findings", "steps"), filled with values."""
        text = self._texts.get(f"{kind}.{code}", {}).get(name)
        if text is None:
            self.missed.add(f"{kind}: {code}: no {name}")
            return capital(self.plain(code))
        filled, missing = fill(text, values)
        if missing:
            self.missed.add(f"{kind}: {code}: {name}: no value for {', '.join(missing)}")
            return capital(self.plain(code))
        return filled

    def takes(self, kind: str, code: str, name: str) -> tuple[str, ...]:
        """Names of the values that a text of a code can take; empty when it is not in the catalogue."""
        return holes(self._texts.get(f"{kind}.{code}", {}).get(name, ""))

    def word(self, code: str, *sections: str, free: bool = False) -> str:
        """Word for a code from the first section that has it; `free` = any other word may stand as it is."""
        for section in (*sections, "value"):
            if code in self._texts.get(section, {}):
                return self.get(section, code)
        if not free:
            self.missed.add(f"{'/'.join(sections) or 'value'}: {code}")
        return self.plain(code)

    def plain(self, code: str) -> str:
        """The code in plain words of this language."""
        return " ".join(self._swap.get(part, part) for part in plain(code).split(" "))
