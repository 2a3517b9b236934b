"""A piece held down: what its anchors and guys are asked for, and whether they hold it."""

from collections.abc import Sequence
from math import cos, sin

import numpy as np

from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...materials import anchors as kinds
from ...units.arrays import Array, where_greatest
from ...units.frozen import ByIdentity
from ..judged.judging import Check, Kind, Remark, azimuth, judged
from ..stability.bearing import check_bearing
from ..stability.overturning import Hold, check_overturning
from ..stability.sliding import check_sliding
from ..stability.standing import Standing
from . import anchor_group, guys
from .capacity import stakes
from .capacity.anchor_capacity import Holding
from .held import Held


def hold_of(held: Held, standing: Standing, factors: Factors) -> Hold:
    """Return the moment and the downward pull of anchors or guys when the first is fully used.

    Where there are guys they hold it alone: stakes at the foot are slack until a guy stretches.
    """
    if held.guys:
        capacity = np.concatenate(
            [np.full(len(g.tops), g.held(factors.soil_on(g.holds.factor))) for g in held.guys]
        )
        stiffness, plumb = (
            _stiffness(held),
            np.concatenate([np.full(len(g.tops), sin(g.elevation)) for g in held.guys]),
        )
    else:
        soil = np.array([factors.soil_on(factor) for factor in held.each("factor")])
        capacity = np.minimum(soil * held.each("straight"), held.each("head"))
        stiffness, plumb = np.ones(len(capacity)), np.ones(len(capacity))

    def arms(pivot: Array) -> Array:
        if held.guys:
            return _arms(held, standing, pivot)
        return np.maximum(pivot[..., None] - (standing.normals @ held.points.T), 0.0)

    def moment(pivot: Array) -> Array:
        return anchor_group.moment_held(capacity, arms(pivot), stiffness)

    def pull(pivot: Array) -> Array:
        lever = arms(pivot)
        tension = guys.guy_tensions(
            np.maximum(anchor_group.moment_held(capacity, lever, stiffness), 0.0), lever, stiffness
        )
        return np.where(np.isfinite(tension), tension, 0.0) @ plumb

    return Hold(moment, pull)


def sideways_held(held: Held, factors: Factors, force: Array) -> Array:
    """Return the level force (…) in N that the anchors at the foot hold along ``force`` (…, 2).

    Those alone on which the foot bears when it moves that way.
    """
    if not held.anchors:
        return np.zeros(force.shape[:-1])
    return anchor_group.level_held(held.outward, factors.soil * held.each("sideways"), force)


def check_tied(held: Held, standing: Standing, actions: Actions, factors: Factors) -> list[Check]:
    """Return every check of a piece that is held down, in actions of shape (Q, D, C).

    Overturning and sliding with what holds it, bearing with what draws it down, and each row of
    anchors, their heads and guys.
    """
    hold = hold_of(held, standing, factors)
    return [
        check_overturning(standing, actions, factors, hold),
        check_sliding(standing, actions, factors, sideways_held(held, factors, actions.force)),
        check_bearing(standing, actions, factors, hold),
        *check_held(held, standing, actions, factors),
    ]


def check_held(held: Held, standing: Standing, actions: Actions, factors: Factors) -> list[Check]:
    """Return a check for each row of anchors and of guys, in actions of shape (Q, D, C)."""
    worst: dict[str, Check] = {}
    for dead in factors.sets:
        for check in _asked(held, standing, actions, factors, dead):
            known = worst.get(check.name)
            if known is None or check.rank > known.rank:
                worst[check.name] = check
    return list(worst.values())


def anchor_pulls(
    held: Held, standing: Standing, actions: Actions, factors: Factors
) -> tuple[float, float]:
    """Return the greatest straight and level pulls in N that any anchor at the foot is asked for.

    They need not come together. Infinite where no anchor can pull against a moment. ``held`` has
    anchors and no guys; what its anchors hold does not matter.
    """
    greatest = np.zeros(2)
    for dead in factors.sets:
        straight = _straight_pulls(held, standing, _left_over(standing, actions, factors, dead))
        level = _level_pulls(held, standing, actions, factors, dead)
        for way in _WAYS:
            up, along = stakes.on_a_slope(straight, way * level, standing.slope)
            greatest = np.maximum(greatest, [up.max(), np.abs(along).max()])
    return float(greatest[0]), float(greatest[1])


