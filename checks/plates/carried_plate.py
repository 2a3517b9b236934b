"""What stands on a plate: a push, a pull and a weight over its openings, or on its overhang."""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue, replace
from ..acting.local_wind import LocalWind
from .flat_plates import Bearing, stands_at
from .strips import PointForce

_MOSTLY, _PARTLY = 0.95, 0.05
"""Shares of what stands on a plate that count as all of it and as some of it (judgement)."""

_POINT = 1.0e-3
"""Radius in m of the disc that stands for a point mass."""

_OFF = 0.05
"""Share of an opening's width by which what stands in its middle may be out of it (judgement)."""


class Carried(ByIdentity, frozen=True):
    """Unfactored loads at the top of a plate: ``tilting`` in N m, ``lift`` and ``weight`` in N.

    ``across`` in m is how wide what stands there is; ``at`` in m how far beyond what bears the
    plate it stands, 0 for what stands between; ``place`` (2,) where, as ``Bearing.place``.
    """

    tilting: float
    lift: float
    weight: float
    across: float
    place: Array
    at: float = 0.0

    def lines(self, force: float, tilting: float, at: float) -> tuple[PointForce, ...]:
        """Return in which points a force in N and a couple in N m come onto a strip.

        Half of the force at each side, and the couple as two more. ``at`` m along it is the middle.
        """
        half = self.across / 2.0
        if half < _POINT:
            return (PointForce(at, force, tilting),)
        couple = tilting / self.across
        return (
            PointForce(at - half, force / 2.0 + couple),
            PointForce(at + half, force / 2.0 - couple),
        )


class Loads(ByValue, frozen=True):
    """What stands on a plate over openings, round its ``rim``, and beyond as single ``points``."""

    between: tuple[Carried, ...]
    rim: tuple[Carried, ...]
    points: tuple[Carried, ...]


def carried_by(structure: Structure, i: int, bearing: Bearing, local: LocalWind) -> Loads | None:
    """Return what a plate carries off what bears it; None where that is not plain.

    What stands over beams or walls presses straight down on them.
    """
    body = structure.bodies[i]
    parts = structure.design.parts
    name = parts[body.part].name
    between: list[Carried] = []
    rim: list[Carried] = []
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
        if bearing.beams and _rests_on_beams(region, bearing):
            continue
        inside = region.intersection(bearing.opening).area / region.area
        beyond = region.difference(bearing.borne).area / region.area
        load = _load(structure, j, local, body.top, bearing)
        hollow = other.shape.clear_width if _is_amid(other, bearing) else None
        if inside > _PARTLY:
            between.append(load if hollow is None else replace(load, across=hollow))
        elif bearing.beams:
            continue
        elif hollow is not None and beyond > _PARTLY:
            rim.append(replace(load, at=(load.across - bearing.width) / 2.0))
        elif beyond > _PARTLY:
            if beyond < _MOSTLY:
                return None
            away = float(region.distance(bearing.borne)) + max(load.across / 2.0, _POINT)
            points.append(replace(load, at=away))
    return Loads(tuple(between), tuple(rim), tuple(points))


def _rests_on_beams(region: BaseGeometry, bearing: Bearing) -> bool:
    """Return whether what stands on a region of a deck stands over beams on both sides of it.

    It then bears itself from one to the other, whatever lies between.
    """
    over = region.intersection(bearing.borne)
    return not over.is_empty and bool(over.convex_hull.contains(region.centroid))


def _stands_on(body: Body) -> BaseGeometry:
    if body.shape.is_point:
        return plane.disc_region(body.origin[:2], _POINT)
    return body.in_plan(body.shape.contact())


def _load(
    structure: Structure, j: int, local: LocalWind, level: float, bearing: Bearing
) -> Carried:
    """Return what a body and all that stands on its part brings onto a level; shared by copies."""
    own = structure.bodies[j]
    of = structure.of
    share = _riders(structure, own.part)[of] / np.count_nonzero(of == own.part)
    share[j] = 1.0
    tilts = local.force * np.maximum(local.up - level, 0.0)
    mass = float(structure.body_mass[WEIGHINGS.index("heavy")] @ share)
    return Carried(
        float(tilts @ share),
        float(local.lift @ share),
        GRAVITY * mass,
        _across(own),
        bearing.place(own.origin[:2]),
    )


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
    if body.shape.is_point:
        return 0.0
    plan = body.shape.named_plan if body.shape.fills_space else None
    if plan is not None:
        return plan.least_width
    low, high = body.extent
    return float((high - low)[:2].min())


def _is_amid(body: Body, bearing: Bearing) -> bool:
    """Return whether a body stands in the middle of what bears the plate."""
    centre = bearing.borne.centroid
    off = np.hypot(body.origin[0] - centre.x, body.origin[1] - centre.y)
    return bool(off <= _OFF * bearing.short)
