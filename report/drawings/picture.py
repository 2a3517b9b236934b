"""A small picture in characters beside the first lines: the side by which a piece is known."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.outlines import outlines
from ...design.placing import about_z
from ...design.structure import Structure
from ...units.arrays import Array
from ..wording.amounts import Amounts
from ..wording.characters import Characters, window_columns, window_rows
from .seen import known_from, simpler_outline

WIDEST, TALLEST = 21, 10
"""Columns and rows of the picture at most, without the line that says how wide its foot is."""

_LEVEL = np.eye(3)[[0, 2]], np.eye(3)[[1, 2]]


def picture(structure: Structure, share: float = 1.0) -> list[str]:
    """Return its rows, ground and foot's width beneath, all as wide; @ is the balance point.

    It is drawn on a ``share`` of the most columns and rows.
    """
    back = about_z(-structure.design.turn)
    bodies, view = known_from(structure)
    sides = outlines(bodies, np.radians([0.0, 270.0]))
    regions: list[BaseGeometry] = [
        simpler_outline(body, sides[i, view], _LEVEL[view]) for i, body in enumerate(bodies)
    ]
    near = [-body.extent[0][1] if view == 0 else body.extent[1][0] for body in bodies]
    order = [int(i) for i in np.argsort(near, kind="stable")]
    shown = [i for i in order if not regions[i].is_empty]
    if not shown:
        return []
    points = np.vstack([plane.coordinates(regions[i]) for i in shown])
    low, high = points.min(axis=0), points.max(axis=0)
    low[1] = min(low[1], 0.0)
    wide = float((high - low).max()) / (2.0 * WIDEST)
    columns, rows = share * WIDEST, share * TALLEST
    while window_columns(low, high, wide) > columns or window_rows(low, high, wide) > rows:
        wide *= 1.02
    grid = Characters(low, high, wide)
    parts = structure.design.parts
    for i in shown:
        shape = parts[bodies[i].part].shape
        open_ = shape.is_lattice
        grid.draw(regions[i], bodies[i].part, ":" if open_ else " ")
    balance = back @ structure.centre_of_mass("typical")
    grid.mark(balance[[view, 2]], "@")
    lines = grid.lines()
    lines.insert(len(lines) - grid.row_of(0.0), "=" * grid.columns)
    return _with_width(lines, structure, back, view)


def _with_width(lines: list[str], structure: Structure, back: Array, view: int) -> list[str]:
    """Return the rows with the foot's width beneath, in the middle of them."""
    if not len(structure.footprint):
        return lines
    foot = structure.footprint @ back[:2, :2].T
    label = Amounts(structure.design.units == "metric").length(float(np.ptp(foot[:, view])))
    wide = max(len(label), *(len(line) for line in lines))
    wide += (wide - max(len(line) for line in lines)) % 2
    drawn = max(len(line) for line in lines)
    left = " " * ((wide - drawn) // 2)
    return [f"{left}{line}".ljust(wide) for line in lines] + [label.center(wide)]
