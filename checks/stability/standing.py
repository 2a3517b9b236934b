"""How a piece stands: its contact, the lines about which it may turn, and its weight's hold."""

from functools import cached_property
from math import cos, sin

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design.structure import Structure, Weighing
from ...loads.actions import Actions
from ...loads.seen.directions import edge_normals
from ...materials.grounds import Ground
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from .contact import Caps, Quadrature, caps, quadrature
from .friction import sliding_resistance
from .wind_moments import WindMoments

_STEP_DEG = 5.0
"""On ground that yields, turning is tried in this many degrees besides the edges: a corner sinks
deeper than an edge."""

_KEPT = 100_000
"""Pivots of so many forces at most are kept for the checks that ask for them again."""


class DeadLoad(ByIdentity, frozen=True):
    """What presses a piece down: ``force`` (…) in N and its ``centre`` (…, 3) in m.

    Leading axes are pieces that differ in weight alone; those of winds follow as axes of one.
    """

    force: Array
    centre: Array


class Standing(ByIdentity, frozen=True):
    """A structure on its ground, on a slope of ``slope`` rad (the worst way round)."""

    structure: Structure
    ground: Ground
    slope: float
    among: "tuple[Standing, NDArray[np.intp]] | None" = None
    """The stand with all of its lines, and those (P,) that alone are looked at, where not all."""

    def about(self, lines: NDArray[np.intp]) -> "Standing":
        """Return the same stand with some of its lines (P,), any of which may come again."""
        return replace(self, among=(self, lines))

    def laden(self, structure: Structure) -> "Standing":
        """Return the same stand of a structure that has other weights on it, and the same foot.

        What was found of the foot stays.
        """
        found = replace(self, structure=structure)
        _ = self._winds, self._shares, self._pivots  # what is asked of either is known to both
        vars(found).update(vars(self))
        return found

    @cached_property
    def contact(self) -> BaseGeometry:
        """Return the touching faces as one area in plan."""
        return self.structure.contact_area

    @cached_property
    def normals(self) -> Array:
        """Return the level unit vectors (E, 2) toward which it may turn over."""
        if self.among is not None:
            whole, lines = self.among
            return whole.normals[lines]
        edges = edge_normals(self.structure.footprint)
        if self.ground.yield_pressure is None or self.contact.area <= 0.0:
            return edges
        angles = np.radians(np.arange(0.0, 360.0, _STEP_DEG)) + self.structure.design.turn
        return np.vstack([edges, np.column_stack([np.cos(angles), np.sin(angles)])])

    @cached_property
    def reach(self) -> Array:
        """Return how far (E,) the footprint reaches along each normal, in m."""
        if self.among is not None:
            whole, lines = self.among
            return whole.reach[lines]
        return (self.structure.footprint @ self.normals.T).max(axis=0)

    @cached_property
    def caps(self) -> Caps:
        """Return the caps of the contact area for each normal."""
        if self.among is not None:
            whole, lines = self.among
            return whole.caps.about(lines)
        return caps(self.contact, self.normals)

    def pivot(self, pressing: Array) -> Array:
        """Return the place (…, E) in m along each normal of the line about which it turns.

        ``pressing`` (…, E) is the force N on the ground. On hard ground that is the footprint's
        edge. On ground that yields at q_u it is the centroid of the cap of area N/q_u, which on a
        straight edge lies N/(2 q_u L) inside it (uniform pressure: Meyerhof 1953).
        """
        if self.ground.yield_pressure is None or self.contact.area <= 0.0:
            return np.broadcast_to(self.reach, pressing.shape)
        if pressing.size > _KEPT:
            return self._yielding(pressing, self.ground.yield_pressure)
        key = pressing.shape, pressing.tobytes()
        if key not in self._pivots:
            self._pivots[key] = self._yielding(pressing, self.ground.yield_pressure)
        return self._pivots[key]

    def _yielding(self, pressing: Array, limit: float) -> Array:
        area = np.maximum(pressing, 0.0) / limit
        return self.caps.reach - self.caps.centroid_depth(area)

    @cached_property
    def _pivots(self) -> dict[tuple[tuple[int, ...], bytes], Array]:
        """Return the places found so far: several checks ask for those of the same forces."""
        return {}

    def winds(self, actions: Actions) -> WindMoments:
        """Return what actions do about its lines; of the same actions it is worked out once."""
        known = self._winds.get(id(actions))
        if known is None or known[0] is not actions:
            known = self._winds[id(actions)] = actions, WindMoments.of(actions, self.normals)
        return known[1]

    @cached_property
    def _winds(self) -> dict[int, tuple[Actions, WindMoments]]:
        """Return what was asked of actions so far, with them, so that none takes their place."""
        return {}

    def weight(self, weighing: Weighing | DeadLoad) -> DeadLoad:
        """Return what a weighing of the structure presses; a weight given is itself."""
        if isinstance(weighing, DeadLoad):
            return weighing
        structure = self.structure
        return DeadLoad(np.array(structure.weight(weighing)), structure.steady_centre(weighing))

    def hold(self, weighing: Weighing | DeadLoad, pivot: Array) -> Array:
        """Return the moment (…, E) in N m with which its weight resists turning about ``pivot``.

        W (d cos - z sin) for the slope's worst way round, d from the centre of mass to the line.
        """
        weight = self.weight(weighing)
        arm = pivot - weight.centre[..., :2] @ self.normals.T
        lean = weight.centre[..., 2, None] * sin(self.slope)
        return weight.force[..., None] * (arm * cos(self.slope) - lean)

    def friction_share(self, actions: Actions) -> Array:
        """Return friction's resistance (…, D, C) per unit of pressing force, turning counted.

        A force off the centre of the contact slides and turns the piece at once. Of the same
        actions it is worked out once.
        """
        known = self._shares.get(id(actions))
        if known is None or known[0] is not actions:
            known = self._shares[id(actions)] = actions, self._share_of(actions)
        return known[1]

    def _share_of(self, actions: Actions) -> Array:
        points, shares, centre = self.friction_points
        size = np.hypot(actions.force[..., 0], actions.force[..., 1])
        safe = np.where(size > 0.0, size, 1.0)
        along = actions.force / safe[..., None]
        about_centre = actions.twist - (
            centre[0] * actions.force[..., 1] - centre[1] * actions.force[..., 0]
        )
        arm = np.where(size > 0.0, about_centre / safe, 0.0)
        table = np.column_stack([along.reshape(-1, 2), arm.ravel().round(9)])
        rows, back = np.unique(table, axis=0, return_inverse=True)
        rows = rows.astype(np.float64)
        found = sliding_resistance(points, shares, rows[:, :2], rows[:, 2], self.rubs_evenly)
        return found[back.ravel()].reshape(arm.shape)

    @cached_property
    def _shares(self) -> dict[int, tuple[Actions, Array]]:
        """Return what was asked of actions so far, with the actions."""
        return {}

    @cached_property
    def _rubbing(self) -> list[Quadrature]:
        return quadrature([patch.area for patch in self.structure.patches], finest=0.15)

    @property
    def rubs_evenly(self) -> bool:
        """Return whether all that touches the ground has one coefficient of friction."""
        kinds = {patch.contact for patch in self.structure.patches}
        return len({self.ground.friction[kind].coefficient for kind in kinds}) == 1

    @cached_property
    def friction_points(self) -> tuple[Array, Array, Array]:
        """Return points (P, 2) from the contact's centre, their shares (P,), and the centre (2,).

        A share is the coefficient of friction times the fraction of the pressing force there, the
        pressure taken as even over the contact.
        """
        weights = np.concatenate([q.weights for q in self._rubbing])
        points = np.concatenate([q.points for q in self._rubbing])
        mu = np.concatenate(
            [
                np.full(len(q.weights), self.ground.friction[patch.contact].coefficient)
                for q, patch in zip(self._rubbing, self.structure.patches, strict=True)
            ]
        )
        centre = weights @ points / weights.sum()
        return points - centre, mu * weights / weights.sum(), centre
