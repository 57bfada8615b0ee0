"""Steps, times, states and clocks in words."""

from bathwright.domain.steps import Clock, Demand, Look, Step
from bathwright.report import amounts
from bathwright.report.context import Group, PhaseView, Row, StepView, Table
from bathwright.report.fill import capital
from bathwright.report.findings_view import worn_in_words
from bathwright.report.reader import Reader, sentence

_MINUTE_S, _HOUR_S = 60.0, 3600.0
_READS = {"humidity": "humidity", "spread": "temperature_step"}


def in_time(reader: Reader) -> tuple[Step, ...]:
    """The steps by time; those without a time at the end, in the order of the record."""
    return tuple(sorted(reader.plan.steps, key=lambda s: (s.starts is None, s.starts.timestamp() if s.starts else 0.0)))


def phases(reader: Reader) -> tuple[PhaseView, ...]:
    """The steps in detail, neighbours of one phase together."""
    out: list[tuple[str, list[StepView]]] = []
    for step in in_time(reader):
        title = reader.words.get("phase", step.phase)
        if not out or out[-1][0] != title:
            out.append((title, []))
        out[-1][1].append(_step_view(reader, step))
    return tuple(PhaseView(title=title, steps=tuple(steps)) for title, steps in out)


def _step_view(reader: Reader, step: Step) -> StepView:
    words, values = reader.words, _step_values(reader, step)
    number = reader.numbers[step.id]
    because = (*step.because, *(source for demand in step.demands for source in demand.because))
    return StepView(
        number=number,
        anchor=f"step-{number}",
        title=reader.title(step.id),
        runs=reader.span(step.starts, step.ends) or reader.label("not_fixed"),
        work=_work(reader, step),
        room="" if step.room_state == "free" else words.get("state_room", step.room_state),
        do=words.of_code("steps", step.act, "do", values),
        why=words.of_code("steps", step.act, "why", values),
        looks=tuple(look_in_words(reader, look) for look in step.look_for),
        wears=tuple(_wear(reader, name) for name in step.wears),
        uses=tuple(_use(reader, use.sheet, use.volume_m3) for use in step.uses),
        waits=tuple(sentence(text) for demand in step.demands if (text := demand_in_words(reader, demand))),
        references=reader.references(dict.fromkeys(because)),
    )


def _step_values(reader: Reader, step: Step) -> dict[str, str]:
    offered, air, system = {}, reader.plan.air, reader.plan.system
    if step.wears:
        offered["worn"] = ", ".join(dict.fromkeys(_wear(reader, name) for name in step.wears))
    if system is not None and system.method in ("spray", "aerosol"):
        offered["mist"] = reader.label("mist")
    if step.uses:
        offered["product"] = reader.name(step.uses[0].sheet)
    if air is not None and air.fan_flow_m3_s is not None:
        offered["flow"] = reader.amount(air.fan_flow_m3_s.low, "flow", both=True)
    inlet = (air.setup or "").rpartition("-")[2] if air is not None else ""
    if reader.words.has("inlet", inlet):
        offered["inlet"] = reader.words.get("inlet", inlet)
    return offered | reader.values(step.values)


def _work(reader: Reader, step: Step) -> str:
    time = amounts.work_band(step.work_s)
    notes = [reader.words.get("attendance", step.attendance)] if step.attendance != "attended" else []
    notes += [reader.label("hands", count=str(step.hands))] if step.hands > 1 else []
    return "; ".join([time, *notes])


def _wear(reader: Reader, name: str) -> str:
    measure = next((entry for entry in reader.plan.measures if entry.id == name), None)
    if measure is None:
        return reader.words.word(name, free=True)
    return worn_in_words(reader, measure)


def _use(reader: Reader, sheet: str, volume_m3: float | None) -> str:
    name = reader.name(sheet)
    return name if volume_m3 is None else f"{name}: {reader.amount(volume_m3, 'liquid', both=True)}"


