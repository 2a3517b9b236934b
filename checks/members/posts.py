"""Posts as cantilevers from their foot: bent, sheared and pressed by all that they carry.

n like posts take equal shares, and what turns the whole about its middle pushes each to the side.
Under a rail over three or more each is judged by what the rail leaves it as a slender piece, too.
No frame action is counted: a beam or rail that is nailed to them turns as they bend.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from ...design.shapes.shape import Array
from ...design.structure import GRAVITY, WEIGHINGS, Structure, Weighing
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...materials.metal import Metal
from ..adjustments import wind_over
from ..borne import Borne, as_actions
from ..joints.joint_demand import at_once, together
from ..judging import Check, Kind
from .bending import cantilever_deflection
from .columns import column_rule
from .governs import UNITS, as_column, used
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

    ``moment`` (…, 2) in N m bends it toward x and y, ``force`` (…, 2) in N shears it, ``up`` (…)
    in N draws it along itself.
    """

    moment: Array
    force: Array
    up: Array


@dataclass(frozen=True, eq=False)
class Spanned:
    """What one way of a slender rail leaves each post, without factors.

    ``wind`` of any gust, ``azimuths`` (D,) and ``cases`` (C,); ``weight`` where heavy, and
    ``loads`` by the names of those on what the posts carry.
    """

    wind: list[Share]
    weight: list[Share]
    loads: dict[str, list[Share]]
    azimuths: Array
    cases: tuple[str, ...]


def check_posts(
    posts: Posts,
    structure: Structure,
    actions: Actions,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
    spanned: Sequence[Spanned] = (),
) -> Member | NotJudged:
    """Return the worst of bending and shear at the foot of posts under their actions (Q, D, C).

    With bending goes what presses or draws the post along itself; that alone is judged too.
    ``loads`` are those that the design names and the posts carry, each and all together, without
    wind. ``spanned`` is what they leave the posts in other ways than alike; the worst counts.
    """
    part = structure.design.parts[structure.bodies[posts.bodies[0]].part]
    if posts.why_not:
        return NotJudged(posts.names[0], posts.why_not)
    strength = post_strength(posts.section, part.material, part.grade, posts.length, basis)
    if isinstance(strength, str):
        return NotJudged(posts.names[0], strength)
    wind = _Pushed(wind_shares(posts, actions), factors.wind, actions.azimuths, actions.names)
    pushed = [wind, *_under(posts, loads, factors, strength, basis)]
    for way in spanned:
        blown = _Pushed(way.wind, factors.wind, way.azimuths, way.cases, weight=way.weight)
        pushed += [blown, *_under(posts, loads, factors, strength, basis, way)]
    found = [
        _worst(posts, structure, one, strength, weighing, dead, basis)
        for one in pushed
        for weighing in WEIGHINGS[::2]
        for dead in factors.sets
    ]
    calm = _calm(posts, strength, basis)
    for one in (calm, *(replace(calm, weight=way.weight) for way in spanned)):
        found.append(_worst(posts, structure, one, strength, "heavy", factors.alone, basis))
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
        loads=tuple(one.load.name for one in loads),
        spanned=bool(spanned),
    )


def sum_of(shares: Sequence[Share]) -> Share:
    """Return what one post takes of several at once."""
    return Share(
        np.sum([one.moment for one in shares], axis=0),
        np.sum([one.force for one in shares], axis=0),
        np.sum([one.up for one in shares], axis=0),
    )


def load_shares(posts: Posts, borne: Borne) -> list[Share]:
    """Return what a named load leaves each post: shared as wind is, or all to the post it acts on.

    Its place on what they carry counts: off the middle it turns that, and bends them.
    """
    if borne.body not in posts.bodies:
        return wind_shares(posts, as_actions(borne.load))
    nth = posts.bodies.index(borne.body)
    alone = replace(posts, bodies=(borne.body,), places=posts.places[nth : nth + 1])
    (whole,) = wind_shares(alone, as_actions(borne.load))
    none = Share(*(np.zeros_like(each) for each in (whole.moment, whole.force, whole.up)))
    return [whole if i == nth else none for i in range(len(posts.bodies))]


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
        turned = moment / n + height[..., None] * extra
        shares.append(Share(turned, force / n + extra, actions.uplift / n))
    return shares


def weight_moment(posts: Posts, structure: Structure, weighing: Weighing) -> Array:
    """Return the moment (2,) in N m of what posts carry about the middle between them."""
    middle = posts.places.mean(axis=0)
    weights = GRAVITY * structure.body_mass[WEIGHINGS.index(weighing)] * posts.goes
    return weights @ (structure.body_centre[:, :2] - middle)


def weight_on(posts: Posts, structure: Structure, weighing: Weighing) -> float:
    """Return the weight in N of posts and all that they carry."""
    return GRAVITY * float(structure.body_mass[WEIGHINGS.index(weighing)] @ posts.goes)


@dataclass(frozen=True, eq=False)
class _Pushed:
    """What pushes posts: the shares of each (…, D, C) and their ``factor``.

    ``azimuths`` (D,) and ``cases`` (C,) name wind; a named ``load`` has one of each. ``longer`` is
    what the post carries under wind over what it carries for as long as this lasts. ``weight`` is
    what the weight that they carry leaves each, where heavy; None where all take the same.
    """

    shares: list[Share]
    factor: float
    azimuths: Array
    cases: tuple[str, ...]
    load: str = ""
    longer: float = 1.0
    weight: list[Share] | None = None


