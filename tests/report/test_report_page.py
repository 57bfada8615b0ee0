"""The page: one valid file that needs nothing else."""

import ast
import dataclasses
import inspect
import re
from itertools import pairwise

import pytest
from jinja2 import UndefinedError
from report_checks import Parsed
from sample import ALL, GO, NOT_YET

from bathwright.domain.plan import Plan
from bathwright.report import context as context_module
from bathwright.report import page as page_module
from bathwright.report.build import plan_context
from bathwright.report.page import glue, plan_page

EACH = pytest.mark.parametrize("plan", ALL.values(), ids=ALL.keys())


@EACH
def test_tags_are_balanced_and_ids_unique(plan: Plan) -> None:
    page = plan_page(plan)
    parsed = Parsed(page)
    assert page.startswith("<!doctype html>\n<html lang=")
    assert parsed.faults == []
    assert parsed.open == []
    ids = [attrs["id"] for _, attrs in parsed.tags if "id" in attrs]
    assert len(ids) == len(set(ids))
    assert all(re.fullmatch(r"[A-Za-z][\w-]*", name) for name in ids)


@EACH
def test_page_needs_nothing_from_outside(plan: Plan) -> None:
    page = plan_page(plan)
    assert not re.search(r"https?:|//[a-z]|@import|<script|<link|<iframe|\son\w+=|\bsrc=", page)
    assert re.findall(r"url\((?!#)", page) == []
    ids = {attrs["id"] for _, attrs in Parsed(page).tags if "id" in attrs}
    links = [attrs["href"] for _, attrs in Parsed(page).tags if "href" in attrs]
    assert links
    assert [link for link in links if not link.startswith("#") or link[1:] not in ids] == []