def look_in_words(reader: Reader, look: Look) -> str:
    """What to look for, its range, and what to do when it is not so."""
    text = reader.words.word(look.what, "look", free=True)
    low = None if look.low is None else reader.amount(look.low, look.kind, both=True)
    high = None if look.high is None else reader.amount(look.high, look.kind, both=True)
    text += f": {bounds(reader, low, high)}" if low or high else ""
    if not look.if_not:
        return sentence(text)
    return f"{sentence(text)} {reader.label('if_not', act=reader.words.word(look.if_not, 'look', free=True))}"


def bounds(reader: Reader, low: str | None, high: str | None) -> str:
    """The words for a range: between two values, at least one, or at most one."""
    if low and high:
        return reader.label("look_range", low=low, high=high)
    return reader.label("look_low", low=low) if low else reader.label("look_high", high=high or "")


def demand_in_words(reader: Reader, demand: Demand) -> str:
    """A wait, a window or another thing that a step must keep."""
    if demand.kind == "wait" or demand.kind == "before":
        return _wait(reader, demand)
    if demand.kind == "window":
        return _window(reader, demand)
    if demand.kind == "hours":
        return reader.label("hours_working")
    if demand.kind == "needs" and demand.resource:
        return reader.label("needs", resource=reader.name(demand.resource))
    return reader.words.word(demand.is_state, "look", free=True) if demand.is_state else ""


def _wait(reader: Reader, demand: Demand) -> str:
    if demand.after is None or demand.after not in reader.numbers:
        return ""
    step = reader.step(demand.after)
    least = amounts.duration(demand.least_s, "up") if demand.least_s else None
    most = amounts.duration(demand.most_s, "down") if demand.most_s is not None else None
    if least and most:
        text = reader.label("wait_range", least=least, most=most, step=step)
    elif least:
        name = "wait_after_start" if demand.after_edge == "start" else "wait_after"
        text = reader.label(name, time=least, step=step)
    else:
        text = reader.label("wait_most", time=most, step=step) if most else reader.label("before_step", step=step)
    if demand.printed_least_s and abs(demand.printed_least_s - (demand.least_s or 0.0)) >= _MINUTE_S:
        text += f" ({reader.label('wait_printed', time=amounts.duration(demand.printed_least_s))})"
    if not demand.on_miss:
        return text
    missed = reader.label("missed", act=reader.words.word(demand.on_miss, free=True))
    return f"{sentence(text)} {missed}"


def _window(reader: Reader, demand: Demand) -> str:
    reads = demand.reads or "air_temperature"
    kind = _READS.get(reads, "temperature")
    low = None if demand.low is None else reader.amount(demand.low, kind, both=True)
    high = None if demand.high is None else reader.amount(demand.high, kind, both=True)
    words = reader.label(f"reads_{reads}")
    if low and high:
        text = reader.label("window_both", reads=words, low=low, high=high)
    else:
        text = reader.label("window_low" if low else "window_high", reads=words, low=low or "", high=high or "")
    if demand.until_s <= 0:
        return text
    return f"{text}, {reader.label('window_until', time=amounts.duration(demand.until_s, 'up'))}"


def when_table(reader: Reader) -> Table | None:
    """Step, start, work, wait for; one group per day."""
    groups: list[tuple[str, list[Row]]] = []
    for step in in_time(reader):
        title = reader.label("not_fixed") if step.starts is None else amounts.day(step.starts, reader.zone, "down")
        if not groups or groups[-1][0] != title:
            groups.append((title, []))
        groups[-1][1].append(_when_row(reader, step))
    if not groups:
        return None
    head = tuple(reader.label(name) for name in ("step_head", "start", "work", "wait_for"))
    made = tuple(Group(title=title, rows=tuple(rows)) for title, rows in groups)
    return Table(id="when-table", caption=reader.label("when_caption"), head=head, groups=made)


def _when_row(reader: Reader, step: Step) -> Row:
    start = "–"
    if step.starts is not None:
        clock = amounts.clock_time(step.starts, reader.zone, "down")
        start = f"{clock} {amounts.zone_name(step.starts, reader.zone)}"
    name = f"{reader.numbers[step.id]}. {reader.title(step.id)}"
    return (name, start, amounts.work_band(step.work_s), capital(_waits_for(reader, step)))


