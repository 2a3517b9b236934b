"""What one anchor of a kind holds in a ground: allowable pulls, each strength over its factor."""

from math import pi, radians, tan

from ....materials.anchors import Anchor
from ....materials.grounds import Ground
from ....materials.holding_rules import value
from ....units.frozen import ByValue, replace
from . import stakes


class Holding(ByValue, frozen=True):
    """Allowable pulls in N of one anchor: straight up, sideways, and slanting where it leans so.

    ``slanting`` is for a guy's pull, the anchor set to lean with it or across it as its kind asks;
    None where such a pull is judged as straight and sideways parts together. ``head`` is what its
    end on the piece holds upward, a check of its own. ``factor`` is that on the straight pull.
    Anchors nearer than ``spacing`` to each other (m) do not count in full sideways, nearer than
    ``spacing_up`` not straight up. ``reasons`` are words of the rules: keys for sentences that a
    report makes.
    """

    straight: float
    sideways: float
    slanting: float | None
    head: float
    factor: float
    spacing: float
    spacing_up: float
    source: str
    confidence: str
    reasons: tuple[str, ...] = ()

    @property
    def up(self) -> float:
        """Return what it holds straight up in N, the lesser of ground and head."""
        return min(self.straight, self.head)

    def spaced(self, apart: float) -> "Holding":
        """Return what it holds ``apart`` m from its neighbour, infinite without one.

        Nearer than its spacing in proportion (judgement): their earth is partly the same.
        """
        up, level = (
            min(apart / most, 1.0) if most > 0.0 else 1.0
            for most in (self.spacing_up, self.spacing)
        )
        if min(up, level) >= 1.0:
            return self
        return replace(
            self,
            straight=up * self.straight,
            sideways=level * self.sideways,
            slanting=None if self.slanting is None else level * self.slanting,
            reasons=(*self.reasons, "close together"),
        )

    def along(self, elevation: float) -> float:
        """Return what it holds in N against a pull at ``elevation`` above level in rad."""
        if self.slanting is not None and elevation <= value("stake", "slanting to") + 1.0e-12:
            return self.slanting
        return float(stakes.slanting_allowable(elevation, self.straight, self.sideways))


def anchor_capacity(
    anchor: Anchor,
    ground: Ground,
    *,
    saturated: bool | None = None,
    measured: float | None = None,
    torque: float | None = None,
    listed: bool = False,
    depth: float | None = None,
    elevation: float = radians(45.0),
) -> Holding:
    """Return what the ``anchor`` holds in the ``ground``, each strength over its own factor.

    ``saturated``: the ground can fill with water; unless given, where the ground is wet.
    ``measured``: a straight pull in N that it withstood on the spot in the wet season.
    ``torque`` in N m: read while a screw anchor was turned in. ``listed``: a manufactured-home
    anchor stands in the class of soil that its label names; else it counts as a screw anchor.
    ``depth`` in m of the middle of a deadman, required for one; ``elevation`` of its pull in rad.

    ValueError where the anchor does not belong in the ground, or a deadman's depth is missing.
    """
    if (anchor.group == "slab bolt") != (not ground.stakes_possible):
        raise ValueError(f"anchor: {anchor.name!r} does not hold in {ground.name!r}")
    wet = ground.wet if saturated is None else saturated
    match anchor.group:
        case "stake":
            found = _stake(anchor, ground, wet)
        case "screw anchor" | "manufactured-home anchor":
            found = _screw_anchor(anchor, ground, wet, torque, listed)
        case "buried weight":
            found = _buried(anchor, wet)
        case "deadman":
            found = _deadman(anchor, wet, depth, elevation)
        case "pier":
            found = _pier(anchor, ground, wet)
        case _:
            found = _slab_bolt(anchor)
    if measured is not None:
        factor = value("stake", "factor, measured")
        found = replace(
            found,
            straight=measured / factor,
            factor=factor,
            source="a pull measured on the spot; factor of tent handbooks",
            confidence="memory",
            reasons=("measured",),
        )
    return found


_SAND = "a short stiff pile in sand (Broms 1964)"
_CLAY = "adhesion on a rod; judgement within published stake tests"


def _stake(anchor: Anchor, ground: Ground, wet: bool) -> Holding:
    d, length = _sizes(anchor)
    factor = value("stake", "factor")
    sideways = _sideways(anchor, ground, wet)
    up = stakes.straight_strength(d, length, _adhering(ground))
    return Holding(
        straight=float(up) / factor,
        sideways=sideways,
        slanting=sideways,
        head=anchor.head.holds,
        factor=factor,
        spacing=length * value("stake", "spacing"),
        spacing_up=0.0,
        source=_SAND if ground.is_granular else _CLAY,
        confidence="judgement",
        reasons=() if ground.straight_pull else ("nothing straight up",),
    )


