"""The edges of convex hulls: what a cut can cross, so that it need not try every pair of points."""

from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from ...units.arrays import Array
from .shape import Disc, Hull, corners, rim

_STRAIGHT = 1.0e-9
"""Discs whose axes differ by less stand in one line."""


@dataclass(frozen=True, eq=False)
class Edges:
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
