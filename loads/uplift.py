"""Suction on what is closed above: lids, decks, roofs and the floors of open vessels.

The coefficients and where each belongs are in references/wind/uplift.csv. They act on the area in
plan, with the wind, at its centroid. Nothing on what lies on the ground, on solid posts, or on
slopes steeper than 60 degrees (judgement after the roof coefficients of ASCE/SEI 7 chapter 27).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import atan2, radians

import numpy as np
import shapely
from shapely import affinity
from shapely.geometry.base import BaseGeometry

from .. import references
from ..design import plane
from ..design.outlines import downwind_axes
from ..design.placing import Body
from ..design.plane import Polygons
from ..design.shapes.bodies import Cone, Shell, Solid
from ..design.shapes.boxes import Box
from ..design.shapes.flat import Frame, Panel, Plate
from ..design.shapes.gables import Gable
from ..design.shapes.plans import Rectangle, Regular
from ..design.shapes.roofs import Dome, Vault
from ..design.shapes.shape import Array
from ..design.structure import TOUCHING, Structure
from .visible import silhouette

STEEP = radians(60.0)
FACING_OPEN = 0.5
"""Cosine of the greatest angle between the wind and an open side that it blows into (60 deg)."""

FACE_ANGLE = {"right": 0.0, "back": 90.0, "left": 180.0, "front": 270.0}

_COVERING = (Shell, Solid, Cone, Box, Gable, Plate, Dome, Vault)


@dataclass(frozen=True)
class Uplift:
    """Suction by body: coefficient times area (bodies, D) in m2, and its first moments in m3.

    ``moment`` (bodies, D, 2) is about the site's y and x axes: the product times the place in plan.
    """

    area: Array
    moment: Array


def uplift(structure: Structure, outlines: Polygons, solidity: Array, azimuths: Array) -> Uplift:
    """Return the suction on every closed surface for winds from the azimuths (D,), rad."""
    bodies = structure.bodies
    coefficient = {row["place"]: float(row["coefficient"]) for row in _rows()}
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
        lid = _lid(structure, i)
        if lid is not None:
            open_below = _is_free(structure, body)
            exposed = lid.difference(_covered(structure, i))
            share = body.shape.solidity if isinstance(body.shape, (Plate, Panel)) else 1.0
            if open_below:
                blocked = _blocked(structure, i, outlines, solidity)
                c = np.where(
                    blocked > 0.5, coefficient["free, blocked"], coefficient["free, clear"]
                )
                add(i, exposed, c * share)
            else:
                add(i, exposed, coefficient["closed top"] * share)
                extra = coefficient["windward overhang"] - coefficient["closed top"]
                for k, region in _windward_overhangs(structure, body, exposed, along):
                    c = np.zeros(len(azimuths))
                    c[k] = extra * share
                    add(i, region, c)
        for floor in _vessel_floors(structure, i):
            add(i, floor, coefficient["floor of an open vessel"])
        for outward, roof in _open_sides(structure, i):
            facing = -(along @ outward)
            add(i, roof, np.where(facing > FACING_OPEN, coefficient["roof over an open side"], 0.0))
    return Uplift(area, moment)


def _rows() -> Sequence[references.Row]:
    return references.table("wind/uplift").rows


def _lid(structure: Structure, i: int) -> BaseGeometry | None:
    """Return the plan of what is closed above on this body, or None."""
    body = structure.bodies[i]
    match body.shape:
        case Plate() as plate:
            on_ground = body.origin[2] <= TOUCHING
            steep = abs(body.rotation[2, 2]) < FACING_OPEN
            return None if on_ground or steep else body.in_plan(plate.contact())
        case Panel() as panel if abs(body.rotation[2, 1]) >= FACING_OPEN:
            corners = body.place(panel.hulls()[0].points)[:, :2]
            return plane.hull(corners)
        case Dome() | Vault():
            return body.in_plan(body.shape.from_above())
        case Cone(bottom=across, height=height) as cone:
            return body.in_plan(cone.from_above()) if _gentle(height, across / 2) else None
        case Gable(width=width, height=height) as gable:
            return body.in_plan(gable.from_above()) if _gentle(height, width / 2) else None
        case Shell(sides, bottom, top, height) | Solid(sides, bottom, top, height):
            if top >= bottom or not _gentle(height, (bottom - top) / 2):
                return None
            skirt = Regular(sides, bottom).polygon()
            if top > 0.0:
                skirt = skirt.difference(Regular(sides, top).polygon())
            return body.in_plan(skirt)
        case Box() as box:
            return _box_lid(body, box)
        case _:
            return None


def _box_lid(body: Body, box: Box) -> BaseGeometry | None:
    top = box.top_plan
    run = max(box.length - top.length, box.width - top.width) / 2.0
    closed = box.wall is not None and "top" not in box.open
    if run > 0.0 and _gentle(box.height, run):
        whole = Rectangle(box.length, box.width).polygon()
        return body.in_plan(
            whole if closed or box.wall is None else whole.difference(top.polygon())
        )
    return body.in_plan(top.polygon()) if closed and top.area > 0.0 else None


def _gentle(rise: float, run: float) -> bool:
    return atan2(rise, run) <= STEEP


def _children(structure: Structure, i: int) -> list[int]:
    """Return the bodies that stand on this one and touch its top."""
    body = structure.bodies[i]
    name = structure.design.parts[body.part].name
    top = body.top
    return [
        j
        for j, other in enumerate(structure.bodies)
        if structure.design.parts[other.part].place.on == name
        and abs(other.bottom - top) <= TOUCHING
    ]


def _covered(structure: Structure, i: int) -> BaseGeometry:
    """Return what bodies standing on this one cover of it in plan."""
    plans = [
        _base_plan(structure.bodies[j])
        for j in _children(structure, i)
        if isinstance(structure.bodies[j].shape, _COVERING)
    ]
    return plane.union_of(plans)


def _base_plan(body: Body) -> BaseGeometry:
    """Return the filled outline of a body's underside in plan."""
    match body.shape:
        case Shell(sides, bottom) | Solid(sides, bottom) | Cone(sides, bottom):
            return body.in_plan(Regular(sides, bottom).polygon())
        case Box(length, width):
            return body.in_plan(Rectangle(length, width).polygon())
        case _:
            return body.in_plan(body.shape.from_above())


