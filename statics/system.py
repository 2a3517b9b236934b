"""Rigid bodies and beams joined by springs: stiffness, base loads and the motion that follows.

Nodes belong to rigid pieces, each with the six motions of its own point; node ``FIXED`` stands
still. A spring joins a point of one piece to the same point of another along a line. What a set of
stiffness asks of each class of springs is a factor, so that the parts are put together once.
"""

from collections.abc import Mapping, Sequence
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array, Integers, distinct
from ..units.frozen import ByIdentity, field, replace
from .chain import Chain, chain_blocks
from .frame import Beams
from .wrench import motion_rows, moved

FIXED = -1


class Springs(ByIdentity, frozen=True):
    """Springs between pieces ``start`` and ``end`` (n,), ``FIXED`` among them, at ``at`` (n, 3).

    Each is stretched by how far ``end``'s point moves from ``start``'s along ``along`` (n, 3);
    ``stiffness`` (n,) in N/m. Those that are ``one_way`` (n,) only press. ``kind`` (n,) tells the
    class whose factor a set of stiffness gives.
    """

    start: Integers
    end: Integers
    at: Array
    along: Array
    stiffness: Array
    one_way: NDArray[np.bool_]
    kind: NDArray[np.str_]

    def __len__(self) -> int:
        return len(self.start)

    def slack(self, some: Integers) -> "Springs":
        """Return the same where some, by number, hold nothing."""
        stiffness = self.stiffness.copy()
        stiffness[some] = 0.0
        return replace(self, stiffness=stiffness)


def no_springs() -> Springs:
    """Return none."""
    none = np.zeros(0, dtype=np.intp)
    return Springs(
        none,
        none,
        np.zeros((0, 3)),
        np.zeros((0, 3)),
        np.zeros(0),
        np.zeros(0, dtype=bool),
        np.zeros(0, dtype="U9"),
    )


def all_springs(springs: Sequence[Springs]) -> Springs:
    """Return all springs as one list, in order."""
    given = [*springs] or [no_springs()]
    return Springs(
        np.concatenate([one.start for one in given]),
        np.concatenate([one.end for one in given]),
        np.concatenate([one.at for one in given]),
        np.concatenate([one.along for one in given]),
        np.concatenate([one.stiffness for one in given]),
        np.concatenate([one.one_way for one in given]),
        np.concatenate([one.kind for one in given]),
    )


