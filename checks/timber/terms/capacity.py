"""What one fastener of a joint holds, as every book of timber answers."""

from .... import units
from ....materials import fasteners
from ....materials.fastener import Fastener
from ....materials.fastener_sizes import deck_screw_root
from ....units.frozen import ByValue, replace


class Capacity(ByValue, frozen=True):
    """What one fastener holds in N, adjusted for this joint, and the Wood Handbook's mean.

    ``out`` against pulling out, ``head`` against its head pulling through (infinite where a plate
    or steel lies beneath it), ``sideways`` by the yield mode ``mode``. ``mean_out`` is the average
    load at which such fasteners came out in tests, None where no equation holds. Lengths in m:
    ``penetration`` into the piece that holds the point, of which ``holding`` holds;
    ``least_penetration`` is asked. ``reasons`` are words: why something counts nothing.
    ``law`` is how pull and push add up (``fastener_use``), ``for_good``: what is held against a
    pull does not depend on how long it lasts; ``book`` is what people call the book of timber,
    ``source`` its clauses.
    """

    out: float
    head: float
    sideways: float
    mode: str
    penetration: float
    least_penetration: float
    holding: float
    mean_out: float | None
    factor_out: float
    factor_sideways: float
    comes_out: bool
    reasons: tuple[str, ...] = ()
    law: str = ""
    for_good: bool = False
    book: str = ""
    source: str = ""

    @property
    def pull(self) -> float:
        """Return what it holds along itself in N: the lesser of point and head."""
        return min(self.out, self.head)


def as_known(fastener: Fastener) -> Fastener:
    """Return a fastener with what is missing of a deck screw as a wood screw of its size has it.

    Deck screws are not standardised: head and steel are taken from the wood screw of the same
    number where the maker's sheet is silent (judgement), the root from one maker's report.
    """
    if fastener.kind != "deck screw" or fastener.bending_yield is not None:
        return fastener
    inches = fastener.diameter / units.factor("in")
    try:
        alike = fasteners.find_fastener(f"wood screw {inches:.4g} in x 2 in")
    except (KeyError, ValueError):
        return fastener
    length, sunk = fastener.length, fastener.countersink
    root = deck_screw_root(fastener.diameter)
    return replace(
        fastener,
        bending_yield=alike.bending_yield,
        root_diameter=fastener.root_diameter or root or alike.root_diameter,
        head_diameter=fastener.head_diameter or alike.head_diameter,
        countersink=alike.countersink if sunk is None else sunk,
        thread_length=fastener.thread_length or (None if length is None else length * 2.0 / 3.0),
    )