def guy_pulls(held: Held, standing: Standing, actions: Actions, factors: Factors) -> float:
    """Return the greatest pull in N that any guy is asked for, infinite where none can pull.

    What its guys hold does not matter, if they are all alike.
    """
    greatest = 0.0
    for dead in factors.sets:
        turning = _left_over(standing, actions, factors, dead)
        tension = guys.guy_tensions(
            turning.moment, _arms(held, standing, turning.pivot), _stiffness(held)
        )
        greatest = max(greatest, float(tension.max()))
    return greatest


def _asked(
    held: Held, standing: Standing, actions: Actions, factors: Factors, dead: float
) -> list[Check]:
    turning = _left_over(standing, actions, factors, dead)
    if held.guys:
        arms = _arms(held, standing, turning.pivot)
        tension = guys.guy_tensions(turning.moment, arms, _stiffness(held))
        checks = _guy_checks(held, standing, actions, factors, dead, tension)
        shape = (*turning.moment.shape[:-1], len(held.points))
        straight = np.zeros(shape) if held.anchors else None
    else:
        checks = []
        straight = _straight_pulls(held, standing, turning)
    if straight is not None:
        checks += _anchor_checks(held, standing, actions, factors, dead, straight)
    return checks


_WAYS = (1.0, -1.0)
"""A level pull may run down the slope or up it: which it is depends on how the slope lies."""


class _Turning(ByIdentity, frozen=True):
    """The moments (…, E) in N m that weight leaves about the lines at ``pivot`` (…, E) in m."""

    moment: Array
    pivot: Array


def _left_over(standing: Standing, actions: Actions, factors: Factors, dead: float) -> _Turning:
    """Return what anchors have to hold: factored overturning less factored resisting."""
    weight = standing.structure.weight("light")
    pressing = dead * weight - factors.wind * actions.uplift
    pivot = standing.pivot(np.repeat(pressing[..., None], len(standing.normals), axis=-1))
    over = factors.wind * standing.winds(actions).over(pivot)
    return _Turning(np.maximum(over - dead * standing.hold("light", pivot), 0.0), pivot)


def _straight_pulls(held: Held, standing: Standing, turning: _Turning) -> Array:
    """Return the straight pull (…, n) in N on each anchor, by its worst line."""
    distance = np.maximum(turning.pivot[..., None] - (standing.normals @ held.points.T), 0.0)
    return anchor_group.anchor_tensions(turning.moment, distance).max(axis=-2)


def _anchor_checks(
    held: Held,
    standing: Standing,
    actions: Actions,
    factors: Factors,
    dead: float,
    straight: Array,
) -> list[Check]:
    """Return how far each row of anchors is used by straight pulls (…, n) and what slides."""
    sideways = _level_pulls(held, standing, actions, factors, dead)
    pulls = [stakes.on_a_slope(straight, way * sideways, standing.slope) for way in _WAYS]
    checks: list[Check] = []
    first = 0
    for row in held.anchors:
        own = slice(first, first + len(row.points))
        first += len(row.points)
        used = np.max(
            [
                stakes.stake_utilization(
                    np.maximum(up[..., own], 0.0),
                    np.abs(along[..., own]),
                    factors.soil_on(row.holds.factor) * row.holds.straight,
                    factors.soil * row.holds.sideways,
                )
                for up, along in pulls
            ],
            axis=0,
        )
        at = where_greatest(used)
        checks.append(_used(row.name, float(used[at]), row.holds, actions, at, factors, dead))
        pull = straight[..., own]
        at = where_greatest(pull)
        utilization, passes = judged(float(pull[at]), row.holds.head)
        checks.append(
            Check(
                kind=Kind.ANCHOR_HEAD,
                subject=row.name,
                demand=float(pull[at]),
                capacity=row.holds.head,
                unit="N",
                utilization=utilization,
                passes=passes,
                source=kinds.find_anchor(row.kind).head.source,
                direction_deg=float(actions.azimuths[at[-3]]),
                dead=dead,
                wind=factors.wind,
                case=actions.names[at[-2]],
                remark=Remark.HEAD,
                slots=(kinds.find_anchor(row.kind).head.how,),
            )
        )
    return checks


