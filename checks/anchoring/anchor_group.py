"""Anchors together: how a rigid base shares moment and level force among them.

Turning about the lee edge, a rigid base draws each anchor by its distance from that edge: elastic,
so the farthest reaches its capacity first. Anchors beyond the edge do nothing.
"""

import numpy as np
from numpy.typing import ArrayLike

from ...loads.printed.ranges import not_negative, positive
from ...units.arrays import Array
from . import guys

_BESIDE = 1.0e-6
"""Cosine up to which an anchor stands beside the way of the base, not before it."""

_WAYS = 72
"""So many directions are tried where none is given."""


def anchor_tensions(moment: ArrayLike, distance: ArrayLike, stiffness: ArrayLike = 1.0) -> Array:
    """Return T_i = M k_i d_i/sum(k d2) in N for the anchors, the last axis.

    ``moment`` M (…) in N m is what dead load leaves: factored overturning less factored resisting;
    ``distance`` d (…, anchors) from the lee edge in m; ``stiffness`` k in any one unit. Infinite
    where none can pull. ValueError when moment or stiffness is below 0. Source: statics.
    """
    return guys.guy_tensions(moment, distance, stiffness)


def moment_held(capacity: ArrayLike, distance: ArrayLike, stiffness: ArrayLike = 1.0) -> Array:
    """Return the moment in N m at which the first anchor reaches its ``capacity`` in N.

    M = sum(k d2) min(C_i/(k_i d_i)) over the last axis. The inverse of ``anchor_tensions``, with
    its arguments; 0 where no anchor pulls.
    """
    d = np.maximum(np.asarray(distance, dtype=float), 0.0)
    C, k = not_negative("capacity", capacity), not_negative("stiffness", stiffness)
    pulls = k * d
    with np.errstate(over="ignore"):  # an anchor a hair from the edge never is the first: infinite
        reached = np.where(pulls > 0.0, C / np.where(pulls > 0.0, pulls, 1.0), np.inf)
    weight = (pulls * d).sum(axis=-1)
    least = reached.min(axis=-1)
    return np.asarray(np.where(weight > 0.0, weight * np.where(weight > 0.0, least, 0.0), 0.0))


def left_to_stakes(force: ArrayLike, friction: ArrayLike) -> Array:
    """Return the level force in N that friction does not take, 0 or more; both in N, broadcast."""
    return np.maximum(not_negative("force", force) - not_negative("friction", friction), 0.0)


def bearing_shares(outward: ArrayLike, force: ArrayLike) -> Array:
    """Return the level force (…, n) in N on each of n anchors, of those that the base bears on.

    ``outward`` (n, 2) are unit vectors out of the base where an anchor stands against it, 0 where
    it goes through or is tied on. The base shifts along ``force`` (…, 2) in N and presses on what
    stands before it, by cos a_i, square to its edge: N_i = F cos a_i / sum(cos2). What stands
    behind it, or beside it, does nothing. Infinite where nothing bears.
    Source: statics of a rigid base on springs that only press.
    """
    way, F = np.asarray(outward, dtype=float), np.asarray(force, dtype=float)
    size = np.hypot(F[..., 0], F[..., 1])
    along = F / np.where(size > 0.0, size, 1.0)[..., None]
    every_way = ~way.any(axis=-1)
    cosine = np.where(every_way, 1.0, np.maximum(along @ way.T, 0.0))
    cosine = np.where(cosine > _BESIDE, cosine, 0.0)
    total = (cosine**2).sum(axis=-1, keepdims=True)
    with np.errstate(divide="ignore", invalid="ignore"):
        share = np.where(total > 0.0, cosine / total, np.inf)
        return np.where(size[..., None] > 0.0, size[..., None] * share, 0.0)


def level_held(outward: ArrayLike, capacity: ArrayLike, force: ArrayLike) -> Array:
    """Return the level force (…) in N at which the first anchor reaches its ``capacity`` (n,).

    The inverse of ``bearing_shares``, along ``force`` (…, 2); along a force of nothing the least
    of all directions.
    """
    C, F = not_negative("capacity", capacity), np.asarray(force, dtype=float)

    def along(way: Array) -> Array:
        share = bearing_shares(outward, way)
        with np.errstate(divide="ignore"):
            return np.where(share > 0.0, C / np.where(share > 0.0, share, 1.0), np.inf).min(axis=-1)

    size = np.hypot(F[..., 0], F[..., 1])
    angles = 2.0 * np.pi * np.arange(_WAYS) / _WAYS
    least = float(along(np.column_stack([np.cos(angles), np.sin(angles)])).min())
    unit = np.where(
        size[..., None] > 0.0, F / np.where(size > 0.0, size, 1.0)[..., None], [1.0, 0.0]
    )
    return np.where(size > 0.0, along(unit), least)


def level_shares(
    points: ArrayLike, force: ArrayLike, twist: ArrayLike = 0.0, stiffness: ArrayLike = 1.0
) -> Array:
    """Return the level forces (…, n, 2) in N with which n stakes hold ``force`` and ``twist``.

    ``points`` (n, 2) in plan in m; ``force`` (…, 2) in N through the stakes' centre of stiffness;
    ``twist`` (…) about it in N m, counter-clockwise. The base shifts and turns as one body, all
    elastic; the result acts on the base, against the load. ValueError when a stiffness is not above
    0, or a twist is to be held by stakes that all stand in one point.
    Source: elastic vector analysis of an eccentric fastener group.
    """
    place, F = np.asarray(points, dtype=float), np.asarray(force, dtype=float)
    k = np.broadcast_to(positive("stiffness", stiffness), place.shape[:-1])
    M = np.asarray(twist, dtype=float)
    arm = place - k @ place / k.sum()
    polar = float((k * (arm**2).sum(axis=-1)).sum())
    if polar <= 0.0 and np.any(M != 0.0):
        raise ValueError("twist: stakes in one point hold none")
    shift = F[..., None, :] * (k / k.sum())[:, None]
    across = np.stack([-arm[:, 1], arm[:, 0]], axis=-1)
    turn = (M / polar if polar > 0.0 else 0.0 * M)[..., None, None] * across * k[:, None]
    return -(shift + turn)
