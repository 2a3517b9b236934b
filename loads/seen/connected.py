"""Which bodies stand together as one piece: what touches, by itself or through others."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from ...design.placing import Body
from ...design.touching import GAP, beside_each_other
from ...units.arrays import Array
from .depth import apart


def tops(bodies: Sequence[Body]) -> Array:
    """Return for each body the height (bodies,) in m of the top of what it is connected with."""
    piece = connected(bodies)
    seen = np.array([body.top if body.shape.hulls() else 0.0 for body in bodies])
    highest = np.zeros(len(bodies))
    np.maximum.at(highest, piece, seen)
    return highest[piece]


def connected(bodies: Sequence[Body]) -> NDArray[np.int_]:
    """Return for each body (bodies,) the first one that it is connected with."""
    first = np.arange(len(bodies))
    touching = np.triu(beside_each_other(bodies), 1)
    solid = np.array([bool(body.shape.hulls()) for body in bodies])
    for i, j in np.argwhere(touching & solid & solid[:, None]).tolist():
        one, other = sorted((first[i], first[j]))
        if one != other and apart(bodies[i], bodies[j]) <= GAP:
            first[first == other] = one
    return first
