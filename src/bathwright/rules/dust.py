"""What the rules on lead share: whether lead was found, or may be in what is sanded or scraped."""

from bathwright.rules.facts import Facts, disturbs, has_old_coat, may_be_glazed, observed, year_built

COAT_BEFORE, GLAZE_BEFORE = 1978, 1996
_TESTS = ("lead_xrf", "lead_wipe_lab", "lead_chip_lab_coat")


def lead_found(facts: Facts) -> bool:
    """Whether a laboratory or an inspector found lead."""
    return any(observed(facts.fixture, name) == "found" for name in _TESTS)


def lead_dust(facts: Facts) -> bool:
    """Whether the steps sand or scrape what holds lead, or what may hold it: old, and cleared by no test."""
    return disturbs(facts) and (lead_found(facts) or _glaze(facts) or _coat(facts))


def _glaze(facts: Facts) -> bool:
    """A glaze that may be old and that no X-ray reading cleared."""
    year = year_built(facts)
    old = year is None or year < GLAZE_BEFORE
    return may_be_glazed(facts) and old and observed(facts.fixture, "lead_xrf") != "none"


def _coat(facts: Facts) -> bool:
    """A coat that may be there and may be old, and that no reading or chip cleared."""
    year = year_built(facts)
    old = year is None or year < COAT_BEFORE
    cleared = "none" in (observed(facts.fixture, "lead_xrf"), observed(facts.fixture, "lead_chip_lab_coat"))
    return has_old_coat(facts) is not False and old and not cleared
