"""How points or a drawing become a board sawn to an outline, and what is wrong with them."""

import numpy as np
import shapely
from shapely import Polygon

from ..bounds import MOST_CORNERS, SIZE
from ..reader.row import Row
from ..shapes.cutout import Corners, Cutout
from ..shapes.shape import Shape
from .drawn_outline import read_drawing
from .sizes import length_as_shown
from .stock import thickness


def build_cutout(row: Row) -> Shape | None:
    """Return a board sawn to an outline, or None with its faults recorded."""
    drawn = row.given("outline")
    if drawn:
        others = [key for key in ("points", "holes") if row.given(key)]
        for key in others:
            row.refuse(
                key,
                f"no '{key}' beside 'outline', whose drawing states outline and holes",
                "leave out one of the two",
            )
        row.need("height", reason=" that the drawing is to have")
        thick = thickness(row, "thickness")
        name, height = row.text("outline"), row.quantity("height")
        if name is None or height is None or others:
            return None
        found = read_drawing(row, name, height)
    else:
        if row.given("height") and row.given("points"):
            row.refuse(
                "height", "no 'height' beside 'points', which state it", "leave out one of the two"
            )
        row.need("points", reason=", or 'outline', the name of a drawing")
        thick = thickness(row, "thickness")
        found = _typed_outline(row)
    if found is None or thick is None:
        return None
    points, holes = found
    if not _fits(row, points, holes, drawn):
        return None
    return Cutout(points, thick, holes)


def _typed_outline(row: Row) -> tuple[Corners, tuple[Corners, ...]] | None:
    """Return outline and holes as typed, a closing point that repeats the first left out."""
    points = row.outline("points")
    if points is None or row.failed("holes"):
        return None
    holes = row.outlines("holes")
    return _opened(row, points, ""), tuple(
        _opened(row, hole, f"hole {number}: ") for number, hole in enumerate(holes, 1)
    )


def _opened(row: Row, points: Corners, where: str) -> Corners:
    if len(points) < 4 or points[0] != points[-1]:
        return points
    row.note(f"{where}the last point, the first again, closes the outline and is no corner more")
    return points[:-1]


def _fits(row: Row, points: Corners, holes: tuple[Corners, ...], drawn: bool) -> bool:
    """Return whether outline and holes can be sawn; record a fault for each that cannot."""
    key, holes_key = ("outline", "outline") if drawn else ("points", "holes")
    corners = len(points) + sum(len(hole) for hole in holes)
    if corners > MOST_CORNERS:
        expected = f"at most {MOST_CORNERS:,} corners of outline and holes"
        row.fault(key, f"{corners:,} corners", expected, "draw it with fewer points")
        return False
    sound = _is_sound(row, key, points, "the outline", drawn)
    right = [
        _is_sound(row, holes_key, hole, f"hole {number}", drawn)
        for number, hole in enumerate(holes, 1)
    ]
    if not (sound and all(right)):
        return False
    x0, z0, x1, z1 = Polygon(points).bounds
    if not SIZE.hold(x1 - x0) or not SIZE.hold(z1 - z0):
        found = f"{length_as_shown(row, x1 - x0)} wide and {length_as_shown(row, z1 - z0)} high"
        row.fault(key, found, f"a width and height of {SIZE.words}")
        return False
    return _holes_fit(row, holes_key, Polygon(points), [Polygon(hole) for hole in holes])


def _is_sound(row: Row, key: str, points: Corners, what: str, drawn: bool) -> bool:
    """Return whether a saw can follow an outline all round; record a fault if not."""
    if len(points) < 3:
        many = f"{len(points)} point{'' if len(points) == 1 else 's'}"
        row.fault(key, f"{what}: {many}", "at least 3 corners")
        return False
    array = np.asarray(points)
    hull = shapely.MultiPoint(array).convex_hull
    if hull.area <= SIZE.least * hull.length / 2.0:
        row.fault(key, f"{what}: {len(points)} points", "corners that do not lie in one line")
        return False
    twice = np.flatnonzero(np.hypot(*(np.roll(array, -1, axis=0) - array).T) <= SIZE.least)
    if len(twice) and not drawn:
        first = int(twice[0])
        second = (first + 1) % len(points)
        row.fault(
            key,
            f"{what}: points {first + 1} and {second + 1}",
            "two points that differ",
            "leave out one of them",
        )
        return False
    if not (pairs := _crossings(points)):
        return True
    one, other = pairs[0]
    found = (
        f"{what}, near {_spot(row, points, one, other)}"
        if drawn
        else f"{what}: from point {_edge(points, one)} and from {_edge(points, other)}"
    )
    row.fault(
        key,
        found,
        "an outline that neither crosses nor touches itself",
        "draw one closed line round it" if drawn else "name the points in order round the outline",
    )
    return False


def _crossings(points: Corners) -> list[tuple[int, int]]:
    """Return pairs of edges, by their first points, that meet other than end to end."""
    array = np.asarray(points)
    ends = zip(array, np.roll(array, -1, axis=0), strict=True)
    edges = np.array([shapely.LineString(pair) for pair in ends])
    ones, others = shapely.STRtree(edges).query(edges, predicate="intersects")
    ones, others = ones[ones < others], others[ones < others]
    apart = others - ones
    neighbours = (apart == 1) | (apart == len(points) - 1)
    # Neighbours share a corner; more than that is a way back over itself.
    pairs = zip(edges[ones], edges[others], strict=True)
    shared = np.array([one.intersection(other).length for one, other in pairs])
    meet = ~neighbours | (shared > 1.0e-9)
    return sorted(zip(ones[meet].tolist(), others[meet].tolist(), strict=True))


def _edge(points: Corners, first: int) -> str:
    return f"{first + 1} to {(first + 1) % len(points) + 1}"


def _spot(row: Row, points: Corners, one: int, other: int) -> str:
    """Return where two edges meet, as measured from the lower left."""
    array = np.asarray(points)
    ends = [array.take([first, first + 1], axis=0, mode="wrap") for first in (one, other)]
    meet = shapely.LineString(ends[0]).intersection(shapely.LineString(ends[1])).centroid
    left, low = array.min(axis=0)
    across, up = (length_as_shown(row, each) for each in (meet.x - left, meet.y - low))
    return f"{across} from its left and {up} up"


def _holes_fit(row: Row, key: str, outline: Polygon, holes: list[Polygon]) -> bool:
    """Return whether each hole lies within the board and apart from the others."""
    right = True
    for number, hole in enumerate(holes, 1):
        if not outline.contains_properly(hole):
            crosses = outline.boundary.intersects(hole)
            how = "it crosses or touches it" if crosses else "it lies outside"
            expected = f"a hole within the outline: {how}"
            row.fault(key, f"hole {number}", expected)
            right = False
        for before, other in enumerate(holes[: number - 1], 1):
            if hole.intersects(other):
                expected = "holes apart from each other"
                row.fault(key, f"holes {before} and {number}", expected, "make one of the two")
                right = False
    return right
