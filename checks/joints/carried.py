"""What a body carries: all that stands on it or is fastened to it, and what that is fastened to."""

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from ...design.placing import Body
from ...design.structure import Structure

NEAR = 0.010
"""Boxes round two bodies that come nearer than this (m) are taken to touch: a shim, a washer."""

Fastened = Mapping[int, Sequence[int]]
"""By part, the parts that joints fasten it to."""

NOT_FASTENED: Fastened = {}


def carried(structure: Structure, fastened: Fastened = NOT_FASTENED) -> NDArray[np.bool_]:
    """Return which bodies go with each (bodies, bodies): row i holds what moves if i does.

    A part is carried by the parts that joints fasten it to, else by the one on which it stands or
    under which it hangs; of their copies by those that it touches, else by the nearest in plan.
    ValueError where parts carry each other in a circle.
    """
    bodies, parts = structure.bodies, structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    copies = [[i for i, body in enumerate(bodies) if body.part == p] for p in range(len(parts))]
    below: list[tuple[int, ...]] = []
    for p, part in enumerate(parts):
        reference = part.place.reference
        stands_on = () if reference is None else (index[reference],)
        below.append(tuple(dict.fromkeys(fastened.get(p, stands_on))))
    goes = np.eye(len(bodies), dtype=bool)
    order, circle = _in_order(below)
    if circle:
        raise ValueError(f"parts {circle} carry each other in a circle")
    for p in order:
        for i in copies[p]:
            for q in below[p]:
                for j in _bearers(bodies, i, copies[q]):
                    goes[j, i] = True
    for _ in range(len(parts)):
        further = goes @ goes
        if np.array_equal(further, goes):
            break
        goes = further
    return goes


def in_a_circle(below: Sequence[Sequence[int]]) -> list[int]:
    """Return the parts that carry each other in a circle, or what such parts carry."""
    return _in_order(below)[1]


def _bearers(bodies: Sequence[Body], i: int, copies: Sequence[int]) -> list[int]:
    """Return the copies that body ``i`` touches, else the nearest in plan."""
    low, high = bodies[i].extent
    touching = [
        j
        for j in copies
        if bool(
            (bodies[j].extent[0] <= high + NEAR).all() and (bodies[j].extent[1] >= low - NEAR).all()
        )
    ]
    away = [float(np.hypot(*(bodies[i].origin - bodies[j].origin)[:2])) for j in copies]
    return touching or [copies[int(np.argmin(away))]]


def _in_order(below: Sequence[Sequence[int]]) -> tuple[list[int], list[int]]:
    """Return parts, each after all that carry it, and those that are left over."""
    done: list[int] = []
    left = list(range(len(below)))
    while ready := [p for p in left if all(q in done for q in below[p])]:
        done += ready
        left = [p for p in left if p not in ready]
    return done, left