def _top_plan(body: Body) -> BaseGeometry:
    """Return the filled outline of a body's top in plan."""
    match body.shape:
        case Shell(sides, _, top) | Solid(sides, _, top):
            return body.in_plan(Regular(sides, top).polygon() if top > 0 else shapely.Polygon())
        case Box() as box:
            return body.in_plan(box.top_plan.polygon())
        case _:
            return body.in_plan(body.shape.from_above())


def _is_closed_above(structure: Structure, i: int) -> bool:
    """Return whether what stands on an open top covers at least half of it."""
    opening = _top_plan(structure.bodies[i])
    return _covered(structure, i).intersection(opening).area >= 0.5 * opening.area


def _supports(structure: Structure, body: Body) -> list[Body]:
    on = structure.design.parts[body.part].place.on
    return [b for b in structure.bodies if structure.design.parts[b.part].name == on]


def _is_free(structure: Structure, body: Body) -> bool:
    """Return whether wind passes beneath: it hangs alone, or on posts, panels or their frame."""
    below = _supports(structure, body)
    if not below:
        return bool(body.origin[2] > TOUCHING)
    if len(below) > 1:
        return True
    if isinstance(below[0].shape, (Frame, Plate)):
        return _is_free(structure, below[0])
    return not isinstance(below[0].shape, _COVERING)


def _windward_overhangs(
    structure: Structure, body: Body, exposed: BaseGeometry, along: Array
) -> list[tuple[int, BaseGeometry]]:
    """Return for each direction the overhang that lies straight upwind of what it stands on."""
    below = _supports(structure, body)
    if not below or isinstance(below[0].shape, Frame):
        return []
    support = _top_plan(below[0])
    overhang = exposed.difference(support)
    if overhang.is_empty or support.is_empty or overhang.area < 1e-6:
        return []
    reach = float(np.hypot(*np.ptp(np.array(exposed.bounds).reshape(2, 2), axis=0)))
    swept = [
        shapely.union(
            support, affinity.translate(support, -reach * u[0], -reach * u[1])
        ).convex_hull
        for u in along
    ]
    regions = plane.intersection(np.array(swept, dtype=object), overhang)
    return list(enumerate(regions))


def _vessel_floors(structure: Structure, i: int) -> list[BaseGeometry]:
    """Return the floors inside a body that is open above."""
    body = structure.bodies[i]
    match body.shape:
        case Box(wall=wall, open=faces) as box if wall is not None and "top" in faces:
            inner = box.inner()
            if "bottom" in faces or inner is None or _is_closed_above(structure, i):
                return []
            x0, x1, y0, y1 = inner.low
            return [body.in_plan(shapely.box(x0, y0, x1, y1))]
        case Shell() as shell:
            below = _supports(structure, body)
            floored = len(below) == 1 and (
                isinstance(below[0].shape, Plate)
                or (isinstance(below[0].shape, Box) and "top" not in below[0].shape.open)
            )
            inside = shell.inner().bottom
            if not floored or inside <= 0.0 or _is_closed_above(structure, i):
                return []
            return [body.in_plan(Regular(shell.sides, inside).polygon())]
        case _:
            return []


def _open_sides(structure: Structure, i: int) -> list[tuple[Array, BaseGeometry]]:
    """Return for each open side of a roofed box its outward vector (2,) and the roof's plan."""
    body = structure.bodies[i]
    if not isinstance(body.shape, Box) or body.shape.wall is None:
        return []
    if "top" in body.shape.open and not _is_closed_above(structure, i):
        return []
    roof = _top_plan(body)
    return [
        (body.bearing(radians(FACE_ANGLE[face])), roof)
        for face in sorted(body.shape.open & FACE_ANGLE.keys())
    ]


def _blocked(structure: Structure, i: int, outlines: Polygons, solidity: Array) -> Array:
    """Return how much (D,) of the space beneath a free roof other bodies block, 0 to 1."""
    bounds = plane.bounds(outlines[i])
    under = float(structure.bodies[i].origin[2])
    space = plane.boxes(bounds[:, 0], 0.0, bounds[:, 2], under)
    others = [j for j in range(len(structure.bodies)) if j != i]
    if not others:
        return np.zeros(len(space))
    inside = plane.intersection(outlines[others], space)
    return silhouette(inside, solidity[others]).area / plane.area(space)
