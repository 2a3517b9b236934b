"""What bounds a convex piece: its edges, its faces and the directions of both."""

from itertools import combinations, pairwise

import numpy as np

from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .hulls import Disc, Hull, corners, rim

_STRAIGHT = 1.0e-9
"""Discs whose axes differ by less stand in one line."""


class Edges(ByIdentity, frozen=True):
    """Lines between ``starts`` (e, 3) and ``ends`` (e, 3) in m, all edges of a hull among them."""

    starts: Array
    ends: Array


def edges_of(hull: Hull) -> Edges:
    """Return the edges of a hull, circles as 72 corners; with some lines inside it, never too few.

    A hull of round and other pieces in no common line is taken as its corners, each to each.
    """
    if hull.spheres or not _in_line(hull.discs):
        return _each_to_each(corners(hull))
    if hull.ends:
        return _between_ends(*np.split(hull.points, 2))
    found = [_each_to_each(hull.points)]
    rims = [rim(disc) for disc in hull.discs]
    found += [Edges(ring, np.roll(ring, -1, axis=0)) for ring in rims]
    found += [Edges(rims[i], rims[j]) for i, j in _neighbours(hull.discs)]
    for point in hull.points:
        found += [Edges(ring, np.broadcast_to(point, ring.shape)) for ring in rims]
    return Edges(np.vstack([one.starts for one in found]), np.vstack([one.ends for one in found]))


def _between_ends(one: Array, other: Array) -> Edges:
    starts = np.vstack([one, other, one])
    return Edges(starts, np.vstack([np.roll(one, -1, axis=0), np.roll(other, -1, axis=0), other]))


def _each_to_each(points: Array) -> Edges:
    first, second = np.triu_indices(len(points), 1)
    return Edges(points[first], points[second])


def _in_line(discs: tuple[Disc, ...]) -> bool:
    """Return whether circles share an axis, so that corners of their rims stand in line."""
    if len(discs) < 2:
        return True
    axis = np.asarray(discs[0].axis)
    along = np.array([disc.centre for disc in discs]) - discs[0].centre
    off = np.linalg.norm(along - np.outer(along @ axis, axis), axis=1)
    turned = np.abs(np.array([disc.axis for disc in discs]) - axis)
    return bool((off < _STRAIGHT).all() and (turned < _STRAIGHT).all())


def _neighbours(discs: tuple[Disc, ...]) -> list[tuple[int, int]]:
    """Return the pairs of circles on one axis that follow one another along their outline."""
    if not discs:
        return []
    axis = np.asarray(discs[0].axis)
    at = np.array([np.asarray(disc.centre) @ axis for disc in discs])
    outline: list[int] = []
    for i in sorted(range(len(discs)), key=lambda i: (at[i], discs[i].radius)):
        while len(outline) > 1 and _inward(*((at[k], discs[k].radius) for k in (*outline[-2:], i))):
            outline.pop()
        outline.append(i)
    return list(pairwise(outline))


def _inward(
    one: tuple[float, float], middle: tuple[float, float], other: tuple[float, float]
) -> bool:
    """Return whether the middle of three (along, radius) lies within the line of the others."""
    (a, r), (b, s), (c, t) = one, middle, other
    return (s - r) * (c - a) <= (t - r) * (b - a)


FACETS = 72
"""Flat faces that stand for a round side, as everywhere corners of a circle."""

ROUND_FROM = 24
"""Corners beyond which a piece without known faces is round: only its greatest reach lies."""

_NONE = np.empty((0, 3))


def faces_of(hull: Hull) -> tuple[Array, Array]:
    """Return the outward normals (p, 3) of a hull's faces, and directions (e, 3) of its edges."""
    if hull.spheres:
        return _NONE, _NONE
    if hull.discs:
        return _round_faces(hull)
    points = hull.points
    half = len(points) // 2
    if hull.ends or _in_two_levels(points):
        return _between(points[:half], points[half:])
    if len(points) > 3 and np.ptp(points[:-1, 2]) <= 0.0:
        apex = np.broadcast_to(points[-1], (len(points) - 1, 3))
        return _between(points[:-1], apex)
    return _of_any(points)


