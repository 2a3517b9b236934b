"""What books of timber answer: adjusted values, the law of sticks, room, where values stand."""

from typing import Protocol

from numpy.typing import ArrayLike

from ....materials.lumber import Lumber
from ....materials.metal import Metal
from ....materials.plastic import Plastic
from ....materials.sheets import Sheet
from ....units.arrays import Array
from ....units.frozen import ByValue

MemberMaterial = Lumber | Metal | Plastic | Sheet
"""What a part is judged as: wood by a book of timber, metal and plastic by their own values."""


class Values(ByValue, frozen=True):
    """Where a book's values for some stuff stand, and how well they are known.

    ``unread`` names the sources of what was written from memory.
    """

    source: str
    confidence: str
    unread: str


class Adjusted(ByValue, frozen=True):
    """Adjusted design values in Pa: F'_b bent on edge and on the flat, F'_v, by NDS or EN 1995.

    ``buckling`` is F_bE of bending on edge; ``stiffness`` E' for how far it bends. ``compression``
    is F_c*, along the grain but for C_P, ``tension`` F'_t and ``least_stiffness`` E'_min.
    """

    edgewise: float
    flatwise: float
    shear: float
    buckling: float
    stiffness: float
    compression: float
    tension: float
    least_stiffness: float


class Room(ByValue, frozen=True):
    """The least distances in m of a fastener in one piece.

    From its end and its edge, and along and across its grain to the next fastener.
    """

    end: float
    edge: float
    along: float
    across: float


class StickLaw(Protocol):
    """The law of one book. Stresses and strengths (…) in Pa, each at 1 used up."""

    def gives(
        self, strength: ArrayLike, elastic: ArrayLike, slender: ArrayLike, longer: ArrayLike
    ) -> Array:
        """Return the stress at which a column gives way, at most its ``strength``.

        ``elastic`` as of ``Adjusted.least_stiffness``, ``slender`` its length over its thickness;
        ``longer`` how much more is held under wind than under what presses it.
        """
        ...

    def bent(
        self, edge: tuple[Array, float], flat: tuple[Array, float], buckling: ArrayLike
    ) -> Array:
        """Return the use bent both ways: stress and strength on edge and on the flat."""
        ...

    def pressed(
        self,
        pressed: Array,
        gives: Array,
        edge: tuple[Array, float, float],
        flat: tuple[Array, float, float],
        elastic: float,
        longer: ArrayLike,
        buckling: ArrayLike,
    ) -> Array:
        """Return the use pressed and bent: stress, strength and slenderness of both ways."""
        ...
