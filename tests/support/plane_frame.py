"""A plane frame by the textbook's six-by-six beams, apart from what is tested."""

import numpy as np


class Plane:
    """Nodes (x, z) with bars between them; ends may stand off their node, rigidly joined to it."""

    def __init__(self):
        self.at, self.bars, self.held = [], [], []
        self.loads = {}

    def node(self, x, z, *, fast=False, pinned=False):
        self.at.append((x, z))
        first = 3 * (len(self.at) - 1)
        if fast or pinned:
            self.held += [first, first + 1] + ([first + 2] if fast else [])
        return len(self.at) - 1

    def bar(self, a, b, EA, EI, start=None, end=None, load=0.0):
        """``start`` and ``end``: where it begins and ends if not in its nodes; load down, N/m."""
        self.bars.append((a, b, EA, EI, start or self.at[a], end or self.at[b], load))
        return len(self.bars) - 1

    def load(self, node, along=0.0, down=0.0, turns=0.0):
        """``turns`` turns z into x, as all turns do here."""
        self.loads[node] = self.loads.get(node, 0.0) + np.array([along, -down, turns])

    def solve(self):
        """Return motions (n, 3), and of each bar N drawn above 0, V and M at start and at end."""
        n = 3 * len(self.at)
        K, F = np.zeros((n, n)), np.zeros(n)
        parts = [self._bar(bar) for bar in self.bars]
        for T, k, fixed, places in parts:
            K[np.ix_(places, places)] += T.T @ k @ T
            F[places] += T.T @ fixed
        for node, load in self.loads.items():
            F[3 * node : 3 * node + 3] += load
        free = np.setdiff1d(np.arange(n), self.held)
        u = np.zeros(n)
        u[free] = np.linalg.solve(K[np.ix_(free, free)], F[free])
        ends = []
        for T, k, fixed, places in parts:
            f = k @ T @ u[places] - fixed
            ends.append(((-f[0], f[1], f[2]), (f[3], -f[4], -f[5])))
        return u.reshape(-1, 3), np.array(ends)

    def _bar(self, bar):
        a, b, EA, EI, start, end, load = bar
        d = np.subtract(end, start)
        L = float(np.hypot(*d))
        c, s = d / L
        k = np.zeros((6, 6))
        k[np.ix_([0, 3], [0, 3])] = EA / L * np.array([[1, -1], [-1, 1]])
        k[np.ix_([1, 2, 4, 5], [1, 2, 4, 5])] = (
            EI
            / L**3
            * np.array(
                [
                    [12, 6 * L, -12, 6 * L],
                    [6 * L, 4 * L**2, -6 * L, 2 * L**2],
                    [-12, -6 * L, 12, -6 * L],
                    [6 * L, 2 * L**2, -6 * L, 4 * L**2],
                ]
            )
        )
        T = np.zeros((6, 6))
        for at, node, point in ((0, a, start), (3, b, end)):
            x, z = np.subtract(point, self.at[node])
            # own axes along and square to it, which turns along into square: against x from z
            to_own = np.array([[c, s, 0], [-s, c, 0], [0, 0, -1]])
            carry = np.array([[1, 0, z], [0, 1, -x], [0, 0, 1]])
            T[at : at + 3, at : at + 3] = to_own @ carry
        q, p = -load * c, -load * s
        fixed = L * np.array([p / 2, q / 2, q * L / 12, p / 2, q / 2, -q * L / 12])
        places = np.r_[3 * a : 3 * a + 3, 3 * b : 3 * b + 3]
        return T, k, fixed, places
