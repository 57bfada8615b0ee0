"""Waits of a sheet as demands: printed value, law, reference temperature, activation energy, floor."""

from bathwright.domain import views
from bathwright.domain.codes import WaitLaw
from bathwright.domain.record import record
from bathwright.domain.sheet import Range, Sheet
from bathwright.domain.steps import Demand
from bathwright.knowledge.book import Knowledge
from bathwright.physics import cure

_STANDARD_K = 294.15  # 21 °C, where a sheet gives a time without its temperature (the usual reference of such sheets)


@record
class CureLaw:
    """How a printed time of a sheet changes with temperature."""

    reference_k: float
    coldest_k: float
    activation_energy_j_mol: float
    floor_k: float | None
    from_table: bool
    contradicts: bool


def cure_law(sheet: Sheet, kind: str, knowledge: Knowledge) -> CureLaw:
    """The law for one kind of time: from the sheet's own table when it has two temperatures, else by chemistry.

    A table in which hotter is slower contradicts the law: the default of the chemistry is used, and it is said.
    The floor is the sheet's lowest temperature: below it nothing accumulates.
    """
    rows = views.table(sheet, kind)
    default = knowledge.band(f"coating_defaults.activation_energy.{family_chemistry(sheet)}").central
    energy, contradicts = default, False
    if len(rows) > 1 and rows[0][1] > 0 and rows[-1][1] > 0:
        energy = cure.activation_energy_from_two_times(rows[0][1], rows[0][0], rows[-1][1], rows[-1][0])
        contradicts = energy < 0
        energy = default if contradicts else energy
    floors = [low for k in ("air_temperature", "surface_temperature") if (low := views.bounds(sheet, k)[0]) is not None]
    return CureLaw(
        reference_k=rows[-1][0] if rows else _STANDARD_K,
        coldest_k=rows[0][0] if rows else _STANDARD_K,
        activation_energy_j_mol=energy,
        floor_k=max(floors) if floors else None,
        from_table=len(rows) > 1,
        contradicts=contradicts,
    )


def family_chemistry(sheet: Sheet) -> str:
    """The name of the activation energy that a family uses by default."""
    family = sheet.family
    if "urethane" in family or "isocyanate-hardener" in sheet.chemistries:
        return "urethane"
    return "waterborne_epoxy" if "water" in family else "epoxy_amine"


def wait(
    sheet: Sheet,
    kind: str,
    *,
    step: str,
    after: str,
    knowledge: Knowledge,
    temperature_k: float,
    warm_k: float | None = None,
    law: WaitLaw = "cures",
) -> Demand | None:
    """The wait that a sheet prints, at the temperature that is expected; None when the sheet is silent.

    A range gives least and most, an amount the least. The most wait is that of the warmest expected temperature
    (`warm_k`), never longer than printed.
    """
    found = views.strictest(sheet, kind, temperature_k=temperature_k)
    if found is None:
        return None
    value = found.fact.value
    least: float | None = found.value
    most = None
    if isinstance(value, Range):
        least, most = value.low, _tightest_high(sheet, kind, temperature_k)
    physics = cure_law(sheet, kind, knowledge)
    printed_most = most
    if most is not None and warm_k is not None:
        reference = found.fact.at.temperature or _STANDARD_K
        most /= max(1.0, cure.rate_factor_arrhenius(warm_k, max(reference, physics.reference_k),
                                                    physics.activation_energy_j_mol))  # fmt: skip
    return Demand(
        id=f"{step}-{kind.replace('_', '-')}",
        step=step,
        kind="wait",
        strength="maker",
        because=(f"{sheet.id}/{found.fact.id}",),
        after=after,
        least_s=least,
        most_s=most,
        printed_least_s=least,
        printed_most_s=printed_most,
        law=law,
        reference_k=physics.reference_k,
        age_s=_age_at_reference(sheet, kind, least),
        activation_energy_j_mol=physics.activation_energy_j_mol,
        floor_k=physics.floor_k,
        on_miss=found.fact.on_miss,
    )


def _age_at_reference(sheet: Sheet, kind: str, least: float | None) -> float | None:
    """What the table prints at its highest temperature, the reference of the law; without a table the wait itself."""
    rows = views.table(sheet, kind)
    return rows[-1][1] if rows else least


def _tightest_high(sheet: Sheet, kind: str, temperature_k: float) -> float | None:
    """The most wait: the smallest printed high end among the rows at or above this temperature, else of all rows."""
    ranges = [(f.at.temperature, f.value) for f in views.facts_of(sheet, kind) if isinstance(f.value, Range)]
    above = [v.high for row, v in ranges if v.high is not None and (row is None or row >= temperature_k)]
    every = [v.high for _, v in ranges if v.high is not None]
    return min(above or every, default=None)


def pot_life_s(sheet: Sheet, warmest_k: float, knowledge: Knowledge) -> tuple[float, float, str] | None:
    """Pot life at the warmest expected temperature: (used, printed, fact id), never longer than printed.

    None when the sheet is silent.
    """
    found = views.strictest(sheet, "pot_life", temperature_k=warmest_k)
    if found is None:
        return None
    law = cure_law(sheet, "pot_life", knowledge)
    reference = found.fact.at.temperature or _STANDARD_K
    faster = cure.rate_factor_arrhenius(warmest_k, reference, law.activation_energy_j_mol)
    return found.value / max(1.0, faster), found.value, f"{sheet.id}/{found.fact.id}"
