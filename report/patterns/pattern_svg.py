"""The pattern as an SVG drawing whose units are millimetres, by the library svg.py."""

from collections.abc import Iterator
from html import escape
from typing import TYPE_CHECKING, Any

from ...units.arrays import Array
from ..wording.faults import clean
from .pattern import TEXT, Figure, Pattern, PlacedFigure

if TYPE_CHECKING:
    import svg

_CUT = 0.5
_THIN = 0.3
_DASH = (4.0, 2.0)


def pattern_svg(pattern: Pattern) -> str:
    """Return the text of an SVG file. ImportError where the library is missing."""
    import svg  # noqa: PLC0415 - an extra, and only where a pattern is written

    x, y, length = pattern.bar
    elements: list[svg.Element] = [
        svg.Rect(x=0, y=0, width=_mm(pattern.width), height=_mm(pattern.height), fill="white")
    ]
    for k, words in enumerate(pattern.title):
        elements.append(_text(words, x, 1.5 * TEXT * (k + 1)))
    level = pattern.height - y
    ends = [(x, level, x + length, level)]
    ends += [(at, level - 3.0, at, level + 3.0) for at in (x, x + length)]
    elements += [
        svg.Line(x1=_mm(a), y1=_mm(b), x2=_mm(c), y2=_mm(d), stroke="black", stroke_width=_THIN)
        for a, b, c, d in ends
    ]
    for placed in pattern.placed:
        elements += _figure(placed, pattern.height)
    drawing = svg.SVG(
        width=svg.mm(_mm(pattern.width)),
        height=svg.mm(_mm(pattern.height)),
        viewBox=svg.ViewBoxSpec(0, 0, _mm(pattern.width), _mm(pattern.height)),
        elements=elements,
    )
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{drawing.as_str()}\n'


def _figure(placed: PlacedFigure, height: float) -> "Iterator[svg.Element]":
    import svg  # noqa: PLC0415

    figure = placed.figure
    for points, dashed in _outlines(figure):
        flat: list[Any] = [
            _mm(value) for x, y in points for value in (placed.x + x, height - placed.y - y)
        ]
        yield svg.Polygon(
            points=flat,
            fill="none",
            stroke="black",
            stroke_width=_THIN if dashed else _CUT,
            stroke_dasharray=list(_DASH) if dashed else None,
        )
    for x, y, radius in figure.circles:
        yield svg.Circle(
            cx=_mm(placed.x + x),
            cy=_mm(height - placed.y - y),
            r=_mm(radius),
            fill="none",
            stroke="black",
            stroke_width=_CUT,
        )
    for k, words in enumerate(figure.label):
        yield _text(words, placed.x, height - placed.y + 1.5 * TEXT * (k + 1))


def _outlines(figure: Figure) -> Iterator[tuple[Array, bool]]:
    """Give each closed outline, and whether it lies beneath: the inner face."""
    for points, dashed in ((figure.outline, False), (figure.inner, True)):
        if len(points):
            yield points, dashed
    for hole in figure.holes:
        yield hole, False


def _text(words: str, x: float, y: float) -> "svg.Text":
    import svg  # noqa: PLC0415

    return svg.Text(
        text=escape(clean(words)), x=_mm(x), y=_mm(y), font_size=TEXT, font_family="sans-serif"
    )


def _mm(value: float) -> float:
    """Return millimetres to a thousandth, as they are written."""
    return round(float(value), 3)