def _screw_anchor(
    anchor: Anchor, ground: Ground, wet: bool, torque: float | None, listed: bool
) -> Holding:
    from . import buried_weight, screw_anchors  # noqa: PLC0415 - what judges a kind, where it is asked

    shaft, length = _sizes(anchor)
    helix = anchor.plate or 0.0
    factor = value("screw anchor", "factor")
    source, confidence, reasons = "bearing of the helix (Bowles 1988)", "judgement", ("worked out",)
    if ground.straight_pull:
        Nc = screw_anchors.clay_factor(length, helix)
        area = screw_anchors.helix_area(helix, shaft)
        strength = screw_anchors.bearing_strength([area], _adhering(ground), Nc, 0.0, 0.0)
    else:
        unit_weight = buried_weight.overburden(1.0, wet)
        strength = screw_anchors.sand_strength(length, helix, unit_weight)
        source = "uplift of a plate in sand (Meyerhof and Adams 1968)"
    if torque is not None:
        strength = screw_anchors.torque_strength(torque)
        factor = value("screw anchor", "factor, measured")
        source, confidence, reasons = "installing torque (ICC-ES AC358)", "seen", ("torque",)
    straight = float(strength) / factor
    if listed and anchor.group == "manufactured-home anchor":
        straight = value("manufactured-home anchor", "working load")
        factor = value("manufactured-home anchor", "ultimate load") / straight
        source = "Illinois Administrative Code 77-870.200; Minnesota Rules 1350.2900"
        confidence, reasons = "seen", ("listed",)
    return Holding(
        straight=straight,
        sideways=_sideways(anchor, ground, wet),
        slanting=straight,
        head=anchor.head.holds,
        factor=factor,
        spacing=helix * value("screw anchor", "spacing"),
        spacing_up=helix * value("screw anchor", "spacing"),
        source=source,
        confidence=confidence,
        reasons=reasons,
    )


def _buried(anchor: Anchor, wet: bool) -> Holding:
    from . import buried_weight  # noqa: PLC0415

    side, thickness, depth = anchor.plate or 0.0, anchor.thickness or 0.0, anchor.embedded or 0.0
    factor = value("buried weight", "factor")
    strength = buried_weight.block_strength(side**2, 4.0 * side, thickness, depth, wet)
    reach = depth * 2.0 * _spread()
    return Holding(
        straight=float(strength) / factor,
        sideways=0.0,
        slanting=None,
        head=anchor.head.holds,
        factor=factor,
        spacing=side + reach,
        spacing_up=side + reach,
        source="CPUC General Order 95 rule 48.5; factor of IBC 1807.2.3, by analogy",
        confidence="judgement",
        reasons=("nothing sideways",),
    )


def _deadman(anchor: Anchor, wet: bool, depth: float | None, elevation: float) -> Holding:
    from . import deadman  # noqa: PLC0415

    if depth is None:
        raise ValueError(f"depth: {anchor.name!r} needs the depth of its middle")
    face, length = anchor.diameter or 0.0, anchor.length or 0.0
    factor = value("deadman", "factor")
    power = deadman.holding_power(depth, elevation, wet)
    return Holding(
        straight=0.0,
        sideways=0.0,
        slanting=float(deadman.log_strength(power, face, length)) / factor,
        head=anchor.head.holds,
        factor=factor,
        spacing=length + depth,
        spacing_up=length + depth,
        source="US Army TM 5-5420-278-10, WP 0035, Table 9",
        confidence="judgement",
        reasons=("across the pull",),
    )


def _pier(anchor: Anchor, ground: Ground, wet: bool) -> Holding:
    from . import buried_weight  # noqa: PLC0415
    from .embedment import force_free, lateral_bearing  # noqa: PLC0415

    d, length = _sizes(anchor)
    area, outline = pi * d**2 / 4.0, pi * d
    factor = value("buried weight", "factor")
    weight = float(buried_weight.concrete_weight(area * length, wet)) / factor
    cone = buried_weight.lifted_volume(area, outline, length) - area * length
    earth = float(buried_weight.earth_weight(cone, wet)) / factor
    skin = float(stakes.straight_strength(d, length, _adhering(ground))) / value("pier", "factor")
    bearing = lateral_bearing(ground) or 0.0
    return Holding(
        straight=weight + min(skin, earth),
        sideways=float(force_free(length, 0.0, bearing, d)),
        slanting=None,
        head=anchor.head.holds,
        factor=factor,
        spacing=d + 2.0 * length * _spread(),
        spacing_up=d + 2.0 * length * _spread(),
        source="weight (CPUC General Order 95 rule 48.5) and adhesion; IBC 1807.3.2.1 sideways",
        confidence="judgement",
        reasons=() if ground.straight_pull else ("weight alone",),
    )


def _slab_bolt(anchor: Anchor) -> Holding:
    from . import slab_bolts  # noqa: PLC0415

    length = anchor.embedded or 0.0
    factor = value("slab bolt", "factor")
    pull = float(slab_bolts.breakout_strength(length)) / factor
    return Holding(
        straight=pull,
        sideways=pull,
        slanting=None,
        head=anchor.head.holds,
        factor=factor,
        spacing=length * value("slab bolt", "spacing"),
        spacing_up=length * value("slab bolt", "spacing"),
        source="ACI 318M-19 17.6.2.2.1; factor 4, common practice",
        confidence="memory",
        reasons=("maker's load governs",),
    )


def _sizes(anchor: Anchor) -> tuple[float, float]:
    """Return diameter and embedded length in m."""
    return anchor.diameter or 0.0, anchor.embedded or 0.0


def _sideways(anchor: Anchor, ground: Ground, wet: bool) -> float:
    d, length = _sizes(anchor)
    strength = stakes.sideways_in_sand if ground.is_granular else stakes.sideways_strength
    return float(strength(d, length, wet)) / value("stake", "factor")


def _adhering(ground: Ground) -> float:
    """Return the undrained strength in Pa that holds straight up; 0 in sand and gravel."""
    return (ground.undrained_strength or 0.0) if ground.straight_pull else 0.0


def _spread() -> float:
    """Return the tangent of the planes of lifted earth, from the vertical."""
    return tan(value("buried weight", "spread"))
