"""Suction on what is closed above: lids, decks, roofs and the floors of open vessels.

Closed tops by ``closed_tops.py``; the other coefficients and where each belongs are in
references/wind/uplift.csv. They act on the area in plan, with the wind, at its centroid. Nothing on
what lies on the ground, on solid posts, or on slopes steeper than 60 degrees.
"""

from dataclasses import dataclass
from math import radians

import numpy as np
from shapely.geometry.base import BaseGeometry

from .. import references
from ..design import plane
from ..design.outlines import downwind_axes
from ..design.placing import Body
from ..design.plane import Polygons
from ..design.shapes.boxes import Box
from ..design.shapes.flat import Panel, Plate
from ..design.shapes.shape import Array
from ..design.structure import Structure
from .closed_tops import LEVEL_TO, mean_strip_suction, roof_suction, strip_edges, strip_suction
from .lids import (
    body_beneath,
    covered,
    is_closed_above,
    is_free,
    lid,
    reach_of,
    top_plan,
    vessel_floors,
)
from .roof_planes import roof_planes
from .visible import silhouette

BLOWS_IN = (75.0, 60.0)
"""Angles in degrees off an open side from which the wind does not blow in, and in full (judgement).
"""

BLOCKED = (0.45, 0.55)
"""Shares of the space beneath a free roof up to which it is clear and from which it is obstructed;
linear between (the figures change from the one to the other at a half: no jump, judgement)."""

FACE_ANGLE = {"right": 0.0, "back": 90.0, "left": 180.0, "front": 270.0}


@dataclass(frozen=True, eq=False)
class Uplift:
    """Suction by body: coefficient times area (bodies, D) in m2, and its first moments in m3.

    ``moment`` (bodies, D, 2) is about the site's y and x axes: the product times the place in plan.
    """

    area: Array
    moment: Array


def uplift(structure: Structure, outlines: Polygons, solidity: Array, azimuths: Array) -> Uplift:
    """Return the suction on every closed surface for winds from the azimuths (D,), rad."""
    bodies = structure.bodies
    rows = references.table("wind/uplift").rows
    coefficient = {row["place"]: float(row["coefficient"]) for row in rows}
    along = downwind_axes(azimuths)
    area = np.zeros((len(bodies), len(azimuths)))
    moment = np.zeros((len(bodies), len(azimuths), 2))

    def add(i: int, region: BaseGeometry, c: Array | float) -> None:
        if region.is_empty or region.area <= 0.0:
            return
        centre = np.array([region.centroid.x, region.centroid.y])
        product = np.broadcast_to(np.asarray(c) * region.area, azimuths.shape)
        area[i] += product
        moment[i] += product[:, None] * centre

    for i, body in enumerate(bodies):
        top = lid(structure, i)
        if top is not None:
            exposed = top.difference(covered(structure, i))
            share = body.shape.solidity if isinstance(body.shape, (Plate, Panel)) else 1.0
            if is_free(structure, body):
                obstructed = _between(*BLOCKED, _blocked(structure, i, outlines, solidity))
                clear, blocked = coefficient["free, clear"], coefficient["free, blocked"]
                add(i, exposed, (clear + obstructed * (blocked - clear)) * share)
            elif not exposed.is_empty:
                lifted, its = closed_top(body, top, exposed, along)
                area[i] += lifted * share
                moment[i] += its * share
                for k, region in _windward_overhangs(structure, body, exposed, along):
                    c = np.zeros(len(azimuths))
                    c[k] = coefficient["beneath a windward overhang"] * share
                    add(i, region, c)
        for floor in vessel_floors(structure, i):
            add(i, floor, coefficient["floor of an open vessel"])
        for outward, roof in _open_sides(structure, i):
            off = np.degrees(np.arccos(np.clip(-(along @ outward), -1.0, 1.0)))
            add(i, roof, coefficient["roof over an open side"] * _between(*BLOWS_IN, off))
    return Uplift(area, moment)


def closed_top(
    body: Body, top: BaseGeometry, exposed: BaseGeometry, along: Array
) -> tuple[Array, Array]:
    """Return the suction (D,) in m2 on a closed top and its moments (D, 2) in m3.

    ``top`` is the whole in plan, whose length along the wind counts, and ``exposed`` what of it
    nothing covers; ``along`` (D, 2) the way in which the wind blows.
    """
    area, moment = np.zeros(len(along)), np.zeros((len(along), 2))
    reach = plane.coordinates(top) @ along.T
    edge, h = reach.min(axis=0), body.top
    L = np.maximum(reach.max(axis=0) - edge, 1e-9)
    for one in roof_planes(body, exposed):
        if one.slope <= LEVEL_TO:
            lifted, its = _strips(one.region, along, edge, h, L)
        else:
            place = plane.coordinates(one.region) @ along.T - edge
            strip = mean_strip_suction(place.min(axis=0), place.max(axis=0), h, L)
            c = roof_suction(one.slope, -(along @ one.fall), h / L, strip)
            lifted = c * one.region.area
            its = lifted[:, None] * plane.centroids(np.array(one.region))
        area += lifted
        moment += its
    return area, moment


