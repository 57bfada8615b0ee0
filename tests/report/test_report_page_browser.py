"""The page in a browser: it fits its screen, and the accessibility rules find nothing."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, sync_playwright
from sample import ALL

from bathwright.report.page import plan_page

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as driver:
        started = driver.chromium.launch(
            executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu", "--disable-quic"]
        )
        yield started
        started.close()


def _open(browser: Browser, folder: Path, name: str, **options: Any) -> Any:
    place = folder / f"{name}.html"
    place.write_text(plan_page(ALL[name]), encoding="utf-8")
    page = browser.new_page(**options)
    page.goto(place.as_uri())
    return page


@pytest.mark.parametrize("width", [360, 800, 1440])
@pytest.mark.parametrize("name", ["not-yet", "no"])
def test_nothing_sticks_out_of_the_screen(browser: Browser, tmp_path: Path, name: str, width: int) -> None:
    page = _open(browser, tmp_path, name, viewport={"width": width, "height": 900})
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1440])
def test_accessibility_rules_find_nothing(browser: Browser, tmp_path: Path, scheme: str, width: int) -> None:
    page = _open(browser, tmp_path, "not-yet", viewport={"width": width, "height": 900}, color_scheme=scheme)
    found = Axe().run(page, options={"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "best-practice"]})
    page.close()
    assert [(v["id"], v["nodes"][0]["html"]) for v in found.response["violations"]] == []


def test_page_runs_no_script_and_asks_for_nothing(browser: Browser, tmp_path: Path) -> None:
    asked: list[str] = []
    page = browser.new_page()
    page.on("request", lambda request: asked.append(request.url))
    place = tmp_path / "go.html"
    place.write_text(plan_page(ALL["go"]), encoding="utf-8")
    page.goto(place.as_uri())
    assert asked == [place.as_uri()]
    page.close()
