"""Which parts joints fasten to which, so that what moves together is known."""

from ...design.structure import Structure
from ...statics.joint_table import JointRow
from .carried import Fastened, in_a_circle
from .joint_faults import joint_fault


def fastened_by(structure: Structure) -> Fastened:
    """Return by part the parts that the design's joints fasten it to.

    DesignError where a part is said to be loose and fastened at once, or joints run in a circle.
    """
    design = structure.design
    index = {part.name: i for i, part in enumerate(design.parts)}
    found: dict[int, list[int]] = {}
    for row in design.several(JointRow):
        found.setdefault(index[row.of], []).append(index[row.to])
        if design.parts[index[row.of]].loose:
            raise joint_fault(
                structure,
                row,
                "of",
                row.of,
                "a part that is not loose",
                f"leave out 'loose' of {row.of}, or this joint",
            )
    _check_circle(structure, found)
    return found


def _check_circle(structure: Structure, found: dict[int, list[int]]) -> None:
    parts = structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    below: list[tuple[int, ...]] = []
    for p, part in enumerate(parts):
        reference = part.place.reference
        below.append(tuple(found.get(p, () if reference is None else (index[reference],))))
    left = in_a_circle(below)
    if left:
        names = [parts[p].name for p in left]
        row = next(row for row in structure.design.several(JointRow) if row.of in names)
        raise joint_fault(
            structure,
            row,
            "to",
            row.to,
            "a part that does not hang on this one in turn",
            f"{', '.join(names)} carry each other in a circle: change 'of' and 'to'",
        )
