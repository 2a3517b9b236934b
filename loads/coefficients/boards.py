"""Boards that stand: those that abut in one plane are one board, and what fills what is beneath.

What stands in a board's own plane between its lower edge and the ground fills that space: a foot
plate or a plinth whole, posts by their share of its width.
"""

from collections.abc import Sequence
from typing import cast

import numpy as np

from ...design import plane
from ...design.placing import Body
from ...design.shapes.forms import Leaf
from ...design.touching import GAP
from ...units.arrays import Array
from ...units.frozen import ByValue, replace
from .signs import solid_from

_LEAST = 1.0e-6
"""Height in m beneath a board below which it stands on the ground."""

_PLUMB = 1.0e-3
"""Cosine off the upright below which a board stands in an upright plane."""


class StandingBoard(ByValue, frozen=True):
    """A standing board, one of those that together make a board ``width`` by ``height`` m.

    ``area`` in m2 is what all of them cover of that, ``bottom`` and ``top`` its heights above
    ground in m and ``filled`` the height beneath it that is filled. The one itself is ``own`` m
    wide, its middle ``offset`` m off that of all along its own axis. A board alone is all.
    """

    width: float
    height: float
    thickness: float
    area: float
    bottom: float
    top: float
    own: float
    offset: float = 0.0
    filled: float = 0.0
    solidity: float = 1.0
    climbers: bool = False
    several: bool = False

    @property
    def share(self) -> float:
        """Return what boards that abut cover of the whole, 1 of one alone, whatever its shape."""
        share = self.area / (self.width * self.height) if self.several else 1.0
        return min(share, 1.0)  # and no more by rounding


def lone_board(body: Body, filled: float = 0.0) -> StandingBoard | None:
    """Return a panel or cut-out as a board by itself, above ground; None for any other body."""
    leaf = body.shape.form
    if not isinstance(leaf, Leaf):
        return None
    buried = max(-body.bottom, 0.0)
    return StandingBoard(
        leaf.width,
        leaf.height - buried,
        leaf.thickness,
        plane.area_above(leaf.region, buried),
        max(body.bottom, 0.0),
        body.top,
        own=leaf.width,
        filled=filled,
        solidity=body.shape.solidity,
        climbers=body.shape.climbers,
    )


def boards(bodies: Sequence[Body]) -> list[StandingBoard | None]:
    """Return each body (bodies,) as a board, with what it makes one board with."""
    found = [lone_board(body) for body in bodies]
    boxes = [_sides(body) for body in bodies] if any(found) else []
    for group in _groups(bodies, found):
        first = bodies[group[0]]
        across = first.bearing(0.0)
        faces = [_face(bodies[i], cast(StandingBoard, found[i]), across) for i in group]
        low, bottom, high, top = plane.bounds_of(plane.union_of(faces)).tolist()
        filled = _filled(group, bodies, boxes, bottom)
        for i, face in zip(group, faces, strict=True):
            board = cast(StandingBoard, found[i])
            if len(group) == 1:
                found[i] = replace(board, filled=filled)
                continue
            way = 1.0 if bodies[i].bearing(0.0) @ across > 0.0 else -1.0
            found[i] = StandingBoard(
                high - low,
                top - bottom,
                max(cast(StandingBoard, found[j]).thickness for j in group),
                plane.union_of(faces).area,
                bottom,
                top,
                own=board.width,
                offset=way * (float(face.centroid.x) - 0.5 * (low + high)),
                filled=filled,
                several=True,
            )
    return found


def _groups(bodies: Sequence[Body], found: Sequence[StandingBoard | None]) -> list[list[int]]:
    """Return the boards that are one with each other, the first named first."""
    planes: list[list[int]] = []
    rest: list[list[int]] = []
    for i, body in enumerate(bodies):
        if found[i] is None:
            continue
        if not _joins(body):
            rest.append([i])
            continue
        same = [one for one in planes if any(_in_one_plane(body, bodies[j]) for j in one)]
        if same:
            same[0].append(i)
        else:
            planes.append([i])
    together = [one for each in planes for one in _abutting(each, bodies, found)]
    return sorted(together + rest)


def _joins(body: Body) -> bool:
    """Return whether a body is a solid board that stands plumb: others may make one with it."""
    solid = body.shape.panel is not None and body.shape.solidity >= 1.0
    return solid and abs(float(body.rotation[2, 1])) < _PLUMB


