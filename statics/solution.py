"""The forces in a system under many load cases, and how well every piece is in balance."""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from ..units.arrays import Array, Integers, Mask
from ..units.frozen import ByIdentity, values_by_name
from .chain import Chain
from .one_thread import in_one_thread
from .one_way import settle
from .system import System

NO_FACTOR: Mapping[str, float] = {}
"""No factor on any stiffness."""

AS_READ = (NO_FACTOR,)
"""One set of stiffness: that of the file."""

_STILL = 1.0e-10
"""Of the greatest stiffness; a motion that meets less than this meets none."""


class MechanismError(Exception):
    """Nothing holds a motion (size,) of the pieces of a system, whatever loads it."""

    def __init__(self, motion: Array) -> None:
        super().__init__("a mechanism")
        self.motion = motion


class Solution(ByIdentity, frozen=True):
    """Motions (cases, size) in m and rad, and the force (cases, springs) in N in every spring.

    Drawn above 0. ``ends`` (cases, m, 12) are the forces on beams' ends in their own axes. Cases
    that are ``lost`` (cases,) have no equilibrium; all else in them is 0. ``open`` (cases, n) are
    the springs that only press and do not. ``error`` (cases,) is the greatest force or moment left
    over on any piece, over that case's load. ``braced`` (cases, b) is what the system's braces
    take, in N or N m.
    """

    motion: Array
    force: Array
    ends: Array
    lost: NDArray[np.bool_]
    open: Mask
    error: Array
    braced: Array

    def some(self, which: Integers) -> "Solution":
        """Return the solution of some of the cases."""
        return Solution(*(each[which] for each in values_by_name(self).values()))

    @staticmethod
    def all_of(each: Sequence["Solution"]) -> "Solution":
        """Return what was found of several lots of cases of one system, one after the other."""
        parts = zip(*(values_by_name(one).values() for one in each), strict=True)
        return Solution(*(np.concatenate(part) for part in parts))

    def toward(self, other: "Solution", share: Array) -> "Solution":
        """Return what lies between this and another of the same loads, ``share`` (cases,) of it.

        Both are in balance, so is that. A case that is lost in one of them is lost.
        """

        def mixed(one: Array, its: Array) -> Array:
            part = share.reshape(-1, *(1,) * (one.ndim - 1))
            return (1.0 - part) * one + part * its

        return Solution(
            mixed(self.motion, other.motion),
            mixed(self.force, other.force),
            mixed(self.ends, other.ends),
            self.lost | other.lost,
            self.open & other.open,
            np.maximum(self.error, other.error),
            mixed(self.braced, other.braced),
        )


@in_one_thread
def solve(
    system: System,
    loads: Array,
    fixed: Array,
    sets: Sequence[Mapping[str, float]] = AS_READ,
    start: Mask | None = None,
    *,
    one_way: bool = True,
) -> Solution:
    """Return the solution for load cases (cases, size), those along beams counted in.

    ``fixed`` (cases, m, 12) is what acts along beams amounts to at their own ends; ``sets`` are
    factors on stiffness by class: all cases by the first, then all by the next; ``start`` (cases,
    n) which springs are thought to open. Without ``one_way`` all springs hold both ways.
    Raises MechanismError where some motion meets no stiffness even with all springs closed.
    """
    order, cases = np.concatenate(system.order), len(loads)
    k = np.array([system.spring_stiffness(factors) for factors in sets])
    K, scale = _scaled(system.stiffness(sets), order)
    only = np.flatnonzero(system.springs.one_way & one_way)
    B = system.stretch[only]
    right = np.concatenate([loads, B])[:, order] / scale[:, None, order]
    found = np.empty_like(right)
    found[..., order] = np.swapaxes(_solved(K, np.swapaxes(right, 1, 2), order), 1, 2)
    found /= scale[:, None]
    motion, G = found[:, :cases], found[:, cases:]
    each = [_released(B, *one, start) for one in zip(G, k[:, only], motion, strict=True)]
    open_, z, lost = (np.concatenate(part) for part in zip(*each, strict=True))
    k = np.repeat(k, cases, axis=0)
    freed = (z * k[:, only]).reshape(len(sets), cases, len(only))
    motion = (motion + freed @ G).reshape(-1, system.size)
    motion = np.where(lost[:, None], 0.0, motion)
    loads, fixed = np.tile(loads, (len(sets), 1)), np.tile(fixed, (len(sets), 1, 1))
    stretched = motion @ system.stretch.T
    stretched[:, only] -= z
    force = np.where(lost[:, None], 0.0, stretched * k)
    ends = np.where(lost[:, None, None], 0.0, system.beam_ends(motion, fixed))
    held = system.braces.reshape(-1, system.size)
    braced = motion @ held.T * system.brace_stiffness
    left = _left_over(system, loads - braced @ held, loads, fixed, force, ends)
    error = np.where(lost, 0.0, left)
    return Solution(motion, force, ends, lost, open_, error, braced)


