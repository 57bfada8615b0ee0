"""How this household reads a plan: language, units, wall clock, and words for the ids of the record."""

from collections.abc import Iterable
from datetime import datetime, tzinfo

from bathwright.domain.plan import Plan
from bathwright.domain.values import Band, Value
from bathwright.knowledge import book
from bathwright.report import amounts
from bathwright.report.amounts import Round, System
from bathwright.report.context import Reference
from bathwright.report.fill import capital, clean
from bathwright.report.words import Language, Words
from bathwright.sources import citation

# values whose names speak of people: their content is private and never shown
_PRIVATE_NAMES = frozenset({"person", "people", "who", "trait", "traits", "age", "ages", "age_band", "health"})
# sections of the catalogue in which a value that is a code may stand, beside "value"
_CODED = ("zone", "measured", "protection", "look")
_AMERICAN = frozenset({"US", "PR", "GU", "VI", "AS", "MP"})
_ENGLISH_OF_BRITAIN = frozenset({"GB", "IE", "AU", "NZ", "ZA", "IN", "MT", "IM", "JE", "GG"})


def language_of(plan: Plan) -> Language:
    """The language that the survey asks for, else that of the country."""
    shown = plan.survey.shown_in.language
    if shown is not None:
        return shown
    return "en-GB" if plan.survey.place.country.upper() in _ENGLISH_OF_BRITAIN else "en-US"


def units_of(plan: Plan) -> System:
    """The units that were asked for, else those of the country."""
    told = plan.made_for.options.units or plan.survey.shown_in.units
    return told or ("us" if plan.survey.place.country.upper() in _AMERICAN else "si")


