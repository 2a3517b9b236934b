"""The load cases of a piece as wrenches on its bodies: weight, wind, and named loads."""

from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from ...design.structure import GRAVITY, WEIGHINGS, Structure, Weighing
from ...loads.combinations import Factors
from ...loads.given import GivenLoad
from ...statics.wrench import wrench
from ...units.arrays import Array, Integers
from ...units.frozen import ByIdentity, ByValue
from ..timber.books import book_of
from .point_loads import PointLoads

_T = TypeVar("_T")

MINIMUM = "minimum"
"""The case of the least wind that a standard asks."""


class LoadSet(ByValue, frozen=True):
    """What acts at once: ``dead`` times the ``weighing`` weight, ``wind`` times wind, and loads.

    ``live`` is the factor on the ``loads``, named ones or what people do. ``longer`` is what wood
    holds under wind over what it holds for as long as this lasts.
    """

    weighing: Weighing
    dead: float
    wind: float
    live: float = 0.0
    longer: float = 1.0
    loads: tuple[GivenLoad, ...] = ()

    @property
    def is_calm(self) -> bool:
        """Return whether it is dead load alone."""
        return not self.loads and self.wind == 0.0

    @property
    def factor(self) -> float:
        """Return the factor on what leads: its loads, else the wind."""
        return self.live if self.loads else self.wind

    @property
    def name(self) -> str:
        """Return the names of its loads, "" without any."""
        return loads_together(self.loads)


class LoadCases(ByIdentity, frozen=True):
    """Load cases as numbers (n, bases) in N and N m about the origin, as a model takes them.

    ``of`` (n,) is the set of ``sets`` that each is of; ``gust``, ``direction`` and ``case`` (n,)
    tell the wind's, -1 without any. ``azimuths`` (D,) in degrees and ``cases`` (C,) name them.
    """

    loads: Array
    of: Integers
    direction: Integers
    case: Integers
    sets: tuple[LoadSet, ...]
    azimuths: Array
    cases: tuple[str, ...]

    @property
    def longer(self) -> Array:
        """Return ``longer`` (n,) of each case's set."""
        return np.array([one.longer for one in self.sets])[self.of]

    @property
    def calm(self) -> Integers:
        """Return the cases (k,) of dead load alone."""
        quiet = np.array([one.is_calm for one in self.sets])
        return np.flatnonzero(quiet[self.of])

    @property
    def downward(self) -> Array:
        """Return all that presses down (n,) in N in each case."""
        return -self.loads[:, 2::6].sum(axis=1)

    def set_of(self, k: int) -> LoadSet:
        """Return the set that a case is of."""
        return self.sets[int(self.of[k])]

    def azimuth(self, k: int) -> float | None:
        """Return the azimuth in degrees from which the wind of a case comes; None without wind."""
        return float(self.azimuths[self.direction[k]]) if self.direction[k] >= 0 else None

    def name(self, k: int) -> str:
        """Return what a case of wind is called, "calm" of dead load alone, else ""."""
        if self.set_of(k).is_calm:
            return "calm"
        return self.cases[int(self.case[k])] if self.case[k] >= 0 else ""


def load_sets(
    factors: Factors,
    basis: str,
    loads: Sequence[GivenLoad] = (),
    people: Sequence[tuple[GivenLoad, float]] = (),
) -> tuple[LoadSet, ...]:
    """Return what is tried: wind, dead load alone, each named load, and both at once.

    Wind and loads come on light and on heavy weight. Dead load that helps is light, dead load that
    hurts heavy; alone it is heavy and lasts for good. Named loads act each by itself and all
    together, and last as what people do: ten years in all, not 1.6 of wind (judgement: a push is
    shorter, yet comes again and again); with wind beside them as wind does. ``people`` are what
    they may do, each with how much ``longer`` it lasts, and never together.
    """
    weights: tuple[tuple[Weighing, float], ...] = (
        ("light", factors.helping),
        ("heavy", factors.hurting),
    )
    book = book_of(basis)
    normal = book.wind_over("normal", basis)
    named = at_once(loads)
    alone = [*((each, normal) for each in named), *(((one,), longer) for one, longer in people)]
    return (
        *(LoadSet(kind, dead, factors.wind) for kind, dead in weights),
        LoadSet("heavy", factors.alone, 0.0, 0.0, book.wind_over("permanent", basis)),
        *(
            LoadSet(kind, dead, 0.0, factors.live, longer, acting)
            for acting, longer in alone
            for kind, dead in weights
        ),
        *(
            LoadSet(kind, dead, wind, live, 1.0, acting)
            for acting in named
            for wind, live in factors.companions
            for kind, dead in weights
        ),
    )


