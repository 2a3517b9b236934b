"""What a joint has to carry: wind or a named load on all that it holds, and that part's weight."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

import numpy as np

from ...design.shapes.shape import Array
from ...design.structure import GRAVITY, Weighing
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...loads.given import GivenLoad
from ..adjustments import wind_over

T = TypeVar("T")


@dataclass(frozen=True)
class LoadSet:
    """What acts at once: ``dead`` times the ``weighing`` weight, and ``live`` times wind or loads.

    These are the named ``loads``; without one it is the wind, or in calm air nothing. ``longer``
    is what a joint holds under wind over what it holds for as long as this lasts.
    """

    weighing: Weighing
    dead: float
    live: float
    longer: float = 1.0
    loads: tuple[GivenLoad, ...] = ()

    @property
    def is_calm(self) -> bool:
        """Return whether it is dead load alone."""
        return not self.loads and self.live == 0.0

    @property
    def is_wind(self) -> bool:
        """Return whether the wind acts, not calm air nor named loads."""
        return not self.loads and self.live != 0.0

    @property
    def name(self) -> str:
        """Return the names of its loads, "" without any."""
        return together(self.loads)


@dataclass(frozen=True, eq=False)
class Resultant:
    """Force (…, 3) in N on what a joint holds, and moment (…, 3) in N m about the origin.

    The leading shape is (S, Q, D, C): ``sets`` (S,) of what acts at once, gusts, directions, cases;
    ``azimuths`` (D,) in degrees and ``cases`` (C,) name the last two. What a joint holds less of
    under a set, since it lasts longer than a gust, is asked of it that much more: all are compared
    with what holds under wind.
    """

    force: Array
    moment: Array
    azimuths: Array
    cases: tuple[str, ...]
    sets: tuple[LoadSet, ...]

    def about(self, origin: Array) -> Array:
        """Return the moment (…, 3) about another point (3,)."""
        return self.moment - np.cross(np.broadcast_to(origin, self.force.shape), self.force)


@dataclass(frozen=True, eq=False)
class Weight:
    """Mass in kg and centre (3,) in m of what a joint holds."""

    mass: float
    centre: Array


def load_sets(factors: Factors, basis: str, loads: Sequence[GivenLoad] = ()) -> tuple[LoadSet, ...]:
    """Return what is tried: wind on light and heavy weight, dead load alone, and each named load.

    Dead load that helps is light, dead load that hurts heavy; alone it is heavy and lasts for good.
    A named load takes the place of wind, and so do all of them together; they last as what people
    do: ten years in all, not 1.6 of wind (judgement: a push is shorter, yet comes again and again).
    """
    by_wind = (
        LoadSet("light", factors.helping, factors.wind),
        LoadSet("heavy", factors.hurting, factors.wind),
    )
    calm = LoadSet("heavy", factors.alone, 0.0, wind_over("permanent", basis))
    if not loads:
        return (*by_wind, calm)
    normal = wind_over("normal", basis)
    by_load = [
        replace(one, live=factors.live, longer=normal, loads=acting)
        for acting in at_once(loads)
        for one in by_wind
    ]
    return (*by_wind, calm, *by_load)


def at_once(loads: Sequence[T]) -> list[tuple[T, ...]]:
    """Return which named loads are tried at once: each by itself, and all of several."""
    alone = [(load,) for load in loads]
    return [*alone, tuple(loads)] if len(loads) > 1 else alone


def together(loads: Sequence[GivenLoad]) -> str:
    """Return the names of loads that act at once."""
    names = [load.name for load in loads]
    return " and ".join(names) if len(names) < 3 else f"all {len(names)} named loads"


def resultant(
    actions: Actions, light: Weight, heavy: Weight, sets: Sequence[LoadSet], slope: float = 0.0
) -> Resultant:
    """Return what wind or a named load and weight together do to what a joint holds.

    ``actions`` (Q, D, C) are of the bodies held alone, ``light`` and ``heavy`` their weight. On a
    ``slope`` in rad each of ``sets`` comes with its fall toward eight sides.
    """
    F, M = wind_wrench(actions)
    found: list[tuple[LoadSet, Array, Array]] = []
    for one in sets:
        weight = light if one.weighing == "light" else heavy
        push, turn = one.live * F, one.live * M
        if one.loads:
            wrenches = [load_wrench(load) for load in one.loads]
            push = one.live * sum(force for force, _ in wrenches) + np.zeros_like(F)
            turn = one.live * sum(moment for _, moment in wrenches) + np.zeros_like(F)
        for down in downward(slope):
            pull = one.dead * weight.mass * GRAVITY * down
            turning: Array = np.cross(weight.centre, pull).astype(np.float64)
            found.append((one, one.longer * (push + pull), one.longer * (turn + turning)))
    return Resultant(
        np.stack([force for _, force, _ in found]),
        np.stack([moment for _, _, moment in found]),
        actions.azimuths,
        actions.names,
        tuple(one for one, _, _ in found),
    )


def downward(slope: float) -> Array:
    """Return the ways (n, 3) in which weight pulls in the axes of a piece on a slope in rad."""
    if slope == 0.0:
        return np.array([[0.0, 0.0, -1.0]])
    fall = np.pi / 4.0 * np.arange(8)
    level = np.sin(slope)
    down = np.full(8, -np.cos(slope))
    return np.column_stack([level * np.cos(fall), level * np.sin(fall), down])


def wind_wrench(actions: Actions) -> tuple[Array, Array]:
    """Return force (…, 3) in N and moment (…, 3) in N m about the origin of actions of wind.

    M = r x F summed: the level force at its height, the twist, and the suction at its place.
    """
    whole = actions.wrench
    return whole[..., :3], whole[..., 3:]


def load_wrench(load: GivenLoad) -> tuple[Array, Array]:
    """Return force (3,) in N and moment (3,) in N m about the origin of a named load: M = r x F."""
    force: Array = load.force * np.asarray(load.direction)
    return force, np.cross(np.asarray(load.at), force).astype(np.float64)
