"""Sections of straight pieces, which uprights are slender, and which bodies touch.

Two bodies are taken to touch where the boxes round them, in the design's own axes, do.
"""

import numpy as np

from ...design.placing import Body, place_parts
from ...design.structure import Structure
from ...design.touching import GAP
from ...units.arrays import Array, Mask
from ...units.frozen import ByIdentity, replace

_SLENDER = 5.0
"""Length over width from which an upright piece is a post."""


class Section(ByIdentity, frozen=True):
    """The section of an upright, ``first`` by ``second`` in m.

    ``first`` lies along the plan vector ``axis`` (2,). ``wall`` is that of a tube, None of a solid
    piece.
    """

    axis: Array
    first: float
    second: float
    is_round: bool = False
    wall: float | None = None


def section_of(body: Body) -> Section | None:
    """Return the section of a slender upright body, at its thinner end; None of any other."""
    found = _section(body)
    if found is None or body.top - body.bottom < _SLENDER * max(found.first, found.second):
        return None
    return found


def touching_bodies(structure: Structure) -> Mask:
    """Return which bodies touch which (bodies, bodies), by the boxes round them.

    Point masses, wheels and what swings touch only what they are placed on.
    """
    bodies = place_parts(replace(structure.design, turn=0.0))
    extents = np.array([body.extent for body in bodies])
    low, high = extents[:, 0] - 0.5 * GAP, extents[:, 1] + 0.5 * GAP
    reaches: Mask = np.all(low[:, None] <= high[None], axis=-1)
    near = reaches & reaches.T
    parts = structure.design.parts
    for i, body in enumerate(bodies):
        part = parts[body.part]
        if not body.shape.stands or part.hangs_at is not None:
            bears = [parts[other.part].name == part.place.reference for other in bodies]
            near[i], near[:, i] = bears, bears
    np.fill_diagonal(near, False)
    return near


def _section(body: Body) -> Section | None:
    post = body.shape.post()
    if post is None or abs((body.rotation @ post.along)[2]) < 1.0 - 1.0e-9:
        return None
    axis = (body.rotation @ post.across)[:2]
    return Section(axis, post.first, post.second, post.is_round, post.wall)
