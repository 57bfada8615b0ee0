"""The air of basin, room and home, with the film's solvent as a state: exact for each piece of constant flows.

Per substance i: d m/dt = a(t) (1 - s) + q w - r m + k A C_e, with r = k A C_sat g x / m (x = mole fraction of the
film's volatiles, g = activity coefficient, both of the film's mean over a time step of a minute to hours), a slow part
d w/dt = a(t) s - q w that comes up to the film's face, and the zones by their flows. The film takes vapour back when
the air is richer (back pressure), so that no concentration passes saturation, and all mass is kept.
Source: own-computation; k: mackay-van-wesenbeeck-2014.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

from bathwright.domain.air import AirSetup, Release, Vapour
from bathwright.domain.values import Band
from bathwright.physics import zones
from bathwright.simulation.grid import Source, edges

Array = NDArray[np.float64]
FILM, SLOW, BASIN, ROOM, HOME = range(5)
CASES = ("light", "central", "heavy", "lingering")
_ROUNDS = 3  # how often a step is worked out, each time with the film's mean of the time before; 1 = as at its start
# share of the fan's air that an inlet in the basin really draws out of the basin, by case: judgement
_FROM_BASIN = np.array([1.0, 1.0, 0.5, 0.5])
_DRY = 1e-3  # share of the applied moles below which the film's activity falls with what is left
_PICK = {"light": "low", "central": "central", "heavy": "high", "lingering": "high"}
_AGAINST = {"light": "high", "central": "central", "heavy": "low", "lingering": "low"}


@dataclass(frozen=True)
class AirRun:
    """Time step edges (n + 1) and, per case, substance and step, the exact mean of basin, room and home in kg/m3.

    `means` has the shape (cases, substances, 3, steps); `ends` the values at the end of each step;
    `film_kg` what is left in film and slow part (cases, substances, steps); `emission_kg_s` what leaves them.
    """

    edges_s: Array
    means: Array
    ends: Array
    film_kg: Array
    emission_kg_s: Array
    cas: tuple[str, ...]
    march: "March | None" = None


def _of(band: Band, table: dict[str, str]) -> Array:
    return np.array([getattr(band, table[case]) for case in CASES])


class _Model:
    """Matrices of one set-up: the zones with the fan on and off, and the film terms that are added to them."""

    def __init__(self, setup: AirSetup, vapours: tuple[Vapour, ...]) -> None:
        self.setup, self.vapours = setup, vapours
        self.emits = BASIN if setup.target == "basin" else ROOM
        count = len(CASES)
        self.volumes = np.ones((count, 3))
        self.volumes[:, 0], self.volumes[:, 1] = setup.basin_m3, setup.room_m3
        self.volumes[:, 2] = _of(setup.home_m3, _AGAINST)
        self.background = np.array([v.background_kg_m3 for v in vapours])
        self.molar = np.array([v.molar_mass_kg_mol for v in vapours])
        self.saturation = np.array(
            [
                [
                    v.saturation_central_kg_m3 if case in ("light", "central") else v.saturation_high_kg_m3
                    for v in vapours
                ]
                for case in CASES
            ]
        )
        self.transfer = _of(setup.transfer, _PICK)
        share = setup.slow_share
        self.slow_share = np.array([share.high, share.central, share.low, share.high])
        rate = setup.slow_rate
        self.slow_rate = np.array([rate.high, rate.central, rate.central, rate.low])
        self.air = {on: self._zones(on) for on in (True, False)}

    def _zones(self, fan_on: bool) -> tuple[Array, Array]:
        """Zone part of the matrix (cases, 5, 5) and inflow from outdoors (cases, 5) in 1/s."""
        setup, count = self.setup, len(CASES)
        flows: dict[tuple[int, int], Array] = {}

        def two_way(a: int, b: int, flow: Array) -> None:
            for pair in ((a, b), (b, a)):
                flows[pair] = flows.get(pair, np.zeros(count)) + flow

        def one_way(path: tuple[int, ...], flow: Array) -> None:
            for pair in pairwise(path):
                flows[pair] = flows.get(pair, np.zeros(count)) + flow

        out = -1
        two_way(BASIN, ROOM, _of(setup.basin_exchange, _AGAINST))
        home_flow = _of(setup.home_air_changes, _AGAINST) * self.volumes[:, 2]
        one_way((out, HOME), home_flow)
        one_way((HOME, out), home_flow)
        if fan_on and setup.fan_flow is not None:
            flow = _of(setup.fan_flow, _AGAINST)
            drawn = _FROM_BASIN if setup.inlet == "basin" else np.zeros(count)
            one_way((out, HOME, ROOM, BASIN, out), flow * drawn)
            one_way((out, HOME, ROOM, out), flow * (1 - drawn))
            two_way(ROOM, HOME, _of(setup.passages, _PICK))
        else:
            two_way(ROOM, HOME, _of(setup.room_exchange, _PICK))
        matrix, inflow = np.zeros((count, 5, 5)), np.zeros((count, 5))
        for (source, target), flow in flows.items():
            if source != out:
                matrix[:, source, source] -= flow / self.volumes[:, source - BASIN]
            if target != out:
                per_volume = flow / self.volumes[:, target - BASIN]
                if source == out:
                    inflow[:, target] += per_volume
                else:
                    matrix[:, target, source] += per_volume
        return matrix, inflow

    def step(
        self, fan_on: bool, film: Array, rate: Array, area: float, gamma: Array, least: Array
    ) -> tuple[Array, Array]:
        """Matrix (cases, substances, 5, 5) and source for one time step.

        film: kg in the film (cases, substances); rate: kg/s laid on; gamma: activity coefficients; least: moles
        below which the film's activity falls.
        """
        zone, inflow = self.air[fan_on]
        shape = film.shape
        matrix = np.broadcast_to(zone[:, None], (*shape, 5, 5)).copy()
        source = inflow[:, None, :] * self.background[None, :, None]
        moles = film / self.molar
        total = np.maximum(moles.sum(axis=1, keepdims=True), least[:, None])
        activity = np.minimum(gamma, 1.0 / np.maximum(moles / total, 1e-12))
        conductance = (self.transfer * area)[:, None]
        leaving = conductance * self.saturation * activity / (self.molar * total)
        volume = self.volumes[:, self.emits - BASIN][:, None]
        matrix[..., FILM, FILM] -= leaving
        matrix[..., FILM, self.emits] += conductance
        matrix[..., self.emits, FILM] += leaving / volume
        matrix[..., self.emits, self.emits] -= conductance / volume
        slow = np.broadcast_to(self.slow_rate[:, None], shape)
        matrix[..., SLOW, SLOW] -= slow
        matrix[..., FILM, SLOW] += slow
        source[..., FILM] += rate * (1 - self.slow_share[:, None])
        source[..., SLOW] += rate * self.slow_share[:, None]
        return matrix, source


def run(
    setup: AirSetup,
    vapours: tuple[Vapour, ...],
    releases: tuple[tuple[Release, float, float], ...],
    marks: tuple[float, ...],
    horizon_s: float,
) -> AirRun:
    """March the model from 0 to the horizon, with the fan on all the time where there is one.

    releases: each with its start and end in seconds. marks: times that must be edges. One film: what several steps
    lay on lies together.
    """
    model = _Model(setup, vapours)
    order = {vapour.cas: i for i, vapour in enumerate(vapours)}
    sources = tuple(Source(index=order[r.cas], starts_s=start, ends_s=end) for r, start, end in releases)
    times = np.array(edges(sources, marks, horizon_s))
    masses = np.array([[getattr(r.mass_kg, _PICK[case]) for r, _, _ in releases] for case in CASES])
    march = March(model, _Plan(model, releases, sources, masses, len(vapours)), times)
    march.go(0, fan_on=True)
    return march.result()


def fan_stopped(first: AirRun, from_step: int) -> AirRun:
    """The same run with the fan off from the start of one of its steps on."""
    if first.march is None:
        raise ValueError("only a run that was marched here can be gone on with")
    march = first.march.copy()
    march.go(from_step, fan_on=False)
    return march.result()


class _Plan:
    """What is laid on when: rates, wet area, activity coefficients."""

    def __init__(
        self, model: _Model, releases: tuple[Any, ...], sources: tuple[Source, ...], masses: Array, count: int
    ) -> None:
        self.sources, self.count = sources, count
        spans = np.array([max(s.ends_s - s.starts_s, 1.0) for s in sources])
        self.rates = masses / spans
        self.areas = [release.surface_m2 for release, _, _ in releases]
        self.gamma = np.ones(count)
        for (release, _, _), source in zip(releases, sources, strict=True):
            self.gamma[source.index] = max(self.gamma[source.index], release.activity_coefficient)
        moles = np.zeros((len(CASES), count))
        for i, source in enumerate(sources):
            moles[:, source.index] += masses[:, i] / model.molar[source.index]
        self.least = _DRY * np.maximum(moles.sum(axis=1), 1e-9)

    def at(self, start: float, end: float) -> tuple[Array, float, bool]:
        """Rate (cases, substances), wet area, and whether something is being laid on, in one time step."""
        rate = np.zeros((len(CASES), self.count))
        area, wet = 0.0, False
        middle = (start + end) / 2
        for i, source in enumerate(self.sources):
            if source.starts_s <= start and end <= source.ends_s + 1e-6:
                rate[:, source.index] += self.rates[:, i]
                part = (middle - source.starts_s) / max(source.ends_s - source.starts_s, 1.0)
                area, wet = max(area, self.areas[i] * part), True
            elif source.ends_s <= start:
                area = max(area, self.areas[i]) if not wet else area
        return rate, area, wet


def _worked_out(
    model: _Model, plan: _Plan, state: Array, step: tuple[bool, Array, float, float], rounds: int
) -> zones.Transition:
    """The transition of one time step (fan on, rates, wet area, length): first with the film as it is at the start,
    then with its mean over the step. A film that grows from nothing would else let out too much, then too little."""
    fan_on, rate, area, length = step
    film = state[..., FILM]
    for _ in range(rounds):
        matrix, source = model.step(fan_on, film, rate, area, plan.gamma, plan.least)
        move = zones.transition(matrix, source, length)
        film = zones.advance(move, state)[1][..., FILM]
    return move


class March:
    """The states of a run at the edges of its steps, and the exact means between them."""

    def __init__(self, model: _Model, plan: _Plan, times: Array) -> None:
        """A run that has not begun: every zone holds what outdoor air brings."""
        self.model, self.plan, self.times = model, plan, times
        shape, steps = (len(CASES), plan.count), len(times) - 1
        self.states = np.zeros((*shape, 5, steps + 1))
        self.states[:, :, BASIN:, 0] = model.background[None, :, None]
        self.means, self.leaving = np.empty((*shape, 3, steps)), np.empty((*shape, steps))

    def copy(self) -> "March":
        """A run of its own from the same states."""
        made = March(self.model, self.plan, self.times)
        made.states, made.means, made.leaving = self.states.copy(), self.means.copy(), self.leaving.copy()
        return made

    def go(self, from_step: int, fan_on: bool) -> None:
        """March from the start of a step to the end."""
        known: dict[tuple[Any, ...], zones.Transition] = {}
        for j in range(from_step, len(self.times) - 1):
            state, length = self.states[..., j], float(self.times[j + 1] - self.times[j])
            rate, area, wet = self.plan.at(float(self.times[j]), float(self.times[j + 1]))
            moles = (state[..., FILM] / self.model.molar).sum(axis=1)
            dry = not wet and bool((moles <= self.plan.least).all())
            key = (round(length, 3), area) if dry else None
            move = known.get(key) if key else None
            if move is None:
                rounds = 1 if dry else _ROUNDS
                move = _worked_out(self.model, self.plan, state, (fan_on, rate, area, length), rounds)
                if key:
                    known[key] = move
            end, mean = zones.advance(move, state)
            self.states[..., j + 1], self.means[..., j] = end, mean[..., BASIN:]
            left = end[..., FILM] + end[..., SLOW]
            self.leaving[..., j] = rate + (state[..., FILM] + state[..., SLOW] - left) / length

    def result(self) -> AirRun:
        """What came out."""
        return AirRun(
            edges_s=self.times,
            means=self.means,
            ends=self.states[:, :, BASIN:, 1:],
            film_kg=self.states[:, :, FILM, 1:] + self.states[:, :, SLOW, 1:],
            emission_kg_s=self.leaving,
            cas=tuple(v.cas for v in self.model.vapours),
            march=self,
        )
