"""Posts in the ground: what each is asked for sideways, and what its depth holds."""

from math import hypot, pi, sqrt

import numpy as np

from ...design import plane
from ...design.faults import DesignError, Fault
from ...design.on_ground import TOUCHING
from ...design.sections import section
from ...design.structure import Structure
from ...design.touching import beside_each_other
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...materials.grounds import Ground
from ...statics.contacts.fit import FIT
from ...units import GRAVITY
from ...units.arrays import Array, where_greatest
from ...units.frozen import ByIdentity
from ..judged.judging import Check, Kind, Remark, judged
from . import anchor_group
from .capacity import buried_weight
from .capacity.embedment import lateral_bearing, moment_constrained, used_free

LOW_FORCE = 20.0
"""Times its own height above ground at which a force acts that is no force but a moment."""


_SOURCE = "IBC 1807.3.2.1, Eq. 18-1"
SOURCE_CONSTRAINED = "IBC 1807.3.2.2, Eq. 18-2 and 18-3"


class Posts(ByIdentity, frozen=True):
    """Every post in the ground: where it enters (n, 2), depth, width and end area (n,), SI.

    ``part`` (n,) are the parts' indices; ``bearing`` (n,) in Pa per m of depth is the ground's
    allowable lateral pressure. Together they carry the whole structure. ``cut`` are their own
    sections in m2 and ``cast`` the diameters in m of the concrete round them, 0 without.
    """

    part: tuple[int, ...]
    points: Array
    depth: Array
    width: Array
    end: Array
    cut: tuple[float, ...]
    cast: tuple[float, ...]
    constrained: tuple[bool, ...]
    bearing: Array

    def used(self, force: Array, moment: Array, soil: float) -> Array:
        """Return how far each post (…, n) is used by level forces in N and moments in N m.

        The ``moment`` (…, n) is that at the surface; ``soil`` multiplies the allowable pressure.
        """
        s = soil * self.bearing
        free = used_free(self.depth, force, moment, s, self.width)
        held = moment / moment_constrained(self.depth, s, self.width)
        return np.where(np.asarray(self.constrained), held, free)


def posts_of(structure: Structure, ground: Ground) -> Posts | None:
    """Return the posts in the ground, None where there are none.

    DesignError where a post stands in a ground without a lateral pressure.
    Judgement: of a rectangle the width is the diagonal, at most that of a square of its lesser
    side (IBC 1807.3.2.1: the diameter, or a square's diagonal); of what is cast in concrete the
    concrete's.
    """
    design = structure.design
    bodies = [body for body in structure.bodies if design.parts[body.part].embed > 0.0]
    if not bodies:
        return None
    if lateral_bearing(ground) is None:
        raise DesignError(
            tuple(
                Fault(
                    design.file,
                    design.lines.get((part.name, "embed")),
                    part.name,
                    "embed",
                    f"in {ground.name!r}",
                    "a ground that a post can be set in",
                    "a saddle bolted to the slab: [[anchor]] with bolts",
                )
                for part in design.parts
                if part.embed > 0.0
            )
        )
    _refuse_what_stands_apart(structure)
    cuts = [section(body, 0.0) for body in bodies]
    encased = [design.parts[body.part].encased for body in bodies]
    return Posts(
        part=tuple(body.part for body in bodies),
        points=np.array([[cut.centroid.x, cut.centroid.y] for cut in cuts]),
        depth=np.array([body.depth for body in bodies]),
        width=np.array(
            [
                _width(plane.ring_of(cut.convex_hull)) if cast is None else cast
                for cut, cast in zip(cuts, encased, strict=True)
            ]
        ),
        end=np.array(
            [
                cut.area if cast is None else pi * cast**2 / 4.0
                for cut, cast in zip(cuts, encased, strict=True)
            ]
        ),
        cut=tuple(cut.area for cut in cuts),
        cast=tuple(0.0 if cast is None else cast for cast in encased),
        constrained=tuple(design.parts[body.part].constrained for body in bodies),
        bearing=np.array(
            [lateral_bearing(ground, design.parts[body.part].may_move) for body in bodies]
        ),
    )


def _refuse_what_stands_apart(structure: Structure) -> None:
    """Raise DesignError where something that touches no post would count as carried by posts."""
    design, bodies = structure.design, structure.bodies
    held = {i for i, body in enumerate(bodies) if design.parts[body.part].embed > 0.0}
    reached = set(held)
    near = beside_each_other(bodies)
    while held:
        held = {j for i in held for j in np.flatnonzero(near[i]).tolist()} - reached
        reached |= held
    names = dict.fromkeys(
        design.parts[body.part].name
        for i, body in enumerate(bodies)
        if i not in reached and body.bottom <= TOUCHING and body.shape.hulls()
    )
    if names:
        raise DesignError(
            tuple(
                Fault(
                    design.file,
                    design.lines.get((name, "name")),
                    name,
                    None,
                    "it stands on the ground and touches no post",
                    "all that stands beside posts in the ground to hang together with them",
                    "a file of its own: it is another piece",
                )
                for name in names
            )
        )


