"""The arguments of a relation as arrays, refused outside the range where the relation holds."""

import numpy as np
from numpy.typing import ArrayLike

from ...units.arrays import Array


def not_negative(name: str, value: ArrayLike) -> Array:
    """Return ``value`` as an array of floats; ValueError names it when any is below 0."""
    given = np.asarray(value, dtype=float)
    # most are single numbers, which are sooner compared than searched
    if given < 0.0 if given.ndim == 0 else (given < 0.0).any():
        raise ValueError(f"{name}: found {given.min():g}, expected 0 or more")
    return given


def positive(name: str, value: ArrayLike) -> Array:
    """Return ``value`` as an array of floats; ValueError names it when any is 0 or below."""
    given = np.asarray(value, dtype=float)
    if given <= 0.0 if given.ndim == 0 else (given <= 0.0).any():
        raise ValueError(f"{name}: found {given.min():g}, expected above 0")
    return given


def fraction(name: str, value: ArrayLike) -> Array:
    """Return ``value`` as an array of floats; ValueError names it when any is outside 0 to 1."""
    given = not_negative(name, value)
    if (given > 1.0).any():
        raise ValueError(f"{name}: found {given.max():g}, expected 0 to 1")
    return given
