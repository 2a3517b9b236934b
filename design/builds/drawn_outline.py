"""An outline read from an SVG drawing: its largest closed path, and the holes within it."""

from collections.abc import Iterator
from importlib import import_module
from io import BytesIO
from math import acos, ceil, sqrt
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from shapely import MultiPoint, Polygon

from ...units.arrays import Array
from ..bounds import MOST_BYTES, MOST_CORNERS
from ..reader.near_names import meant
from ..reader.row import Row
from ..reader.typed_text import shown
from ..shapes.cutout import Corners
from .sizes import length_as_shown

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

TOLERANCE = 1.0 / 500.0
"""How far a straight edge may lie from the curve that it stands for, in heights of the outline."""

_COARSE = 1.0 / 50.0
_FARTHEST = 1.0e9
_PLAIN = 250
"""Characters of an element beside its points."""

_LINK = "{http://www.w3.org/1999/xlink}href"
_UNSEEN = {"clipPath", "marker", "mask", "pattern", "symbol"}


def read_drawing(row: Row, name: str, height: float) -> tuple[Corners, tuple[Corners, ...]] | None:
    """Return outline and holes (x, z) in m of the drawing beside the design file.

    The largest closed path, scaled to ``height``, its lowest point at z = 0 and the middle of its
    width at x = 0; closed paths within it are holes. Curves become edges that lie within
    ``TOLERANCE``. None with a fault recorded where there is none to be had.
    """
    raw = _bytes(row, name)
    if raw is None:
        return None
    try:
        paths = list(_closed_paths(raw))
        rings = _rings(paths)
    except RecursionError:
        _refuse(row, "an SVG drawing", "groups lie too deep within groups, or one uses itself")
        return None
    except Exception as error:
        # The library raises whatever comes of a drawing that is none.
        _refuse(row, "an SVG drawing", f"it cannot be read: {shown(str(error) or 'no drawing')}")
        return None
    if not rings:
        _refuse(row, "a drawing with a closed path", "close the path; turn text into paths")
        return None
    outline, *others = rings
    low, high = outline.min(axis=0), outline.max(axis=0)
    shift = np.array([0.5 * (low[0] + high[0]), low[1]])
    scale = height / float(high[1] - low[1])
    holes, left_out = _within(outline, others)
    corners = sum(len(ring) for ring in (outline, *holes))
    text = (
        f"outline: {shown(name)} is {length_as_shown(row, height)} high and "
        f"{length_as_shown(row, scale * float(high[0] - low[0]))} wide, with {corners} corners "
        f"(curves to 1/{1.0 / TOLERANCE:.0f} of its height)"
    )
    if holes:
        text += f" and {_many(len(holes), 'hole')}"
    if left_out:
        text += f"; {_many(left_out, 'closed path')} besides left out"
    row.note(text)
    return _corners((outline - shift) * scale), tuple(
        _corners((hole - shift) * scale) for hole in holes
    )


def _bytes(row: Row, name: str) -> bytes | None:
    """Return what the drawing's file holds, or None with a fault recorded."""
    folder = Path(row.reading.file).parent
    try:
        path = folder / name
        if path.is_dir():
            _refuse(row, "the name of an SVG drawing", "this is a folder")
            return None
        if not path.is_file():
            names = [
                each.name
                for each in folder.iterdir()
                if each.suffix.casefold() == ".svg" and each.is_file()
            ]
            expected = "the name of an SVG drawing beside the design file: there is no such file"
            _refuse(row, expected, meant(path.name, names))
            return None
        with path.open("rb") as opened:
            raw = opened.read(MOST_BYTES + 1)
    except (OSError, ValueError):
        _refuse(row, "the name of an SVG drawing beside the design file", "it cannot be opened")
        return None
    if len(raw) > MOST_BYTES:
        _refuse(row, "a drawing of at most 1 MB", "without pictures in it")
        return None
    return raw


def _closed_paths(raw: bytes) -> Iterator[list[Any]]:
    """Yield the segments of each closed path that is to be seen, moves and closings included."""
    from xml.etree import ElementTree  # noqa: PLC0415  only where there is a drawing

    svg = import_module("svgelements")
    root = ElementTree.fromstring(raw)
    if root.tag.rpartition("}")[2] != "svg":
        message = "its first element is not <svg>"
        raise ValueError(message)
    _put_away(root)
    if _written_out(root) > MOST_BYTES:
        message = "more than 1 MB once each <use> is drawn"
        raise ValueError(message)
    drawing: Any = svg.SVG.parse(BytesIO(ElementTree.tostring(root)), reify=True)
    for element in drawing.elements():
        if not isinstance(element, svg.Shape) or element.values.get("visibility") == "hidden":
            continue
        path: Any = abs(svg.Path(element))
        for part in path.as_subpaths():
            segments = [segment for segment in part if not isinstance(segment, svg.Move)]
            ends = [segment.end for segment in segments]
            if ends and None not in ends and _is_closed(segments, svg):
                yield segments


def _put_away(root: "Element") -> None:
    """Move what is only referred to into definitions, so that it is not taken as drawn."""
    for parent in list(root.iter()):
        for place, child in enumerate(list(parent)):
            space, _, name = child.tag.rpartition("}")
            if name in _UNSEEN:
                store = child.makeelement(f"{space}}}defs" if space else "defs", {})
                store.append(child)
                parent[place] = store


