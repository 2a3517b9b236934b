"""Suction on what is closed above: lids, decks, roofs and the floors of open vessels.

Closed tops, free roofs and what else is lifted by the figures of each book (``tops.py``). They act
on the area in plan, with the wind, at its centroid. Nothing on what lies on the ground, on solid
posts, or on slopes steeper than 60 degrees.
"""

from collections.abc import Sequence
from math import radians

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.outlines import downwind_axes
from ...design.placing import Body
from ...design.plane import Polygons
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..coefficients.shape_coefficients import Coefficient
from ..coefficients.signs import openings_factor
from ..seen.visible import silhouette
from .inside_air import breathes, closing_lids, floors
from .lids import (
    body_beneath,
    covered,
    is_closed_above,
    is_free,
    leans_open,
    lid,
    lies_on_ground,
    top_plan,
    vessel_floors,
)
from .overhangs import upwind_of
from .roof_planes import RoofPlane, roof_planes
from .roof_wind import RoofWind, board_of, slab_of
from .tops import OPEN_SIDE, OVERHANG, VESSEL_FLOOR, Tops

BLOWS_IN = (75.0, 60.0)
"""Angles in degrees off an open side from which the wind does not blow in, and in full (judgement).
"""

BLOCKED = (0.45, 0.55)
"""Shares of the space beneath a free roof up to which it is clear and from which it is obstructed;
linear between (the figures change from the one to the other at a half: no jump, judgement)."""

UPRIGHT = 89.9
"""Slope in degrees from which a board stands: a sign (it rounds off what turning leaves)."""

SUCTION = "suction"
"""The cases in which closed tops are lifted."""

FACE_ANGLE = {"right": 0.0, "back": 90.0, "left": 180.0, "front": 270.0}


TERMS = 8
"""Fx, Fy, Fz; force times height along x and y; Fz times the place along x and y; the twist."""


class Lift(ByIdentity, frozen=True):
    """What 1 Pa does normal to tops, roofs and leaning boards, body by body and case by case.

    ``terms`` (bodies, D, V, 8) are ``TERMS`` in m2 and m3 about the origin; ``names`` (V,) tells
    what acts in each case: suction on closed tops or none, and which case of free roofs, if any.
    """

    names: tuple[tuple[str, ...], ...]
    terms: Array

    def of(self, some: NDArray[np.bool_]) -> "Lift":
        """Return the same cases with what acts on some of the bodies (bodies,) only."""
        return Lift(self.names, self.terms * some[:, None, None, None])

    @property
    def acts(self) -> bool:
        """Return whether there is anything at all."""
        return bool(self.terms.any())

    @property
    def upward(self) -> Array:
        """Return the greatest upward force (bodies, D) of any case, in m2, 0 where none lifts."""
        return np.maximum(self.terms[..., 2], 0.0).max(axis=2)

    @property
    def sideways(self) -> Array:
        """Return the greatest level force (bodies, D) of any case, in m2."""
        return np.hypot(self.terms[..., 0], self.terms[..., 1]).max(axis=2)


def lift(
    structure: Structure,
    outlines: Polygons,
    coefficients: Sequence[Coefficient],
    azimuths: Array,
    figures: Tops,
) -> tuple[Lift, Array]:
    """Return what acts normal to surfaces for winds from the azimuths (D,), rad, by its figures.

    With it the share (bodies, D) of the level force on each body's face that acts besides.
    """
    solidity = np.array([one.solidity for one in coefficients])
    tops, roofs, standing = _surfaces(
        structure, outlines, solidity, coefficients, azimuths, figures
    )
    names: list[tuple[str, ...]] = [()]
    terms = np.zeros((*standing.shape, 1, TERMS))
    if roofs is not None:
        used = [k for k in range(len(figures.cases)) if k < 2 or roofs[:, :, k].any()]
        names, terms = [figures.cases[k] for k in used], roofs[:, :, used]
    if tops.any():
        terms = np.concatenate([terms, terms + tops[:, :, None]], axis=2)
        names += [(SUCTION, *acts) for acts in names]
    return Lift(tuple(names), terms), standing


