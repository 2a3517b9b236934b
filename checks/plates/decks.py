"""Plates that lie flat over an opening or beams: lids, galleries, eaves, floors and decks.

Wind lifts them; what stands on them, and who, pulls, presses and tilts; what stands out beyond the
body below is a cantilever under the greater suction there.
"""

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise
from math import pi

import numpy as np

from ...design import plane
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.roofs.inside_air import breathes, breathes_beneath
from ...loads.roofs.lids import covered, from_above, is_free, lies_on_ground, on_top
from ...loads.roofs.tops import FREE_LIFTED, FREE_PRESSED
from ...materials.lumber import Lumber
from ...units.arrays import Array, distinct
from ...units.frozen import ByIdentity, replace
from ..acting.borne import Borne
from ..acting.local_wind import LocalWind, overhang_pressure
from ..members.member_check import MemberStrength, NotJudged
from .carried_plate import Carried, Loads, carried_by
from .flat_plates import Bearing, bearing_of
from .strip_strength import plate_material_of
from .strips import (
    Acting,
    Basis,
    PointForce,
    Strip,
    StripWays,
    carrying,
    dead_pressure,
    weakest_place,
)


class _Pressed(ByIdentity, frozen=True):
    """Unfactored pressures in Pa on a plate, and by what its strips are judged.

    ``up`` and ``down`` between what bears it, ``over`` up on what stands out, ``dead`` its weight.
    """

    up: float
    down: float
    over: float
    dead: float
    by: Basis

    @property
    def boards(self) -> bool:
        """Return whether the plate is laid of boards."""
        return isinstance(self.by.stuff, Lumber)


class _Person(ByIdentity, frozen=True):
    """A named load on a plate: N down or up, ``place`` (2,) as ``Bearing.place``, ``at`` beyond."""

    name: str
    force: float
    place: Array
    at: float
    between: bool


