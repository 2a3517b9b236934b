"""Where two bodies meet: the face that they share, and which way one leaves the other."""

from collections.abc import Callable, Iterator
from functools import cached_property

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from .bed import cells
from .fit import FIT
from .surfaces import EXACT_LENGTH, ConvexPiece, Surfaces, cut_of, outline, surfaces_of

_LEAST = 1.0e-6
"""Area (m2) below which two faces touch in a line or a point only."""

_NARROW = 1.0e-4
"""Width (m) below which what two faces share is a line."""

_REACHES = FIT + 1.0e-9
"""The fit is inclusive, whatever the last digit of a sum is."""

_LEVEL = 1.0 - 1.0e-9
_MOST, _MOST_DEEP = 6, 24
"""So many planes are tried of two pieces that touch, and of two that lie within each other."""


class Face(ByIdentity, frozen=True):
    """Where two bodies meet: ``area`` in a plane (m), with ``origin`` and axes (3,) on the site.

    ``area`` is a polygon, or a segment or a point where they meet in no more. ``leaves`` is the
    unit vector in which the one body leaves the other; ``right`` and ``up`` are the axes of the
    plane: right x up = leaves. ``deep`` is how far in m they lie within each other, 0 where they
    touch within the fit.
    """

    area: BaseGeometry
    origin: Array
    right: Array
    up: Array
    leaves: Array
    deep: float = 0.0

    def on_site(self, points: Array) -> Array:
        """Return points (…, 2) of the plane on the site (…, 3)."""
        return self.origin + points[..., :1] * self.right + points[..., 1:] * self.up

    def in_plane(self, points: Array) -> Array:
        """Return points (…, 3) of the site in the plane (…, 2)."""
        off = points - self.origin
        return np.stack([off @ self.right, off @ self.up], axis=-1)

    def bed(self, rows: int) -> tuple[Array, Array]:
        """Return points (n, 3) over the face and the area (n,) in m2 for which each stands."""
        known = self._beds
        if rows not in known:
            found = cells(self.area, rows)
            known[rows] = self.on_site(found.points), found.area
        return known[rows]

    @cached_property
    def _beds(self) -> dict[int, tuple[Array, Array]]:
        return {}

    @property
    def is_level(self) -> bool:
        """Return whether one body stands on, or hangs under, the other."""
        return abs(float(self.leaves[2])) > 0.5

    def widened(self, by: float) -> "Face":
        """Return the face itself, or of a segment or point a strip or spot ``by`` m round it."""
        if self.area.area > 0.0:
            return self
        return replace(self, area=self.area.buffer(by, cap_style="square"))

    @property
    def in_plan(self) -> BaseGeometry:
        """Return the region as seen from above, on the site (m); of an upright one a line."""
        (a, d), (b, e) = self.right[:2].tolist(), self.up[:2].tolist()
        x, y = self.origin[:2].tolist()
        return affinity.affine_transform(self.area, [a, b, d, e, x, y])

    @property
    def middle(self) -> Array:
        """Return the middle (3,) of where they meet, on the site."""
        return self.on_site(plane.middle(self.area))


def meeting(of: Body, to: Body, bridged: bool = False) -> Face | None:
    """Return the face on which body ``of`` meets body ``to``; None where they do not.

    They meet where they lie within the fit, 3.2 mm, of each other or overlap. A level face stands
    before others, an area before a segment, a segment before a point; what has gone deep into the
    other meets it where the one's face cuts the other. ``bridged``: blocks or a flange bridge what
    is hollow, so the walls of the one may meet within the outline of the other.
    """
    if not boxes_near(np.array(of.extent), np.array(to.extent)):
        return None
    return faces_met(surfaces_of(of), surfaces_of(to), bridged)


def faces_met(of: Surfaces, to: Surfaces, bridged: bool = False) -> Face | None:
    """Return where two bodies meet, by their surfaces; as ``meeting``."""
    if not boxes_near(of.box, to.box):
        return None
    found: Face | None = None
    for face in _faces(of, to):
        if face.area.area > 0.0 and abs(face.leaves[2]) > _LEVEL and face.deep <= 0.0:
            return face
        if found is None or _rank(face) > _rank(found):
            found = face
    if bridged and (found is None or found.area.area <= 0.0):
        return _within_outline(of, to) or found
    return found


def boxes_near(one: Array, other: Array, fit: float = FIT) -> NDArray[np.bool_]:
    """Return whether upright boxes (2, …, 3) lie within a distance of each other on every axis."""
    apart = np.maximum(one[0] - other[1], other[0] - one[1])
    return np.asarray((apart <= fit + 1.0e-9).all(axis=-1))


def gap(of: Body, to: Body) -> float:
    """Return the greatest clear distance in m between the upright boxes round two bodies."""
    low, high = of.extent
    other_low, other_high = to.extent
    return float(np.maximum(np.maximum(low - other_high, other_low - high), 0.0).max())


