"""Suction on small parts of roofs and lids: ASCE/SEI 7 Fig. 30.3-2A to 30.3-2D."""

from functools import cache

import numpy as np

from ... import references
from ...units.arrays import Array
from ..roofs.local_pressure import local_coefficient

_LEVEL_TO = 7.0
"""Slope in degrees up to which the zones of level roofs hold."""


def local_suction(slope: float, h: float, sides: tuple[float, float]) -> float:
    """Return the suction on one panel of a roof or lid, above 0, on an area of 1 m2 and less.

    Of a level one ``sides`` m in plan and ``h`` m up the mean over what lies in the edge and corner
    zones, whose widths go by h. Of a sloped one that of the zones at the ends of ridge and eaves,
    0.9 m wide at least, in which small roofs lie whole. The velocity pressure at its top counts,
    with no gust effect beside it. Source: ASCE/SEI 7-16 Fig. 30.3-2A to 30.3-2D.
    """
    edge, corner = _level("2"), _level("3")
    level = edge + (corner - edge) * corner_share(h, sides)
    slopes, suctions = _pitched()
    return float(np.interp(slope, (_LEVEL_TO, *slopes), (level, *suctions)))


def corner_share(h: float, sides: tuple[float, float]) -> float:
    """Return what share of the edge zone of a level roof lies in its corners.

    The edge zone is 0.6 h wide all round; in each corner an angle of two arms, 0.6 h long and 0.2 h
    deep. Source: ASCE/SEI 7-16 Fig. 30.3-2A.
    """
    long = local_coefficient("ASCE", "edge zone over h") * h
    deep = local_coefficient("ASCE", "corner zone over h") * h
    arms = [(min(long, side / 2.0), min(deep, side / 2.0)) for side in sides]
    (a, c), (b, d) = arms
    corners = 4.0 * (a * d + b * c - c * d)
    inner = max(sides[0] - 2.0 * a, 0.0) * max(sides[1] - 2.0 * b, 0.0)
    return corners / max(sides[0] * sides[1] - inner, 1e-12)


@cache
def _pitched() -> tuple[Array, Array]:
    """Return slopes in degrees above level ones and the suction at the ends of ridge and eaves."""
    table = references.table("wind/asce7_local_roof")
    rows = [row for row in table.where("zone", "3") if float(row["slope_deg"]) > _LEVEL_TO]
    return (
        np.array([float(row["slope_deg"]) for row in rows]),
        np.array([-float(row["GCp"]) for row in rows]),
    )


def _level(zone: str) -> float:
    for row in references.table("wind/asce7_local_roof").where("slope_deg", "0"):
        if row["zone"] == zone:
            return -float(row["GCp"])
    raise KeyError(zone)
