"""Parts that share space: each counts in full, so more than a little is worth a caution."""

from itertools import combinations, pairwise
from math import sqrt

import numpy as np

from ..units.arrays import Array, distinct
from ..units.frozen import ByValue
from .placing import Body
from .sections import section
from .shapes.hulls import Hull
from .structure import Structure

LEAST_FRACTION = 0.02
"""Overlaps of at most this fraction of the smaller part are not told."""

_ROUND = np.cos(np.linspace(0.0, np.pi, 9))
"""Parts of a round's reach at which it is cut: dense toward its ends, where it turns away."""

_APART = 1.0 / 32.0
"""Part of its height by which levels of a piece of many corners stand apart."""

_MANY = 32

_LEVELS = 4
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(_LEVELS)
_CUBIC = 3.5 * _WEIGHTS * (2.5 * _NODES**3 - 1.5 * _NODES)
"""Gives by areas at the nodes how much of the third Legendre polynomial is in them."""

_KEEPS = 1.0e-3
"""Part of the greatest area that may be in it where sections keep their form."""

_HALVINGS = 3


class Overlap(ByValue, frozen=True):
    """Two parts that share space: the volume in m3 and its fraction of the smaller part."""

    first: str
    second: str
    volume: float
    fraction: float


def overlaps(structure: Structure) -> tuple[Overlap, ...]:
    """Return the pairs of parts that share more than 2 % of the smaller one's volume.

    Level sections of both are intersected and integrated over height by Gauss's rule between the
    heights at which either changes its form.
    """
    found: dict[tuple[int, int], float] = {}
    smaller: dict[tuple[int, int], float] = {}
    boxes = [body.extent for body in structure.bodies]
    for i, j in combinations(range(len(structure.bodies)), 2):
        low = np.maximum(boxes[i][0], boxes[j][0])
        high = np.minimum(boxes[i][1], boxes[j][1])
        if (high - low <= 1.0e-6).any():
            continue
        one, other = structure.bodies[i], structure.bodies[j]
        shared = _shared_volume(one, other, float(low[2]), float(high[2]))
        key = (one.part, other.part)
        found[key] = found.get(key, 0.0) + shared
        least = min(one.shape.moments().volume, other.shape.moments().volume)
        smaller[key] = max(smaller.get(key, 0.0), least)
    parts = structure.design.parts
    return tuple(
        Overlap(parts[a].name, parts[b].name, volume, volume / smaller[a, b])
        for (a, b), volume in found.items()
        if smaller[a, b] > 0.0 and volume > LEAST_FRACTION * smaller[a, b]
    )


def _shared_volume(one: Body, other: Body, low: float, high: float) -> float:
    levels = np.clip(np.concatenate([[low, high], _levels(one), _levels(other)]), low, high)
    total = 0.0
    for bottom, top in pairwise(_apart(levels, 1.0e-9)):
        total += _between(one, other, bottom, top, _HALVINGS)
    return total


def _between(one: Body, other: Body, bottom: float, top: float, halvings: int) -> float:
    """Return the volume in m3 that two bodies share between heights; halved where it has to be.

    Sections that keep their form have areas quadratic in height: what is left tells where they
    do not.
    """
    half, middle = 0.5 * (top - bottom), 0.5 * (top + bottom)
    levels = [float(middle + half * node) for node in _NODES]
    areas = np.array([section(one, z).intersection(section(other, z)).area for z in levels])
    if halvings and abs(float(_CUBIC @ areas)) > _KEEPS * float(areas.max()):
        below = _between(one, other, bottom, middle, halvings - 1)
        return below + _between(one, other, middle, top, halvings - 1)
    return float(half * (_WEIGHTS @ areas))


def _levels(body: Body) -> Array:
    hulls = (*body.shape.hulls(), *body.shape.cavities())
    return np.concatenate([each for hull in hulls for each in _of_hull(body, hull)])


def _of_hull(body: Body, hull: Hull) -> list[Array]:
    """Return the heights in m at which the level sections of a hull change their form."""
    found = [body.place(hull.points)[:, 2]]
    if len(hull.points) > _MANY:
        found[0] = _apart(found[0], _APART * float(np.ptp(found[0])))
    for disc in hull.discs:
        level = float(body.rotation[2] @ np.asarray(disc.axis))
        reach = disc.radius * sqrt(max(1.0 - level**2, 0.0))
        found.append(body.place(np.asarray(disc.centre))[2] + reach * _ROUND)
    for ball in hull.spheres:
        found.append(body.place(np.asarray(ball.centre))[2] + ball.radius * _ROUND)
    return found


def _apart(levels: Array, least: float) -> Array:
    """Return levels in order with the first and last, none nearer than ``least`` to another."""
    ordered = distinct(levels)
    kept = [ordered[0]]
    for z in ordered[1:-1]:
        if z - kept[-1] > least and ordered[-1] - z > least:
            kept.append(z)
    return np.array([*kept, *ordered[1:][-1:]])
