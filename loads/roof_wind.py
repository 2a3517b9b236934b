"""Wind on bodies that it passes beneath: free roofs and leaning boards, normal to their surface.

Free roofs by ASCE/SEI 7 Fig. 27.3-4 to 27.3-7 up to 45 degrees, from there linear to a sign's own
at 90. From across the ridge to along it by cos2 of the wind's angle; below 7.5 degrees blended to
the level row, and there the row along the ridge is tried by itself as well, both ways: judgements.
"""

from dataclasses import dataclass
from itertools import pairwise
from math import atan2, cos, degrees, hypot, radians, sin

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.placing import Body
from ..design.shapes.cutout import Cutout
from ..design.shapes.flat import Panel, Plate
from ..design.shapes.gables import Gable
from ..design.shapes.shape import Array
from .free_roofs import (
    ACROSS,
    EITHER,
    HIGH,
    LEVEL_TO,
    LOW,
    STEEPEST,
    along_coefficients,
    net_coefficients,
)
from .roof_planes import roof_planes

ROOF_CASES = ("roof A", "roof B", "roof lifted", "roof pressed")
"""The figures' cases, and the row along the ridge tried by itself on what is nearly level."""


@dataclass(frozen=True, eq=False)
class RoofWind:
    """What 1 Pa does to a roof: ``terms`` (D, R, 8) in m2 and m3, see ``Lift``, in the R cases.

    ``standing`` (D,) is the share of the level force on its face that acts besides.
    """

    terms: Array
    standing: Array


@dataclass(frozen=True, eq=False)
class Board:
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
        return plane.polygon(self.place(plane.coordinates(plane.filled(self.region)))[:, :2])

    def level(self, plan: BaseGeometry) -> "Board":
        """Return a part of it, as level, by its ``plan``."""
        height = float(self.place(plane.centroids(np.array(self.region)))[2])
        up = np.array([0.0, 0.0, 1.0])
        return Board(plan, np.eye(3)[:, :2], height * up, up, 0.0, self.fall)

    def place(self, points: Array) -> Array:
        """Return points (…, 2) of its own axes on the site (…, 3)."""
        return self.origin + points @ self.axes.T


def board_of(body: Body) -> Board | None:
    """Return a panel, cut-out or plate as a board; None for any other body."""
    match body.shape:
        case Panel(width, height):
            region, columns, middle = shapely.box(-width / 2, 0.0, width / 2, height), (0, 2), 0.0
        case Cutout() as cut:
            region, columns, middle = cut.outline, (0, 2), 0.0
        case Plate() as flat:
            region, columns, middle = flat.contact(), (0, 1), flat.thickness / 2.0
        case _:
            return None
    normal = body.rotation[:, 3 - sum(columns)]
    up = normal * (1.0 if normal[2] >= 0.0 else -1.0)
    run = float(np.hypot(up[0], up[1]))
    fall = up[:2] / run if run > 1e-9 else np.array([1.0, 0.0])
    slope = degrees(atan2(run, float(up[2]))) if run > 1e-9 else 0.0
    return Board(region, body.rotation[:, columns], body.origin + normal * middle, up, slope, fall)


def on_board(board: Board, along: Array, obstructed: Array, solid: float, face: float) -> RoofWind:
    """Return the wind on a board that wind passes beneath.

    ``along`` (D, 2) is the way in which the wind blows, ``obstructed`` (D,) how far what stands
    beneath keeps it off, 0 to 1; ``solid`` the share of a solid board's force that a lattice takes,
    and ``face`` the sign's own coefficient.
    """
    level, upright = _shares(board.slope)
    facing = -(along @ board.fall)
    weight = (facing**2)[:, None]
    middle = board.place(plane.centroids(np.array(board.region)))
    ridge = along_coefficients(_length(board.plan, along), middle[2], obstructed)
    terms = np.zeros((len(along), len(ROOF_CASES), 8))
    if level < 1.0:
        slope = radians(board.slope)
        rise = np.array([*(-board.fall * cos(slope)), sin(slope)])
        areas, centres = _halves(board.region, (rise @ board.axes)[None])
        low = net_coefficients("monoslope", LOW, board.slope, obstructed)
        high = net_coefficients("monoslope", HIGH, board.slope, obstructed)
        for half in (0, 1):
            across = np.where((facing > 0.0)[:, None], low[:, :, half], high[:, :, 1 - half])
            normal = (1.0 - level) * (1.0 - upright) * _turned(weight, across, ridge)
            push = -solid * areas[0, half] * normal[..., None] * board.up
            terms[:, :2] += _terms(push, board.place(centres[0, half]))
    if level > 0.0:
        wind = np.concatenate([along, np.zeros((len(along), 1))], axis=1)
        areas, centres = _halves(board.region, wind @ board.axes)
        row = net_coefficients("monoslope", EITHER, 0.0, obstructed)
        for half in (0, 1):
            push = -level * solid * areas[:, half, None] * row[:, :, half]
            at = board.place(centres[:, half])[:, None]
            terms[:, :2] += _terms(push[..., None] * board.up, at)
        push = -level * solid * board.region.area * ridge
        terms[:, 2:] += _terms(push[..., None] * board.up, middle)
    if upright > 0.0:
        # a sign's force acts normal to it: its level part is counted with the signs
        force = np.zeros((len(along), 1, 3))
        force[:, 0, 2] = -upright * face * board.region.area * board.up[2] * facing
        terms += _terms(force, middle)
    return RoofWind(terms, np.full(len(along), upright))


