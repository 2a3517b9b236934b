"""How much less a short or open body takes than a long one: EN 1991-1-4 section 7.13."""

from functools import cache

import numpy as np
from numpy.typing import ArrayLike

from ... import references
from ...units.arrays import Array, distinct
from ..printed.interpolation import between_rows_and_columns
from ..printed.ranges import fraction, positive

_KINDS = ("edged", "round")
"""Polygons, rectangles, sharp-edged sections and lattices; circular cylinders."""


def effective_slenderness(length: ArrayLike, breadth: ArrayLike, kind: str = "edged") -> Array:
    """Return lambda of a body ``length`` l long and ``breadth`` b across the wind, in m.

    Edged: 2 l/b up to 15 m long, 1.4 l/b from 50 m on; round: half of these; linear between, never
    above 70 (positions 1 to 3). Both broadcast. ValueError when a size is not above 0 or for
    another kind. Source: EN 1991-1-4:2005 Table 7.16.
    """
    if kind not in _KINDS:
        raise ValueError(f'kind: found "{kind}", expected "edged" or "round"')
    length, breadth = positive("length", length), positive("breadth", breadth)
    lengths, times, most = _slenderness(kind)
    ends = np.minimum(np.multiply.outer(times, length / breadth), most)
    share = np.clip((length - lengths[0]) / (lengths[1] - lengths[0]), 0.0, 1.0)
    return np.asarray(ends[0] * (1.0 - share) + ends[1] * share)


def end_effect_factor(slenderness: ArrayLike, solidity: ArrayLike = 1.0) -> Array:
    """Return psi_lambda by effective slenderness lambda and solidity phi, which broadcast.

    Straight on a logarithmic axis of lambda and linear in phi between the curves read; held below
    lambda 1 and phi 0.1, and above lambda 70. ValueError when lambda is not above 0 or phi outside
    0 to 1. Source: EN 1991-1-4:2005 Fig. 7.36.
    """
    lam = np.log(positive("slenderness", slenderness))
    lambdas, phis, factors = _end_effect()
    return between_rows_and_columns(phis, lambdas, factors, fraction("solidity", solidity), lam)


@cache
def _slenderness(kind: str) -> tuple[Array, Array, Array]:
    rows = references.table("wind/en1991_slenderness").where("kind", kind)
    columns = [[float(row[c]) for row in rows] for c in ("length_m", "times_l_over_b", "most")]
    lengths, times, most = (np.array(column) for column in columns)
    return lengths, times, np.array(most[0])


@cache
def _end_effect() -> tuple[Array, Array, Array]:
    """Return ln lambda (n,), the solidities (m,) that grow, and psi_lambda (m, n)."""
    table = references.table("wind/en1991_end_effect")
    lam, phi, psi = (table.numbers(c) for c in ("slenderness", "solidity", "psi_lambda"))
    lambdas, phis = distinct(lam), distinct(phi)
    found = {(a, b): c for a, b, c in zip(lam, phi, psi, strict=True)}
    return np.log(lambdas), phis, np.array([[found[a, b] for a in lambdas] for b in phis])