def check_plate(
    structure: Structure,
    i: int,
    local: LocalWind,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
) -> MemberStrength | NotJudged | None:
    """Return the bending of a plate off the ground, where it is used most; None for any other body.

    None too for one that lies on something solid. Over an opening that holds it all round the
    better way of strips is taken, of boards the longer; over beams strips run across all of them.
    What stands out less than it is thick is no strip.
    """
    body = structure.bodies[i]
    plate, part = body.shape.plate, structure.design.parts[body.part]
    if plate is None or lies_on_ground(structure, body):
        return None
    stuff = plate_material_of(part, plate.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    if plate.solidity < 1.0 and not isinstance(stuff, Lumber):
        return NotJudged(part.name, "lattice")
    hangs = part.place.under is not None or part.hangs_at is not None
    bearing = None if hangs or not body.upright else bearing_of(structure, body)
    if bearing is None:
        return NotJudged(part.name, "held otherwise")
    carried = carried_by(structure, i, bearing, local)
    if carried is None:
        return NotJudged(part.name, "load on it")
    by = Basis(factors, basis, stuff, plate.thickness)
    dead = dead_pressure(structure, body.part, plate.plan.area)
    wind = _Pressed(*_pressures(structure, i, local), dead, by)
    people = [_person(one, bearing) for one in loads if one.body == i]
    if bearing.beams:
        places = _over_beams(bearing, carried, people, wind)
    else:
        places: list[StripWays] = []
        if bearing.short > plate.thickness:
            places += _over_opening(bearing, carried.between, people, wind)
        if bearing.flat > plate.thickness:
            places += _beyond(bearing, carried, people, wind)
    return weakest_place(part.name, places, by) if places else None


def rim_line(carried: Carried, force: float, tilting: float, around: float) -> float:
    """Return what stands round an overhang brings onto each m of its support's circle, in N/m.

    A ring of radius r carries N/(2 pi r) + M/(pi r2) at most for each m; the circle of the support,
    ``around`` 2 R in m, is shorter: times r/R. Source: statics; the section modulus of a thin ring,
    pi r2 t.
    """
    r = carried.across / 2.0
    line = force / (2.0 * pi * r) + tilting / (pi * r**2)
    return line * carried.across / around


def _over_opening(
    bearing: Bearing, between: Sequence[Carried], people: Sequence[_Person], wind: _Pressed
) -> list[StripWays]:
    """Return the strips over an opening: all of it under wind, and those under each thing on it.

    Somebody is taken to stand in the middle, the worst place.
    """
    ways = [(bearing.long, bearing.short, False, 1)]
    if not wind.boards:
        ways.append((bearing.short, bearing.long, True, 0))
    even: list[Strip] = []
    loaded: list[Strip] = []
    stepped_on: list[list[Strip]] = [[] for _ in people]
    for span, other, across, axis in ways:
        strip = Strip(
            (0.0, span),
            (0.0, span),
            bearing.width,
            across,
            lifts=(Acting(wind.up),),
            presses=(Acting(wind.down),),
            weighs=Acting(wind.dead),
        )
        even.append(strip)
        if between:
            widest = min(one.across for one in between)
            narrow = replace(strip, width=carrying(wind.by.stuff, widest, span, other))

            def spread(
                one: Carried, force: float, tilting: float, mid: float = span / 2.0, k: int = axis
            ) -> tuple[PointForce, ...]:
                return one.lines(force, tilting, mid + float(one.place[k]))

            loaded.append(_loaded(narrow, between, spread))
        for one, strips in zip(people, stepped_on, strict=True):
            points = (PointForce(span / 2.0, one.force),) if one.between else ()
            width = carrying(wind.by.stuff, 0.0, span, other)
            strips.append(_stepped_on(replace(strip, width=width), one.name, points))
    return [StripWays("lid", "between", each) for each in (even, loaded, *stepped_on) if each]


def _loaded(
    strip: Strip,
    carried: Sequence[Carried],
    spread: Callable[[Carried, float, float], Iterable[PointForce]],
) -> Strip:
    """Return a strip with what stands on it, ``spread`` as points: a force in N, a couple in N m.

    Wind lifts and tilts it, or tilts it alone and presses. Beyond its ends the strip is held.
    """

    def added(to: Acting, forces: Sequence[tuple[float, float]]) -> Acting:
        points = [
            replace(point, at=min(max(point.at, 0.0), strip.length))
            for one, (force, tilting) in zip(carried, forces, strict=True)
            for point in spread(one, force, tilting)
        ]
        return replace(to, points=tuple(points))

    assert strip.weighs is not None
    return replace(
        strip,
        lifts=(added(strip.lifts[0], [(one.lift, one.tilting) for one in carried]),),
        presses=(added(strip.presses[0], [(0.0, one.tilting) for one in carried]),),
        weighs=added(strip.weighs, [(one.weight, 0.0) for one in carried]),
    )


def _beyond(
    bearing: Bearing, loads: Loads, people: Sequence[_Person], wind: _Pressed
) -> list[StripWays]:
    """Return the strips that stand out all round: across the grain, as it may run either way."""
    o, width = bearing.beyond, bearing.width
    strip = Strip(
        (0.0, o),
        (0.0,),
        width,
        across=True,
        fast=True,
        lifts=(Acting(wind.over),),
        presses=(Acting(0.0),),
        weighs=Acting(wind.dead),
    )

    def near(one: Carried | _Person, across: float) -> Strip:
        """Return as much of it as carries a point: widening on both sides toward its support."""
        return replace(strip, width=min(across + 2.0 * max(one.at, wind.by.thickness), width))

    def round_it(one: Carried, force: float, tilting: float) -> tuple[PointForce, ...]:
        return (PointForce(one.at, rim_line(one, force, tilting, width) * width),)

    def alone(one: Carried, force: float, tilting: float) -> tuple[PointForce, ...]:
        return (PointForce(one.at, force, tilting),)

    strips = [_loaded(strip, loads.rim, round_it)]
    strips += [_loaded(near(one, one.across), [one], alone) for one in loads.points]
    for one in people:
        points = (PointForce(min(one.at, o), one.force),) if one.at > 0.0 else ()
        strips.append(_stepped_on(near(one, 0.0), one.name, points))
    return [StripWays("lid", "beyond", (one,)) for one in strips]


def _stepped_on(strip: Strip, name: str, points: tuple[PointForce, ...]) -> Strip:
    """Return a strip under a named load and its weight, without wind."""
    return replace(strip, lifts=(), presses=(), named=(Acting(0.0, points, name),))


def _over_beams(
    bearing: Bearing, loads: Loads, people: Sequence[_Person], wind: _Pressed
) -> list[StripWays]:
    """Return the strips across all beams, as one piece; bearings have no width along them."""
    first, last = bearing.ends
    beams, thin = bearing.beams, wind.by.thickness
    outer = [gap if gap > thin else 0.0 for gap in (beams[0][0] - first, last - beams[-1][1])]
    gaps = [b[0] - a[1] for a, b in pairwise(beams)]
    along = np.cumsum([0.0, outer[0], *gaps, outer[1]])
    held, edges = along[1:-1], distinct(along)
    between = (edges[:-1] >= held[0]) & (edges[1:] <= held[-1])
    parts = (np.ones_like(between), between, ~between)  # a gust may reach some of it alone
    up = np.where(between, wind.up, wind.over)
    strip = Strip(
        edges,
        held,
        bearing.width,
        across=not wind.boards and last - first <= bearing.width,
        lifts=tuple(Acting(up * some) for some in parts),
        presses=tuple(Acting(wind.down * some) for some in parts),
        weighs=Acting(wind.dead),
    )
    places = np.array([first, *np.ravel(beams), last])
    clear = np.array([along[0], *np.repeat(held, 2), along[-1]])

    def at(one: Carried | _Person) -> float:
        return float(np.interp(float(one.place[0]), places, clear))

    def narrow(one: Carried | _Person, across: float) -> Strip:
        width = carrying(wind.by.stuff, across, max(gaps), bearing.width)
        return replace(strip, width=_within(width, float(one.place[1]), bearing.width))

    def spread(one: Carried, force: float, tilting: float) -> tuple[PointForce, ...]:
        return one.lines(force, tilting, at(one))

    strips = [strip]
    strips += [_loaded(narrow(one, one.across), [one], spread) for one in loads.between]
    strips += [
        _stepped_on(narrow(one, 0.0), one.name, (PointForce(at(one), one.force),)) for one in people
    ]
    return [StripWays("deck", "between", (one,)) for one in strips]


def _within(width: float, aside: float, room: float) -> float:
    """Return how much in m of a strip lies on a plate, its middle ``aside`` m off the plate's."""
    half, left = width / 2.0, max(room / 2.0 - abs(aside), 0.0)
    return min(half, room - left) + min(half, left)


def _person(one: Borne, bearing: Bearing) -> _Person:
    point = np.array(one.load.at[:2])
    spot = plane.disc_region(point, 1.0e-4)
    away = float(spot.distance(bearing.borne))
    force = one.load.force * abs(one.load.direction[2])
    inside = not spot.intersection(bearing.opening).is_empty
    return _Person(one.load.name, force, bearing.place(point), away, inside)


def _pressures(structure: Structure, i: int, local: LocalWind) -> tuple[float, float, float]:
    """Return the unfactored suction upward and pressure downward in Pa between what bears it.

    And the suction on what stands out, which of a roof that wind passes beneath is no less than
    that between: figures of free roofs know no overhang. A floor under a body that wind passes
    beneath is taken as one more of its walls (judgement).
    """
    body, q = structure.bodies[i], float(local.velocity[i])
    beyond = overhang_pressure(local, body, i)
    if is_free(structure, body):
        if covered(structure, i).area > 0.5 * from_above(body).area:
            opens = any(breathes(structure, j) for j in on_top(structure, i))
            return local.panel(i, "inward", opens), local.panel(i, "outward", opens), beyond
        found = (local.figures.beside(place) * q for place in (FREE_LIFTED, FREE_PRESSED))
        lifted, pressed = (max(one, local.least) for one in found)
        return lifted, pressed, max(beyond, lifted)
    up = local.suction(body, i, 0.0, breathes_beneath(structure, body))
    return up, local.panel(i, "inward"), beyond
