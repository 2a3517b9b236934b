"""How much of the space beneath a standing board is filled, down to the ground."""

import numpy as np

from ..design import plane
from ..design.placing import Body
from ..design.shapes.cutout import Cutout
from ..design.shapes.flat import Panel
from ..design.shapes.shape import Array
from ..design.structure import Structure

LEAST = 1.0e-6
"""Height in m beneath a board below which it stands on the ground."""


def filled_beneath(structure: Structure) -> Array:
    """Return the mean height (bodies,) in m that is filled beneath each panel or cut-out.

    What stands in the board's own plane counts, between its lower edge and the ground: a foot plate
    or a plinth whole, posts by their share of its width. 0 for all other bodies.
    """
    boxes = [_sides(body) for body in structure.bodies]
    return np.array(
        [
            _filled(body, structure.bodies, boxes)
            if isinstance(body.shape, (Panel, Cutout)) and body.bottom > LEAST
            else 0.0
            for body in structure.bodies
        ]
    )


def _filled(board: Body, bodies: tuple[Body, ...], boxes: list[Array]) -> float:
    across, normal = board.bearing(0.0), board.bearing(np.pi / 2.0)
    width, depth = float(np.hypot(*across)), float(np.hypot(*normal))
    if width < 0.5 or depth < 0.5:
        return 0.0
    corners = _sides(board)
    edges, middle = corners @ across / width, float((corners @ normal / depth).mean())
    shadows = [
        plane.box(float(along.min()), max(body.bottom, 0.0), float(along.max()), top)
        for body, its in zip(bodies, boxes, strict=True)
        if body is not board and body.shape.hulls()
        for along, away in [(its @ across / width, its @ normal / depth)]
        if away.min() - LEAST <= middle <= away.max() + LEAST
        and (top := min(body.top, board.bottom)) > max(body.bottom, 0.0)
    ]
    beneath = plane.box(float(edges.min()), 0.0, float(edges.max()), board.bottom)
    return plane.union_of(shadows).intersection(beneath).area / float(np.ptp(edges))


def _sides(body: Body) -> Array:
    """Return the corners (k, 2) in plan of what bounds a body."""
    points = [body.place(hull.points)[:, :2] for hull in body.shape.hulls() if len(hull.points)]
    if points:
        return np.vstack(points)
    low, high = body.extent
    return np.array([[low[0], low[1]], [high[0], low[1]], [high[0], high[1]], [low[0], high[1]]])
