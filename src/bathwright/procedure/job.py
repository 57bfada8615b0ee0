"""The inputs that the steps are made from: survey, fixture, system, the products beside it, sizes and film."""

import dataclasses

from bathwright.domain import views
from bathwright.domain.codes import Chemistry, MethodCode, Role
from bathwright.domain.plan import AreaPart
from bathwright.domain.record import record
from bathwright.domain.sheet import Sheet
from bathwright.domain.survey import Fixture, Survey
from bathwright.domain.values import Band
from bathwright.knowledge.book import Knowledge
from bathwright.procedure.areas import basin_m3, total_area
from bathwright.procedure.mixture import Mixture, Volatiles, mixture, volatiles
from bathwright.procedure.quantities import Film, coat_film, coat_volume

_METHOD_ORDER: tuple[MethodCode, ...] = ("roller", "brush", "pour", "aerosol", "spray")
ACIDS: tuple[Chemistry, ...] = ("hydrochloric-acid", "vinegar", "descaler", "fluoride-acid", "oxalic-acid")
GLAZED = ("enamelled_cast_iron", "enamelled_steel", "vitreous_china", "ceramic_tile")
LEADED_GLAZE_BEFORE = 1996  # makers used leaded glaze "as late as 1995" (trade-lead-survey), secondary
CHLORINE: tuple[Chemistry, ...] = ("bleach", "chlorinated-abrasive")

_JUDGED_BY_CONTENT = ("cleaner", "solvent", "etchant", "stripper")
_LEAST_SHARE = 0.005
_DICHLOROMETHANE = "75-09-2"
_CHEMISTRY_OF_TAG: dict[str, Chemistry] = {
    "chlorine_releaser": "bleach",
    "acid": "descaler",
    "fluoride": "fluoride-acid",
    "peroxide": "peroxide",
    "ammonia": "ammonia",
    "alkali": "caustic",
    "quat": "quat",
    "amine": "amine-hardener",
    "isocyanate": "isocyanate-hardener",
    "alcohol_solvent": "alcohol",
    "ketone": "acetone",
}


@record
class Beside:
    """The products beside the coating. None = not needed, or none is known."""

    cleaner: Sheet | None
    descaler: Sheet | None
    bleach: Sheet | None
    filler: Sheet | None
    wipe: Sheet | None
    sealant: Sheet | None
    dropped: tuple[str, ...]

    def all(self) -> tuple[Sheet, ...]:
        """The products that are used, in order of use."""
        found = (self.cleaner, self.descaler, self.bleach, self.filler, self.wipe, self.sealant)
        return tuple(sheet for sheet in found if sheet)


@record
class Job:
    """One attempt: one fixture, one coating, one method."""

    survey: Survey
    fixture: Fixture
    coating: Sheet
    method: MethodCode
    beside: Beside
    parts: tuple[AreaPart, ...]
    area_m2: float
    basin_m3: float | None
    mixed: Mixture
    volatile: Volatiles
    film: Film
    one_coat: Band
    knowledge: Knowledge


def seen(fixture: Fixture, what: str) -> str | None:
    """The last told result of a test or sight; None = not told."""
    found = [entry.result for entry in fixture.observations if entry.what == what]
    return found[-1] if found else None


def dust_may_hold_lead(survey: Survey, fixture: Fixture) -> bool:
    """Whether scraping or sanding may set lead free: an old coat, or a glaze that may be old (year below 1996 or not
    told), unless an X-ray reading found none; always where lead was found."""
    if "found" in (seen(fixture, "lead_xrf"), seen(fixture, "lead_wipe_lab"), seen(fixture, "lead_chip_lab_coat")):
        return True
    if seen(fixture, "lead_xrf") == "none":
        return False
    years = [year for year in (survey.building.year, fixture.year) if year is not None]
    old = not years or min(years) < LEADED_GLAZE_BEFORE
    glazed = fixture.material is None or fixture.material in GLAZED
    coated = seen(fixture, "earlier_coat") in ("sound", "failing", "unsure")
    return old and (glazed or coated)


def chemistries_of(sheet: Sheet, knowledge: Knowledge) -> tuple[Chemistry, ...]:
    """What a product is for chemistry: what its head says and what its composition holds (half a per cent or more).

    A cleaner, solvent, etchant or stripper of which nothing tells counts as an unknown cleaner.
    """
    if sheet.role not in _JUDGED_BY_CONTENT:
        return sheet.chemistries
    found: list[Chemistry] = list(sheet.chemistries)
    for entry in (entry for part in sheet.parts for entry in part.composition or ()):
        substance = knowledge.substances.get(entry.cas)
        if substance is None or entry.high < _LEAST_SHARE:
            continue
        found += [code for tag, code in _CHEMISTRY_OF_TAG.items() if tag in substance.tags]
        if entry.cas == _DICHLOROMETHANE:
            found.append("dichloromethane")
    return tuple(dict.fromkeys(found)) or ("unknown-cleaner",)