def axes_of(leaves: Array) -> tuple[Array, Array]:
    """Return the axes ``right`` and ``up`` (3,) of the plane that a unit vector (3,) leaves.

    Of a level plane x, and y as seen from where it leaves; of others the level one to the right as
    one looks at it, and up.
    """
    if abs(float(leaves[2])) > _LEVEL:
        return np.array([1.0, 0.0, 0.0]), np.array([0.0, float(np.sign(leaves[2])), 0.0])
    right = np.array([-leaves[1], leaves[0], 0.0]) / float(np.hypot(leaves[0], leaves[1]))
    return right, np.cross(leaves, right)


def point_face(at: Array, leaves: Array) -> Face:
    """Return a face that is one point (3,) of the site."""
    right, up = axes_of(leaves)
    return Face(shapely.Point(0.0, 0.0), at, right, up, leaves)


def _rank(face: Face) -> tuple[int, float]:
    """Return which of two faces counts: areas first, touching before deep ones, the greater one."""
    if face.area.area > 0.0:
        return (3 if face.deep <= 0.0 else 2), face.area.area
    return (1 if face.area.length > 0.0 else 0), face.area.length


def _faces(of: Surfaces, to: Surfaces) -> Iterator[Face]:
    """Yield the places at which two bodies meet, one for each plane."""
    hollow = bool(of.cavities or to.cavities)
    for p in of.hulls:
        for q in to.hulls:
            yield from _of_pieces(of, to, p, q, hollow)
    if hollow:
        for inside, around, way in ((of, to, -1.0), (to, of, 1.0)):
            for cavity in around.cavities:
                for piece in inside.hulls:
                    if _goes_into(piece, around):
                        yield from _in_cavity(inside, around, piece, cavity, way)


def _goes_into(piece: ConvexPiece, around: Surfaces) -> bool:
    """Return whether a piece lies deeper in the outline of a hollow body than it may touch it."""
    for hull in around.hulls:
        ways = np.vstack([hull.normals, -piece.normals, *_ways_of_rounds(piece, hull)])
        if float((-piece.reach(-ways) - hull.reach(ways)).max(initial=-np.inf)) < -_REACHES:
            return True
    return False


def _of_pieces(
    of: Surfaces, to: Surfaces, p: ConvexPiece, q: ConvexPiece, hollow: bool
) -> Iterator[Face]:
    """Yield where two convex pieces meet: on the planes on which they touch, or the shallowest."""
    ways = np.vstack([q.normals, -p.normals, *_ways_of_rounds(p, q)])
    first, second = -p.reach(-ways), q.reach(ways)
    apart = first - second
    best = int(apart.argmax())
    if apart[best] > _REACHES:
        return
    touching = np.flatnonzero(apart >= -_REACHES)
    level = np.abs(ways[touching, 2]) > _LEVEL
    order = touching[np.lexsort((-apart[touching], ~level))]
    lines: list[Face] = []
    for k in order[:_MOST]:
        face = _touching(of, to, ways[k], float(first[k]), float(second[k]))
        if face is not None and face.area.area > 0.0:
            yield face
            return
        if face is not None:
            lines.append(face)
    crossed, clear = _crossing(of, to, p, q)
    if clear > _REACHES:
        return
    if len(touching):
        if crossed is not None and clear > float(apart[best]) + EXACT_LENGTH:
            yield crossed
        else:
            yield from lines
    elif crossed is not None and clear >= -_REACHES:
        yield crossed
    else:
        yield from _deep(of, to, p, q, ways, first, second, hollow)


def _ways_of_rounds(p: ConvexPiece, q: ConvexPiece) -> list[Array]:
    """Return unit vectors from ``q`` to ``p`` in which round pieces may touch: balls and axes."""
    found: list[Array] = []
    for one, other, way in ((p, q, 1.0), (q, p, -1.0)):
        if len(one.balls):
            others = np.vstack([other.points, other.centres, other.balls, other.middle])
            found.append(way * _unit((one.balls[:, None] - others[None]).reshape(-1, 3)))
        elif len(one.radii) and other.is_round and len(other.radii):
            axis = one.axes[0]
            off = one.centres[0] - other.centres[0]
            radial = _unit((off - (off @ axis) * axis)[None])
            found.append(way * radial)
            across = _unit(np.cross(axis, other.axes[0])[None])
            found += [across, -across]
    return found


def _unit(vectors: Array) -> Array:
    sizes = np.linalg.norm(vectors, axis=1)
    kept = sizes > 1.0e-9
    return vectors[kept] / sizes[kept, None]


