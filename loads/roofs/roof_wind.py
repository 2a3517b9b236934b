"""Roofs and boards that wind passes beneath: their geometry, for the figures of any book."""

from math import atan2, degrees

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.forms import Leaf, Slab
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .roof_planes import roof_planes


class RoofWind(ByIdentity, frozen=True):
    """What 1 Pa does to a roof: ``terms`` (D, R, 8) in m2 and m3, see ``Lift``, in the R cases.

    ``standing`` (D,) is the share of the level force on its face that acts besides.
    """

    terms: Array
    standing: Array


class FreeRoofBoard(ByIdentity, frozen=True):
    """A flat board: its ``region`` in its own two axes (3, 2), from ``origin`` (3,), in m.

    ``up`` (3,) is its upper side's normal. ``slope`` in degrees; ``fall`` (2,) is the level way in
    which it slopes down.
    """

    region: BaseGeometry
    axes: Array
    origin: Array
    up: Array
    slope: float
    fall: Array

    @property
    def plan(self) -> BaseGeometry:
        """Return its outline in plan."""
        filled = [
            plane.coordinates(plane.without_holes(piece)) for piece in plane.pieces(self.region)
        ]
        return plane.union_of([plane.polygon(self.place(each)[:, :2]) for each in filled])

    def level(self, plan: BaseGeometry) -> "FreeRoofBoard":
        """Return a part of it, as level, by its ``plan``."""
        return level_board(plan, float(self.place(plane.centroids(np.array(self.region)))[2]))

    def place(self, points: Array) -> Array:
        """Return points (…, 2) of its own axes on the site (…, 3)."""
        return self.origin + points @ self.axes.T


def board_of(body: Body) -> FreeRoofBoard | None:
    """Return a panel, cut-out or plate as a board; None for any other body."""
    match body.shape.form:
        case Leaf(region=region):
            columns, middle = (0, 2), 0.0
        case Slab(region=region, thickness=thickness):
            columns, middle = (0, 1), thickness / 2.0
        case _:
            return None
    normal = body.rotation[:, 3 - sum(columns)]
    up = normal * (1.0 if normal[2] >= 0.0 else -1.0)
    run = float(np.hypot(up[0], up[1]))
    fall = up[:2] / run if run > 1e-9 else np.array([1.0, 0.0])
    slope = degrees(atan2(run, float(up[2]))) if run > 1e-9 else 0.0
    return FreeRoofBoard(
        region, body.rotation[:, columns], body.origin + normal * middle, up, slope, fall
    )


def level_board(plan: BaseGeometry, height: float) -> FreeRoofBoard:
    """Return a level board of that ``plan``, ``height`` m up."""
    up = np.array([0.0, 0.0, 1.0])
    return FreeRoofBoard(plan, np.eye(3)[:, :2], height * up, up, 0.0, np.array([1.0, 0.0]))


def slab_of(body: Body, plan: BaseGeometry) -> FreeRoofBoard | None:
    """Return what is level all over its ``plan`` as a board at its mid-height; None with slopes."""
    if any(one.slope > 0.0 for one in roof_planes(body, plan)):
        return None
    return level_board(plan, 0.5 * (body.bottom + body.top))


def slopes_of(body: Body, closed: BaseGeometry) -> tuple[list["_Face"], bool]:
    """Return the planes of a free roof; of a hollow gable with their own normals, and whether."""
    slopes = body.shape.open_slopes()
    if slopes:
        return [
            (
                one.area,
                one.slope,
                body.bearing(one.fall),
                body.rotation @ one.normal,
                body.place(one.middle),
            )
            for one in slopes
        ], True
    return plan_faces(body, closed), False


_Face = tuple[float, float, Array, Array, Array]
"""Area in m2, slope in degrees, fall (2,), normal (3,), level for what acts upright, and middle."""


def plan_faces(body: Body, closed: BaseGeometry) -> list[_Face]:
    """Return the planes of a roof in plan: their pressure counts upright only."""
    up = np.array([0.0, 0.0, 1.0])
    return [
        (
            one.region.area,
            one.slope,
            one.fall,
            up,
            np.append(plane.centroids(np.array(one.region)), body.top),
        )
        for one in roof_planes(body, closed)
    ]


def length_along(plan: BaseGeometry, along: Array) -> Array:
    """Return how long (D,) a plan is along the wind, in m."""
    reach = plane.coordinates(plan) @ along.T
    return np.ptp(reach, axis=0)


def halves(region: BaseGeometry, way: Array) -> tuple[Array, Array]:
    """Return area (K, 2) and middle (K, 2, 2) of a region's halves, split across ``way`` (K, 2).

    The first half is the one that comes first along the way.
    """
    size = np.linalg.norm(way, axis=1, keepdims=True)
    unit = way / np.where(size > 1e-12, size, 1.0)
    reach = plane.coordinates(region) @ unit.T
    second = plane.intersection(
        plane.beyond(unit, 0.5 * (reach.min(axis=0) + reach.max(axis=0)), region), region
    )
    area, centre = plane.area(second), plane.centroids(second)
    whole, middle = region.area, plane.centroids(np.array(region))
    rest = np.maximum(whole - area, 1e-12)
    other = (whole * middle - area[:, None] * centre) / rest[:, None]
    return np.stack([whole - area, area], axis=1), np.stack([other, centre], axis=1)


def terms_of(force: Array, at: Array) -> Array:
    """Return the eight terms (…, 8) of forces (…, 3) that act at points, see ``Lift``."""
    x, y, z = (np.broadcast_to(at, force.shape)[..., k] for k in range(3))
    fx, fy, fz = (force[..., k] for k in range(3))
    return np.stack([fx, fy, fz, fx * z, fy * z, fz * x, fz * y, x * fy - y * fx], axis=-1)