def _surfaces(
    structure: Structure,
    outlines: Polygons,
    solidity: Array,
    coefficients: Sequence[Coefficient],
    azimuths: Array,
    figures: Tops,
) -> tuple[Array, Array | None, Array]:
    """Return the terms on closed tops (bodies, D, 8), those on free roofs, and what stands.

    Free roofs (bodies, D, R, 8) are None where there are none.
    """
    bodies = structure.bodies
    along = downwind_axes(azimuths)
    area = np.zeros((len(bodies), len(azimuths)))
    moment = np.zeros((len(bodies), len(azimuths), 2))
    standing = np.ones(area.shape)
    roofs: dict[int, Array] = {}

    def add(i: int, region: BaseGeometry, c: Array | float) -> None:
        if region.is_empty or region.area <= 0.0:
            return
        centre = np.array([region.centroid.x, region.centroid.y])
        product = np.broadcast_to(np.asarray(c) * region.area, azimuths.shape)
        area[i] += product
        moment[i] += product[:, None] * centre

    for i, body in enumerate(bodies):
        free = passes_beneath(structure, i, figures.level_to)
        if free is not None:
            obstructed = _between(*BLOCKED, _blocked(structure, i, outlines, solidity))
            found = free_roof(body, free, along, obstructed, coefficients[i], figures)
            roofs[i], standing[i] = found.terms, found.standing
            continue
        top = lid(structure, i)
        if top is not None:
            exposed = top.difference(covered(structure, i))
            share = body.shape.solidity
            if not exposed.is_empty:
                lifted, its = closed_top(body, top, exposed, along, figures)
                area[i] += lifted * share
                moment[i] += its * share
                windward = _windward_overhangs(structure, body, exposed, along)
                if windward is not None:
                    c = figures.beside(OVERHANG) * share
                    area[i] += c * windward[0]
                    moment[i] += c * windward[1]
        for floor in vessel_floors(structure, i):
            add(i, floor, figures.beside(VESSEL_FLOOR))
        for outward, roof in _open_sides(structure, i):
            off = np.degrees(np.arccos(np.clip(-(along @ outward), -1.0, 1.0)))
            add(i, roof, figures.beside(OPEN_SIDE) * _between(*BLOWS_IN, off))
    for i in range(len(bodies)):
        # the air inside presses what closes a body away from its floor
        closing = closing_lids(structure, i)
        inside = figures.inside(breathes(structure, i)) if closing else 0.0
        for j, region in closing:
            if j not in roofs:
                below = floors(structure, i)
                add(j, region, inside)
                for k in below:
                    add(k, region, -inside / len(below))
    tops = np.zeros((*area.shape, TERMS))
    tops[..., 2], tops[..., 5:7] = area, moment
    if not roofs:
        return tops, None, standing
    terms = np.zeros((*area.shape, len(figures.cases), TERMS))
    for i, its in roofs.items():
        terms[i] = its
    return tops, terms, standing


def passes_beneath(structure: Structure, i: int, level_to: float) -> BaseGeometry | None:
    """Return the plan of what is uncovered of a roof or board that wind passes beneath, or None.

    Up to the slope ``level_to`` in degrees a board lies.
    """
    body = structure.bodies[i]
    board = board_of(body)
    if board is not None:
        level = board.slope <= level_to
        lies = body.shape.lies_flat and lies_on_ground(structure, body)
        open_ = is_free(structure, body) and not (lies and level)
        if board.slope > UPRIGHT or not (open_ or (not level and leans_open(structure, body))):
            return None
        plan = board.plan.difference(covered(structure, i))
    else:
        top = lid(structure, i)
        if top is None or not is_free(structure, body):
            return None
        plan = top.difference(covered(structure, i))
    return plan if plan.area > 1.0e-9 else None


def free_roof(
    body: Body,
    plan: BaseGeometry,
    along: Array,
    obstructed: Array,
    own: Coefficient,
    figures: Tops,
) -> RoofWind:
    """Return the wind on a free roof or a leaning board; ``plan`` is what nothing covers of it."""
    board = board_of(body) or slab_of(body, plan)
    if board is None:
        return figures.on_slopes(body, plan, along, obstructed)
    shape = body.shape
    solid = 1.0 if shape.climbers else float(openings_factor(shape.solidity))
    whole = board.plan.area
    if plan.area < (1.0 - 1.0e-9) * whole:
        if board.slope <= figures.level_to:
            board = board.level(plan)
        else:
            solid *= plan.area / whole
    return figures.on_board(board, along, obstructed, solid, own.face)


