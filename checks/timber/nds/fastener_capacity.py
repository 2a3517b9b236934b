"""What one fastener of a joint holds by NDS: pulled out, through by its head, pushed sideways."""

from dataclasses import dataclass, replace
from math import inf

from .... import units
from ....materials import fasteners
from ....materials.fastener import Fastener
from ...joints.driven import Driven, holding, least_penetration, lengths
from .fastener_factors import head_factor, lateral_factor, under_wind, withdrawal_factor
from .pulled_out import at_its_head, at_its_point, at_its_washer
from .pushed_sideways import yields
from .withdrawal import least_head

SOURCE = "NDS 2018 12.4 with 12.2 and 12.3"


@dataclass(frozen=True)
class Capacity:
    """What one fastener holds in N, adjusted for this joint, and the Wood Handbook's mean.

    ``out`` against pulling out, ``head`` against its head pulling through (infinite where a plate
    or steel lies beneath it), ``sideways`` by the yield mode ``mode``. ``mean_out`` is the average
    load at which such fasteners came out in tests, None where no equation holds. Lengths in m:
    ``penetration`` into the piece that holds the point, of which ``holding`` holds;
    ``least_penetration`` is asked. ``reasons`` are words: why something counts nothing.
    ``law`` is how pull and push add up (``fastener_use``), ``source`` the book's clauses;
    ``for_good``: what is held against a pull does not depend on how long it lasts.
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
    source: str = SOURCE
    for_good: bool = False

    @property
    def book(self) -> str:
        """Return what people call the book by which it holds so much."""
        return self.source.split(":")[0] if self.source.startswith("EN") else "NDS"

    @property
    def pull(self) -> float:
        """Return what it holds along itself in N: the lesser of point and head."""
        return min(self.out, self.head)


def capacity(fastener: Fastener, driven: Driven, basis: str) -> Capacity:
    """Return what one fastener holds under wind on a basis of judgement.

    Reference values x C_D C_M C_t C_eg C_tn; on the strength basis K_F phi lambda for C_D. Panel
    edges hold nothing against pulling out, since no value is published, and sideways as end grain
    does (judgement). Less than the least penetration holds nothing at all. A staple holds as two
    nails of its leg's diameter, its crown as a round head of the crown's area.
    ValueError where no value is published for what it goes through or into.
    Source: NDS 2018 11.3, 12.2, 12.3, 12.5; for staples EN 1995-1-1 8.4.
    """
    known = as_known(fastener)
    through, p = lengths(known.need("length"), driven)
    comes_out = p > driven.room + 1.0e-6 and known.kind != "bolt"
    p = min(p, driven.room)
    duration, least = under_wind(basis), least_penetration(known)
    limits = yields(known, driven, through, p)
    C_lateral = lateral_factor(known, driven, duration)
    reaches, reasons = _reaches(known, driven, through, p, least)
    if known.kind == "bolt":
        held, C_out, head, mean = p, 1.0, inf, None
        out = at_its_washer(known, driven)
        reasons += ["no washer value"] if out <= 0.0 else []
    else:
        held = holding(known, p)
        C_out, why = withdrawal_factor(known, driven, duration)
        out, mean = at_its_point(known, driven.main, held)
        out = out * C_out if reaches else 0.0
        head = at_its_head(known, driven, through) * head_factor(driven, duration)
        reasons += [*why, *([_no_head(known, driven)] if head <= 0.0 else [])]
    return Capacity(
        out=out,
        head=head,
        sideways=float(limits.value) * C_lateral if limits is not None and reaches else 0.0,
        mode=str(limits.mode) if limits is not None else "",
        penetration=p,
        least_penetration=least,
        holding=held,
        mean_out=None if driven.into in ("end grain", "panel edge") else mean,
        factor_out=C_out,
        factor_sideways=C_lateral,
        comes_out=comes_out,
        reasons=tuple(reasons),
        law=known.kind,
        for_good=known.kind == "bolt",
    )


def as_known(fastener: Fastener) -> Fastener:
    """Return a fastener with what is missing of a deck screw as a wood screw of its size has it.

    Deck screws are not standardised: root and steel are taken from the wood screw of the same
    number where the maker's sheet is silent (judgement).
    """
    if fastener.kind != "deck screw" or fastener.bending_yield is not None:
        return fastener
    inches = fastener.diameter / units.factor("in")
    try:
        alike = fasteners.find(f"wood screw {inches:.4g} in x 2 in")
    except (KeyError, ValueError):
        return fastener
    length = fastener.length
    return replace(
        fastener,
        bending_yield=alike.bending_yield,
        root_diameter=fastener.root_diameter or alike.root_diameter,
        head_diameter=fastener.head_diameter or alike.head_diameter,
        countersink=fastener.countersink or alike.countersink,
        thread_length=fastener.thread_length or (None if length is None else length * 2.0 / 3.0),
    )


def _no_head(fastener: Fastener, driven: Driven) -> str:
    """Return why a head counts nothing."""
    across = driven.washer or fastener.head_across
    if across is None:
        return "head unknown"
    return "small head" if across < least_head() else "nothing left under the head"


def _reaches(
    fastener: Fastener, driven: Driven, through: float, p: float, least: float
) -> tuple[bool, list[str]]:
    """Return whether it reaches far enough to count, and why it does not."""
    if fastener.kind == "bolt":
        reaches = through + driven.room - 1.0e-6 <= fastener.need("length")
        return reaches, [] if reaches else ["too short for a nut"]
    reaches = p >= least * (1.0 - 1.0e-9)
    return reaches, [] if reaches else ["too short"]
