"""Where every copy of every part stands: the places of the file worked out."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, pi, sin

import numpy as np
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from .model import Design, Part
from .shapes.shape import Array, Shape


@dataclass(frozen=True)
class Body:
    """One copy of a part where it stands: turned by ``rotation`` (3, 3), then moved to ``origin``.

    A mirrored copy's rotation has determinant -1.
    """

    part: int
    copy: int
    shape: Shape
    rotation: Array
    origin: Array

    def place(self, points: Array) -> Array:
        """Return points (…, 3) of the shape's own axes in the axes of the site."""
        return points @ self.rotation.T + self.origin

    def bearing(self, angle: float | Array) -> Array:
        """Return the plan vectors (…, 2) on the site of plan angles (…) of the shape, rad."""
        return np.stack([np.cos(angle), np.sin(angle)], axis=-1) @ self.rotation[:2, :2].T

    def own_wind(self, wind: Array) -> Array:
        """Return the wind's unit vectors (D, 3) in the shape's own axes, from plan ones (D, 2)."""
        return wind @ self.rotation[:2]

    def in_plan(self, region: BaseGeometry) -> BaseGeometry:
        """Return a level region of the shape's own plan where it lies on the site."""
        (a, b), (d, e) = self.rotation[:2, :2].tolist()
        x, y = self.origin[:2].tolist()
        return affinity.affine_transform(region, [a, b, d, e, x, y])


def place_parts(design: Design) -> tuple[Body, ...]:
    """Return every copy of every part where it stands on the site.

    A part stands at the origin or on the middle of another part's top, moved by ``at``; copies
    of a ring stand round that point, copy k turned by k 360/count with the ring; the design's
    ``turn`` comes last. Names in ``on`` must exist and not run in a circle.
    """
    bodies: list[Body] = []
    points = _standing_points(design.parts)
    whole = about_z(design.turn)
    for index, part in enumerate(design.parts):
        for copy, (offset, angle) in enumerate(_copies(part)):
            origin = whole @ (points[index] + offset)
            bodies.append(Body(index, copy, part.shape, whole @ about_z(angle), origin))
    return tuple(bodies)


def stacks(parts: Sequence[Part]) -> tuple[int, ...]:
    """Return for each part the index of the part at the foot of its stack."""
    index = {part.name: i for i, part in enumerate(parts)}

    def foot(i: int) -> int:
        on = parts[i].place.on
        return i if on is None else foot(index[on])

    return tuple(foot(i) for i in range(len(parts)))


def about_z(angle: float) -> Array:
    """Return the matrix (3, 3) that turns by ``angle`` rad, counter-clockwise from above."""
    c, s = cos(angle), sin(angle)
    return np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])


def _standing_points(parts: Sequence[Part]) -> list[Array]:
    index = {part.name: i for i, part in enumerate(parts)}
    found: dict[int, Array] = {}

    def point(i: int) -> Array:
        if i not in found:
            place = parts[i].place
            below = np.zeros(3)
            if place.on is not None:
                j = index[place.on]
                below = point(j) + np.array([0.0, 0.0, parts[j].shape.peak])
            found[i] = below + np.asarray(place.at)
        return found[i]

    return [point(i) for i in range(len(parts))]


def _copies(part: Part) -> list[tuple[Array, float]]:
    """Return offset (3,) and turn of each copy."""
    place = part.place
    if place.ring is None:
        return [(np.zeros(3), place.turn)]
    steps = [2.0 * pi * k / place.count for k in range(place.count)]
    radius = place.ring / 2.0
    return [
        (
            radius * np.array([cos(place.start + step), sin(place.start + step), 0.0]),
            place.turn + step,
        )
        for step in steps
    ]
