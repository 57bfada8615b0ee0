"""What several tests of the report share: all strings of a context, a parser of tags and visible text of a page."""

import dataclasses
import re
from collections.abc import Iterator
from html.parser import HTMLParser

VOID = {"meta", "br", "hr", "img", "link", "input", "wbr"}
CLOSED_SELF = {"path", "rect", "line", "circle", "polyline"}


def own_words(text: str) -> str:
    """A terminal text without its list of sources, whose titles are the words of others."""
    head, _, tail = text.partition("\nSources\n")
    return head + tail.partition("What this plan is not")[2]


def strings(value: object) -> Iterator[str]:
    """Every text in a context, however deep."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for entry in value:
            yield from strings(entry)
    elif dataclasses.is_dataclass(value) and not isinstance(value, type):
        for field in dataclasses.fields(value):
            yield from strings(getattr(value, field.name))


class Parsed(HTMLParser):
    """Tags, attributes and visible text of a page; faults where tags do not match."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.faults: list[str] = []
        self.tags: list[tuple[str, dict[str, str]]] = []
        self.texts: list[str] = []
        self.feed(page)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        names = [name for name, _ in attrs]
        if len(names) != len(set(names)):
            self.faults.append(f"{tag} has an attribute twice")
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in CLOSED_SELF:
            self.faults.append(f"{tag} closes itself")

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open.pop() != tag:
            self.faults.append(f"</{tag}> at {self.getpos()} closes nothing")

    def handle_data(self, data: str) -> None:
        if "style" not in self.open:
            self.texts.append(data)

    @property
    def text(self) -> str:
        """What a reader sees, with plain blanks."""
        return re.sub(r"\s+", " ", " ".join(self.texts).replace("\u00a0", " "))

    @property
    def own_text(self) -> str:
        """The same without the list of sources, whose titles are the words of others."""
        parts = self.text.split(" Sources ")
        return parts[0] if len(parts) < 2 else " ".join(parts[:-1])

    def all(self, *names: str) -> list[dict[str, str]]:
        """Attributes of all tags of these names."""
        return [attrs for tag, attrs in self.tags if tag in names]
