"""Bad sheets: typed facts, shares, CAS numbers, papers; all faults together, places as in the file."""

from collections.abc import Callable

import pytest

Faults = Callable[[str], list[str]]

ONE_FAULT = [
    ('value = "4 h"', 'value = "4 x"', ".value", "'x' is no unit for a time", '"90 min" or "24 h"'),
    ('value = "4 h"', 'value = "4 m"', ".value", "ambiguous", "min (minutes) or h (hours)"),
    ('value = "4 h"', "value = 4", ".value", "bare number", '"24 h"'),
    ('value = "4 h"', "value = 4.5", ".value", "bare number", '"24 h"'),
    ('value = "4 h"', "value = inf", ".value", "bare number", '"24 h"'),
    ('value = "4 h"', "value = true", ".value", "true stands", '"24 h"'),
    ('value = "4 h"', 'value = { low = "4 h" }', ".value", "low", '"24 h"'),
    ('value = "4 h"', 'value = "0 h"', ".value", "is zero", "leave the fact out"),
    ('value = "4 h"', 'value = "60 weeks"', ".value", "longer than a year", "check the unit"),
    ('value = { low = "90 min", high = "10 h" }', 'value = "90 min"', ".value", "is no range", "low ="),
    ('value = { low = "90 min", high = "10 h" }', 'value = { least = "90 min" }', ".value", "is no range", "low ="),
    ('value = { low = "90 min", high = "10 h" }', "value = {}", ".value", "is no range", "low ="),
    ('low = "90 min", high = "10 h"', 'low = "900 min", high = "10 h"', ".value", "low end above", "low first"),
    ('low = "90 min"', 'low = "90"', ".value.low", "no unit", '"90 min"'),
    ('high = "80 %"', 'high = "180 %"', ".value", "over 100 %", "0 to 100 %"),
    ('low = "1.5 mil", high = "2.3 mil"', 'low = "1.5 mm", high = "2.3 in"', ".value", "20 mm", "mil against mm"),
    ('low = "60 °F", high = "85 °F"', 'low = "60 °F", high = "850 °F"', ".value", "454 °C", "°C against °F"),
    ('value = "415 g/L"', 'value = "415 kg/L"', ".value", "no unit for a concentration", "g/L"),
    ("value = 2\n", "value = 200\n", ".value", "more than 50", "check the number"),
    ("value = 2\n", "value = 2.5\n", ".value", "bare number", '"2"'),
    ('kind = "voc"', 'kind = "vok"', ".kind", "no known kind of fact", "use_rate, ventilation, voc"),
    ('kind = "voc"', "kind = 7", ".kind", "no known kind of fact", ""),
    ('kind = "voc"\n', "", ".kind", "is missing", "'kind'"),
    ('{ code = "enamelled_cast_iron", allowed = true }', '"iron"', ".value", "does not fit surface", "allowed = false"),
    ('code = "enamelled_cast_iron"', 'code = "enameled_iron"', ".value.code", "no known surface", "enamelled_"),
    ('code = "enamelled_cast_iron"', 'cod = "enamelled_cast_iron"', ".value.cod", "not a known key", '"code"'),
    ('{ code = "roller", allowed = true }', '{ code = "rollar" }', ".value.code", "no known method", '"roller"'),
    ("numbers = [3.0, 1.0]", "numbers = [3.0, 0.0]", ".value.numbers", "above zero", "2 parts"),
    ("numbers = [3.0, 1.0]", "numbers = [3.0]", ".value.numbers", "each part", "2 parts"),
    ("numbers = [3.0, 1.0]", "numbers = [3.0, nan]", ".value.numbers[2]", "NaN", "finite number"),
    ('by = "volume"', 'by = "volumes"', ".value.by", "not one of the words", "volume, weight"),
    ('starts_from = "mixed"', 'starts_from = "mixing"', ".starts_from", "not one of the words", "mixed"),
    ('paper = "leaflet"', 'paper = "leaflat"', ".paper", "no paper of this sheet", '"leaflet"'),
    ('id = "stir"', 'id = "coats"', ".id", "stands there twice", "each id once"),
    ('kind = "stir"\n', 'kind = "stir"\nscope = { part = "C" }\n', ".scope.part", "no part of this sheet", "known"),
    ('kind = "stir"\n', 'kind = "stir"\nplase = "p. 1"\n', ".plase", "not a known key", '"place"'),
    ('temperature = "70 °F"', 'temperature = "70 F/m"', ".at.temperature", "no unit", "70 °F"),
    ('cas = "1330-20-7"', 'cas = "1330-20-8"', "parts[1].composition[1].cas", "no CAS number", '"mixture"'),
    ('cas = "1330-20-7"', 'cas = "xylene"', "parts[1].composition[1].cas", "no CAS number", '"mixture"'),
    ('low = "12 %", high = "16 %"', 'low = "16 %", high = "12 %"', "composition[1]", "low share above", "low first"),
    ('low = "12 %", high = "16 %"', 'low = "80 %", high = "160 %"', "composition[1].high", "over 100 %", "0 to 100"),
    ('low = "12 %", high = "16 %"', 'low = "80 %", high = "90 %"', "parts[1].composition", "adds up to", "100 %"),
    ('solids_by_weight = "66 %"', 'solids_by_weight = "166 %"', "parts[1].solids_by_weight", "over 100 %", "0 to 100"),
    ('density = "10.2 lb/US gal"', 'density = "10.2 lb/gal"', "parts[1].density", "ambiguous", "lb/US gal"),
    ('density = "10.2 lb/US gal"', 'density = "10.2 kg/m3"', "parts[1].density", "0.0102 kg/L", "check the unit"),
    ('role = "coating"', 'role = "paint"', "role", "not one of the words", "coating"),
    ('"epoxy-resin", "amine', '"epoxy-rasin", "amine', "chemistries[1]", "epoxy-rasin", '"epoxy-resin"'),
    ('id = "solvent-epoxy"', 'id = "solvent-epoxy"\ndigest = "00"', "digest", "never written", "take it out"),
    ('id = "solvent-epoxy"', 'id = ""', "id", "'' is no id", "small letters"),
    ("read_on = 2026-11-02", 'read_on = "yesterday"', "papers[1].read_on", "no date", "2026-03-07"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "place", "wrong", "right"), ONE_FAULT)
