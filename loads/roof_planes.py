"""The planes of a roof in plan, each with its slope and the way in which it falls."""

from dataclasses import dataclass
from itertools import pairwise
from math import atan2, degrees, pi, sin

import numpy as np
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.placing import Body
from ..design.shapes.bodies import Cone, Shell, Solid
from ..design.shapes.boxes import Box
from ..design.shapes.flat import Panel, Plate
from ..design.shapes.gables import Gable
from ..design.shapes.plans import Regular
from ..design.shapes.roofs import Dome, Vault
from ..design.shapes.shape import Array

BANDS = 6
"""Bands of even slope that stand for a quarter of a round."""

SECTORS = 12
"""Sectors that stand for a roof that is round in plan."""


@dataclass(frozen=True, eq=False)
class RoofPlane:
    """A plane of a roof: its ``region`` in plan, ``slope`` in degrees and ``fall`` (2,), outward.

    ``fall`` is the unit vector in plan in which it slopes down; a level top has slope 0.
    """

    region: BaseGeometry
    slope: float
    fall: Array


def roof_planes(body: Body, closed: BaseGeometry) -> list[RoofPlane]:
    """Return the planes of a body's roof within ``closed``, what of it is closed in plan.

    Curved roofs as bands and sectors of even slope. One level plane for what has no slopes.
    """
    if isinstance(body.shape, (Panel, Plate)):
        return [_board(body, closed)]
    found = [
        RoofPlane(region, slope, body.bearing(angle))
        for corners, slope, angle in _own_planes(body)
        if not (region := body.in_plan(plane.polygon(corners)).intersection(closed)).is_empty
    ]
    level = closed.difference(plane.union_of([one.region for one in found])) if found else closed
    if level.area > 1e-9:
        found.append(RoofPlane(level, 0.0, np.zeros(2)))
    return found


def _board(body: Body, closed: BaseGeometry) -> RoofPlane:
    """Return the one plane of a board, level or leaning."""
    across = body.rotation[:, 1 if isinstance(body.shape, Panel) else 2]
    up = across * np.sign(across[2] or 1.0)
    run = float(np.hypot(up[0], up[1]))
    fall = up[:2] / run if run > 1e-9 else np.array([1.0, 0.0])
    return RoofPlane(closed, degrees(atan2(run, up[2])), fall)


def _own_planes(body: Body) -> list[tuple[Array, float, float]]:
    """Return corners (k, 2) in the shape's own plan, slope in degrees and the fall's plan angle."""
    match body.shape:
        case Cone(sides, bottom, height):
            return _round(sides, bottom, 0.0, height)
        case Shell(sides, bottom, top, height) | Solid(sides, bottom, top, height) if top < bottom:
            return _round(sides, bottom, top, height)
        case Dome() as dome:
            return _dome(dome)
        case Gable() as gable:
            return [
                one
                for (y1, z1), (y0, z0) in pairwise(gable.section[: len(gable.section) // 2 + 1])
                for one in _both(gable.length, y0, y1, degrees(atan2(z0 - z1, y1 - y0)))
            ]
        case Vault(length, width):
            turns = np.linspace(0.0, 90.0, BANDS + 1)
            edges = width / 2.0 * np.sin(np.radians(turns))
            return [
                one
                for k in range(BANDS)
                for one in _both(length, edges[k], edges[k + 1], (turns[k] + turns[k + 1]) / 2.0)
            ]
        case Box() as box:
            return _hip(box)
        case _:
            return []


def _round(
    sides: int, bottom: float, top: float, height: float
) -> list[tuple[Array, float, float]]:
    """Return the faces of a cone or frustum; a round one as sectors."""
    outer, inner = Regular(sides, bottom).corners(), Regular(sides, top).corners()
    slope = degrees(atan2(height, (bottom - top) / 2.0))
    faces = sides or SECTORS
    step = len(outer) // faces
    found: list[tuple[Array, float, float]] = []
    for k in range(faces):
        own = np.arange(k * step, (k + 1) * step + 1) % len(outer)
        middle = (outer[own[0]] + outer[own[-1]]) / 2.0
        corners = np.vstack([outer[own], inner[own][::-1]] if top > 0.0 else [outer[own], [[0, 0]]])
        found.append((corners, slope, float(np.arctan2(middle[1], middle[0]))))
    return found


def _dome(dome: Dome) -> list[tuple[Array, float, float]]:
    """Return rings of even slope, each of sectors: r = R sin of the slope."""
    steepest = degrees(atan2(dome.across / 2.0, dome.radius - dome.height))
    turns = np.linspace(0.0, steepest, BANDS + 1)
    return [
        (corners, (turns[k] + turns[k + 1]) / 2.0, angle)
        for k in range(BANDS)
        for corners, _, angle in _round(
            0,
            2.0 * dome.radius * sin(turns[k + 1] * pi / 180.0),
            2.0 * dome.radius * sin(turns[k] * pi / 180.0),
            1.0,
        )
    ]


def _both(length: float, y0: float, y1: float, slope: float) -> list[tuple[Array, float, float]]:
    """Return the two planes of a ridged roof between the distances y0 and y1 from its ridge."""
    x = length / 2.0
    right = np.array([[-x, y0], [x, y0], [x, y1], [-x, y1]])
    return [(right, slope, pi / 2.0), (right * [1.0, -1.0], slope, -pi / 2.0)]


def _hip(box: Box) -> list[tuple[Array, float, float]]:
    """Return the four sides of a tapered box."""
    top = box.top_plan
    a, b, c, d = box.length / 2.0, box.width / 2.0, top.length / 2.0, top.width / 2.0
    found: list[tuple[Array, float, float]] = []
    for sign, angle in ((1.0, 0.0), (-1.0, pi)):
        if a > c:
            side = np.array([[a, -b], [a, b], [c, d], [c, -d]]) * [sign, 1.0]
            found.append((side, degrees(atan2(box.height, a - c)), angle))
    for sign, angle in ((1.0, pi / 2.0), (-1.0, -pi / 2.0)):
        if b > d:
            side = np.array([[-a, b], [a, b], [c, d], [-c, d]]) * [1.0, sign]
            found.append((side, degrees(atan2(box.height, b - d)), angle))
    return found
