"""Where every copy of every part stands: the places of the file worked out."""

from collections.abc import Sequence
from functools import cached_property
from math import cos, pi, sin

import numpy as np
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from ..units.arrays import Array
from ..units.frozen import ByIdentity, replace
from .model import Design, Part, Place
from .shapes.edges import Edges, edges_of
from .shapes.hulls import Hull, Sphere, corners
from .shapes.shape import Shape

_ALIKE = 1.0e-6
"""Points as near as this (m) are one."""

_SOME = 64
"""So many corners are looked for at a time: where one of them has no match, the rest are not."""


class Body(ByIdentity, frozen=True):
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

    @property
    def upright(self) -> bool:
        """Return whether it stands plumb, as its shape was drawn."""
        return bool(self.rotation[2, 2] > 1.0 - 1.0e-12)

    @cached_property
    def extent(self) -> tuple[Array, Array]:
        """Return least and greatest x, y, z (3,) of its outline in m; its place if it has none."""
        low: list[Array] = []
        high: list[Array] = []
        for hull in self.shape.hulls():
            if len(hull.points):
                points = self.place(hull.points)
                low.append(points.min(axis=0))
                high.append(points.max(axis=0))
            for disc in hull.discs:
                axis = self.rotation @ np.asarray(disc.axis)
                reach = disc.radius * np.sqrt(np.maximum(1.0 - axis**2, 0.0))
                centre = self.place(np.asarray(disc.centre))
                low.append(centre - reach)
                high.append(centre + reach)
            for ball in hull.spheres:
                centre = self.place(np.asarray(ball.centre))
                low.append(centre - ball.radius)
                high.append(centre + ball.radius)
        if not low:
            return self.origin, self.origin
        return np.min(low, axis=0), np.max(high, axis=0)

    @cached_property
    def edges(self) -> tuple[tuple[Edges | Sphere, ...], tuple[Edges | Sphere, ...]]:
        """Return on the site what bounds its hulls, and what bounds its cavities."""
        return (
            tuple(self._bounds(hull) for hull in self.shape.hulls()),
            tuple(self._bounds(hull) for hull in self.shape.cavities()),
        )

    @property
    def bottom(self) -> float:
        """Return the height of its lowest point above ground, in m."""
        return float(self.extent[0][2])

    @property
    def top(self) -> float:
        """Return the height of its highest point above ground, in m."""
        return float(self.extent[1][2])

    @property
    def depth(self) -> float:
        """Return how deep in m it stands in the ground, whatever ``embed`` and place say of it."""
        return max(0.0, -self.bottom)

    def _bounds(self, hull: Hull) -> Edges | Sphere:
        if len(hull.spheres) == 1 and not hull.discs and not len(hull.points):
            x, y, z = self.place(np.asarray(hull.spheres[0].centre)).tolist()
            return Sphere((x, y, z), hull.spheres[0].radius)
        edges = edges_of(hull)
        return Edges(self.place(edges.starts), self.place(edges.ends))


def place_parts(design: Design) -> tuple[Body, ...]:
    """Return every copy of every part where it stands on the site.

    A part stands at the origin, on the middle of another part's top or beneath the middle of its
    underside, moved by ``at``. It is tilted and set down again, turned, copied round a ring or
    along a row, and mirrored in planes through the point that it is measured from; the design's
    ``turn`` comes last. Names in ``on`` and ``under`` must exist and not run in a circle.
    """
    placed = [body for bodies in _Placer(design.parts).all() for body in bodies]
    return turned(placed, design.turn)


def turned(bodies: Sequence[Body], angle: float) -> tuple[Body, ...]:
    """Return bodies turned about the site's z axis by ``angle`` rad; themselves where it is 0."""
    if angle == 0.0:
        return tuple(bodies)
    turn = about_z(angle)
    return tuple(
        replace(body, rotation=turn @ body.rotation, origin=turn @ body.origin) for body in bodies
    )


def coincide(shape: Shape, place: Place) -> bool:
    """Return whether two copies of one shape fill the same place, as what mirrors itself does."""
    part = Part("copies", shape, replace(place, on=None, under=None))
    alike: dict[tuple[float, ...], list[Body]] = {}
    for body in _copies(0, part, np.zeros(3)):
        extent = np.round(np.concatenate(body.extent) / _ALIKE) + 0.0
        others = alike.setdefault(tuple(extent.tolist()), [])
        if any(_fill_one_place(body, other) for other in others):
            return True
        others.append(body)
    return False


