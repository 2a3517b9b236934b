"""What is closed above on a structure, and what stands beneath it: the geometry of suction."""

from math import atan2, radians

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.on_ground import TOUCHING
from ...design.placing import Body
from ...design.structure import Structure
from ...units.frozen import kept_with

STEEP = radians(60.0)
"""Slopes steeper than this take no suction."""

LEANS_OVER = 0.5
"""Cosine of 60 degrees: how level a leaning board has to be to count as a roof."""

POST = 0.25
"""Solid supports that fill less of what they carry than this are posts: wind passes beneath."""

_LEAST_AREA = 1.0e-6
"""Areas in m2 in plan that two bodies share, below which they only stand beside each other."""

_CLOSE = 0.1
"""Gap beneath a roof over its own reach in plan, up to which what stands there is closed by it."""


def lid(structure: Structure, i: int) -> BaseGeometry | None:
    """Return the plan of what is closed above on a body, or None.

    Plates off the ground; roofs and the skirts of gentle slopes; the tops of closed boxes; the top
    of a solid body that caps a hollow one, overhangs what it stands on, or hangs free.
    """
    body = structure.bodies[i]
    shape = body.shape
    if shape.lies_flat:
        lies = shape.foot() is None or lies_on_ground(structure, body)
        steep = abs(body.rotation[2, 2]) < LEANS_OVER
        return None if lies or steep else body.in_plan(shape.contact())
    if shape.panel is not None and abs(body.rotation[2, 1]) >= LEANS_OVER:
        flat = body.bottom <= TOUCHING and body.top <= shape.panel.thickness + TOUCHING
        corners = body.place(shape.hulls()[0].points)[:, :2]
        return None if flat else plane.hull(corners)
    skirt = shape.skirt()
    if skirt is not None and atan2(skirt.rise, skirt.run) <= STEEP:
        return body.in_plan(skirt.region)
    if shape.is_block:
        return _solid_top(structure, body, top_plan(body))
    top = top_plan(body) if shape.has_lid else plane.NOTHING
    return top if top.area > 0.0 else None


def lies_on_ground(structure: Structure, body: Body) -> bool:
    """Return whether a plate lies on the ground, or on plates that do."""
    if body.bottom <= TOUCHING:
        return True
    below = supports(structure, body)
    return bool(below) and all(
        one.shape.lies_flat and one.shape.is_floor and lies_on_ground(structure, one)
        for one in below
    )


@kept_with
def covered(structure: Structure, i: int) -> BaseGeometry:
    """Return what of a body the closed bodies on top of it cover, in plan."""
    return plane.union_of([_covers(structure, j) for j in on_top(structure, i)])


@kept_with
def is_closed_above(structure: Structure, i: int) -> bool:
    """Return whether what stands on an open top closes at least half of it."""
    opening = top_plan(structure.bodies[i])
    closing = [closes(structure, j) for j in on_top(structure, i)]
    return plane.union_of(closing).intersection(opening).area >= 0.5 * opening.area


def supports(structure: Structure, body: Body) -> list[Body]:
    """Return what a body stands on or is set into: what ends at its underside and lies beneath."""
    bodies = structure.bodies
    below = np.flatnonzero(_standing_on(structure)[bodies.index(body)]).tolist()
    return [bodies[j] for j in below if bodies[j].bottom < body.bottom - TOUCHING]


@kept_with
def _standing_on(structure: Structure) -> NDArray[np.bool_]:
    """Return which bodies (upper, lower) stand on another's top, are set into it, or go round it.

    Those whose boxes do not share a place in plan, at the height of that top, are left out at once.
    """
    bodies = structure.bodies
    low, high = (np.array([body.extent[end] for body in bodies]) for end in (0, 1))
    level = high[:, 2] + TOUCHING
    upper, lower = np.s_[:, None], np.s_[None, :]
    found = (low[upper][..., 2] <= level[lower]) & (level[lower] < high[upper][..., 2])
    found &= ((low[upper] <= high[lower]) & (low[lower] <= high[upper]))[..., :2].all(axis=-1)
    np.fill_diagonal(found, val=False)
    for i, j in np.argwhere(found).tolist():
        shared = top_plan(bodies[j]).intersection(from_above(bodies[i]))
        found[i, j] = shared.area > _LEAST_AREA
    return found


def is_free(structure: Structure, body: Body) -> bool:
    """Return whether wind passes beneath: it hangs alone, or on posts, panels or their frame."""
    return body.shape.room is None and flows_beneath(structure, body)