def _under(
    posts: Posts,
    loads: Sequence[Borne],
    factors: Factors,
    strength: PostStrength,
    basis: str,
    way: Spanned | None = None,
) -> Iterator[_Pushed]:
    """Return what named loads do to posts, each and all together.

    In the ``way`` given, what acts on a post itself as ever. Metal holds for good what it holds in
    a gust.
    """
    longer = 1.0 if isinstance(strength.stuff, Metal) else wind_over("normal", basis)
    weight = None if way is None else way.weight
    for acting in at_once(loads):
        each: list[list[Share]] = []
        for one in acting:
            spans = None if way is None else way.loads.get(one.load.name)
            each.append(load_shares(posts, one) if spans is None else spans)
        shares = [sum_of(own) for own in zip(*each, strict=True)]
        name = together([one.load for one in acting])
        yield _Pushed(shares, factors.live, np.zeros(1), ("",), name, longer, weight)


def _calm(posts: Posts, strength: PostStrength, basis: str) -> _Pushed:
    """Return that nothing pushes posts but weight for good, of which wood holds less."""
    longer = 1.0 if isinstance(strength.stuff, Metal) else wind_over("permanent", basis)
    none = np.zeros((1, 1, 1))
    share = Share(np.zeros((1, 1, 1, 2)), np.zeros((1, 1, 1, 2)), none)
    return _Pushed([share] * len(posts.bodies), 0.0, np.zeros(1), ("calm",), longer=longer)


def _worst(
    posts: Posts,
    structure: Structure,
    pushed: _Pushed,
    strength: PostStrength,
    weighing: Weighing,
    dead: float,
    basis: str,
) -> tuple[str, Check, float]:
    """Return what governs, the check, and how far the top bends under what pushes, unfactored.

    What lasts longer than wind is asked that much more, but where a post gives way sideways: there
    wood is as stiff for good. C_L alone is that under wind, a little below that of a longer load.
    """
    shares = pushed.shares
    axis = posts.section.axis
    across = np.array([-axis[1], axis[0]])
    leans, weights = _weighed(posts, structure, pushed.weight, weighing)
    moment = np.stack(
        [
            pushed.factor * share.moment + dead * lean
            for share, lean in zip(shares, leans, strict=True)
        ]
    )
    force = pushed.factor * np.stack([share.force for share in shares])
    pressed = np.stack(
        [dead * on - pushed.factor * share.up for share, on in zip(shares, weights, strict=True)]
    )
    level = np.hypot(force[..., 0], force[..., 1])
    use = used(
        strength,
        (pushed.longer * pressed, 0.0),
        [(pushed.longer * (moment @ axis), pushed.longer * (moment @ across))],
        [pushed.longer * level],
        column_rule("stands out") * posts.length,
        pushed.longer,
    )
    at = np.unravel_index(int(use.most.argmax()), use.most.shape)
    i, _, d, c = (int(k) for k in at)
    governs = use.governs(at)
    along = np.broadcast_to(pressed, use.most.shape)
    asked = {"bending": float(np.linalg.norm(moment[at])), "shear": float(level[at])}
    demand = asked.get(governs, abs(float(along[at])))
    ratio = float(use.most[at])
    capacity = 0.0 if not np.isfinite(ratio) else demand / ratio if ratio > 0.0 else 0.0
    share = shares[i]
    check = Check(
        kind=Kind.MEMBER,
        subject=posts.names[0],
        demand=demand,
        capacity=capacity,
        unit=UNITS[governs],
        utilization=ratio if np.isfinite(ratio) else None,
        passes=bool(ratio <= 1.0),
        source=f"{SOURCE}{' (LRFD)' if basis == STRENGTH else ''}; {strength.stuff.source}",
        direction_deg=float(pushed.azimuths[d]) if pushed.factor and not pushed.load else None,
        weighing=weighing,
        dead=dead,
        wind=pushed.factor,
        case=pushed.cases[c],
        load=pushed.load,
    )
    effective = column_rule("stands out") * posts.length
    governs, check = as_column(governs, check, strength, effective, use.pressed())
    return (
        governs,
        check,
        _bends(posts, strength, share.force[at[1:]], share.moment[at[1:]], axis, across),
    )


def _weighed(
    posts: Posts, structure: Structure, weight: list[Share] | None, weighing: Weighing
) -> tuple[list[Array], list[Array]]:
    """Return by post the moment (…, 2) in N m and the force (…) in N of the weight on it."""
    whole = weight_on(posts, structure, weighing)
    if weight is None:
        n = len(posts.bodies)
        lean = weight_moment(posts, structure, weighing) / n
        return [lean] * n, [np.array(whole / n)] * n
    heavy = weight_on(posts, structure, "heavy")
    part = whole / heavy if heavy > 0.0 else 0.0
    # weight is the same in every gust, from every side
    return (
        [part * one.moment[0, 0, 0] for one in weight],
        [-part * one.up[0, 0, 0] for one in weight],
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