class Reader:
    """Words for one plan and one household. Collects references; keeps in `words.missed` what the catalogue lacks."""

    def __init__(self, plan: Plan) -> None:
        """plan: the record. Nothing of it is changed."""
        self.plan = plan
        self.words = Words(language_of(plan))
        self.units: System = units_of(plan)
        self.zone = amounts.zone_of(plan.survey.place.time_zone)
        self.numbers = {step.id: number for number, step in enumerate(plan.steps, 1)}
        self._sources = dict.fromkeys(plan.sources)
        self._private = {person.id for person in plan.survey.people or ()}
        self._products = self._known_products()
        self._names = self._known_names()

    def _known_names(self) -> dict[str, str]:
        plan = self.plan
        names = {fixture.id: self.words.word(fixture.kind) for fixture in plan.survey.fixtures}
        names |= {space.id: self.words.word(space.kind, "zone") for space in plan.survey.spaces}
        names |= {item.id: self.words.word(item.kind) for item in plan.survey.equipment}
        names |= {thing.id: self.words.word(thing.kind, free=True) for thing in plan.survey.appliances or ()}
        return names | self._products

    def _known_products(self) -> dict[str, str]:
        plan = self.plan
        names = {entry.sheet: clean(entry.product) for entry in plan.materials}
        names |= {entry.system: clean(entry.product) for entry in plan.alternatives if entry.system and entry.product}
        if plan.system is not None:
            names |= {sheet.id: clean(sheet.product) for sheet in plan.system.sheets}
            names[plan.system.id] = clean(plan.system.product)
        return names

    # words

    def label(self, name: str, /, **values: str) -> str:
        """A short label or sentence of the catalogue."""
        return self.words.get("label", name, **values)

    def name(self, code: str, *sections: str, free: bool = True) -> str:
        """Words for an id or code: a product, a room, a step, else its word, else its plain words."""
        if code in self._private:
            return self.words.get("person", "somebody")
        if code in self.numbers:
            return self.step(code)
        return self._names.get(code) or self.words.word(code, *sections, free=free)

    def product(self, code: str) -> str | None:
        """The product of a sheet of this plan, or None when the id is no sheet."""
        return self._products.get(code)

    def is_substance(self, cas: str) -> bool:
        """Whether the text is the CAS number or the code of a substance that is known."""
        known = book.load().substances
        return cas in known or any(entry.code == cas for entry in known.values())

    def substance(self, cas: str) -> str:
        """Name of a substance by CAS number or code, as the household's language calls it."""
        if cas == "mixture":
            return self.label("mixture")
        known = book.load().substances
        found = known.get(cas) or next((entry for entry in known.values() if entry.code == cas), None)
        if found is None:
            return self.words.plain(cas) if cas[:1].isalpha() else clean(cas)
        return found.name_gb if self.words.language == "en-GB" else found.name_us

    def person(self, code: str) -> str:
        """Words for who does or bears something; an id of a person is never shown."""
        return self.words.get("person", code if self.words.has("person", code) else "somebody")

    def step(self, step_id: str) -> str:
        """A step as "step 4, put on coat 1"."""
        step = next(entry for entry in self.plan.steps if entry.id == step_id)
        title = self.title(step_id)
        number = self.label("step_short", number=str(self.numbers[step.id]))
        return f"{number}, {title[:1].lower()}{title[1:]}"

    def title(self, step_id: str) -> str:
        """The title of a step."""
        step = next(entry for entry in self.plan.steps if entry.id == step_id)
        return self.words.of_code("steps", step.act, "title", self.values(step.values))

    # values

    def values(self, values: Iterable[Value]) -> dict[str, str]:
        """Typed values by name, in words; what speaks of people is left out."""
        shown: dict[str, str] = {}
        for value in values:
            if value.name not in _PRIVATE_NAMES:
                text = self.value(value)
                shown[value.name] = f"{shown[value.name]}, {text}" if value.name in shown else text
        return shown

    def value(self, value: Value) -> str:
        """One typed value in words, with both systems of units where they differ."""
        if isinstance(value.value, str):
            return self.text(value.value)
        return self.amount(float(value.value), value.kind, both=True)

    def is_instant(self, value: object) -> bool:
        """Whether a value is a day and time."""
        return isinstance(value, str) and _as_instant(value, self.zone) is not None

    def text(self, text: str) -> str:
        """A value that is text: an instant, an id, a code, or words as typed."""
        at = _as_instant(text, self.zone)
        if at is not None:
            return self.instant(at)
        if text in self._private or text in self._names or text in self.numbers:
            return self.name(text)
        if text == "mixture" or self.is_substance(text):
            return self.substance(text)
        is_code = text.replace("_", "").replace("-", "").isalpha() and text == text.lower()
        return self.words.word(text, "value", *_CODED, free=True) if is_code else clean(text)

    def amount(self, value: float, kind: str | None, *, both: bool = False) -> str:
        """An SI value in the units of the household; both = the other system in brackets."""
        return amounts.quantity(value, kind, self.units, both=both)

    def band(self, value: Band) -> str:
        """A band in the units of the household."""
        return amounts.band(value, self.units)

    def instant(self, at: datetime, rounding: Round = "near") -> str:
        """Day, time and zone on the wall clock of the home."""
        return amounts.instant(at, self.zone, rounding)

    def not_before(self, at: datetime | None) -> str:
        """ "not before …", or that it is not known."""
        if at is None:
            return self.label("not_known")
        return self.label("not_before", at=self.instant(at, "up"))

    def span(self, starts: datetime | None, ends: datetime | None) -> str:
        """ "… to …" in wall-clock time; one day is named once; empty when nothing is dated."""
        if starts is None and ends is None:
            return ""
        if starts is None:
            return self.label("until_only", ends=self.instant(ends, "up")) if ends else ""
        if ends is None:
            return self.label("from_only", starts=self.instant(starts, "down"))
        return self.label("from_until", starts=self._opening(starts, ends), ends=self._closing(starts, ends))

    def _one_day(self, starts: datetime, ends: datetime) -> bool:
        same_day = amounts.day(starts, self.zone, "down") == amounts.day(ends, self.zone, "up")
        return same_day and amounts.zone_name(starts, self.zone) == amounts.zone_name(ends, self.zone)

    def _opening(self, starts: datetime, ends: datetime) -> str:
        if not self._one_day(starts, ends):
            return self.instant(starts, "down")
        return f"{amounts.day(starts, self.zone, 'down')}, {amounts.clock_time(starts, self.zone, 'down')}"

    def _closing(self, starts: datetime, ends: datetime) -> str:
        if not self._one_day(starts, ends):
            return self.instant(ends, "up")
        return f"{amounts.clock_time(ends, self.zone, 'up')} {amounts.zone_name(ends, self.zone)}"

    # sources

    def references(self, ids: Iterable[str]) -> tuple[Reference, ...]:
        """Pointers to sources, in the order of the list; a source that the plan does not list is added to it."""
        for source in ids:
            self._sources.setdefault(source)
        places = {source: number for number, source in enumerate(self._sources, 1)}
        return tuple(Reference(number=n, anchor=f"source-{n}") for n in sorted({places[source] for source in ids}))

    def sources(self) -> tuple[str, ...]:
        """Ids of all sources, in the order of their numbers."""
        return tuple(self._sources)

    def citation(self, source: str) -> str:
        """The citation of a source; for a fact of a sheet ("sheet/fact") the product and the fact in plain words."""
        sheet, slash, fact = source.partition("/")
        if slash:
            return self.label("sheet_fact", product=self.name(sheet), fact=self.words.plain(fact))
        return clean(citation(source))


def _as_instant(text: str, zone: tzinfo) -> datetime | None:
    """The instant that a text is ("2026-12-10T23:00:00Z"); without a zone it is on the wall clock of the home."""
    if len(text) < 16 or text[10:11] != "T":
        return None
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        return None
    return at if at.tzinfo is not None else at.replace(tzinfo=zone)


def sentence(text: str) -> str:
    """The text with a capital and a full stop."""
    text = capital(text)
    return text if not text or text[-1] in ".!?:" else text + "."
