"""The plan as one HTML file: no outside link, no script, style and pictures inside."""

import re
from functools import cache
from importlib.resources import files

from jinja2 import Environment, FunctionLoader, StrictUndefined
from markupsafe import Markup, escape

from bathwright.domain.plan import Plan
from bathwright.report.build import plan_context
from bathwright.report.context import PlanContext
from bathwright.report.reader import sentence

# what must not be broken over two lines: a date, a time with its zone, a number with its unit
_DATE = re.compile(r"\b(\d{1,2}) ([A-Z][a-z]{2}) (\d{4})\b")
_TIME = re.compile(r"\b(\d\d:\d\d) (UTC[+-]?\d*|[A-Z]{3,5})\b")
_UNIT = re.compile(r"(?<=\d) (?=(?:h|min|s|m|cm|mm|mL|L|g|kg|K|times|days|in|ft|mil|cfm|ppm|mg)\b|[%×°µ])")
_PHONE = re.compile(r"\+?\d[\d -]{4,}\d")
_TEMPLATE = "plan.html.j2"


def plan_page(plan: Plan) -> str:
    """The page of a plan: one valid HTML5 text that needs nothing else. The same plan gives the same bytes.

    All texts are escaped; the template gets the words and figures of `PlanContext` and nothing else.
    """
    return render(plan_context(plan))


def render(context: PlanContext) -> str:
    """The page of a context."""
    return _environment().get_template(_TEMPLATE).render(c=context).strip() + "\n"


@cache
def _environment() -> Environment:
    """Escaping is on for every template; an unknown name is an error."""
    made = Environment(
        loader=FunctionLoader(_text_of),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=glue,
    )
    made.filters["numbers_whole"] = numbers_whole
    made.filters["capitalise"] = sentence
    return made


def glue(value: object) -> object:
    """A text with no-break blanks in dates, times and amounts; everything else as it is. Escaping comes after it."""
    if type(value) is not str:
        return value
    text = _DATE.sub("\\1\u00a0\\2\u00a0\\3", value)
    text = text.replace(" US fl oz", "\u00a0US\u00a0fl\u00a0oz")
    return _UNIT.sub("\u00a0", _TIME.sub("\\1\u00a0\\2", text))


def numbers_whole(text: str) -> Markup:
    """The text, escaped, with telephone numbers that are never broken over two lines."""
    return Markup(_PHONE.sub(r'<span class="whole">\g<0></span>', str(escape(text))))


def _text_of(name: str) -> str | None:
    """Text of a file of the folder of templates; None when there is none of that name."""
    place = files("bathwright.report") / "templates" / name
    return place.read_text(encoding="utf-8") if place.is_file() else None
