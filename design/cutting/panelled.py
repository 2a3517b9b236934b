"""Which panels a hollow body is made of: shell, cone, box, gable.

Together they fill the body's wall without gap or overlap.
"""

from collections.abc import Mapping
from itertools import pairwise
from math import hypot, pi, tan

import numpy as np

from ...units.arrays import Array
from ..shapes.bodies import Shell
from ..shapes.boxes import Box
from ..shapes.cone import Cone
from ..shapes.gables import Gable
from .panels import EdgeTilts, SawnPanel, compound_bevel, cut_tilt, half_turn, lean_of, leaning

Panels = tuple[SawnPanel, ...]

_TOWARD: Mapping[str, tuple[float, float]] = {
    "front": (0.0, -1.0),
    "back": (0.0, 1.0),
    "left": (-1.0, 0.0),
    "right": (1.0, 0.0),
}
_BESIDE: Mapping[str, tuple[str, str]] = {
    "front": ("left", "right"),
    "back": ("right", "left"),
    "left": ("back", "front"),
    "right": ("front", "back"),
}
"""Which face lies at the left and the right of each, seen from outside."""


def shell_panels(shell: Shell) -> Panels:
    """Return the like panels of a shell; none of a round one."""
    return _around(shell.sides, shell.bottom, shell.top, shell.height, shell.wall)


def cone_panels(cone: Cone) -> Panels:
    """Return the like panels of a pointed roof; none of a round, solid or closed-up one."""
    if cone.wall is None or not cone.clear_width:
        return ()
    return _around(cone.sides, cone.bottom, 0.0, cone.height, cone.wall)


def _around(sides: int, bottom: float, top: float, height: float, wall: float) -> Panels:
    """Return the like panels of a regular body, sawn level at both ends; none of a round one."""
    if sides == 0:
        return ()
    lean, length = lean_of((bottom - top) / 2.0, height)
    bevel = float(compound_bevel(sides, lean))
    edge = tan(pi / sides)
    over = -lean if top > 0.0 else 0.0
    edges = EdgeTilts(bevel, bevel, lean, over)
    return (SawnPanel("side", sides, bottom * edge, top * edge, length, wall, lean, bevel, edges),)


def box_panels(box: Box) -> Panels:
    """Return a hollow box's walls between its bottom and its lid; none where they close up."""
    inner, wall = box.inner(), box.wall
    if inner is None or wall is None:
        return ()
    top = box.top_plan
    pointed = min(top.length, top.width) <= 0.0
    base = 0.0 if "bottom" in box.open else wall
    end = box.height if pointed or "top" in box.open else box.height - wall
    if pointed and box.open & set(_TOWARD):
        return ()
    if not pointed and abs(inner.base - base) + abs(inner.height - (end - base)) > 1.0e-12:
        return ()
    walls = [_wall(box, face, base, end, pointed) for face in _TOWARD if face not in box.open]
    found = _alike(walls)
    if "bottom" not in box.open:
        found.append(_lying(box, "bottom", box.length, box.width, wall, 1.0))
    if not pointed and "top" not in box.open:
        found.append(_lying(box, "top", top.length, top.width, wall, -1.0))
    return tuple(found)


def _wall(box: Box, face: str, base: float, end: float, pointed: bool) -> SawnPanel:
    """Return one wall of a box: mitred to its neighbours, flush where one of them is open."""
    lean = _lean(box, face)
    normal = leaning(_TOWARD[face], lean)
    x0, x1, y0, y1 = box.outer().section(base / box.height)
    a0, a1, b0, b1 = box.outer().section(end / box.height)
    along_x = face in ("front", "back")
    bottom, top = (x1 - x0, a1 - a0) if along_x else (y1 - y0, b1 - b0)
    tilts: list[float] = []
    for beside in _BESIDE[face]:
        other = leaning(_TOWARD[beside], _lean(box, beside))
        flush = beside in box.open
        tilts.append(cut_tilt(normal, other) if flush else half_turn(normal, other))
    over = -lean
    if pointed:
        # at a ridge it is sawn plumb; below a point the seams end it, and the top has no width
        over = cut_tilt(normal, -leaning(_TOWARD[face], 0.0)) if _at_ridge(box, face) else 0.0
    length = (end - base) / float(np.cos(lean))
    bevel = half_turn(normal, leaning(_TOWARD[_BESIDE[face][0]], _lean(box, _BESIDE[face][0])))
    edges = EdgeTilts(tilts[0], tilts[1], lean, over)
    return SawnPanel(face, 1, bottom, top, length, box.wall or 0.0, lean, bevel, edges)


def _lean(box: Box, face: str) -> float:
    top = box.top_plan
    run = box.width - top.width if face in ("front", "back") else box.length - top.length
    return lean_of(run / 2.0, box.height)[0]


def _at_ridge(box: Box, face: str) -> bool:
    """Return whether a face's top lies in the plane over the middle, where its opposite meets."""
    top = box.top_plan
    return (top.width if face in ("front", "back") else top.length) <= 0.0


def _lying(box: Box, face: str, length: float, width: float, wall: float, way: float) -> SawnPanel:
    """Return a box's bottom or lid: full size, its edges flush with the leaning sides."""
    front, side = way * _lean(box, "front"), way * _lean(box, "left")
    if length >= width:
        long, short, edges = length, width, EdgeTilts(front, front, side, side)
    else:
        long, short, edges = width, length, EdgeTilts(side, side, front, front)
    return SawnPanel(face, 1, short, short, long, wall, pi / 2.0, 0.0, edges)


def _alike(walls: list[SawnPanel]) -> list[SawnPanel]:
    """Return the walls with opposite ones that are the same piece told once."""
    found: dict[tuple[object, ...], list[SawnPanel]] = {}
    for one in walls:
        sizes = [round(value, 12) for value in (one.bottom, one.top, one.length, one.lean)]
        tilts = [round(one.edges.left, 12), round(one.edges.right, 12)]
        found.setdefault((*sizes, *tilts), []).append(one)
    return [
        SawnPanel(
            " and ".join(each.face for each in like) if len(like) < 4 else "side",
            len(like),
            *_sizes(like[0]),
            like[0].edges,
        )
        for like in found.values()
    ]


def _sizes(one: SawnPanel) -> tuple[float, float, float, float, float, float]:
    return one.bottom, one.top, one.length, one.thickness, one.lean, one.bevel


def gable_panels(gable: Gable) -> Panels:
    """Return the slopes of a pitched roof: sawn level at the eaves, plumb at the ridge."""
    if gable.thickness is None or gable.hollow is None:
        return ()
    right: Array = gable.section[: len(gable.section) // 2 + 1]
    runs = [(float(a[0] - b[0]), float(b[1] - a[1])) for a, b in pairwise(right)]
    leans = [lean_of(run, rise)[0] for run, rise in runs]
    lows = [leans[0], *((b - a) / 2.0 for a, b in pairwise(leans))]
    tops = [*lows[1:], pi / 2.0 - leans[-1]]
    names = ["slope"] if len(runs) == 1 else ["lower slope", "upper slope"]
    return tuple(
        SawnPanel(
            name,
            2,
            gable.length,
            gable.length,
            hypot(*run),
            gable.thickness,
            lean,
            top,
            EdgeTilts(0.0, 0.0, low, top),
        )
        for name, run, lean, low, top in zip(names, runs, leans, lows, tops, strict=True)
    )
