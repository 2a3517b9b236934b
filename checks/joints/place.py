"""One joint where one copy of a part meets another."""

from ...statics.contacts.meeting import Face
from ...statics.tables.joint_table import JointRow
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from .fastener_sets import FastenerSet


class JointPlace(ByIdentity, frozen=True):
    """One joint where one copy meets another: its face and its fasteners (n, 3).

    ``of`` and ``to`` are bodies by index. With blocks both parts are fastened to them: two ``sets``
    of fasteners at the same points, each of which carries all; else one.
    """

    row: JointRow
    of: int
    to: int
    face: Face
    points: Array
    sets: tuple[FastenerSet, ...]
    laid_out: bool
