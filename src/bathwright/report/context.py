"""What the page and the terminal get: words and figures only, all of them from one plan."""

from collections.abc import Mapping
from dataclasses import dataclass

Row = tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A label and its text."""

    label: str
    """What it is, for example "Home"."""
    text: str
    """What is said about it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """Rows of a table that belong together."""

    title: str
    """Heading of the rows, for example a day; empty when the table has no groups."""
    rows: tuple[Row, ...]
    """One text per column; the first one names the row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A table of texts."""

    id: str
    """Id of the table on the page, unique."""
    caption: str
    """What the table shows."""
    head: Row
    """Names of the columns."""
    groups: tuple[Group, ...]
    """The rows, in groups."""
    numeric: tuple[int, ...] = ()
    """Numbers of the columns that hold figures."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """A pointer to the list of sources."""

    number: int
    """Number in the list."""
    anchor: str
    """Id of the entry on the page."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceView:
    """One entry of the list of sources."""

    number: int
    """Number in the list."""
    anchor: str
    """Id of the entry on the page."""
    id: str
    """Short id of the source in the bibliography."""
    citation: str
    """Who published what, when."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureView:
    """Something to do."""

    do: str
    """The full sentence."""
    short: str
    """The same in a few words, without a capital and a full stop."""
    who: str
    """Who does it."""
    time: str
    """From when until when, or empty."""
    feasible: str
    """Whether it can be had: "you have it", "buy it"."""
    done: bool
    """True when it was told as done."""
    extra: str
    """What it does in numbers, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FindingView:
    """One thing that the plan found."""

    title: str
    """What it is, in one line."""
    what: str
    """What happens and why, in short sentences."""
    facts: tuple[str, ...]
    """Value, limit, margin, basis: one short sentence each."""
    consequence: str
    """What can come of it, as a word: "can kill" to "note"."""
    level: int
    """4 = can kill, 3 = can harm, 2 = ruins the work, 1 = costs time, 0 = note; picks the shape beside the word."""
    strength: str
    """How binding: "law here (binds …)", "physical danger", "the maker asks"."""
    status: str
    """Still open, kept by this plan, not known."""
    met: bool
    """True when the plan keeps it."""
    effect: str
    """Stops the job, must be done, good to know."""
    steps: str
    """The steps that it is about, or empty."""
    measures: tuple[MeasureView, ...]
    """What to do about it."""
    relax: str
    """What would change it, or empty."""
    marks: str
    """How sure it is: "verified", "from memory", or empty."""
    references: tuple[Reference, ...]
    """Where it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionView:
    """A question that is still open."""

    ask: str
    """The question."""
    why: str
    """Why it matters."""
    test: str
    """The cheapest way to find out."""
    worse: str
    """What the plan takes until it is answered, or empty."""
    blocks: str
    """That the plan cannot say go without it, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepView:
    """One step in detail."""

    number: int
    """Number of the step in this plan, from 1."""
    anchor: str
    """Id of the step on the page."""
    title: str
    """What is done, in a few words."""
    runs: str
    """Day and time from and to, or that it has no time yet."""
    work: str
    """How long the work takes, and whether somebody must be there."""
    room: str
    """What the bathroom and the home are good for meanwhile, or empty."""
    do: str
    """How to do it."""
    why: str
    """Why."""
    looks: tuple[str, ...]
    """What to look for, with numbers."""
    wears: tuple[str, ...]
    """What to wear."""
    uses: tuple[str, ...]
    """Products and amounts."""
    waits: tuple[str, ...]
    """Waits, temperatures and hours that the step must keep."""
    references: tuple[Reference, ...]
    """Where it comes from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseView:
    """The steps of one phase that follow each other."""

    title: str
    """Name of the phase."""
    steps: tuple[StepView, ...]
    """Its steps, by time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EmergencyView:
    """The emergency box."""

    lines: tuple[str, ...]
    """What to do, the most urgent first; no treatment, no dose."""
    mark: str
    """How sure the telephone numbers are."""
    references: tuple[Reference, ...]
    """Where the numbers come from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AirView:
    """The air of the plan."""

    lines: tuple[Pair, ...]
    """Set-up, fan, flow, who is out, when they are back."""
    peaks: Table | None
    """What people breathe at the highest, against limits; without what is far below its limit."""
    all_peaks: Table | None
    """All values, when some are left out of the other table."""
    small: str
    """How many values are left out because they are far below their limit, or empty."""
    protection: tuple[MeasureView, ...]
    """What protects the painter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A bar of the timeline. Places are percent of the width."""

    x: str
    """Left end."""
    width: str
    """Width."""
    look: str
    """Name of the pattern that fills it."""
    label: str
    """Short text in or beside the bar, or empty."""
    title: str
    """What it is, with day and time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """A row of the timeline."""

    y: int
    """Top of the row, in pixels."""
    label: str
    """Name of the row."""
    note: str
    """A second line below the name, or empty."""
    bar_y: int
    """Top of its bars, in pixels."""
    bars: tuple[Bar, ...]
    """Its bars."""
    diamonds: tuple[Bar, ...] = ()
    """Points in time (width is not used)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A mark on an axis."""

    place: str
    """Percent of the width or height."""
    label: str
    """Text at the mark, or empty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Timeline:
    """The picture of the whole plan over time."""

    title: str
    """Title for those who do not see it."""
    desc: str
    """Description for those who do not see it."""
    height: int
    """Height in pixels; the width is that of the page."""
    nights: tuple[Bar, ...]
    """Shaded nights."""
    ticks: tuple[Tick, ...]
    """The beginnings of days."""
    lanes: tuple[Lane, ...]
    """States of the bathroom, phases, earliest times of use."""
    legend: tuple[Pair, ...]
    """Pattern name and what it means."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """The picture of one course of vapour. Points lie in a square of 1000 by 1000, downwards."""

    id: str
    """Id of the picture on the page, unique."""
    title: str
    """Substance and place."""
    desc: str
    """Description for those who do not see it."""
    unit: str
    """Unit of the scale."""
    central: str
    """Points of the central estimate."""
    upper: str
    """Points of the upper estimate."""
    decades: tuple[Tick, ...]
    """Marks of the upright scale, percent from the top."""
    times: tuple[Tick, ...]
    """Marks of the time scale, percent from the left."""
    nights: tuple[Bar, ...]
    """Shaded nights."""
    limits: tuple[Tick, ...]
    """Limits: percent from the top and words."""
    peak: str
    """The highest value and when."""
    table: Table
    """The same numbers as a table."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanContext:
    """Everything that the page and the terminal show."""

    language: str
    """Language of the texts: "en-US" or "en-GB"."""
    labels: Mapping[str, str]
    """Headings and short labels by name."""
    verdict: str
    """The verdict line: go, not yet with what comes first, or no with what else."""
    verdict_look: str
    """One of "go", "not-yet", "no": picks the shape beside the line."""
    who: str
    """Who may do the work."""
    example: str
    """That home or product are invented, or empty."""
    asked: tuple[Pair, ...]
    """Home, bath, coating, other products, note."""
    out: tuple[Pair, ...]
    """Who must be out and when, and the second adult outside."""
    top: tuple[FindingView, ...]
    """The first three findings; when the answer is no, all that decide it."""
    first: tuple[str, ...]
    """What comes first, in a few words each, in the order of the headline."""
    firm: str
    """What a certified firm brings by itself, or empty."""
    emergency: EmergencyView
    """The emergency box."""
    before: tuple[MeasureView, ...]
    """What to do, buy or ask before the start."""
    questions: tuple[QuestionView, ...]
    """What is still open."""
    when: Table | None
    """Step, start, work, wait for; grouped by day."""
    when_notes: tuple[str, ...]
    """Zone of all times, until when they hold, what cannot be kept."""
    timeline: Timeline | None
    """The picture of the time."""
    states: Table | None
    """What bath, bathroom and home are good for, and when."""
    clocks: Table | None
    """The six clocks."""
    air: AirView | None
    """Fan, flow, peaks, protection."""
    panels: tuple[Panel, ...]
    """Pictures of vapour over time."""
    area: tuple[str, ...]
    """The areas to coat."""
    materials: Table | None
    """Amounts and packs, grouped by section."""
    mixes: Table | None
    """Batches to mix."""
    phases: tuple[PhaseView, ...]
    """The steps in detail, by phase."""
    others: tuple[FindingView, ...]
    """All findings after the first three."""
    alternatives: Table | None
    """Other ways."""
    care: tuple[str, ...]
    """Rules of care."""
    waste: tuple[str, ...]
    """Where leftovers go."""
    climate: tuple[str, ...]
    """The climate that was used."""
    assumptions: Table | None
    """What nobody told, with value, source and mark."""
    numbers: Table | None
    """Sums of the plan, with what they were made from."""
    cost: Table | None
    """Money by item, when the record has it."""
    sources: tuple[SourceView, ...]
    """The bibliography of this plan."""
    cautions: tuple[str, ...]
    """What the plan is not."""
    footer: tuple[str, ...]
    """What made the plan, and its id."""
