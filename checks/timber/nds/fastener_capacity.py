"""What one fastener of a joint holds by NDS: pulled out, through by its head, pushed sideways."""

from math import inf

from ....materials.fastener import Fastener
from ..terms.capacity import Capacity, as_known
from ..terms.driven import Driven, length_that_holds, lengths
from .fastener_factors import head_factor, lateral_factor, under_wind, withdrawal_factor
from .pulled_out import at_its_head, at_its_point, at_its_washer, least_penetration
from .pushed_sideways import yields
from .withdrawal import least_head

_SOURCE = "NDS 2018 12.4 with 12.2 and 12.3"


def adjusted_capacity(fastener: Fastener, driven: Driven, basis: str) -> Capacity:
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
        held = length_that_holds(known, p)
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
        book="NDS",
        source=_SOURCE,
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
