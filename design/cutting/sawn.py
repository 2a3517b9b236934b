"""How the body of each shape is sawn: as panels, sticks or boards, and else from which block."""

from ...units.frozen import ByIdentity
from ..shapes.bodies import Shell, Solid
from ..shapes.boxes import Box
from ..shapes.cone import Cone
from ..shapes.cutout import Cutout
from ..shapes.flat import Frame, Panel, Plate
from ..shapes.gables import Gable
from ..shapes.member import Member
from ..shapes.rotor import Rotor
from ..shapes.shape import Shape
from .blocks import Block, box_block, regular_block
from .boards import (
    SawnBoard,
    blade_boards,
    figure_board,
    plate_board,
    slab_boards,
    standing_board,
)
from .panelled import Panels, box_panels, cone_panels, gable_panels, shell_panels
from .sticks import SawnStick, box_sticks, frame_sticks, member_stick, post_sticks


class Sawn(ByIdentity, frozen=True):
    """What one body is sawn from: the first of ``panels``, ``sticks`` and ``boards`` that it has.

    Where it has none it may be a ``block`` with faces; what is turned, cast or bought has nothing.
    """

    panels: Panels = ()
    sticks: tuple[SawnStick, ...] = ()
    boards: tuple[SawnBoard, ...] = ()
    block: Block | None = None


NOT_SAWN = Sawn()


def sawn_from(shape: Shape) -> Sawn:
    """Return how a shape is sawn: what stands in no case here is not."""
    match shape:
        case Shell() as shell:
            return Sawn(shell_panels(shell))
        case Cone() as cone:
            solid = cone.wall is None
            block = regular_block(cone.sides, cone.bottom, 0.0, cone.height) if solid else None
            return Sawn(cone_panels(cone), block=block)
        case Gable() as gable:
            return Sawn(gable_panels(gable))
        case Box() as box:
            block = box_block(box) if box.wall is None else None
            return Sawn(box_panels(box), box_sticks(box), slab_boards(box), block)
        case Solid(sides, bottom, top, height) as post:
            block = regular_block(sides, bottom, top, height)
            return Sawn(sticks=post_sticks(post), block=block)
        case Frame() as frame:
            return Sawn(sticks=frame_sticks(frame))
        case Member() as member:
            return Sawn(sticks=(member_stick(member),))
        case Plate() as plate:
            return Sawn(boards=(plate_board(plate),))
        case Panel() as panel:
            return Sawn(boards=(standing_board(panel),))
        case Cutout() as cutout:
            return Sawn(boards=(figure_board(cutout),))
        case Rotor() as rotor:
            return Sawn(boards=(blade_boards(rotor),))
        case _:
            return NOT_SAWN
