"""What is needed, mixed, assumed, left over, and where it all comes from, in words."""

from collections.abc import Iterable

from bathwright.domain.plan import Alternative, Material, Mix, Traced
from bathwright.report import amounts
from bathwright.report.context import Group, Row, SourceView, Table
from bathwright.report.fill import capital, clean
from bathwright.report.findings_view import alternative_in_words, titles
from bathwright.report.reader import Reader, sentence

_NONE = "–"


def _table(reader: Reader, name: str, heads: Iterable[str], rows: Iterable[Row]) -> Table | None:
    made = tuple(rows)
    if not made:
        return None
    head = tuple(reader.label(head) for head in heads)
    return Table(id=f"{name}-table", caption=reader.label(name), head=head, groups=(Group(title="", rows=made),))


def materials_table(reader: Reader) -> Table | None:
    """Amounts and packs, one group per section."""
    groups: dict[str, list[Row]] = {}
    for entry in reader.plan.materials:
        groups.setdefault(reader.words.get("section", entry.section), []).append(_material(reader, entry))
    if not groups:
        return None
    head = tuple(reader.label(name) for name in ("product", "reason", "need", "packs", "left", "have"))
    made = tuple(Group(title=title, rows=tuple(rows)) for title, rows in groups.items())
    return Table(id="materials-table", caption=reader.label("materials"), head=head, groups=made)


def _material(reader: Reader, entry: Material) -> Row:
    need = reader.band(entry.needed_m3)
    wet = None if entry.wet_film_m is None else reader.amount(entry.wet_film_m, "film", both=True)
    dry = None if entry.dry_film_m is None else reader.amount(entry.dry_film_m, "film", both=True)
    if wet and dry:
        need += "; " + reader.label("film", wet=wet, dry=dry)
    elif wet or dry:
        need += "; " + (reader.label("film_wet", wet=wet) if wet else reader.label("film_dry", dry=dry or ""))
    packs = _NONE
    if entry.packs is not None:
        size = None if entry.pack_m3 is None else reader.amount(entry.pack_m3, "liquid")
        packs = reader.label("pack_of", count=str(entry.packs), size=size) if size else str(entry.packs)
    left = _NONE if entry.left_over_m3 is None else reader.amount(entry.left_over_m3, "liquid")
    have = reader.label("have_yes" if entry.have else "have_no")
    return (clean(entry.product), reader.words.word(entry.reason, "reason", free=True), need, packs, left, have)


def area_lines(reader: Reader) -> tuple[str, ...]:
    """The areas to coat, one line."""
    parts = [f"{reader.name(part.part)} {reader.amount(part.area_m2, 'area', both=True)}" for part in reader.plan.area]
    return (reader.label("area", parts=", ".join(parts)),) if parts else ()


def mixes_table(reader: Reader) -> Table | None:
    """Batches to mix."""
    heads = ("batch", "product", "volume", "parts", "stir", "use_within")
    return _table(reader, "mixes", heads, (_mix(reader, mix) for mix in reader.plan.mixes))


def _mix(reader: Reader, mix: Mix) -> Row:
    step = capital(reader.step(mix.step)) if mix.step in reader.numbers else reader.words.plain(mix.id)
    parts = ", ".join(f"{_part(reader, part.name)} {reader.value(part)}" for part in mix.parts)
    stir = [amounts.duration(mix.stir_s, "up")] if mix.stir_s else []
    stir += [f"{reader.label('stand').lower()} {amounts.duration(mix.stand_s, 'up')}"] if mix.stand_s else []
    life = ""
    if mix.printed_pot_life_s:
        life = f" ({reader.label('pot_life', time=amounts.duration(mix.printed_pot_life_s))})"
    within = f"{amounts.duration(mix.pot_life_s, 'down')}{life}" if mix.pot_life_s else reader.label("not_told")
    volume = reader.amount(mix.volume_m3, "liquid", both=True)
    return (step, reader.name(mix.sheet), volume, parts or _NONE, "; ".join(stir) or _NONE, within)


def _part(reader: Reader, name: str) -> str:
    """Name of a part of a set: "part A", or its word."""
    return reader.label("part", name=clean(name)) if len(name) <= 2 else reader.words.word(name, free=True)


def alternatives_table(reader: Reader) -> Table | None:
    """Other ways, each with its own answer and reason; after a no without hours: those belong to the other plan."""
    refused = reader.plan.verdict == "no"
    heads = ("way", "answer", "decides", "vapour", *(() if refused else ("full_bath_head",)))
    rows = (_alternative(reader, entry)[: len(heads)] for entry in reader.plan.alternatives)
    return _table(reader, "alternatives", heads, rows)


