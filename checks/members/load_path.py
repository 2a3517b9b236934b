"""What holds what: the bodies through which weight and wind find the ground.

A part is held by those that joints fasten it to, else by the one it stands on or hangs under where
it touches that, else by what it touches that finds the ground without it.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ...design.on_ground import TOUCHING
from ...design.shapes.rotor import Rotor
from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import Structure
from ..joints.joint_places import Place
from .sticks import Stick, TurnedBox, box_of, stick_of, touch, where_touched
from .uprights import Mask, touching

_ALONG = 5
"""At so many points what lies along a stick is taken to touch it."""


@dataclass(frozen=True, eq=False)
class Hold:
    """Body ``held`` passes what it carries to body ``by`` at ``points`` (k, 3) in m."""

    held: int
    by: int
    points: Array


@dataclass(frozen=True, eq=False)
class LoadPath:
    """Who holds whom; ``sticks`` and ``boxes`` by body, ``near`` (bodies, bodies) who touches.

    ``order`` has each body after all that it holds, without those that hold each other in a circle.
    """

    sticks: tuple[Stick | None, ...]
    boxes: tuple[TurnedBox, ...]
    near: Mask
    holds: tuple[Hold, ...]
    order: tuple[int, ...]

    def of(self, i: int) -> list[Hold]:
        """Return where a body is held."""
        return [hold for hold in self.holds if hold.held == i]

    def on(self, i: int) -> list[Hold]:
        """Return what a body holds."""
        return [hold for hold in self.holds if hold.by == i]


def load_path(structure: Structure, places: Sequence[Place]) -> LoadPath:
    """Return who holds whom in a structure with joints at ``places``."""
    bodies = structure.bodies
    boxes = tuple(box_of(body) for body in bodies)
    sticks = tuple(stick_of(body) for body in bodies)
    near = _near(structure, boxes)
    pairs = _pairs(structure, near, sticks, places)
    order = _in_order(pairs, len(bodies))
    at_joints: dict[tuple[int, int], list[Array]] = {}
    for place in places:
        at_joints.setdefault((place.of, place.to), []).append(place.points)
    holds: list[Hold] = []
    for held, by in pairs:
        points = (
            np.vstack(at_joints[held, by])
            if (held, by) in at_joints
            else _contact(structure, sticks, boxes, held, by)
        )
        hook = structure.design.parts[bodies[held].part].hangs_at
        if hook is not None:
            points = np.column_stack([points[:, :2], np.full(len(points), hook)])
        holds.append(Hold(held, by, points))
    return LoadPath(sticks, boxes, near, tuple(holds), tuple(order))


def _near(structure: Structure, boxes: Sequence[TurnedBox]) -> Mask:
    """Return which bodies touch: by upright boxes, then by boxes turned with them."""
    near = touching(structure)
    for i, j in np.argwhere(np.triu(near)).tolist():
        if not _is_free(structure, i) and not _is_free(structure, j):
            near[i, j] = near[j, i] = bool(touch(boxes[i], boxes[j])[0])
    return near


def _is_free(structure: Structure, i: int) -> bool:
    """Return whether a body touches only what it is placed on."""
    body = structure.bodies[i]
    swings = structure.design.parts[body.part].hangs_at is not None
    return swings or isinstance(body.shape, (Weight, Rotor))


def _pairs(
    structure: Structure, near: Mask, sticks: Sequence[Stick | None], places: Sequence[Place]
) -> list[tuple[int, int]]:
    """Return who is held by whom, (held, by)."""
    bodies, parts = structure.bodies, structure.design.parts
    joined = dict.fromkeys((place.of, place.to) for place in places)
    has_joint = {held for held, _ in joined}
    placed: dict[tuple[int, int], None] = {}
    for i, body in enumerate(bodies):
        name = parts[body.part].place.reference
        if i in has_joint or name is None:
            continue
        on = [j for j in np.flatnonzero(near[i]) if parts[bodies[j].part].name == name]
        placed.update({(i, int(j)): None for j in on})
    sure = {**joined, **placed}
    sits = {held for held, _ in sure}
    leaning: dict[tuple[int, int], None] = {}
    for i, body in enumerate(bodies):
        grounded = body.bottom <= TOUCHING
        if i in has_joint or grounded or (sticks[i] is None and i in sits):
            continue
        based = _based_without(structure, near, i)
        for j in np.flatnonzero(near[i] & based).tolist():
            if (j, i) not in sure and (i, j) not in sure and not _is_free(structure, j):
                leaning[i, j] = None
    return [*sure, *(pair for pair in leaning if _holds(structure, leaning, sits, *pair))]


def _holds(
    structure: Structure, leaning: dict[tuple[int, int], None], sits: set[int], i: int, j: int
) -> bool:
    """Return whether ``j`` holds ``i`` where each might hold the other.

    What stands on something by itself holds what only leans there, as an arm its brace; of two
    alike the lower holds the upper.
    """
    if (j, i) not in leaning:
        return True
    if (i in sits) != (j in sits):
        return j in sits
    heights = [body.bottom + body.top for body in (structure.bodies[i], structure.bodies[j])]
    return heights[1] < heights[0] - TOUCHING


def _based_without(structure: Structure, near: Mask, i: int) -> Mask:
    """Return which bodies find the ground without body ``i``."""
    reached = np.array([body.bottom <= TOUCHING for body in structure.bodies])
    reached[i] = False
    while True:
        further = reached | near[reached].any(axis=0)
        further[i] = False
        if np.array_equal(further, reached):
            return reached
        reached = further


def _contact(
    structure: Structure,
    sticks: Sequence[Stick | None],
    boxes: Sequence[TurnedBox],
    held: int,
    by: int,
) -> Array:
    """Return the points (k, 3) at which two bodies are taken to touch."""
    if isinstance(structure.bodies[held].shape, (Weight, Rotor)):
        return structure.bodies[held].origin[None]
    found: list[tuple[float, Array]] = []
    for i, j in ((held, by), (by, held)):
        stick = sticks[i]
        reach = None if stick is None else where_touched(stick, boxes[j])
        if stick is not None and reach is not None:
            low, high = reach
            count = _ALONG if high - low > 2.0 * stick.wide else 1
            places = np.linspace(low, high, count) if count > 1 else [(low + high) / 2.0]
            found.append((high - low, np.array([stick.point(float(s)) for s in places])))
    if found:
        return min(found, key=lambda one: one[0])[1]
    low = np.maximum(structure.bodies[held].extent[0], structure.bodies[by].extent[0])
    high = np.minimum(structure.bodies[held].extent[1], structure.bodies[by].extent[1])
    corners = [(x, y) for x in (low[0], high[0]) for y in (low[1], high[1])]
    return np.array([(x, y, (low[2] + high[2]) / 2.0) for x, y in corners])


def _in_order(pairs: Sequence[tuple[int, int]], count: int) -> list[int]:
    """Return bodies, each after all that it holds; none that hold each other in a circle."""
    left = set(range(count))
    waits = {i: {held for held, by in pairs if by == i} for i in left}
    order: list[int] = []
    while ready := [i for i in sorted(left) if not waits[i] & left]:
        order += ready
        left -= set(ready)
    return order
