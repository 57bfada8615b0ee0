"""No law of this place was looked at.

What
    The home stands outside the United States, Great Britain and the European Union: this edition knows no law there.
Why
    Silence of this plan about law must not be read as a yes.
Strength
    A note. Danger, maker's demands and advice are told all the same.
Fires
    "home in Australia", "home in a country that is not listed".
Stays silent
    "home in the US", "home in Germany".
Sources
    own-judgement: which law sets were looked at.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, law_set
from bathwright.rules.say import word

CODE = "law-not-looked-at"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """Tells when no law set fits the place."""
    if law_set(facts) != "none":
        return ()
    return (
        Finding(
            code=CODE,
            about=("place",),
            strength="good_practice",
            consequence="note",
            effect="tells",
            values=(word("country", facts.survey.place.country),),
            relax="ask_authority",
        ),
    )
