"""A fastener that is pulled and pushed sideways at once."""

from collections.abc import Callable, Mapping

import numpy as np
from numpy.typing import ArrayLike

from ...loads.printed.ranges import not_negative
from ...units.arrays import Array


def nails_use(
    tension: ArrayLike, shear: ArrayLike, withdrawal: ArrayLike, lateral: ArrayLike
) -> Array:
    """Return the part of a nail's resistance that is used (…): T/W + V/Z, passing at 1.

    ``tension`` T and ``shear`` V in N, the adjusted values ``withdrawal`` W (length counted; or
    the head's, where it is less) and ``lateral`` Z in N; all (…). A resistance of 0 is used up by
    any load (infinite). ValueError below 0.
    Source: NDS 2018 12.4.2, Eq. 12.4-2: Z_alpha = W Z / (W cos alpha + Z sin alpha), which with
    T = R sin alpha and V = R cos alpha is R/Z_alpha.
    """
    T, V = not_negative("tension", tension), not_negative("shear", shear)
    return _used(T, withdrawal) + _used(V, lateral)


def screws_use(
    tension: ArrayLike, shear: ArrayLike, withdrawal: ArrayLike, lateral: ArrayLike
) -> Array:
    """Return the part of a wood or lag screw's resistance that is used (…), passing at 1.

    Hankinson's formula: (T^2/W + V^2/Z) / R with R^2 = T^2 + V^2. Arguments and errors as
    ``nails_use``. Source: NDS 2018 12.4.1, Eq. 12.4-1:
    Z_alpha = W Z / (W cos^2 alpha + Z sin^2 alpha), as R/Z_alpha.
    """
    T, V = not_negative("tension", tension), not_negative("shear", shear)
    R = np.hypot(T, V)
    size = np.where(R > 0.0, R, 1.0)
    return (T / size) * _used(T, withdrawal) + (V / size) * _used(V, lateral)


def squares_use(
    tension: ArrayLike, shear: ArrayLike, withdrawal: ArrayLike, lateral: ArrayLike
) -> Array:
    """Return sqrt((T/W)^2 + (V/Z)^2) (…), by EN 1995-1-1 of all but smooth nails, passing at 1.

    Arguments and errors as ``nails_use``. Source: EN 1995-1-1:2004 8.3.3, Eq. 8.28, and 8.7.3.
    """
    T, V = not_negative("tension", tension), not_negative("shear", shear)
    return np.hypot(_used(T, withdrawal), _used(V, lateral))


USE: Mapping[str, Callable[[ArrayLike, ArrayLike, ArrayLike, ArrayLike], Array]] = {
    "nail": nails_use,
    "staple": nails_use,
    "wood screw": screws_use,
    "deck screw": screws_use,
    "lag screw": screws_use,
    "linear": nails_use,
    "squares": squares_use,
}
"""By kind of fastener; deck screws as wood screws, staples as nails (judgement).
Other books name a law."""


def fastener_use(
    kind: str, tension: ArrayLike, shear: ArrayLike, pull: ArrayLike, sideways: ArrayLike
) -> Array:
    """Return the part of a fastener's resistance that is used (…), by the law of its ``kind``.

    Hankinson's formula lets a pull make up for a push where it holds pulls far better; it is never
    taken as used less than by either alone (judgement). Arguments and errors as ``nails_use``.
    """
    used = USE.get(kind, nails_use)(tension, shear, pull, sideways)
    either = np.maximum(nails_use(tension, 0.0, pull, 0.0), nails_use(0.0, shear, 0.0, sideways))
    return np.maximum(used, either)


def _used(load: Array, resistance: ArrayLike) -> Array:
    """Return load over resistance: 0 without load, infinite where nothing resists one."""
    given = not_negative("resistance", resistance)
    safe = np.where(given > 0.0, given, 1.0)
    return np.where(load == 0.0, 0.0, np.where(given > 0.0, load / safe, np.inf))
