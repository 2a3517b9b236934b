"""What fastens a piece, to be bought and sawn: fasteners, blocks, cleats, and faces to glue."""

from collections import Counter
from collections.abc import Iterator, Sequence
from math import ceil, cos, pi

import numpy as np
from numpy.typing import NDArray

from ...design import plane
from ...design.cutting.cut_pieces import Extra, StickCut
from ...design.cutting.sawn import sawn_from
from ...design.cutting.sticks import SawnStick
from ...design.shapes.forms import Walls
from ...design.shapes.shape import Shape
from ...design.structure import Structure
from ...loads.combinations import resistance_basis
from ...loads.wind.site import Site
from ...materials.bought import NOMINAL_TOLERANCE
from ...materials.fastener import Fastener
from ...materials.stock import lumber_sizes
from ...statics.tables.seam_table import SeamRow
from ...units.arrays import Array, distinct
from ...units.frozen import ByValue
from ..fasteners.fastener_sets import BLOCKS, FastenerSet, block_thickness
from ..fasteners.joint_places import JointPlace
from ..seams.held_together import as_fastened
from ..seams.seam_fasteners import room_along_a_seam
from ..seams.tubes import panel_widths, slant
from ..timber.books import titled

_SAME_WAY = 0.5
"""Directions whose cosine is greater are along one axis of a block."""


class FastenerTally(ByValue, frozen=True):
    """Fasteners of one kind, and how many each joint and each part's seams take.

    ``washer`` is the diameter in m of the two washers under head and nut of a bolt.
    """

    fastener: Fastener
    uses: tuple[tuple[str, int], ...]
    washer: float | None = None

    @property
    def count(self) -> int:
        """Return how many are driven in all."""
        return sum(count for _, count in self.uses)


class Hardware(ByValue, frozen=True):
    """What fastens so many pieces: fasteners, what is sawn for them, and what may be glued.

    ``glued`` in m2 is of the faces of joints that the file glues, ``mitres`` of all seams between
    panels and mitres of frames.
    """

    driven: tuple[FastenerTally, ...]
    sawn: tuple[StickCut, ...]
    glued: float
    mitres: float


def hardware(structure: Structure, pieces: int = 1) -> Hardware:
    """Return what fastens so many of a structure. DesignError as ``as_fastened``."""
    basis = resistance_basis(structure.design.table(Site))
    joints, seams = as_fastened(structure, basis)
    rows = [one.row for one in seams]
    ends = [
        room_along_a_seam(one.row, one.driven.side, titled(one.holds.book)).end for one in seams
    ]
    driven: dict[tuple[str, float | None], tuple[Fastener, Counter[str]]] = {}
    for fastener, washer, name, count in (*_of_joints(joints), *_of_seams(structure, rows, ends)):
        _, uses = driven.setdefault((fastener.name, washer), (fastener, Counter[str]()))
        uses[name] += pieces * count
    return Hardware(
        tuple(
            FastenerTally(fastener, tuple(uses.items()), washer)
            for (_, washer), (fastener, uses) in driven.items()
        ),
        (*_blocks(joints, pieces), *_cleats(structure, rows, pieces)),
        pieces * sum(one.face.area.area for one in joints if one.row.glue),
        pieces * sum(_mitres(body.shape) for body in structure.bodies),
    )


_Use = tuple[Fastener, float | None, str, int]


def _of_joints(joints: Sequence[JointPlace]) -> Iterator[_Use]:
    for one in joints:
        row = one.row
        yield row.fastener, row.washer, row.name, len(one.points) * len(one.sets)


def _of_seams(
    structure: Structure, rows: Sequence[SeamRow], ends: Sequence[float]
) -> Iterator[_Use]:
    """Give the fasteners of seams: into a cleat from either panel, else into the next one's edge.

    The first and the last stand as near to the ends as they may, none farther apart than is said.
    """
    for row, end in zip(rows, ends, strict=True):
        walls, bodies = _seamed(structure, row.part)
        room = slant(walls) - 2.0 * end
        in_a_row = max(ceil(room / row.spacing - 1.0e-9), 1) + 1
        rows_ = 1 if row.cleat is None else 2
        yield row.fastener, None, row.part, bodies * panel_widths(walls)[0] * rows_ * in_a_row


def _seamed(structure: Structure, name: str) -> tuple[Walls, int]:
    bodies = [b for b in structure.bodies if structure.design.parts[b.part].name == name]
    walls = bodies[0].shape.walls()
    assert walls is not None
    return walls, len(bodies)


def _blocks(joints: Sequence[JointPlace], pieces: int) -> Iterator[StickCut]:
    """Give the blocks of each joint: one along each side on which fasteners stand."""
    found: dict[tuple[str, str, tuple[float, float]], Counter[float]] = {}
    for one in joints:
        if one.row.blocks is not None:
            key = (one.row.name, one.row.blocks, _block_section(one))
            for length in _block_lengths(one):
                found.setdefault(key, Counter())[round(length, 5)] += pieces
    for (name, wood, section), lengths in found.items():
        for length, count in sorted(lengths.items(), reverse=True):
            yield _stick("block", name, wood, section, length, count)


