"""Suction on closed roofs, level and pitched: EN 1991-1-4 sections 7.2.3 and 7.2.5.

Zones lie by e = min(b, 2 h): F and G to e/10 from the windward edge, F for e/4 from either corner,
H to e/2 (on a slope that the wind blows up, to the ridge), I beyond; J for e/10 behind the ridge.
Coefficients are upward and above 0, between loaded areas of 1 and 10 m2 linear in log10 A.
"""

from collections.abc import Sequence
from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import positive
from .roofs import flat_roof_suction

FLAT_TO, PITCHED_FROM = 5.0, 7.5
"""Slopes in degrees up to which a roof is flat (7.2.3), and from which the pitched table holds;
linear between (judgement: the standard changes from the one to the other at 5)."""

ACROSS_RIDGE, ALONG_RIDGE = "across", "along"

Reach = tuple[Array, Array]


def edge_length(h: ArrayLike, b: ArrayLike) -> Array:
    """Return e = min(b, 2 h) in the unit of both. Source: EN 1991-1-4:2005 Fig. 7.6 and 7.8."""
    return np.minimum(np.asarray(b, dtype=float), 2.0 * np.asarray(h, dtype=float))


def flat_strips(h: float, b: Array, area: float) -> tuple[Array, Array]:
    """Return where the strips of a flat roof begin (3, D) in m, and their suction (3, D).

    The first is the mean over the width ``b`` (D,) of corners F and edge G. ``h`` in m, ``area``
    loaded in m2. Source: EN 1991-1-4:2005 Table 7.2 (sharp eaves) and Fig. 7.6.
    """
    corner, edge, within, beyond = (-float(flat_roof_suction(zone, area)) for zone in "FGHI")
    e = edge_length(h, b)
    return np.stack([0.0 * e, e / 10.0, e / 2.0]), np.stack(
        [_windward(corner, edge, e, b), within + 0.0 * e, beyond + 0.0 * e]
    )


def pitched_suction(wind: str, zone: str, slope: ArrayLike, area: float) -> Array:
    """Return the suction of a zone of a pitched roof, wind "across" or "along" the ridge.

    ``slope`` in degrees, linear between printed ones and held beyond 5 and 60; below 0 where the
    table knows pressure only. ValueError for another wind or zone or an area not above 0.
    Source: EN 1991-1-4:2005 Tables 7.4a and 7.4b.
    """
    zones = _pitched()
    if (wind, zone) not in zones:
        raise ValueError(
            f'zone: found "{zone}" with wind "{wind}", expected F to J across or along'
        )
    slopes, ten, one = zones[wind, zone]
    share = float(np.clip(np.log10(positive("area", area)), 0.0, 1.0))
    at = np.asarray(slope, dtype=float)
    return np.asarray(-np.interp(at, slopes, one + (ten - one) * share))


def slope_suction(
    slope: ArrayLike, facing: Array, reach: Reach, h: float, b: Array, area: float
) -> Array:
    """Return the suction (…, D) on slopes of a pitched roof, the mean of each over its slope.

    ``slope`` (…, 1) in degrees; ``facing`` (…, D) is the cosine of the wind's angle off its fall, 1
    where it blows up it; ``reach`` (…, D) where it begins and ends, in m downwind of the roof's
    windward edge; ``h`` and ``b`` (D,) the roof's height and width in m; ``area`` loaded in m2.
    From across the ridge to along it by cos2 of the angle (judgement). Nothing where the table
    knows pressure only.
    """
    start, end = reach
    e = edge_length(h, b)

    def of(wind: str, zone: str) -> Array:
        return pitched_suction(wind, zone, slope, area)

    edge = _windward(of(ACROSS_RIDGE, "F"), of(ACROSS_RIDGE, "G"), e, b)
    up = mean(start, end, [(0.1 * e, edge), (np.inf, of(ACROSS_RIDGE, "H"))])
    down = mean(
        0.0 * start,
        end - start,
        [(0.1 * e, of(ACROSS_RIDGE, "J")), (np.inf, of(ACROSS_RIDGE, "I"))],
    )
    edge = _windward(of(ALONG_RIDGE, "F"), of(ALONG_RIDGE, "G"), e, b)
    zones = [(0.1 * e, edge), (0.5 * e, of(ALONG_RIDGE, "H")), (np.inf, of(ALONG_RIDGE, "I"))]
    across = np.where(facing > 0.0, up, down)
    found = facing**2 * across + (1.0 - facing**2) * mean(start, end, zones)
    return np.maximum(found, 0.0)


def _windward(F: Array | float, G: Array | float, e: Array, b: Array) -> Array:
    """Return the mean over the width of two corners F of e/4 and the edge G between them."""
    corners = np.minimum(e / 2.0, b) / b
    return F * corners + G * (1.0 - corners)


def mean(start: Array, end: Array, zones: Sequence[tuple[Array | float, Array | float]]) -> Array:
    """Return the mean from start to end (D,) of zones that each reach to a distance in m."""
    total, begins = np.zeros_like(start), -np.inf
    for ends, value in zones:
        total = total + value * np.maximum(np.minimum(end, ends) - np.maximum(start, begins), 0.0)
        begins = ends
    return total / np.maximum(end - start, 1e-12)


@cache
def _pitched() -> dict[tuple[str, str], tuple[Array, Array, Array]]:
    """Return by wind and zone the printed slopes (S,), c_pe,10 and c_pe,1 (S,)."""
    found: dict[tuple[str, str], list[tuple[float, float, float]]] = {}
    for row in references.table("wind/en1991_pitched_roofs").rows:
        values = float(row["slope_deg"]), float(row["cpe10"]), float(row["cpe1"])
        found.setdefault((row["wind"], row["zone"]), []).append(values)
    table = {key: np.array(sorted(rows)).T for key, rows in found.items()}
    return {key: (columns[0], columns[1], columns[2]) for key, columns in table.items()}
