"""Slopes of hollow roofs: strips from eave to ridge, or level from hip to hip, under suction."""

from math import hypot, pi, tan

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.bodies import Cone
from ...design.shapes.gables import Gable
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.lids import is_free, supports, top_plan
from ..local_wind import LocalWind, overhang_pressure, panel_coefficient
from .bending import overhang_moment, span_deflection, span_moment
from .member_check import Member, NotJudged
from .strips import check_strip, dead_pressure, downward, strip_of, stuff_of

_ALONG_EAVE = 0.9
"""Share of the eave's length, between the ends of what bears it, that has to be borne for strips to
rest on it (judgement); the rest may be a joint or a gap."""

_OVERHANGS = 0.01
_EDGE = 1.0e-4


def check_slope(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of a hollow roof's slopes, pitched or pointed; None for other bodies."""
    given = (structure, i, local, factors, basis)
    return check_gable(*given) or check_cone(*given)


def check_gable(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of a pitched roof's slopes; None for any other body, and a solid one.

    Strips rest on the eaves' walls and against each other at the ridge; what stands out beyond the
    walls is a cantilever, down the slope and at the two ends. Wind gets in at the open ends.
    """
    body = structure.bodies[i]
    roof, part = body.shape, structure.design.parts[body.part]
    if not isinstance(roof, Gable) or roof.thickness is None or roof.hollow is None:
        return None
    if roof.knee_width is not None:
        return NotJudged(part.name, "knee")
    stuff = stuff_of(part, roof.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    bearing = _bearing(structure, body)
    if bearing is None:
        return NotJudged(part.name, "at points")
    reach, ends = bearing
    half, slope = roof.width / 2.0, hypot(roof.height, roof.width / 2.0)
    inside = min(reach, half) / half * slope
    dead = dead_pressure(structure, body.part, 2.0 * slope * roof.length)
    between = _pressures(local, i, open_below=True)
    over = overhang_pressure(local, i), _pressures(local, i, open_below=False)[1]
    strips = [
        (inside, 0.0, roof.length, "between"),
        (0.0, slope - inside, roof.length, "eaves"),
        (0.0, roof.length / 2.0 - ends, slope, "ends"),
    ]
    found: list[Member] = []
    for span, beyond, width, where in strips:
        if max(span, beyond) <= _EDGE:
            continue
        along = roof.length if where == "ends" else slope
        strip = strip_of(stuff, roof.thickness, width, along <= width, basis)
        if strip is None and not roof.length / 2.0 - ends > _EDGE:
            strip = strip_of(stuff, roof.thickness, width, False, basis)
        if strip is None:
            return NotJudged(part.name, "across grain")
        up, inward = over if beyond else between
        pressed = downward(factors, basis, stuff, inward, dead)
        load = max(factors.wind * up, pressed)
        weighs = factors.hurting if load == pressed else 0.0
        moment = float(span_moment(load, span) + overhang_moment(load, beyond)) * width
        shear = load * (span / 2.0 + beyond) * width
        check, governs = check_strip(part.name, strip, moment, shear, factors, stuff, weighs)
        bends = float(span_deflection(up * width, span, strip.stiffness)) if span else 0.0
        found.append(Member(part.name, check, "roof slope", governs, 2, bends, stuff, where=where))
    return max(found, key=lambda one: one.check.rank)


def check_cone(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of one panel of a hollow pointed roof; None for any other body.

    Its strips lie level from hip to hip and are taken as wide as the eave, where they are widest.
    """
    body = structure.bodies[i]
    roof, part = body.shape, structure.design.parts[body.part]
    if not isinstance(roof, Cone) or roof.wall is None:
        return None
    if roof.sides == 0:
        return NotJudged(part.name, "curved")
    stuff = stuff_of(part, roof.wall)
    if isinstance(stuff, NotJudged):
        return stuff
    width, slope = roof.bottom * tan(pi / roof.sides), hypot(roof.height, roof.bottom / 2.0)
    strip = strip_of(stuff, roof.wall, slope, slope >= width, basis)
    if strip is None:
        return NotJudged(part.name, "across grain")
    out, inward = _pressures(local, i, open_below=is_free(structure, body))
    plan = body.in_plan(roof.from_above())
    beyond = plan.difference(_beneath(structure, body)).area > _OVERHANGS * plan.area
    up = max(out, overhang_pressure(local, i)) if beyond else out
    dead = dead_pressure(structure, body.part, roof.sides * width * slope / 2.0)
    pressed = downward(factors, basis, stuff, inward, dead)
    load = max(factors.wind * up, pressed)
    weighs = factors.hurting if load == pressed else 0.0
    moment, shear = float(span_moment(load * slope, width)), load * slope * width / 2.0
    check, governs = check_strip(part.name, strip, moment, shear, factors, stuff, weighs)
    bends = float(span_deflection(up * slope, width, strip.stiffness))
    return Member(part.name, check, "roof panel", governs, roof.sides, bends, stuff)


def _pressures(local: LocalWind, i: int, *, open_below: bool) -> tuple[float, float]:
    """Return the unfactored suction outward and pressure inward in Pa on a slope."""
    more = panel_coefficient("within an open body") if open_below else 0.0
    q = float(local.velocity[i])
    out, inward = (
        max((panel_coefficient(way) + more) * q, local.least) for way in ("outward", "inward")
    )
    return out, inward


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
