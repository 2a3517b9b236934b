"""A first estimate of what would hold a piece: stakes, weight laid low, a wider foot."""

from math import cos, sin

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...statics.contacts.fit import HEAD_REACH
from ...statics.contacts.holds_down import feet_apart
from ...units import GRAVITY
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from .standing import Standing
from .wind_moments import WindMoments

MOST_STAKES = 6
_HALVINGS = 50


class Stakes(ByIdentity, frozen=True):
    """Anchors at ``points`` (n, 2) in m: what each must hold straight up and sideways, N.

    Stakes where the ground takes them, bolts into a slab.
    """

    points: Array
    places: str
    pull: float
    sideways: float


class Remedies(ByValue, frozen=True):
    """What would make it pass, each alone, with the factors of the site's basis.

    ``ballast`` in kg at the middle of the foot, level with the ground; ``base_width`` the foot's
    least width in m that would not tip (its own weight not counted), None where none would, and
    whether it would then ``base_slides`` still. Stakes end sliding by what they hold sideways.
    """

    stakes: Stakes
    ballast: float
    base_width: float | None
    base_slides: bool


NOTHING_TO_HOLD = Remedies(Stakes(np.empty((0, 2)), "", 0.0, 0.0), 0.0, None, False)
"""Of a piece that posts in the ground carry: neither weight nor stakes nor a foot is its remedy."""


def remedies(standing: Standing, actions: Actions, factors: Factors, slides: bool) -> Remedies:
    """Return what would hold the piece in the given gusts, directions and cases (Q, D, C)."""
    worst, _ = standing.winds(actions).worst_by_line(standing.reach, factors)
    share = factors.friction * standing.friction_share(actions)
    stakes = _stakes(standing, actions, factors, worst, share)
    width = _base_width(standing, factors, worst)
    return Remedies(
        stakes=stakes,
        ballast=_ballast(standing, actions, factors, worst, share),
        base_width=width,
        base_slides=slides,
    )


def _stakes(
    standing: Standing, actions: Actions, factors: Factors, worst: WindMoments, share: Array
) -> Stakes:
    points, places = feet_apart(standing.structure), "foot"
    if not len(points):
        points, places = stake_points(standing.structure.footprint, standing.contact)
    weight = factors.helping * standing.structure.weight("light")
    pivot = standing.pivot(weight - worst.uplift)
    net = worst.over(pivot) - factors.helping * standing.hold("light", pivot)
    distance = np.maximum(pivot[:, None, :] - (points @ standing.normals.T)[None], 0.0)
    farthest = distance.max(axis=1) / np.maximum((distance**2).sum(axis=1), 1.0e-12)
    pull = float(np.maximum(net * farthest, 0.0).max())
    sideways = _unheld(standing, actions, factors, share, 0.0) / len(points)
    return Stakes(points, places, pull, sideways)


def stake_points(footprint: Array, wood: BaseGeometry | None = None) -> tuple[Array, str]:
    """Return where stakes go (n, 2) and in words: each corner, or the middle of each second side.

    More than six sides' middles are thinned evenly to at most six, a round foot to four. Where no
    ``wood`` touches the ground at a middle (legs), the corners.
    """
    count = len(footprint)
    middles = 0.5 * (footprint + np.roll(footprint, -1, axis=0))
    if count <= 4 or (count <= 2 * MOST_STAKES and not on_wood(middles[::2], wood)):
        return footprint, "corner"
    if count > 2 * MOST_STAKES:
        return middles[:: count // 4][:4], "quarter"
    return middles[::2], "second side"


def on_wood(points: Array, wood: BaseGeometry | None) -> bool:
    """Return whether what is driven at each point (n, 2) stands against what touches the ground."""
    return wood is None or all(plane.distance(point, wood) <= HEAD_REACH for point in points)


def _unheld(
    standing: Standing, actions: Actions, factors: Factors, share: Array, ballast: float
) -> float:
    """Return the most level force in N that friction does not take, with ``ballast`` N added."""
    size = np.hypot(actions.force[..., 0], actions.force[..., 1])
    weight = standing.structure.weight("light") + ballast
    rest = [
        factors.wind * size
        + dead * weight * sin(standing.slope)
        - share
        * np.maximum(dead * weight * cos(standing.slope) - factors.wind * actions.uplift, 0.0)
        for dead in factors.sets
    ]
    return max(float(np.max(rest)), 0.0)


def _ballast(
    standing: Standing, actions: Actions, factors: Factors, worst: WindMoments, share: Array
) -> float:
    """Return the least weight in kg, low in the middle of the foot, that ends tipping and sliding.

    0 where none is needed, infinite where the slope makes added weight no help.
    """
    centre = standing.structure.footprint.mean(axis=0)
    own = standing.structure.weight("light")

    def stands(added: float) -> bool:
        pressing = factors.helping * (own + added) - worst.uplift
        pivot = standing.pivot(pressing)
        arm = (pivot - standing.normals @ centre) * cos(standing.slope)
        hold = standing.hold("light", pivot) + added * arm
        tips = worst.over(pivot) > factors.helping * hold
        return not tips.any() and _unheld(standing, actions, factors, share, added) <= 0.0

    if stands(0.0):
        return 0.0
    high = max(own, 1.0)
    while not stands(high):
        high *= 2.0
        if high > 1.0e7:
            return float("inf")
    low = 0.0
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if stands(middle) else (middle, high)
        if high - low < 1.0e-3 * high:
            break
    return high / GRAVITY


def _base_width(standing: Standing, factors: Factors, worst: WindMoments) -> float | None:
    """Return the least width in m of a like foot that would not tip, its own weight not counted."""
    weight = factors.helping * standing.structure.weight("light")
    centre = standing.structure.centre_of_mass("light")
    pivot = standing.pivot(weight - worst.uplift)
    arm = pivot - standing.normals @ centre[:2]
    lean = centre[2] * sin(standing.slope)
    spare = weight * cos(standing.slope) - worst.uplift
    if (spare <= 0.0).any() or (arm <= 0.0).any():
        return None
    still = worst.tilting - worst.lifted + worst.uplift * (pivot - arm) + weight * lean
    needed = np.maximum(still / spare, 0.0)
    growth = float((needed / arm).max())
    return growth * least_width(standing.structure.footprint)


def least_width(footprint: Array) -> float:
    """Return the least width in m of a convex polygon (k, 2), across one of its edges."""
    edge = np.roll(footprint, -1, axis=0) - footprint
    normals = np.column_stack([edge[:, 1], -edge[:, 0]]) / np.linalg.norm(edge, axis=1)[:, None]
    along = footprint @ normals.T
    return float((along.max(axis=0) - along.min(axis=0)).min())
