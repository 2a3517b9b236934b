"""Suction on what is closed above: lids, decks, roofs and the floors of open vessels.

The coefficients and where each belongs are in references/wind/uplift.csv. They act on the area in
plan, with the wind, at its centroid. Nothing on what lies on the ground, on solid posts, or on
slopes steeper than 60 degrees (judgement after the roof coefficients of ASCE/SEI 7 chapter 27).
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
from .visible import silhouette

FACING_OPEN = 0.5
"""Cosine of the greatest angle between the wind and an open side that it blows into (60 deg)."""

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
                blocked = _blocked(structure, i, outlines, solidity) > 0.5
                c = np.where(blocked, coefficient["free, blocked"], coefficient["free, clear"])
                add(i, exposed, c * share)
            else:
                add(i, exposed, coefficient["closed top"] * share)
                extra = coefficient["windward overhang"] - coefficient["closed top"]
                for k, region in _windward_overhangs(structure, body, exposed, along):
                    c = np.zeros(len(azimuths))
                    c[k] = extra * share
                    add(i, region, c)
        for floor in vessel_floors(structure, i):
            add(i, floor, coefficient["floor of an open vessel"])
        for outward, roof in _open_sides(structure, i):
            facing = -(along @ outward)
            add(i, roof, np.where(facing > FACING_OPEN, coefficient["roof over an open side"], 0.0))
    return Uplift(area, moment)


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
