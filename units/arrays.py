"""The kinds of array that all rooms pass on."""

from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Integers = NDArray[np.intp]
Mask = NDArray[np.bool_]

_Kind = TypeVar("_Kind", bound=np.generic)


def distinct(values: NDArray[_Kind], axis: int | None = None) -> NDArray[_Kind]:
    """Return the values that differ, sorted; along ``axis`` the rows that do.

    As ``numpy.unique``, which loads all of masked arrays where it is asked for no more than that:
    a seventh of what numpy itself takes to load.

    >>> distinct(np.array([3, 1, 3])).tolist()
    [1, 3]
    """
    return np.unique(values, return_index=True, axis=axis)[0]


SAME = 1.0e-7
"""Values that differ by no more than this share of the greatest may differ by rounding alone.

What is worked out of a piece differs by some 1e-9 from one processor to another, which add up in
another order; and so do the two sides of a piece that is alike from both.
"""


def as_great(values: Array) -> Mask:
    """Return which of the values (…) are as great as the greatest, but for rounding."""
    top = values.max()
    return np.asarray(values >= (top - SAME * abs(top) if np.isfinite(top) else top))


def where_greatest(values: Array) -> tuple[int, ...]:
    """Return where the greatest of values (…) stands: of those alike the first.

    Winds from either side of a symmetric piece do the same but for rounding, and which of them is
    told must not hang on that.

    >>> where_greatest(np.array([[0.1, 0.3 - 1e-16], [0.3, 0.2]]))
    (0, 1)
    """
    at = np.unravel_index(int(as_great(values).argmax()), values.shape)
    return tuple(int(i) for i in at)


def first_greatest(values: Array) -> int:
    """Return which of values (n,) is the greatest: of those alike the first."""
    return int(as_great(values).argmax())


def to_rank(value: float) -> float:
    """Return a value to put in order by: those that differ by rounding are the same.

    >>> to_rank(0.3 - 1e-12) == to_rank(0.3), to_rank(0.31) == to_rank(0.3)
    (True, False)
    """
    return float(f"{value:.6e}")
