"""Parts that nothing holds: they hang in the air with a gap all round."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from .placing import Body
from .shapes.rotor import Rotor
from .shapes.weight import Weight
from .structure import Structure

GAP = 0.003
"""Boxes round two bodies that come nearer than this (m) are taken to touch: glue, paint, a shim."""


def beside_each_other(bodies: Sequence[Body]) -> NDArray[np.bool_]:
    """Return which bodies (bodies, bodies) have upright boxes round them that touch."""
    low = np.array([body.extent[0] for body in bodies])
    high = np.array([body.extent[1] for body in bodies])
    return np.asarray(
        ((low[:, None] <= high[None] + GAP) & (high[:, None] >= low[None] - GAP)).all(axis=-1)
    )


def untouched(structure: Structure) -> tuple[str, ...]:
    """Return the parts of which a copy touches neither the ground nor any other body.

    Judged by the upright boxes round them, so that what is told hangs free for certain. Point
    masses, wheels (on an axle that is seldom drawn) and what swings from a hook are left out.
    """
    bodies, parts = structure.bodies, structure.design.parts
    found: dict[str, None] = {}
    for body in bodies:
        part = parts[body.part]
        free = isinstance(body.shape, (Weight, Rotor)) or part.hangs_at is not None
        if free or body.bottom <= GAP:
            continue
        low, high = body.extent
        near = any(
            other is not body
            and not isinstance(other.shape, Weight)
            and bool((other.extent[0] <= high + GAP).all() and (other.extent[1] >= low - GAP).all())
            for other in bodies
        )
        if not near:
            found[part.name] = None
    return tuple(found)
