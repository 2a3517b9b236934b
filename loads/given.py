"""A load that the design itself states: a swing's pull, a sign's bracket, a tied rope."""

from ..units.frozen import ByValue


class GivenLoad(ByValue, frozen=True):
    """A ``[[load]]``: ``force`` in N at the point ``at`` (3,) in m, along the design's own axes.

    ``direction`` is the unit vector (3,) along which it pushes; ``on`` names the part that it acts
    on, None where that is not said.
    """

    name: str
    force: float
    at: tuple[float, float, float]
    direction: tuple[float, float, float]
    on: str | None = None
