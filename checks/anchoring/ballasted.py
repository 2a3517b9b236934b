"""Weight that is laid on a piece or inside one: as parts without wind, where it counts."""

import numpy as np

from ...design.faults import DesignError, Fault
from ...design.model import Design, Part, Place
from ...design.shapes.weight import Weight
from ...statics.tables.anchor_table import BallastRow
from ...units.frozen import replace
from .filled import filling


def with_ballast(design: Design) -> Design:
    """Return the design with what fills its bodies and each row of ballast, as point masses.

    On a part it lies on that part's top; inside one it lies on the floor that the body stands on
    or has itself. DesignError where it names no part, or lies in a ring without a floor: such
    ballast stays on the ground when the piece tips and counts for nothing.
    """
    rows = design.several(BallastRow)
    added, faults = filling(design)
    named = {part.name: part for part in design.parts}
    for row in rows:
        key, name = ("on", row.on) if row.on is not None else ("inside", row.inside)
        part = named.get(name or "")
        if part is None:
            names = ", ".join(named)
            faults.append(
                Fault(
                    design.file,
                    design.lines.get((row.name, key)),
                    row.name,
                    key,
                    name or "",
                    f"the name of a part: {names}",
                )
            )
            continue
        place = _on(part, row) if key == "on" else _inside(part, row, named)
        if place is None:
            faults.append(
                Fault(
                    design.file,
                    design.lines.get((row.name, key)),
                    row.name,
                    key,
                    name or "",
                    "a body with a floor that lifts with it",
                    "loose in a ring it stays behind: screw a floor to the foot, or lay it on one",
                )
            )
            continue
        added.append(
            Part(row.name, Weight(), place, mass=row.each * row.count, contact=part.contact)
        )
    if faults:
        raise DesignError(tuple(faults))
    return replace(design, parts=(*design.parts, *added)) if added else design


def _on(part: Part, row: BallastRow) -> Place | None:
    return Place(on=part.name, at=row.at)


def _inside(part: Part, row: BallastRow, named: dict[str, Part]) -> Place | None:
    """Return the place on the floor of a body, None where nothing beneath it lifts with it."""
    shape, below = part.shape, named.get(part.place.on or "")
    wall = shape.wall_thickness
    if shape.room is not None and wall is not None and not shape.open_below:
        rise = np.array([0.0, 0.0, wall])
        x, y, z = (float(c) for c in np.asarray(part.place.at) + np.asarray(row.at) + rise)
        return replace(part.place, at=(x, y, z), turn=0.0, mirror=frozenset())
    floored = below is not None and not below.shape.lets_through
    if shape.fill_height is not None and floored:
        x, y, z = (float(c) for c in np.asarray(part.place.at) + np.asarray(row.at))
        return Place(on=part.place.on, at=(x, y, z))
    return None
