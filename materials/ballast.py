"""What weighs a piece down: bags, blocks, water, and what fills a body with a floor."""

from functools import cache

from .. import references, units
from ..units.frozen import ByValue


class Ballast(ByValue, frozen=True):
    """A kind of ballast: ``least`` and ``most`` in kg of one piece, or in kg/m3 as a fill.

    ``form`` is ``"piece"`` or ``"fill"``. ``while_full`` tells that it weighs only as long as
    somebody keeps it full. Ballast that helps counts with ``least``.
    """

    name: str
    form: str
    least: float
    most: float
    while_full: bool
    note: str
    source: str
    confidence: str


@cache
def find_ballast(name: str) -> Ballast:
    """Return the ballast of exactly this name (of `ballast_names`). KeyError if none."""
    row = references.table("ground/ballast_kinds").one("name", name)
    unit = units.factor(row["unit"])
    return Ballast(
        name=name,
        form=row["form"],
        least=float(row["least"]) * unit,
        most=float(row["most"]) * unit,
        while_full=row["while_full"] == "yes",
        note=row["note"],
        source=row["source"],
        confidence=row["confidence"],
    )


def ballast_names() -> list[str]:
    """Return every name that `find_ballast` knows, pieces first."""
    return [row["name"] for row in references.table("ground/ballast_kinds").rows]
