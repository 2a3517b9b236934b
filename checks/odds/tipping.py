"""At which pressure many pieces tip that differ in weight alone: by the relation of one check.

Of all winds, and all lines about which a piece may tip, few are ever the first. A table over
weights, worked out once by that same relation, tells for each piece which wind and line it is; the
pressure itself is then worked out anew for these.
"""

from functools import cached_property
from math import cos, sin

import numpy as np
from numpy.typing import NDArray

from ...loads.actions import Actions
from ...units.arrays import Array, distinct
from ...units.frozen import ByIdentity
from ..limits import Stage
from ..stability.standing import DeadLoad, Standing
from ..stability.tipping import tipping_pressures
from ..stability.wind_moments import WindMoments

NODES = 33
"""Weights at which the table is worked out, evenly by their ratio."""

_MARGIN = 0.05
"""What tips at a pressure so much above the least may be the first between two of these weights."""

_LITTLE = 1.0e-6
_ALIKE = 1.0e-9
_ENDLESS = 1.0e12

_Way = tuple[Standing, Actions]
"""A line about which a piece may tip, alone, with one wind or some."""


class Tipping(ByIdentity, frozen=True):
    """One piece in the winds of one stage, for weights between ``light`` and ``heavy`` in N.

    ``centre`` (3,) in m is that about which the centres of mass lie, ``off`` how far at most.
    """

    standing: Standing
    stage: Stage
    light: float
    heavy: float
    centre: Array
    off: float

    def pressures(self, weight: DeadLoad, low: Array, high: Array) -> Array:
        """Return the least pressure (n,) in Pa at which each of many weights (n,) tips.

        Within ``low``..``high`` (n,), as in the check: at ``low`` where it tips before, infinite
        where it does not up to ``high``.
        """
        found = np.full(weight.force.shape, np.inf)
        if not self._ways:
            return found
        first, about, known = self._first(weight)
        before, after = about < low * (1.0 - _MARGIN), about > high * (1.0 + _MARGIN)
        found[known & before] = 0.0
        close = ~(known & (before | after))
        some: list[int] = distinct(first[close]).tolist()
        for k in some:
            which = np.flatnonzero(close & (first == k))
            force, centre = weight.force[which], weight.centre[which]
            each = DeadLoad(force[:, None, None], centre[:, None, None])
            found[which] = self._least(self._ways[k], each)
        return np.where(found <= high, np.maximum(found, low), np.inf)

    def _first(self, weight: DeadLoad) -> tuple[NDArray[np.intp], Array, NDArray[np.bool_]]:
        """Return by which way (n,) each tips first, at about which pressure, by the table.

        And whether the table knows its weight.
        """
        force = np.maximum(weight.force, _LITTLE * self.light)
        at = np.log(force / self._weights[0]) / self._step
        i = np.clip(at.astype(np.intp), 0, NODES - 2)
        part = np.clip(at - i, 0.0, 1.0)[:, None]
        q = self._table[i] * (1.0 - part) + self._table[i + 1] * part
        if self.off > 0.0:
            away = weight.centre - self.centre
            q -= weight.force[:, None] * (away @ self._per_centre) * self._share[i]
        first = q.argmin(axis=1)
        return first, q[np.arange(len(q)), first], (at >= 0.0) & (at <= NODES - 1.0)

    @cached_property
    def _weights(self) -> Array:
        return np.geomspace(self.light * (1.0 - _LITTLE), self.heavy * (1.0 + _LITTLE), NODES)

    @property
    def _step(self) -> float:
        return float(np.log(self._weights[1] / self._weights[0]))

    @cached_property
    def _at_nodes(self) -> DeadLoad:
        centre = np.broadcast_to(self.centre, (NODES, 1, 1, 3))
        return DeadLoad(self._weights[:, None, None], centre)

    def _least(self, way: _Way, weight: DeadLoad) -> Array:
        """Return the least pressure (n,) at which each weight (n, 1, 1) tips one way."""
        q = tipping_pressures(*way, weight)
        return q.reshape(len(q), -1).min(axis=1)

    @cached_property
    def _found(self) -> tuple[tuple[_Way, ...], Array]:
        """Return the ways in which a weight may tip first, with the pressures (NODES, ways)."""
        ways: list[_Way] = []
        columns: list[Array] = []
        for line in range(len(self.standing.normals)):
            about, actions = self._line(line)
            q = tipping_pressures(about, actions, self._at_nodes)
            for row, column in enumerate(q.reshape(NODES, -1).T):
                ways.append((about, actions.some(np.array([row]))))
                columns.append(np.minimum(column, _ENDLESS))
        table = np.stack(columns, axis=1)
        normals = np.vstack([about.normals for about, _ in ways])
        kept = _first_somewhere(table, normals * self.off / self._arm, self.off / self._arm)
        return tuple(ways[k] for k in kept), table[:, kept]

    @property
    def _ways(self) -> tuple[_Way, ...]:
        return self._found[0]

    @property
    def _table(self) -> Array:
        return self._found[1]

    @property
    def _arm(self) -> float:
        """Return the shortest lever arm in m of the weight, on ground that does not give."""
        weight = DeadLoad(np.array(1.0), self.centre)
        return max(float(self.standing.hold(weight, self.standing.reach).min()), _LITTLE)

    def _line(self, line: int) -> _Way:
        """Return a line alone, with the winds that may be the first about it.

        A wind that overturns no more than another wherever the line may lie tips no piece before
        that other does, however heavy it is. A lift moves the line outward as it unloads the
        ground, but what is left of the moment of weight less lift about the line goes with where
        the cap of contact ends, which lies within the footprint: so both ends of it decide.
        """
        about = self.standing.about(np.array([line]))
        ends = np.array([about.reach, about.reach])
        if about.ground.yield_pressure is not None and about.contact.area > 0.0:
            ends[1] -= about.caps.depth[:, -1]
        actions = self.stage.actions
        winds = WindMoments.of(actions, about.normals)
        front, rear = (winds.over(end).ravel() for end in ends)
        return about, actions.some(_undominated(front, rear))

    @cached_property
    def _per_centre(self) -> Array:
        """Return what a metre of the centre of mass takes (3, ways) of the lever arms."""
        slope = self.standing.slope
        normals = np.vstack([about.normals for about, _ in self._ways])
        return np.vstack([normals.T * cos(slope), np.full((1, len(normals)), sin(slope))])

    @cached_property
    def _share(self) -> Array:
        """Return the pressure (NODES, ways) in Pa that a N m of hold is worth, about."""
        weight = DeadLoad(self._weights, self.centre)
        found: list[Array] = []
        for (about, _), q in zip(self._ways, self._table.T, strict=True):
            hold = about.hold(weight, about.pivot(self._weights[:, None]))[:, 0]
            found.append(q / np.maximum(hold, _LITTLE))
        return np.stack(found, axis=1)


