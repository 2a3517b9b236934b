"""How the fasteners of a joint share what it carries: by statics, all alike and elastic.

Two parts are pressed together on a face and held by fasteners that only pull. The part that is
loaded stays plane: it lifts off the face but where it presses, on an edge or a corner; each
fastener is drawn by how far the part has lifted there. Where no face presses, the fasteners alone
hold it, each as a spring.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from ...design.shapes.shape import Array
from ..anchoring.anchor_group import level_shares


@dataclass(frozen=True, eq=False)
class Pulls:
    """Tension (…, n) in N of each fastener, and the ``pressing`` force (…) in N where it presses.

    ``press_at`` (…, 2) in m is where in the plane.
    """

    tension: Array
    pressing: Array
    press_at: Array


def pulls(points: ArrayLike, corners: ArrayLike, pull: ArrayLike, moment: ArrayLike) -> Pulls:
    """Return the pulls of n fasteners at ``points`` (n, 2) within a face with ``corners`` (k, 2).

    The face is convex, its corners counter-clockwise, lengths in m. ``pull`` N (…) in N draws the
    parts apart (pressing below 0), ``moment`` (…, 2) in N m is its first moment: pull times place,
    shear times height counted with it. Equilibrium: sum T = N + C, sum T p = moment + C c, with C
    at c on the face. Lifted: w(x) = 0 at an edge or corner, above 0 elsewhere, T_i = w(p_i). A
    fastener outside the face is not drawn where the part sinks there. ValueError where there is no
    fastener or the face has fewer than three corners.
    Source: statics; elastic fasteners of one stiffness, a rigid part on a rigid face.
    """
    p, v = np.asarray(points, dtype=float), np.asarray(corners, dtype=float)
    if len(p) == 0 or len(v) < 3:
        raise ValueError("pulls: expected a fastener or more, and a face of three corners or more")
    shape = np.shape(pull)
    N = np.asarray(pull, dtype=float).reshape(-1)
    L = np.asarray(moment, dtype=float).reshape(-1, 2)
    best = _resting(N, L, v)
    for found in (_about_edges(p, v, N, L), _about_corners(p, v, N, L), _lifted_off(p, v, N, L)):
        best = best.or_better(found)
    T = np.maximum(best.start[:, None] + best.slope @ p.T, 0.0)
    pressing = T.sum(axis=-1) - N
    safe = np.where(np.abs(pressing) > 0.0, pressing, 1.0)
    at = np.where(np.abs(pressing)[:, None] > 0.0, (T @ p - L) / safe[:, None], 0.0)
    return Pulls(T.reshape(*shape, len(p)), pressing.reshape(shape), at.reshape(*shape, 2))


def shares(points: ArrayLike, force: ArrayLike, twist: ArrayLike) -> Array:
    """Return the forces (…, n, 2) in N along the face that n fasteners take.

    ``force`` (…, 2) in N at the origin and ``twist`` (…) about it in N m, counter-clockwise; the
    group turns about its centroid, each taking by its distance (polar moment). Where all stand in
    one point they take no twist: infinite where there is one.
    Source: elastic vector analysis of an eccentric fastener group.
    """
    p, F = np.asarray(points, dtype=float), np.asarray(force, dtype=float)
    centre = p.mean(axis=0)
    about = np.asarray(twist, dtype=float) - (centre[0] * F[..., 1] - centre[1] * F[..., 0])
    if float(((p - centre) ** 2).sum()) > _ONE_POINT**2:
        return -level_shares(p, F, about)
    even = -level_shares(p, F)
    arm = np.abs(about) > _NO_TWIST * np.hypot(F[..., 0], F[..., 1])
    return np.where(arm[..., None, None], np.inf, even)


def hung(points: ArrayLike, force: ArrayLike, moment: ArrayLike) -> Array:
    """Return the forces (…, n, 3) in N that n fasteners at ``points`` (n, 3) take, none pressing.

    ``force`` (…, 3) in N and ``moment`` (…, 3) in N m about the origin. Each is a spring alike all
    ways, the part rigid. What they cannot hold, such as a turn about the line on which all stand,
    makes all infinite. Source: statics; elastic, as ``shares`` in three dimensions.
    """
    p = np.asarray(points, dtype=float)
    F, M = np.asarray(force, dtype=float), np.asarray(moment, dtype=float)
    centre = p.mean(axis=0)
    arm = p - centre
    about = M - np.cross(np.broadcast_to(centre, F.shape), F)
    inertia = (arm**2).sum() * np.eye(3) - arm.T @ arm
    turn = about @ _inverse(inertia)
    found = F[..., None, :] / len(p) + np.cross(turn[..., None, :], arm)
    missing = np.linalg.norm(about - turn @ inertia, axis=-1)
    unheld = missing > _NO_TWIST * np.linalg.norm(F, axis=-1) + 1.0e-9
    return np.where(unheld[..., None, None], np.inf, found)


_ONE_POINT = 1.0e-4
_NO_TWIST = 2.0e-3
"""Arm (m) of a force below which it does not count as turning a single fastener."""


@dataclass(frozen=True, eq=False)
class _Lift:
    """How far the part lifts, start + slope x (m,), (m, 2), and by how much that is impossible."""

    start: Array
    slope: Array
    wrong: Array

    def or_better(self, other: "_Lift") -> "_Lift":
        """Return for each load the one that is nearer to possible; this one where alike."""
        better = other.wrong < self.wrong - 1.0e-12
        return _Lift(
            np.where(better, other.start, self.start),
            np.where(better[:, None], other.slope, self.slope),
            np.where(better, other.wrong, self.wrong),
        )


def _resting(N: Array, L: Array, v: Array) -> _Lift:
    """Lift nothing: it is pressed down within the face."""
    normals, reach = _edges(v)
    over = (N[:, None] * reach - L @ normals.T).max(axis=1)
    none = np.zeros(len(N))
    return _Lift(none, np.zeros((len(N), 2)), np.maximum(over, 0.0))


def _about_edges(p: Array, v: Array, N: Array, L: Array) -> _Lift:
    """Turn about an edge: T_i = m a_i / sum a^2, pressing between the edge's ends."""
    normals, reach = _edges(v)
    a = np.maximum(reach[:, None] - normals @ p.T, 0.0)
    weight = (a**2).sum(axis=1)
    m = N[:, None] * reach - L @ normals.T
    turns = weight > 0.0
    lift = np.where(turns, m / np.where(turns, weight, 1.0), 0.0)
    C = lift * a.sum(axis=1) - N[:, None]
    along = np.stack([-normals[:, 1], normals[:, 0]], axis=-1)
    first = lift * (a * (along @ p.T)).sum(axis=1) - L @ along.T
    low, high = (v * along).sum(axis=1), (np.roll(v, -1, axis=0) * along).sum(axis=1)
    beyond = np.maximum(first - C * high, C * low - first)
    wrong = np.maximum.reduce([beyond, -m, -C * (high - low), np.zeros(m.shape)])
    wrong = np.where(turns, wrong, np.maximum(m, wrong))
    return _least(wrong, lift * reach, -lift[..., None] * normals)


