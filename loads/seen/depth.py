"""How deep bodies lie along the wind, and where they stand close behind one another."""

from collections.abc import Callable, Sequence
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from ...design import plane
from ...design.placing import Body
from ...design.plane import Polygons
from ...design.shapes.edges import FACETS, faces_of
from ...design.shapes.hulls import Disc, Hull, rim
from ...design.shapes.shape import Shape
from ...units.arrays import Array
from ...units.frozen import ByIdentity, kept_with

FLUSH = 1.0e-9
"""Gaps (m) that differ less are one; sizes below it are none."""

EVERY = 3
"""Of the 72 facets of round sides every third: to 1 % of the radius."""

DirectionIndices = NDArray[np.int_]
"""Places among the directions."""

GRAZING = 1.0e-6
"""Cosine off a face below which the wind runs along it: it bounds no line."""

MOST_CUTS = 200
"""Cuts after which a region is taken as it is: more than both bodies have faces."""

_NO_BOUND = np.array([0.0, 0.0, np.inf])
"""The plane of a face along which the wind runs: a line ends there at infinity."""

_AROUND = np.vstack(
    [rim(Disc((0.0, 0.0, up), 1.0), 24, tangent=False) for up in (-2.0, -0.7, 0.0, 0.7, 2.0)]
)
"""Ways in which a round piece without flat faces is touched."""


class _Bounds(ByIdentity, frozen=True):
    """Planes round a convex body: ``normals`` (F, 3) outward, and how far it ``reach`` (F,), m."""

    normals: Array
    reach: Array


@kept_with
def _bounds_of(body: Body) -> _Bounds:
    """Return the planes of a body's faces where it stands, filled; round sides as 24 of them."""
    own = _own_normals(body.shape)
    normals = own @ body.rotation.T
    return _Bounds(normals, reach(body, normals))


def reach(body: Body, ways: Array) -> Array:
    """Return how far (n,) in m a body reaches along unit vectors (n, 3)."""
    own, away = ways @ body.rotation, ways @ body.origin
    found = np.full(len(ways), -np.inf)
    for hull in body.shape.hulls():
        if len(hull.points):
            found = np.maximum(found, (own @ hull.points.T).max(axis=1))
        for disc in hull.discs:
            across = np.sqrt(np.maximum(1.0 - (own @ np.asarray(disc.axis)) ** 2, 0.0))
            found = np.maximum(found, own @ np.asarray(disc.centre) + disc.radius * across)
        for ball in hull.spheres:
            found = np.maximum(found, own @ np.asarray(ball.centre) + ball.radius)
    return found + away


def faces_look(bodies: Sequence[Body]) -> Array:
    """Return the ways (n, 3) in which faces of bodies look, those that look alike or away once."""
    every = np.vstack([_bounds_of(body).normals for body in bodies])
    rows = np.round(every, 9)
    first = rows[np.arange(len(rows)), (rows != 0.0).argmax(axis=1)]
    _, one = np.unique(rows * np.sign(first)[:, None] + 0.0, axis=0, return_index=True)
    return every[one]


def apart(one: Body, other: Body) -> float:
    """Return how far in m two bodies stand apart at least, by the ways in which their faces look.

    0 or less where no face parts them.
    """
    normals = np.vstack([_bounds_of(one).normals, -_bounds_of(other).normals])
    return float((-reach(other, -normals) - reach(one, normals)).max())


class Depths(ByIdentity, frozen=True):
    """Where a convex body begins and ends along the wind: the greatest and the least of planes.

    ``begins`` and ``ends`` (D, F, 3) are a, b and c of each face's a x + b up + c in m, with x
    across the wind and the direction's own; a face that bounds no line holds -inf or inf.
    """

    begins: Array
    ends: Array


def depths(body: Body, wind: Array, across: Array) -> Depths:
    """Return where a body lies on the lines of the wind from all directions.

    ``wind`` (D, 2) is the way in which it blows and ``across`` (D, 2) that of x.
    """
    bounds = _bounds_of(body)
    off = wind @ bounds.normals[:, :2].T
    side = across @ bounds.normals[:, :2].T
    up, reaches = (
        np.broadcast_to(each, off.shape) for each in (bounds.normals[:, 2], bounds.reach)
    )
    slanting = np.abs(off) > GRAZING
    planes = np.stack([-side, -up, reaches], axis=-1) / np.where(slanting, off, 1.0)[..., None]
    return Depths(
        np.where((slanting & (off < 0.0))[..., None], planes, -_NO_BOUND),
        np.where((slanting & (off > 0.0))[..., None], planes, _NO_BOUND),
    )