def _undominated(first: Array, second: Array) -> NDArray[np.intp]:
    """Return which (k,) have, of two figures (n,), no other that is as great in both."""
    order = np.lexsort((-second, -first))
    best = np.maximum.accumulate(np.append(-np.inf, second[order][:-1]))
    return np.sort(order[second[order] > best])


def _first_somewhere(table: Array, moved: Array, most: float) -> list[int]:
    """Return which ways of a table (NODES, ways) may be the first for a weight and centre.

    A centre that lies elsewhere moves the pressure of a way by up to ``moved`` (ways, 2) of it, all
    of them together by up to ``most``: two ways against each other by how they differ. Of ways that
    are alike, as those of a piece that is alike from several sides, the first counts.
    """
    found: list[int] = []
    least = table.min(axis=1)
    likely = (table < _ENDLESS) & (table <= (least * (1.0 + _MARGIN + 2.0 * most))[:, None])
    order: list[int] = table.sum(axis=0).argsort(kind="stable").tolist()
    for k in order:
        apart = np.linalg.norm(moved[found] - moved[k], axis=1)
        known = (table[:, found] * (1.0 + 2.0 * apart)).min(axis=1, initial=np.inf)
        if (likely[:, k] & (table[:, k] < known * (1.0 - _ALIKE))).any():
            found.append(k)
    return found
