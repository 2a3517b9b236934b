"""The slopes of a shape in its own plan: what lies beneath them, and the planes that they make."""

from abc import abstractmethod
from math import atan2, degrees, pi

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .plans import Rectangle, Regular
from .shape import ALONG_AXIS, Shape

BANDS = 6
"""Bands of even slope that stand for a quarter of a round."""

SECTORS = 12
"""Sectors that stand for a roof that is round in plan."""


class Skirt(ByIdentity, frozen=True):
    """What lies beneath slopes in plan (m), and how far they rise over what run, in m.

    What is round all over rises 0.
    """

    region: BaseGeometry
    rise: float = 0.0
    run: float = 1.0


class RoofFace(ByIdentity, frozen=True):
    """A plane of a roof: ``corners`` (k, 2) in plan in m, ``slope`` in degrees, and its ``fall``.

    ``fall`` is the plan angle in rad toward which it slopes down.
    """

    corners: Array
    slope: float
    fall: float


class OpenSlope(ByIdentity, frozen=True):
    """A slope over an open space: area in m2, slope in degrees, plan angle of its fall in rad.

    ``normal`` (3,) outward and ``middle`` (3,) in m along the shape's own axes.
    """

    area: float
    slope: float
    fall: float
    normal: Array
    middle: Array


class Roof(Shape):
    """What bodies that end upward in slopes or a round share: open below where they have a wall."""

    is_roof = True
    fills_space = True

    height: float

    def foot(self) -> BaseGeometry:
        """Return the filled outline of its underside."""
        return self.from_above()

    def crown(self) -> BaseGeometry:
        """Return its outline from above."""
        return self.from_above()

    def skirt(self) -> Skirt | None:
        """Return all beneath it, round as most are."""
        return Skirt(self.from_above())

    @property
    def open_below(self) -> bool:
        """Return whether it is hollow."""
        return self.wall_thickness is not None

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return its height from below and of a filled one, from the side its wall."""
        wall = self.wall_thickness
        return (self.height, True) if wall is None or abs(along[2]) > ALONG_AXIS else (wall, False)


class RidgedRoof(Roof):
    """A roof along a ridge, ``length`` by ``width`` in plan, a hollow one open at both ends."""

    length: float
    width: float

    @abstractmethod
    def inner_width(self) -> float:
        """Return the width of the hollow at its foot in m, 0 if it is filled."""

    def contact(self) -> BaseGeometry:
        """Return the underside, or the two feet of its sides where it is hollow."""
        outside, inside = self.named_plan.polygon(), self.inner_width()
        if inside <= 0.0:
            return outside
        return outside.difference(Rectangle(2.0 * self.length, inside).polygon())

    @property
    def named_plan(self) -> Rectangle:
        """Return its outline in plan."""
        return Rectangle(self.length, self.width)

    @property
    def open_sideways(self) -> bool:
        """Return whether it is hollow: its ends are open."""
        return self.open_below


def faces_round(sides: int, bottom: float, top: float, height: float) -> list[RoofFace]:
    """Return the faces of a cone or frustum; a round one as sectors."""
    outer, inner = Regular(sides, bottom).corners(), Regular(sides, top).corners()
    slope = degrees(atan2(height, (bottom - top) / 2.0))
    faces = sides or SECTORS
    step = len(outer) // faces
    found: list[RoofFace] = []
    for k in range(faces):
        own = np.arange(k * step, (k + 1) * step + 1) % len(outer)
        middle = (outer[own[0]] + outer[own[-1]]) / 2.0
        corners = np.vstack([outer[own], inner[own][::-1]] if top > 0.0 else [outer[own], [[0, 0]]])
        found.append(RoofFace(corners, slope, float(np.arctan2(middle[1], middle[0]))))
    return found


def faces_of_a_cap(radius: float, steepest: float) -> list[RoofFace]:
    """Return rings of even slope, each of sectors, up to ``steepest`` degrees: r = R sin of it."""
    turns = np.linspace(0.0, steepest, BANDS + 1)
    reach = 2.0 * radius * np.sin(turns * pi / 180.0)
    return [
        RoofFace(one.corners, (turns[k] + turns[k + 1]) / 2.0, one.fall)
        for k in range(BANDS)
        for one in faces_round(0, float(reach[k + 1]), float(reach[k]), 1.0)
    ]


def faces_of_a_ridge(length: float, y0: float, y1: float, slope: float) -> list[RoofFace]:
    """Return the two planes of a ridged roof between the distances y0 and y1 from its ridge."""
    x = length / 2.0
    right = np.array([[-x, y0], [x, y0], [x, y1], [-x, y1]])
    return [RoofFace(right, slope, pi / 2.0), RoofFace(right * [1.0, -1.0], slope, -pi / 2.0)]


def faces_of_an_arch(length: float, width: float) -> list[RoofFace]:
    """Return bands of even slope of a half-round along its ridge."""
    turns = np.linspace(0.0, 90.0, BANDS + 1)
    edges = width / 2.0 * np.sin(np.radians(turns))
    return [
        one
        for k in range(BANDS)
        for one in faces_of_a_ridge(length, edges[k], edges[k + 1], (turns[k] + turns[k + 1]) / 2.0)
    ]


def faces_of_a_hip(
    low: tuple[float, float], high: tuple[float, float], height: float
) -> list[RoofFace]:
    """Return the sides of a rectangle that tapers from its (length, width) to its top's."""
    (a, b), (c, d) = ((x / 2.0, y / 2.0) for x, y in (low, high))
    found: list[RoofFace] = []
    for sign, angle in ((1.0, 0.0), (-1.0, pi)):
        if a > c:
            side = np.array([[a, -b], [a, b], [c, d], [c, -d]]) * [sign, 1.0]
            found.append(RoofFace(side, degrees(atan2(height, a - c)), angle))
    for sign, angle in ((1.0, pi / 2.0), (-1.0, -pi / 2.0)):
        if b > d:
            side = np.array([[-a, b], [a, b], [c, d], [-c, d]]) * [1.0, sign]
            found.append(RoofFace(side, degrees(atan2(height, b - d)), angle))
    return found
