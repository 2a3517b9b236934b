"""What the fasteners of a joint may be pushed across the grain before a piece splits along them."""

from functools import cache
from math import inf

import numpy as np
from shapely.geometry import Polygon
from shapely.geometry.base import BaseGeometry

from ... import references
from ...design import plane
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import replace
from ..timber.books import book_of
from .fastener_sets import JointPlace
from .spacing import woods_of
from .wood_around import Around, square_to

SPLIT = "split"
"""How a fastener gives in place of a yield mode: the piece splits along the row."""

_WITHIN = 1.0e-6


def whole(structure: Structure, place: JointPlace, basis: str) -> JointPlace:
    """Return a place whose fasteners hold sideways no more than leaves its pieces whole.

    Each has an equal share of what the weaker piece holds across its grain, pushed either way,
    among those that stand within two of its depths along the grain: not more in all, however unlike
    they are asked. A piece counts as thick as the fasteners reach.
    """
    book, one = book_of(basis), place.sets[0]
    names = {place.row.of: one.driven.main.name, place.row.to: one.driven.main.name}
    names[one.head_in] = one.driven.side.name
    if all(book.splits_at(n, 0.1, 0.1, 0.05, basis, False) == inf for n in set(names.values())):
        return place  # the book knows no splitting, or neither piece splits
    points, share = place.face.in_plane(place.points), inf
    for around, _ in woods_of(structure, place):
        has_head = around.part == one.head_in
        thick = one.driven.through if has_head else one.holds.penetration
        for deep, reach, together in reaches(around, points):
            dry = one.driven.stays_dry
            held = book.splits_at(names[around.part], thick, deep, reach, basis, dry)
            share = min(share, held / together)
    return replace(
        place,
        sets=tuple(
            replace(each, holds=replace(each.holds, sideways=share, mode=SPLIT))
            if each.holds.sideways > share
            else each
            for each in place.sets
        ),
    )


def reaches(around: Around, points: Array) -> list[tuple[float, float, int]]:
    """Return how deep each piece is across its grain in m, how far its fasteners reach into it.

    The lesser of the two edges toward which they may be pushed counts. Third stands how many split
    it as one.
    """
    found: list[tuple[float, float, int]] = []
    for region, grain in around.pieces:
        own = points[plane.distances(points, region) <= _WITHIN]
        if around.sheet or grain is None or not len(own):
            continue
        across = square_to(grain)
        edges = [corner @ across for corner in _corners(region)]
        low, high = min(edges), max(edges)
        at = own @ across
        reach = min(float(at.max()) - low, high - float(at.min()))
        deep = high - low
        along = own @ grain
        ahead = along - along[:, np.newaxis]
        near = (ahead >= 0.0) & (ahead <= _as_one() * deep * (1.0 + _WITHIN))
        together = int(near.sum(axis=1).max())
        found.append((deep, min(max(reach, 0.0), deep), together))
    return found


@cache
def _as_one() -> float:
    """Return within how many depths along the grain fasteners split a piece as one."""
    rules = references.table("wood/fastener_spacing")
    return float(rules.one("rule", "split as one")["value"])


def _corners(region: BaseGeometry) -> Array:
    hull = region.convex_hull
    return np.asarray(hull.exterior.coords) if isinstance(hull, Polygon) else np.zeros((1, 2))
