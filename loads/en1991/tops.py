"""Wind normal to tops, roofs and leaning boards by EN 1991-1-4.

Closed tops by 7.2.3 and 7.2.5, of which the loaded area is the whole top. Free roofs by the overall
force coefficients of 7.3, down and up, held beyond 30 degrees and from 45 linear to a signboard at
90 (judgement): of one slope its force a quarter of the way from the windward edge, of two on both
or on either alone (Fig. 7.16 and 7.17).
"""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...units.arrays import Array
from ..roofs.local_pressure import local_coefficient
from ..roofs.roof_wind import FreeRoofBoard, RoofWind, halves, slopes_of, terms_of
from . import closed_roofs
from .roofs import canopy, flat_roof_suction

DOWN, UP = "roof pressed", "roof lifted"
ROOF_SIDES = ("windward slope alone", "leeward slope alone")
_CASES = ((DOWN,), (UP,), *((way, side) for way in (DOWN, UP) for side in ROOF_SIDES))

LEANS_FROM = 45.0
"""Slope in degrees from which a free board leans toward a signboard, linear to 90 (judgement)."""


class _Tops:
    """What wind does normal to surfaces by EN 1991-1-4."""

    cases = _CASES
    document = "EN 1991-1-4 Tables 7.2, 7.4, 7.6 and 7.7"
    level_to = closed_roofs.FLAT_TO

    def strips(self, h: float, L: Array, b: Array, area: float) -> tuple[Array, Array]:
        """Return where strips begin and their suction: Table 7.2."""
        return closed_roofs.flat_strips(h, b, area)

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
        """Return the suction on a slope: Tables 7.4a and 7.4b, blended to the flat roof."""
        level, pitched = closed_roofs.FLAT_TO, closed_roofs.PITCHED_FROM
        steep = closed_roofs.slope_suction(np.maximum(slope, level), facing, reach, h, b, area)
        share = np.clip((slope - level) / (pitched - level), 0.0, 1.0)
        starts, values = closed_roofs.flat_strips(h, b, area)
        ends = [*starts[1:], np.full_like(b, np.inf)]
        flat = closed_roofs.mean(*reach, list(zip(ends, values, strict=True)))
        return flat + share * (steep - flat)

    def on_board(
        self, board: FreeRoofBoard, along: Array, obstructed: Array, solid: float, face: float
    ) -> RoofWind:
        """Return the wind on a board that wind passes beneath: Table 7.6."""
        upright = _upright(board.slope)
        angle = np.full(len(along), np.radians(board.slope))
        wind = np.concatenate([along, np.zeros((len(along), 1))], axis=1)
        at = board.place(halves(board.region, wind @ board.axes)[1][:, 0])
        terms = np.zeros((len(along), len(_CASES), 8))
        for k, c in enumerate(canopy("monopitch", angle, obstructed)):
            push = -(1.0 - upright) * solid * board.region.area * c
            terms[:, k] = terms_of(push[:, None] * board.up, at)
        if upright > 0.0:
            # a sign's force acts normal to it: its level part is counted with the signs
            force = np.zeros((len(along), 1, 3))
            facing = -(along @ board.fall)
            force[:, 0, 2] = -upright * face * board.region.area * board.up[2] * facing
            middle = board.place(plane.centroids(np.array(board.region)))
            terms[:, :2] += terms_of(force, middle)
        return RoofWind(terms, np.full(len(along), upright))

    def on_slopes(
        self, body: Body, closed: BaseGeometry, along: Array, obstructed: Array
    ) -> RoofWind:
        """Return the wind on a free roof with slopes: Table 7.7.

        A hollow gable takes it normal to its slopes, and along the ridge what its outline takes.
        """
        faces, hollow = slopes_of(body, closed)
        terms = np.zeros((len(along), len(_CASES), 8))
        standing = np.ones(len(along))
        for area, slope, fall, up, middle in faces:
            upright, facing = _upright(slope), -(along @ fall)
            kind = "duopitch" if slope > 0.0 else "monopitch"
            angle = np.full(len(along), np.radians(slope))
            for k, c in enumerate(canopy(kind, angle, obstructed)):
                push = -(1.0 - upright) * area * c[:, None] * up
                its = terms_of(push, middle)
                terms[:, k] += its
                terms[:, 2 + 2 * k] += its * (facing > 0.0)[:, None]
                terms[:, 3 + 2 * k] += its * (facing <= 0.0)[:, None]
            if hollow:
                standing = 1.0 - (1.0 - upright) * facing**2
        return RoofWind(terms, standing)

    def inside(self, open_to_wind: bool) -> float:
        """Return c_pi of a closed body, or of one with a dominant opening (7.2.9)."""
        return local_coefficient("EN", "within an open body" if open_to_wind else "within")

    def panel(self, place: str, open_to_wind: bool = False) -> float:
        """Return c_pe,1 of one panel (Table 7.1) with the air inside."""
        closed = "within inward" if place == "inward" else "within"
        within = self.inside(True) if open_to_wind else local_coefficient("EN", closed)
        return local_coefficient("EN", place) + within

    def beside(self, place: str) -> float:
        """Return the coefficient of a place that those tables leave out."""
        return local_coefficient("EN", place)

    def overhang(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return c_pe,1 of the roof with that of the wall below beneath it (7.2.1 (3))."""
        return self.local_suction(slope, h, sides) + local_coefficient("EN", "inward")

    def local_suction(self, slope: float, h: float, sides: tuple[float, float]) -> float:
        """Return c_pe,1 of the worst zone of a flat or pitched roof (Tables 7.2 and 7.4)."""
        if slope <= closed_roofs.FLAT_TO:
            return -float(flat_roof_suction("F", 1.0))
        return max(
            float(closed_roofs.pitched_suction(wind, zone, slope, 1.0))
            for wind in (closed_roofs.ACROSS_RIDGE, closed_roofs.ALONG_RIDGE)
            for zone in "FG"
        )


def _upright(slope: float) -> float:
    return float(np.clip((slope - LEANS_FROM) / (90.0 - LEANS_FROM), 0.0, 1.0))


EN1991_TOPS = _Tops()
