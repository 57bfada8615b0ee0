"""The manual page of a rule: from the docstring of its module to Markdown."""

import inspect

from bathwright import sources

SECTIONS = ("What", "Why", "Strength", "Fires", "Stays silent", "Sources")


def sections(docstring: str) -> dict[str, str]:
    """The sections of a rule's docstring by title; the first line stands under "". ValueError for a wrong layout."""
    lines = inspect.cleandoc(docstring).splitlines()
    found: dict[str, list[str]] = {"": lines[:1]}
    title = ""
    for line in lines[1:]:
        if line and not line.startswith(" "):
            title = line.strip()
            found[title] = []
        elif line.strip():
            found[title].append(line.strip())
    if tuple(found) != ("", *SECTIONS):
        raise ValueError(f"sections are {tuple(found)[1:]}, wanted {SECTIONS}")
    return {name: " ".join(words) for name, words in found.items()}


def page_text(code: str, docstring: str, source_ids: tuple[str, ...]) -> str:
    """The page: code, first line, sections, and the sources with their marks."""
    parts = sections(docstring)
    out = [f"# {code}", "", "<!-- Made from the rule's own text. Do not edit. -->", "", parts[""], ""]
    for title in SECTIONS:
        out += [f"## {title}", "", parts[title], ""]
    known = sources.load()
    for name in source_ids:
        mark = known[name].mark if name in known else "not in the bibliography"
        out.append(f"- `{name}` ({mark}): {sources.citation(name)}")
    return "\n".join(out) + "\n"
