"""Anchors together: how a rigid base shares moment and level force among them.

Turning about the lee edge, a rigid base draws each anchor by its distance from that edge: elastic,
so the farthest reaches its capacity first. Anchors beyond the edge do nothing.
"""

import numpy as np
from numpy.typing import ArrayLike

from ...design.shapes.shape import Array
from ...loads.ranges import not_negative, positive
from . import guys


def tensions(moment: ArrayLike, distance: ArrayLike, stiffness: ArrayLike = 1.0) -> Array:
    """Return T_i = M k_i d_i/sum(k d2) in N for the anchors, the last axis.

    ``moment`` M (…) in N m is what dead load leaves: factored overturning less factored resisting;
    ``distance`` d (…, anchors) from the lee edge in m; ``stiffness`` k in any one unit. Infinite
    where none can pull. ValueError when moment or stiffness is below 0. Source: statics.
    """
    return guys.tensions(moment, distance, stiffness)


def moment_held(capacity: ArrayLike, distance: ArrayLike, stiffness: ArrayLike = 1.0) -> Array:
    """Return the moment in N m at which the first anchor reaches its ``capacity`` in N.

    M = sum(k d2) min(C_i/(k_i d_i)) over the last axis. The inverse of ``tensions``, with its
    arguments; 0 where no anchor pulls.
    """
    d = np.maximum(np.asarray(distance, dtype=float), 0.0)
    C, k = not_negative("capacity", capacity), not_negative("stiffness", stiffness)
    pulls = k * d
    with np.errstate(over="ignore"):  # an anchor a hair from the edge never is the first: infinite
        reached = np.where(pulls > 0.0, C / np.where(pulls > 0.0, pulls, 1.0), np.inf)
    weight = (pulls * d).sum(axis=-1)
    least = reached.min(axis=-1)
    return np.asarray(np.where(weight > 0.0, weight * np.where(weight > 0.0, least, 0.0), 0.0))


def edge_reaction(tension: ArrayLike, weight: ArrayLike, uplift: ArrayLike) -> Array:
    """Return the force in N with which the lee edge presses on the ground: W - U + sum of T.

    ``tension`` (…, anchors); ``weight`` and ``uplift`` (…), all in N, with their factors.
    """
    drawn = not_negative("tension", tension).sum(axis=-1)
    return np.asarray(weight, dtype=float) - np.asarray(uplift, dtype=float) + drawn


def left_to_stakes(force: ArrayLike, friction: ArrayLike) -> Array:
    """Return the level force in N that friction does not take, 0 or more; both in N, broadcast."""
    return np.maximum(not_negative("force", force) - not_negative("friction", friction), 0.0)


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
