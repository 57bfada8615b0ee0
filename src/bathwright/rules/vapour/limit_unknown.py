"""A substance that goes into the air has no limit here.

What
    A substance leaves as vapour, and no limit of any kind is known for it in this edition. Or: none for everybody is
    known, and a stand-in (a hundredth of the strictest limit for workers) was used.
Why
    Missing is not harmless.
Strength
    Without any limit: a question to the maker that blocks. With a stand-in: it is told, no more. Binds nobody.
Fires
    "a stand-in was used for the others".
Stays silent
    "every substance has a limit".
Sources
    own-judgement: unknown never passes as harmless, and the stand-in.
"""

from bathwright.domain.findings import Finding, Said
from bathwright.rules.facts import Facts, name_of, organic_emissions
from bathwright.rules.say import question, word

CODE = "limit-unknown"
SOURCES = ("own-judgement",)


def check(facts: Facts) -> tuple[Said, ...]:
    """A blocking question for each substance without a limit; a note for each stand-in."""
    limited = {e.substance for e in facts.exposures if e.limit is not None}
    limited |= {entry.cas for entry in facts.knowledge.limits}
    said: list[Said] = []
    for cas in dict.fromkeys(emission.cas for emission in organic_emissions(facts)):
        if cas not in limited:
            stop = Finding(code=CODE, strength="advice", consequence="harms", effect="stops", status="unknown")
            said.append(question("substance_limit", CODE, "harmful", (stop,), "ask_maker", about=(cas,)))
    stand_ins = [e.substance for e in facts.exposures if e.limit is not None and e.limit.surrogate]
    said += [_told(facts, cas) for cas in dict.fromkeys(stand_ins)]
    return tuple(said)


def _told(facts: Facts, cas: str) -> Finding:
    return Finding(
        code=CODE,
        about=(cas,),
        strength="advice",
        consequence="note",
        effect="tells",
        status="unknown",
        values=(word("substance", name_of(facts, cas)),),
        relax="ask_maker",
    )