def _fill_one_place(one: Body, other: Body) -> bool:
    hulls = one.shape.hulls()
    if not hulls:
        return True
    here = np.vstack([one.place(corners(hull)) for hull in hulls])
    there = np.vstack([other.place(corners(hull)) for hull in hulls])
    for some in np.split(here, range(_SOME, len(here), _SOME)):
        apart = np.linalg.norm(some[:, None] - there[None], axis=-1)
        if float(apart.min(axis=1).max()) > _ALIKE:
            return False
    return True


def about_z(angle: float) -> Array:
    """Return the matrix (3, 3) that turns by ``angle`` rad, counter-clockwise from above."""
    c, s = cos(angle), sin(angle)
    return np.array([[c, -s, 0.0], [s, c, 0.0], [0.0, 0.0, 1.0]])


def toward_y(angle: float) -> Array:
    """Return the matrix (3, 3) that leans the top toward +y by ``angle`` rad."""
    c, s = cos(angle), sin(angle)
    return np.array([[1.0, 0.0, 0.0], [0.0, c, s], [0.0, -s, c]])


class _Placer:
    """Places parts before the design's own turn, each after the one that it is measured from."""

    def __init__(self, parts: Sequence[Part]) -> None:
        self._parts = parts
        self._index = {part.name: i for i, part in enumerate(parts)}
        self._placed: dict[int, list[Body]] = {}

    def all(self) -> list[list[Body]]:
        return [self._bodies(i) for i in range(len(self._parts))]

    def _bodies(self, i: int) -> list[Body]:
        if i not in self._placed:
            part = self._parts[i]
            point = self._point(part.place)
            self._placed[i] = _copies(i, part, point)
        return self._placed[i]

    def _point(self, place: Place) -> Array:
        """Return the point (3,) from which a place is measured."""
        if place.reference is None:
            return np.zeros(3)
        j = self._index[place.reference]
        bodies = self._bodies(j)
        middle = np.mean([_middle(body) for body in bodies], axis=0)
        tops = [body.top for body in bodies]
        bottoms = [body.bottom for body in bodies]
        return np.array([*middle, max(tops) if place.on is not None else min(bottoms)])


def _middle(body: Body) -> Array:
    """Return the plan point (2,) of a body's axis, or the middle of its extent without one."""
    if not body.shape.middle_is_place:
        low, high = body.extent
        return 0.5 * (low + high)[:2]
    return body.origin[:2]


def _copies(i: int, part: Part, point: Array) -> list[Body]:
    """Return the copies of a part measured from ``point`` (3,)."""
    place = part.place
    tilted = toward_y(place.tilt)
    leaning = Body(i, 0, part.shape, tilted, np.zeros(3))
    lift = -part.embed
    if place.under is not None:
        lift = -leaning.top
    elif place.tilt != 0.0:
        lift += Body(i, 0, part.shape, np.eye(3), np.zeros(3)).bottom - leaning.bottom
    bodies: list[Body] = []
    for reflection in _reflections(place.mirror):
        for offset, angle in _offsets(place):
            rotation = reflection @ about_z(angle) @ tilted
            moved = np.asarray(place.at) + offset + np.array([0.0, 0.0, lift])
            bodies.append(Body(i, len(bodies), part.shape, rotation, point + reflection @ moved))
    return bodies


def _offsets(place: Place) -> list[tuple[Array, float]]:
    """Return offset (3,) in m and turn in rad of each copy before mirroring."""
    if place.step is not None:
        return [(k * np.asarray(place.step), place.turn) for k in range(place.count)]
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


def _reflections(mirror: frozenset[str]) -> list[Array]:
    """Return the matrices (3, 3) of the copies that mirroring makes, the part itself first."""
    result = [np.eye(3)]
    for axis, name in enumerate("xy"):
        if name in mirror:
            flip = np.eye(3)
            flip[axis, axis] = -1.0
            result += [flip @ one for one in result]
    return result
