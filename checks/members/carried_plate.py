"""What stands on a plate: a push, a pull and a weight in its middle, or round its overhang."""

from dataclasses import dataclass, replace

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.bodies import Cone, Shell, Solid
from ...design.shapes.boxes import Box
from ...design.shapes.roofs import Dome
from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ..local_wind import LocalWind
from .plates import Bearing, stands_at

_MOSTLY, _PARTLY = 0.95, 0.05
"""Shares of what stands on a plate that count as all of it and as some of it (judgement)."""

_POINT = 1.0e-3
"""Radius in m of the disc that stands for a point mass."""

_OFF = 0.05
"""Share of an opening's width by which what stands in its middle may be out of it (judgement)."""


@dataclass(frozen=True)
class Carried:
    """Unfactored loads at the top of a plate: ``tilting`` in N m, ``lift`` and ``weight`` in N.

    ``across`` in m is how wide what stands there is; ``at`` in m how far beyond what bears the
    plate it stands, 0 for what stands in the middle.
    """

    tilting: float
    lift: float
    weight: float
    across: float
    at: float = 0.0

    def __add__(self, other: "Carried") -> "Carried":
        return Carried(
            self.tilting + other.tilting,
            self.lift + other.lift,
            self.weight + other.weight,
            min(self.across, other.across),
            max(self.at, other.at),
        )


@dataclass(frozen=True)
class Loads:
    """What stands in the ``middle`` of a plate, round its ``rim``, and as single ``points``."""

    middle: Carried | None
    rim: Carried | None
    points: tuple[Carried, ...]


def carried_by(structure: Structure, i: int, bearing: Bearing, local: LocalWind) -> Loads | None:
    """Return what a plate carries off what bears it; None where that is not plain.

    What stands over a beam or a wall presses straight down on it.
    """
    body = structure.bodies[i]
    parts = structure.design.parts
    name = parts[body.part].name
    middle: Carried | None = None
    rim: Carried | None = None
    points: list[Carried] = []
    for j, other in enumerate(structure.bodies):
        place = parts[other.part].place
        named = place.reference == name
        if j == i or not (named or stands_at(other, body.top)):
            continue
        if named and place.under is not None:
            return None
        if other.top <= body.bottom:
            continue
        region = _stands_on(other)
        if not named and region.intersection(bearing.borne.convex_hull).is_empty:
            continue
        if region.area <= 0.0:
            return None
        inside = region.intersection(bearing.opening).area / region.area
        beyond = region.difference(bearing.borne).area / region.area
        if not bearing.all_round:
            if inside > _PARTLY:
                return None
            continue
        load = _load(structure, j, local, body.top)
        hollow = _hollow(other) if _is_amid(other, bearing) else None
        if inside > _PARTLY:
            if hollow is not None:
                load = replace(load, across=hollow)
            elif inside < _MOSTLY or not _is_amid(other, bearing):
                return None
            middle = load if middle is None else middle + load
        elif hollow is not None and beyond > _PARTLY:
            load = replace(load, at=(load.across - bearing.width) / 2.0)
            rim = load if rim is None else rim + load
        elif beyond > _PARTLY:
            if beyond < _MOSTLY:
                return None
            away = float(region.distance(bearing.borne)) + max(load.across / 2.0, _POINT)
            points.append(replace(load, at=away))
    return Loads(middle, rim, tuple(points))


def _stands_on(body: Body) -> BaseGeometry:
    if isinstance(body.shape, Weight):
        return plane.disc(body.origin[:2], _POINT)
    return body.in_plan(body.shape.contact())


def _load(structure: Structure, j: int, local: LocalWind, level: float) -> Carried:
    """Return what a body and all that stands on its part brings onto a level; shared by copies."""
    own = structure.bodies[j]
    of = structure.of
    share = _riders(structure, own.part)[of] / np.count_nonzero(of == own.part)
    share[j] = 1.0
    tilts = local.force * np.maximum(local.up - level, 0.0)
    mass = float(structure.body_mass[WEIGHINGS.index("heavy")] @ share)
    return Carried(float(tilts @ share), float(local.lift @ share), GRAVITY * mass, _across(own))


def _riders(structure: Structure, part: int) -> Array:
    """Return 1 for each part (parts,) that stands on a part by the file's own word, else 0."""
    parts = structure.design.parts
    found = np.zeros(len(parts))
    names = {parts[part].name}
    while names:
        fresh = [k for k, one in enumerate(parts) if one.place.reference in names and not found[k]]
        found[fresh] = 1.0
        names = {parts[k].name for k in fresh}
    return found


def _across(body: Body) -> float:
    """Return how wide a body stands on what is below it, in m; 0 for a point mass."""
    match body.shape:
        case Weight():
            return 0.0
        case Shell(bottom=across) | Solid(bottom=across) | Cone(bottom=across) | Dome(across):
            return across
        case Box(length=length, width=width):
            return min(length, width)
        case _:
            low, high = body.extent
            return float((high - low)[:2].min())


def _hollow(body: Body) -> float | None:
    """Return the width in m inside the foot of a hollow body, None of any other."""
    match body.shape:
        case Shell() as shell:
            return max(shell.bottom - 2.0 * shell.wall_in_plan, 0.0)
        case Cone(wall=float()) as cone:
            return max(cone.inner_bottom(), 0.0)
        case Dome(across=across, wall=float() as wall):
            return across - 2.0 * wall
        case _:
            return None


def _is_amid(body: Body, bearing: Bearing) -> bool:
    """Return whether a body stands in the middle of what bears the plate."""
    centre = bearing.borne.centroid
    off = np.hypot(body.origin[0] - centre.x, body.origin[1] - centre.y)
    return bool(off <= _OFF * bearing.short)
