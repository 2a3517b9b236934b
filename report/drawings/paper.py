"""A sheet of paper to draw on: lines, areas and words in millimetres, written as SVG.

The same marks give the same bytes, and every word stays text.
"""

from collections.abc import Sequence
from html import escape
from math import atan2, cos, sin
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...units.arrays import Array

Point = tuple[float, float]
_Anchor = Literal["start", "middle", "end"]

LETTERS = 11.0 * 25.4 / 72.0
"""Height of type in mm: 11 pt."""

FINE_LINE, THIN_LINE, PLAIN_LINE, BOLD_LINE = 0.13, 0.2, 0.35, 0.7
"""Widths of lines in mm: faces within an outline, sizes, outlines, what matters."""

TYPEFACE = "Libertinus Serif, Liberation Serif, Times New Roman, serif"
_WIDTHS = {
    **dict.fromkeys(" ',.:;|ijl()!I", 0.30),
    **dict.fromkeys('/Jtrsz"-[]*', 0.42),
    **dict.fromkeys("mwABCDEGHKNOQRTUVXYZ%&", 0.74),
    **dict.fromkeys("MW@", 1.0),
}
_WIDE = 0.54
"""The width of a letter over the height of type, a little more than measured in the typeface."""


class Paper:
    """Marks on a sheet of ``width`` by ``height`` mm; x to the right, y down, from its corner."""

    def __init__(self, width: float, height: float) -> None:
        self.width = width
        self.height = height
        self._marks: list[str] = []

    def line(self, start: Point, end: Point, width: float = PLAIN_LINE, dashes: str = "") -> None:
        """Draw a straight line; ``dashes`` as SVG has them, such as ``"2 1"``."""
        (a, b), (c, d) = start, end
        self._add(f'<line x1="{_n(a)}" y1="{_n(b)}" x2="{_n(c)}" y2="{_n(d)}"', width, dashes)

    def lines(self, ends: Array, width: float = PLAIN_LINE) -> None:
        """Draw straight lines (k, 2, 2), each from its start to its end."""
        if len(ends):
            self._add(f'<path d="M{_points(ends.reshape(-1, 2), "LM")}"', width)

    def polyline(
        self, points: Sequence[Point], width: float = PLAIN_LINE, dashes: str = ""
    ) -> None:
        """Draw lines from point to point."""
        self._add(f'<polyline points="{_points(points)}"', width, dashes)

    def polygon(
        self, points: Sequence[Point], fill: str = "white", width: float = PLAIN_LINE
    ) -> None:
        """Draw a closed figure and fill it."""
        self._add(f'<polygon points="{_points(points)}"', width, fill=fill)

    def region(
        self,
        area: BaseGeometry,
        fill: str = "white",
        width: float = PLAIN_LINE,
        dashes: str = "",
        ink: str = "black",
    ) -> None:
        """Draw an area that may have holes or be in several pieces; in mm on the paper."""
        rings = [f"M{_points(ring[:-1])}Z" for ring in plane.rings_of(area)]
        if rings:
            path = f'<path fill-rule="evenodd" d="{"".join(rings)}"'
            self._add(path, width, dashes, fill, ink)

    def circle(
        self,
        centre: Point,
        radius: float,
        fill: str = "white",
        width: float = PLAIN_LINE,
        dashes: str = "",
    ) -> None:
        """Draw a circle."""
        x, y = centre
        self._add(f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}"', width, dashes, fill)

    def arrow(self, start: Point, end: Point, width: float = PLAIN_LINE, head: float = 2.2) -> None:
        """Draw a line with a filled head at its end."""
        (a, b), (c, d) = start, end
        way = atan2(d - b, c - a)
        neck = (c - 0.8 * head * cos(way), d - 0.8 * head * sin(way))
        self.line(start, neck, width)
        side = 0.32 * head
        back = (c - head * cos(way), d - head * sin(way))
        wings = [
            (back[0] - sign * side * sin(way), back[1] + sign * side * cos(way)) for sign in (1, -1)
        ]
        self.polygon([end, *wings], "black", 0.0)

    def balance(self, centre: Point, radius: float = 2.0) -> None:
        """Draw the mark of a centre of mass: a circle with two black quarters."""
        x, y = centre
        self.circle(centre, radius, "white", PLAIN_LINE)
        for a, b in ((1, -1), (-1, 1)):
            r = radius
            turn = f"M{_n(x)},{_n(y)}L{_n(x + a * r)},{_n(y)}"
            arc = f"A{_n(r)},{_n(r)} 0 0 0 {_n(x)},{_n(y + b * r)}Z"
            self._add(f'<path d="{turn}{arc}"', 0.0, fill="black")

    def text(
        self,
        place: Point,
        words: str,
        anchor: _Anchor = "start",
        size: float = LETTERS,
        bold: bool = False,
        upward: bool = False,
    ) -> None:
        """Write words whose first line stands at a point; ``upward`` reads from below to above.

        A white rim keeps them legible over lines.
        """
        x, y = _n(place[0]), _n(place[1])
        heavy = ' font-weight="bold"' if bold else ""
        turned = f' transform="rotate(-90 {x} {y})"' if upward else ""
        self._marks.append(
            f'<text x="{x}" y="{y}" font-size="{_n(size)}" text-anchor="{anchor}"{heavy}{turned} '
            'stroke="white" stroke-width="0.9" stroke-linejoin="round" paint-order="stroke">'
            f"{escape(words, quote=False)}</text>"
        )

    def level_size(self, left: Point, right: float, words: str) -> None:
        """Draw a level size from a point to ``right``, its words above it in the middle.

        Slanting strokes end it, as builders draw them; words with no room stand past its end.
        """
        x, y = left
        self.line(left, (right, y), THIN_LINE)
        self._strokes(left, (right, y))
        if wide(words) <= right - x - 1.0:
            self.text((0.5 * (x + right), y - 0.9), words, "middle")
        else:
            self.text((right + 1.6, y + 1.3), words)

    def upright_size(self, low: Point, high: float, words: str, side: int = -1) -> None:
        """Draw an upright size from a point up to ``high``; words upward beside it where they fit.

        Else they stand level; ``side`` is -1 for left of the line, 1 for right of it.
        """
        x, y = low
        self.line(low, (x, high), THIN_LINE)
        self._strokes(low, (x, high))
        if stands(words, y - high):
            across = x - 0.9 if side < 0 else x + 0.7 * LETTERS + 0.9
            self.text((across, 0.5 * (y + high)), words, "middle", upward=True)
        else:
            where = (x + 1.4 * side, 0.5 * (y + high) + 1.3)
            self.text(where, words, "end" if side < 0 else "start")

    def _strokes(self, *ends: Point) -> None:
        for x, y in ends:
            self.line((x - 0.8, y + 0.8), (x + 0.8, y - 0.8), PLAIN_LINE)

    def place(self, other: "Paper", corner: Point) -> None:
        """Put another sheet's marks on this one, its corner at a point."""
        x, y = corner
        self._marks.append(f'<g transform="translate({_n(x)} {_n(y)})">')
        self._marks += other._marks
        self._marks.append("</g>")

    def svg(self, title: str) -> str:
        """Return the sheet as an SVG file of its own size."""
        w, h = _n(self.width), _n(self.height)
        head = (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{w}mm" height="{h}mm" '
            f'viewBox="0 0 {w} {h}" font-family="{TYPEFACE}" fill="black">'
        )
        back = f'<rect width="{w}" height="{h}" fill="white"/>'
        named = f"<title>{escape(title, quote=False)}</title>"
        return "\n".join([head, named, back, *self._marks, "</svg>"]) + "\n"

    def _add(
        self, tag: str, width: float, dashes: str = "", fill: str = "none", ink: str = "black"
    ) -> None:
        stroke = f'stroke="{ink}" stroke-width="{_n(width)}"' if width > 0.0 else 'stroke="none"'
        dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
        joined = ' stroke-linejoin="round"' if width > 0.0 else ""
        self._marks.append(f'{tag} fill="{fill}" {stroke}{dashed}{joined}/>')


def wide(words: str, size: float = LETTERS) -> float:
    """Return about how wide words are in mm."""
    return size * sum(_WIDTHS.get(letter, _WIDE) for letter in words)


def stands(words: str, room: float) -> bool:
    """Return whether the words of an upright size fit beside ``room`` mm of it."""
    return wide(words) <= room - 1.0


def points(values: Array) -> list[Point]:
    """Return the points of an array (k, 2)."""
    return [(float(x), float(y)) for x, y in values]


def _points(values: ArrayLike, between: str = " ") -> str:
    """Return points (k, 2) as SVG has them; a mark of ``between`` in turn after each."""
    rounded = np.round(np.asarray(values, dtype=float), 3) + 0.0
    row = "".join(f"%.10g,%.10g{mark}" for mark in between) * (len(rounded) // len(between))
    return row[:-1] % tuple(rounded.ravel().tolist())


def _n(value: float) -> str:
    """Return a number to a thousandth of a millimetre, without what says nothing."""
    return f"{round(value, 3) + 0.0:.10g}"