def _in_two_levels(points: Array) -> bool:
    half = len(points) // 2
    if len(points) % 2 or half < 3:
        return False
    return float(np.ptp(points[:half, 2])) == 0.0 == float(np.ptp(points[half:, 2]))


def _between(one: Array, other: Array) -> tuple[Array, Array]:
    """Return faces and edges between two convex outlines (k, 3), corner by corner, and of both."""
    next_one, next_other = np.roll(one, -1, axis=0), np.roll(other, -1, axis=0)
    sides = np.cross(next_other - one, other - next_one)
    ends = [np.cross(ring - ring[0], np.roll(ring, -1, axis=0) - ring[0]) for ring in (one, other)]
    normals = np.vstack([ends[0].sum(axis=0), ends[1].sum(axis=0), sides])
    places = np.vstack([one.mean(axis=0), other.mean(axis=0), 0.5 * (one + next_other)])
    outward = _outward(normals, places, 0.5 * (one.mean(axis=0) + other.mean(axis=0)))
    return outward, _different(np.vstack([next_one - one, next_other - other, other - one]))


def _outward(normals: Array, places: Array, middle: Array) -> Array:
    """Return unit normals that point away from the middle; faces without area are left out."""
    sizes = np.linalg.norm(normals, axis=1)
    kept = sizes > 1.0e-12
    unit = normals[kept] / sizes[kept, None]
    inward = np.einsum("ij,ij->i", unit, places[kept] - middle) < 0.0
    return np.asarray(np.where(inward[:, None], -unit, unit), dtype=np.float64)


def _different(vectors: Array) -> Array:
    """Return the directions (e, 3) of vectors, each once, either way being one."""
    sizes = np.linalg.norm(vectors, axis=1)
    unit = vectors[sizes > 1.0e-9] / sizes[sizes > 1.0e-9, None]
    if not len(unit):
        return _NONE
    alike = np.abs(unit @ unit.T) > 1.0 - 1.0e-9
    return unit[~np.tril(alike, -1).any(axis=1)]


def _round_faces(hull: Hull) -> tuple[Array, Array]:
    """Return the end faces of circles on one axis, and the facets of the sides between them."""
    axis = np.asarray(hull.discs[0].axis)
    first = np.asarray(hull.discs[0].centre)
    rings = [(float((np.asarray(d.centre) - first) @ axis), d.radius) for d in hull.discs]
    rings += [(float((point - first) @ axis), 0.0) for point in hull.points]
    rings.sort()
    found: list[Array] = []
    if rings[0][1] > 0.0:
        found.append(-axis[None])
    if rings[-1][1] > 0.0:
        found.append(axis[None])
    spokes = rim(Disc((0.0, 0.0, 0.0), 1.0, hull.discs[0].axis), FACETS, tangent=False)
    sides = list(pairwise(rings))
    for (low, r), (high, s) in sides if len(sides) < 3 else (sides[0], sides[-1]):
        slant = float(np.hypot(high - low, s - r))
        if slant > 0.0:
            found.append(((high - low) * spokes - (s - r) * axis) / slant)
    return np.vstack(found), axis[None]


def _of_any(points: Array) -> tuple[Array, Array]:
    """Return faces and edges of the hull of a few points, each three tried; of many none."""
    if len(points) > ROUND_FROM or len(points) < 4:
        return _NONE, _NONE
    three = np.array(list(combinations(range(len(points)), 3)), dtype=int)
    a, b, c = (points[three[:, i]] for i in range(3))
    normals = np.cross(b - a, c - a)
    places, middle = (a + b + c) / 3.0, points.mean(axis=0)
    sizes = np.linalg.norm(normals, axis=1)
    outward = _outward(normals, places, middle)
    at = np.einsum("ij,ij->i", outward, places[sizes > 1.0e-12])
    bounds = np.all(outward @ points.T <= at[:, None] + 1.0e-9, axis=1)
    ends = (points[:, None] - points[None]).reshape(-1, 3)
    kept = np.asarray(outward[np.flatnonzero(bounds)], dtype=float)
    return kept, _different(ends)
