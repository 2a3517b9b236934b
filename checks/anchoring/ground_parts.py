"""Which parts of a piece stand on the ground, and which of them are its foot."""

import numpy as np

from ...design.model import Design, Part
from ...design.placing import about_z
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity

_LOW = 0.5
"""A part that carries others and is no higher than so much of its lesser width is a foot, not a
body: judgement."""


class GroundParts(ByIdentity, frozen=True):
    """The parts that touch the ground, by index, and those of them that are a foot.

    ``top`` is how high the foot reaches in m, 0 without one; ``low`` and ``high`` (2,) are the
    bounds in m of the footprint along the design's own axes.
    """

    touching: tuple[int, ...]
    feet: tuple[int, ...]
    top: float
    low: Array
    high: Array

    @property
    def middle(self) -> Array:
        """Return the middle (2,) of the footprint in m."""
        return 0.5 * (self.low + self.high)


def ground_parts(structure: Structure) -> GroundParts:
    """Return what of a structure stands on the ground."""
    design = structure.design
    touching = tuple(sorted({patch.part for patch in structure.patches}))
    feet = tuple(i for i in touching if _is_foot(structure, i))
    tops = [body.top for body in structure.bodies if body.part in feet]
    own = structure.footprint @ about_z(design.turn)[:2, :2]
    return GroundParts(touching, feet, max(tops, default=0.0), own.min(axis=0), own.max(axis=0))


def single_foot(design: Design, ground: GroundParts) -> Part | None:
    """Return the one plate or frame on which the whole piece stands, None where it is another."""
    if len(ground.touching) != 1:
        return None
    part = design.parts[ground.touching[0]]
    place = part.place
    alone = place.count == 1 and not place.mirror and not part.loose and place.tilt == 0.0
    return part if alone and part.shape.lies_flat else None


def _is_foot(structure: Structure, i: int) -> bool:
    part = structure.design.parts[i]
    if part.shape.lies_flat:
        return True
    carries = any(other.place.on == part.name for other in structure.design.parts)
    body = next(body for body in structure.bodies if body.part == i)
    low, high = body.extent
    size = np.asarray(high) - np.asarray(low)
    return carries and float(size[2]) <= _LOW * float(size[:2].min())
