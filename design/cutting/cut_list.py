"""All that has to be sawn for a design: panels, boards, sticks, blocks, and what to buy for it."""

from collections import Counter
from collections.abc import Mapping, Sequence

from ...materials.bought import UnitSystem, saw_kerf, sold_as
from ...units.frozen import ByValue
from ..model import Design, Part
from ..structure import Structure
from .cut_pieces import FlatCut, OtherCut, SheetGroup, StickCut, StickGroup
from .cut_stock import sheet_groups, stick_groups
from .sawn import sawn_from


class CutList(ByValue, frozen=True):
    """What has to be sawn for so many ``pieces`` of a design, and from what; ``kerf`` in m."""

    structure: Structure
    system: UnitSystem
    kerf: float
    flats: tuple[SheetGroup, ...]
    sticks: tuple[StickGroup, ...]
    others: tuple[OtherCut, ...]
    pieces: int = 1

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
        """Return the volume in m3 of all that is sawn for each part, by its name; no blocks."""
        found: Counter[str] = Counter()
        for flat in (cut for group in self.flats for cut in group.cuts):
            found[flat.part.name] += flat.count * flat.piece.volume  # pyright: ignore[reportArgumentType]
        for stick in (cut for group in self.sticks for cut in group.cuts):
            if isinstance(stick.part, Part):
                found[stick.part.name] += stick.count * stick.stick.volume  # pyright: ignore[reportArgumentType]
        for other in self.others:
            found[other.part.name] += other.volume  # pyright: ignore[reportArgumentType]
        return found


def cut_list(structure: Structure, number: int = 1, extra: Sequence[StickCut] = ()) -> CutList:
    """Return all that has to be sawn for so many of a structure, laid out on what is sold.

    ``extra`` is what is sawn beside its parts, for all of them: blocks and cleats.
    """
    system: UnitSystem = "metric" if structure.design.units == "metric" else "imperial"
    kerf = saw_kerf(system)
    copies = Counter(body.part for body in structure.bodies)
    flats: list[FlatCut] = []
    sticks: list[StickCut] = []
    others: list[OtherCut] = []
    for index, part in enumerate(structure.design.parts):
        many, shape = number * copies[index], part.shape
        cast = sold_as(part.material) == "other"
        how = sawn_from(shape)
        pieces = () if cast else how.panels
        lengths = () if cast or pieces else how.sticks
        boards = () if cast or pieces or lengths else how.boards
        flats += [FlatCut(part, piece, many * piece.copies) for piece in (*pieces, *boards)]
        sticks += [StickCut(part, stick, many * stick.copies) for stick in lengths]
        if not (pieces or lengths or boards):
            volume = number * float(structure.part_volume[index])
            others.append(OtherCut(part, many, volume, how.block))
    return CutList(
        structure,
        system,
        kerf,
        sheet_groups(flats, system, kerf),
        stick_groups([*sticks, *extra], system, kerf),
        tuple(others),
        number,
    )
