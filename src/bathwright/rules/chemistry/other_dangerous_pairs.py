"""Two other products meet that make gas, fire or violent heat.

What
    Every other pair that the table of pairs marks as serious or deadly: hydrochloric acid and peroxide, an alkali and
    an acid, peroxide and acetone, ammonia and an alkali. They follow each other on one surface or drain with too
    little between them. Parts of one product never count, nor a hardener that has set.
Why
    They make chlorine, ammonia gas, boiling spray, or solids that explode when struck.
Strength
    Danger, everywhere. Met when the steps hold the flush, and the day where it takes one, or when one is left out.
Fires
    "peroxide, then acetone", "hydrochloric acid, then caustic".
Stays silent
    "epoxy filler, then an epoxy coat", "bleach and acid have a rule of their own".
Sources
    general-chemistry: the reactions. own-judgement: what must lie between. Each pair brings its own source.
"""

from bathwright.domain.findings import Said
from bathwright.knowledge.records import Pair
from bathwright.rules.facts import Facts
from bathwright.rules.meetings import ACIDS, NITROGEN, SOLVENTS, check_pairs, chlorine_with

CODE = "other-dangerous-pairs"
SOURCES = ("general-chemistry", "own-judgement")

_GRAVE = ("kills", "serious")
_FAMILIES = ACIDS | NITROGEN | SOLVENTS
# parts of coatings and fillers: what came first has set before the next is put on
_SETS = frozenset({"epoxy-resin", "amine-hardener", "isocyanate-hardener"})
_NO_PRODUCT = frozenset({"water", "bare-steel"})


def check(facts: Facts) -> tuple[Said, ...]:
    """A stop where two such products would meet."""
    return check_pairs(CODE, _other, facts)


def _other(pair: Pair) -> bool:
    both = {pair.a, pair.b}
    own_rule = chlorine_with(_FAMILIES, pair)
    return pair.severity in _GRAVE and not own_rule and not both <= _SETS and not both & _NO_PRODUCT
