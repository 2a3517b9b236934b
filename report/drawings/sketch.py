"""A small drawing in characters: from the front, from the right and from above."""

from collections import Counter
from collections.abc import Sequence
from string import ascii_lowercase, ascii_uppercase

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.outlines import outlines
from ...design.placing import Body, about_z
from ...design.structure import Structure
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace
from ..wording.amounts import Amounts
from ..wording.characters import Characters, window_columns, window_rows
from ..wording.lines import LINE_WIDTH, Line, wrapped
from .seen import above, simpler_outline

_TALLEST = 24
"""Rows of an elevation at most."""

_LETTERS = ascii_uppercase + ascii_lowercase
_GAP = 3
_LONGEST, _MOST_HIDDEN = 40, 20
_HARD_SPACE = "\N{NO-BREAK SPACE}"
_LEVEL = np.eye(3)[[0, 2]], np.eye(3)[[1, 2]]
"""The axes of the elevations, from the front and from the right."""

_GROUND, _FOOT, _BALANCE, _LATTICE = "=", "*", "@", ":"


def sketch(structure: Structure) -> list[Line]:
    """Return two elevations and a plan of a piece, 80 columns wide, with a legend of its parts.

    It is shown as its file has it, before its own last turn. One scale serves all three, and a
    character counts as twice as high as wide.
    """
    turned_back = about_z(-structure.design.turn)
    bodies = structure.as_filed
    foot = structure.footprint @ turned_back[:2, :2].T
    balance = turned_back @ structure.centre_of_mass("typical")
    views = _same_windows(_views(bodies, foot, balance))
    wide, beside = _scale(views)
    drawn = [_Drawn(structure, view, wide) for view in views]
    front, right, above = (each.block() for each in drawn)
    if beside:
        picture = _side_by_side([front, right, above])
    else:
        picture = [*_side_by_side([front, right]), "", *above]
    seen = frozenset[int]().union(*(each.named for each in drawn))
    said = [*_words(structure, views, foot), *_legend(structure, seen)]
    return [*map(Line, picture), Line(""), *said]


class _View(ByIdentity, frozen=True):
    """What is seen one way: areas (m) of bodies from the farthest to the nearest, and its window.

    ``spots`` are where bodies without an outline sit; ``foot`` (k, 2) is drawn in the plan only.
    """

    title: str
    areas: tuple[tuple[Body, BaseGeometry], ...]
    spots: tuple[tuple[Body, Array], ...]
    balance: Array
    low: Array
    high: Array
    foot: Array | None = None


class _Drawn:
    """A view in characters, and the parts whose letter found room in it."""

    def __init__(self, structure: Structure, view: _View, wide: float) -> None:
        self._view = view
        self._grid = Characters(view.low, view.high, wide)
        parts = structure.design.parts
        for body, area in view.areas:
            shape = parts[body.part].shape
            open_ = shape.is_lattice
            self._grid.draw(area, body.part, _LATTICE if open_ else " ")
        for body, area in view.areas:
            self._grid.peep(area, body.part)
        if view.foot is not None:
            self._grid.dot(view.foot, _FOOT)
        self._grid.mark(view.balance, _BALANCE)
        letters = dict(enumerate(_LETTERS[: len(parts)]))
        self.named = {part for part, letter in letters.items() if self._grid.name(part, letter)}
        for body, spot in view.spots:
            if body.part in letters:
                self._grid.mark(spot, letters[body.part])
                self.named.add(body.part)

    def block(self) -> list[str]:
        """Return its title and rows, an elevation's with the ground line."""
        lines = self._grid.lines()
        if self._view.foot is None:
            below = self._grid.row_of(0.0)
            lines.insert(len(lines) - below, _GROUND * self._grid.columns)
        return [self._view.title, *lines]


def _views(bodies: Sequence[Body], foot: Array, balance: Array) -> list[_View]:
    """Return the two elevations and the plan.

    Outlines from behind and from the left are those from the front and from the right with their
    own x and y to the right.
    """
    sides = outlines(bodies, np.radians([0.0, 270.0]))
    front, right = (
        [simpler_outline(body, sides[i, view], _LEVEL[view]) for i, body in enumerate(bodies)]
        for view in (0, 1)
    )
    plans = [above(body) for body in bodies]
    low, high = (np.array([body.extent[end] for body in bodies]) for end in (0, 1))
    plan = _view("from above", bodies, plans, high[:, 2], (0, 1), balance)
    return [
        _view("from the front", bodies, front, -low[:, 1], (0, 2), balance),
        _view("from the right", bodies, right, high[:, 0], (1, 2), balance),
        replace(plan, foot=foot),
    ]


