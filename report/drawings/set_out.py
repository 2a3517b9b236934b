"""What is set out to hold a piece, as its page lists and draws it: places and kinds."""

from math import cos

import numpy as np

from ...checks.anchoring.held import Held, held_by
from ...checks.examination import Examination
from ...checks.tied import Way
from ...design.placing import about_z
from ...materials import anchors as kinds
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ...units.arrays import Array
from ...units.frozen import ByIdentity, replace


class SetOut(ByIdentity, frozen=True):
    """What holds a piece as drawn, from above, in the axes of the design's file, in m.

    ``anchors`` (n, 2) stand at its foot; each of ``guys`` (2, 2) runs from the piece to the ground.
    ``middle`` (2,) is that of its foot, from which ``reaches`` (n,) are measured. ``anchor_rows``
    and ``guy_rows`` are those of a file, with what each row holds in ``held``.
    """

    held: Held
    anchor_rows: tuple[AnchorRow, ...]
    guy_rows: tuple[GuyRow, ...]
    middle: Array
    anchors: Array
    guys: Array

    @property
    def ends(self) -> Array:
        """Return where something goes into the ground (n, 2) in m."""
        return np.vstack([self.anchors, self.guys[:, 1]])

    @property
    def reaches(self) -> Array:
        """Return how far each of these is from the middle of the foot (n,) in m."""
        return np.hypot(*(self.ends - self.middle).T)

    @property
    def groups(self) -> frozenset[str]:
        """Return the groups of ground anchors that are used."""
        names = [row.kind for row in self.anchor_rows] + [row.anchor for row in self.guy_rows]
        return frozenset(kinds.find_anchor(name).group for name in names)


def set_out(found: Examination) -> SetOut:
    """Return what holds a piece by its verdict: its own, else what was found to do."""
    held, anchor_rows, guy_rows = _held(found)
    back = about_z(-found.design.turn)[:2, :2]
    foot = found.structure.footprint @ back.T
    middle = 0.5 * (foot.min(axis=0) + foot.max(axis=0)) if len(foot) else np.zeros(2)
    ropes = [
        (top[:2], top[:2] + row.length * cos(row.elevation) * out)
        for row in held.guys
        for top, out in zip(row.tops, row.outward, strict=True)
    ]
    guys = np.array(ropes).reshape(-1, 2, 2) @ back.T
    return SetOut(held, anchor_rows, guy_rows, middle, held.points @ back.T, guys)


def _held(found: Examination) -> tuple[Held, tuple[AnchorRow, ...], tuple[GuyRow, ...]]:
    """Return what holds it, and its rows; nothing where nothing is to be set, or mended first."""
    verdict, design = found.verdict, found.design
    tied, nothing = verdict.tied, (Held((), ()), (), ())
    if found.posts is not None or design.laid_down or not verdict.may_be_sold:
        return nothing
    match tied.ways[0] if tied.ways else None:
        case Way.OWN:
            return found.held, design.several(AnchorRow), design.several(GuyRow)
        case Way.ANCHORS if tied.anchors is not None:
            rows = tied.anchors.held.anchors[-1:]
            return Held(rows, ()), (tied.anchors.row,), ()
        case Way.GUYS if tied.guys is not None:
            bare = replace(design, tables={**design.tables, AnchorRow: (), GuyRow: ()})
            tied_down = tied.guys.added_to(bare)
            held = held_by(tied_down, found.structure, found.standing.ground)
            return held, tied_down.several(AnchorRow), tied_down.several(GuyRow)
        case _:
            return nothing
