"""The full-size pattern as figures in mm: each kind of flat piece once, with its label."""

from collections.abc import Sequence

import numpy as np

from ...design.cutting.cut_list import CutList
from ...design.cutting.cut_pieces import FlatCut
from ...design.cutting.panels import SawnPanel
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from ..fastening.cut_words import deg, face_words, flat_head, material_of
from ..wording.amounts import Amounts

TEXT = 6.0
"""Height of the letters in mm."""

MARGIN = 25.0
_WIDEST = 2400.0
"""A row of figures is at most so wide, but for a wider figure, in mm."""

_LINE = 1.5 * TEXT
_LETTER = 0.62 * TEXT
BAR = {True: (100.0, "100 mm"), False: (101.6, "4 in")}


class Figure(ByIdentity, frozen=True):
    """One piece full size in mm, y up from its own lower left: outline, inner face, holes, label.

    ``round`` outlines and holes have a centre and radius in ``circles`` instead of corners.
    """

    outline: Array
    inner: Array
    holes: tuple[Array, ...]
    circles: tuple[tuple[float, float, float], ...]
    label: tuple[str, ...]
    width: float
    height: float


class PlacedFigure(ByValue, frozen=True):
    """A figure and where its lower left lies on the pattern, in mm, y up."""

    figure: Figure
    x: float
    y: float


class Pattern(ByValue, frozen=True):
    """All figures of a design on one plane, in mm; ``bar`` is a line to check the print by."""

    title: tuple[str, ...]
    placed: tuple[PlacedFigure, ...]
    bar: tuple[float, float, float]
    width: float
    height: float


def pattern(cuts: CutList) -> Pattern:
    """Return the pattern of a cut list's flat pieces; without figures where it has none."""
    amounts = Amounts(cuts.design.units == "metric")
    figures = [_figure(cut, amounts) for group in cuts.flats for cut in group.cuts]
    length, name = BAR[amounts.metric]
    title = (
        f"{cuts.design.name}: full-size pattern",
        f"Print at 100 %. The line below is {name} long: measure it before you cut.",
        "Full line: outer face. Dashed: inner face. Cut outside the full line, blade tilted.",
    )
    top = (len(title) + 2) * _LINE
    placed, width, height = _in_rows(figures)
    width = max(width, 2.0 * MARGIN + max(len(text) for text in title) * _LETTER)
    total = height + top + MARGIN
    moved = tuple(PlacedFigure(one.figure, one.x, one.y + height) for one in placed)
    return Pattern(title, moved, (MARGIN, height + _LINE, length), width, total)


def _figure(cut: FlatCut, amounts: Amounts) -> Figure:
    piece = cut.piece
    inner = np.empty((0, 2))
    holes: tuple[Array, ...] = ()
    circles: list[tuple[float, float, float]] = []
    if isinstance(piece, SawnPanel):
        outline, inner = piece.face_at(0.0), piece.face_at(piece.thickness)
    else:
        outline, holes = piece.outline, piece.holes
        if piece.sides == 0:
            circles = [(0.0, 0.0, piece.length / 2.0)]
            circles += [(0.0, 0.0, float(hole[:, 0].max())) for hole in holes]
    corners = np.vstack([outline, inner])
    if circles:
        corners = np.array([[-1.0, -1.0], [1.0, 1.0]]) * circles[0][2]
        outline, holes = np.empty((0, 2)), ()
    low = corners.min(axis=0)
    size = np.ptp(corners, axis=0) * 1000.0
    return Figure(
        _from(outline, low),
        _from(inner, low),
        tuple(_from(hole, low) for hole in holes),
        tuple(
            ((x - low[0]) * 1000.0, (y - low[1]) * 1000.0, radius * 1000.0)
            for x, y, radius in circles
        ),
        _label(cut, amounts),
        float(size[0]),
        float(size[1]),
    )


def _from(points: Array, low: Array) -> Array:
    return (points - low) * 1000.0 if len(points) else points


def _label(cut: FlatCut, amounts: Amounts) -> tuple[str, ...]:
    piece = cut.piece
    found = [flat_head(cut), face_words(piece, amounts)]
    if isinstance(piece, SawnPanel):
        sides = {deg(tilt, 2) for tilt in (piece.edges.left, piece.edges.right) if tilt}
        if piece.bevel > 0.0:
            found.append(f"bevel {deg(piece.bevel, 2)}")
        elif sides:
            found.append(f"long edges {' and '.join(sorted(sides))}")
        ends = {deg(abs(tilt)) for tilt in (piece.edges.bottom, piece.edges.top) if tilt}
        if ends:
            found.append(f"ends {' and '.join(sorted(ends))}")
    else:
        found.append("edges square")
    stuff = f"{amounts.thickness(piece.thickness)} {material_of(cut.part.material)}"
    return (*found, stuff)


def _in_rows(figures: Sequence[Figure]) -> tuple[list[PlacedFigure], float, float]:
    """Return figures in rows from the top down (y negative), and the width and height they take."""
    placed: list[PlacedFigure] = []
    x, top, deep, wide = MARGIN, 0.0, 0.0, 0.0
    for figure in figures:
        across = max(figure.width, max(len(text) for text in figure.label) * _LETTER)
        if x > MARGIN and x + across > _WIDEST:
            x, top, deep = MARGIN, top - deep, 0.0
        placed.append(PlacedFigure(figure, x, top - MARGIN - figure.height))
        deep = max(deep, figure.height + (len(figure.label) + 1) * _LINE + 2.0 * MARGIN)
        x += across + MARGIN
        wide = max(wide, x)
    return placed, wide, deep - top
