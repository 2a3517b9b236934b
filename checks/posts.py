"""Posts as cantilevers from their foot: bent, sheared and pressed by all that they carry.

n like posts take equal shares, and what turns the whole about its middle pushes each to the side.
No frame action is counted: a beam or rail that is nailed to them turns as they bend.
"""

from dataclasses import dataclass

import numpy as np

from ..design.shapes.shape import Array
from ..design.structure import GRAVITY, WEIGHINGS, Structure, Weighing
from ..loads.actions import Actions
from ..loads.combinations import Factors
from .bending import cantilever_deflection
from .columns import column_rule
from .judging import Check
from .member_check import Member, NotJudged
from .member_strength import STRENGTH
from .post_strength import PostStrength, post_strength
from .uprights import Posts

SOURCE = (
    "statics: a cantilever from its foot; NDS 2018 3.3, 3.4, 3.7, 3.9, 4.3, or AISC 360-16 E to H"
)


@dataclass(frozen=True, eq=False)
class Share:
    """What one post takes at its foot, of any leading shape then (D, C).

    ``moment`` (…, 2) in N m bends it toward x and y, ``force`` (…, 2) in N shears it.
    """

    moment: Array
    force: Array


def check_posts(
    posts: Posts, structure: Structure, actions: Actions, factors: Factors, basis: str
) -> Member | NotJudged:
    """Return the worst of bending and shear at the foot of posts under their actions (Q, D, C).

    With bending goes what presses or draws the post along itself.
    """
    part = structure.design.parts[structure.bodies[posts.bodies[0]].part]
    if posts.why_not:
        return NotJudged(posts.names[0], posts.why_not)
    strength = post_strength(posts.section, part.material, part.grade, posts.length, basis)
    if isinstance(strength, str):
        return NotJudged(posts.names[0], strength)
    found = [
        _worst(posts, structure, actions, factors, strength, weighing, dead, basis)
        for weighing in WEIGHINGS[::2]
        for dead in factors.sets
    ]
    governs, check, bends = max(
        found, key=lambda one: np.inf if one[1].utilization is None else one[1].utilization
    )
    return Member(
        name=posts.names[0],
        check=check,
        role="post",
        governs=governs,
        count=len(posts.bodies),
        deflection=bends,
        stuff=strength.stuff,
        beside=posts.beside,
        graded=part.grade is not None,
        slender=strength.slender(column_rule("stands out") * posts.length),
    )


def wind_shares(posts: Posts, actions: Actions) -> list[Share]:
    """Return what the wind's actions (…, D, C) leave each post.

    Moments about the foot: force times height, less suction times its arm from the posts' middle;
    one part in n each. A twist T about the middle pushes post i by T r_i/sum(r^2), at the height
    of the force.
    """
    middle = posts.places.mean(axis=0)
    n = len(posts.places)
    moment = actions.tilting - posts.foot * actions.force
    moment = moment - (actions.lifting - actions.uplift[..., None] * middle)
    force = actions.force
    arms = posts.places - middle
    spread = float((arms**2).sum())
    turning = actions.twist - middle[0] * actions.force[..., 1] + middle[1] * actions.force[..., 0]
    size = np.hypot(force[..., 0], force[..., 1])
    raised = actions.tilting - posts.foot * force
    sideways = np.hypot(raised[..., 0], raised[..., 1])
    height = sideways / np.where(size > 0.0, size, 1.0)
    shares: list[Share] = []
    for arm in arms:
        way = np.array([-arm[1], arm[0]]) / spread if spread > 1.0e-9 else np.zeros(2)
        extra = turning[..., None] * way
        shares.append(Share(moment / n + height[..., None] * extra, force / n + extra))
    return shares