@EACH
def test_headings_go_down_one_level_at_a_time(plan: Plan) -> None:
    levels = [int(tag[1]) for tag, _ in Parsed(plan_page(plan)).tags if re.fullmatch(r"h[1-6]", tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


@EACH
def test_page_begins_with_the_verdict_and_names_its_language(plan: Plan) -> None:
    parsed = Parsed(plan_page(plan))
    context = plan_context(plan)
    assert parsed.all("html")[0]["lang"] == context.language
    seen = parsed.text
    assert seen.split(context.labels["page_skip"])[1].strip().startswith(context.verdict)


@EACH
def test_tables_have_captions_and_named_heads(plan: Plan) -> None:
    parsed = Parsed(plan_page(plan))
    tables = len(parsed.all("table"))
    assert tables == len(parsed.all("caption"))
    assert all(head.get("scope") in ("col", "row", "rowgroup") for head in parsed.all("th"))
    assert tables >= (1 if plan.verdict == "no" else 9)


@EACH
def test_pictures_say_what_they_show(plan: Plan) -> None:
    parsed = Parsed(plan_page(plan))
    ids = {attrs["id"] for _, attrs in parsed.tags if "id" in attrs}
    pictures = [attrs for attrs in parsed.all("svg") if attrs.get("role") == "img"]
    assert len(pictures) == (0 if plan.timetable is None else 1) + len(plan.courses)
    for picture in pictures:
        assert set(picture["aria-labelledby"].split()) <= ids
    assert all(attrs.get("aria-hidden") == "true" for attrs in parsed.all("svg") if attrs.get("class") == "glyph")


@EACH
def test_nothing_raw_shows_through(plan: Plan) -> None:
    seen = Parsed(plan_page(plan)).text
    assert not re.findall(r"\b(?:None|nan|inf|True|False|Undefined)\b|\{\w+[|}]|&(?:lt|amp|#)", seen)
    assert re.findall(r"\b[a-z]+(?:_[a-z0-9]+)+\b", seen) == []
    assert not re.search(r"\bsafe(?:ly)?\b", Parsed(plan_page(plan)).own_text, re.IGNORECASE)


@EACH
def test_same_plan_gives_the_same_bytes(plan: Plan) -> None:
    assert plan_page(plan).encode() == plan_page(dataclasses.replace(plan)).encode()


HOSTILE = "</title><script>alert(1)</script><img src=x onerror=alert(2)>\"'>{{ 7 * 7 }}{% raw %}{what}[x]"


def _hostile() -> Plan:
    """The sample with hostile text at each place where a survey or a sheet brings text."""
    survey = dataclasses.replace(
        NOT_YET.survey,
        id=HOSTILE,
        note=HOSTILE,
        clean_tap=HOSTILE,
        place=dataclasses.replace(NOT_YET.survey.place, region=HOSTILE),
        spaces=(dataclasses.replace(NOT_YET.survey.spaces[0], id=HOSTILE),),
    )
    system = NOT_YET.system
    assert system is not None
    sheets = tuple(dataclasses.replace(sheet, product=HOSTILE) for sheet in system.sheets)
    findings = tuple(
        dataclasses.replace(
            f, about=(*f.about, HOSTILE), values=tuple(dataclasses.replace(v, value=HOSTILE) for v in f.values)
        )
        for f in NOT_YET.findings
    )
    return dataclasses.replace(
        NOT_YET,
        survey=survey,
        system=dataclasses.replace(system, product=HOSTILE, family=HOSTILE, sheets=sheets),
        findings=findings,
        measures=tuple(dataclasses.replace(m, what=HOSTILE, who=HOSTILE) for m in NOT_YET.measures),
        materials=tuple(dataclasses.replace(m, product=HOSTILE, reason=HOSTILE) for m in NOT_YET.materials),
        alternatives=tuple(dataclasses.replace(a, product=HOSTILE) for a in NOT_YET.alternatives),
        sources=(*NOT_YET.sources, HOSTILE),
        emergency=dataclasses.replace(NOT_YET.emergency, clean_tap=HOSTILE, emergency=HOSTILE),
    )


def test_hostile_text_comes_out_as_text() -> None:
    page = plan_page(_hostile())
    parsed = Parsed(page)
    assert parsed.faults == []
    assert not parsed.all("script", "img")
    assert "<script" not in page
    assert not [attrs for _, attrs in parsed.tags if any(name.startswith("on") for name in attrs)]
    assert "alert(1)" in parsed.text
    assert "{{ 7 * 7 }}" in parsed.text


def test_template_refuses_an_unknown_name() -> None:
    environment = page_module._environment()
    assert environment.autoescape is True
    with pytest.raises(UndefinedError):
        environment.from_string("{{ c.there_is_no_such_field }}").render(c=plan_context(GO))


def test_template_gets_the_context_and_nothing_else() -> None:
    assert "render(c=context)" in inspect.getsource(page_module.render)
    text = page_module._text_of("plan.html.j2") or ""
    names = set(re.findall(r"\bc\.(\w+)", text))
    assert names <= {field.name for field in dataclasses.fields(context_module.PlanContext)}


def test_every_field_of_the_context_is_documented() -> None:
    tree = ast.parse(inspect.getsource(context_module))
    for record in (node for node in tree.body if isinstance(node, ast.ClassDef)):
        assert ast.get_docstring(record)
        for place, node in enumerate(record.body):
            if isinstance(node, ast.AnnAssign):
                after = record.body[place + 1] if place + 1 < len(record.body) else None
                said = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant)
                assert said, f"{record.name}.{ast.unparse(node.target)}"


def test_dates_times_and_amounts_are_not_broken() -> None:
    assert glue("Thu 10 Dec 2026, 18:00 EST, 6 h 30 min, 21.0 US fl oz") == (
        "Thu 10\u00a0Dec\u00a02026, 18:00\u00a0EST, 6\u00a0h 30\u00a0min, 21.0\u00a0US\u00a0fl\u00a0oz"
    )
    assert glue(3) == 3


def test_page_shows_who_is_out_and_the_emergency_box_before_the_three_things() -> None:
    page = plan_page(NOT_YET)
    places = [page.index(f'<section id="{name}"') for name in ("emergency", "three", "before")]
    places.insert(0, page.index('<dl class="out">'))
    assert places == sorted(places)
    assert places[-1] < page.index('<section id="when"')