def with_chemistries(sheets: tuple[Sheet, ...], knowledge: Knowledge) -> tuple[Sheet, ...]:
    """The sheets, each with all that it is for chemistry."""
    return tuple(dataclasses.replace(sheet, chemistries=chemistries_of(sheet, knowledge)) for sheet in sheets)


def choose_method(coating: Sheet) -> MethodCode:
    """The gentlest method that the sheet allows: roller, brush, pour, aerosol, spray; roller when it is silent."""
    allowed = views.allowed(coating, "method")
    return next((method for method in _METHOD_ORDER if method in allowed), "roller")


def choose_beside(survey: Survey, fixture: Fixture, coating: Sheet, sheets: tuple[Sheet, ...]) -> Beside:
    """The products beside the coating: wished ones first, then the first known of each role.

    A wished bleach is dropped when an acid is needed: the two never meet in one job. A wished stripper never
    enters the steps.
    """
    wished: dict[str, str] = {wish.use: wish.sheet for wish in survey.wishes}

    def pick(use: str, role: Role, chemistry: Chemistry | None = None) -> Sheet | None:
        fitting = [s for s in sheets if s.role == role and (chemistry is None or chemistry in s.chemistries)]
        named = [s for s in sheets if s.id == wished.get(use)]
        return next(iter(named + fitting), None)

    descale = seen(fixture, "limescale") in ("some", "heavy") or "descale" in wished
    descaler = pick("descale", "cleaner", "descaler") if descale else None
    bleach = pick("mould", "cleaner", "bleach") if "mould" in wished else None
    dropped = [wish.sheet for wish in survey.wishes if wish.use == "strip"]
    cleaner = pick("clean", "cleaner", "dish-detergent")
    if bleach and any(_acid(sheet) for sheet in (descaler, cleaner) if sheet):
        dropped.append(bleach.id)
        bleach = None
    if cleaner and descaler and (_chlorine(cleaner) or "unknown-cleaner" in cleaner.chemistries):
        dropped.append(cleaner.id)
        fitting = [s for s in sheets if s.role == "cleaner" and "dish-detergent" in s.chemistries and not _chlorine(s)]
        cleaner = next(iter(fitting), None)
    return Beside(
        cleaner=cleaner,
        descaler=descaler,
        bleach=bleach,
        filler=pick("fill", "filler") if seen(fixture, "chips") in ("few", "many") else None,
        wipe=_wipe(coating, sheets, wished.get("wipe")),
        sealant=pick("seal", "sealant"),
        dropped=tuple(dropped),
    )


def _acid(sheet: Sheet) -> bool:
    return any(code in sheet.chemistries for code in (*ACIDS, "unknown-cleaner"))


def _chlorine(sheet: Sheet) -> bool:
    return any(code in sheet.chemistries for code in CHLORINE)


def _wipe(coating: Sheet, sheets: tuple[Sheet, ...], wished: str | None) -> Sheet | None:
    """The solvent that the coating's sheet names for the last wipe; a wish counts only where the sheet is silent."""
    asked = views.instruction(coating, "wipe_with")
    names = asked[0].values if asked else ((wished,) if wished else ())
    return next((sheet for sheet in sheets if sheet.id in names), None)


def make_job(
    survey: Survey,
    fixture: Fixture,
    coating: Sheet,
    parts: tuple[AreaPart, ...],
    sheets: tuple[Sheet, ...],
    knowledge: Knowledge,
) -> Job:
    """Everything that follows from survey and sheets before any clock."""
    method = choose_method(coating)
    coating = views.narrowed(coating, method, fixture.material)
    area = total_area(parts)
    mixed = mixture(coating)
    film = coat_film(coating, mixed, knowledge)
    return Job(
        survey=survey,
        fixture=fixture,
        coating=coating,
        method=method,
        beside=choose_beside(survey, fixture, coating, sheets),
        parts=parts,
        area_m2=area,
        basin_m3=basin_m3(fixture, survey.place.country, knowledge),
        mixed=mixed,
        volatile=volatiles(coating, mixed, knowledge),
        film=film,
        one_coat=coat_volume(area, film, method, knowledge),
        knowledge=knowledge,
    )
