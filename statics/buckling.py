"""Whether loads topple what carries them: the second-order moments of a piece that sways a little.

To first order forces are found on the piece as it stands. Swayed, what presses from above turns it
further: K u = a G u, G the geometric stiffness of the loads and of the forces within, and a how
many times these have to come for the piece to sway aside by itself. Source: linear buckling, any
textbook (McGuire, Gallagher & Ziemian 2000, chapter 9).
"""

from collections.abc import Mapping

import numpy as np

from ..units.arrays import Array
from .frame import Beams
from .system import FIXED, Integers, System

PointForces = tuple[Integers, Array, Array]
"""Pieces (n,), the points (n, 3) in m at which forces act on them, and the forces (n, 3) in N."""


def beam_geometry(beams: Beams, pressed: Array) -> Array:
    """Return the geometric stiffness (m, 12, 12) of beams ``pressed`` (m,) in N, own axes.

    Source: the consistent matrix of a beam, McGuire, Gallagher & Ziemian 2000, chapter 9 (from
    memory; held to Euler's loads by tests).
    """
    L, P = beams.length, pressed
    G = np.zeros((len(L), 12, 12))
    for v, t, way in ((1, 5, 1.0), (2, 4, -1.0)):
        w, s = v + 6, t + 6
        G[:, v, v] = G[:, w, w] = 1.2 * P / L
        G[:, v, w] = G[:, w, v] = -1.2 * P / L
        for moment in (t, s):
            G[:, v, moment] = G[:, moment, v] = way * P / 10.0
            G[:, w, moment] = G[:, moment, w] = -way * P / 10.0
        G[:, t, t] = G[:, s, s] = 2.0 * P * L / 15.0
        G[:, t, s] = G[:, s, t] = -P * L / 30.0
    return G


def geometry(system: System, force: Array, ends: Array, acting: PointForces) -> Array:
    """Return the geometric stiffness (size, size) of a system under the forces of one case.

    ``force`` (springs,) and ``ends`` (m, 12) are those of its solution, ``acting`` the loads on its
    pieces. A rigid piece that turns by t moves the points at which forces act on it: their moment
    grows by the sum of (t x r) x F = r (t . F) - t (r . F), of which the even part counts.
    """
    G = np.zeros((system.size, system.size))
    beams = system.beams
    own = beam_geometry(beams, 0.5 * (ends[:, 0] - ends[:, 6]))
    A, at = system.carriers, 6 * system.piece[np.stack([beams.start, beams.end], axis=1)]
    whole = np.swapaxes(A, -1, -2) @ own @ A
    places = (at[:, :, None] + np.arange(6)).reshape(len(at), 12)
    np.add.at(G, (places[:, :, None], places[:, None, :]), whole)
    pulled = force[:, None] * system.springs.along
    springs = system.springs
    forces = [
        acting,
        (springs.end, springs.at, -pulled),
        (springs.start, springs.at, pulled),
    ]
    for k, nodes in enumerate((beams.start, beams.end)):
        on_end = np.einsum("mij,mi->mj", beams.axes, ends[:, 6 * k : 6 * k + 3])
        forces.append((system.piece[nodes], system.nodes[nodes], -on_end))
    pieces, points, every = (np.concatenate(part) for part in zip(*forces, strict=True))
    held = pieces != FIXED
    piece, F = pieces[held], every[held]
    r = points[held] - system.points[piece]
    turn = r[:, :, None] * F[:, None, :]
    turn = 0.5 * (turn + np.swapaxes(turn, 1, 2)) - (r * F).sum(axis=1)[:, None, None] * np.eye(3)
    turns = 6 * piece[:, None] + np.arange(3, 6)
    np.add.at(G, (turns[:, :, None], turns[:, None, :]), turn)
    return G


def stands_times(
    system: System, factors: Mapping[str, float], G: Array, times: float
) -> tuple[bool, Array]:
    """Return whether a system carries so many ``times`` what gives it ``G``, all springs closed.

    With it the motion (size,) by which it sways aside first.
    """
    K, root = _scaled(system, factors)
    left = K - times * G * root[:, None] * root
    try:
        np.linalg.cholesky(left)
    except np.linalg.LinAlgError:
        return False, np.linalg.eigh(left)[1][:, 0] * root
    return True, np.zeros(system.size)


def critical(system: System, factors: Mapping[str, float], G: Array) -> float:
    """Return how many times what gives it ``G`` may come before a system sways aside; maybe never.

    All springs closed. 0 where something holds nothing even so.
    """
    K, root = _scaled(system, factors)
    try:
        L = np.linalg.cholesky(K)
    except np.linalg.LinAlgError:
        return 0.0
    half = np.linalg.solve(L, G * root[:, None] * root)
    most = float(np.linalg.eigvalsh(np.linalg.solve(L, half.T))[-1])
    return 1.0 / most if most > 0.0 else float(np.inf)


def _scaled(system: System, factors: Mapping[str, float]) -> tuple[Array, Array]:
    """Return the stiffness with ones on its diagonal, and what scales it (size,)."""
    order = np.concatenate(system.order)
    K = np.empty((system.size, system.size))
    K[np.ix_(order, order)] = system.stiffness((factors,)).whole()[0]
    root = 1.0 / np.sqrt(np.diag(K))
    return K * root[:, None] * root, root
