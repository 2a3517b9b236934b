"""How much of the wind reaches what stands clear behind something else: ISO 4302."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.interpolation import between_rows_and_columns, bound
from ..printed.ranges import fraction, not_negative


def shielding(solidity_in_front: ArrayLike, gap_over_width: ArrayLike) -> Array:
    """Return the fraction of its own wind force that the part behind still takes.

    ``solidity_in_front`` of the part in front (0 to 1) and the clear gap over that part's lesser
    width broadcast. Bilinear; held above 0.6 and below a gap of 0.5, 1.0 from a gap of 6 on. Below
    the printed solidity of 0.1 it rises to 1.0 at none, since nothing shelters nothing (judgement).
    ValueError when the solidity is outside 0 to 1 or the gap below 0.
    Source: ISO 4302, table of shielding coefficients.
    """
    eps = fraction("solidity_in_front", solidity_in_front)
    gap = not_negative("gap_over_width", gap_over_width)
    return between_rows_and_columns(*_printed(), gap, eps)


@cache
def _printed() -> tuple[Array, Array, Array]:
    """Return the printed gaps (6,), solidities (7,) from 0 on and coefficients (6, 7)."""
    rows = references.table("wind/iso4302_shielding").rows
    columns = [column for column in rows[0] if column.startswith("solidity_")]
    gaps = np.array([float(row["gap_over_width"]) for row in rows])
    solidities = np.array([0.0] + [bound(column) for column in columns])
    values = np.array([[1.0] + [float(row[column]) for column in columns] for row in rows])
    return gaps, solidities, values
