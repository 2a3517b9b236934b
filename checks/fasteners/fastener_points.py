"""Where the fasteners of a joint stand on the face on which its parts meet."""

from collections.abc import Sequence

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import about_z
from ...design.structure import Structure
from ...statics.contacts.face import Face
from ...statics.tables.joint_table import JointRow
from ...units.arrays import Array
from . import fastener_layout as layout
from .joint_faults import beside, odd_sides

OFF = 0.006
"""A fastener whose middle lies farther (m) off the face on which the parts meet holds nothing."""


_HAIR = 1.0e-8
"""So far in m a region is let out where fasteners have just room: it may be a line or a point."""


def points_on(structure: Structure, row: JointRow, face: Face) -> Array:
    """Return where the fasteners stand on a face, on the site (n, 3)."""
    turn = structure.design.turn
    if row.points is not None:
        local = _as_given(row.points, face, turn)
        on_it = plane.contains_points(face.area.buffer(OFF), local)
        return face.on_site(local[on_it])
    if row.ring is not None:
        local = layout.on_a_ring(face.area, row.count, row.ring, (row.start or 0.0) + turn)
    elif row.where == "ring":
        local = layout.evenly(face.area, row.count, _up(face, turn))
    elif row.where == "rectangle" or row.length is not None:
        local = layout.in_rows(face.area, row.count, _up(face, turn), row.length, row.width)
        if row.length is not None:
            middle = local.mean(axis=0)
            local = middle + (local - middle) @ about_z(turn if face.is_level else 0.0)[:2, :2].T
    elif row.where == "each side":
        try:
            local = layout.on_each_side(face.area, row.count)
        except ValueError as sides:
            raise odd_sides(structure, row, int(sides.args[0])) from None
    else:
        local = layout.where_nothing_is_said(face.area, row.count, _up(face, turn))
    off = ~plane.contains_points(face.area.buffer(OFF), local)
    if off.any():
        raise beside(structure, row, int(off.sum()), len(local))
    return face.on_site(local)


def other_points(face: Face, count: int, free: BaseGeometry | None, turn: float) -> list[Array]:
    """Return other ways (each (n, 3)) to set fasteners on a face, so that they have more room.

    ``free`` is where they have it to ends and edges, None: anywhere; ``turn`` is the whole's, rad.
    """
    up = _up(face, turn)
    regions = (
        [face.area] if free is None or free.is_empty else [plane.moved_in(free, -_HAIR), face.area]
    )
    found = [way for region in regions for way in layout.ways_to_fill(region, count, up)]
    return [
        face.on_site(way)
        for way in found
        if plane.contains_points(face.area.buffer(OFF), way).all()
    ]


def _up(face: Face, turn: float) -> Array:
    """Return the way (2,) in a face's plane that counts as up: that, or the design's own y."""
    if not face.is_level:
        return np.array([0.0, 1.0])
    y = about_z(turn)[:, 1]
    return np.array([y @ face.right, y @ face.up])


def where_is_open(row: JointRow) -> bool:
    """Return whether nothing at all is said of where the fasteners stand."""
    return laid_out(row) and row.where is None


def laid_out(row: JointRow) -> bool:
    """Return whether it is left open where the fasteners stand."""
    return row.points is None and row.ring is None and row.length is None


def _as_given(points: Sequence[tuple[float, float]], face: Face, turn: float) -> Array:
    """Return points of the design's own axes in a face's plane.

    On a level face they are x and y; on an upright one the first is x, or y where the face runs
    from front to back, and the second the height.
    """
    given = np.asarray(points, dtype=float)
    back = about_z(turn)
    if face.is_level:
        whole = np.column_stack([given, np.full(len(given), face.origin[2])])
        return face.in_plane(whole @ back.T)
    right = back.T @ face.right
    axis = int(abs(right[1]) > abs(right[0]))
    start = float((back.T @ face.origin)[axis])
    along = (given[:, 0] - start) / float(right[axis])
    return np.column_stack([along, given[:, 1]])
