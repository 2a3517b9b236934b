"""Weight that was added to keep a piece down, and the design as it is without it."""

from ...design.model import Design, Part
from ...design.structure import build_structure
from ...statics.tables.anchor_table import BallastRow
from ...units.frozen import ByValue, replace

NAMED = "ballast"
"""Weights in a file that begin with this word were laid on to keep the piece down."""


class Added(ByValue, frozen=True):
    """Added weight of ``mass`` kg in all, and where it lies, each place once.

    ``places``: how it lies ("on", "inside", "fill", or "" where no part is named), the part,
    and with what a part is filled.
    """

    mass: float
    places: tuple[tuple[str, str, str], ...]
    without: Design


def added_weight(design: Design) -> Added | None:
    """Return what was added to a design that has its ballast as parts; None where nothing was.

    Such are rows of ballast, what fills a body, and weights named as `with_weight` names its own.
    Without it a weighed piece weighs so much less.
    """
    rows = {row.name: row for row in design.several(BallastRow)}
    fills = {f"{part.fill} in {part.name}": part for part in design.parts if part.fill}
    places: list[tuple[str, str, str]] = []
    for part in design.parts:
        if not _is_added(part, rows.keys() | fills.keys()):
            continue
        if (row := rows.get(part.name)) is not None:
            places.append(("on", row.on, "") if row.on else ("inside", row.inside or "", ""))
        elif (filled := fills.get(part.name)) is not None:
            places.append(("fill", filled.name, filled.fill or ""))
        else:
            places.append(("on" if part.place.on else "", part.place.on or "", ""))
    if not places:
        return None
    # A weight of nothing stays where it was: what the file says of it still finds it.
    parts = tuple(
        replace(part, mass=0.0, loose=False)
        if _is_added(part, rows.keys() | fills.keys())
        else replace(part, fill=None, fill_depth=None)
        for part in design.parts
    )
    tables = {kind: found for kind, found in design.tables.items() if kind is not BallastRow}
    bare = replace(design, parts=parts, tables=tables, weighed=None)
    mass = _mass(replace(design, weighed=None)) - _mass(bare)
    if design.weighed is not None:
        bare = replace(bare, weighed=design.weighed - mass)
    return Added(mass, tuple(dict.fromkeys(places)), bare)


def _is_added(part: Part, names: set[str]) -> bool:
    if not part.shape.is_point:
        return False
    return part.name in names or part.name.casefold().startswith(NAMED)


def _mass(design: Design) -> float:
    return build_structure(design).mass("typical")
