"""Circular cylinders and spheres: EN 1991-1-4 sections 7.9.2 and 7.10."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ... import references
from ...units.arrays import Array
from ..printed.ranges import not_negative, positive
from .constants import constant


def reynolds_number(breadth: ArrayLike, speed: ArrayLike) -> Array:
    """Return Re = b v/nu with nu = 15e-6 m2/s; ``breadth`` b in m and ``speed`` v in m/s broadcast.

    v is the peak velocity at the body for cylinders and spheres, the mean one for polygons.
    ValueError when one of them is below 0. Source: EN 1991-1-4:2005 Eq. 7.15.
    """
    b, v = not_negative("breadth", breadth), not_negative("speed", speed)
    return b * v / constant("kinematic viscosity")


@cache
def surface_roughness(surface: str) -> float:
    """Return the equivalent roughness k in m of a surface of the table, such as "planed wood".

    ValueError for another. Source: EN 1991-1-4:2005 Table 7.13.
    """
    table = references.table("wind/en1991_roughness")
    known = [row["surface"] for row in table.rows]
    if surface not in known:
        expected = ", ".join(f'"{each}"' for each in known)
        raise ValueError(f'surface: found "{surface}", expected one of {expected}')
    return float(table.si("k_mm")[known.index(surface)])


def cylinder(reynolds: ArrayLike, k_over_b: ArrayLike) -> Array:
    """Return c_f,0 of a circular cylinder by Reynolds number and relative roughness k/b.

    1.2 up to where the flow narrows, down along 0.11/(Re/1e6)^1.4 to the rough branch
    1.2 + 0.18 log10(10 k/b)/(1 + 0.4 log10(Re/1e6)), the greater of the two and at most 1.2. Both
    broadcast. ValueError when one of them is not above 0. Source: EN 1991-1-4:2005 Fig. 7.28.
    """
    Re = positive("reynolds", reynolds)
    drop = constant("cylinder drop") / _relative(Re) ** constant("cylinder drop exponent")
    most = constant("cylinder subcritical")
    return np.minimum(np.maximum(drop, rough_cylinder(Re, k_over_b)), most)


def rough_cylinder(reynolds: ArrayLike, k_over_b: ArrayLike) -> Array:
    """Return the rough branch of ``cylinder``, at most 1.2, with its arguments, errors and source.

    Held below Re = 1e4, far beneath where the branch is drawn, so that it stays finite.
    """
    Re = np.maximum(positive("reynolds", reynolds), _LEAST_REYNOLDS)
    multiple = constant("cylinder roughness multiple") * positive("k/b", k_over_b)
    slope = constant("cylinder roughness slope") * np.log10(multiple)
    curved = slope / (1.0 + constant("cylinder Reynolds slope") * np.log10(_relative(Re)))
    most = constant("cylinder subcritical")
    return np.minimum(most + curved, most)


def drop_ends(k_over_b: ArrayLike) -> Array:
    """Return the Reynolds number at which a cylinder's falling branch meets its rough one.

    ``k_over_b`` of any shape; found by halving in ln Re between 1e4 and 1e8, to 1e-9.
    Errors and source as in ``cylinder``.
    """
    k = positive("k/b", k_over_b)
    low, high = np.full(k.shape, np.log(_LEAST_REYNOLDS)), np.full(k.shape, np.log(1e8))
    for _ in range(40):
        middle = 0.5 * (low + high)
        Re = np.exp(middle)
        drop = constant("cylinder drop") / _relative(Re) ** constant("cylinder drop exponent")
        falls = drop > rough_cylinder(Re, k)
        low, high = np.where(falls, middle, low), np.where(falls, high, middle)
    return np.exp(high)


def sphere(gap: ArrayLike, diameter: ArrayLike) -> Array:
    """Return c_f,x of a sphere whose underside stands ``gap`` above the ground, on its circle.

    1.6 times as much where the gap is not above half the diameter, both in m; they broadcast. At
    every Reynolds number the greatest of the figure, whose curves were not found (judgement).
    ValueError when the gap is below 0 or the diameter not above 0.
    Source: EN 1991-1-4:2005 7.10 (1) and (2), Fig. 7.30.
    """
    near = _is_near_ground(gap, diameter)
    return constant("sphere") * np.where(near, constant("sphere near the ground"), 1.0)


_LEAST_REYNOLDS = 1.0e4


def _relative(Re: Array) -> Array:
    return Re / constant("cylinder Reynolds unit")


def _is_near_ground(gap: ArrayLike, diameter: ArrayLike) -> NDArray[np.bool_]:
    clear = constant("sphere gap") * positive("diameter", diameter)
    return not_negative("gap", gap) <= clear
