"""Boards that stand: signboards, free-standing walls and lattices (EN 1991-1-4 7.4 and 7.11)."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ... import references
from ...units.arrays import Array
from ..printed.ranges import fraction, not_negative, positive
from .constants import constant
from .slenderness import effective_slenderness, end_effect_factor


def signboard() -> float:
    """Return c_f of a signboard on its area, 1.80, at the height of its middle.

    Source: EN 1991-1-4:2005 7.4.3 (1).
    """
    return constant("signboard")


def signboard_eccentricity(width: ArrayLike) -> Array:
    """Return how far off the middle, to either side, the force on a signboard acts: 0.25 b.

    In the unit of the ``width`` b, any shape. Source: EN 1991-1-4:2005 7.4.3 (3), recommended.
    """
    return constant("signboard eccentricity") * np.asarray(width, dtype=float)


def is_signboard(gap: ArrayLike, height: ArrayLike, width: ArrayLike) -> NDArray[np.bool_]:
    """Return where a board is a signboard and not a free-standing wall.

    ``gap`` z_g beneath it, ``height`` h and ``width`` b in m broadcast: z_g at least h/4, or b/h at
    most 1. ValueError when the gap is below 0 or a size not above 0.
    Source: EN 1991-1-4:2005 7.4.3 (1).
    """
    h, b = positive("height", height), positive("width", width)
    raised = not_negative("gap", gap) >= constant("signboard gap") * h
    return raised | (b <= constant("signboard squat") * h)


def wall_coefficients(
    length_over_height: ArrayLike, solidity: ArrayLike = 1.0, corner_over_height: ArrayLike = 0.0
) -> Array:
    """Return c_p,net (…, 4) of the zones A to D of a free-standing wall, from its free end.

    Linear in l/h between 3, 5 and 10, in the return corner's length over h from 0 to 1, and in
    solidity from 0.8 to 1; they broadcast to (…). ValueError when l/h is not above 0, the corner
    below 0 or the solidity outside 0.8 to 1. Source: EN 1991-1-4:2005 Table 7.9.
    """
    ratio = positive("l/h", length_over_height)
    phi, corner = np.asarray(solidity, dtype=float), not_negative("corner", corner_over_height)
    lengths, straight, cornered, open_, least = _walls()
    if np.any((phi < least) | (phi > 1.0)):
        raise ValueError(f"solidity: found {phi.min():g}, expected {least:g} to 1")
    ratio, phi, corner = np.broadcast_arrays(ratio, phi, np.minimum(corner, 1.0))
    each = [np.interp(ratio, lengths, straight[:, zone]) for zone in range(4)]
    solid = np.stack(each, axis=-1)
    solid = solid + (cornered - solid) * corner[..., None]
    share = ((phi - least) / (1.0 - least))[..., None]
    return open_ + (solid - open_) * share


def wall(length: ArrayLike, height: ArrayLike, solidity: ArrayLike = 1.0) -> tuple[Array, Array]:
    """Return a wall's mean c_p,net, and its resultant's distance off the middle over its length.

    Zones lie at 0.3 h, 2 h and 4 h from the windward end, toward which the distance is. ``length``
    l and ``height`` h in m and ``solidity`` broadcast. Errors as in ``wall_coefficients``.
    Source: EN 1991-1-4:2005 Table 7.9 and Fig. 7.19.
    """
    ratio = positive("length", length) / positive("height", height)
    ratio, phi = np.broadcast_arrays(ratio, np.asarray(solidity, dtype=float))
    c = wall_coefficients(ratio, phi)
    ends = np.minimum(_zone_ends(), ratio[..., None])
    starts = np.concatenate([np.zeros((*ratio.shape, 1)), ends[..., :-1]], axis=-1)
    force = c * (ends - starts)
    total = force.sum(axis=-1)
    middle = (force * (starts + ends) / 2.0).sum(axis=-1) / total
    return total / ratio, 0.5 - middle / ratio


def plane_lattice(solidity: ArrayLike, length: ArrayLike, breadth: ArrayLike) -> Array:
    """Return c_f phi of a plane lattice of flat members: its coefficient on its whole outline.

    c_f = c_f,0 psi_lambda on the solid area. ``solidity`` phi, ``length`` l (the greater side) and
    ``breadth`` b in m broadcast. Held at the read figure's ends, 0.1 and 0.6. ValueError when phi
    is outside 0 to 1 or a size not above 0. Source: EN 1991-1-4:2005 Eq. 7.25, Fig. 7.33.
    """
    phi = fraction("solidity", solidity)
    table = references.table("wind/en1991_lattices")
    cf0 = np.interp(phi, table.numbers("solidity"), table.numbers("cf0"))
    slender = effective_slenderness(length, breadth)
    return np.asarray(cf0 * end_effect_factor(slender, phi) * phi)


@cache
def _walls() -> tuple[Array, Array, Array, Array, float]:
    """Return the printed l/h (n,), c of straight walls (n, 4), cornered and open (4,), 0.8."""
    table = references.table("wind/en1991_walls")

    def zones(case: str) -> Array:
        return np.array([[float(row[z]) for z in "ABCD"] for row in table.where("case", case)])

    straight = table.where("case", "without return corners")
    lengths = np.array([float(row["l_over_h"]) for row in straight])
    open_ = table.one("case", "any")
    return (
        lengths,
        zones("without return corners"),
        zones("with return corners")[0],
        zones("any")[0],
        float(open_["solidity"]),
    )


@cache
def _zone_ends() -> Array:
    rows = references.table("wind/en1991_wall_zones").rows
    return np.array([float(row["to_over_h"] or "inf") for row in rows])
