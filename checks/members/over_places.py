"""Which way a stick leaves what it carries at three places or more: rigid, span by span, in one.

A stick that bends little beside what holds it shares as a rigid body; a slender one leaves more
where it is pushed. Each way balances the load; what holds it is judged by the worst of them all.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ...design.shapes.shape import Array
from .beam_statics import reactions
from .load_path import Hold, LoadPath
from .sticks import Stick, where_touched

MOSTLY = 0.8
"""Share of its length from which a stick that is held all along does not span: judgement."""

_GAUSS = (np.array([-1.0, 1.0]) / np.sqrt(3.0) + 1.0) / 2.0
"""Two points of a stretch at which an even load may stand: exact where influence is cubic."""


@dataclass(frozen=True, eq=False)
class Touched:
    """What pushes a stick: forces (…, k, 3) in N and couples (…, k, 3) in N m at ``at`` (k,) in m.

    ``own`` (…, 3) in N is spread evenly over its length, and so is ``twist`` (…) in N m about it.
    """

    at: Array
    force: Array
    couple: Array
    own: Array
    twist: Array | float = 0.0


def together(held: Sequence[tuple[float, float]], near: float) -> list[tuple[float, float]]:
    """Return places at which a stick is held, those that lie nearer than ``near`` m as one."""
    found: list[tuple[float, float]] = []
    for low, high in sorted(held):
        if found and low - found[-1][1] < near:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def held_from_to(path: LoadPath, i: int, stick: Stick) -> list[tuple[float, float]]:
    """Return from where to where along itself in m each hold of a stick holds it."""
    reached = [where_touched(stick, path.boxes[hold.by]) for hold in path.of(i)]
    by_points = [stick.at(hold.points) for hold in path.of(i)]
    return [
        (float(points.min()), float(points.max())) if reach is None else reach
        for reach, points in zip(reached, by_points, strict=True)
    ]


def places_of(path: LoadPath, i: int) -> list[list[int]]:
    """Return which points of all its holds, stacked, a stick is held by at each of its places.

    Empty of what is no stick, is held at fewer than three places, or all along.
    """
    stick = path.sticks[i]
    holds = path.of(i)
    if stick is None or len(holds) < 3:
        return []
    held = held_from_to(path, i, stick)
    places = together(held, stick.wide)
    if len(places) < 3 or max(high - low for low, high in places) > MOSTLY * stick.length:
        return []
    ends = np.cumsum([0, *(len(hold.points) for hold in holds)])
    found: list[list[int]] = []
    for low, high in places:
        at = [n for n, (a, b) in enumerate(held) if low <= a and b <= high]
        found.append([k for n in at for k in range(ends[n], ends[n + 1])])
    return found


def spanning(
    stick: Stick, holds: Sequence[Hold], places: Sequence[Sequence[int]], pushed: Touched
) -> list[tuple[Array, Array]]:
    """Return forces in N and couples in N m (…, k, 3) at all points of holds, in each of two ways.

    Of spans by themselves, and in one piece; alike at the points of one place. What twists the
    stick about itself goes to the two places between which it acts by the lever, as in an even bar
    that its places keep from turning. What pushes it along itself is left to a rigid body.
    Source: ``reactions``; statics.
    """
    points = np.vstack([hold.points for hold in holds])
    along = stick.at(points)
    p = np.array([along[list(place)].mean() for place in places])
    stretches = np.unique(np.concatenate([[0.0, stick.length], np.clip(p, 0.0, stick.length)]))
    size = np.diff(stretches)
    even = (stretches[:-1, None] + size[:, None] * _GAUSS).ravel()
    weight = np.repeat(size, 2) / (2.0 * stick.length)
    k = len(pushed.at)
    at = np.concatenate([pushed.at, even])
    ones = np.eye(len(at))
    by_force = reactions(ones, 0.0 * ones, at, p)
    by_couple = reactions(0.0 * ones, ones, at, p)
    twisted = (pushed.couple @ stick.along) @ by_force[0][:k]
    twisted = twisted + np.asarray(pushed.twist)[..., None] * (weight @ by_force[0][k:])
    off = points - (stick.start + along[:, None] * stick.along)
    found: list[tuple[Array, Array]] = []
    for force, couple in zip(by_force, by_couple, strict=True):
        forces = np.zeros((*pushed.own.shape[:-1], len(points), 3))
        couples = np.zeros(forces.shape)
        first, second = stick.ways
        for way, turns in ((first, second), (second, -first)):
            left = (pushed.force @ way) @ force[:k] + (pushed.couple @ turns) @ couple[:k]
            left = left + (pushed.own @ way)[..., None] * (weight @ force[k:])
            for n, place in enumerate(places):
                forces[..., list(place), :] += left[..., n, None, None] / len(place) * way
        for n, place in enumerate(places):
            couples[..., list(place), :] += twisted[..., n, None, None] / len(place) * stick.along
        beside = np.cross(off, forces) @ stick.along
        found.append((forces, couples - beside[..., None] * stick.along))
    return found


def on_stick(
    stick: Stick, arrived: Sequence[tuple[Array, Array, Array]]
) -> list[tuple[float, Array, Array]]:
    """Return what arrives at points (k, 3) as forces (…, k, 3) and a couple (…, 3), along a stick.

    Each as its place in m, force (…, 3) and couple (…, 3) there; points that lie close are one.
    """
    found: list[tuple[float, Array, Array]] = []
    for points, passed, rest in arrived:
        s = np.clip(stick.at(points), 0.0, stick.length)
        arm = points - np.array([stick.point(float(each)) for each in s])
        turned = np.cross(arm, passed)
        if np.ptp(s) <= 2.0 * stick.wide:
            middle = float(s.mean())
            moved = np.cross((s - middle)[:, None] * stick.along, passed)
            couple = (turned + moved).sum(axis=-2) + rest
            found.append((middle, passed.sum(axis=-2), couple))
            continue
        for n, each in enumerate(s):
            found.append((float(each), passed[..., n, :], turned[..., n, :] + rest / len(s)))
    return found
