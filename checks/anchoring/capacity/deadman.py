"""Deadmen: a log or timber buried across the pull of a guy."""

import numpy as np
from numpy.typing import ArrayLike

from .... import references
from ....loads.printed.interpolation import between_rows_and_columns, bound
from ....loads.printed.ranges import not_negative, positive
from ....materials.holding_rules import value
from ....units.arrays import Array


def holding_power(depth: ArrayLike, elevation: ArrayLike, wet: ArrayLike = False) -> Array:
    """Return the holding power in Pa of the deadman's face, in loam, half of it where ``wet``.

    ``depth`` of its middle in m, ``elevation`` of the pull above level in rad; all broadcast.
    Linear between the table's 3 to 7 ft and 14 to 45 degrees; deeper and flatter count no more;
    above 3 ft it falls as the square of the depth (judgement: the table does so from 6 to 3 ft).
    ValueError when the depth is below 0 or the pull steeper than 45 degrees.
    Source: US Army TM 5-5420-278-10, WP 0035, Table 9.
    """
    table = references.table("ground/deadman_holding_power_psf")
    columns = sorted((c for c in table.columns if c.startswith("pull_")), key=bound)
    angles = np.radians([bound(c) for c in columns])
    depths = table.si("mean_depth_ft")
    a, D = not_negative("elevation", elevation), not_negative("depth", depth)
    if np.any(a > angles[-1] + 1.0e-9):
        raise ValueError(f"elevation: found {np.degrees(a.max()):.0f} degrees, expected up to 45")
    printed = np.column_stack([table.si(c) for c in columns])
    shallow = np.minimum(D / depths[0], 1.0) ** 2
    share = np.where(np.asarray(wet, dtype=bool), value("deadman", "wet share"), 1.0)
    return shallow * share * between_rows_and_columns(depths, angles, printed, D, a)


def log_strength(power: ArrayLike, face: ArrayLike, length: ArrayLike) -> Array:
    """Return the pull in N that a log holds: HP D_f (L - 1 ft).

    ``power`` HP in Pa, ``face`` D_f (height of a timber, diameter of a log) and ``length`` L in m;
    all broadcast. ValueError when face or length is not above 0, or the power below 0.
    Source: US Army TM 5-5420-278-10, WP 0035: L = CC/(HP D_f) + 1 ft.
    """
    counted = np.maximum(positive("length", length) - value("deadman", "added length"), 0.0)
    return np.asarray(not_negative("power", power) * positive("face", face) * counted)
