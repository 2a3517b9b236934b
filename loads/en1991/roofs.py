"""Free roofs (EN 1991-1-4 section 7.3) and closed flat roofs (7.2.3)."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import fraction, positive

CANOPIES = ("monopitch", "duopitch")


def canopy(kind: str, angle: ArrayLike, blockage: ArrayLike) -> tuple[Array, Array]:
    """Return the overall c_f downward and upward (below 0) of a free roof, normal to its slope.

    ``angle`` alpha in rad, below 0 for a trough; ``blockage`` phi of the space beneath, 0 clear to
    1 blocked; they broadcast. Linear between the printed angles, held beyond them, and in phi.
    Wind from any direction: the figure's greatest and least. ValueError for another kind, a
    monopitch below 0, or phi outside 0 to 1. Source: EN 1991-1-4:2005 Tables 7.6 and 7.7.
    """
    if kind not in CANOPIES:
        raise ValueError(f'kind: found "{kind}", expected "monopitch" or "duopitch"')
    degrees, phi = np.degrees(np.asarray(angle, dtype=float)), fraction("blockage", blockage)
    if kind == "monopitch" and np.any(degrees < 0.0):
        raise ValueError(f"angle: found {degrees.min():g} degrees, expected 0 or more")
    angles, down, clear, blocked = _canopies(kind)
    upward = np.interp(degrees, angles, clear) * (1.0 - phi)
    upward = upward + np.interp(degrees, angles, blocked) * phi
    return np.broadcast_to(np.interp(degrees, angles, down), upward.shape), np.asarray(upward)


def flat_roof_suction(zone: str, area: ArrayLike) -> Array:
    """Return c_pe of a zone "F", "G", "H" or "I" of a flat roof with sharp eaves, below 0.

    Between loaded ``area`` 1 and 10 m2 linear in log10 A, held beyond. ValueError for another zone
    or an area not above 0. Source: EN 1991-1-4:2005 Table 7.2 and Fig. 7.2.
    """
    rows = {row["zone"]: row for row in references.table("wind/en1991_flat_roofs").rows}
    if zone not in rows:
        raise ValueError(f'zone: found "{zone}", expected "F", "G", "H" or "I"')
    ten = float(rows[zone]["cpe10"])
    one = float(rows[zone]["cpe1"] or ten)
    return one - (one - ten) * np.clip(np.log10(positive("area", area)), 0.0, 1.0)


@cache
def _canopies(kind: str) -> tuple[Array, Array, Array, Array]:
    rows = references.table("wind/en1991_canopies").where("kind", kind)
    columns = ("angle_deg", "cf_down", "cf_up_clear", "cf_up_blocked")
    angles, down, clear, blocked = (np.array([float(row[c]) for row in rows]) for c in columns)
    return angles, down, clear, blocked
