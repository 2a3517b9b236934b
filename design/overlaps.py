"""Parts that share space: each counts in full, so more than a little is worth a caution."""

from dataclasses import dataclass
from itertools import combinations, pairwise

import numpy as np

from .placing import Body
from .sections import section
from .shapes.shape import Array, corners
from .structure import Structure

LEAST_FRACTION = 0.02
"""Overlaps of at most this fraction of the smaller part are not told."""

_LEVELS = 4
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(_LEVELS)


@dataclass(frozen=True)
class Overlap:
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
    levels = np.unique(np.clip(np.concatenate([_levels(one), _levels(other)]), low, high))
    total = 0.0
    for bottom, top in pairwise(levels):
        half, middle = 0.5 * (top - bottom), 0.5 * (top + bottom)
        for node, weight in zip(_NODES, _WEIGHTS, strict=True):
            z = float(middle + half * node)
            shared = section(one, z).intersection(section(other, z))
            total += float(half * weight * shared.area)
    return total


def _levels(body: Body) -> Array:
    hulls = (*body.shape.hulls(), *body.shape.cavities())
    return np.concatenate([body.place(corners(hull))[:, 2] for hull in hulls])
