"""Rectangles and polygons: EN 1991-1-4 sections 7.6 and 7.8.

Coefficients c_f,0 are without end effect; c_f = c_f,0 psi_lambda.
"""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array
from ..printed.ranges import not_negative, positive


def rectangle(depth: ArrayLike, breadth: ArrayLike) -> Array:
    """Return c_f,0 of a rectangle, wind normal to a face ``breadth`` b wide, ``depth`` d along it.

    Straight between the printed points on a logarithmic axis of d/b, held beyond 0.1 and 50. Both
    broadcast. ValueError when a size is not above 0. Source: EN 1991-1-4:2005 Fig. 7.23.
    """
    ratio = positive("depth", depth) / positive("breadth", breadth)
    table = references.table("wind/en1991_rectangles")
    return np.asarray(
        np.interp(np.log(ratio), np.log(table.numbers("d_over_b")), table.numbers("cf0"))
    )


def polygon_force_coefficient(sides: int, reynolds: ArrayLike) -> Array:
    """Return c_f,0 of a regular polygon with sharp corners on its circumscribed width, any wind.

    ``reynolds`` (any shape) by the mean speed and that width. Sides that the table does not print
    take those of the next fewer, and more than twelve the twelve's, since sharp corners of wood are
    none of the table's smooth and rounded sixteen (judgement). The octagon goes linearly from
    Re 2.4e5 to 3e5, where the table prints nothing; twelve sides change at 4e5, as printed.
    ValueError below five sides or for a Reynolds number below 0.
    Source: EN 1991-1-4:2005 Table 7.11.
    """
    if sides < min(_polygons()):
        raise ValueError(f"sides: found {sides}, expected 5 or more")
    Re = not_negative("reynolds", reynolds)
    at, values = _polygons()[max(each for each in _polygons() if each <= sides)]
    return np.asarray(np.interp(Re, at, values))


@cache
def _polygons() -> dict[int, tuple[Array, Array]]:
    """Return by number of sides the Reynolds numbers and the coefficients between them."""
    found: dict[int, tuple[list[float], list[float]]] = {}
    for row in references.table("wind/en1991_polygons").rows:
        at, values = found.setdefault(int(row["sides"]), ([], []))
        at.append(float(row["Re_from"] or "0"))
        values.append(float(row["cf0"]))
        if row["Re_to"]:
            at.append(float(row["Re_to"]))
            values.append(float(row["cf0"]))
    return {sides: (np.array(at), np.array(values)) for sides, (at, values) in found.items()}
