"""Net pressure on roofs that wind passes beneath: ASCE/SEI 7 Fig. 27.3-4 to 27.3-7.

Coefficients are normal to the surface and above 0 where they press on its upper side; of both sides
together. Cases A and B are to be tried each. ``obstructed`` from 0 (clear flow beneath) to 1.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import fraction, not_negative

FREE_LEVEL_TO, STEEPEST_FREE = 7.5, 45.0
"""The least slope in degrees but 0, and the greatest, that the figures print."""

_CASES = ("A", "B")

HIGH, LOW, WIND_ACROSS, EITHER = (
    "high edge upwind",
    "low edge upwind",
    "across the ridge",
    "either edge upwind",
)


def net_coefficients(roof: str, wind: str, slope: float, obstructed: ArrayLike) -> Array:
    """Return C_N (…, case, half) of cases A and B on the windward and the leeward half.

    ``roof`` is "monoslope" with ``wind`` "high edge upwind" or "low edge upwind", or "pitched" or
    "troughed" with "across the ridge"; ``slope`` in degrees, held within 7.5 and 45, linear
    between. Of "either edge upwind" a monoslope's level row. ValueError where ``obstructed`` is
    outside 0 to 1. Source: ASCE/SEI 7-16 and 7-22 Fig. 27.3-4, 27.3-5 and 27.3-6.
    """
    slopes, values = _printed(roof, wind)
    clear, blocked = (
        np.array([[np.interp(slope, slopes, side[:, c, k]) for k in range(2)] for c in range(2)])
        for side in values
    )
    share = fraction("obstructed", obstructed)[..., None, None]
    return np.asarray(clear + share * (blocked - clear))


def along_coefficients(distance: ArrayLike, h: float, obstructed: ArrayLike) -> Array:
    """Return the mean C_N (…, case) of cases A and B up to ``distance`` m from the windward edge.

    Wind along the ridge or the level edges, any slope up to 45 degrees; the roof ``h`` m above
    ground. Source: ASCE/SEI 7-16 and 7-22 Fig. 27.3-7, strips to h, 2 h and beyond.
    """
    starts, values = _along()
    reach = not_negative("distance", distance)
    edges = np.append(starts * h, np.inf)
    within = np.maximum(np.minimum(reach[..., None], edges[1:]) - edges[:-1], 0.0)
    shares = within / np.maximum(reach, 1e-12)[..., None]
    clear, blocked = (shares @ side for side in values)
    share = fraction("obstructed", obstructed)[..., None]
    return np.asarray(clear + share * (blocked - clear))


@cache
def _printed(roof: str, wind: str) -> tuple[Array, tuple[Array, Array]]:
    """Return the printed slopes (S,) and C_N (S, case, half) in clear and in obstructed flow."""
    rows = [
        row
        for row in references.table("wind/asce7_free_roof_CN").where("roof", roof)
        if row["wind"] == wind
    ]
    found = {
        (row["flow"], float(row["slope_deg"]), row["case"]): (
            float(row["C_NW"]),
            float(row["C_NL"]),
        )
        for row in rows
    }
    slopes = sorted({slope for _, slope, _ in found})
    clear, blocked = (
        np.array([[found[flow, slope, case] for case in _CASES] for slope in slopes])
        for flow in ("clear", "obstructed")
    )
    return np.array(slopes), (clear, blocked)


@cache
def _along() -> tuple[Array, tuple[Array, Array]]:
    """Return where strips begin over h (3,), and C_N (3, case) in clear and obstructed flow."""
    rows = references.table("wind/asce7_free_roof_along").rows
    found = {
        (row["flow"], float(row["from_over_h"]), row["case"]): float(row["C_N"]) for row in rows
    }
    starts = sorted({start for _, start, _ in found})
    clear, blocked = (
        np.array([[found[flow, start, case] for case in _CASES] for start in starts])
        for flow in ("clear", "obstructed")
    )
    return np.array(starts), (clear, blocked)
