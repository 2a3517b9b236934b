"""What a piece weighs when its materials are denser, thicker or wetter than they are said to be."""

from collections.abc import Mapping

import numpy as np

from ... import materials
from ...design.model import Part
from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..stability.standing import DeadLoad

_GIVEN = ""
"""The kind of what is given by mass or scale, and does not vary."""

MEASURED = "measured"
"""The kind of what is given by density: only its sizes vary, as those of wood."""

BY_KIND: Mapping[str, tuple[str, ...]] = {
    "wood": ("density", "thickness", "moisture"),
    "panel": ("density", "thickness", "moisture"),
    "metal": ("density", "thickness"),
    "masonry": ("density", "thickness"),
    "plastic": ("density", "thickness"),
    MEASURED: ("thickness",),
    _GIVEN: (),
}
"""What the weight of each kind of material goes with."""


class Groups(ByIdentity, frozen=True):
    """A structure's weight by kind of material: ``kinds``, N (K,) and first moments in N m (K, 3).

    Typical weight; what swings counts at its hook's height.
    """

    kinds: tuple[str, ...]
    force: Array
    moment: Array

    def weight(self, factors: Mapping[str, Array]) -> DeadLoad:
        """Return the weight (n,) of pieces whose kinds weigh ``factors`` (n,) times as much.

        A kind that is not among the factors does not vary.
        """
        like = next(iter(factors.values()))
        each = np.stack([factors.get(kind, np.ones_like(like)) for kind in self.kinds], axis=-1)
        force = each @ self.force
        return DeadLoad(force, each @ self.moment / force[..., None])


def groups(structure: Structure) -> Groups:
    """Return the typical weight of a structure by kind of material."""
    mass = structure.body_mass[WEIGHINGS.index("typical")]
    weighed = structure.design.weighed is not None
    parts = structure.design.parts
    of = [kind_of(parts[body.part], weighed) for body in structure.bodies]
    kinds = tuple(dict.fromkeys(kind for kind, m in zip(of, mass, strict=True) if m > 0.0))
    own = np.array([[kind == each for each in of] for kind in kinds], dtype=float)
    force = own * mass * GRAVITY
    return Groups(kinds, force.sum(axis=1), force @ structure.steady_centres)


def kind_of(part: Part, weighed: bool) -> str:
    """Return by what the weight of a part varies: its material's kind, or how it was given."""
    if part.mass is not None:
        return _GIVEN
    if part.density is not None:
        return MEASURED
    if weighed or part.material is None:
        return _GIVEN
    return materials.find_material(part.material).kind
