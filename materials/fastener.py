"""What is known of one nail, screw, bolt or staple, in SI."""

from math import pi, sqrt

from ..units.frozen import ByValue, field

NOT_STANDARD = "is not standardised: take it from the maker's sheet"


class Fastener(ByValue, frozen=True):
    """A fastener: sizes in m, bending yield strength of its steel in Pa; None where unknown.

    ``kind`` is "nail", "wood screw", "deck screw", "lag screw", "bolt" or "staple". ``diameter``
    is that of the shank, of a screw the nominal one (across its thread), of a staple that of a leg.
    ``thread_length`` is measured from the point (of a bolt, the nut's end), a ``tip_length``
    included.
    ``head_diameter`` is the least published: of a hexagon head its width across flats, and
    ``countersink`` how far a flat one is let into the wood, the most published. ``crown`` is
    a staple's least width outside its two ``legs``.
    A maker's own figures replace any of these: ``dataclasses.replace(found, head_diameter=…)``.
    """

    name: str
    kind: str
    diameter: float
    length: float | None = None
    shank: str = "smooth"
    stainless: bool = False
    hardened: bool = False
    thread_length: float | None = None
    root_diameter: float | None = None
    tip_length: float | None = None
    head_diameter: float | None = None
    countersink: float | None = None
    bending_yield: float | None = None
    crown: float | None = None
    legs: int = 1
    source: str = ""
    confidence: str = "memory"
    notes: tuple[str, ...] = field(default=())

    def need(self, size: str) -> float:
        """Return a size by its field's name. ValueError where it is not known."""
        value = getattr(self, size)
        if value is None:
            spoken = size.replace("_", " ")
            why = "was not given" if size == "length" else NOT_STANDARD
            raise ValueError(f"{self.name}: its {spoken} {why}")
        return float(value)

    @property
    def yielding_diameter(self) -> float:
        """Return the diameter that yields sideways: the root of a screw, else the shank.

        Of a bolt that holds only where little of its thread bears (12.3.7.2). ValueError where that
        root is not known. Source: NDS 2018 12.3.7.
        """
        return self.need("root_diameter") if self.kind.endswith("screw") else self.diameter

    @property
    def head_across(self) -> float | None:
        """Return the diameter in m of the round head that resists pulling through; None: unknown.

        A staple's crown counts as a round head of its area, width times the leg's diameter:
        judgement, none is published. Its edge is longer than that head's, so this is the lesser.
        """
        if self.crown is None:
            return self.head_diameter
        return sqrt(4.0 * self.crown * self.diameter / pi)

    @property
    def withdrawal_kind(self) -> str | None:
        """Return the name of the withdrawal equation that holds for it; None where none does.

        A deck screw is taken as a wood screw of its nominal diameter (judgement), each leg of a
        staple as a nail of its diameter.
        """
        if self.kind in ("nail", "staple"):
            bare = "stainless nail" if self.stainless else "smooth nail"
            return "ring-shank nail" if self.shank == "ring" else bare
        return {
            "deck screw": "wood screw",
            "wood screw": "wood screw",
            "lag screw": "lag screw",
        }.get(self.kind)
