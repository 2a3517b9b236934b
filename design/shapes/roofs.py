"""Curved roofs: dome and vault."""

from math import acos, atan2, degrees, pi, sqrt

import numpy as np
import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from .forms import Form, Prism, Ridge
from .hulls import NO_HULLS, Disc, Hull, Moments
from .plans import Regular
from .prism import along_x, hulls_along_x
from .shape import SizedShape
from .slopes import RidgedRoof, Roof, RoofFace, faces_of_a_cap, faces_of_an_arch

ARC_STEPS = 64
"""Straight pieces that stand for a half circle where an outline is drawn: 0.04 % of its area."""


class Dome(Roof, SizedShape, frozen=True):
    """A cap of a ball, ``height`` up to half of ``across``, open below; hollow with ``wall``."""

    across: float
    height: float
    wall: float | None = None

    @property
    def radius(self) -> float:
        """Return the ball's radius in m: (a2/4 + h2)/(2 h)."""
        return (self.across**2 / 4.0 + self.height**2) / (2.0 * self.height)

    def moments(self) -> Moments:
        """Return the cap's moments less those of the cap ``wall`` inside."""
        outer = _cap(self.radius, self.height)
        if self.wall is None:
            return outer
        return outer - _cap(self.radius - self.wall, self.height - self.wall)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside, as level circles on the ball."""
        return (_cap_hull(self.radius, self.height),)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hollow."""
        if self.wall is None:
            return NO_HULLS
        return (_cap_hull(self.radius - self.wall, self.height - self.wall),)

    def slopes(self) -> tuple[float, float]:
        """Return the cap's area 2 pi R h in m2 and its centroid, at half its height."""
        return 2.0 * pi * self.radius * self.height, self.height / 2.0

    def contact(self) -> BaseGeometry:
        """Return the ring under its wall, or its underside."""
        outside = Regular(0, self.across)
        if self.wall is None:
            return outside.polygon()
        radius, height = self.radius - self.wall, self.height - self.wall
        inside = 2.0 * sqrt(height * (2.0 * radius - height))
        return Polygon(outside.corners(), [Regular(0, inside).corners()])

    def as_form(self) -> Form:
        """Return a round prism as wide as it is half-way up."""
        half_way = self.radius - self.height / 2.0
        return Prism(Regular(0, 2.0 * sqrt(self.radius**2 - half_way**2)))

    @property
    def named_plan(self) -> Regular:
        """Return its foot's outline."""
        return Regular(0, self.across)

    def roof_faces(self) -> list[RoofFace]:
        """Return rings of even slope."""
        steepest = degrees(atan2(self.across / 2.0, self.radius - self.height))
        return faces_of_a_cap(self.radius, steepest)

    @property
    def wall_thickness(self) -> float | None:
        """Return its wall, None where it is solid."""
        return self.wall

    @property
    def clear_width(self) -> float | None:
        """Return the width within its wall."""
        return None if self.wall is None else self.across - 2.0 * self.wall


class Vault(RidgedRoof, SizedShape, frozen=True):
    """A half-round on straight sides, its ridge along ``length``; sizes in m.

    ``height`` is at least half of ``width``. Hollow with ``wall``: open below and at both ends.
    """

    length: float
    width: float
    height: float
    wall: float | None = None

    def moments(self) -> Moments:
        """Return the section's moments drawn out along the ridge, less the hollow's."""
        outer = _arch_moments(self.length, self.width, self.height)
        if self.wall is None:
            return outer
        inside = (self.width - 2.0 * self.wall, self.height - self.wall)
        return outer - _arch_moments(self.length, *inside)

    def hulls(self) -> tuple[Hull, ...]:
        """Return the filled outside."""
        return hulls_along_x([_arch(self.width, self.height)], self.length)

    def cavities(self) -> tuple[Hull, ...]:
        """Return the hollow."""
        if self.wall is None:
            return NO_HULLS
        inside = _arch(self.width - 2.0 * self.wall, self.height - self.wall)
        return hulls_along_x([inside], self.length)

    def slopes(self) -> tuple[float, float]:
        """Return the area of its round in m2 and its centroid, 2 r/pi above the springing."""
        radius = self.width / 2.0
        return pi * radius * self.length, self.height - radius + 2.0 * radius / pi

    def inner_width(self) -> float:
        """Return the width between its sides in m, 0 if it is filled."""
        return 0.0 if self.wall is None else self.width - 2.0 * self.wall

    def as_form(self) -> Form:
        """Return a round ridge."""
        return Ridge(self.length, self.width, self.width, is_round=True)

    def roof_faces(self) -> list[RoofFace]:
        """Return bands of even slope."""
        return faces_of_an_arch(self.length, self.width)

    @property
    def wall_thickness(self) -> float | None:
        """Return its wall, None where it is solid."""
        return self.wall


def _cap(radius: float, height: float) -> Moments:
    """Return the moments of a ball's cap about its base: V = pi h2 (3 R - h)/3.

    Its centroid lies 3 (2 R - h)2 / (4 (3 R - h)) from the ball's centre (Beyer, CRC Standard
    Mathematical Tables).
    """
    volume = pi * height**2 * (3.0 * radius - height) / 3.0
    centre = 3.0 * (2.0 * radius - height) ** 2 / (4.0 * (3.0 * radius - height))
    return Moments(volume, np.array([0.0, 0.0, volume * (centre - (radius - height))]))


def _cap_hull(radius: float, height: float) -> Hull:
    angles: Array = np.linspace(0.0, acos((radius - height) / radius), ARC_STEPS // 2 + 1)
    discs = tuple(
        Disc((0.0, 0.0, radius * float(np.cos(a)) - (radius - height)), radius * float(np.sin(a)))
        for a in angles[1:]
    )
    return Hull(np.array([[0.0, 0.0, height]]), discs)


def _arch(width: float, height: float) -> Array:
    """Return the arch's corners (k, 2) in y and z, its round as a polygon of the same area."""
    radius = width / 2.0
    step = pi / ARC_STEPS
    fit = sqrt(step / np.sin(step))
    angles = np.linspace(0.0, pi, ARC_STEPS + 1)
    round_ = radius * np.column_stack([np.cos(angles), fit * np.sin(angles)])
    round_[:, 1] += height - radius
    return np.vstack([[radius, 0.0], round_, [-radius, 0.0]])


def _arch_moments(length: float, width: float, height: float) -> Moments:
    """Return the moments of straight sides and half a circle, 4 r/(3 pi) its centroid's height."""
    radius = width / 2.0
    sides = along_x(shapely.box(-radius, 0.0, radius, height - radius), length)
    volume = pi / 2.0 * radius**2 * length
    up = height - radius + 4.0 * radius / (3.0 * pi)
    return sides + Moments(volume, np.array([0.0, 0.0, volume * up]))
