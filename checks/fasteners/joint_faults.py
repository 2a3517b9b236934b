"""What may be wrong with a joint once it is built: where it stands, what it meets, in a circle."""

from collections.abc import Sequence

from ...design.faults import DesignError, Fault
from ...design.structure import Structure
from ...statics.tables.joint_table import JointRow
from ...units import INCH, plain


def joint_fault(
    structure: Structure, row: JointRow, key: str, found: str, expected: str, hint: str
) -> DesignError:
    """Return a fault of one key of a joint, at its line of the file."""
    lines = structure.design.lines
    line = lines.get((row.name, key), lines.get((row.name, None)))
    return DesignError((Fault(structure.design.file, line, row.name, key, found, expected, hint),))


def odd_sides(structure: Structure, row: JointRow, sides: int) -> DesignError:
    """Return the fault that a number does not go round the sides of a face alike."""
    if sides > 12:
        return joint_fault(
            structure, row, "where", "each side", "a face with straight sides", "where = 'ring'"
        )
    more = sides * (row.count // sides + 1)
    return joint_fault(
        structure,
        row,
        "count",
        str(row.count),
        f"as many on each of the {sides} sides on which they touch",
        f"count = {more}",
    )


def beside(
    structure: Structure, row: JointRow, number: int, count: int, key: str | None = None
) -> DesignError:
    """Return the fault that fasteners stand where the parts do not touch."""
    key = key or ("ring" if row.ring is not None else "length" if row.length else "where")
    return joint_fault(
        structure,
        row,
        key,
        f"{number} of {count} stand where {row.of} and {row.to} do not touch",
        "all of them where the two parts touch",
        f"leave out '{key}', and they are set evenly where the parts touch",
    )


def not_touching(distance: float, metric: bool) -> str:
    """Return how far apart two parts lie that do not touch, and what to do."""
    shown = f"{distance * 1000.0:.0f} mm" if metric else f"{plain(distance / INCH, 3)} in"
    if distance <= 0.0:
        return "they meet in an edge or a point only, or lie within each other: add a block between"
    return f"they lie {shown} apart: add the block or cleat between them as a part"


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
