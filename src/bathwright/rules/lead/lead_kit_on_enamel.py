"""A shop swab was used on glaze.

What
    A lead swab on the glaze was told, and neither an X-ray reading nor a laboratory result.
Why
    Such kits are recognised for paint on wood, ferrous metal and plaster. On glaze a negative result says nothing; in
    a study most kits also missed lead below a top coat. The plan counts it as no test.
Strength
    Advice; binds nobody.
Fires
    "negative swab on the glaze".
Stays silent
    "swab beside an X-ray reading", "no swab told".
Sources
    cfr-40-745-88: what kits are recognised for. cpsc-lead-kit-study: missed results.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, observed
from bathwright.rules.say import word

CODE = "lead-kit-on-enamel"
SOURCES = ("cfr-40-745-88", "cpsc-lead-kit-study")


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells that the swab is no evidence."""
    swab = observed(facts.fixture, "lead_swab_on_glaze")
    better = [name for name in ("lead_xrf", "lead_wipe_lab") if observed(facts.fixture, name) is not None]
    if swab is None or better:
        return ()
    return (
        Finding(
            code=CODE,
            about=(facts.fixture.id,),
            strength="advice",
            consequence="note",
            effect="tells",
            values=(word("result", swab),),
            relax="test_lead",
        ),
    )