def _released(
    B: Array, G: Array, k: Array, motion: Array, start: Mask | None
) -> tuple[Mask, Array, NDArray[np.bool_]]:
    """Return which of the springs that only press open, by how much, and which cases are lost."""
    cases, n = len(motion), len(k)
    open_, z, lost = (
        np.zeros((cases, n), dtype=bool),
        np.zeros((cases, n)),
        np.zeros(cases, dtype=bool),
    )
    root = np.sqrt(k)
    q = -(motion @ B.T) * root
    size = np.abs(q).max(axis=1, initial=0.0)
    drawn = (q < -1.0e-9 * size[:, None]).any(axis=1)
    if drawn.any():
        M = np.eye(n) - root[:, None] * (B @ G.T) * root
        settled = settle((M + M.T) / 2.0, q[drawn], None if start is None else start[drawn])
        open_[drawn], z[drawn], lost[drawn] = settled.open, settled.z / root, settled.lost
    return open_, z, lost


def _scaled(K: Chain, order: Integers) -> tuple[Chain, Array]:
    """Return stiffness with ones on its diagonal, and the scale (sets, size) of every motion."""
    size = np.concatenate([np.diagonal(one, axis1=-2, axis2=-1) for one in K.square], axis=-1)
    if (size <= 0.0).any():
        motion = np.zeros(len(order))
        motion[order[int(size.min(axis=0).argmin())]] = 1.0
        raise MechanismError(motion)
    root = np.sqrt(size)
    own = np.split(root, np.cumsum([one.shape[-1] for one in K.square])[:-1], axis=-1)
    square = [one / s[..., None] / s[..., None, :] for one, s in zip(K.square, own, strict=True)]
    beside = [
        one / s[..., None] / after[..., None, :]
        for one, s, after in zip(K.beside, own[:-1], own[1:], strict=True)
    ]
    scale = np.empty_like(root)
    scale[..., order] = root
    return Chain(square, beside), scale


def _solved(K: Chain, right: Array, order: Integers) -> Array:
    """Return K^-1 right (sets, size, m) of scaled stiffness. Raises MechanismError."""
    try:
        found, least = K.solved(right)
    except np.linalg.LinAlgError:
        found, least = right, 0.0
    if least < _STILL:
        whole = K.whole()
        values, ways = np.linalg.eigh(whole)
        softest = int(values[:, 0].argmin())
        if values[softest, 0] < _STILL:
            motion = np.empty(len(order))
            motion[order] = ways[softest, :, 0]
            raise MechanismError(motion)
        found = np.asarray(np.linalg.solve(whole, right), dtype=np.float64)
    return found


def _left_over(
    system: System, carried: Array, loads: Array, fixed: Array, force: Array, ends: Array
) -> Array:
    """Return the imbalance (cases,) of the pieces: moments over the size of the whole.

    ``carried`` (cases, size) are the loads less what braces hold.
    """
    left = carried - force @ system.stretch - system.load_along(ends + fixed)
    span = float(np.ptp(system.points, axis=0).max(initial=0.0)) or 1.0
    parts = np.abs(left.reshape(len(loads), -1, 2, 3)) / np.array([1.0, span])[:, None]
    whole = np.abs(loads.reshape(len(loads), -1, 2, 3)) / np.array([1.0, span])[:, None]
    size = whole.sum(axis=(1, 2, 3))
    return parts.max(axis=(1, 2, 3), initial=0.0) / np.where(size > 0.0, size, 1.0)
