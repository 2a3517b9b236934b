"""Wind normal to tops, roofs and leaning boards by ASCE/SEI 7.

Closed tops by Fig. 27.3-1. Free roofs by Fig. 27.3-4 to 27.3-7 up to 45 degrees, from there linear
to a sign's own at 90. From across the ridge to along it by cos2 of the wind's angle; below 7.5
degrees blended to the level row, and there the row along the ridge is tried by itself as well, both
ways: judgements.
"""

from math import cos, radians, sin

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...units.arrays import Array
from ..roofs.local_pressure import local_coefficient
from ..roofs.roof_wind import FreeRoofBoard, RoofWind, halves, length_along, slopes_of, terms_of
from ..roofs.tops import OVERHANG
from . import closed_tops
from .components import local_suction
from .free_roofs import (
    EITHER,
    FREE_LEVEL_TO,
    HIGH,
    LOW,
    STEEPEST_FREE,
    WIND_ACROSS,
    along_coefficients,
    net_coefficients,
)

_CASES = (("roof A",), ("roof B",), ("roof lifted",), ("roof pressed",))
"""The figures' cases, and the row along the ridge tried by itself on what is nearly level."""


class _Tops:
    """What wind does normal to surfaces by ASCE/SEI 7."""

    cases = _CASES
    document = "ASCE/SEI 7 Fig. 27.3-1 to 27.3-7"
    level_to = closed_tops.LEVEL_ROOF_TO

    def strips(self, h: float, L: Array, b: Array, area: float) -> tuple[Array, Array]:
        """Return where strips begin and their suction: Fig. 27.3-1, the same whatever the area."""
        starts = closed_tops.strip_edges()[:, None] * h + 0.0 * L
        return starts, closed_tops.strip_suction(h / L).T

    def slope(
        self,
        slope: Array,
        facing: Array,
        reach: tuple[Array, Array],
        h: float,
        L: Array,
        b: Array,
        area: float,
    ) -> Array:
        """Return the suction on a slope: Fig. 27.3-1."""
        strip = closed_tops.mean_strip_suction(*reach, h, L)
        return closed_tops.roof_suction(slope, facing, h / L, strip)

    def on_board(
        self, board: FreeRoofBoard, along: Array, obstructed: Array, solid: float, face: float
    ) -> RoofWind:
        """Return the wind on a board that wind passes beneath: Fig. 27.3-4 and 27.3-7."""
        return on_board(board, along, obstructed, solid, face)

    def on_slopes(
        self, body: Body, closed: BaseGeometry, along: Array, obstructed: Array
    ) -> RoofWind:
        """Return the wind on a free roof with slopes: Fig. 27.3-5 and 27.3-7."""
        return on_slopes(body, closed, along, obstructed)

    def inside(self, open_to_wind: bool) -> float:
        """Return GCpi of a closed body (Table 26.13-1), or of one that is open: a judgement."""
        return local_coefficient("ASCE", "within an open body" if open_to_wind else "within")

    def panel(self, place: str, open_to_wind: bool = False) -> float:
        """Return the coefficient on one panel: a judgement after Fig. 30.3-1."""
        return local_coefficient("ASCE", place) + (self.inside(True) if open_to_wind else 0.0)

    def beside(self, place: str) -> float:
        """Return the coefficient of a place that those figures leave out."""
        return local_coefficient("ASCE", place)

    def overhang(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return the greater of strips with pressure beneath, and Fig. 30.3-2 with it in."""
        strips = float(closed_tops.strip_suction(1.0).max()) + self.beside(OVERHANG)
        return max(strips, local_suction(slope, h, sides))

    def local_suction(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return the suction on one panel of a roof or lid: Fig. 30.3-2A to D, the edge zones."""
        return local_suction(slope, h, sides)


ASCE7_TOPS = _Tops()


def on_board(
    board: FreeRoofBoard, along: Array, obstructed: Array, solid: float, face: float
) -> RoofWind:
    """Return the wind on a board that wind passes beneath.

    ``along`` (D, 2) is the way in which the wind blows, ``obstructed`` (D,) how far what stands
    beneath keeps it off, 0 to 1; ``solid`` the share of a solid board's force that a lattice takes,
    and ``face`` the sign's own coefficient.
    """
    level, upright = _shares(board.slope)
    facing = -(along @ board.fall)
    weight = (facing**2)[:, None]
    middle = board.place(plane.centroids(np.array(board.region)))
    ridge = along_coefficients(length_along(board.plan, along), middle[2], obstructed)
    terms = np.zeros((len(along), len(_CASES), 8))
    if level < 1.0:
        slope = radians(board.slope)
        rise = np.array([*(-board.fall * cos(slope)), sin(slope)])
        areas, centres = halves(board.region, (rise @ board.axes)[None])
        low = net_coefficients("monoslope", LOW, board.slope, obstructed)
        high = net_coefficients("monoslope", HIGH, board.slope, obstructed)
        for half in (0, 1):
            across = np.where((facing > 0.0)[:, None], low[:, :, half], high[:, :, 1 - half])
            normal = (1.0 - level) * (1.0 - upright) * _turned(weight, across, ridge)
            push = -solid * areas[0, half] * normal[..., None] * board.up
            terms[:, :2] += terms_of(push, board.place(centres[0, half]))
    if level > 0.0:
        wind = np.concatenate([along, np.zeros((len(along), 1))], axis=1)
        areas, centres = halves(board.region, wind @ board.axes)
        row = net_coefficients("monoslope", EITHER, 0.0, obstructed)
        for half in (0, 1):
            push = -level * solid * areas[:, half, None] * row[:, :, half]
            at = board.place(centres[:, half])[:, None]
            terms[:, :2] += terms_of(push[..., None] * board.up, at)
        push = -level * solid * board.region.area * ridge
        terms[:, 2:] += terms_of(push[..., None] * board.up, middle)
    if upright > 0.0:
        # a sign's force acts normal to it: its level part is counted with the signs
        force = np.zeros((len(along), 1, 3))
        force[:, 0, 2] = -upright * face * board.region.area * board.up[2] * facing
        terms += terms_of(force, middle)
    return RoofWind(terms, np.full(len(along), upright))


def on_slopes(body: Body, closed: BaseGeometry, along: Array, obstructed: Array) -> RoofWind:
    """Return the wind on a free roof with slopes, ``closed`` is its plan.

    A hollow gable takes it normal to its slopes, level force and all, and along the ridge what its
    outline takes; of any other roof it is the vertical part, beside the force on its outline.
    """
    faces, hollow = slopes_of(body, closed)
    length = length_along(closed, along)
    ridge = along_coefficients(length, 0.5 * (body.bottom + body.top), obstructed)
    terms = np.zeros((len(along), len(_CASES), 8))
    standing = np.ones(len(along))
    for area, slope, fall, up, middle in faces:
        level, upright = _shares(slope)
        facing = -(along @ fall)
        weight = (facing**2)[:, None]
        row = net_coefficients("pitched", WIND_ACROSS, slope, obstructed)
        across = np.where((facing > 0.0)[:, None], row[:, :, 0], row[:, :, 1])
        flat = net_coefficients("monoslope", EITHER, 0.0, obstructed)
        windward = (0.5 + 0.5 * facing)[:, None]
        even = windward * flat[:, :, 0] + (1.0 - windward) * flat[:, :, 1]
        normal = level * even + (1.0 - level) * (1.0 - upright) * _turned(weight, across, ridge)
        terms[:, :2] += terms_of(-area * normal[..., None] * up, middle)
        terms[:, 2:] += terms_of(-area * level * ridge[..., None] * up, middle)
        if hollow:
            standing = 1.0 - (1.0 - upright) * facing**2
    return RoofWind(terms, standing)


def _turned(weight: Array, across: Array, along: Array) -> Array:
    """Return what lies between the wind across the ridge and along it."""
    return weight * across + (1.0 - weight) * along


def _shares(slope: float) -> tuple[float, float]:
    """Return how far a slope in degrees counts as level, and how far as upright, 0 to 1."""
    level = float(np.clip(1.0 - slope / FREE_LEVEL_TO, 0.0, 1.0))
    return level, float(np.clip((slope - STEEPEST_FREE) / (90.0 - STEEPEST_FREE), 0.0, 1.0))