def weight_moment(posts: Posts, structure: Structure, weighing: Weighing) -> Array:
    """Return the moment (2,) in N m of what posts carry about the middle between them."""
    middle = posts.places.mean(axis=0)
    copies = np.bincount([b.part for b in structure.bodies], minlength=len(structure.design.parts))
    masses = structure.part_mass[WEIGHINGS.index(weighing)] / np.maximum(copies, 1)
    total = np.zeros(2)
    for body, goes in zip(structure.bodies, posts.goes, strict=True):
        if goes:
            moments = body.shape.moments()
            local = moments.first / moments.volume if moments.volume else np.zeros(3)
            total += masses[body.part] * GRAVITY * (body.place(local)[:2] - middle)
    return total


def weight_on(posts: Posts, structure: Structure, weighing: Weighing) -> float:
    """Return the weight in N of posts and all that they carry."""
    copies = np.bincount([b.part for b in structure.bodies], minlength=len(structure.design.parts))
    masses = structure.part_mass[WEIGHINGS.index(weighing)] / np.maximum(copies, 1)
    going = [b.part for b, goes in zip(structure.bodies, posts.goes, strict=True) if goes]
    return float(masses[going].sum()) * GRAVITY


def _worst(
    posts: Posts,
    structure: Structure,
    actions: Actions,
    factors: Factors,
    strength: PostStrength,
    weighing: Weighing,
    dead: float,
    basis: str,
) -> tuple[str, Check, float]:
    """Return what governs, the check, and how far the top bends under the unfactored wind."""
    shares = wind_shares(posts, actions)
    axis = posts.section.axis
    across = np.array([-axis[1], axis[0]])
    load = dead * weight_moment(posts, structure, weighing) / len(shares)
    moment = np.stack([factors.wind * share.moment + load for share in shares])
    force = factors.wind * np.stack([share.force for share in shares])
    down = dead * weight_on(posts, structure, weighing) - factors.wind * actions.uplift
    pressed = np.broadcast_to(down / len(shares), moment.shape[:-1])
    effective = column_rule("stands out") * posts.length
    bending = strength.use(pressed, moment @ axis, moment @ across, effective)
    pushed = np.hypot(force[..., 0], force[..., 1])
    shear = pushed / strength.shear_force
    use = np.maximum(bending, shear)
    at = np.unravel_index(int(use.argmax()), use.shape)
    i, _, d, c = (int(k) for k in at)
    by_bending = bool(bending[at] >= shear[at])
    demand = float(np.linalg.norm(moment[at])) if by_bending else float(pushed[at])
    ratio = float(use[at])
    capacity = 0.0 if not np.isfinite(ratio) else demand / ratio if ratio > 0.0 else 0.0
    share = shares[i]
    wind_force = share.force[at[1:]]
    wind_moment = share.moment[at[1:]]
    check = Check(
        name=f"member: {posts.names[0]}",
        demand=demand,
        capacity=capacity,
        unit="N*m" if by_bending else "N",
        utilization=ratio if np.isfinite(ratio) else None,
        passes=bool(ratio <= 1.0),
        source=f"{SOURCE}{' (LRFD)' if basis == STRENGTH else ''}; {strength.stuff.source}",
        direction_deg=float(actions.azimuths[d]),
        weighing=weighing,
        dead=dead,
        wind=factors.wind,
        case=actions.names[c],
    )
    return (
        "bending" if by_bending else "shear",
        check,
        _bends(posts, strength, wind_force, wind_moment, axis, across),
    )


def _bends(
    posts: Posts,
    strength: PostStrength,
    force: Array,
    moment: Array,
    axis: Array,
    across: Array,
) -> float:
    """Return how far in m the top moves: the force where its moment about the foot puts it."""
    moved: list[float] = []
    for way, stiffness in zip((axis, across), strength.stiffness, strict=True):
        push = abs(float(force @ way))
        at = abs(float(moment @ way)) / push if push > 1.0e-9 else 0.0
        moved.append(float(cantilever_deflection(push, at, posts.length, stiffness)))
    return float(np.linalg.norm(moved))
