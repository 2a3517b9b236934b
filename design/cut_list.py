"""All that has to be sawn for a design: panels, boards, sticks, blocks, and what to buy for it."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from ..materials.bought import (
    SheetSize,
    System,
    lumber_lengths,
    nominal_size,
    saw_kerf,
    sheet_sizes,
    sold_as,
)
from .blocks import Block, block_of
from .boards import Board, boards_of
from .lumber_cuts import Lumber, Run, lay_out
from .model import Design, Part
from .nesting import ROOM, Blank, Layout, nest, saw_gap
from .panelled import panels_of
from .panels import Panel
from .sticks import Stick, sticks_of
from .structure import Structure

MICRON = 6
"""Sizes alike to so many decimals of a metre are of one stock."""


@dataclass(frozen=True)
class FlatCut:
    """Like flat pieces of one part, ``count`` over all its copies.

    On the sheets it is laid out in ``across`` by ``along`` pieces, more than one where it is larger
    than the sheet; ``turned`` says that its length lies across the grain.
    """

    part: Part
    piece: Panel | Board
    count: int
    across: int = 1
    along: int = 1
    turned: bool = False
    whole_on: SheetSize | None = None

    @property
    def seams(self) -> int:
        """Return how many seams each piece has."""
        return self.across * self.along - 1

    def blank(self) -> tuple[float, float, float]:
        """Return bottom, top and length in m of its blank: length lies along the grain.

        A rectangle's longer side does, a tapered piece's length along the slope.
        """
        bottom, top, length = self.piece.blank()
        if abs(bottom - top) < ROOM and bottom > length:
            return length, length, bottom
        return bottom, top, length


@dataclass(frozen=True)
class StickCut:
    """Like sticks of one part, ``count`` over all its copies."""

    part: Part
    stick: Stick
    count: int


@dataclass(frozen=True)
class OtherCut:
    """A part that is neither panels, boards nor sticks; its block where it is solid."""

    part: Part
    count: int
    volume: float
    block: Block | None


@dataclass(frozen=True)
class SheetGroup:
    """Flat pieces of one material and thickness (m), on sheets where it is sold as such.

    ``area`` in m2 is that of all the outer faces. ``free_sheets`` would do if the grain of
    rectangles may run either way.
    """

    material: str | None
    thickness: float
    cuts: tuple[FlatCut, ...]
    area: float
    size: SheetSize | None = None
    layout: Layout | None = None
    free_sheets: int = 0

    @property
    def sheets(self) -> int:
        """Return the number of sheets."""
        return len(self.layout.sheets) if self.layout is not None else 0

    @property
    def waste(self) -> float:
        """Return the part of the sheets that goes into none of the pieces."""
        if self.layout is None or not self.sheets:
            return 0.0
        return 1.0 - self.area / (self.sheets * self.layout.width * self.layout.length)


@dataclass(frozen=True)
class StickGroup:
    """Sticks of one material and section (m), and the lumber to buy where it is sold as such."""

    material: str | None
    thick: float
    wide: float
    wall: float | None
    nominal: str | None
    cuts: tuple[StickCut, ...]
    lumber: Lumber | None


@dataclass(frozen=True)
class CutList:
    """What has to be sawn for a design, and from what. ``kerf`` of the saw in m."""

    structure: Structure
    system: System
    kerf: float
    flats: tuple[SheetGroup, ...]
    sticks: tuple[StickGroup, ...]
    others: tuple[OtherCut, ...]

    @property
    def design(self) -> Design:
        """Return the design."""
        return self.structure.design

    @property
    def sheets(self) -> int:
        """Return the number of all sheets."""
        return sum(group.sheets for group in self.flats)

    @property
    def waste(self) -> float | None:
        """Return the part of all sheets that goes into none of the pieces, None without sheets."""
        laid = [group for group in self.flats if group.layout is not None and group.sheets]
        bought = sum(
            group.sheets * group.layout.width * group.layout.length
            for group in laid
            if group.layout is not None
        )
        return 1.0 - sum(group.area for group in laid) / bought if laid else None

    def volumes(self) -> Mapping[str, float]:
        """Return the volume in m3 of all pieces of each part, by its name."""
        found: Counter[str] = Counter()
        for flat in (cut for group in self.flats for cut in group.cuts):
            found[flat.part.name] += flat.count * flat.piece.volume  # pyright: ignore[reportArgumentType]
        for stick in (cut for group in self.sticks for cut in group.cuts):
            found[stick.part.name] += stick.count * stick.stick.volume  # pyright: ignore[reportArgumentType]
        for other in self.others:
            found[other.part.name] += other.volume  # pyright: ignore[reportArgumentType]
        return found


def cut_list(structure: Structure) -> CutList:
    """Return all that has to be sawn for a structure, laid out on what is sold in its units."""
    system: System = "metric" if structure.design.units == "metric" else "imperial"
    kerf = saw_kerf(system)
    copies = Counter(body.part for body in structure.bodies)
    flats: list[FlatCut] = []
    sticks: list[StickCut] = []
    others: list[OtherCut] = []
    for index, part in enumerate(structure.design.parts):
        many, shape = copies[index], part.shape
        cast = sold_as(part.material) == "other"
        pieces = () if cast else (panels_of(shape) or ())
        lengths = () if cast or pieces else sticks_of(shape)
        boards = () if cast or pieces or lengths else boards_of(shape)
        flats += [FlatCut(part, piece, many * piece.copies) for piece in (*pieces, *boards)]
        sticks += [StickCut(part, stick, many * stick.copies) for stick in lengths]
        if not (pieces or lengths or boards):
            volume = float(structure.part_volume[index])
            others.append(OtherCut(part, many, volume, block_of(shape)))
    return CutList(
        structure,
        system,
        kerf,
        _sheet_groups(flats, system, kerf),
        _stick_groups(sticks, system, kerf),
        tuple(others),
    )


def _sheet_groups(cuts: Sequence[FlatCut], system: System, kerf: float) -> tuple[SheetGroup, ...]:
    groups: dict[tuple[str, float], list[FlatCut]] = {}
    for cut in cuts:
        key = (_stuff(cut.part), round(cut.piece.thickness, MICRON))
        groups.setdefault(key, []).append(cut)
    return tuple(_sheet_group(group, system, kerf) for group in groups.values())


def _sheet_group(cuts: Sequence[FlatCut], system: System, kerf: float) -> SheetGroup:
    """Return pieces of one stock laid out on sheets, those larger than a sheet in parts."""
    first = cuts[0]
    material, thickness = first.part.material, first.piece.thickness
    area = sum(_face_area(cut) * cut.count for cut in cuts)
    if sold_as(material) != "sheet":
        return SheetGroup(material, thickness, tuple(cuts), area)
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
    if isinstance(cut.piece, Panel):
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


def _stick_groups(cuts: Sequence[StickCut], system: System, kerf: float) -> tuple[StickGroup, ...]:
    groups: dict[tuple[object, ...], list[StickCut]] = {}
    for cut in cuts:
        stick = cut.stick
        sizes = (round(size, MICRON) for size in (stick.thick, stick.wide, stick.wall or 0.0))
        groups.setdefault((_stuff(cut.part), *sizes), []).append(cut)
    return tuple(_stick_group(group, system, kerf) for group in groups.values())


def _stick_group(cuts: Sequence[StickCut], system: System, kerf: float) -> StickGroup:
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


def _stuff(part: Part) -> str:
    """Return what tells materials apart: the name, or the density where there is none."""
    return part.material if part.material is not None else f"{part.density}"
