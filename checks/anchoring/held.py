"""What holds a piece down: its anchors and guys where they stand, and what each holds."""

from collections.abc import Sequence
from math import atan2, cos, sin

import numpy as np

from ...design.faults import DesignError, Fault
from ...design.model import Design
from ...design.structure import Structure
from ...materials import anchors as kinds
from ...materials import guy_lines
from ...materials.grounds import Ground
from ...statics.contacts.holds_down import anchor_points, guy_tops, near_a_guy, ways_out
from ...statics.footings import HoldDown
from ...statics.tables.anchor_table import AnchorRow, GuyRow
from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from . import guys
from .capacity.anchor_capacity import Holding, anchor_capacity

TIED_ON = ("eye", "washer")
"""Heads that hold a foot whichever way it moves: shackled or roped on, or bolted through."""


class Anchors(ByIdentity, frozen=True):
    """Anchors of one row where they stand (n, 2) in m, and what each holds.

    ``outward`` (n, 2) is which way from the foot each stands against it; 0 of what goes through
    it, or is tied on by an eye, and so holds every way.
    """

    name: str
    kind: str
    points: Array
    outward: Array
    holds: Holding


class Guys(ByIdentity, frozen=True):
    """Guys of one row: attached at ``tops`` (n, 3), running level along ``outward`` (n, 2).

    ``elevation`` above level in rad, ``length`` in m, ``line`` what each line holds in N,
    ``stiffness`` in N/m, ``holds`` its ground anchor.
    """

    name: str
    tops: Array
    outward: Array
    elevation: float
    length: float
    line: float
    stiffness: float
    holds: Holding

    @property
    def along(self) -> Array:
        """Return the unit vectors (n, 3) from the tops down the lines."""
        down = np.full((len(self.tops), 1), -sin(self.elevation))
        return np.hstack([cos(self.elevation) * self.outward, down])

    def held(self, soil: float) -> float:
        """Return how hard in N one may be pulled: its line's hold, or ``soil`` x its anchor's."""
        return min(self.line, soil * self.holds.along(self.elevation))


class Held(ByValue, frozen=True):
    """All that holds a piece down."""

    anchors: tuple[Anchors, ...]
    guys: tuple[Guys, ...]

    def __bool__(self) -> bool:
        return bool(self.anchors or self.guys)

    @property
    def points(self) -> Array:
        """Return where all anchors stand (n, 2) in m."""
        return np.vstack([np.empty((0, 2)), *(row.points for row in self.anchors)])

    @property
    def outward(self) -> Array:
        """Return which way (n, 2) from the foot each anchor stands against it, as of a row."""
        return np.vstack([np.empty((0, 2)), *(row.outward for row in self.anchors)])

    def hold_down(self, structure: Structure) -> HoldDown | None:
        """Return how it draws on the piece; None where nothing does.

        Stakes at the foot are slack until a guy stretches: beside guys they hold nothing down.
        """
        if not self:
            return None
        tops = np.vstack([np.empty((0, 3)), *(row.tops for row in self.guys)])
        return HoldDown(
            np.empty((0, 2)) if self.guys else self.points,
            tops,
            tuple(near.body for near in near_a_guy(structure, tops)),
            np.vstack([np.empty((0, 3)), *(row.along for row in self.guys)]),
            np.concatenate([np.zeros(0), *(np.full(len(r.tops), r.stiffness) for r in self.guys)]),
        )

    def each(self, value: str) -> Array:
        """Return a value of `Holding` for every anchor (n,)."""
        return np.concatenate(
            [np.full(len(row.points), float(getattr(row.holds, value))) for row in self.anchors]
        )


def held_by(design: Design, structure: Structure, ground: Ground) -> Held:
    """Return what holds a design down. DesignError where an anchor does not suit the ground."""
    faults: list[Fault] = []

    def holds(
        name: str,
        kind: str,
        measured: float | None,
        saturated: bool | None = None,
        depth: float | None = None,
    ) -> Holding | None:
        try:
            return anchor_capacity(
                kinds.find_anchor(kind), ground, saturated=saturated, measured=measured, depth=depth
            )
        except ValueError:
            wanted = "bolts into the slab" if not ground.stakes_possible else "something driven"
            faults.append(
                Fault(
                    design.file,
                    design.lines.get((name, "kind")),
                    name,
                    "kind",
                    kind,
                    f"an anchor that suits {ground.name!r}",
                    wanted,
                )
            )
            return None

    rows = design.several(AnchorRow)
    places = [anchor_points(structure, row) for row in rows]
    nearest = _nearest(places)
    anchors: list[Anchors] = []
    for row, points, apart in zip(rows, places, nearest, strict=True):
        found = holds(row.name, row.kind, row.measured, row.saturated, row.depth)
        if found is not None:
            tied_on = kinds.find_anchor(row.kind).head.name in TIED_ON
            out = np.zeros_like(points) if tied_on else ways_out(structure, points)
            anchors.append(Anchors(row.name, row.kind, points, out, found.spaced(apart)))
    ropes: list[Guys] = []
    for row in design.several(GuyRow):
        elevation = atan2(row.height, row.radius - row.out)
        found = holds(row.name, row.anchor, row.measured)
        if found is not None:
            ropes.append(_guys(structure, row, elevation, found))
    if faults:
        raise DesignError(tuple(faults))
    return Held(tuple(anchors), tuple(ropes))


def _nearest(places: Sequence[Array]) -> list[float]:
    """Return for each row how near in m any of its anchors (n, 2) stands to another one."""
    if not places:
        return []
    every = np.vstack(places)
    apart = np.linalg.norm(every[:, None] - every[None], axis=-1)
    np.fill_diagonal(apart, np.inf)
    least = apart.min(axis=1, initial=np.inf)
    ends = np.cumsum([len(points) for points in places])
    return [float(own.min()) for own in np.split(least, ends[:-1])]


def _guys(structure: Structure, row: GuyRow, elevation: float, found: Holding) -> Guys:
    tops, outward = guy_tops(structure, row)
    length = float(np.hypot(row.height, row.radius - row.out))
    line = guy_lines.find_line(row.line)
    end = guy_lines.end(row.end) if row.end is not None else None
    return Guys(
        row.name,
        tops,
        outward,
        elevation,
        length,
        guys.allowable(line, end),
        float(guys.line_stiffness(line.stiffness, length)),
        found,
    )