def closed_top(
    body: Body, top: BaseGeometry, exposed: BaseGeometry, along: Array, figures: Tops
) -> tuple[Array, Array]:
    """Return the suction (D,) in m2 on a closed top and its moments (D, 2) in m3.

    ``top`` is the whole in plan, whose length along the wind and width count, and ``exposed`` what
    of it nothing covers; ``along`` (D, 2) the way in which the wind blows.
    """
    area, moment = np.zeros(len(along)), np.zeros((len(along), 2))
    corners = plane.coordinates(top)
    reach, across = corners @ along.T, corners @ (along[:, ::-1] * [-1.0, 1.0]).T
    edge, h = reach.min(axis=0), body.top
    L, b = np.maximum(np.ptp(reach, axis=0), 1e-9), np.ptp(across, axis=0)
    strips = figures.strips(h, L, b, top.area)
    sloped: list[RoofPlane] = []
    for one in roof_planes(body, exposed):
        if one.slope > figures.level_to:
            sloped.append(one)
            continue
        lifted, its = _strips(one.region, along, edge, L, strips)
        area += lifted
        moment += its
    if sloped:
        regions = np.array([one.region for one in sloped])
        slopes = np.array([[one.slope] for one in sloped])
        facing = -(np.stack([one.fall for one in sloped]) @ along.T)
        places = [plane.coordinates(region) @ along.T - edge for region in regions]
        starts = np.stack([place.min(axis=0) for place in places])
        ends = np.stack([place.max(axis=0) for place in places])
        c = figures.slope(slopes, facing, (starts, ends), h, L, b, top.area)
        lifted = c * plane.area(regions)[:, None]
        area += lifted.sum(axis=0)
        moment += lifted.T @ plane.centroids(regions)
    return area, moment


def _strips(
    region: BaseGeometry, along: Array, edge: Array, L: Array, strips: tuple[Array, Array]
) -> tuple[Array, Array]:
    """Return suction (D,) in m2 and moments (D, 2) in m3 on a level region, strip by strip.

    The ``strips`` lie across the wind: where they begin (S, D) in m downwind of the ``edge`` (D,)
    of the top, ``L`` (D,) long, and their suction (S, D).
    """
    starts, values = strips
    lifted = values[0] * region.area
    its = lifted[:, None] * plane.centroids(np.array(region))
    # most pieces are taller than twice their length: the first strip is all there is
    for k in range(1, len(starts)):
        beyond = np.flatnonzero(starts[k] < L)
        if not len(beyond):
            break
        rest = plane.intersection(
            plane.beyond(along[beyond], edge[beyond] + starts[k, beyond], region), region
        )
        step = (values[k, beyond] - values[k - 1, beyond]) * plane.area(rest)
        lifted[beyond] += step
        its[beyond] += step[:, None] * plane.centroids(rest)
    return lifted, its


def _between(none: float, full: float, value: Array) -> Array:
    """Return 0 at ``none``, 1 at ``full``, linear between and held beyond."""
    return np.clip((value - none) / (full - none), 0.0, 1.0)


def _windward_overhangs(
    structure: Structure, body: Body, exposed: BaseGeometry, along: Array
) -> tuple[Array, Array] | None:
    """Return area (D,) and moments (D, 2) of the overhang straight upwind of what is beneath.

    None where there is none.
    """
    if body.shape.room is not None:
        return None
    support = plane.union_of([top_plan(one) for one in body_beneath(structure, body)])
    overhang = exposed.difference(support)
    if overhang.is_empty or support.is_empty or overhang.area < 1e-6:
        return None
    hull = plane.ring_of(plane.hull(np.vstack(plane.outlines_of(support))))
    return upwind_of(overhang, hull, along)


def _open_sides(structure: Structure, i: int) -> list[tuple[Array, BaseGeometry]]:
    """Return for each open side of a roofed box its outward vector (2,) and the roof's plan."""
    body = structure.bodies[i]
    room = body.shape.room
    if room is None or (room.open_above and not is_closed_above(structure, i)):
        return []
    roof = top_plan(body)
    return [
        (body.bearing(radians(FACE_ANGLE[face])), roof)
        for face in sorted(room.open & FACE_ANGLE.keys())
    ]


def _blocked(structure: Structure, i: int, outlines: Polygons, solidity: Array) -> Array:
    """Return how much (D,) of the space beneath a free roof other bodies block, 0 to 1."""
    bounds = plane.bounds(outlines[i])
    under = structure.bodies[i].bottom
    space = plane.upright_boxes(bounds[:, 0], 0.0, bounds[:, 2], under)
    others = [j for j, body in enumerate(structure.bodies) if j != i and body.bottom < under]
    if not others:
        return np.zeros(len(space))
    inside = plane.intersection(outlines[others], space)
    whole = plane.area(space)
    blocked = silhouette(inside, solidity[others]).area
    return np.divide(blocked, whole, out=np.zeros_like(whole), where=whole > 0.0)