def _view(
    title: str,
    bodies: Sequence[Body],
    regions: Sequence[BaseGeometry],
    nearness: Array,
    axes: tuple[int, int],
    balance: Array,
) -> _View:
    """Return a view onto two axes of the site; greater ``nearness`` (bodies,) hides the less."""
    order = [int(i) for i in np.argsort(nearness, kind="stable")]
    pick = list(axes)
    areas = [(bodies[i], regions[i]) for i in order if not regions[i].is_empty]
    spots = [(bodies[i], bodies[i].origin[pick]) for i in order if regions[i].is_empty]
    points = np.vstack(
        [plane.coordinates(region) for _, region in areas]
        + [spot[None] for _, spot in spots]
        + [balance[None, pick]]
    )
    low, high = points.min(axis=0), points.max(axis=0)
    if axes[1] == 2:
        low[1] = min(low[1], 0.0)
    return _View(title, tuple(areas), tuple(spots), balance[pick], low, high)


def _same_windows(views: Sequence[_View]) -> list[_View]:
    """Return the views with what two of them share made alike: width, depth and height."""
    front, right, above = views
    x = min(front.low[0], above.low[0]), max(front.high[0], above.high[0])
    y = min(right.low[0], above.low[1]), max(right.high[0], above.high[1])
    z = min(front.low[1], right.low[1]), max(front.high[1], right.high[1])
    return [
        replace(view, low=np.array([a[0], b[0]]), high=np.array([a[1], b[1]]))
        for view, a, b in ((front, x, z), (right, y, z), (above, x, y))
    ]


def _scale(views: Sequence[_View]) -> tuple[float, bool]:
    """Return the finest width (m) of a column that fits, and whether all stand side by side."""
    front, right, above = views
    in_a_row = _finest(views, (front, right, above), (front,))
    below = _finest(views, (front, right), (front, above))
    return (below, False) if below < 0.8 * in_a_row else (in_a_row, True)


def _finest(views: Sequence[_View], across: Sequence[_View], down: Sequence[_View]) -> float:
    """Return the width of a column (m) at which views fit across the screen and down it."""
    wide = float(max((view.high - view.low).max() for view in views)) / (2.0 * LINE_WIDTH)
    while (
        sum(max(window_columns(v.low, v.high, wide), len(v.title)) for v in across)
        + _GAP * (len(across) - 1)
        > LINE_WIDTH
        or window_rows(down[0].low, down[0].high, wide) > _TALLEST
        or sum(window_rows(v.low, v.high, wide) for v in down) > 2 * _TALLEST
    ):
        wide *= 1.02
    return wide


def _side_by_side(blocks: Sequence[Sequence[str]]) -> list[str]:
    """Return blocks beside each other, their first lines level."""
    height = max(len(block) for block in blocks)
    widths = [max(len(line) for line in block) for block in blocks]
    return [
        (" " * _GAP)
        .join(
            (block[i] if i < len(block) else "").ljust(width)
            for block, width in zip(blocks, widths, strict=True)
        )
        .rstrip()
        for i in range(height)
    ]


def _words(structure: Structure, views: Sequence[_View], foot: Array) -> list[Line]:
    """Return the overall sizes, and what the marks mean."""
    amounts = Amounts(structure.design.units == "metric")
    front, right, _ = views
    wide, deep = front.high[0] - front.low[0], right.high[0] - right.low[0]
    across, along = np.ptp(foot, axis=0)
    up = float(structure.centre_of_mass("typical")[2])
    sizes = (
        f"{amounts.length(wide)} wide, {amounts.length(deep)} deep, "
        f"{amounts.length(structure.height)} tall."
    )
    turn = np.degrees(structure.design.turn) % 360.0
    turned = f" Before its turn of {turn:.0f} degrees on the site." if turn else ""
    marks = (
        f"{_BALANCE} balance point, {amounts.length(up)} up.   {_FOOT} edge of the footprint, "
        f"{amounts.length(across)} by {amounts.length(along)}. From above, the front is below."
    )
    return [*wrapped(sizes + turned), *wrapped(marks)]


def _legend(structure: Structure, named: frozenset[int]) -> list[Line]:
    """Return which letter is which part, and which parts found no room for theirs."""
    parts = structure.design.parts
    copies = Counter(body.part for body in structure.bodies)

    def called(i: int) -> str:
        name = parts[i].name if len(parts[i].name) <= _LONGEST else f"{parts[i].name[:_LONGEST]}..."
        return f"{name} ({copies[i]})" if copies[i] > 1 else name

    items = [f"{_LETTERS[i]} {called(i)}" for i in sorted(named)]
    found = wrapped("   ".join(item.replace(" ", _HARD_SPACE) for item in items)) if items else []
    hidden = [i for i in range(len(parts)) if i not in named]
    if hidden:
        shown = [called(i) for i in hidden[:_MOST_HIDDEN]]
        more = len(hidden) - len(shown)
        shown += [f"{more} more"] if more else []
        found += wrapped(f"Hidden, or too small to be lettered: {', '.join(shown)}.", rest="  ")
    return found
