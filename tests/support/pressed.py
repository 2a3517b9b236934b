"""A rigid piece on screws and a bed that only presses, by least energy: apart from what is tested.

Of all forces in balance with the load those are true whose complementary energy, the sum of f^2/2k,
is least (Castigliano; Menabrea), pressing ones not below 0: non-negative least squares (Lawson and
Hanson 1974, scipy's) with balance weighed far above energy.
"""

import numpy as np
from scipy.optimize import nnls

_ABOVE = 1.0e5


def grid(length, width, rows=8):
    """The middles of ``rows`` x ``rows`` equal cells of a rectangle about the origin, z = 0."""
    at = (np.arange(rows) + 0.5) / rows - 0.5
    x, y = np.meshgrid(at * length, at * width)
    return np.column_stack([x.ravel(), y.ravel(), np.zeros(rows**2)])


def share(points, lateral, axial, cells, bed, load):
    """Forces (n, 3) on fasteners: shears along x and y, pull along z, of a force and a moment.

    ``points`` (n, 3); stiffness in N/m of each fastener sideways and along itself, numbers or (n,);
    ``bed`` in N/m of each of the ``cells`` (m, 3), which press up. ``load`` (6,) about the origin.
    """
    n, m = len(points), len(cells)
    ways = np.tile(np.eye(3), (n, 1))
    k = np.column_stack([np.broadcast_to(one, n) for one in (lateral, lateral, axial)]).ravel()
    at = np.repeat(points, 3, axis=0)
    # what each holds the piece with: fasteners either way, the bed pushing it up
    columns = [np.r_[way, np.cross(p, way)] for way, p in zip(ways, at, strict=True)]
    columns = np.array([*columns, *(-np.array(columns))])
    up = np.array([0.0, 0.0, 1.0])
    presses = np.array([np.r_[up, np.cross(p, up)] for p in cells])
    every = np.vstack([columns, presses])
    stiff = np.r_[k, k, np.full(m, bed)]
    size = np.abs(load).max()
    reach = np.array([1.0, 1.0, 1.0, *[np.abs(points).max()] * 3])
    soft = np.sqrt(stiff.max() / stiff)
    A = np.vstack([np.diag(soft), _ABOVE * (every / reach).T])
    b = np.r_[np.zeros(len(stiff)), -_ABOVE * load / size / reach]
    f, _ = nnls(A, b, maxiter=100 * len(stiff))
    held = (f[: 3 * n] - f[3 * n : 6 * n]) * size
    assert np.abs(every.T @ f + load / size).max() < 1.0e-5
    return -held.reshape(n, 3)
