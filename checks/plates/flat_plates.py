"""What bears a plate that lies flat: openings and gaps beneath it, and what stands out beyond."""

from itertools import pairwise

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.placing import Body
from ...design.shapes.flat import Plate
from ...design.shapes.forms import Bars
from ...design.shapes.plans import Rectangle, Regular
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity

_EDGE = 1.0e-3
_RUNS = 0.95
"""Share of a plate's width along which a beam has to run for strips to rest on it (judgement)."""


class Bearing(ByIdentity, frozen=True):
    """How a plate is borne, in m.

    ``short`` and ``long`` are the widths of the widest opening beneath it, 0
    where there is none. ``beyond`` is how far it stands out at most, ``flat`` along its edges,
    ``width`` how wide its strips are. ``opening`` and ``borne`` (what bears it and the opening) are
    regions of the site's plan, ``middle`` (2,) a point there and ``axes`` (2, 2) the ways from
    which places are told: along the narrower side of an opening, or along strips over beams.
    ``beams`` tells of those where each begins and ends along them, ``ends`` of the plate.
    """

    short: float
    long: float
    beyond: float
    flat: float
    width: float
    opening: BaseGeometry
    borne: BaseGeometry
    middle: Array
    axes: Array
    beams: tuple[tuple[float, float], ...] = ()
    ends: tuple[float, float] = (0.0, 0.0)

    def place(self, point: Array) -> Array:
        """Return a point (2,) of the site's plan along the axes, in m from the middle."""
        return self.axes @ (point - self.middle)


def bearing_of(structure: Structure, body: Body) -> Bearing | None:
    """Return how an upright plate is borne from below; None where that is not plain."""
    plate = body.shape.plate
    assert plate is not None
    if plate.hole > 0.0:
        return None
    plan = body.in_plan(plate.from_above())
    below = _beneath(structure, body, plan)
    if not below or not all(_bears_level(one) for one in below):
        return None
    bears = plane.union_of([one.in_plan(one.shape.rim()) for one in below]).intersection(plan)
    openings = [one for one in plane.pieces(plan.difference(bears)) if _is_within(one, plan)]
    if openings:
        opening = max(openings, key=lambda one: one.area)
        borne = plane.union_of([bears, *openings])
        if len(plane.pieces(borne)) > 1:
            return None
        short, long = _widths(plate, opening)
        out = _farthest(plan, borne)
        return Bearing(short, long, *out, _width(borne), opening, borne, *_middle_and_axes(opening))
    pieces = plane.pieces(bears)
    if not pieces:  # it lies within an opening of what is beneath, and rests on none of it
        return None
    if len(pieces) == 1:
        out = _farthest(plan, bears)
        where = _middle_and_axes(bears)
        return Bearing(0.0, 0.0, *out, _width(bears), plane.NOTHING, bears, *where)
    if not isinstance(plate.plan, Rectangle):
        return None
    return _over_beams(body, plate.plan, pieces, plan)


def stands_at(one: Body, level: float) -> bool:
    """Return whether a body stands on a level in m, a shim more or less."""
    return abs(one.bottom - level) <= 2.0 * _EDGE


def _beneath(structure: Structure, body: Body, plan: BaseGeometry) -> list[Body]:
    """Return the bodies on which a plate lies, whichever of them it is said to stand on."""
    return [
        one
        for one in structure.bodies
        if abs(one.top - body.bottom) <= 2.0 * _EDGE
        and one.shape.hulls()
        and one.in_plan(one.shape.from_above()).intersection(plan).area > 0.0
    ]


def _bears_level(body: Body) -> bool:
    """Return whether a body bears a plate on a level top: no roof, no leaning stick."""
    if body.shape.flat_topped:
        return body.upright
    form = body.shape.form
    if not isinstance(form, Bars):
        return False
    rise = np.abs(form.axes @ body.rotation[2])
    return bool(np.all((rise < 1.0e-6) | (rise > 1.0 - 1.0e-6)))


def _over_beams(
    body: Body, plan: Rectangle, pieces: list[plane.Polygon], whole: BaseGeometry
) -> Bearing | None:
    """Return how a rectangle lies over beams that run right through below it."""
    for angle, length, width in (
        (0.0, plan.length, plan.width),
        (np.pi / 2.0, plan.width, plan.length),
    ):
        along, across = body.bearing(angle), body.bearing(angle + np.pi / 2.0)
        ends: list[tuple[float, float]] = []
        for piece in pieces:
            own = plane.coordinates(piece) - body.origin[:2]
            if float(np.ptp(own @ across)) < _RUNS * width:
                break
            ends.append((float((own @ along).min()), float((own @ along).max())))
        if len(ends) < len(pieces):
            continue
        ends.sort()
        bears = plane.union_of(list(pieces))
        half = length / 2.0
        return Bearing(
            short=max(b[0] - a[1] for a, b in pairwise(ends)),
            long=length,
            beyond=max(half + ends[0][0], half - ends[-1][1], 0.0),
            flat=max(half + ends[0][0], half - ends[-1][1], 0.0),
            width=width,
            opening=whole.difference(bears),
            borne=bears,
            middle=body.origin[:2],
            axes=np.stack([along, across]),
            beams=tuple(ends),
            ends=(min(-half, ends[0][0]), max(half, ends[-1][1])),
        )
    return None


def _middle_and_axes(region: BaseGeometry) -> tuple[Array, Array]:
    """Return the middle (2,) of a region and the ways (2, 2) of its narrower and its wider side."""
    corners = plane.narrowest_box(region)
    sides = np.diff(corners[:3], axis=0)
    size = np.linalg.norm(sides, axis=1)
    ways = (sides / np.where(size > 0.0, size, 1.0)[:, None])[np.argsort(size, kind="stable")]
    return corners[:4].mean(axis=0), ways


def _is_within(piece: BaseGeometry, plan: BaseGeometry) -> bool:
    """Return whether a piece keeps clear of the edge of a plan."""
    return plane.moved_in(plan, 0.5 * _EDGE).contains(piece)


def _widths(plate: Plate, opening: BaseGeometry) -> tuple[float, float]:
    """Return the narrower and the wider way across an opening; of a many-sided one over points."""
    short, long = sorted(_sides(opening))
    if isinstance(plate.plan, Regular):
        corners = plane.coordinates(opening)
        apart = np.linalg.norm(corners[:, None] - corners[None], axis=-1)
        long = float(apart.max())
    return short, long


def _sides(region: BaseGeometry) -> tuple[float, float]:
    corners = plane.narrowest_box(region)
    one, two = (float(np.linalg.norm(corners[k + 1] - corners[k])) for k in (0, 1))
    return one, two


def _width(region: BaseGeometry) -> float:
    return min(_sides(region))


def _farthest(plan: BaseGeometry, borne: BaseGeometry) -> tuple[float, float]:
    """Return how far the corners of a plan lie beyond a region at most, and its edges."""
    corners = plane.coordinates(plan)
    middles = 0.5 * (corners[1:] + corners[:-1])
    out = plane.distances(np.vstack([corners, middles]), borne)
    return float(out.max()), float(out[len(corners) :].max())
