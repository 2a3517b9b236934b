"""What may be wrong with a joint once it is built: where it stands, and what it meets."""

from ...design.faults import DesignError, Fault
from ...design.structure import Structure
from ...statics.tables.joint_table import JointRow
from ...units import INCH


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
    shown = f"{distance * 1000.0:.0f} mm" if metric else f"{distance / INCH:.3g} in"
    if distance <= 0.0:
        return "they meet in an edge or a point only, or lie within each other: add a block between"
    return f"they lie {shown} apart: add the block or cleat between them as a part"
