"""Plates that lie flat over an opening or beams: lids, galleries, eaves, floors and decks.

Wind lifts them; what stands on them pulls, presses and tilts; what stands out beyond the body below
is a cantilever under the greater suction there.
"""

from math import pi

from ... import references
from ...design.shapes.flat import Plate
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.lids import is_free, lies_on_ground
from ...materials.lumber import Lumber
from ..local_wind import LocalWind, overhang_pressure, panel_coefficient
from .bending import (
    cantilever_deflection,
    overhang_deflection,
    overhang_moment,
    span_deflection,
    span_moment,
    turned_deflection,
)
from .carried_plate import Carried, Loads, carried_by
from .member_check import Member, NotJudged, Stuff
from .plates import Bearing, bearing_of
from .strips import check_strip, dead_pressure, downward, strip_of, stuff_of

_NOTHING = Carried(0.0, 0.0, 0.0, 0.0)


def check_plate(
    structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> Member | NotJudged | None:
    """Return the bending of a plate off the ground, where it is used most; None for any other body.

    None too for one that lies on something solid. Over an opening that holds it all round the
    better way of strips is taken, of boards the longer; over beams strips run from beam to beam.
    What stands out less than it is thick is no strip.
    """
    body = structure.bodies[i]
    plate, part = body.shape, structure.design.parts[body.part]
    if not isinstance(plate, Plate) or lies_on_ground(structure, body):
        return None
    stuff = stuff_of(part, plate.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    if plate.solidity < 1.0 and not isinstance(stuff, Lumber):
        return NotJudged(part.name, "lattice")
    hangs = part.place.under is not None or part.hangs_at is not None
    bearing = None if hangs or not body.upright else bearing_of(structure, body)
    if bearing is None:
        return NotJudged(part.name, "held otherwise")
    loads = carried_by(structure, i, bearing, local)
    if loads is None:
        return NotJudged(part.name, "load on it")
    dead = dead_pressure(structure, body.part, plate.plan.area)
    up, down = _pressures(structure, i, local)
    found: list[Member] = []
    if bearing.short > plate.thickness:
        one = _over(part.name, plate, bearing, loads, (up, down, dead), stuff, factors, basis)
        if isinstance(one, NotJudged):
            return one
        found.append(one)
    if bearing.flat > plate.thickness:
        two = _beyond(
            part.name,
            plate,
            bearing,
            loads,
            (overhang_pressure(local, i), dead),
            stuff,
            factors,
            basis,
        )
        if isinstance(two, NotJudged):
            return two
        found.append(two)
    return max(found, key=lambda each: each.check.rank) if found else None


def middle_moment(carried: Carried, force: float, tilting: float, span: float) -> float:
    """Return the moment in N m in a strip across an opening from what stands in its middle.

    ``force`` N in N up or down and ``tilting`` M in N m come onto the strip in two lines, b apart,
    b how wide it stands: (N/2 + M/span) a, a = (span - b)/2 from the support. Source: statics.
    """
    a = max(span - carried.across, 0.0) / 2.0
    return (force / 2.0 + tilting / span) * a


def rim_moment(carried: Carried, force: float, tilting: float, around: float) -> float:
    """Return the moment in N m per m at the support of an overhang from what stands round it.

    A ring of radius r carries N/(2 pi r) + M/(pi r2) at most for each m, at the distance d beyond
    the support, whose own circle of radius R is shorter: times d r/R. ``around`` is 2 R in m.
    Source: statics; the section modulus of a thin ring, pi r2 t.
    """
    r = carried.across / 2.0
    line = force / (2.0 * pi * r) + tilting / (pi * r**2)
    return line * carried.at * carried.across / around


def _over(
    name: str,
    plate: Plate,
    bearing: Bearing,
    loads: Loads,
    pressures: tuple[float, float, float],
    stuff: Stuff,
    factors: Factors,
    basis: str,
) -> Member | NotJudged:
    """Return the check of strips over the opening, or from beam to beam."""
    up, down, dead = pressures
    ways = [(bearing.short, True), (bearing.long, False)] if bearing.all_round else []
    if isinstance(stuff, Lumber):
        ways = [(bearing.long, False)]
    elif not bearing.all_round:
        ways = [(bearing.short, bearing.short <= bearing.width)]
    found: list[Member] = []
    for span, across in ways:
        carried = loads.middle or _NOTHING
        width = max(carried.across, span / 2.0) if loads.middle else bearing.width
        strip = strip_of(stuff, plate.thickness, width, across, basis)
        if strip is None:
            return NotJudged(name, "across grain")

        def even(pressure: float, span: float = span, width: float = width) -> float:
            return float(span_moment(pressure * width, span))

        lifted = even(up) + middle_moment(carried, carried.lift, carried.tilting, span)
        pressed = even(down) + middle_moment(carried, 0.0, carried.tilting, span)
        weighs = even(dead) + middle_moment(carried, carried.weight, 0.0, span)
        down_moment = downward(factors, basis, stuff, pressed, weighs)
        moment = max(factors.wind * lifted, down_moment)
        area = width * span / 2.0
        tilts = carried.tilting / span
        shear = max(
            factors.wind * (up * area + carried.lift / 2.0 + tilts),
            downward(
                factors, basis, stuff, down * area + tilts, dead * area + carried.weight / 2.0
            ),
        )
        heavy = factors.hurting if moment == down_moment else 0.0
        check, governs = check_strip(name, strip, moment, shear, factors, stuff, heavy)
        bends = float(span_deflection(up * width, span, strip.stiffness))
        role = "lid" if bearing.all_round else "deck"
        found.append(Member(name, check, role, governs, 1, bends, stuff, where="between"))
    return min(found, key=lambda one: one.check.rank)


def _beyond(
    name: str,
    plate: Plate,
    bearing: Bearing,
    loads: Loads,
    pressures: tuple[float, float],
    stuff: Stuff,
    factors: Factors,
    basis: str,
) -> Member | NotJudged:
    """Return the check of what stands out, across the grain where it stands out all round."""
    over, dead = pressures
    role = "lid" if bearing.all_round else "deck"
    across = bearing.all_round or 2.0 * bearing.beyond + bearing.short <= bearing.width
    if isinstance(stuff, Lumber) and not bearing.all_round:
        across = False
    strip = strip_of(stuff, plate.thickness, bearing.width, across, basis)
    if strip is None:
        return NotJudged(name, "across grain")
    rim, width, o = loads.rim or _NOTHING, bearing.width, bearing.beyond

    def round_it(force: float, tilting: float) -> float:
        return rim_moment(rim, force, tilting, width) * width if loads.rim else 0.0

    lifted = float(overhang_moment(over * width, o)) + round_it(rim.lift, rim.tilting)
    tilted, weighs = (
        round_it(0.0, rim.tilting),
        float(overhang_moment(dead * width, o)) + round_it(rim.weight, 0.0),
    )
    pressed = downward(factors, basis, stuff, tilted, weighs)
    moment = max(factors.wind * lifted, pressed)
    heavy = factors.hurting if moment == pressed else 0.0
    check, governs = check_strip(name, strip, moment, moment * 2.0 / o, factors, stuff, heavy)
    bends = float(overhang_deflection(over * width, o, strip.stiffness))
    found = [Member(name, check, role, governs, 1, bends, stuff, where="beyond")]
    for point in loads.points:
        width = point.across + 2.0 * max(point.at, plate.thickness)
        narrow = strip_of(stuff, plate.thickness, width, across, basis)
        assert narrow is not None
        even = float(overhang_moment(width, o))
        pressed = downward(
            factors, basis, stuff, point.tilting, dead * even + point.weight * point.at
        )
        moment = max(factors.wind * (over * even + point.tilting + point.lift * point.at), pressed)
        heavy = factors.hurting if moment == pressed else 0.0
        check, governs = check_strip(
            name, narrow, moment, moment / max(point.at, plate.thickness), factors, stuff, heavy
        )
        bends = max(
            _tip_moves(pressure * width, force, point, o, float(narrow.stiffness))
            for pressure, force in ((over, point.lift), (dead, point.weight))
        )
        found.append(Member(name, check, role, governs, 1, bends, stuff, where="beyond"))
    return max(found, key=lambda one: one.check.rank)


def _tip_moves(load: float, force: float, point: Carried, o: float, stiffness: float) -> float:
    """Return how far in m the tip of an overhang ``o`` m long moves, up or down.

    Under an even ``load`` in N/m and, where ``point`` stands, a ``force`` in N and its tilting.
    """
    moved = overhang_deflection(load, o, stiffness)
    moved = moved + cantilever_deflection(force, point.at, o, stiffness)
    return float(moved + turned_deflection(point.tilting, point.at, o, stiffness))


def _pressures(structure: Structure, i: int, local: LocalWind) -> tuple[float, float]:
    """Return the unfactored suction upward and pressure downward in Pa between what bears it."""
    body, q = structure.bodies[i], float(local.velocity[i])
    if is_free(structure, body):
        lifted = float(references.table("wind/uplift").one("place", "free, blocked")["coefficient"])
    else:
        lifted = panel_coefficient("outward")
    return max(lifted * q, local.least), max(panel_coefficient("inward") * q, local.least)
