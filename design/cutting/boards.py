"""Flat boards sawn square: plates, standing boards, cut-out figures, a wheel's blades."""

from math import pi

import numpy as np
from shapely import Polygon

from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..shapes.boxes import Box
from ..shapes.cutout import Cutout
from ..shapes.flat import Panel, Plate
from ..shapes.plans import Rectangle, Regular
from ..shapes.rotor import Rotor

_SLAB = 4.0
"""A solid rectangle is a board where it is this many times as wide as it is thick: judgement."""


class SawnBoard(ByIdentity, frozen=True):
    """A flat board with square edges, in m: its outline, the holes in it, its thickness.

    ``bottom``, ``top`` and ``length`` are the trapezoid round it, its length along the grain.
    ``sides`` counts a regular outline's edges, 0 is round, None any other. ``filled`` is the part
    of it that is there, less than 1 of a lattice or slats. ``lean`` is from plumb, rad.
    """

    face: str
    copies: int
    outline: Array
    holes: tuple[Array, ...]
    bottom: float
    top: float
    length: float
    thickness: float
    volume: float
    lean: float
    sides: int | None = None
    filled: float = 1.0

    @property
    def bevel(self) -> float:
        """Return 0: its edges are sawn square."""
        return 0.0

    def blank(self) -> tuple[float, float, float]:
        """Return bottom, top and length of the flat piece that it is sawn from, in m."""
        return self.bottom, self.top, self.length


def standing_board(panel: Panel) -> SawnBoard:
    """Return a board or lattice that stands."""
    half = panel.width / 2.0
    corners = np.array([[-half, 0.0], [half, 0.0], [half, panel.height], [-half, panel.height]])
    return _bounded("board", corners, panel.thickness, 0.0, filled=panel.solidity)


def figure_board(cutout: Cutout) -> SawnBoard:
    """Return a figure sawn from a sheet, with its holes."""
    holes = tuple(np.asarray(hole) for hole in cutout.holes)
    return _bounded("figure", cutout.sawn, cutout.thickness, 0.0, holes)


def slab_boards(box: Box) -> tuple[SawnBoard, ...]:
    """Return a thin solid rectangle as a board; none where it is a block, tapered or hollow."""
    if box.wall is not None or box.top_plan != Rectangle(box.length, box.width):
        return ()
    thin, wide, long = sorted((box.length, box.width, box.height))
    if wide < _SLAB * thin:
        return ()
    lean = pi / 2.0 if box.height == thin else 0.0
    corners = Rectangle(wide, long).corners()
    return (_bounded("board", corners, thin, lean),)


def plate_board(plate: Plate) -> SawnBoard:
    """Return a plate as a board, with the hole in its middle."""
    corners, holes = plate.plan.corners(), ()
    sides = plate.plan.sides if isinstance(plate.plan, Regular) else None
    if sides is not None and plate.hole > 0.0:
        holes = (Regular(sides, plate.hole).corners(),)
    volume = plate.moments().volume
    return _bounded(
        "plate", corners, plate.thickness, pi / 2.0, holes, sides, plate.solidity, volume
    )


def _bounded(
    face: str,
    corners: Array,
    thickness: float,
    lean: float,
    holes: tuple[Array, ...] = (),
    sides: int | None = None,
    filled: float = 1.0,
    volume: float | None = None,
) -> SawnBoard:
    """Return a board with the rectangle round its outline, the longer way along the grain."""
    if volume is None:
        volume = Polygon(corners, holes).area * thickness * filled
    low, high = corners.min(axis=0), corners.max(axis=0)
    across, along = (high - low).tolist()
    if sides == 0:
        # a circle's 72 edges touch it from outside: the box round it is that of its diameter
        across = along = 2.0 * float(np.hypot(*corners[0])) * float(np.cos(pi / len(corners)))
    width, length = min(across, along), max(across, along)
    return SawnBoard(
        face,
        1,
        corners,
        holes,
        width,
        width,
        length,
        thickness,
        volume,
        lean,
        sides,
        filled,
    )


def blade_boards(rotor: Rotor) -> SawnBoard:
    """Return a wheel's blades: like boards."""
    root, tip = rotor.root / 2.0, rotor.tip / 2.0
    corners = np.array([[-root, 0.0], [root, 0.0], [tip, rotor.span], [-tip, rotor.span]])
    volume = (rotor.root + rotor.tip) / 2.0 * rotor.span * rotor.thickness * rotor.solidity
    return SawnBoard(
        "blade",
        rotor.blades,
        corners,
        (),
        rotor.root,
        rotor.tip,
        rotor.span,
        rotor.thickness,
        volume,
        0.0,
        filled=rotor.solidity,
    )