def flows_beneath(structure: Structure, body: Body) -> bool:
    """Return whether wind passes beneath a body, be it hollow or not."""
    below = _carrying(structure, body)
    if not below:
        return bool(body.bottom > TOUCHING)
    if all(one.shape.lies_flat for one in below):
        return all(is_free(structure, one) for one in below)
    bodies = [one for one in below if one.shape.fills_space]
    if any(one.shape.is_hollow for one in bodies):
        return False
    filled = plane.union_of([top_plan(one) for one in bodies])
    return filled.area < POST * body.shape.from_above().area


def _carrying(structure: Structure, body: Body) -> list[Body]:
    """Return what a body stands on, else what reaches up to it from beneath.

    A roof nearer to a body than a tenth of its own reach in plan closes it (judgement).
    """
    below = supports(structure, body)
    if below or not body.shape.hulls():
        return below
    own = from_above(body)
    near = body.bottom - _CLOSE * plane.diameter(own)
    found: list[Body] = []
    for other in structure.bodies:
        reaches = near <= other.top <= body.top and other.bottom < body.bottom - TOUCHING
        if reaches and plane.intersects(own, from_above(other), _LEAST_AREA):
            found.append(other)
    return found


def leans_open(structure: Structure, body: Body) -> bool:
    """Return whether wind passes beneath a leaning board: nothing that is closed stands there."""
    bodies = body_beneath(structure, body)
    if any(one.shape.is_hollow for one in bodies):
        return False
    filled = plane.union_of([top_plan(one) for one in bodies])
    return filled.area < POST * from_above(body).area


def body_beneath(structure: Structure, body: Body) -> list[Body]:
    """Return the true bodies beneath, through plates and frames that lie between."""
    found: list[Body] = []
    for one in _carrying(structure, body):
        if one.shape.lies_flat:
            found += body_beneath(structure, one)
        elif one.shape.fills_space:
            found.append(one)
    return found


def vessel_floors(structure: Structure, i: int) -> list[BaseGeometry]:
    """Return the floors inside a body that is open above."""
    body = structure.bodies[i]
    floor = body.shape.vessel_floor() if body.shape.open_above else None
    if floor is None or is_closed_above(structure, i):
        return []
    if body.shape.open_below:
        below = supports(structure, body)
        if not below or not all(one.shape.is_floor for one in below):
            return []
    return [body.in_plan(floor)]


@kept_with
def from_above(body: Body) -> BaseGeometry:
    """Return the outline from above of a body where it stands."""
    return body.in_plan(body.shape.from_above()) if body.shape.hulls() else plane.NOTHING


@kept_with
def top_plan(body: Body) -> BaseGeometry:
    """Return the filled outline of a body's top in plan."""
    return body.in_plan(body.shape.crown()) if body.shape.hulls() else plane.NOTHING


def on_top(structure: Structure, i: int) -> list[int]:
    """Return the bodies that stand on this one, are set into it, or go round its top."""
    return np.flatnonzero(_standing_on(structure)[:, i]).tolist()


def _covers(structure: Structure, j: int) -> BaseGeometry:
    """Return what a body hides of the one beneath it: its underside; a frame, what is on it."""
    body = structure.bodies[j]
    if body.shape.lies_flat and body.shape.lets_through:
        return covered(structure, j)
    foot = body.shape.foot()
    return plane.NOTHING if foot is None else body.in_plan(foot)


@kept_with
def closes(structure: Structure, j: int) -> BaseGeometry:
    """Return what a body closes of an open top beneath it."""
    body = structure.bodies[j]
    if body.shape.lies_flat and not body.shape.lets_through:
        return plane.union_of([body.in_plan(body.shape.contact()), covered(structure, j)])
    through = body.shape.lets_through and not body.shape.lies_flat
    if through and not is_closed_above(structure, j):
        return plane.NOTHING
    return _covers(structure, j)


def _solid_top(structure: Structure, body: Body, top: BaseGeometry) -> BaseGeometry | None:
    """Return a solid's top where it is a cap or a deck; a post, or a block on a solid, has none."""
    if top.is_empty or body.bottom <= TOUCHING:
        return None
    below = supports(structure, body)
    if is_free(structure, body) or any(one.shape.is_hollow for one in below):
        return top
    beneath = plane.union_of([top_plan(one) for one in below])
    overhangs = top.difference(beneath).area > 0.01 * top.area
    return top if overhangs else None