def _block_section(one: JointPlace) -> tuple[float, float]:
    """Return the section in m of a joint's blocks: thick enough for both rows of fasteners.

    Rows that stand square to each other go into it from two sides. It is exactly as thick as is
    gone through where the heads are in it, and else no thinner than a fastener reaches.
    """
    rows = [(each, _in_block(one, each)) for each in one.sets]
    first = one.sets[0].draws[0]
    along = [need for each, need in rows if abs(float(each.draws[0] @ first)) > _SAME_WAY]
    other = [need for each, need in rows if abs(float(each.draws[0] @ first)) <= _SAME_WAY]
    sides = [_widest(needs) for needs in (along, other or along)]
    return _lumber(*sides)


Need = tuple[float, bool]
"""How thick in m, and whether exactly."""


def _in_block(one: JointPlace, each: FastenerSet) -> Need:
    if each.head_in == BLOCKS:
        return each.driven.through, True
    reach = one.row.fastener.need("length") - each.driven.through
    return (reach if one.row.through else max(reach, block_thickness())), False


def _widest(needs: Sequence[Need]) -> Need:
    exact = [thick for thick, exactly in needs if exactly]
    return (max(exact), True) if exact else (max(thick for thick, _ in needs), False)


def _lumber(one: Need, other: Need) -> tuple[float, float]:
    """Return the section in m of the least lumber that does, either way round, else as needed."""

    def does(size: float, need: Need) -> bool:
        thick, exactly = need
        return (
            abs(size - thick) < NOMINAL_TOLERANCE if exactly else size >= thick - NOMINAL_TOLERANCE
        )

    fits = [
        tuple(sorted(size))
        for size in lumber_sizes().values()
        for a, b in (size, size[::-1])
        if does(a, one) and does(b, other)
    ]
    least = min(fits, key=lambda size: size[0] * size[1], default=sorted((one[0], other[0])))
    return least[0], least[1]


def _block_lengths(one: JointPlace) -> list[float]:
    """Return the length in m of each block: past its last fasteners by what keeps it whole.

    None is longer than the side along which it lies; sides of one length have blocks of one.
    """
    points = one.face.in_plane(one.points)
    book, wood = titled(one.sets[0].holds.book), one.sets[0].driven.main
    fastener, drilled = one.row.fastener, one.row.predrilled
    end = book.room(fastener, predrilled=drilled, slender=6.0, gravity=wood.gravity).end
    spans: dict[float, list[float]] = {}
    for along, room, these in _sides(one, points):
        on = points[these] @ along
        span = float(on.max() - on.min())
        spans.setdefault(round(room, 3), []).append(min(span + 2.0 * end, room))
    return [max(alike) for alike in spans.values() for _ in alike]


def _sides(one: JointPlace, points: Array) -> Iterator[tuple[Array, float, NDArray[np.intp]]]:
    """Give each side of a face that has fasteners: its direction (2,), length, and their indices.

    Of a ring it is the sides of its hole, since blocks stand inside.
    """
    rings = [
        np.asarray(ring)
        for piece in plane.pieces(one.face.area)
        for ring in ([h.coords for h in piece.interiors] or [piece.exterior.coords])
    ]
    starts = np.vstack([ring[:-1] for ring in rings])
    ways = np.vstack([np.diff(ring, axis=0) for ring in rings])
    longs = np.linalg.norm(ways, axis=1)
    ways = ways / np.maximum(longs, 1.0e-12)[:, None]
    off = points[:, None] - starts[None]
    at = np.clip((off * ways).sum(axis=2), 0.0, longs)
    near = np.linalg.norm(off - at[..., None] * ways, axis=2).argmin(axis=1)
    for side in distinct(near):
        yield ways[side], float(longs[side]), np.flatnonzero(near == side)


def _cleats(structure: Structure, rows: Sequence[SeamRow], pieces: int) -> Iterator[StickCut]:
    for row in rows:
        if row.cleat is None:
            continue
        walls, bodies = _seamed(structure, row.part)
        reach = row.fastener.need("length") - walls.wall
        need = max(reach, block_thickness()), False
        count = pieces * bodies * panel_widths(walls)[0]
        yield _stick("cleat", row.part, row.cleat, _lumber(need, need), slant(walls), count)


def _stick(
    face: str, name: str, wood: str, section: tuple[float, float], length: float, count: int
) -> StickCut:
    thin, wide = section
    stick = SawnStick(face, 1, thin, wide, length, length, 0.0, thin * wide * length)
    return StickCut(Extra(name, wood), stick, count)


def _mitres(shape: Shape) -> float:
    """Return the area in m2 of all faces that meet at the seams and mitres of one body."""
    how = sawn_from(shape)
    mitred = [one for one in how.sticks if one.mitre and not one.parallel]
    found = float(sum(one.copies * one.thick * one.wide / cos(one.mitre) for one in mitred))
    for panel in how.panels:
        tilts = (panel.edges.left, panel.edges.right)
        sloped = panel.length / cos(panel.slant)
        sides = sum(panel.thickness / cos(tilt) for tilt in tilts if 0.0 < abs(tilt) < pi / 2.0)
        found += panel.copies * sloped * sides / 2.0
    return found
