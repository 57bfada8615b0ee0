"""The page in a real browser (Debian's chromium): fits phone, tablet, desk and paper, asks nobody, readable by all."""

import shutil
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, sync_playwright

from bathwright.app import ask
from bathwright.domain.plan import Options
from bathwright.report.page import plan_page

SURVEYS = sorted((Path(__file__).parent.parent.parent / "examples" / "surveys").glob("*.toml"))
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking",
         "--disable-component-update", "--disable-sync", "--no-first-run"]  # fmt: skip
AT = datetime(2026, 12, 1, 14, tzinfo=UTC)


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with sync_playwright() as driver:
        made = driver.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
        yield made
        made.close()


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("pages")
    out = {}
    for survey in SURVEYS:
        out[survey.stem] = folder / f"{survey.stem}.html"
        out[survey.stem].write_text(plan_page(ask.plan(survey, None, AT, Options(), AT)), "utf-8")
    return out


def opened(browser: Browser, path: Path, width: int, scheme: str = "light") -> tuple[Page, list[str]]:
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)  # type: ignore[arg-type]
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(path.as_uri())
    return page, asked


@pytest.mark.parametrize("width", [360, 800, 1440])
@pytest.mark.parametrize("name", [path.stem for path in SURVEYS])
def test_nothing_sticks_out_and_nobody_is_asked(
    browser: Browser, pages: dict[str, Path], name: str, width: int
) -> None:
    page, asked = opened(browser, pages[name], width)
    wide = page.evaluate("document.documentElement.scrollWidth")
    title = page.locator("h1").first.inner_text()
    page.close()
    assert wide <= width
    assert asked == [pages[name].as_uri()]
    assert title.startswith(("Go, as planned below", "Not yet: first", "No: not here, not this way. Instead:"))


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 1440])
@pytest.mark.parametrize("name", ["demo", "easy-go", "stripper"])
def test_no_violation_of_accessibility_rules(
    browser: Browser, pages: dict[str, Path], name: str, width: int, scheme: str
) -> None:
    page, _ = opened(browser, pages[name], width, scheme)
    found = Axe().run(page)
    page.close()
    assert found.violations_count == 0, found.generate_report()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_it_prints_with_the_verdict_on_the_first_sheet(
    browser: Browser, pages: dict[str, Path], paper: str, tmp_path: Path
) -> None:
    page, _ = opened(browser, pages["demo"], 1000)
    out = tmp_path / "plan.pdf"
    page.pdf(path=out, format=paper)
    page.close()
    assert out.read_bytes().startswith(b"%PDF") and out.stat().st_size > 20_000
