"""Every fastener by its trade name with what it holds in one wood, to be shown as a table."""

from functools import cache

from .... import references
from ....materials import fasteners, find_material
from ....materials.fastener import Fastener
from ....units import INCH
from ....units.frozen import ByValue
from ..terms.driven import Driven
from ..terms.joint_material import JointMaterial
from .pulled_out import at_its_head, at_its_point, least_penetration
from .pushed_sideways import yields

SIDE_THICKNESS = 0.75 * INCH
"""The board that is fastened, where no other is asked for: 3/4 in."""


class FastenerValue(ByValue, frozen=True):
    """A fastener and its NDS reference values in one wood, side grain; None where there is none.

    ``withdrawal`` in N per m of what holds: shank, thread or both legs. ``head`` in N through a
    board of that wood, and ``lateral`` in N in single shear between that board and a piece of the
    same wood, across the grain, with the yield ``mode``. ``penetration`` in m is what is left for
    the main piece, ``lateral_missing`` the reason why there is no lateral value.
    """

    fastener: Fastener
    withdrawal: float | None = None
    head: float | None = None
    lateral: float | None = None
    mode: str | None = None
    penetration: float | None = None
    lateral_missing: str = ""


def fastener_listing(
    wood: str | None = None, side_thickness: float = SIDE_THICKNESS
) -> list[FastenerValue]:
    """Return every fastener that has a trade name, in the wood of that name.

    ``side_thickness`` in m is that of the board. KeyError for a material that is not known,
    ValueError for one that takes no fastener by NDS.
    """
    gravity = None if wood is None else assigned_gravity(wood)
    pulled = None if wood is None else find_material(wood).withdrawal_gravity
    return [value_of(each, gravity, side_thickness, pulled) for each in fasteners.all_fasteners()]


def value_of(
    fastener: Fastener,
    gravity: float | None,
    side_thickness: float = SIDE_THICKNESS,
    withdrawal_gravity: float | None = None,
) -> FastenerValue:
    """Return what one fastener holds in wood of an assigned specific gravity; sizes alone if None.

    ``side_thickness`` in m. ``withdrawal_gravity`` is that of a panel for what pulls out, else the
    same. ValueError unless all are above 0.
    """
    if gravity is None:
        return FastenerValue(fastener)
    kind = fastener.withdrawal_kind
    wood = JointMaterial("", False, gravity, None, withdrawal_gravity or gravity)
    through = Driven(wood, wood, side_thickness, side_thickness, "side grain")
    head = at_its_head(fastener, through, side_thickness)
    found = FastenerValue(
        fastener,
        withdrawal=None if kind is None else at_its_point(fastener, wood, 1.0)[0],
        head=None if kind is None or head <= 0.0 else head,
    )
    return _sideways(found, gravity, side_thickness)


def assigned_gravity(wood: str) -> float:
    """Return the specific gravity that NDS gives a material. Raises as ``fastener_listing``."""
    gravity = find_material(wood).specific_gravity
    if gravity is None:
        raise ValueError(f"{wood!r}: NDS assigns it no specific gravity for fasteners")
    return gravity


def _sideways(found: FastenerValue, gravity: float, side: float) -> FastenerValue:
    """Return it with its lateral value: by its own length, or as deep as is taken without one.

    Of a staple whose crown lies across the grain.
    """
    one = found.fastener
    missing = _why_not_sideways(one, side)
    if missing:
        return FastenerValue(one, found.withdrawal, found.head, lateral_missing=missing)
    penetration = _unsaid(one) if one.length is None else one.length - side
    wood = JointMaterial("", False, gravity, None, gravity)
    driven = Driven(wood, wood, side, penetration, "side grain", crown_across=one.legs > 1)
    limits = yields(one, driven, side, penetration)
    assert limits is not None
    lateral = float(limits.value)
    return FastenerValue(one, found.withdrawal, found.head, lateral, str(limits.mode), penetration)


def _why_not_sideways(one: Fastener, side: float) -> str:
    """Return why NDS gives no lateral value for it here, or nothing."""
    if one.kind == "bolt":
        return "a bolt's value depends on both pieces it goes through"
    if one.kind.endswith("screw") and one.root_diameter is None:
        if one.kind == "deck screw":
            return "the root of its thread is the maker's"
        return "the root of its thread is not in the table"
    if one.bending_yield is None:
        return "the strength of its steel is not published"
    if one.length is None:
        return "" if _unsaid(one) else "it is made in several lengths: name one"
    least = least_penetration(one)
    if one.length - side < least * (1.0 - 1.0e-9):
        times = round(least / one.diameter)
        return f"too short: less than {times} diameters are left for the main piece"
    return ""


def _unsaid(one: Fastener) -> float:
    """Return the penetration in m that is taken where a length is not said; 0 for no such kind.

    Of screws that under the lateral tables of NDS, of staples the least that counts.
    """
    return least_penetration(one) if one.kind == "staple" else _tabulated(one.kind) * one.diameter


@cache
def _tabulated(kind: str) -> float:
    """Return the penetration over nominal diameter under the lateral tables; 0 without one."""
    rows = references.table("wood/lateral_table_penetrations").where("kind", kind)
    return float(rows[0]["diameters"]) if rows else 0.0