def test_one_fault_is_told_clearly_and_alone(
    sheet: str, sheet_faults: Faults, old: str, new: str, place: str, wrong: str, right: str
) -> None:
    assert old in sheet
    lines = sheet_faults(sheet.replace(old, new, 1))
    assert any(place in line and wrong in line and right in line for line in lines), lines
    assert len({line.split(": ")[1] for line in lines}) <= 2, lines


def test_places_and_lines_stay_right_after_a_fact_that_cannot_be_read(sheet: str, sheet_faults: Faults) -> None:
    text = sheet.replace('code = "enamelled_cast_iron"', "code = 1", 1).replace('high = "80 %"', 'high = "180 %"', 1)
    number = next(number for number, line in enumerate(text.split("\n"), 1) if "180 %" in line)
    position = text[: text.index("180 %")].count("[[facts]]")
    assert any(line.startswith(f"in.toml:{number}: facts[{position}].value: is over") for line in sheet_faults(text))


def test_all_faults_come_together(sheet: str, sheet_faults: Faults) -> None:
    text, wanted = sheet, []
    for index in (0, 9, 14, 18, 20, 27, 37, 42, 45):
        old, new, place, wrong, _ = ONE_FAULT[index]
        assert old in text
        text = text.replace(old, new, 1)
        wanted.append((place, wrong))
    lines = sheet_faults(text)
    for place, wrong in wanted:
        assert any(place in line and wrong in line for line in lines), (place, wrong, lines)
    assert len(lines) == len(wanted)


def test_a_survey_given_as_a_sheet_and_the_reverse(
    demo: str, sheet: str, survey_faults: Faults, sheet_faults: Faults
) -> None:
    assert sheet_faults(demo) == ['in.toml:2: format: this file is a survey; a sheet has format = "bathwright-sheet/1"']
    assert survey_faults(sheet) == [
        'in.toml:4: format: this file is a sheet; a survey has format = "bathwright-survey/1"'
    ]
    plan = 'format = "bathwright-plan/1"\n'
    assert "this file is a plan" in survey_faults(plan)[0]
    assert "of the unknown format" in sheet_faults('format = ["x"]\n')[0]


@pytest.mark.parametrize("facts", ["facts = 5", 'facts = "x"', "facts = [5]", "facts = [[]]", "[facts]\nid = 1"])
def test_facts_of_a_wrong_shape(facts: str, sheet_faults: Faults) -> None:
    head = 'format = "bathwright-sheet/1"\nid = "x"\nproduct = "x"\nfamily = "x"\nrole = "coating"\n'
    papers = '[[papers]]\nid = "d"\nkind = "data"\nrevision = "1"\n'
    text = head + (papers + facts if facts.startswith("[") else facts + "\n" + papers)
    lines = sheet_faults(text)
    assert len(lines) == 1
    assert ": facts" in lines[0]


def test_a_sheet_without_papers_says_so(sheet_faults: Faults) -> None:
    head = 'format = "bathwright-sheet/1"\nid = "x"\nproduct = "x"\nfamily = "x"\nrole = "coating"\npapers = []\n'
    fact = '[[facts]]\nid = "a"\nkind = "coats"\nvalue = 1\npaper = "data"\n'
    lines = sheet_faults(head + fact)
    assert any("papers: is empty" in line for line in lines)
    assert all(not line.endswith("; ") for line in lines)
