"""An edge of the graph: where two bodies meet, or one and the ground, and what it can carry."""

from enum import StrEnum

from ...units.frozen import ByIdentity
from .face import Face

GROUND = -1
"""The ground among bodies by index."""

_SLANT = 1.0e-6
"""Faces that slant less from plumb (as a cosine) hold nothing up that merely rests against them."""


class Holds(StrEnum):
    """What an edge can carry."""

    FASTENED = "fastened"
    ASSUMED = "assumed"
    RESTS = "rests"
    HUNG = "hung"
    EMBEDDED = "embedded"
    STANDS = "stands"


class Edge(ByIdentity, frozen=True):
    """Where body ``of`` meets body ``to``, or the ground: the ``face``, and what holds it there.

    ``leaves`` of the face points from ``to`` to ``of``. ``placed``: ``of`` is written to stand on
    ``to``, or to hang under it. ``apart`` is the gap in m across which that is taken to carry.
    The ground's edges have no face here.
    """

    of: int
    to: int
    holds: Holds
    face: Face | None = None
    placed: bool = False
    apart: float = 0.0

    @property
    def size(self) -> float:
        """Return the area in m2 on which the two meet."""
        return 0.0 if self.face is None else float(self.face.area.area)

    @property
    def bears_up(self) -> bool:
        """Return whether ``to`` can hold ``of`` up."""
        return self._bears(1.0)

    @property
    def bears_down(self) -> bool:
        """Return whether ``of`` can hold ``to`` up."""
        return self.holds is not Holds.HUNG and self._bears(-1.0)

    def _bears(self, way: float) -> bool:
        if self.holds is not Holds.RESTS or self.face is None or self.face.deep > 0.0:
            return True
        return way * float(self.face.leaves[2]) > _SLANT
