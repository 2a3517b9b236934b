"""Sections across a sawn figure: what lies beyond each bends it there, and twists it.

A straight cut from edge to edge leaves a piece that nothing else holds: wind on it has a moment
about the cut and one along it. Only cuts straight across an arm count, narrower than those a little
to either side of square.
"""

from collections.abc import Sequence

import numpy as np

from ...design import plane
from ...design.shapes.cutout import Cutout
from ...units.arrays import Array
from ...units.frozen import ByIdentity

_ROUND = 240
"""So many places round an outline are cut between."""
_MOST = 200
"""Of all cuts that nothing else holds these are measured: those that are asked most for each m."""
_HELD = 1.0e-3


class Sections(ByIdentity, frozen=True):
    """What a wind of 1 Pa asks of sections (n,) of a figure.

    ``width`` in m of wood, ``moment`` in N m about it, ``twist`` in N m in it, ``shear`` in N;
    ``rise`` (n,) the share of its square that its axis goes upward, 1 for a level section;
    ``level`` in m above the foot of its middle.
    """

    width: Array
    moment: Array
    twist: Array
    shear: Array
    rise: Array
    level: Array


def arms_of(board: Cutout, held: Sequence[Array] = ()) -> Sections:
    """Return the sections across the arms of a figure that stands on its lowest edge.

    ``held`` are points (2,) where something props it: what lies beyond a cut has none of them.
    Source: statics.
    """
    ring = _walked(plane.ring_of(board.outline))
    n, low = len(ring), float(ring[:, 1].min())
    fixed = ring[:, 1] <= low + _HELD
    for point in held:
        fixed[int(np.linalg.norm(ring - point, axis=1).argmin())] = True
    # from place i over m places to j, and straight back
    area, first, count = _walks(ring, fixed)
    i, m = np.meshgrid(np.arange(n), np.arange(2, n - 1), indexing="ij")
    j = i + m
    a, b = ring[i], ring[j % n]
    cross = b[..., 0] * a[..., 1] - b[..., 1] * a[..., 0]
    size = area[j] - area[i] + 0.5 * cross
    moved = first[j] - first[i] + (a + b) * (cross / 6.0)[..., None]
    long = np.linalg.norm(b - a, axis=-1)
    aside = np.minimum(np.roll(long, 1, axis=0), np.roll(long, -1, axis=0))
    free = (count[j + 1] - count[i] == 0) & (size > 1.0e-9) & (long <= aside) & (long > _HELD)
    a, b, size, moved, long = a[free], b[free], size[free], moved[free], long[free]
    along = (b - a) / long[:, None]
    out = moved / size[:, None] - 0.5 * (a + b)
    bends = size * np.abs(along[:, 0] * out[:, 1] - along[:, 1] * out[:, 0])
    twists = size * np.abs((along * out).sum(axis=-1))
    most = np.argsort(-(bends + twists) / long)[:_MOST]
    wood = plane.polygon(board.sawn, [np.asarray(hole) for hole in board.holes])
    within = plane.cut_lengths(board.outline, a[most], b[most]) >= long[most] * (1.0 - 1.0e-6)
    most = most[within]
    return Sections(
        width=np.maximum(plane.cut_lengths(wood, a[most], b[most]), _HELD),
        moment=bends[most],
        twist=twists[most],
        shear=size[most],
        rise=along[most, 0] ** 2,
        level=0.5 * (a + b)[most, 1] - low,
    )


def levels_of(board: Cutout, count: int, prop: tuple[float, float, float] | None) -> Sections:
    """Return the twist and shear of ``count`` level sections (n,), evenly apart from the foot up.

    ``prop``: how far along in m, how high above the foot, and how many N for a wind of 1 Pa
    something pushes back. Their moments are a strip's, and 0 here. Source: statics.
    """
    edges: Array = np.linspace(0.0, board.height, count + 1)
    levels = edges[:-1]
    wood = [board.sawn, *(np.asarray(hole) for hole in board.holes)]
    low = float(np.asarray(board.points)[:, 1].min())
    width, moved = _level_cuts(wood, levels + low)
    middle = moved / np.maximum(width, _HELD)
    step = board.height / count
    whole, arm = _level_cuts([np.asarray(board.points)], levels + 0.5 * step + low)
    area, first = (step * np.cumsum(part[::-1])[::-1] for part in (whole, arm))
    twist, shear = first - middle * area, area
    if prop is not None:
        at, up, push = prop
        below = levels < up
        twist = np.where(below, twist - push * (at - middle), twist)
        shear = np.where(below, np.abs(area - push), shear)
    none = np.zeros_like(area)
    return Sections(np.maximum(width, _HELD), none, np.abs(twist), shear, none + 1.0, levels)


def _walked(ring: Array) -> Array:
    """Return places (n, 2) round an outline (k, 2): its corners, and each edge evenly divided."""
    edges = np.roll(ring, -1, axis=0) - ring
    long = np.linalg.norm(edges, axis=1)
    parts = np.array([max(round(_ROUND * each), 1) for each in (long / long.sum()).tolist()])
    which = np.repeat(np.arange(len(ring)), parts)
    nth = np.arange(len(which)) - np.repeat(np.cumsum(parts) - parts, parts)
    return ring[which] + edges[which] * (nth / parts[which])[:, None]


def _walks(ring: Array, fixed: np.ndarray) -> tuple[Array, Array, Array]:
    """Return sums of area (2n + 1,), first moments (2n + 1, 2) and held places, walked twice."""
    here = np.vstack([ring, ring])
    there = np.vstack([here[1:], ring[:1]])
    cross = here[:, 0] * there[:, 1] - there[:, 0] * here[:, 1]
    held = np.concatenate([fixed, fixed]).astype(float)

    def summed(part: Array) -> Array:
        return np.concatenate([np.zeros_like(part[:1]), np.cumsum(part, axis=0)])

    return summed(0.5 * cross), summed((here + there) * cross[:, None] / 6.0), summed(held)


def _level_cuts(rings: Sequence[Array], heights: Array) -> tuple[Array, Array]:
    """Return how much of level lines (n,) lies within outlines, holes among them, and its moment.

    In m, and in m2 about x = 0; places where two edges meet count with the one above.
    """
    width, moved = np.zeros_like(heights), np.zeros_like(heights)
    for k, ring in enumerate(rings):
        (x0, z0), (x1, z1) = ring.T, np.roll(ring, -1, axis=0).T
        up = (z0[:, None] <= heights) & (heights < z1[:, None])
        down = (z1[:, None] <= heights) & (heights < z0[:, None])
        rise = np.where(z1 == z0, 1.0, z1 - z0)[:, None]
        x = x0[:, None] + (heights - z0[:, None]) / rise * (x1 - x0)[:, None]
        sign = down.astype(float) - up  # right sides less left ones, whichever way it is walked
        own, arm = (sign * x).sum(axis=0), (sign * x**2 / 2.0).sum(axis=0)
        turned = np.sign(own) * (1.0 if k == 0 else -1.0)
        width, moved = width + turned * own, moved + turned * arm
    return width, moved
