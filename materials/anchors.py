"""What an anchor's name means: stakes, screw anchors, buried weights, piers, bolts into a slab."""

from functools import cache

from .. import references, units
from ..units.frozen import ByValue


class Head(ByValue, frozen=True):
    """How an anchor's end grips the piece: the allowable pull in N along it; 0 slips out upward."""

    name: str
    holds: float
    how: str
    source: str
    confidence: str


class Anchor(ByValue, frozen=True):
    """A kind of anchor in SI, its sizes as commonly sold (m; None where the kind has none).

    ``diameter`` is that of rod, shaft, log or pier. ``embedded`` is the depth in the ground, of a
    pad that of its underside, of a deadman None: its depth is the builder's. ``plate`` is the
    diameter of the helix or the side of the square pad, ``thickness`` that of pad or slab.
    """

    name: str
    group: str
    diameter: float | None
    length: float | None
    embedded: float | None
    plate: float | None
    thickness: float | None
    head: Head
    note: str
    source: str
    confidence: str


@cache
def find_anchor(name: str) -> Anchor:
    """Return the anchor of exactly this name (of `anchor_names`). KeyError where there is none."""
    row = references.table("ground/anchor_kinds").one("name", name)
    return Anchor(
        name=name,
        group=row["group"],
        diameter=_length(row["diameter"]),
        length=_length(row["length"]),
        embedded=_length(row["embedded"]) if row["group"] != "deadman" else None,
        plate=_length(row["plate"]),
        thickness=_length(row["thickness"]),
        head=find_head(row["head"]),
        note=row["note"],
        source=row["source"],
        confidence=row["confidence"],
    )


def anchor_names() -> list[str]:
    """Return every name that `find_anchor` knows, stakes first."""
    return [row["name"] for row in references.table("ground/anchor_kinds").rows]


@cache
def find_head(name: str) -> Head:
    """Return the head of exactly this name (one of `heads`). KeyError where there is none."""
    row = references.table("ground/stake_heads").one("head", name)
    holds = float(row["holds_lbf"]) * units.factor("lbf")
    return Head(name, holds, row["how"], row["source"], row["confidence"])


def heads() -> list[str]:
    """Return every name that `head` knows."""
    return [row["head"] for row in references.table("ground/stake_heads").rows]


def _length(text: str) -> float | None:
    return units.to_si(text, "length") if text else None