def _written_out(root: "Element") -> int:
    """Return how long a drawing is once each <use> stands for what it refers to, in characters.

    RecursionError where one uses itself.
    """
    named = {found: each for each in root.iter() if (found := each.get("id"))}
    known: dict[Element, int] = {}
    around: set[Element] = set()

    def count(element: "Element") -> int:
        if element in around:
            raise RecursionError
        if element not in known:
            around.add(element)
            total = _PLAIN + sum(map(count, element))
            total += sum(len(element.get(key, "")) for key in ("d", "points"))
            if element.tag.rpartition("}")[2] == "use":
                name = element.get("href") or element.get(_LINK) or ""
                target = named.get(name.lstrip("#"))
                total += 0 if target is None else count(target)
            known[element] = total
            around.discard(element)
        return known[element]

    return count(root)


def _is_closed(segments: list[Any], svg: Any) -> bool:
    if isinstance(segments[-1], svg.Close):
        return True
    start, end = segments[0].start, segments[-1].end
    length = sum(abs(segment.end - segment.start) for segment in segments)
    return abs(end - start) <= 1.0e-3 * length


def _rings(paths: list[list[Any]]) -> list[Array]:
    """Return the paths' corners (k, 2), the largest path first, up instead of down."""
    rough = [_ring(segments, _COARSE * _reach(segments)) for segments in paths]
    sizes = [_area(ring) for ring in rough]
    by_size = sorted(range(len(paths)), key=lambda i: -sizes[i])
    order = [i for i in by_size if _has_width(rough[i])]
    if not order:
        return []
    height = float(np.ptp(rough[order[0]][:, 1]))
    if sum(_steps(each, TOLERANCE * height) for i in order for each in paths[i]) > MOST_CORNERS:
        message = f"more than {MOST_CORNERS:,} corners, take fewer points"
        raise ValueError(message)
    return [_ring(paths[i], TOLERANCE * height) * np.array([1.0, -1.0]) for i in order]


def _reach(segments: list[Any]) -> float:
    """Return about the size of a path, from the points that bend it; never 0."""
    points = [_xy(point) for segment in segments for point in _controls(segment)]
    radii = [float(segment.rx) for segment in segments if hasattr(segment, "rx")]
    return max(float(np.ptp(np.array(points), axis=0).max()), *radii, 1.0e-9)


def _ring(segments: list[Any], tolerance: float) -> Array:
    """Return the corners (k, 2) of a path whose curves become edges within ``tolerance``."""
    points: list[tuple[float, float]] = []
    for segment in segments:
        steps = min(_steps(segment, tolerance), MOST_CORNERS)
        points += [_xy(segment.point(k / steps)) for k in range(1, steps)]
        points.append(_xy(segment.end))
    found = np.array(points, dtype=np.float64)
    if not np.abs(found).max() < _FARTHEST:
        message = "a point that lies nowhere"
        raise ValueError(message)
    gaps = np.hypot(*(found - np.roll(found, 1, axis=0)).T)
    return found[gaps > 1.0e-6 * float(np.ptp(found, axis=0).max())]


def _steps(segment: Any, tolerance: float) -> int:
    """Return into how many edges a curve is cut so that none lies farther off than ``tolerance``.

    An arc lies r (1 - cos(step/2)) off, r its greater radius. A Bezier curve of degree d lies off
    at most max|B''| / (8 n2) in n steps (linear interpolation), with B'' within d (d - 1) times
    the greatest second difference of its points (Farin, Curves and Surfaces for CAGD, chapter 5).
    """
    kind = type(segment).__name__
    if kind == "Arc":
        radius = max(segment.rx, segment.ry)
        if radius <= tolerance:
            return 4
        return max(ceil(abs(segment.sweep) / (2.0 * acos(1.0 - tolerance / radius))), 1)
    points = [complex(*_xy(point)) for point in _controls(segment)]
    if len(points) < 3:
        return 1
    degree = len(points) - 1
    bend = float(np.abs(np.diff(points, n=2)).max())
    return max(ceil(sqrt(degree * (degree - 1) / 8.0 * bend / tolerance)), 1)


def _controls(segment: Any) -> list[Any]:
    """Return a segment's points: its ends, and what bends a Bezier curve between them."""
    names = ("start", "control", "control1", "control2", "end")
    return [point for name in names if (point := getattr(segment, name, None)) is not None]


def _within(outline: Array, others: list[Array]) -> tuple[list[Array], int]:
    """Return the holes among other closed paths, and how many are left out.

    Left out is what lies outside the outline or within a hole, and a path drawn twice. What
    crosses the outline is kept, for its fault.
    """
    board = Polygon(outline)
    holes: list[Array] = []
    kept = [board]
    for ring in others:
        hole = Polygon(ring)
        if any(_same(hole, other) for other in kept):
            continue
        if not (hole.is_valid and board.is_valid):
            holes.append(ring)
        elif board.intersects(hole) and not any(other.contains(hole) for other in kept[1:]):
            holes.append(ring)
            kept.append(hole)
    return holes, len(others) - len(holes)


def _same(one: Polygon, other: Polygon) -> bool:
    return float(one.hausdorff_distance(other)) <= 1.0e-3 * sqrt(other.area)


def _area(ring: Array) -> float:
    if not _has_width(ring):
        return 0.0
    x, y = (ring - ring.mean(axis=0)).T
    return abs(float(x @ np.roll(y, -1) - y @ np.roll(x, -1))) / 2.0


def _has_width(ring: Array) -> bool:
    """Return whether the corners do not all lie in one line."""
    hull = MultiPoint(ring).convex_hull
    return hull.area > 1.0e-6 * hull.length**2


def _xy(point: Any) -> tuple[float, float]:
    return float(point.x), float(point.y)


def _corners(ring: Array) -> Corners:
    return tuple((float(x), float(z)) for x, z in ring)


def _many(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _refuse(row: Row, expected: str, hint: str) -> None:
    row.refuse("outline", expected, hint)