def _used(
    name: str,
    used: float,
    holds: Holding,
    actions: Actions,
    at: Sequence[int],
    factors: Factors,
    dead: float,
) -> Check:
    finite = bool(np.isfinite(used))
    return Check(
        kind=Kind.ANCHOR,
        subject=name,
        demand=used,
        capacity=1.0,
        unit="1",
        utilization=used if finite else None,
        passes=finite and used <= 1.0,
        source=holds.source,
        direction_deg=float(actions.azimuths[at[-3]]),
        dead=dead,
        wind=factors.wind,
        case=actions.names[at[-2]],
    )


def _level_pulls(
    held: Held, standing: Standing, actions: Actions, factors: Factors, dead: float
) -> Array:
    """Return the level pull (…, n) in N on each anchor: of what friction leaves, as it bears.

    Those before the foot's way take the force; all take twist about their middle.
    """
    weight = dead * standing.structure.weight("light")
    size = factors.wind * np.hypot(actions.force[..., 0], actions.force[..., 1])
    share = factors.friction * standing.friction_share(actions)
    grip = share * np.maximum(weight * cos(standing.slope) - factors.wind * actions.uplift, 0.0)
    asked = size + weight * sin(standing.slope)
    rest = anchor_group.left_to_stakes(asked, grip) / np.where(size > 0.0, size, 1.0)
    centre = held.points.mean(axis=0)
    about = actions.twist - (centre[0] * actions.force[..., 1] - centre[1] * actions.force[..., 0])
    apart = bool(np.ptp(held.points, axis=0).any())  # those in one point hold no twist
    turned = about if apart else np.zeros_like(about)
    pressed = anchor_group.bearing_shares(
        held.outward, factors.wind * rest[..., None] * actions.force
    )
    none = np.zeros_like(actions.force)
    twisted = anchor_group.level_shares(held.points, none, factors.wind * rest * turned)
    return pressed + np.linalg.norm(twisted, axis=-1)


def _guy_checks(
    held: Held,
    standing: Standing,
    actions: Actions,
    factors: Factors,
    dead: float,
    tension: Array,
) -> list[Check]:
    """Return the pull in each row of guys (…, E, n) against line and ground anchor."""
    checks: list[Check] = []
    first = 0
    for row in held.guys:
        own = tension[..., first : first + len(row.tops)]
        first += len(row.tops)
        at = where_greatest(own)
        pull = float(own[at])
        ground = factors.soil_on(row.holds.factor) * row.holds.along(row.elevation)
        capacity = min(row.line, ground)
        utilization, passes = judged(pull, capacity)
        finite = bool(np.isfinite(pull))
        checks.append(
            Check(
                kind=Kind.GUY,
                subject=row.name,
                demand=pull,
                capacity=capacity,
                unit="N",
                utilization=utilization if finite else None,
                passes=passes and finite,
                source=row.holds.source if ground < row.line else "breaking load over 5",
                direction_deg=float(actions.azimuths[at[-4]]),
                toward_deg=azimuth(standing.normals[at[-2]]),
                dead=dead,
                wind=factors.wind,
                case=actions.names[at[-3]],
                remark=Remark.GROUND_ANCHOR if ground < row.line else Remark.LINE,
            )
        )
    return checks


def _arms(held: Held, standing: Standing, pivot: Array) -> Array:
    """Return the levers (…, E, n) in m of all guys about the pivots (…, E)."""
    found: list[Array] = []
    for row in held.guys:
        off_normal = np.clip(-(standing.normals @ row.outward.T), -1.0, 1.0)
        distance = pivot[..., None] - standing.normals @ row.tops[:, :2].T
        found.append(guys.lever(row.tops[:, 2], row.elevation, np.arccos(off_normal), distance))
    return np.concatenate(found, axis=-1)


def _stiffness(held: Held) -> Array:
    return np.concatenate([np.full(len(row.tops), row.stiffness) for row in held.guys])
