"""What one fastener of a joint holds by EN 1995-1-1, under wind."""

from collections.abc import Mapping
from math import inf, pi, sqrt

from .... import references
from ....materials.fastener import Fastener
from ....units.frozen import ByValue
from ..nds.pushed_sideways import threads_over_bearing
from ..terms.capacity import Capacity, as_known
from ..terms.driven import Driven, driving_rule, length_that_holds, lengths
from ..terms.joint_material import JointMaterial
from .axial import head_pull_through, nail_withdrawal, screw_withdrawal, under_washer
from .lateral import MM, embedment_strength, in_a_row, is_large, johansen, under_plate, yield_moment
from .stuff import Wood, design, en1995_number, strength_class, wood_of

_SOURCE = "EN 1995-1-1:2004 8.2 to 8.7"


class _Driven(ByValue, frozen=True):
    """A fastener with what it meets: ``through`` and ``p`` m of the two pieces."""

    fastener: Fastener
    driven: Driven
    through: float
    p: float
    side: Wood | None
    main: Wood

    @property
    def kind(self) -> str:
        """Return "nail", "staple", "bolt" or "screw"."""
        return "screw" if self.fastener.kind.endswith("screw") else self.fastener.kind

    @property
    def bolt(self) -> bool:
        """Return whether it is pushed sideways by the rules of bolts."""
        return self.kind == "bolt" or (self.kind == "screw" and is_large(self.fastener.diameter))

    @property
    def is_wet(self) -> bool:
        """Return whether it may be driven into wet wood that dries out."""
        made = self.driven.made_wet
        return made is True or (made is None and not self.driven.stays_dry)


def design_resistance(
    fastener: Fastener, driven: Driven, basis: str, count: int = 1, apart: float = inf
) -> Capacity:
    """Return what one of ``count`` fasteners ``apart`` m holds under wind: k_mod R_k/gamma_M.

    Which way it is pushed is not asked: across the grain, or along it as if all stood in one row.
    Outdoors in service class 3, where it stays dry in 2. ValueError where no density is held of
    what it goes through or into. Ring-shank nails by the equation of smooth ones, since theirs
    has to be declared; toe-nails keep what NDS leaves of straight ones (judgements).
    Source: EN 1995-1-1:2004 2.4.3, 8.2 to 8.7.
    """
    known = as_known(fastener)
    through, p = lengths(known.need("length"), driven)
    comes_out = p > driven.room + 1.0e-6 and known.kind != "bolt"
    steel = driven.side.is_steel
    one = _Driven(
        known,
        driven,
        through,
        min(p, driven.room),
        None if steel else _wood(driven.side),
        _wood(driven.main),
    )
    modified, reasons = _modified(one, basis), list[str]()
    least = _least_depth(known)
    reaches = one.p >= least * (1.0 - 1.0e-9)
    if known.kind == "bolt":
        reaches = through + driven.room - 1.0e-6 <= known.need("length")
    if not reaches:
        reasons.append("too short for a nut" if known.kind == "bolt" else "too short")
    if modified <= 0.0:
        reasons.append("not outdoors")
    out, head, why = _pulled(one, count)
    modes = _weaker_way(one, min(out, head) if out > 0.0 else 0.0, count, apart)
    mode = min(modes, key=modes.__getitem__) if modes else ""
    sideways = modes[mode] * _lying(one) if modes and reaches else 0.0
    return Capacity(
        out=out * modified if reaches else 0.0,
        head=head * modified if modified > 0.0 else 0.0,
        sideways=sideways * modified,
        mode=mode,
        penetration=one.p,
        least_penetration=least,
        holding=one.p if known.kind == "bolt" else length_that_holds(known, one.p),
        mean_out=None,
        factor_out=modified,
        factor_sideways=modified * _lying(one),
        comes_out=comes_out,
        reasons=(*reasons, *why),
        law="linear" if known.kind in ("nail", "staple") and known.shank != "ring" else "squares",
        for_good=False,
        book="EN 1995-1-1",
        source=_SOURCE,
    )


def _wood(stuff: JointMaterial) -> Wood:
    found = wood_of(stuff.name)
    if found is None:
        raise ValueError(stuff.name)
    return found


def _modified(one: _Driven, basis: str) -> float:
    """Return k_mod/gamma_M of a connection, of two pieces their geometric mean (Eq. 2.6)."""
    pieces = [each for each in (one.side, one.main) if each is not None]
    found = [design(each.stuff, "connection", basis, one.driven.stays_dry) for each in pieces]
    if any(each is None for each in found):
        return 0.0
    return float(sqrt((found[0] or 0.0) * (found[-1] or 0.0)))


def _least_depth(fastener: Fastener) -> float:
    if fastener.kind == "bolt":
        return 0.0
    if fastener.kind == "staple":
        row = references.table("wood/staple_rules").one(
            "rule", "least penetration over leg diameter"
        )
        return float(row["value"]) * fastener.diameter
    smooth = fastener.kind == "nail" and fastener.shank != "ring"
    return en1995_number("nail depth least" if smooth else "least depth") * fastener.diameter


