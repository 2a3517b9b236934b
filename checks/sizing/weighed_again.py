"""A scale's reading of a piece that is changed: the old one, and what the change weighs."""

from ... import materials
from ...design.model import Design
from ...design.structure import build_structure
from ...units.frozen import replace
from ..anchoring.ballasted import with_ballast


def weighed_again(old: Design, new: Design) -> Design:
    """Return the changed design with the reading that a scale would then show.

    What is known by material weighs as much more or less than its table says as it did before.
    Nothing changes where the design was not weighed.
    """
    if old.weighed is None:
        return new
    given, by_material = _masses(old)
    factor = (old.weighed - given) / by_material
    given, by_material = _masses(new)
    return replace(new, weighed=given + factor * by_material)


def _masses(design: Design) -> tuple[float, float]:
    """Return the typical mass in kg of what is given or laid on, and of what material tells."""
    structure = build_structure(with_ballast(replace(design, weighed=None)))
    by_material = sum(
        materials.find_material(part.material).typical * float(volume)
        for part, volume in zip(structure.design.parts, structure.part_volume, strict=True)
        if part.material is not None and part.mass is None
    )
    return structure.mass("typical") - by_material, by_material
