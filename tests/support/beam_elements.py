"""Beams by a stiffness matrix of two-node elements, apart from what is tested."""

import numpy as np


def solve_by_elements(at, stiffness, held, line, force, couple, *, fast=False):
    """Deflections (n + 1,), and moments and shears at both ends of each element (n, 2)."""
    n = len(stiffness)
    size = 2 * (n + 1)
    K, F = np.zeros((size, size)), np.zeros(size)
    parts = []
    for k, (EI, w) in enumerate(zip(stiffness, line, strict=True)):
        h = at[k + 1] - at[k]
        ke = EI / h**3 * np.array(
            [
                [12, 6 * h, -12, 6 * h],
                [6 * h, 4 * h**2, -6 * h, 2 * h**2],
                [-12, -6 * h, 12, -6 * h],
                [6 * h, 2 * h**2, -6 * h, 4 * h**2],
            ]
        )  # fmt: skip
        fe = w * h * np.array([0.5, h / 12, 0.5, -h / 12])
        span = slice(2 * k, 2 * k + 4)
        K[span, span] += ke
        F[span] += fe
        parts.append((span, ke, fe))
    F[0::2] += force
    F[1::2] += couple
    gone = [2 * k for k in np.flatnonzero(held)] + ([1] if fast else [])
    free = np.setdiff1d(np.arange(size), gone)
    u = np.zeros(size)
    u[free] = np.linalg.solve(K[np.ix_(free, free)], F[free])
    ends = np.array([ke @ u[span] - fe for span, ke, fe in parts])
    return u[0::2], np.stack([-ends[:, 1], ends[:, 3]], axis=1), np.stack(
        [ends[:, 0], -ends[:, 2]], axis=1
    )  # fmt: skip
