"""Where two bodies meet: the face that they share, and which way one leaves the other."""

from dataclasses import dataclass

import numpy as np
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.placing import Body
from ..design.sections import section
from ..design.shapes.shape import Array

CLEAR = 0.005
"""Faces that lie nearer than this (m) touch: saw cuts, paint, a washer."""

LEAST = 1.0e-6
"""Area (m2) below which two faces touch in a line or a point only."""

SKIN = 5.0e-4
"""So far (m) inside a face its section is taken."""

_LEVELS = 9
"""Heights at which sides are looked at for touching."""

_UP = np.array([0.0, 0.0, 1.0])


@dataclass(frozen=True, eq=False)
class Face:
    """A flat face: ``area`` in its own plane (m), ``origin`` and axes (3,) on the site.

    ``leaves`` is the unit vector in which the fastened body leaves the one it is fastened to;
    ``right`` and ``up`` are the axes of the plane: right x up = leaves.
    """

    area: BaseGeometry
    origin: Array
    right: Array
    up: Array
    leaves: Array

    def on_site(self, points: Array) -> Array:
        """Return points (…, 2) of the plane on the site (…, 3)."""
        return self.origin + points[..., :1] * self.right + points[..., 1:] * self.up

    def in_plane(self, points: Array) -> Array:
        """Return points (…, 3) of the site in the plane (…, 2)."""
        off = points - self.origin
        return np.stack([off @ self.right, off @ self.up], axis=-1)

    @property
    def is_level(self) -> bool:
        """Return whether one body stands on, or hangs under, the other."""
        return abs(float(self.leaves[2])) > 0.5


def meeting(of: Body, to: Body, bridged: bool = False) -> Face | None:
    """Return the face on which body ``of`` meets body ``to``; None where they do not touch.

    A level one where one stands on the other; else an upright one where their sides touch. Sides
    that lean are taken as plumb there. ``bridged``: blocks or a flange bridge what is hollow, so
    the walls of the one may meet within the outline of the other.
    """
    level = _level(of, to, bridged)
    return level if level is not None else _upright(of, to)


def bearing_area(upper: Body, lower: Body) -> BaseGeometry:
    """Return the level face on which one body bears on another, in plan; empty where it does not.

    What bears is the wood, not the outline: of a hollow body its walls.
    """
    if abs(upper.bottom - lower.top) > CLEAR or not _near_in_plan(upper, lower):
        return plane.NOTHING
    above = section(upper, upper.bottom + SKIN)
    shared = above.intersection(section(lower, lower.top - SKIN))
    return shared if shared.area > LEAST else plane.NOTHING


def gap(of: Body, to: Body) -> float:
    """Return the greatest clear distance in m between the upright boxes round two bodies."""
    low, high = of.extent
    other_low, other_high = to.extent
    return float(np.maximum(np.maximum(low - other_high, other_low - high), 0.0).max())


def _level(of: Body, to: Body, bridged: bool) -> Face | None:
    for upper, lower, way in ((of, to, 1.0), (to, of, -1.0)):
        area = bearing_area(upper, lower)
        if bridged and area.area <= 0.0:
            area = _within_outline(upper, lower)
        if area.area > 0.0:
            origin = np.array([0.0, 0.0, lower.top])
            seen = area if way > 0.0 else plane.flipped(area)
            return Face(seen, origin, np.eye(3)[0], way * np.eye(3)[1], way * _UP)
    return None


def _within_outline(upper: Body, lower: Body) -> BaseGeometry:
    """Return the walls of one body that lie within the outline of the other, level with it."""
    if abs(upper.bottom - lower.top) > CLEAR or not _near_in_plan(upper, lower):
        return plane.NOTHING
    above, below = section(upper, upper.bottom + SKIN), section(lower, lower.top - SKIN)
    for walls, other in ((below, above), (above, below)):
        shared = walls.intersection(plane.hull(plane.coordinates(other)))
        if not walls.is_empty and not other.is_empty and shared.area > LEAST:
            return shared
    return plane.NOTHING


def _upright(of: Body, to: Body) -> Face | None:
    low, high = max(of.bottom, to.bottom), min(of.top, to.top)
    if high - low <= CLEAR or not _near_in_plan(of, to):
        return None
    levels = low + (np.arange(_LEVELS) + 0.5) / _LEVELS * (high - low)
    strips = [_strip(of, to, float(z)) for z in levels]
    touching = [k for k, strip in enumerate(strips) if strip is not None]
    if not touching:
        return None
    middle = touching[len(touching) // 2]
    strip = strips[middle]
    assert strip is not None
    step = (high - low) / _LEVELS
    reach = float(levels[touching[0]] - step / 2.0), float(levels[touching[-1]] + step / 2.0)
    return _upright_face(of, to, strip, float(levels[middle]), reach)


def _strip(of: Body, to: Body, z: float) -> BaseGeometry | None:
    """Return where two bodies touch at a height, a strip as wide as their faces lie apart."""
    strip = section(of, z).buffer(CLEAR).intersection(section(to, z).buffer(CLEAR))
    pieces = plane.pieces(strip)
    return max(pieces, key=lambda piece: piece.area) if pieces else None


def _upright_face(
    of: Body, to: Body, strip: BaseGeometry, z: float, reach: tuple[float, float]
) -> Face | None:
    corners = plane.narrowest_box(strip)
    sides = np.roll(corners, -1, axis=0)[:2] - corners[:2]
    lengths = np.linalg.norm(sides, axis=1)
    along = sides[int(lengths.argmax())] / max(float(lengths.max()), 1.0e-12)
    wide = float(lengths.max()) - 2.0 * CLEAR
    if wide <= 0.0:
        return None
    centre = corners.mean(axis=0)
    normal = np.array([along[1], -along[0]])
    leaves = _side_of(section(of, z), section(to, z), centre, normal)
    # as one sees the face from the part that leaves: right x up = leaves
    right = np.array([-leaves[1], leaves[0], 0.0])
    face = plane.box(-wide / 2.0, reach[0], wide / 2.0, reach[1])
    origin = np.array([centre[0], centre[1], 0.0])
    return Face(face, origin, right, _UP, np.array([leaves[0], leaves[1], 0.0]))


def _side_of(one: BaseGeometry, other: BaseGeometry, centre: Array, normal: Array) -> Array:
    """Return the normal that points from the other into the one at a place where they touch."""
    step = 2.0 * CLEAR
    reach: list[float] = []
    for way in (1.0, -1.0):
        spot = plane.disc(centre + way * step * normal, CLEAR)
        reach.append(one.intersection(spot).area - other.intersection(spot).area)
    return normal if reach[0] >= reach[1] else -normal


def _near_in_plan(one: Body, other: Body) -> bool:
    low, high = one.extent
    return bool(
        (other.extent[0][:2] <= high[:2] + CLEAR).all()
        and (other.extent[1][:2] >= low[:2] - CLEAR).all()
    )
