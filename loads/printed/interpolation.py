"""Reading between the rows and columns of a printed table."""

import re

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array


def between_rows_and_columns(
    rows: Array, columns: Array, values: Array, row: ArrayLike, column: ArrayLike
) -> Array:
    """Return ``values`` (R, C), bilinear at ``row`` and ``column``, which broadcast.

    ``rows`` (R,) and ``columns`` (C,) ascend; the table's edges are held beyond them.
    """
    i, across_rows = _cell(rows, row)
    j, across_columns = _cell(columns, column)
    upper = values[i, j] * (1.0 - across_columns) + values[i, j + 1] * across_columns
    lower = values[i + 1, j] * (1.0 - across_columns) + values[i + 1, j + 1] * across_columns
    return np.asarray(upper * (1.0 - across_rows) + lower * across_rows)


def bound(text: str) -> float:
    """Return the first number of a heading as printed: 0.16 of '<=0.16', 45 of '>=45'."""
    found = re.search(r"\d+(\.\d+)?", text)
    if found is None:
        raise ValueError(f'found "{text}", expected a heading with a number')
    return float(found.group())


def _cell(
    steps: Array, at: ArrayLike
) -> tuple[np.ndarray[tuple[int, ...], np.dtype[np.intp]], Array]:
    """Return the index of the step below and the fraction of the way to the next."""
    held = np.clip(np.asarray(at, dtype=float), steps[0], steps[-1])
    below = np.clip(np.searchsorted(steps, held, side="right") - 1, 0, len(steps) - 2)
    return below, (held - steps[below]) / (steps[below + 1] - steps[below])
