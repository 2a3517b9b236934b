"""How far fasteners stand from ends, edges and each other by EN 1995-1-1."""

from math import inf

from ....materials.fastener import Fastener
from ..terms.answers import Room
from .lateral import MM, is_large
from .stuff import en1995_number

EN_SPACING = "EN 1995-1-1:2004 8.3.1, 8.4, 8.5.1 and 8.7.1, Tables 8.2 to 8.4 and 8.6"


def room(fastener: Fastener, *, predrilled: bool, sheet: bool, gravity: float | None) -> Room:
    """Return the room in m that a fastener needs, pushed whichever way: wind comes from all sides.

    In the face of a ``sheet`` or in wood of a specific ``gravity``, as NDS assigns it, without or
    in lead holes. The greater of what a push and a pull ask of screws.
    Source: EN 1995-1-1:2004 8.3.1.2 Table 8.2, 8.3.1.3, 8.4 Table 8.3, 8.5.1.1 Table 8.4, 8.7.1
    and 8.7.2 Table 8.6.
    """
    d, crown = fastener.diameter, fastener.crown or 0.0
    name = _kind(fastener, predrilled, gravity)
    end, edge, along, across = (
        en1995_number(f"{name} {each}") * d for each in ("end", "edge", "along", "across")
    )
    if name.startswith("bolts"):
        end = max(end, en1995_number("bolts end mm") * MM)
    if fastener.kind.endswith("screw"):
        end, edge, along, across = (
            max(found, en1995_number(f"drawn screws {each}") * d)
            for found, each in ((end, "end"), (edge, "edge"), (along, "along"), (across, "across"))
        )
    if sheet and not name.startswith("bolts"):
        edge = en1995_number("sheet edge") * d
        apart = en1995_number("sheet apart") * max(along, across)
        return Room(edge, edge, apart + crown, apart + crown)
    return Room(end, edge, along + crown, across + crown)


def needs_predrilling(fastener: Fastener, gravity: float | None) -> bool:
    """Return whether a fastener needs a lead hole in wood of that specific gravity.

    Screws thicker than 6 mm, and all in dense wood. Source: EN 1995-1-1:2004 8.3.1.1 (2), 10.4.5.
    """
    if fastener.kind in ("bolt", "staple"):
        return False
    return is_large(fastener.diameter) or _density(gravity) > en1995_number("dense from")


def _kind(fastener: Fastener, predrilled: bool, gravity: float | None) -> str:
    if fastener.kind == "staple":
        return "staples"
    if fastener.kind == "bolt" or (fastener.kind != "nail" and is_large(fastener.diameter)):
        return "bolts"
    thick = fastener.diameter >= en1995_number("thick nail mm") * MM
    size = "thick" if thick else "thin"
    if predrilled:
        return f"{size} nails in lead holes"
    dense = _density(gravity) > en1995_number("light to")
    return f"{size} nails in dense wood" if dense else f"{size} nails"


def _density(gravity: float | None) -> float:
    """Return rho_k in kg/m3 of wood of a specific gravity as NDS assigns it; none is dense."""
    return inf if gravity is None else en1995_number("characteristic over gravity") * gravity
