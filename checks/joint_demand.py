"""What a joint has to carry: the wind on all that it holds, and that part's weight."""

from dataclasses import dataclass

import numpy as np

from ..design.shapes.shape import Array
from ..design.structure import GRAVITY
from ..loads.actions import Actions
from ..loads.combinations import Factors


@dataclass(frozen=True, eq=False)
class Resultant:
    """Force (…, 3) in N on what a joint holds, and moment (…, 3) in N m about the origin.

    The leading shape is (S, Q, D, C): sets of factors on dead load, gusts, directions, cases;
    ``azimuths`` (D,) in degrees and ``cases`` (C,) name the last two. Of the sets the first third
    is light with wind, the second heavy with wind, the last dead load alone, ``calm`` times as much
    as it is: what holds less for longer is compared with what holds under wind.
    """

    force: Array
    moment: Array
    azimuths: Array
    cases: tuple[str, ...]
    calm: float = 1.0

    def set_of(self, s: int) -> str:
        """Return what set ``s`` is: "light", "heavy" or "calm"."""
        return ("light", "heavy", "calm")[3 * s // len(self.force)]

    def about(self, origin: Array) -> Array:
        """Return the moment (…, 3) about another point (3,)."""
        return self.moment - np.cross(np.broadcast_to(origin, self.force.shape), self.force)


@dataclass(frozen=True, eq=False)
class Weight:
    """Mass in kg and centre (3,) in m of what a joint holds."""

    mass: float
    centre: Array


def resultant(
    actions: Actions,
    light: Weight,
    heavy: Weight,
    factors: Factors,
    slope: float = 0.0,
    longer: float = 1.0,
) -> Resultant:
    """Return what wind and weight together do to what a joint holds.

    ``actions`` (Q, D, C) are of the bodies held alone. Dead load that helps is light, dead load
    that hurts heavy; both sets are tried (basis of judgement), and dead load alone, heavy, times
    ``longer``: what a joint holds under wind over what it holds for good. On a ``slope`` in rad
    each with its fall toward eight sides.
    """
    F, M = wind_wrench(actions)
    sets = (
        (factors.helping, light, factors.wind),
        (factors.hurting, heavy, factors.wind),
        (factors.alone * longer, heavy, 0.0),
    )
    found: list[tuple[Array, Array]] = []
    for dead, weight, wind in sets:
        for down in downward(slope):
            pull = dead * weight.mass * GRAVITY * down
            turning: Array = np.cross(weight.centre, pull).astype(np.float64)
            found.append((wind * F + pull, wind * M + turning))
    return Resultant(
        np.stack([f for f, _ in found]),
        np.stack([m for _, m in found]),
        actions.azimuths,
        actions.names,
        longer,
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
    x, y = actions.force[..., 0], actions.force[..., 1]
    F = np.stack([x, y, actions.uplift], axis=-1)
    M = np.stack(
        [
            actions.lifting[..., 1] - actions.tilting[..., 1],
            actions.tilting[..., 0] - actions.lifting[..., 0],
            actions.twist,
        ],
        axis=-1,
    )
    return F, M
