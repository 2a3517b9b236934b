"""Solid bodies sawn or turned from a block: what their faces ask of the saw."""

from math import acos, cos, pi, sin

from ...units.frozen import ByValue
from ..shapes.boxes import Box
from .panels import lean_of


class Block(ByValue, frozen=True):
    """A solid body of ``sides`` faces about an upright axis (0 is round), in m and rad.

    ``turn`` is the angle between neighbouring faces' normals, ``lean`` that of a face from plumb
    (of a box's ends in ``lean_ends``). ``tilt`` is the saw's, from square, with one face lying on
    its table and the next being cut: a quarter turn less ``turn``.
    """

    sides: int
    bottom: float
    top: float
    length: float
    lean: float
    turn: float
    lean_ends: float | None = None
    width: float | None = None

    @property
    def tilt(self) -> float:
        """Return the saw's tilt from square in rad; negative: it leans the other way."""
        return pi / 2.0 - self.turn


def regular_block(sides: int, bottom: float, top: float, height: float) -> Block:
    """Return the block of a regular body about an upright axis, as wide as said over flats."""
    lean = lean_of((bottom - top) / 2.0, height)[0]
    turn = face_turn(sides, lean) if sides else 0.0
    return Block(sides, bottom, top, height, lean, turn)


def box_block(box: Box) -> Block:
    """Return the block of a solid rectangular body."""
    top = box.top_plan
    over = lean_of((box.width - top.width) / 2.0, box.height)[0]
    ends = lean_of((box.length - top.length) / 2.0, box.height)[0]
    turn = acos(sin(over) * sin(ends))
    return Block(4, box.length, top.length, box.height, over, turn, ends, box.width)


def face_turn(sides: int, lean: float) -> float:
    """Return the angle in rad between neighbouring faces' normals of a regular body.

    cos = cos(lean)^2 cos(360/n) + sin(lean)^2: the product of two unit normals that both lean.
    """
    return acos(cos(lean) ** 2 * cos(2.0 * pi / sides) + sin(lean) ** 2)
