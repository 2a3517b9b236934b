"""A plate as a foot, bent up where it stands out beyond what stands on it: a cantilever."""

import numpy as np

from ...design import plane
from ...design.on_ground import BEDDING
from ...design.sections import section
from ...loads.combinations import resistance_basis
from ...materials import sheets
from ...units.arrays import first_greatest
from ...units.frozen import ByValue
from ..examination import Examination
from ..judged.judging import judged
from ..timber.books import book_of
from .remedy import Remedy


class FootBending(ByValue, frozen=True):
    """A foot at the moment when the piece turns over it, or is just held from it.

    ``overhang`` in m is how far it stands out toward the worst line, ``moment`` in N m what bends
    it there, ``capacity`` what it carries; ``utilization`` is their ratio.
    """

    part: str
    overhang: float
    moment: float
    capacity: float
    utilization: float | None

    @property
    def holds(self) -> bool:
        """Return whether it carries that."""
        return self.utilization is not None and self.utilization <= 1.0


def foot_bending(found: Examination, part: str) -> FootBending | None:
    """Return how a plate of sheet bends as a foot, None where no published value tells.

    Just before it tips all weight presses near the lee edge, at the line of turning: the moment is
    that weight (the factor that hurts, heavy) times how far the line lies beyond the body; the
    strip that bends is as wide as the body and one overhang, at most the plate (judgement: it
    spreads at 1 in 2), the weaker way of the grain. What holds it down is not
    counted. Source: statics; ``sheet_bending``.
    """
    structure, standing = found.structure, found.standing
    index = [each.name for each in structure.design.parts].index(part)
    body = next(one for one in structure.bodies if one.part == index)
    plate, material = body.shape.plate, structure.design.parts[index].material
    if plate is None or material is None:
        return None
    sheet = sheets.find_sheet(material, plate.thickness)
    if sheet is None:
        return None
    above = [
        section(other, body.top + BEDDING)
        for other in structure.bodies
        if other.part != index and other.bottom < body.top + BEDDING < other.top
    ]
    cut = plane.union_of(above)
    if cut.is_empty:
        return None
    corners = plane.coordinates(cut)
    weight = found.factors.hurting * structure.weight("heavy")
    pivot = standing.pivot(np.full(len(standing.normals), weight))
    reach = (corners @ standing.normals.T).max(axis=0)
    out = np.maximum(pivot - reach, 0.0)
    across = np.column_stack([-standing.normals[:, 1], standing.normals[:, 0]])
    along = structure.footprint @ across.T
    body = corners @ across.T
    spread = body.max(axis=0) - body.min(axis=0) + out
    width = np.minimum(along.max(axis=0) - along.min(axis=0), spread)
    moment = weight * out
    basis = resistance_basis(found.site)
    bending = book_of(basis).sheet_bending(sheet, width, basis, across=True)
    if bending is None:
        return None
    holds = bending * width
    line = first_greatest(moment / holds)
    utilization, _ = judged(float(moment[line]), float(holds[line]))
    return FootBending(part, float(out[line]), float(moment[line]), float(holds[line]), utilization)


def bending_of(remedy: Remedy) -> FootBending | None:
    """Return how the foot bends that a remedy widens, or lays beneath; None as `foot_bending`."""
    if remedy.found is None or remedy.design is None:
        return None
    part = remedy.part if remedy.part is not None else remedy.design.parts[-1].name
    return foot_bending(remedy.found, part)
