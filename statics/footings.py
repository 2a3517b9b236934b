"""Where a piece stands on the ground or in it, as points on springs."""

import numpy as np

from ..design import plane
from ..design.on_ground import touching_face
from ..design.placing import Body
from ..design.sections import section
from ..units.arrays import Array
from ..units.frozen import ByIdentity
from .contacts.edge import GROUND, Holds
from .contacts.graph import Graph
from .stiffness import stiffness_rule
from .tie import Footing, stood

_LEVELS = 8
"""Into so many lengths what stands in the ground is parted: judgement."""

_MOST = 12
"""A face with more corners than so many is held at as many places round it."""


class HoldDown(ByIdentity, frozen=True):
    """What holds a piece down: ``anchors`` (n, 2) at its foot, and lines from ``tops`` (m, 3).

    Each line is tied to a body of ``tied`` (m,), draws it ``along`` (m, 3), down and out, and is
    of ``stiffness`` (m,) in N/m.
    """

    anchors: Array
    tops: Array
    tied: tuple[int, ...]
    along: Array
    stiffness: Array


def footings(graph: Graph, paved: bool, hold_down: HoldDown | None = None) -> list[Footing]:
    """Return how each body that stands on the ground, or in it, is held there.

    ``paved``: on a slab. What stands on it is held at the corners of its own face: both ways, or
    with a ``hold_down`` only as it presses there, drawn by anchors and lines alone.
    """
    found = [] if hold_down is None else [*_anchored(graph, hold_down), *_guyed(hold_down)]
    presses = bool(found)
    for edge in graph.edges:
        if edge.to == GROUND:
            body = graph.structure.bodies[edge.of]
            if edge.holds is Holds.EMBEDDED:
                found.append(in_ground(edge.of, body))
            else:
                found.append(on_ground(edge.of, body, paved, presses))
    return found


def _anchored(graph: Graph, hold_down: HoldDown) -> list[Footing]:
    """Return the anchors, each on the body that stands nearest to it on the ground."""
    bodies = graph.structure.bodies
    stands = [edge.of for edge in graph.edges if edge.holds is Holds.STANDS]
    if not stands:
        return []
    faces = {i: touching_face(bodies[i]) for i in stands}
    k = stiffness_rule("an anchor drawn")
    found: list[Footing] = []
    for spot in hold_down.anchors:
        of = min(stands, key=lambda i: plane.distance(spot, faces[i]))
        point = np.array([[spot[0], spot[1], bodies[of].bottom]])
        found.append(stood(of, point, np.array([[0.0, 0.0, k]])))
    return found


def _guyed(hold_down: HoldDown) -> list[Footing]:
    """Return the lines, each on the body that it is tied to: it draws, and never pushes."""
    return [
        Footing(body, top[None], along[None], np.array([k]), np.array([True]))
        for body, top, along, k in zip(
            hold_down.tied, hold_down.tops, hold_down.along, hold_down.stiffness, strict=True
        )
    ]


def on_ground(i: int, body: Body, paved: bool, presses: bool = False) -> Footing:
    """Return a body held at the corners of the face on which it stands, or only pressing there."""
    face = touching_face(body)
    corners = plane.ring_of(plane.simpler(plane.hull(plane.coordinates(face))))
    if len(corners) > _MOST:
        corners = corners[np.linspace(0, len(corners), _MOST, endpoint=False).astype(int)]
    points = np.column_stack([corners, np.full(len(corners), body.bottom)])
    bed = stiffness_rule("bed of paving" if paved else "bed of soil")
    each = bed * float(face.area) / len(points)
    stiffness = np.full((len(points), 3), each)
    return stood(i, points, stiffness, presses=presses, stands=True)


def in_ground(i: int, body: Body) -> Footing:
    """Return a post in the ground on springs that stiffen with depth, on both sides of it.

    Sideways n_h z for each m of depth; at its end it stands. Source: subgrade reaction of piles
    in sand, k = n_h z (Terzaghi 1955, memory).
    """
    depth = body.depth
    step = depth / _LEVELS
    below = (np.arange(_LEVELS) + 0.5) * step
    n_h = stiffness_rule("sideways in soil")
    points: list[Array] = []
    stiffness: list[Array] = []
    for z in below:
        middle, half = _across(body, -float(z))
        for way in (-1.0, 1.0):
            points.append(np.array([middle[0] + way * half, middle[1], -z]))
            stiffness.append(np.array([1.0, 1.0, 0.0]) * n_h * float(z) * step / 2.0)
    middle, _ = _across(body, -float(below[-1]))
    points.append(np.array([*middle, -depth]))
    stiffness.append(np.array([0.0, 0.0, stiffness_rule("end of a post")]))
    return stood(i, np.array(points), np.array(stiffness))


def _across(body: Body, height: float) -> tuple[Array, float]:
    """Return the middle (2,) of a body's section at a height, and half its width along x."""
    low_x, low_y, high_x, high_y = plane.bounds_of(section(body, height))
    return np.array([low_x + high_x, low_y + high_y]) / 2.0, (high_x - low_x) / 2.0