def on_slopes(body: Body, closed: BaseGeometry, along: Array, obstructed: Array) -> RoofWind:
    """Return the wind on a free roof with slopes, or on a level slab; ``closed`` is its plan.

    A hollow gable takes it normal to its slopes, level force and all, and along the ridge what its
    outline takes; of any other roof it is the vertical part, beside the force on its outline.
    """
    gable = body.shape if isinstance(body.shape, Gable) and body.shape.thickness else None
    faces = _gable_faces(body, gable) if gable is not None else _faces(body, closed)
    length = _length(closed, along)
    ridge = along_coefficients(length, 0.5 * (body.bottom + body.top), obstructed)
    terms = np.zeros((len(along), len(ROOF_CASES), 8))
    standing = np.ones(len(along))
    for area, slope, fall, up, middle in faces:
        level, upright = _shares(slope)
        facing = -(along @ fall)
        weight = (facing**2)[:, None]
        row = net_coefficients("pitched", ACROSS, slope, obstructed)
        across = np.where((facing > 0.0)[:, None], row[:, :, 0], row[:, :, 1])
        flat = net_coefficients("monoslope", EITHER, 0.0, obstructed)
        windward = (0.5 + 0.5 * facing)[:, None]
        even = windward * flat[:, :, 0] + (1.0 - windward) * flat[:, :, 1]
        normal = level * even + (1.0 - level) * (1.0 - upright) * _turned(weight, across, ridge)
        terms[:, :2] += _terms(-area * normal[..., None] * up, middle)
        terms[:, 2:] += _terms(-area * level * ridge[..., None] * up, middle)
        if gable is not None:
            standing = 1.0 - (1.0 - upright) * facing**2
    return RoofWind(terms, standing)


def _turned(weight: Array, across: Array, along: Array) -> Array:
    """Return what lies between the wind across the ridge and along it."""
    return weight * across + (1.0 - weight) * along


def _shares(slope: float) -> tuple[float, float]:
    """Return how far a slope in degrees counts as level, and how far as upright, 0 to 1."""
    level = float(np.clip(1.0 - slope / LEVEL_TO, 0.0, 1.0))
    return level, float(np.clip((slope - STEEPEST) / (90.0 - STEEPEST), 0.0, 1.0))


_Face = tuple[float, float, Array, Array, Array]
"""Area in m2, slope in degrees, fall (2,), normal (3,), level for what acts upright, and middle."""


def _gable_faces(body: Body, gable: Gable) -> list[_Face]:
    """Return the slopes of an open gable, with their true area and normal."""
    found: list[_Face] = []
    right = gable.section[: len(gable.section) // 2 + 1]
    for (y1, z1), (y0, z0) in pairwise(right.tolist()):
        run, rise = y1 - y0, z0 - z1
        for side in (1.0, -1.0):
            own = np.array([0.0, side * rise, run]) / hypot(run, rise)
            fall = body.bearing(side * np.pi / 2.0)
            middle = body.place(np.array([0.0, side * (y0 + y1) / 2.0, (z0 + z1) / 2.0]))
            slope = degrees(atan2(rise, run))
            found.append(
                (gable.length * hypot(run, rise), slope, fall, body.rotation @ own, middle)
            )
    return found


def _faces(body: Body, closed: BaseGeometry) -> list[_Face]:
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


def _length(plan: BaseGeometry, along: Array) -> Array:
    """Return how long (D,) a plan is along the wind, in m."""
    reach = plane.coordinates(plan) @ along.T
    return np.ptp(reach, axis=0)


def _halves(region: BaseGeometry, way: Array) -> tuple[Array, Array]:
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


def _terms(force: Array, at: Array) -> Array:
    """Return the eight terms (…, 8) of forces (…, 3) that act at points, see ``Lift``."""
    x, y, z = (np.broadcast_to(at, force.shape)[..., k] for k in range(3))
    fx, fy, fz = (force[..., k] for k in range(3))
    return np.stack([fx, fy, fz, fx * z, fy * z, fz * x, fz * y, x * fy - y * fx], axis=-1)
