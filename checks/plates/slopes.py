"""Slopes of hollow roofs: strips from eave to ridge, or level from hip to hip, under suction."""

from math import atan2, degrees, hypot, pi, tan

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.cone import Cone
from ...design.shapes.gables import Gable
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.roofs.inside_air import breathes
from ...loads.roofs.lids import is_free, supports, top_plan
from ...materials.lumber import Lumber
from ...units.frozen import replace
from ..acting.local_wind import LocalWind, overhang_pressure
from ..members.member_check import MemberStrength, NotJudged
from .strip_strength import plate_material_of
from .strips import Acting, Basis, Strip, StripWays, dead_pressure, simple_span, weakest_place

_ALONG_EAVE = 0.9
"""Share of the eave's length, between the ends of what bears it, that has to be borne for strips to
rest on it (judgement); the rest may be a joint or a gap."""

_OVERHANGS = 0.01
_EDGE = 1.0e-4


def check_gable(
    roof: Gable, structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> MemberStrength | NotJudged | None:
    """Return the bending of a pitched roof's slopes, body ``i``; None for a solid one.

    Strips rest on the eaves' walls and against each other at the ridge; what stands out beyond the
    walls is a cantilever, down the slope and at the two ends. Wind gets in at the open ends.
    """
    body = structure.bodies[i]
    part = structure.design.parts[body.part]
    if roof.thickness is None or roof.hollow is None:
        return None
    if roof.knee_width is not None:
        return NotJudged(part.name, "knee")
    stuff = plate_material_of(part, roof.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    bearing = _bearing(structure, body)
    if bearing is None:
        return NotJudged(part.name, "at points")
    reach, ends = bearing
    half, slope = roof.width / 2.0, hypot(roof.height, roof.width / 2.0)
    inside = min(reach, half) / half * slope
    dead = dead_pressure(structure, body.part, 2.0 * slope * roof.length)
    pitch = degrees(atan2(roof.height, half))
    between = local.suction(body, i, pitch, open_to_wind=True), local.panel(i, "inward", True)
    over = overhang_pressure(local, body, i, pitch), local.panel(i, "inward")
    out = roof.length / 2.0 - ends
    as_boards = isinstance(stuff, Lumber) and out <= _EDGE  # from support to support
    places: list[StripWays] = []
    for where, span, beyond, width, along in (
        ("between", inside, 0.0, roof.length, slope),
        ("eaves", 0.0, slope - inside, roof.length, slope),
        ("ends", 0.0, out, slope, roof.length),
    ):
        length = max(span, beyond)
        if length <= _EDGE:
            continue
        up, inward = over if beyond else between
        strip = Strip(
            (0.0, length),
            (0.0, length) if span else (0.0,),
            width,
            along <= width and not as_boards,
            bool(beyond),
            (Acting(up),),
            (Acting(inward),),
            Acting(dead),
        )
        places.append(StripWays("roof slope", where, (strip,)))
    return weakest_place(part.name, places, Basis(factors, basis, stuff, roof.thickness), 2)


def check_cone(
    roof: Cone, structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> MemberStrength | NotJudged | None:
    """Return the bending of one panel of a hollow pointed roof, body ``i``; None for a solid one.

    Its strips lie level from hip to hip and are taken as wide as the eave, where they are widest.
    """
    body = structure.bodies[i]
    part = structure.design.parts[body.part]
    if roof.wall is None:
        return None
    if roof.sides == 0:
        return NotJudged(part.name, "curved")
    stuff = plate_material_of(part, roof.wall)
    if isinstance(stuff, NotJudged):
        return stuff
    width, slope = roof.bottom * tan(pi / roof.sides), hypot(roof.height, roof.bottom / 2.0)
    pitch, open_ = degrees(atan2(roof.height, roof.bottom / 2.0)), is_free(structure, body)
    open_ = open_ or breathes(structure, i)
    out, inward = local.suction(body, i, pitch, open_), local.panel(i, "inward", open_)
    plan = body.in_plan(roof.from_above())
    beyond = plan.difference(_beneath(structure, body)).area > _OVERHANGS * plan.area
    up = max(out, overhang_pressure(local, body, i, pitch)) if beyond else out
    dead = dead_pressure(structure, body.part, roof.sides * width * slope / 2.0)
    strip = replace(
        simple_span(width, slope, slope >= width, up),
        presses=(Acting(inward),),
        weighs=Acting(dead),
    )
    places = [StripWays("roof panel", "", (strip,))]
    return weakest_place(part.name, places, Basis(factors, basis, stuff, roof.wall), roof.sides)


def _beneath(structure: Structure, body: Body) -> BaseGeometry:
    return plane.union_of([top_plan(one) for one in supports(structure, body)])


def _bearing(structure: Structure, body: Body) -> tuple[float, float] | None:
    """Return how far from the ridge the eaves are borne, and from the middle the ends, in m.

    None where what bears it does not run along the eaves, or lies to one side.
    """
    region = _beneath(structure, body)
    if region.is_empty:
        return None
    own = plane.coordinates(region) - body.origin[:2]
    ways = [own @ body.bearing(angle) for angle in (0.0, pi / 2.0)]
    (x0, x1), (y0, y1) = ((float(way.min()), float(way.max())) for way in ways)
    if min(x1, -x0, y1, -y0) <= 0.0:
        return None
    along, across = body.bearing(0.0), body.bearing(pi / 2.0)
    for y in (y0 + _EDGE, y1 - _EDGE):
        line = np.array([body.origin[:2] + x * along + y * across for x in (x0, x1)])
        if plane.line(line).intersection(region).length < _ALONG_EAVE * (x1 - x0):
            return None
    return min(y1, -y0), min(x1, -x0)