def _about_corners(p: Array, v: Array, N: Array, L: Array) -> _Lift:
    """Turn about a corner: sum T (v - p) = N v - L, lifting toward both neighbours."""
    arm = v[:, None, :] - p
    A = np.einsum("kni,knj->kij", arm, arm)
    sound = np.linalg.det(A) > 1.0e-9 * np.einsum("kii->k", A) ** 2
    inverse = np.linalg.inv(np.where(sound[:, None, None], A, np.eye(2)))
    m = N[:, None, None] * v - L[:, None, :]
    g = np.einsum("kij,mkj->mki", inverse, m)
    sides = [v - np.roll(v, step, axis=0) for step in (1, -1)]
    size = np.einsum("kii->k", A)
    sinks = [-(g * side).sum(axis=-1) * np.sqrt(size) for side in sides]
    C = np.einsum("mki,ki->mk", g, arm.sum(axis=1)) - N[:, None]
    reach = np.linalg.norm(sides[0], axis=-1)
    wrong = np.maximum.reduce([*sinks, -C * reach, np.zeros(C.shape)])
    wrong = np.where(sound, wrong, np.inf)
    return _least(wrong, (g * v).sum(axis=-1), -g)


def _lifted_off(p: Array, v: Array, N: Array, L: Array) -> _Lift:
    """Lift off the face everywhere: the fasteners alone hold it."""
    centre = p.mean(axis=0)
    arm = p - centre
    about = L - N[:, None] * centre
    A = arm.T @ arm
    slope = about @ _inverse(A)
    start = N / len(p) - slope @ centre
    left = np.linalg.norm(about - slope @ A, axis=-1)
    size = np.linalg.norm(v - centre, axis=-1).max()
    sinks = -(start[:, None] + slope @ v.T).min(axis=1) * size
    return _Lift(start, slope, np.maximum.reduce([left, sinks, np.zeros(len(N))]))


def _least(wrong: Array, start: Array, slope: Array) -> _Lift:
    best = wrong.argmin(axis=1)[:, None]
    return _Lift(
        np.take_along_axis(start, best, axis=1)[:, 0],
        np.take_along_axis(slope, best[..., None], axis=1)[:, 0],
        np.take_along_axis(wrong, best, axis=1)[:, 0],
    )


def _inverse(matrix: Array) -> Array:
    """Return the inverse of a matrix, of one that turns nothing about an axis without that axis."""
    return np.asarray(np.linalg.pinv(matrix, rcond=1.0e-6), dtype=float)


def _edges(v: Array) -> tuple[Array, Array]:
    """Return outward unit normals (k, 2) of the edges and how far (k,) each lies along its own."""
    along = np.roll(v, -1, axis=0) - v
    along /= np.linalg.norm(along, axis=1)[:, None]
    normals = np.column_stack([along[:, 1], -along[:, 0]])
    return normals, (normals * v).sum(axis=1)
