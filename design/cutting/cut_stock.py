"""Like pieces gathered by the stock that they come from, and laid out on it."""

from collections.abc import Sequence
from itertools import pairwise
from math import ceil

from ...materials.bought import (
    SheetSize,
    UnitSystem,
    lumber_lengths,
    nominal_size,
    sheet_sizes,
    sold_as,
)
from ..model import Part
from .blanks import ROOM, Blank, saw_gap
from .boards import SawnBoard
from .cut_pieces import Extra, FlatCut, SheetGroup, StickCut, StickGroup
from .lumber_cuts import Run, lay_out
from .nesting import Layout, nest
from .panels import SawnPanel

MICRON = 6
"""Sizes alike to so many decimals of a metre are of one stock."""


def sheet_groups(
    cuts: Sequence[FlatCut], system: UnitSystem, kerf: float
) -> tuple[SheetGroup, ...]:
    """Return flat pieces by material and thickness, laid out on sheets where it is sold so."""
    groups: dict[tuple[str, float], list[FlatCut]] = {}
    for cut in cuts:
        key = (_stuff(cut.part), round(cut.piece.thickness, MICRON))
        groups.setdefault(key, []).append(cut)
    return tuple(_sheet_group(group, system, kerf) for group in groups.values())


def stick_groups(
    cuts: Sequence[StickCut], system: UnitSystem, kerf: float
) -> tuple[StickGroup, ...]:
    """Return sticks by material and section, laid out along lumber where it is sold so."""
    groups: dict[tuple[object, ...], list[StickCut]] = {}
    for cut in cuts:
        stick = cut.stick
        sizes = (round(size, MICRON) for size in (stick.thick, stick.wide, stick.wall or 0.0))
        groups.setdefault((_stuff(cut.part), *sizes), []).append(cut)
    return tuple(_stick_group(group, system, kerf) for group in groups.values())


def _sheet_group(cuts: Sequence[FlatCut], system: UnitSystem, kerf: float) -> SheetGroup:
    """Return pieces of one stock laid out on sheets, those larger than a sheet in parts."""
    first = cuts[0]
    material, thickness = first.part.material, first.piece.thickness
    area = sum(_face_area(cut) * cut.count for cut in cuts)
    if sold_as(material) != "sheet":
        there = sum(
            cut.count * cut.piece.volume for cut in cuts if isinstance(cut.piece, SawnBoard)
        )
        area = sum(_face_area(c) * c.count for c in cuts if isinstance(c.piece, SawnPanel))
        return SheetGroup(material, thickness, tuple(cuts), area + there / thickness)
    sizes = sheet_sizes(system)
    fitted = tuple(_fitted(cut, sizes) for cut in cuts)
    blanks = [
        blank for kind, cut in enumerate(fitted) for blank in _blanks(kind, cut, sizes[0], kerf)
    ]
    layout = nest(blanks, sizes[0].width, sizes[0].length)
    free = _either_way(blanks, layout)
    return SheetGroup(material, thickness, fitted, area, sizes[0], layout, free)


def _either_way(blanks: Sequence[Blank], held: Layout) -> int:
    """Return the sheets that would do if rectangles may lie either way: kind by kind, if fewer."""
    best, now = held, list(blanks)
    for kind in dict.fromkeys(blank.kind for blank in blanks):
        if len(best.sheets) <= best.least_sheets:
            break
        tried = [_turned(blank) if blank.kind == kind else blank for blank in now]
        if any(blank.widest > held.width or blank.length > held.length for blank in tried):
            continue
        layout = nest(tried, held.width, held.length)
        if (len(layout.sheets), layout.used) < (len(best.sheets), best.used):
            best, now = layout, tried
    return len(best.sheets)


def _turned(blank: Blank) -> Blank:
    if abs(blank.bottom - blank.top) > ROOM:
        return blank
    return Blank(blank.kind, blank.length, blank.length, blank.bottom, blank.gap)


def _face_area(cut: FlatCut) -> float:
    """Return the greater face's area in m2: of a board its outline less holes, of a panel outer."""
    if isinstance(cut.piece, SawnPanel):
        return (cut.piece.bottom + cut.piece.top) / 2.0 * cut.piece.length
    return cut.piece.volume / cut.piece.thickness / cut.piece.filled


def _fitted(cut: FlatCut, sizes: Sequence[SheetSize]) -> FlatCut:
    """Return how a piece goes on the usual sheet: whole, turned across the grain, or in parts."""
    bottom, top, length = cut.blank()
    wide, usual = max(bottom, top), sizes[0]
    if _goes_on(wide, length, usual):
        return cut
    if _goes_on(length, wide, usual):
        return FlatCut(cut.part, cut.piece, cut.count, turned=True)
    whole = next((size for size in sizes if _goes_on(wide, length, size)), None)
    across, along = (
        ceil(size / sold - ROOM) for size, sold in ((wide, usual.width), (length, usual.length))
    )
    return FlatCut(cut.part, cut.piece, cut.count, across, along, whole_on=whole)


def _goes_on(wide: float, length: float, size: SheetSize) -> bool:
    return wide <= size.width + ROOM and length <= size.length + ROOM


def _blanks(kind: int, cut: FlatCut, size: SheetSize, kerf: float) -> list[Blank]:
    bottom, top, length = cut.blank()
    gap = saw_gap(kerf, cut.piece.bevel)
    if cut.turned:
        return [Blank(kind, length, length, max(bottom, top), gap)] * cut.count
    if cut.across > 1:
        wide = max(bottom, top) / cut.across
        one = Blank(kind, wide, wide, length / cut.along, gap)
        return [one] * (cut.count * cut.across * cut.along)
    steps = [bottom + (top - bottom) * k / cut.along for k in range(cut.along + 1)]
    return [
        Blank(kind, low, high, length / cut.along, gap)
        for low, high in pairwise(steps)
        for _ in range(cut.count)
    ]


def _stick_group(cuts: Sequence[StickCut], system: UnitSystem, kerf: float) -> StickGroup:
    stick, material = cuts[0].stick, cuts[0].part.material
    lumber = None
    sawn = stick.wide > 0.0 and stick.wall is None
    if sawn and (material is None or sold_as(material) == "board"):
        runs = [
            Run(k, cut.count, cut.stick.long_point, cut.stick.short_point, cut.stick.mitre)
            for k, cut in enumerate(cuts)
        ]
        lumber = lay_out(runs, lumber_lengths(system), kerf)
    nominal = nominal_size(stick.thick, stick.wide) if sawn else None
    return StickGroup(material, stick.thick, stick.wide, stick.wall, nominal, tuple(cuts), lumber)


def _stuff(part: Part | Extra) -> str:
    """Return what tells materials apart: the name, or the density where there is none."""
    return part.material if part.material is not None else f"{part.density}"
