"""Joints that cannot be as they are written: of loose parts, or round in a circle."""

from collections.abc import Sequence

from ...design.structure import Structure
from ...statics.tables.joint_table import JointRow
from .joint_faults import joint_fault


def check_fastened(structure: Structure) -> None:
    """Raise DesignError where a part is loose and fastened at once, or joints run in a circle."""
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


def _check_circle(structure: Structure, found: dict[int, list[int]]) -> None:
    parts = structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    below: list[tuple[int, ...]] = []
    for p, part in enumerate(parts):
        reference = part.place.reference
        below.append(tuple(found.get(p, () if reference is None else (index[reference],))))
    left = _in_a_circle(below)
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


def _in_a_circle(below: Sequence[Sequence[int]]) -> list[int]:
    """Return the parts that carry each other in a circle, or what such parts carry."""
    done: list[int] = []
    left = list(range(len(below)))
    while ready := [p for p in left if all(q in done for q in below[p])]:
        done += ready
        left = [p for p in left if p not in ready]
    return left
