"""Frames for tests of statics: nodes, beams and springs put together by hand."""

import numpy as np

from yardfast.statics.frame import Beams, end_forces
from yardfast.statics.system import FIXED, Springs, System

HARD = 1.0e11
"""N/m: as good as rigid beside the sizes used here."""


class Frame:
    """A system put together piece by piece; every node is a piece of its own unless told."""

    def __init__(self, hard=HARD):
        self.hard = hard
        self.points, self.nodes, self.piece = [], [], []
        self.beams, self.springs, self.along = [], [], {}

    def node(self, at, piece=None):
        if piece is None:
            self.points.append(at)
            piece = len(self.points) - 1
        self.nodes.append(at)
        self.piece.append(piece)
        return len(self.nodes) - 1

    def beam(self, a, b, EA, EI, GJ, first=None, load=None):
        """``EI`` of bending along ``first`` and square to it; ``load`` (2, 4) in its own axes."""
        start, end = np.array(self.nodes[a], float), np.array(self.nodes[b], float)
        along = (end - start) / np.linalg.norm(end - start)
        first = np.array([0.0, 0.0, 1.0] if first is None else first, float)
        first = first - (first @ along) * along
        first /= np.linalg.norm(first)
        axes = np.array([along, first, np.cross(along, first)])
        self.beams.append((a, b, axes, np.linalg.norm(end - start), EA, EI, GJ))
        if load is not None:
            self.along[len(self.beams) - 1] = np.asarray(load, float)
        return len(self.beams) - 1

    def spring(self, a, b, at, along, k=None, one_way=False, kind="bed"):
        self.springs.append((a, b, at, along, k or self.hard, one_way, kind))
        return len(self.springs) - 1

    def pinned(self, piece, other, at, k=None):
        return [self.spring(other, piece, at, axis, k) for axis in np.eye(3)]

    def fixed(self, piece, at, other=FIXED, k=None):
        """Hold a piece fast by three springs and by three pairs a metre apart."""
        at = np.array(at, float)
        found = self.pinned(piece, other, at, k)
        for turn in range(3):
            off, way = np.eye(3)[(turn + 1) % 3], np.eye(3)[(turn + 2) % 3]
            found += [self.spring(other, piece, at + s * off, way, k) for s in (-1.0, 1.0)]
        return found

    def flat(self, piece, at):
        """Hold a piece to the x-z plane: along y, and against turning about x and z."""
        at = np.array(at, float)
        for off in (np.zeros(3), np.array([1.0, 0, 0]), np.array([0, 0, 1.0])):
            self.spring(FIXED, piece, at + off, (0.0, 1.0, 0.0))

    @property
    def system(self):
        spring = [*zip(*self.springs, strict=True)]
        whole = [np.array(part) for part in zip(*self.beams, strict=True)] if self.beams else None
        beams = (
            Beams(whole[0], whole[1], *(part.astype(float) for part in whole[2:]))
            if whole
            else Beams(
                np.zeros(0, int),
                np.zeros(0, int),
                np.zeros((0, 3, 3)),
                np.zeros(0),
                np.zeros(0),
                np.zeros((0, 2)),
                np.zeros(0),
            )
        )
        return System(
            np.array(self.points, float),
            np.array(self.nodes, float).reshape(-1, 3),
            np.array(self.piece, int),
            beams,
            Springs(
                np.array(spring[0], int),
                np.array(spring[1], int),
                np.array(spring[2], float),
                np.array(spring[3], float),
                np.array(spring[4], float),
                np.array(spring[5], bool),
                np.array(spring[6]),
            ),
        )

    def loads(self, cases):
        """Return loads and ``fixed`` of cases, each a dict of piece to (force, at)."""
        from yardfast.statics.wrench import wrench

        system = self.system
        F = np.zeros((len(cases), system.size))
        for n, case in enumerate(cases):
            for piece, (force, at) in case.items():
                one = wrench(np.array(force, float), np.array(at, float))
                F[n] += system.load_of_pieces(np.array([piece]), one[None])
        fixed = np.zeros((len(cases), len(self.beams), 12))
        for m, load in self.along.items():
            fixed[:, m] = end_forces(load[0], load[1], np.array(self.beams[m][3]))
        return F + system.load_along(fixed), fixed
