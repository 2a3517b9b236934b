"""Where two bodies meet: the face that they share, and which way one leaves the other."""

from collections.abc import Callable, Iterator

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...units.arrays import Array
from .face import (
    FIT_REACH,
    LEAST_FACE,
    LEVEL_FROM,
    Face,
    axes_of,
    face_in_plane,
    face_rank,
    shared_region,
)
from .fit import FIT
from .surfaces import EXACT_LENGTH, ConvexPiece, Surfaces, cut_of, outline, surfaces_of

_MOST, _MOST_DEEP = 6, 24
"""So many planes are tried of two pieces that touch, and of two that lie within each other."""


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
        if face.area.area > 0.0 and abs(face.leaves[2]) > LEVEL_FROM and face.deep <= 0.0:
            return face
        if found is None or face_rank(face) > face_rank(found):
            found = face
    if bridged and (found is None or found.area.area <= 0.0):
        return _within_outline(of, to) or found
    return found


def boxes_near(one: Array, other: Array) -> NDArray[np.bool_]:
    """Return whether upright boxes (2, …, 3) lie within the fit of each other on every axis."""
    apart = np.maximum(one[0] - other[1], other[0] - one[1])
    return np.asarray((apart <= FIT_REACH).all(axis=-1))


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
        if float((-piece.reach(-ways) - hull.reach(ways)).max(initial=-np.inf)) < -FIT_REACH:
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
    if apart[best] > FIT_REACH:
        return
    touching = np.flatnonzero(apart >= -FIT_REACH)
    level = np.abs(ways[touching, 2]) > LEVEL_FROM
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
    if clear > FIT_REACH:
        return
    if len(touching):
        if crossed is not None and clear > float(apart[best]) + EXACT_LENGTH:
            yield crossed
        else:
            yield from lines
    elif crossed is not None and clear >= -FIT_REACH:
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
    if abs(clear) > FIT_REACH:
        return None, clear
    return _touching(of, to, ways[best], float(first[best]), float(second[best])), clear


def _touching(of: Surfaces, to: Surfaces, way: Array, first: float, second: float) -> Face | None:
    """Return what two bodies share in a plane in which they touch, as if moved together there."""
    right, up = axes_of(way)
    one = _lying(of, -way, -first, right, up)
    other = _lying(to, way, second, right, up)
    return face_in_plane(shared_region(one, other), way, second, right, up)


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
        found = face_in_plane(
            both[0].intersection(both[1]), ways[k], middle, right, up, float(deep[k])
        )
    if found is not None:
        yield found


def _cut_by_a_face(
    of: Surfaces, to: Surfaces, way: Array, first: float, second: float
) -> Face | None:
    """Return where the face of one body square to ``way`` lies within the wood of the other."""
    right, up = axes_of(way)
    lies, cut = _lying(to, way, second, right, up), cut_of(of, way, second, right, up)
    at, shared = second, lies.intersection(cut)
    if shared.area <= LEAST_FACE:
        lies, cut = _lying(of, -way, -first, right, up), cut_of(to, way, first, right, up)
        at, shared = first, lies.intersection(cut)
    if shared.area <= LEAST_FACE:
        return None
    return face_in_plane(shared, way, at, right, up, second - first)


def _in_cavity(
    inside: Surfaces, around: Surfaces, piece: ConvexPiece, cavity: ConvexPiece, way: float
) -> Iterator[Face]:
    """Yield where a piece within a hollow body meets, or goes through, the walls round it."""
    normals = cavity.normals
    at, reach = cavity.reach(normals), piece.reach(normals)
    ends = np.max([hull.reach(normals) for hull in around.hulls], axis=0) <= at + EXACT_LENGTH
    least = -piece.reach(-normals)
    near = ~ends & (reach >= at - FIT_REACH) & (least <= at + FIT_REACH)
    touching = near & (reach <= at + FIT_REACH)
    for k in np.flatnonzero(touching):
        wall, lies = _wall(around, normals[k], float(at[k])), float(reach[k])
        right, up = axes_of(way * normals[k])
        shared = shared_region(_lying(inside, normals[k], lies, right, up), wall(right, up))
        face = face_in_plane(shared, way * normals[k], way * float(at[k]), right, up)
        if face is not None:
            yield face
    for k in np.flatnonzero(near & ~touching):
        wall = _wall(around, normals[k], float(at[k]))
        right, up = axes_of(way * normals[k])
        shared = cut_of(inside, normals[k], float(at[k]), right, up).intersection(wall(right, up))
        if shared.area > LEAST_FACE:
            deep = float(reach[k] - at[k])
            face = face_in_plane(shared, way * normals[k], way * float(at[k]), right, up, deep)
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
        if abs(low - high) > FIT_REACH:
            continue
        right, along = axes_of(way)
        above = _lying(upper, -up, -low, right, along)
        below = _lying(lower, up, high, right, along)
        pairs = ((below, above), (above, below))
        for walls, other in pairs[:1] if only_walls_of_lower else pairs:
            shared = walls.intersection(other.convex_hull)
            if shared.area > LEAST_FACE:
                return face_in_plane(shared, way, float(way[2]) * high, right, along)
    return None
