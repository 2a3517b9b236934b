"""What books of timber answer with: the law of sticks, and where values stand."""

from typing import Protocol

from numpy.typing import ArrayLike

from ...units.arrays import Array
from ...units.frozen import ByValue


class Values(ByValue, frozen=True):
    """Where a book's values for some stuff stand, and how well they are known.

    ``unread`` names the sources of what was written from memory.
    """

    source: str
    confidence: str
    unread: str


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
