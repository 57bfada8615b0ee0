"""What is asked beside the files: the time of --at, products that are wished for or at hand."""

from datetime import UTC, datetime
from pathlib import Path

import pytest

from bathwright.app import ask
from bathwright.domain.plan import Options, Plan
from bathwright.door.faults import DoorError

ROOT = Path(__file__).parent.parent.parent
DEMO = ROOT / "examples" / "surveys" / "demo.toml"
NOW = datetime(2026, 12, 1, 15, tzinfo=UTC)


def lines(path: Path, at: str | None = None) -> list[str]:
    with pytest.raises(DoorError) as caught:
        ask.plan(path, None, at, Options(), NOW)
    return str(caught.value).splitlines()


def planned(path: Path, at: str) -> Plan:
    return ask.plan(path, None, at, Options(), NOW)


@pytest.mark.parametrize(
    "text",
    ["0001-01-01T00:00", "9999-12-31T23:59", "0001-01-01T00:00+23:59", "9999-12-31T23:59-23:59", "1999-12-31T23:59",
     "2100-01-01T00:01"],
)  # fmt: skip
def test_a_time_far_away_is_one_line(text: str) -> None:
    (line,) = lines(DEMO, text)
    assert line.startswith("--at: ")
    assert "from 2000-01-01 to 2100-01-01" in line


@pytest.mark.parametrize("text", ["2000-01-01T00:00", "2100-01-01T00:00", "2000-01-01T00:00+14:00"])
def test_the_ends_of_the_range_can_be_planned(text: str) -> None:
    assert planned(DEMO, text).made_for.at.year in (1999, 2000, 2100)


def test_a_time_that_the_clocks_skip_moves_forward() -> None:
    assert planned(DEMO, "2027-03-14T02:30").made_for.at == datetime(2027, 3, 14, 8, 30, tzinfo=UTC)  # 03:30 there


def test_a_doubled_time_is_the_first_and_a_zone_counts() -> None:
    assert planned(DEMO, "2026-11-01T01:30").made_for.at == datetime(2026, 11, 1, 6, 30, tzinfo=UTC)
    assert planned(DEMO, "2026-12-01T09:00+01:00").made_for.at == datetime(2026, 12, 1, 8, tzinfo=UTC)


def test_a_wrong_time_comes_with_the_faults_of_the_file(tmp_path: Path) -> None:
    bad = tmp_path / "bad.toml"
    bad.write_text(DEMO.read_text("utf-8").replace('country = "US"', 'country = "XX"', 1), "utf-8")
    found = lines(bad, "tomorrow")
    assert len(found) == 2
    assert found[0] == "--at: 'tomorrow' is no date and time; write 2026-12-01T09:00"
    assert "place.country" in found[1]


def with_products(tmp_path: Path, *wishes: tuple[str, str], at_hand: str = "[]") -> Path:
    text = DEMO.read_text("utf-8").replace('clean_tap = "kitchen"', f'clean_tap = "kitchen"\nat_hand = {at_hand}', 1)
    text += "".join(f'\n[[wishes]]\nsheet = "{sheet}"\nuse = "{use}"\n' for sheet, use in wishes)
    path = tmp_path / "with.toml"
    path.write_text(text, "utf-8")
    return path


@pytest.mark.parametrize(
    ("sheet", "use", "role", "wanted"),
    [
        ("silicone-sealant", "clean", "sealant", "cleaner"),
        ("strong-stripper", "descale", "stripper", "cleaner"),
        ("solvent-epoxy", "mould", "coating", "cleaner"),
        ("household-bleach", "strip", "cleaner", "stripper"),
        ("neutral-cleaner", "fill", "cleaner", "filler"),
        ("epoxy-filler", "seal", "filler", "sealant"),
        ("household-bleach", "wipe", "cleaner", "solvent"),
    ],
)
def test_a_product_must_fit_what_it_is_wished_for(tmp_path: Path, sheet: str, use: str, role: str, wanted: str) -> None:
    path = with_products(tmp_path, (sheet, use))
    (line,) = lines(path)
    number = next(n for n, text in enumerate(path.read_text("utf-8").splitlines(), 1) if text == f'use = "{use}"')
    assert line.startswith(
        f"{path}:{number}: wishes[1].use: '{sheet}' is a {role}, and '{use}' wants a {wanted}; fits: "
    )


def test_unknown_products_are_named_with_the_nearest(tmp_path: Path) -> None:
    path = with_products(tmp_path, ("household-bleech", "mould"), at_hand='["alcohol-wipe", "silicon-sealant"]')
    found = lines(path)
    assert len(found) == 2
    assert "at_hand[2]: there is no sheet 'silicon-sealant'; did you mean \"silicone-sealant\"?" in found[0]
    assert "wishes[1].sheet: there is no sheet 'household-bleech'; did you mean \"household-bleach\"?" in found[1]


def test_products_that_fit_are_taken(tmp_path: Path) -> None:
    path = with_products(tmp_path, ("household-bleach", "mould"), ("alcohol-wipe", "wipe"), at_hand='["alcohol-wipe"]')
    assert planned(path, "2026-12-01T09:00").survey.at_hand == ("alcohol-wipe",)


def test_check_says_what_plan_says_of_a_second_fixture(tmp_path: Path) -> None:
    more = '\n[[fixtures]]\nid = "basin"\nkind = "basin"\n[fixtures.sizes]\nlength = "0.5 m"\n'
    path = tmp_path / "two.toml"
    path.write_text(DEMO.read_text("utf-8") + more, "utf-8")
    good, faults = ask.check((path,))
    assert good == []
    assert [fault.text() for fault in faults] == lines(path)
    assert "this edition plans one" in faults[0].text()
