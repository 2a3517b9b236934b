"""The different ones among numbers, ascending."""

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array


def distinct(values: ArrayLike) -> Array:
    """Return the different values (k,) ascending.

    As ``numpy.unique``, which imports numpy's masked arrays: a fifth of numpy's own start.
    """
    ordered = np.sort(np.asarray(values, dtype=float).ravel())
    return ordered[np.append(True, ordered[1:] != ordered[:-1])[: len(ordered)]]