def without_clear_gap(
    regions: Array,
    ways: DirectionIndices,
    two: tuple[Depths, Depths],
    least: tuple[Array, Array],
    spend: Callable[[int], None],
) -> list[Array]:
    """Return the corners (k, 2) of what of each convex region (m, k, 2) has no clear gap.

    ``ways`` (m,) are the directions, ``two`` the bodies and ``least`` (m,) the gaps in m that are
    none behind the one and behind the other. The gap is convex over a region, since both bodies
    are: cut off is what lies beyond its worst corner's plane, until no corner is left. Only the
    corners that a cut makes are looked at anew. ``spend`` is told how many regions are cut, each
    time.
    """
    one, other = two
    found: list[Array] = [np.zeros((0, 2))] * len(ways)
    open_ = np.arange(len(ways))
    front = _Gap(other.begins[ways], one.ends[ways], least[0])
    back = _Gap(one.begins[ways], other.ends[ways], least[1])
    gaps = np.stack([front.at(regions), back.at(regions)], axis=-1)
    for _ in range(MOST_CUTS):
        each, corner = np.arange(len(open_)), gaps.max(axis=2).argmax(axis=1)
        worst = gaps[each, corner]
        clear = worst.max(axis=1) > FLUSH
        for n in np.flatnonzero(~clear).tolist():
            found[open_[n]] = regions[n]
        ahead, at = worst[:, 0] >= worst[:, 1], regions[each, corner]
        planes = np.where(ahead[:, None], front.planes(at), back.planes(at))
        above = regions @ planes[:, :2, None] + planes[:, None, 2:]
        left = clear & (above <= 0.0).any(axis=(1, 2))
        if not left.any():
            break
        spend(int(left.sum()))
        if not left.all():
            open_, front, back = open_[left], front.some(left), back.some(left)
        regions, gaps = _cut(regions[left], gaps[left], above[left, :, 0], (front, back))
    return found


class _Gap(ByIdentity, frozen=True):
    """The gap in m between what ends and what begins behind it, beyond what is none.

    ``begins`` (m, F, 3) and ``ends`` (m, G, 3) are planes as in ``Depths``, ``none`` (m,) in m.
    """

    begins: Array
    ends: Array
    none: Array

    def at(self, corners: Array) -> Array:
        """Return the gap (m, k) in m at corners (m, k, 2)."""
        starts, stops = (
            corners @ planes[..., :2].swapaxes(1, 2) + planes[:, None, :, 2]
            for planes in (self.begins, self.ends)
        )
        return starts.max(axis=2) - stops.min(axis=2) - self.none[:, None]

    def planes(self, corner: Array) -> Array:
        """Return the gap's plane (m, 3) at one corner (m, 2) of each."""
        each = np.arange(len(corner))
        starts, stops = (
            (planes[..., :2] @ corner[:, :, None])[..., 0] + planes[..., 2]
            for planes in (self.begins, self.ends)
        )
        found = self.begins[each, starts.argmax(axis=1)] - self.ends[each, stops.argmin(axis=1)]
        found[:, 2] -= self.none
        return found

    def some(self, which: NDArray[np.bool_]) -> "_Gap":
        """Return the gap of some of the regions."""
        return _Gap(self.begins[which], self.ends[which], self.none[which])


def _cut(regions: Array, gaps: Array, above: Array, both: tuple[_Gap, _Gap]) -> tuple[Array, Array]:
    """Return what of convex regions (m, k, 2) lies where ``above`` (m, k) is 0 or less.

    And the gaps (m, k, 2), front and back, at its corners. Something is left of each; corners are
    repeated to fill the array.
    """
    ahead, after = np.roll(regions, -1, axis=1), np.roll(above, -1, axis=1)
    crosses = np.not_equal(above > 0.0, after > 0.0)
    part = np.divide(above, above - after, out=np.zeros_like(above), where=crosses)
    made = regions + part[..., None] * (ahead - regions)
    few = np.argsort(~crosses, axis=1, kind="stable")[:, : crosses.sum(axis=1).max(), None]
    fresh = np.take_along_axis(made, few, axis=1)
    new = np.zeros_like(gaps)
    np.put_along_axis(new, few, np.stack([gap.at(fresh) for gap in both], axis=-1), axis=1)
    kept = np.stack([above <= 0.0, crosses], axis=2).reshape(len(regions), -1)
    order = np.argsort(~kept, axis=1, kind="stable")[:, : kept.sum(axis=1).max()]
    order = np.where(np.take_along_axis(kept, order, axis=1), order, order[:, :1])[..., None]
    found, there = (
        np.stack(each, axis=2).reshape(len(regions), -1, 2)
        for each in ((regions, made), (gaps, new))
    )
    return np.take_along_axis(found, order, axis=1), np.take_along_axis(there, order, axis=1)


def least_widths(outlines: Polygons) -> Array:
    """Return the lesser width (m,) in m of outlines: the narrowest gap that each passes through."""
    corners, owner = plane.corners_of(plane.hulls_of(outlines))
    count = np.bincount(owner, minlength=len(outlines))
    place = np.arange(len(owner)) - np.repeat(np.cumsum(count) - count, count)
    filled = np.full((len(outlines), int(count.max()), 2), np.nan)
    filled[owner, place] = corners
    filled = np.where(np.isnan(filled), filled[:, :1], filled)
    edges = np.roll(filled, -1, axis=1) - filled
    length = np.hypot(edges[..., 0], edges[..., 1])
    square = np.stack([-edges[..., 1], edges[..., 0]], axis=-1)
    square = square / np.where(length > FLUSH, length, 1.0)[..., None]
    width = np.ptp(np.einsum("mkc,mec->mke", filled, square), axis=1)
    return np.where(length > FLUSH, width, np.inf).min(axis=1)


@lru_cache(maxsize=256)
def _own_normals(shape: Shape) -> Array:
    """Return the outward normals (F, 3) of a shape's flat faces and facets, each once."""
    found = [_normals(hull) for hull in shape.hulls()]
    if not found:
        return np.empty((0, 3))
    return np.array(sorted({tuple(row) for row in np.round(np.vstack(found), 12).tolist()}))


def _normals(hull: Hull) -> Array:
    known, _ = faces_of(hull)
    if not len(known):
        return _AROUND / np.linalg.norm(_AROUND, axis=1, keepdims=True)
    ends = len(known) % FACETS if hull.discs else len(known)
    return np.vstack([known[:ends], known[ends::EVERY]])
