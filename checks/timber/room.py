"""The room that fasteners need, as every book of timber answers."""

from ...units.frozen import ByValue


class Room(ByValue, frozen=True):
    """The least distances in m of a fastener in one piece.

    From its end and its edge, and along and across its grain to the next fastener.
    """

    end: float
    edge: float
    along: float
    across: float