def at_once(loads: Sequence[_T]) -> list[tuple[_T, ...]]:
    """Return which named loads are tried at once: each by itself, and all of several."""
    alone = [(load,) for load in loads]
    return [*alone, tuple(loads)] if len(loads) > 1 else alone


def loads_together(loads: Sequence[GivenLoad]) -> str:
    """Return the names of loads that act at once."""
    names = [load.name for load in loads]
    return " and ".join(names) if len(names) < 3 else f"all {len(names)} named loads"


def load_cases(
    structure: Structure,
    wind: Array,
    azimuths: Array,
    cases: tuple[str, ...],
    factors: Factors,
    basis: str,
    points: PointLoads,
    slope: float = 0.0,
    only: Sequence[LoadSet] = (),
) -> LoadCases:
    """Return every load case of a piece, or those of ``only`` some sets.

    ``wind`` (Q, D, C, bodies, 6) is that on each body; after the bodies' wrenches stand those of
    the ``points`` at which loads act. On a ``slope`` in rad weight pulls toward eight sides.
    Beside a load the least wind of a standard does not act.
    """
    bodies = len(structure.bodies)
    Q, D, C = wind.shape[:3]
    blown = wind.reshape(Q * D * C, bodies * 6)
    direction, case = (each.ravel() for each in np.broadcast_arrays(*_places(Q, D, C)))
    beside = np.flatnonzero(np.array([name != MINIMUM for name in cases])[case])
    sets = tuple(only) or load_sets(factors, basis, points.named, points.people)
    none = np.array([-1])
    found: list[tuple[Array, int, Integers, Integers]] = []
    for s, one in enumerate(sets):
        live = points.wrenches(one.loads)
        rows = beside if one.loads else np.arange(len(blown))
        for down in downward(slope):
            dead = one.dead * _weight(structure, one.weighing, down)
            base = np.concatenate([dead, one.live * live])
            if one.wind:
                whole = np.broadcast_to(base, (len(rows), len(base))).copy()
                whole[:, : bodies * 6] += one.wind * blown[rows]
                found.append((whole, s, direction[rows], case[rows]))
            else:
                found.append((base[None], s, none, none))
    return LoadCases(
        np.concatenate([each[0] for each in found]),
        np.concatenate([np.full(len(each[0]), each[1]) for each in found]),
        np.concatenate([each[2] for each in found]),
        np.concatenate([each[3] for each in found]),
        sets,
        azimuths,
        cases,
    )


def downward(slope: float) -> Array:
    """Return the ways (n, 3) in which weight pulls in the axes of a piece on a slope in rad."""
    if slope == 0.0:
        return np.array([[0.0, 0.0, -1.0]])
    fall = np.pi / 4.0 * np.arange(8)
    level = np.sin(slope)
    down = np.full(8, -np.cos(slope))
    return np.column_stack([level * np.cos(fall), level * np.sin(fall), down])


def _places(Q: int, D: int, C: int) -> tuple[Integers, Integers]:
    none = np.zeros((Q, D, C), dtype=np.intp)
    return none + np.arange(D)[:, None], none + np.arange(C)


def _weight(structure: Structure, weighing: Weighing, down: Array) -> Array:
    """Return the wrenches (bodies * 6,) of the weight of each body."""
    mass = structure.body_mass[WEIGHINGS.index(weighing)]
    return wrench(GRAVITY * mass[:, None] * down, structure.steady_centres).ravel()


def most_used_cases(used: Array, most: int) -> Integers:
    """Return which of ``used`` (n,) are the greatest, ``most`` of them; of alike ones the first.

    A piece that is alike from several sides is used alike by as many winds.
    """
    order = np.argsort(-used, kind="stable")
    value = used[order]
    endless = np.isinf(value)
    size = float(np.abs(value[~endless]).max(initial=0.0))
    fall = -np.diff(np.where(endless, 2.0 * size + 1.0, value), prepend=np.inf)
    begin = np.flatnonzero(fall > _ALIKE * size)
    return np.minimum.reduceat(order, begin)[:most] if len(begin) else order[:0]


_ALIKE = 1.0e-6
"""Share of the greatest use by which those that count as alike may differ."""