def check_posts(
    posts: Posts, structure: Structure, actions: Actions, factors: Factors
) -> list[Check]:
    """Return a check for each part in the ground: its worst copy, gust, direction and case.

    All posts share the level force alike and what twists by their places; each is taken to turn in
    the ground by itself, under the force at the height of the whole (judgement: what braces or
    frames them to one another would help).
    """
    asked = asked_of(posts, actions, factors.wind)
    lean = factors.hurting * lean_moment(posts, structure) / len(posts.part)
    ratio = posts.used(asked.force, asked.moment + lean, factors.soil)
    found: list[Check] = []
    for part in dict.fromkeys(posts.part):
        own = [n for n, of in enumerate(posts.part) if of == part]
        at = where_greatest(ratio[..., own])
        where = (*at[:-1], own[int(at[-1])])
        demand, utilization = float(asked.force[where]), float(ratio[where])
        moment = float(asked.moment[where]) + lean
        height = moment / demand if demand > 0.0 else np.inf
        if height > LOW_FORCE * structure.height:  # hardly any force: told as a moment
            demand, unit = moment, "N*m"
        else:
            unit = "N"
        capacity = demand / utilization if utilization > 0.0 else 0.0
        found.append(
            Check(
                kind=Kind.EMBEDMENT,
                subject=structure.design.parts[part].name,
                demand=demand,
                capacity=capacity,
                unit=unit,
                utilization=utilization,
                passes=utilization <= 1.0,
                source=SOURCE_CONSTRAINED if posts.constrained[where[-1]] else _SOURCE,
                direction_deg=float(actions.azimuths[at[-3]]),
                weighing="heavy",
                dead=factors.hurting,
                wind=factors.wind,
                case=actions.names[at[-2]],
                remark=Remark.FORCE_AT if unit == "N" else None,
                slots=(height,) if unit == "N" else (),
            )
        )
    return found


def check_ends(
    posts: Posts, structure: Structure, ground: Ground, factors: Factors, load: float = 0.0
) -> Check:
    """Return the weight on the posts' ends against what the ground bears, without wind.

    ``load`` in N presses besides, with its factor. What clings to their sides is not counted.
    """
    weight = factors.hurting * structure.weight("heavy") + load
    demand = weight / float(posts.end.sum())
    limit = factors.soil * ground.allowable_pressure
    utilization, passes = judged(demand, limit)
    return Check(
        kind=Kind.BEARING,
        subject="",
        demand=demand,
        capacity=limit,
        unit="Pa",
        utilization=utilization,
        passes=passes,
        source=f"weight over the ends of the posts; {ground.source}",
        weighing="heavy",
        dead=factors.hurting,
        wind=0.0,
        case="calm",
    )


def check_pull_out(posts: Posts, structure: Structure, actions: Actions, factors: Factors) -> Check:
    """Return the wind's uplift against weight and the concrete round the posts.

    The earth that clings to post or concrete is not counted, nor friction (judgement); concrete
    counts as dead load that helps, buoyant, since a hole fills with water.
    """
    volume = sum(
        max(pi * cast**2 / 4.0 - cut, 0.0) * depth
        for cast, cut, depth in zip(posts.cast, posts.cut, posts.depth.tolist(), strict=True)
    )
    concrete = float(buried_weight.concrete_weight(volume, saturated=True))
    capacity = factors.helping * (structure.weight("light") + concrete)
    lifted = factors.wind * actions.uplift
    at = where_greatest(lifted)
    demand = float(lifted[at])
    utilization, passes = judged(demand, capacity)
    return Check(
        kind=Kind.PULL_OUT,
        subject="",
        demand=demand,
        capacity=capacity,
        unit="N",
        utilization=utilization,
        passes=passes,
        source="statics; concrete by CPUC General Order 95 rule 48.5",
        direction_deg=float(actions.azimuths[at[-2]]),
        dead=factors.helping,
        wind=factors.wind,
        case=actions.names[at[-1]],
    )


class _Asked(ByIdentity, frozen=True):
    """Level force in N and moment at the surface in N m on each post (…, D, C, n)."""

    force: Array
    moment: Array


def asked_of(posts: Posts, actions: Actions, wind: float) -> _Asked:
    """Return what the wind, or a named load, asks of each post, with its factor.

    What lifts off the middle of the posts, or presses there, bends them too. A twist adds to the
    level force on the posts that are far from the middle, and at its height to their moment; of
    one post, or of several in one place, it asks nothing.
    """
    middle, n = posts.points.mean(axis=0), len(posts.part)
    twist = actions.twist - (middle[0] * actions.force[..., 1] - middle[1] * actions.force[..., 0])
    apart = bool(np.ptp(posts.points, axis=0).max() > FIT)
    turned = twist if apart else np.zeros_like(twist)
    shares = anchor_group.level_shares(posts.points, wind * actions.force, wind * turned)
    off_middle = actions.lifting - actions.uplift[..., None] * middle
    bending = wind * np.linalg.norm(actions.tilting - off_middle, axis=-1)
    force = np.linalg.norm(shares, axis=-1)
    plain = wind * np.hypot(actions.force[..., 0], actions.force[..., 1])
    level = wind * np.hypot(actions.tilting[..., 0], actions.tilting[..., 1])
    arm = level / np.where(plain > 0.0, plain, 1.0)
    more = np.maximum(force - plain[..., None] / n, 0.0) * arm[..., None]
    return _Asked(force, bending[..., None] / n + more)


def lean_moment(posts: Posts, structure: Structure) -> float:
    """Return the moment in N m of the weight that does not stand over the middle of the posts."""
    off = structure.steady_centre("heavy")[:2] - posts.points.mean(axis=0)
    return hypot(*(float(c) for c in off)) * structure.mass("heavy") * GRAVITY


def _width(ring: Array) -> float:
    """Return the width in m of a section (k, 2) against the earth."""
    apart = np.linalg.norm(ring[:, None] - ring[None], axis=-1).max()
    edge = np.roll(ring, -1, axis=0) - ring
    normals = np.column_stack([edge[:, 1], -edge[:, 0]]) / np.linalg.norm(edge, axis=1)[:, None]
    along = ring @ normals.T
    lesser = float((along.max(axis=0) - along.min(axis=0)).min())
    return min(float(apart), sqrt(2.0) * lesser)