def _crossing(
    of: Surfaces, to: Surfaces, p: ConvexPiece, q: ConvexPiece
) -> tuple[Face | None, float]:
    """Return where an edge of the one crosses one of the other, and how far apart they lie."""
    across = np.cross(p.directions[:, None], q.directions[None]).reshape(-1, 3)
    ways = _unit(across)
    if not len(ways):
        return None, -np.inf
    ways = np.vstack([ways, -ways])
    first, second = -p.reach(-ways), q.reach(ways)
    best = int((first - second).argmax())
    clear = float(first[best] - second[best])
    if abs(clear) > _REACHES:
        return None, clear
    return _touching(of, to, ways[best], float(first[best]), float(second[best])), clear


def _touching(of: Surfaces, to: Surfaces, way: Array, first: float, second: float) -> Face | None:
    """Return what two bodies share in a plane in which they touch, as if moved together there."""
    right, up = axes_of(way)
    one = _lying(of, -way, -first, right, up)
    other = _lying(to, way, second, right, up)
    return _face(_shared(one, other), way, second, right, up)


def _lying(body: Surfaces, way: Array, reach: float, right: Array, up: Array) -> BaseGeometry:
    """Return what of a body lies in the plane at its reach along a unit vector; hollows do not."""
    found = [
        outline(piece.lying(way, FIT), right, up)
        for piece in body.hulls
        if float(piece.reach(way[None])[0]) >= reach - EXACT_LENGTH
    ]
    filled = found[0] if len(found) == 1 else plane.union_of(found)
    for cavity in body.cavities:
        if float(cavity.reach(way[None])[0]) >= reach - EXACT_LENGTH:
            filled = filled.difference(outline(cavity.lying(way, FIT), right, up))
    return filled


def _deep(
    of: Surfaces,
    to: Surfaces,
    p: ConvexPiece,
    q: ConvexPiece,
    ways: Array,
    first: Array,
    second: Array,
    hollow: bool,
) -> Iterator[Face]:
    """Yield where two bodies that lie within each other cross: where a face of one cuts the other.

    Of such faces the one square to which what they share is thinnest: an arm let into the side of a
    post meets it there, a post let into a beam on its end. One that lies within the other whole
    meets it in its middle.
    """
    deep = second - first
    thin = np.minimum(p.reach(ways) + p.reach(-ways), q.reach(ways) + q.reach(-ways))
    order = np.lexsort((deep, np.round(np.minimum(deep, thin), 6)))
    found: Face | None = None
    for k in order[:_MOST_DEEP]:
        found = _cut_by_a_face(of, to, ways[k], float(first[k]), float(second[k]))
        if found is not None:
            break
    if found is None and not hollow:
        k = order[0]
        middle = 0.5 * float(first[k] + second[k])
        right, up = axes_of(ways[k])
        both = [cut_of(body, ways[k], middle, right, up) for body in (of, to)]
        found = _face(both[0].intersection(both[1]), ways[k], middle, right, up, float(deep[k]))
    if found is not None:
        yield found


def _cut_by_a_face(
    of: Surfaces, to: Surfaces, way: Array, first: float, second: float
) -> Face | None:
    """Return where the face of one body square to ``way`` lies within the wood of the other."""
    right, up = axes_of(way)
    lies, cut = _lying(to, way, second, right, up), cut_of(of, way, second, right, up)
    at, shared = second, lies.intersection(cut)
    if shared.area <= _LEAST:
        lies, cut = _lying(of, -way, -first, right, up), cut_of(to, way, first, right, up)
        at, shared = first, lies.intersection(cut)
    if shared.area <= _LEAST:
        return None
    return _face(shared, way, at, right, up, second - first)


def _in_cavity(
    inside: Surfaces, around: Surfaces, piece: ConvexPiece, cavity: ConvexPiece, way: float
) -> Iterator[Face]:
    """Yield where a piece within a hollow body meets, or goes through, the walls round it."""
    normals = cavity.normals
    at, reach = cavity.reach(normals), piece.reach(normals)
    ends = np.max([hull.reach(normals) for hull in around.hulls], axis=0) <= at + EXACT_LENGTH
    least = -piece.reach(-normals)
    near = ~ends & (reach >= at - _REACHES) & (least <= at + _REACHES)
    touching = near & (reach <= at + _REACHES)
    for k in np.flatnonzero(touching):
        wall, lies = _wall(around, normals[k], float(at[k])), float(reach[k])
        right, up = axes_of(way * normals[k])
        shared = _shared(_lying(inside, normals[k], lies, right, up), wall(right, up))
        face = _face(shared, way * normals[k], way * float(at[k]), right, up)
        if face is not None:
            yield face
    for k in np.flatnonzero(near & ~touching):
        wall = _wall(around, normals[k], float(at[k]))
        right, up = axes_of(way * normals[k])
        shared = cut_of(inside, normals[k], float(at[k]), right, up).intersection(wall(right, up))
        if shared.area > _LEAST:
            deep = float(reach[k] - at[k])
            face = _face(shared, way * normals[k], way * float(at[k]), right, up, deep)
            if face is not None:
                yield face