def _waits_for(reader: Reader, step: Step) -> str:
    """What decides the start of a step."""
    decides = step.decides or "earliest"
    demand = next((entry for entry in step.demands if entry.id == decides), None)
    if demand is not None:
        return demand_in_words(reader, demand)
    if decides in reader.numbers:
        return reader.label("before_step", step=reader.step(decides))
    known = {"earliest": "nothing_to_wait", "hours": "hours_working", "most-wait": "most_wait"}
    return reader.label(known[decides]) if decides in known else reader.words.plain(decides)


def when_notes(reader: Reader) -> tuple[str, ...]:
    """Zone of all times, until when they hold, what cannot be kept."""
    table = reader.plan.timetable
    if table is None:
        return (reader.label("nothing_told"),)
    zone = reader.plan.survey.place.time_zone if amounts.is_zone(reader.plan.survey.place.time_zone) else ""
    out = [reader.label("all_times", zone=zone or reader.label("unknown_zone"))]
    if table.valid_until is not None:
        out.append(reader.label("valid_until", at=reader.instant(table.valid_until, "down")))
    demands = {demand.id: demand for step in reader.plan.steps for demand in step.demands}
    for clash in table.clashes:
        known = demands.get(clash.demand)
        text = demand_in_words(reader, known) if known else reader.words.plain(clash.demand)
        step = reader.step(clash.step) if clash.step in reader.numbers else ""
        said = ": ".join(part for part in (step, text) if part)
        if clash.missed_by_s is None:
            out.append(sentence(reader.label("clash", demand=said)))
        else:
            out.append(sentence(reader.label("clash_by", demand=said, time=amounts.duration(clash.missed_by_s, "up"))))
    return tuple(out)


def states_table(reader: Reader) -> Table | None:
    """What bath, bathroom and home are good for, span by span."""
    table = reader.plan.timetable
    if table is None or not table.states:
        return None
    rows = tuple(
        (
            reader.instant(state.starts, "down"),
            reader.instant(state.ends, "up"),
            reader.words.get("state", state.bath),
            reader.words.get("state_room", state.room),
            reader.words.get("state_home", state.home),
        )
        for state in sorted(table.states, key=lambda entry: entry.starts)
    )
    head = tuple(reader.label(name) for name in ("from", "until", "bath", "room", "home"))
    return Table(id="states-table", caption=reader.label("states"), head=head, groups=(Group(title="", rows=rows),))


def clocks_table(reader: Reader) -> Table | None:
    """The six clocks."""
    rows = tuple(_clock_row(reader, clock) for clock in reader.plan.clocks)
    if not rows:
        return None
    head = tuple(reader.label(name) for name in ("clock", "earliest_use", "runs_from", "counts", "because"))
    return Table(id="clocks-table", caption=reader.label("clocks"), head=head, groups=(Group(title="", rows=rows),))


def _clock_row(reader: Reader, clock: Clock) -> Row:
    words = reader.words
    name = f"{words.get('clock', clock.name)}. {words.get('clock_means', clock.name)}"
    counts = reader.label("not_known") if clock.used_s is None else amounts.duration(clock.used_s, "up")
    if clock.printed_s is not None and clock.printed_s != clock.used_s:
        counts += f" ({reader.label('printed_time', time=amounts.duration(clock.printed_s))})"
    runs_from = reader.step(clock.runs_from) if clock.runs_from in reader.numbers else reader.label("not_known")
    why = words.word(_clock_why(clock), "clock_why")
    return (name, capital(reader.not_before(clock.at)), capital(runs_from), counts, capital(why))


def _clock_why(clock: Clock) -> str:
    """The cold is named only where it takes more than an hour; a shorter time is a margin for the bath itself."""
    more = (clock.used_s or 0.0) - (clock.printed_s or 0.0)
    return "margin" if clock.why == "cold" and more <= _HOUR_S else clock.why