def _strips(
    region: BaseGeometry, along: Array, edge: Array, h: float, L: Array
) -> tuple[Array, Array]:
    """Return suction (D,) in m2 and moments (D, 2) in m3 on a level region, strip by strip.

    The strips lie across the wind, from the windward ``edge`` (D,) of the top on.
    """
    values = strip_suction(h / L)
    starts = strip_edges() * h
    lifted = values[:, 0] * region.area
    its = lifted[:, None] * plane.centroids(np.array(region))
    # most pieces are taller than twice their length: the first strip is all there is
    for k in range(1, len(starts)):
        beyond = np.flatnonzero(starts[k] < L)
        if not len(beyond):
            break
        rest = plane.intersection(
            _downwind(along[beyond], edge[beyond] + starts[k], region), region
        )
        step = (values[beyond, k] - values[beyond, k - 1]) * plane.area(rest)
        lifted[beyond] += step
        its[beyond] += step[:, None] * plane.centroids(rest)
    return lifted, its


def _downwind(along: Array, start: Array, region: BaseGeometry) -> Polygons:
    """Return what lies farther downwind than ``start`` (D,), wide enough to cover a region."""
    across = np.column_stack([-along[:, 1], along[:, 0]])
    size = 2.0 * reach_of(region) + float(np.abs(plane.bounds_of(region)).max()) * 2.0
    near = along * start[:, None]
    corners = [near - across * size, near + across * size]
    corners += [corners[1] + along * 2.0 * size, corners[0] + along * 2.0 * size]
    return plane.polygons(np.stack(corners, axis=1))


def _between(none: float, full: float, value: Array) -> Array:
    """Return 0 at ``none``, 1 at ``full``, linear between and held beyond."""
    return np.clip((value - none) / (full - none), 0.0, 1.0)


def _windward_overhangs(
    structure: Structure, body: Body, exposed: BaseGeometry, along: Array
) -> list[tuple[int, BaseGeometry]]:
    """Return for each direction the overhang that lies straight upwind of the body beneath."""
    if isinstance(body.shape, Box) and body.shape.wall is not None:
        return []
    support = plane.union_of([top_plan(one) for one in body_beneath(structure, body)])
    overhang = exposed.difference(support)
    if overhang.is_empty or support.is_empty or overhang.area < 1e-6:
        return []
    corners = plane.ring_of(plane.hull(np.vstack(plane.outlines_of(support))))
    upwind = corners - reach_of(exposed) * along[:, None]
    swept = plane.hulls(np.concatenate([np.broadcast_to(corners, upwind.shape), upwind], axis=1))
    return list(enumerate(plane.intersection(swept, overhang)))


def _open_sides(structure: Structure, i: int) -> list[tuple[Array, BaseGeometry]]:
    """Return for each open side of a roofed box its outward vector (2,) and the roof's plan."""
    body = structure.bodies[i]
    if not isinstance(body.shape, Box) or body.shape.wall is None:
        return []
    if "top" in body.shape.open and not is_closed_above(structure, i):
        return []
    roof = top_plan(body)
    return [
        (body.bearing(radians(FACE_ANGLE[face])), roof)
        for face in sorted(body.shape.open & FACE_ANGLE.keys())
    ]


def _blocked(structure: Structure, i: int, outlines: Polygons, solidity: Array) -> Array:
    """Return how much (D,) of the space beneath a free roof other bodies block, 0 to 1."""
    bounds = plane.bounds(outlines[i])
    under = structure.bodies[i].bottom
    space = plane.boxes(bounds[:, 0], 0.0, bounds[:, 2], under)
    others = [j for j, body in enumerate(structure.bodies) if j != i and body.bottom < under]
    if not others:
        return np.zeros(len(space))
    inside = plane.intersection(outlines[others], space)
    whole = plane.area(space)
    blocked = silhouette(inside, solidity[others]).area
    return np.divide(blocked, whole, out=np.zeros_like(whole), where=whole > 0.0)