def _pulled(one: _Driven, count: int) -> tuple[float, float, list[str]]:
    """Return the characteristic pull at the point and at the head in N, and why one is nothing."""
    fastener, driven = one.fastener, one.driven
    if one.kind == "bolt":
        out = _at_washers(one)
        return out, inf, [] if out > 0.0 else ["no washer value"]
    why = [driven.into] if driven.into in ("panel edge", "end grain") else []
    if why:
        out = 0.0
    elif one.kind == "screw":
        out = screw_withdrawal(
            fastener.diameter, length_that_holds(fastener, one.p), one.main.density, count
        )
    else:
        out = fastener.legs * nail_withdrawal(
            fastener.diameter, one.p, one.main.density, one.is_wet
        )
    if driven.plate is not None or one.side is None or driven.toe_nailed:
        return out, inf, why
    across = driven.washer or fastener.head_across
    if across is None:
        return out, 0.0, [*why, "head unknown"]
    if one.kind == "nail" and across < en1995_number("head least") * fastener.diameter:
        return out, 0.0, [*why, "small head"]
    return out, head_pull_through(across, one.side.density, one.is_wet), why


def _at_washers(one: _Driven) -> float:
    """Return what a bolt's washers bear, on the weaker piece, in N; 0 where no class is known."""
    across = one.driven.washer or one.fastener.head_diameter
    hole = one.fastener.diameter + en1995_number("bolt hole over bolt mm") * MM
    found: list[float] = []
    for stuff in (one.driven.side, one.driven.main):
        if stuff.is_steel:
            continue
        rows = references.table("materials").where("name", stuff.name)
        species = rows[0]["gravity_row"] if rows else ""
        wood = strength_class(species, "stud")
        if wood is None or across is None:
            return 0.0
        found.append(under_washer(across, hole, wood))
    return min(found, default=0.0)


def _weaker_way(one: _Driven, pull: float, count: int, apart: float) -> Mapping[str, float]:
    """Return F_v,Rk in N by mode, pushed across the grain or along a row: the weaker of the two."""
    across, along = (_pushed(one, pull, angle) for angle in (pi / 2.0, 0.0))
    if not across:
        return {}
    share = in_a_row(count, apart, one.fastener.diameter, one.bolt)
    in_row = {mode: share * value for mode, value in along.items()}
    return min(across, in_row, key=lambda modes: min(modes.values()))


def _pushed(one: _Driven, pull: float, angle: float) -> Mapping[str, float]:
    """Return F_v,Rk in N by mode, ``angle`` to the grain, with the rope effect of a ``pull``."""
    fastener, driven = one.fastener, one.driven
    if one.p <= 0.0 or one.through <= 0.0:
        return {}
    d = _effective(one)
    moment, depth = yield_moment(d, one.kind), one.p
    held = embedment_strength(one.main, d, depth, one.bolt, angle)
    if driven.plate is not None or one.side is None:
        modes = under_plate(d, depth, driven.plate or one.through, held, moment)
    else:
        side = embedment_strength(one.side, d, one.through, one.bolt, angle)
        found = johansen(d, one.through, depth, side, held, moment)
        modes = {mode: float(value) for mode, value in found.items()}
    rope = {"nail": "smooth nail", "staple": "smooth nail"}.get(one.kind, one.kind)
    rope = "ring-shank nail" if one.kind == "nail" and fastener.shank == "ring" else rope
    most, share = en1995_number(f"rope {rope}"), en1995_number("rope share of pull") * pull
    stiff = ("Im", "Is")
    return {
        mode: fastener.legs * (value if mode in stiff else value + min(most * value, share))
        for mode, value in modes.items()
    }


def _effective(one: _Driven) -> float:
    """Return the diameter in m that counts sideways: of what bears on its thread 1.1 its root.

    Of bolts where much of the thread bears, as NDS says when (judgement: the standard is silent).
    """
    fastener = one.fastener
    root = fastener.yielding_diameter if one.kind == "screw" else fastener.root_diameter
    threads = threads_over_bearing(fastener, one.through, one.p) if one.kind == "bolt" else 1.0
    by_thread = threads > driving_rule("threads over bearing length") + 1.0e-9
    if one.kind not in ("screw", "bolt") or root is None or not by_thread:
        return fastener.diameter
    return min(en1995_number("effective of root") * root, fastener.diameter)


def _lying(one: _Driven) -> float:
    """Return what is left sideways of a fastener in end grain, slanting, or a staple's crown."""
    from ..nds import adjustments  # noqa: PLC0415 - a rule of NDS that stands in for toe-nails

    driven = one.driven
    if driven.toe_nailed:
        return adjustments.toe_nail("lateral")
    if driven.into in ("end grain", "panel edge"):
        return en1995_number("end grain sideways")
    if one.kind == "staple" and not driven.crown_across:
        return en1995_number("crown along the grain")
    return 1.0
