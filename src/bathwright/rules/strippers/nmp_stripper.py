"""A stripper with N-methylpyrrolidone.

What
    A stripper of this job, used or wished, that holds N-methylpyrrolidone (NMP). It stays out of this job. Where
    somebody who expects a child lives in the home or works there, the job stops until it is gone; who it is stays
    private.
Why
    It harms the unborn, passes through skin and most gloves, and its vapour stays for days.
Strength
    Danger and the advice of public bodies; a limit on its sale in the EU binds sellers. For the private user it is
    advice.
Fires
    "wished stripper with NMP", "and somebody expects a child".
Stays silent
    "wished stripper with benzyl alcohol".
Sources
    reach-xvii-71: why it is limited. own-judgement: out of this job.
"""

import re
from dataclasses import replace

from bathwright.domain.findings import Finding, Said
from bathwright.domain.sheet import Sheet
from bathwright.rules.facts import Facts, components, every_sheet, holds, people_with
from bathwright.rules.measures import leave_out
from bathwright.rules.say import question, with_measures, word

CODE = "nmp-stripper"
SOURCES = ("reach-xvii-71", "own-judgement")

_CAS = "872-50-4"
_NAME = re.compile(r"(?<![a-z])nmp(?![a-z])|methyl-?(?:2-)?pyrrolid", re.IGNORECASE)


def check(facts: Facts) -> tuple[Said, ...]:
    """Left out; a stop where it can reach an unborn child; a question where nobody told who lives there."""
    said: list[Said] = []
    for sheet in every_sheet(facts):
        if sheet.role == "stripper" and _holds(sheet):
            said += _one(facts, sheet)
    return tuple(said)


def _one(facts: Facts, sheet: Sheet) -> tuple[Said, ...]:
    finding = _finding(sheet)
    stop = replace(finding, effect="stops")
    if people_with(facts, "pregnant"):
        return (stop,)
    left = with_measures(finding, leave_out(sheet.id))
    people = facts.survey.people
    if people is None or any(person.traits is None for person in people):
        return (*left, question("people", CODE, "worst", (stop,), "ask_each"))
    return left


def _holds(sheet: Sheet) -> bool:
    return holds(sheet, _CAS, "nmp") or any(_NAME.search(entry.substance) for entry in components(sheet))


def _finding(sheet: Sheet) -> Finding:
    return Finding(
        code=CODE,
        about=(sheet.id,),
        strength="danger",
        consequence="harms",
        effect="must_do",
        values=(word("product", sheet.product),),
        relax="other_stripping",
    )
