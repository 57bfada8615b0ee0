"""Somebody works alone with solvent, acid, stripper or in a mask.

What
    The steps use a solvent-borne coating, a solvent, a strong acid or a stripper, or a mask is worn (also where only a
    maker's paper asks for it): then a second adult stays outside the vapour, looks in, and calls for help.
Why
    Nearly all who died while they stripped baths were alone. Whoever faints in the bath lies where it is strongest.
Strength
    Advice of public bodies; binds nobody. With a stripper nobody starts alone.
Fires
    "solvent wipe and no helper", "stripper and no helper", "solvent wipe and a helper at hand".
Stays silent
    "soap and water-borne coating".
Sources
    osha-niosh-2013-110 and cdc-mmwr-2012-61-7: the deaths, alone.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, is_solvent_borne, planned_sheets
from bathwright.rules.masks import maker_mask
from bathwright.rules.measures import helper_outside
from bathwright.rules.say import question, with_measures

CODE = "lone-work"
SOURCES = ("osha-niosh-2013-110", "cdc-mmwr-2012-61-7")

_ACIDS = {"hydrochloric-acid", "descaler", "oxalic-acid", "fluoride-acid"}


def check(facts: Facts) -> tuple[Said, ...]:
    """A helper outside, where the work can make somebody faint."""
    stripper = any(sheet.role == "stripper" for sheet in planned_sheets(facts))
    if not stripper and not _dangerous(facts):
        return ()
    finding = Finding(
        code=CODE,
        about=("painter",),
        strength="advice",
        consequence="kills" if stripper else "harms",
        effect="stops" if stripper else "must_do",
        relax="helper_outside",
    )
    if facts.survey.work.outside_helper is None:
        worse = with_measures(finding, helper_outside("ask"))
        return (question("outside_helper", CODE, "alone", worse, "ask_somebody_now"),)
    return with_measures(finding, helper_outside("have" if facts.survey.work.outside_helper else "ask"))


def _dangerous(facts: Facts) -> bool:
    """A solvent, a strong acid, or a mask in the steps."""
    if any(is_solvent_borne(facts, sheet) for sheet in planned_sheets(facts)):
        return True
    used = {code for step in facts.steps for use in step.uses for code in use.chemistry}
    masked = any(e.who == "painter" and e.outside.high > e.limit_value for e in facts.exposures)
    return bool(used & _ACIDS) or masked or maker_mask(facts) is not None