def _wall(around: Surfaces, normal: Array, at: float) -> Callable[[Array, Array], BaseGeometry]:
    """Return what gives the wood just beyond a plane of a cavity, by the axes of that plane."""
    return lambda right, up: cut_of(around, normal, at + EXACT_LENGTH, right, up)


def capping(of: Surfaces, to: Surfaces) -> Face | None:
    """Return the walls of ``to`` over which a hollow body sits as a lid or roof; else None.

    Its own walls stand beyond them, as eaves do; its hollow ends below its top, so that it cannot
    fall past them.
    """
    up = np.array([[0.0, 0.0, 1.0]])
    top = max((float(piece.reach(up)[0]) for piece in of.hulls), default=0.0)
    hollow = max((float(piece.reach(up)[0]) for piece in of.cavities), default=top)
    if hollow >= top - EXACT_LENGTH:
        return None
    return _within_outline(of, to, only_walls_of_lower=True)


def _within_outline(of: Surfaces, to: Surfaces, only_walls_of_lower: bool = False) -> Face | None:
    """Return the walls of one body that lie within the outline of the other, level with it."""
    up = np.array([0.0, 0.0, 1.0])
    for upper, lower, way in ((of, to, up), (to, of, -up)):
        low, high = float(upper.box[0, 2]), float(lower.box[1, 2])
        if abs(low - high) > _REACHES:
            continue
        right, along = axes_of(way)
        above = _lying(upper, -up, -low, right, along)
        below = _lying(lower, up, high, right, along)
        pairs = ((below, above), (above, below))
        for walls, other in pairs[:1] if only_walls_of_lower else pairs:
            shared = walls.intersection(other.convex_hull)
            if shared.area > _LEAST:
                return _face(shared, way, float(way[2]) * high, right, along)
    return None


def _shared(one: BaseGeometry, other: BaseGeometry) -> BaseGeometry:
    """Return what two regions of a plane share; of such as lie beside each other the line between.

    Regions that end within the fit of each other meet there.
    """
    shared = one.intersection(other)
    if not shared.is_empty:
        return shared
    if one.is_empty or other.is_empty or one.distance(other) > _REACHES:
        return plane.NOTHING
    reach = 0.5 * _REACHES + EXACT_LENGTH
    strip = plane.narrowest_box(one.buffer(reach).intersection(other.buffer(reach)))
    return _midline(strip, 4.0 * reach)


def _midline(corners: Array, least: float) -> BaseGeometry:
    """Return the line along the middle of a rectangle (4, 2); of a short one its middle."""
    if len(corners) < 4:
        return plane.line(corners[:2]) if len(corners) > 1 else shapely.Point(corners[0])
    if np.linalg.norm(corners[1] - corners[0]) < np.linalg.norm(corners[2] - corners[1]):
        corners = np.roll(corners, -1, axis=0)
    ends = np.array([corners[[0, 3]].mean(axis=0), corners[[1, 2]].mean(axis=0)])
    if float(np.linalg.norm(ends[1] - ends[0])) <= least:
        return shapely.Point(ends.mean(axis=0))
    return plane.line(ends)


def _face(
    shared: BaseGeometry, way: Array, at: float, right: Array, up: Array, deep: float = 0.0
) -> Face | None:
    """Return the face of what is shared in the plane ``way . x = at``; None where nothing is."""
    if shared.is_empty:
        return None
    area = _of_one_kind(shared)
    middle = plane.middle(area)
    if abs(float(way[2])) > _LEVEL:
        return Face(area, at * way, right, up, way, deep)
    upright = abs(float(way[2])) < 1.0e-9
    place = np.array([middle[0], 0.0 if upright else middle[1]])
    origin = at * way + place[0] * right + place[1] * up
    moved = affinity.translate(area, -float(place[0]), -float(place[1]))
    return Face(moved, origin, right, up, way, deep)


def _of_one_kind(shared: BaseGeometry) -> BaseGeometry:
    """Return the areas of what is shared; where it has none to speak of, its line or point."""
    areas = plane.pieces(shared)
    if areas and (whole := plane.union_of(areas)).area > _LEAST:
        if 2.0 * whole.area > _NARROW * whole.length:
            return whole
        return _midline(plane.narrowest_box(whole), 0.0)
    lines = [one for one in shapely.get_parts(shared).tolist() if one.length > 0.0]
    if not lines:
        return shapely.Point(plane.coordinates(shared)[0])
    ends = plane.coordinates(plane.union_of(lines))
    if len(ends) == 2:
        return plane.line(ends)
    return _midline(plane.narrowest_box(plane.hull(ends)), 0.0)
