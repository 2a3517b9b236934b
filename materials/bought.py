"""How stock is bought: sheets, boards by the length, and what a saw takes of them."""

from functools import cache
from typing import Literal

from ..references import table
from ..units.frozen import ByValue
from .material import find_material
from .stock import lumber_sizes

UnitSystem = Literal["imperial", "metric"]
_Form = Literal["sheet", "board", "other"]

NOMINAL_TOLERANCE = 0.0006
"""How far (m) a section may lie from a nominal size and still be called by it."""


class SheetSize(ByValue, frozen=True):
    """A sheet as sold: its name, width and length along the grain in m."""

    name: str
    width: float
    length: float


@cache
def sheet_sizes(system: UnitSystem) -> tuple[SheetSize, ...]:
    """Return the sheets that are sold, the usual one first, then longer ones to order."""
    sizes = table("wood/sheet_sizes")
    widths, lengths = sizes.si("width").tolist(), sizes.si("length").tolist()
    return tuple(
        SheetSize(row["sheet"], width, length)
        for row, width, length in zip(sizes.rows, widths, lengths, strict=True)
        if row["system"] == system
    )


@cache
def lumber_lengths(system: UnitSystem) -> tuple[float, ...]:
    """Return the lengths in m in which lumber is stocked, the shortest first."""
    lengths = table("wood/lumber_lengths")
    found = zip(lengths.rows, lengths.si("length").tolist(), strict=True)
    return tuple(sorted(length for row, length in found if row["system"] == system))


@cache
def saw_kerf(system: UnitSystem) -> float:
    """Return the width in m of the cut that a usual saw blade makes."""
    kerfs = table("wood/saw_kerfs")
    found = zip(kerfs.rows, kerfs.si("kerf").tolist(), strict=True)
    return next(kerf for row, kerf in found if row["system"] == system)


def sold_as(material: str | None) -> _Form:
    """Return how a material is sold; one that is not named is taken as sheets."""
    if material is None:
        return "sheet"
    rows = table("wood/sold_as").rows
    kind = find_material(material).kind
    named = [row["sold_as"] for row in rows if row["except_name"] == material]
    plain = [row["sold_as"] for row in rows if row["kind"] == kind and not row["except_name"]]
    match (named or plain)[0]:
        case "sheet":
            return "sheet"
        case "board":
            return "board"
        case _:
            return "other"


def nominal_size(thick: float, wide: float) -> str | None:
    """Return the nominal size, such as ``'2x4'``, of a section in m, None if it has none."""
    for name, size in lumber_sizes().items():
        thin, broad = sorted(size)
        if abs(thin - thick) < NOMINAL_TOLERANCE and abs(broad - wide) < NOMINAL_TOLERANCE:
            return name
    return None