def _in_one_plane(one: Body, other: Body) -> bool:
    """Return whether two boards are parallel and their thicknesses meet."""
    normal = one.bearing(np.pi / 2.0)
    if abs(float(normal @ other.bearing(0.0))) > _PLUMB:
        return False
    thick = [leaf.thickness for body in (one, other) if isinstance(leaf := body.shape.form, Leaf)]
    apart = abs(float(normal @ (other.origin - one.origin)[:2]))
    return apart <= 0.5 * sum(thick) + GAP


def _abutting(
    some: list[int], bodies: Sequence[Body], found: Sequence[StandingBoard | None]
) -> list[list[int]]:
    """Return boards of one plane, together where their gaps are less than 30 % of the whole.

    The nearest are put together first. Source of the bound: ASCE/SEI 7 Fig. 29.3-1 Note 2.
    """
    across = bodies[some[0]].bearing(0.0)
    faces = {i: _face(bodies[i], cast(StandingBoard, found[i]), across) for i in some}
    boxes: Array = np.array([plane.bounds_of(faces[i]) for i in some])
    first, second = np.triu_indices(len(some), 1)
    clear = np.maximum(boxes[first, :2] - boxes[second, 2:], boxes[second, :2] - boxes[first, 2:])
    apart = np.maximum(clear, 0.0)
    gaps = (1.0e6 * np.hypot(apart[:, 0], apart[:, 1])).astype(np.int64)
    whole = {i: [i] for i in some}
    for k in np.argsort(gaps, kind="stable").tolist():
        one, other = whole[some[first[k]]], whole[some[second[k]]]
        if one is not other and _solid([faces[i] for i in one + other]):
            merged = sorted(one + other)
            whole.update(dict.fromkeys(merged, merged))
    return [group for i, group in whole.items() if group[0] == i]


def _solid(faces: list[plane.BaseGeometry]) -> bool:
    """Return whether faces cover enough of the box round them to be one board."""
    boxes: Array = np.array([plane.bounds_of(face) for face in faces])
    sides: Array = boxes[:, 2:].max(axis=0) - boxes[:, :2].min(axis=0)
    size = float(sides[0] * sides[1])
    least = (solid_from() - 1.0e-9) * size
    return sum(face.area for face in faces) >= least and plane.union_of(faces).area >= least


def _face(body: Body, board: StandingBoard, across: Array) -> plane.BaseGeometry:
    """Return the box round a board in its plane: along ``across`` and above ground, in m."""
    middle = float(body.origin[:2] @ across)
    half = board.own / 2.0
    leaf = body.shape.form
    if isinstance(leaf, Leaf):
        low, _, high, _ = leaf.region.bounds
        middle += 0.5 * (low + high) * float(body.bearing(0.0) @ across)
    return plane.box(middle - half, board.bottom, middle + half, board.top)


def _filled(
    group: Sequence[int], bodies: Sequence[Body], boxes: Sequence[Array], bottom: float
) -> float:
    """Return the mean height in m beneath boards of one plane that other bodies fill."""
    board = bodies[group[0]]
    across, normal = board.bearing(0.0), board.bearing(np.pi / 2.0)
    width, depth = float(np.hypot(*across)), float(np.hypot(*normal))
    if bottom <= _LEAST or width < 0.5 or depth < 0.5:
        return 0.0
    corners = np.vstack([boxes[i] for i in group])
    edges, middle = corners @ across / width, float((corners @ normal / depth).mean())
    shadows = [
        plane.box(float(along.min()), max(body.bottom, 0.0), float(along.max()), top)
        for i, (body, its) in enumerate(zip(bodies, boxes, strict=True))
        if i not in group and body.shape.hulls()
        for along, away in [(its @ across / width, its @ normal / depth)]
        if away.min() - _LEAST <= middle <= away.max() + _LEAST
        and (top := min(body.top, bottom)) > max(body.bottom, 0.0)
    ]
    beneath = plane.box(float(edges.min()), 0.0, float(edges.max()), bottom)
    return plane.union_of(shadows).intersection(beneath).area / float(np.ptp(edges))


def _sides(body: Body) -> Array:
    """Return the corners (k, 2) in plan of what bounds a body."""
    points = [body.place(hull.points)[:, :2] for hull in body.shape.hulls() if len(hull.points)]
    if points:
        return np.vstack(points)
    low, high = body.extent
    return np.array([[low[0], low[1]], [high[0], low[1]], [high[0], high[1]], [low[0], high[1]]])
