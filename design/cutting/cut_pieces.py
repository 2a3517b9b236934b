"""What has to be sawn, piece by piece, and the stock that like pieces come from."""

from ...materials.bought import SheetSize
from ...units.frozen import ByValue
from ..model import Part
from .blanks import ROOM
from .blocks import Block
from .boards import SawnBoard
from .lumber_cuts import LumberToBuy
from .nesting import Layout
from .panels import SawnPanel
from .sticks import SawnStick


class FlatCut(ByValue, frozen=True):
    """Like flat pieces of one part, ``count`` over all its copies.

    On the sheets it is laid out in ``across`` by ``along`` pieces, more than one where it is larger
    than the sheet; ``turned`` says that its length lies across the grain.
    """

    part: Part
    piece: SawnPanel | SawnBoard
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


class Extra(ByValue, frozen=True):
    """What is sawn for a joint or for a part's seams, by its name; of itself it is no part."""

    name: str
    material: str
    density: None = None


class StickCut(ByValue, frozen=True):
    """Like sticks of one part, ``count`` over all its copies."""

    part: Part | Extra
    stick: SawnStick
    count: int


class OtherCut(ByValue, frozen=True):
    """A part that is neither panels, boards nor sticks; its block where it is solid."""

    part: Part
    count: int
    volume: float
    block: Block | None


class SheetGroup(ByValue, frozen=True):
    """Flat pieces of one material and thickness (m), on sheets where it is sold as such.

    ``area`` in m2 is that of all the outer faces, of boards without the gaps between slats.
    ``free_sheets`` would do if the grain of rectangles may run either way.
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


class StickGroup(ByValue, frozen=True):
    """Sticks of one material and section (m), and the lumber to buy where it is sold as such."""

    material: str | None
    thick: float
    wide: float
    wall: float | None
    nominal: str | None
    cuts: tuple[StickCut, ...]
    lumber: LumberToBuy | None
