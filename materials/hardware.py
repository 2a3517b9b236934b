"""How fasteners and glue are bought: boxes, nails by weight, bottles."""

from functools import cache
from math import ceil, floor, pi

from .. import references, units
from ..units.frozen import ByValue
from . import material
from .bought import UnitSystem
from .fastener import Fastener


class Boxes(ByValue, frozen=True):
    """So many boxes of ``holds`` fasteners each; of ``weight`` kg where they are sold by that."""

    number: int
    holds: int
    weight: float | None = None


class Bottles(ByValue, frozen=True):
    """So many bottles of glue by the name on them."""

    number: int
    name: str


def with_spares(count: int) -> int:
    """Return how many fasteners to have at hand for so many to drive."""
    return ceil(count * (1.0 + _rule("spares")) - 1.0e-9)


def fastener_boxes(fastener: Fastener, count: int, system: UnitSystem) -> Boxes:
    """Return the boxes that hold so many of a fastener, as it is sold.

    >>> from yardfast.materials import fasteners
    >>> fastener_boxes(fasteners.find_fastener("8d common nail"), 120, "imperial").number
    2
    """
    table = references.table("wood/hardware_boxes")
    row = next(one for one in table.where("kind", fastener.kind) if one["system"] == system)
    value = float(row["holds"])
    if not row["unit"]:
        return Boxes(ceil(count / value), int(value))
    weight = value * units.factor(row["unit"])
    each = floor(weight / weight_of(fastener))
    return Boxes(ceil(count / each), each, weight)


def weight_of(fastener: Fastener) -> float:
    """Return what a nail weighs in kg: the steel of its shank, its head made up by its point."""
    steel = material.find_material("steel").typical
    return steel * pi / 4.0 * fastener.diameter**2 * fastener.need("length")


def glue_for(area: float) -> float:
    """Return the glue in m3 that joints of so many m2 take."""
    return area * _rule("glue line") * units.factor("mm")


def bottles(volume: float, system: UnitSystem) -> Bottles:
    """Return the fewest bottles that hold so much glue in m3, and the smallest such."""
    rows = references.table("wood/glue_bottles").where("system", system)
    sizes = sorted((float(row["litres"]) / 1000.0, row["bottle"]) for row in rows)
    for size, name in sizes:
        if volume <= size:
            return Bottles(1, name)
    size, name = sizes[-1]
    return Bottles(ceil(volume / size), name)


@cache
def _rule(name: str) -> float:
    return float(references.table("wood/hardware_rules").one("rule", name)["value"])
