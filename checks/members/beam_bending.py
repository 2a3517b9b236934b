"""Bending, shear and what presses along a beam, at cuts between and beside what pushes it."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np

from ...design.shapes.shape import Array
from .beam_loads import Beam, PointLoads
from .beam_statics import Along, bent, cantilever, over_supports

_SAME = 1.0e-9

_BETWEEN = 65
"""At so many points between two cuts the governing load is looked at again."""

_PIECES = 12
"""Even load is put at the middles of at least twice so many pieces of a stick."""


@dataclass(frozen=True, eq=False)
class Bent:
    """Bending moment (…, x) in N m and shear (…, x) in N at cuts, of both ways of the section."""

    moment: tuple[Array, Array]
    shear: tuple[Array, Array]


def cuts_of(beam: Beam, loads: PointLoads) -> Array:
    """Return where along a beam bending is looked at: between pieces, and beside each load."""
    beside = np.concatenate([loads.at - _SAME, _edges(beam, loads)])
    return np.unique(np.clip(beside, 0.0, beam.stick.length))


def carried_ways(beam: Beam, loads: PointLoads, cuts: Array) -> list[Bent]:
    """Return bending and shear in each way in which the beam may carry what pushes it.

    What the even load amounts to stands at the middles of pieces between what else pushes.
    """
    edges = _edges(beam, loads)
    at = np.concatenate([loads.at, (edges[1:] + edges[:-1]) / 2.0])
    even = np.diff(edges) / beam.stick.length
    first, second = (
        _ways(
            beam,
            np.concatenate([push, own[..., None] * even], axis=-1),
            np.concatenate([turn, np.zeros((*turn.shape[:-1], len(even)))], axis=-1),
            at,
            cuts,
        )
        for push, turn, own in zip(loads.pushes, loads.turns, loads.own[:2], strict=True)
    )
    return [
        Bent((one.moment, other.moment), (one.shear, other.shear))
        for one, other in zip(first, second, strict=True)
    ]


def pressed_along(beam: Beam, loads: PointLoads, cuts: Array) -> Array:
    """Return the size (…, x) in N of the force along a stick: of what stands out, or all of it."""
    own = loads.own[2]
    if len(beam.places) != 1:
        whole = np.abs(loads.along).sum(axis=-1) + np.abs(own)
        return np.repeat(whole[..., None], len(cuts), axis=-1)
    ((low, high),) = beam.places
    after, before = cuts >= high - _SAME, cuts <= low + _SAME
    behind = (loads.at[:, None] > cuts) & after | (loads.at[:, None] < cuts) & before
    share = np.where(after, beam.stick.length - cuts, np.where(before, cuts, 0.0))
    even = own[..., None] * (share / beam.stick.length)
    return np.abs(loads.along @ behind.astype(float) + even)


def greatest(
    beam: Beam,
    cuts: Array,
    ways: Sequence[Bent],
    pressed: tuple[Array, Array],
    loads: PointLoads,
    load: tuple[int, int, int, int],
    longer: float,
) -> tuple[float, float]:
    """Return the greatest use by bending between cuts under one load, and the moment there in N m.

    By ``longer`` it is asked more than it is, as it lasts longer than wind.
    Between cuts nothing but the even load pushes: moments are parabolas through their ends.
    """
    step = np.diff(cuts)[:, None]
    t = np.linspace(0.0, 1.0, _BETWEEN)
    best = 0.0, 0.0

    def along(ends: Array) -> Array:
        return ends[:-1, None] * (1.0 - t) + ends[1:, None] * t

    for way in ways:
        first, second = (
            along(moment[load]) - own[load] / beam.stick.length * step**2 * t * (1.0 - t) / 2.0
            for moment, own in zip(way.moment, loads.own[:2], strict=True)
        )
        by, size = (along(each[load]) for each in pressed)
        use = beam.strength.use_within(by, size, first, second, beam.effective, longer)
        at = np.unravel_index(int(use.argmax()), use.shape)
        best = max(best, (float(use[at]), float(np.hypot(first[at], second[at]))))
    return best


def deflection(beam: Beam, cuts: Array, moments: tuple[Array, Array]) -> float:
    """Return how far in m a beam bends at most, in the two ways of its section together."""
    moved: list[float] = []
    p = beam.supports
    if len(p) == 1:
        low, high = beam.places[0]
        stretches = [
            (cuts >= high - _SAME, np.array([high])),
            (cuts <= low + _SAME, np.array([low])),
        ]
    else:
        starts = np.array([0.0, *p[1:-1]])
        ends = np.array([*p[1:-1], beam.stick.length])
        stretches = [
            ((cuts >= starts[n]) & (cuts <= ends[n]), p[n : n + 2]) for n in range(len(p) - 1)
        ]
    for part, held in stretches:
        if part.sum() < 2:
            continue
        first, second = (
            bent(moment[part], cuts[part], stiffness, held)
            for moment, stiffness in zip(moments, beam.strength.stiffness, strict=True)
        )
        moved.append(float(np.hypot(first, second)))
    return max(moved, default=0.0)


def _edges(beam: Beam, loads: PointLoads) -> Array:
    """Return where pieces of even load begin and end: at all places that matter, and between."""
    marks = [0.0, beam.stick.length, *(edge for place in beam.places for edge in place)]
    apart = sorted([*marks, *beam.supports.tolist(), *loads.at.tolist()])
    pieces: list[Array] = [
        np.linspace(low, high, 2 * ceil(_PIECES * (high - low) / beam.stick.length) + 1)[:-1]
        for low, high in pairwise(apart)
        if high - low > _SAME
    ]
    return np.append(np.concatenate(pieces), beam.stick.length)


def _ways(beam: Beam, F: Array, C: Array, at: Array, cuts: Array) -> list[Along]:
    """Return what forces and couples (…, k) do to a beam, one for each way to carry them."""
    if len(beam.places) == 1:
        return [_out_of(F, C, at, beam.places[0], cuts)]
    apart, joined = over_supports(F, C, at, beam.supports, cuts)
    return [apart] if len(beam.places) == 2 else [apart, joined]


def _out_of(F: Array, C: Array, at: Array, place: tuple[float, float], cuts: Array) -> Along:
    """Return bending and shear of what stands out on both sides of one place."""
    low, high = place
    after, before = cuts >= high - _SAME, cuts <= low + _SAME
    free = cantilever(F, C, at, np.maximum(cuts, high))
    other = cantilever(F, -C, -at, np.maximum(-cuts, -low))
    return Along(
        np.where(before, other.moment, np.where(after, free.moment, 0.0)),
        np.where(before, other.shear, np.where(after, free.shear, 0.0)),
    )