class System(ByIdentity, frozen=True):
    """Rigid pieces at ``points`` (p, 3), beams between ``nodes`` (n, 3), and springs.

    Node i belongs to piece ``piece`` (n,). Beams join nodes. ``braces`` (b, size) are motions that
    nothing of the piece holds, held so that the rest can be told.
    """

    points: Array
    nodes: Array
    piece: Integers
    beams: Beams
    springs: Springs
    braces: Array = field(default_factory=lambda: np.empty((0, 0)))

    @property
    def size(self) -> int:
        """Return the number of motions, six a piece."""
        return 6 * len(self.points)

    @cached_property
    def carriers(self) -> Array:
        """Return the matrices (m, 12, 12) from the motions of pieces to beams' own end motions."""
        found = np.zeros((len(self.beams.length), 12, 12))
        turn = self.beams.axes
        for at, ends in ((0, self.beams.start), (6, self.beams.end)):
            off = self.nodes[ends] - self.points[self.piece[ends]]
            T = moved(off)
            found[:, at : at + 3, at : at + 6] = turn @ T[:, :3]
            found[:, at + 3 : at + 6, at : at + 6] = turn @ T[:, 3:]
        return found

    @cached_property
    def _beam_places(self) -> Integers:
        """Return the motions (m, 12) that move each beam's ends."""
        six = np.arange(6)
        starts, ends = self.piece[self.beams.start], self.piece[self.beams.end]
        return np.concatenate([6 * starts[:, None] + six, 6 * ends[:, None] + six], axis=1)

    @cached_property
    def stretch(self) -> Array:
        """Return the matrix (springs, size) from motions to how far each spring is stretched."""
        found = np.zeros((len(self.springs), self.size))
        every, six = np.arange(len(self.springs))[:, None], np.arange(6)
        for pieces, way in ((self.springs.end, 1.0), (self.springs.start, -1.0)):
            held = pieces != FIXED
            row = way * motion_rows(self.springs.along, self.springs.at, self.points[pieces])
            # one spring may join a piece to itself only by mistake: both rows then cancel
            found[every[held], 6 * pieces[held, None] + six] += row[held]
        return found

    @cached_property
    def beam_stiffness(self) -> Array:
        """Return the beams' part (size, size) of the stiffness."""
        K = np.zeros((self.size, self.size))
        if len(self.beams.length):
            A = self.carriers
            own = np.swapaxes(A, -1, -2) @ self.beams.stiffness() @ A
            at = self._beam_places
            np.add.at(K, (at[:, :, None], at[:, None, :]), own)
        return K

    @cached_property
    def order(self) -> tuple[Integers, ...]:
        """Return the motions block by block, so that what touches lies in blocks that follow."""
        count = len(self.points)
        if self.braces.size:
            return (np.arange(self.size, dtype=np.intp),)
        joined = np.stack([self.springs.start, self.springs.end], axis=1)
        beams = self.piece[np.stack([self.beams.start, self.beams.end], axis=1)]
        pairs = np.concatenate([joined[(joined != FIXED).all(axis=1)], beams])
        return tuple(
            (6 * one[:, None] + np.arange(6)).ravel()
            for one in chain_blocks(count, distinct(pairs, axis=0))
        )

    def stiffness(self, sets: Sequence[Mapping[str, float]]) -> Chain:
        """Return the stiffness (sets, …) by ``order``, each class of springs times its factor.

        As a sum of one stiffness for each class, put together once.
        """
        kinds, square, beside = self._by_class
        of_beams = self._of_beams
        times = np.array([[factors.get(kind, 1.0) for kind in kinds] for factors in sets])
        whole = [
            beams + np.tensordot(times, own, axes=1)
            for beams, own in zip(of_beams[0], square, strict=True)
        ]
        if self.braces.size:
            whole[0] = whole[0] + self.brace_stiffness * (self.braces.T @ self.braces)
        return Chain(
            whole,
            [
                beams + np.tensordot(times, own, axes=1)
                for beams, own in zip(of_beams[1], beside, strict=True)
            ],
        )

    @cached_property
    def _by_class(self) -> tuple[list[str], list[Array], list[Array]]:
        """Return the classes of springs, and what each (classes, …) adds to every block."""
        kinds = sorted(set(self.springs.kind.tolist()))
        square: list[Array] = []
        beside: list[Array] = []
        for mine, after, rows in zip(self.order, [*self.order[1:], None], self._rows, strict=True):
            of = [rows[self.springs.kind[rows] == kind] for kind in kinds]
            B = [self.stretch[each][:, mine] for each in of]
            held = [b.T * self.springs.stiffness[each] for b, each in zip(B, of, strict=True)]
            size = len(mine)
            square.append(
                np.array([h @ b for h, b in zip(held, B, strict=True)]).reshape(-1, size, size)
            )
            if after is not None:
                beside.append(
                    np.array(
                        [h @ self.stretch[e][:, after] for h, e in zip(held, of, strict=True)]
                    ).reshape(-1, size, len(after))
                )
        return kinds, square, beside

    @cached_property
    def _of_beams(self) -> tuple[list[Array], list[Array]]:
        """Return the beams' part of every block on the diagonal, and of those beside it."""
        K, order = self.beam_stiffness, self.order
        return (
            [K[mine][:, mine] for mine in order],
            [K[mine][:, after] for mine, after in pairwise(order)],
        )

    @cached_property
    def _rows(self) -> tuple[Integers, ...]:
        """Return which springs act on each block of ``order``."""
        return tuple(np.flatnonzero(self.stretch[:, mine].any(axis=1)) for mine in self.order)

    @cached_property
    def brace_stiffness(self) -> float:
        """Return how stiff what holds the braces is: as the stiffest motion of the piece."""
        own = self.springs.stiffness @ self.stretch**2
        return float((np.diag(self.beam_stiffness) + own).max(initial=1.0))

    def braced(self, motion: Array) -> "System":
        """Return the same system with one more motion (size,) held."""
        one = motion / float(np.linalg.norm(motion))
        return replace(self, braces=np.vstack([self.braces.reshape(-1, self.size), one]))

    def spring_stiffness(self, factors: Mapping[str, float]) -> Array:
        """Return the stiffness (springs,) in N/m of each spring, its class times its factor."""
        stiffness = self.springs.stiffness.copy()
        for kind, times in factors.items():
            stiffness[self.springs.kind == kind] *= times
        return stiffness

    def load_of_pieces(self, pieces: Integers, wrenches: Array) -> Array:
        """Return loads (…, size) of ``wrenches`` (…, k, 6) about the origin on rigid ``pieces``."""
        F = np.zeros((*wrenches.shape[:-2], len(self.points), 6))
        T = moved(-self.points[pieces])
        own = (np.swapaxes(T, -1, -2) @ wrenches[..., None])[..., 0]
        for k, piece in enumerate(pieces):
            F[..., piece, :] += own[..., k, :]
        return F.reshape(*wrenches.shape[:-2], self.size)

    def load_along(self, ends: Array) -> Array:
        """Return loads (cases, size) of what acts along beams: (cases, m, 12) at their own ends."""
        own = _by_beam(ends, self.carriers)
        six = own.reshape(len(ends), -1, 6)[:, self._by_piece[0]]
        F = np.zeros((len(ends), len(self.points), 6))
        if six.shape[1]:
            pieces, starts = np.unique(self._by_piece[1], return_index=True)
            F[:, pieces] = np.add.reduceat(six, starts, axis=1)
        return F.reshape(len(ends), self.size)

    @cached_property
    def _by_piece(self) -> tuple[Integers, Integers]:
        """Return the ends (2 m,) of beams, start and end in turn, by piece, and those pieces."""
        pieces = self.piece[np.stack([self.beams.start, self.beams.end], axis=1)].ravel()
        order = np.argsort(pieces, kind="stable")
        return order, pieces[order]

    def beam_ends(self, motion: Array, fixed: Array) -> Array:
        """Return the forces (cases, m, 12) on beams' ends, in their own axes.

        ``motion`` (cases, size), and ``fixed`` (cases, m, 12) what acts along them amounts to.
        """
        return _by_beam(motion[..., self._beam_places], self._from_motion) - fixed

    @cached_property
    def _from_motion(self) -> Array:
        """Return the matrices (m, 12, 12) from motions of pieces to forces on beams' ends."""
        return np.swapaxes(self.beams.stiffness() @ self.carriers, -1, -2)


def _by_beam(rows: Array, matrices: Array) -> Array:
    """Return rows (cases, m, 12) times the matrix (m, 12, 12) of each beam."""
    return np.swapaxes(np.swapaxes(rows, 0, 1) @ matrices, 0, 1)