def _alternative(reader: Reader, entry: Alternative) -> Row:
    answer = _NONE if entry.verdict is None else reader.words.get("answer", entry.verdict)
    coats = entry.kind in ("system", "other_stripping")
    vapour = reader.label("not_known") if coats else _NONE
    if entry.vapour_kg is not None:
        vapour = reader.amount(entry.vapour_kg, "mass", both=True)
    bath = _NONE if entry.full_bath is None else capital(reader.not_before(entry.full_bath))
    why = _own_reason(reader, entry)
    return (capital(alternative_in_words(reader, entry, "name")), answer, why, vapour, bath)


def _own_reason(reader: Reader, entry: Alternative) -> str:
    """What decides this way itself: its findings, else what can be said for or against its kind."""
    codes = (*entry.because, *entry.ruled_out_by)
    if entry.kind in ("system", "other_stripping"):
        return titles(reader, codes, met=entry.verdict != "no") or _NONE
    return reader.words.of_code("alternatives", entry.kind, "why", {})


def care(reader: Reader) -> tuple[str, ...]:
    """Rules of care, those with an end first, by time."""
    rules = sorted(reader.plan.care, key=lambda r: (r.until is None, r.until.timestamp() if r.until else 0.0))
    out = []
    for rule in rules:
        values = {} if rule.until is None else {"until": reader.instant(rule.until, "up")}
        text = sentence(reader.words.of_code("care", rule.code, "do", values))
        takes = reader.words.takes("care", rule.code, "do")
        dated = rule.until is not None and "until" not in takes
        out.append(f"{text} {capital(reader.label('until_only', ends=values['until']))}." if dated else text)
    return tuple(out)


def waste(reader: Reader) -> tuple[str, ...]:
    """Where leftovers go."""
    out = []
    for rule in reader.plan.waste:
        values = {"about": reader.text(rule.about)} if rule.about else {}
        out.append(sentence(reader.words.of_code("waste", rule.code, "do", values)))
    return tuple(out)


def climate(reader: Reader) -> tuple[str, ...]:
    """The climate that was used."""
    used = reader.plan.climate
    if used is None:
        return ()
    low, high = (reader.amount(value, "temperature", both=True) for value in (used.low_k, used.high_k))
    name = "climate_told" if used.told else "climate_assumed"
    out = [reader.label(name, low=low, high=high, humidity=reader.amount(used.humidity, "humidity"))]
    if used.surface_offset_k > 0:
        step = reader.amount(used.surface_offset_k, "temperature_step", both=True)
        out.append(reader.label("climate_surface_colder", step=step))
    return tuple(out)


def assumptions_table(reader: Reader) -> Table | None:
    """What nobody told, the value that was taken, its source and mark."""
    rows = []
    for entry in reader.plan.assumptions:
        name = capital(reader.words.word(entry.code, "assumption", free=True))
        is_text = isinstance(entry.value, str)
        value = reader.text(str(entry.value)) if is_text else reader.amount(float(entry.value), entry.kind, both=True)
        rows.append((name, value, _cited(reader, (entry.source,)), reader.words.get("mark", entry.mark)))
    return _table(reader, "assumptions", ("what", "value", "source", "mark"), rows)


def numbers_table(reader: Reader) -> Table | None:
    """Sums of the plan and what they were made from."""
    heads = ("what", "formula", "made_from", "source", "mark")
    return _table(reader, "numbers", heads, (_traced(reader, entry) for entry in reader.plan.traces))


def _traced(reader: Reader, entry: Traced) -> Row:
    path = entry.path.replace("[*]", "").replace("[1]", "").replace("[0]", "").replace(".", "_")
    inputs = ", ".join(f"{reader.words.plain(name)} {text}" for name, text in reader.values(entry.inputs).items())
    name = capital(reader.words.word(path, "trace", free=True))
    mark = reader.words.get("mark", entry.mark)
    return (name, clean(entry.formula), inputs or _NONE, _cited(reader, entry.sources), mark)


def _cited(reader: Reader, sources: Iterable[str]) -> str:
    """Numbers in the list of sources: "[3], [7]"."""
    return ", ".join(f"[{reference.number}]" for reference in reader.references(tuple(sources))) or _NONE


def cost_table(reader: Reader) -> Table | None:
    """Money by item, when the record has it."""
    rows = [
        (
            reader.text(entry.item),
            f"{entry.band.low:.0f}–{entry.band.high:.0f}",
            clean(entry.place),
            entry.at.isoformat(),
        )
        for entry in reader.plan.cost
    ]
    return _table(reader, "cost", ("what", "value", "cost_place", "cost_date"), rows)


def sources(reader: Reader) -> tuple[SourceView, ...]:
    """The bibliography of this plan; must be made after everything that cites."""
    return tuple(
        SourceView(number=number, anchor=f"source-{number}", id=clean(source), citation=reader.citation(source))
        for number, source in enumerate(reader.sources(), 1)
    )
