"""Joints: what wind or a named load asks of each nail, screw and bolt, and whether it holds.

What lies above a joint is cut free there and held by all joints that the cut goes through: once
alone, once with all that is not beneath the joint, since what props it may need propping itself.
The fasteners share what is carried by statics; each is judged by what pulls it along itself and
what pushes it sideways at once.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import inf

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ..design import plane
from ..design.shapes.shape import Array
from ..design.structure import BEDDING, TOUCHING, Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from . import fastener_group, fastener_layout
from .borne import Borne, borne_by
from .carried import Fastened, carried, masses_of
from .combined import USE, nails_use
from .fastener_capacity import Capacity
from .joint_demand import LoadSet, Resultant, Weight, load_sets, resultant
from .joint_places import FastenerSet, Place
from .joint_table import JointRow
from .judging import Check
from .meeting import bearing_area

SOURCE = "NDS 2018 12.4 with 12.2 and 12.3; statics of the group"

Blow = Callable[[NDArray[np.bool_]], Actions]
"""The wind's actions (Q, D, C) on some of the bodies (bodies,) alone."""

IN_PLANE = 0.05
"""Fasteners and faces within this (m) of each other count as in one plane: judgement."""

_SAME_WAY = 0.999


@dataclass(frozen=True, eq=False)
class Cut:
    """What is cut free at a joint: the bodies above (bodies,), and what the cut goes through.

    ``loads`` are on it, ``corners`` (k, 2) those of the face on which it presses, in the plane of
    ``axes`` (3, 3) (right, up, leaving) through ``origin`` (3,); no corners where it only hangs.
    """

    above: NDArray[np.bool_]
    through: tuple[Place, ...]
    loads: Resultant
    origin: Array
    axes: Array
    corners: Array


@dataclass(frozen=True, eq=False)
class JointFound:
    """What was found of a joint: its check, and the set of fasteners and place that govern.

    ``tension`` and ``shear`` in N are of the fastener used most, which stands at ``at`` (3,) in m;
    ``count`` in all, at how many ``spots``; ``spacing`` the least in m at one of them.
    ``outward`` is the site's azimuth in degrees of that fastener from the middle of its group, None
    where it stands in it. ``shared_with`` names joints that the same cut goes through. ``longer``
    is what it holds under wind over what it holds for as long as what governs lasts.
    """

    row: JointRow
    check: Check
    place: Place
    fasteners: FastenerSet
    cuts: tuple[Cut, ...]
    tension: float
    shear: float
    at: Array
    outward: float | None
    count: int
    spots: int
    spacing: float | None
    shared_with: tuple[str, ...]
    longer: float = 1.0

    @property
    def holds(self) -> Capacity:
        """Return what one fastener holds for as long as what governs lasts."""
        return _held_for(self.row, self.fasteners.holds, self.longer)


def find_joints(
    structure: Structure,
    fastened: Fastened,
    places: Sequence[Place],
    blow: Blow,
    factors: Factors,
    basis: str,
    slope: float = 0.0,
    loads: Sequence[Borne] = (),
) -> tuple[JointFound, ...]:
    """Return what was found of every joint of a design, in the file's order.

    ``places`` are its joints where they stand, ``blow`` the wind on some of its bodies alone,
    ``basis`` that of judgement, ``slope`` that of the ground in rad, ``loads`` those that the
    design names.
    """
    if not places:
        return ()
    goes = carried(structure, fastened)
    cuts: dict[tuple[bool, ...], Cut] = {}
    found: list[JointFound] = []
    for row in structure.design.several(JointRow):
        its_own = [place for place in places if place.row.name == row.name]
        mine: list[Cut] = []
        of, to = {place.of for place in its_own}, {place.to for place in its_own}
        for above in _distinct(
            structure, [*_freed(goes, of), *_not_beneath(structure, goes, of, to)], loads
        ):
            key = tuple(above.tolist())
            if key not in cuts:
                sets = load_sets(factors, basis, [one.load for one in borne_by(loads, above)])
                cuts[key] = _cut(structure, places, above, blow, sets, slope)
            mine.append(cuts[key])
        found.append(_worst_of(row, mine, factors))
    return tuple(found)


def again(found: JointFound, own: Sequence[Place], factors: Factors) -> JointFound:
    """Return what is found of a joint with other fasteners (``own``) under the same loads."""
    row = own[0].row
    cuts = [
        replace(
            cut,
            through=(
                *(place for place in cut.through if place.row.name != row.name),
                *(place for place in own if cut.above[place.of] and not cut.above[place.to]),
            ),
        )
        for cut in found.cuts
    ]
    return _worst_of(row, cuts, factors)


def _worst_of(row: JointRow, cuts: Sequence[Cut], factors: Factors) -> JointFound:
    """Return what is found of a joint in the cut in which it is used most."""
    each = [_judged(row, cut, factors) for cut in cuts]
    return replace(max(each, key=lambda one: _used(one.check)), cuts=tuple(cuts))


def _freed(goes: NDArray[np.bool_], of: set[int]) -> list[NDArray[np.bool_]]:
    """Return what each copy carries, those together that carry something in common."""
    groups: list[NDArray[np.bool_]] = []
    for i in sorted(of):
        group = goes[i].copy()
        apart: list[NDArray[np.bool_]] = []
        for other in groups:
            if (other & group).any():
                group |= other
            else:
                apart.append(other)
        groups = [*apart, group]
    return groups


def _not_beneath(
    structure: Structure, goes: NDArray[np.bool_], of: set[int], to: set[int]
) -> list[NDArray[np.bool_]]:
    """Return all that hangs together with each copy and does not carry what it is fastened to.

    Frames that prop each other are so freed together: one alone would lean on the others. What
    else stands on the ground, or in it, is held there and stays.
    """
    grounded = {i for i, body in enumerate(structure.bodies) if body.bottom <= TOUCHING} - of
    beneath = np.array(
        [bool(carries[sorted(to)].any()) or i in grounded for i, carries in enumerate(goes)]
    )
    free = np.logical_not(beneath)
    joined = (goes | goes.T) & free & free[:, None]
    for _ in range(len(goes)):
        further = joined @ joined
        if np.array_equal(further, joined):
            break
        joined = further
    return _freed(joined, {i for i in of if free[i]})


def _distinct(
    structure: Structure, groups: Sequence[NDArray[np.bool_]], loads: Sequence[Borne]
) -> list[NDArray[np.bool_]]:
    """Return the groups, one of those that are copies of each other and bear the same named loads.

    Copies stand the same wind from every side, each for itself.
    """
    seen: dict[tuple[tuple[int, ...], tuple[str, ...]], NDArray[np.bool_]] = {}
    for group in groups:
        parts = tuple(structure.bodies[i].part for i in np.flatnonzero(group))
        named = tuple(one.load.name for one in borne_by(loads, group))
        seen.setdefault((parts, named), group)
    return list(seen.values())


def _cut(
    structure: Structure,
    places: Sequence[Place],
    above: NDArray[np.bool_],
    blow: Blow,
    sets: Sequence[LoadSet],
    slope: float,
) -> Cut:
    through = tuple(place for place in places if above[place.of] and not above[place.to])
    mass, centre = masses_of(structure, above)
    for i, part in enumerate(structure.design.parts):
        if part.hangs_at is not None:
            centre[i, 2] = part.hangs_at
    light, heavy = (_weight(mass[kind], centre) for kind in (0, 2))
    loads = resultant(blow(above), light, heavy, sets, slope)
    origin, axes, corners = _pressing(structure, above, through)
    return Cut(above, through, loads, origin, axes, corners)


def _weight(masses: Array, centres: Array) -> Weight:
    total = float(masses.sum())
    return Weight(total, masses @ centres / total if total > 0.0 else np.zeros(3))


def _pressing(
    structure: Structure, above: NDArray[np.bool_], through: Sequence[Place]
) -> tuple[Array, Array, Array]:
    """Return the origin, axes (3, 3) and corners (k, 2) of the face on which a freed part presses.

    It bears on the level faces beneath it, of parts and ground. Where there are none and all that
    holds it leaves one way, it presses on those faces. Where its fasteners do not lie in one plane
    with them nothing is taken to press: they hold it by their distance from each other.
    """
    level = np.eye(3)
    areas, heights = _bearing(structure, above)
    points = np.vstack([place.points for place in through])
    if areas:
        weight = np.array([area.area for area in areas])
        origin = np.array([0.0, 0.0, float(weight @ np.array(heights) / weight.sum())])
        corners = fastener_layout.pressing_corners(areas, BEDDING)
        flat = np.ptp([*points[:, 2], *heights]) <= IN_PLANE
        if len(corners) >= 3 and flat:
            return origin, level, corners
    first = through[0].face
    same = all(float(place.face.leaves @ first.leaves) > _SAME_WAY for place in through)
    near = [abs(float((place.face.origin - first.origin) @ first.leaves)) for place in through]
    if same and max(near) < BEDDING:
        axes = np.stack([first.right, first.up, first.leaves])
        moved = [_in_frame(place, first.origin, axes) for place in through]
        corners = fastener_layout.pressing_corners(moved, BEDDING)
        if len(corners) >= 3:
            return first.origin, axes, corners
    return np.zeros(3), level, np.empty((0, 2))


def _in_frame(place: Place, origin: Array, axes: Array) -> BaseGeometry:
    """Return a place's face in another plane that is parallel to its own."""
    ring = [
        (place.face.on_site(corners) - origin) @ axes[:2].T
        for corners in plane.outlines_of(place.face.area)
    ]
    return plane.hull(np.vstack(ring))


def _bearing(
    structure: Structure, above: NDArray[np.bool_]
) -> tuple[list[BaseGeometry], list[float]]:
    bodies = structure.bodies
    areas: list[BaseGeometry] = []
    heights: list[float] = []
    for i in np.flatnonzero(above):
        for j in np.flatnonzero(~above):
            area = bearing_area(bodies[i], bodies[j])
            if area.area > 0.0:
                areas.append(area)
                heights.append(bodies[j].top)
    standing = {bodies[i].part for i in np.flatnonzero(above)}
    for patch in structure.patches:
        if patch.part in standing and patch.area.area > 0.0:
            areas.append(patch.area)
            heights.append(0.0)
    return areas, heights


def _judged(row: JointRow, cut: Cut, factors: Factors) -> JointFound:
    """Return how a joint is used within a cut, by its fastener that is used most."""
    held = _shared(cut)
    longer = np.array([one.longer for one in cut.loads.sets])
    at = 0
    worst: _Worst | None = None
    own: list[Place] = []
    for place in cut.through:
        size = len(place.points)
        if place.row.name == row.name:
            own.append(place)
            for fasteners in place.sets:
                drawn = _on_axis(held[..., at : at + size, :], fasteners.draws)
                one = _worst(row, place, fasteners, longer, *drawn)
                if worst is None or one.rank > worst.rank:
                    worst = one
        at += size
    assert worst is not None
    place = worst.place
    found = _check(row, cut, worst, factors)
    points = np.vstack([each.points for each in cut.through])
    apart = [fastener_layout.least_spacing(each.points) for each in own]
    spaced = [each for each in apart if each is not None]
    others = {each.row.name: None for each in cut.through if each.row.name != row.name}
    return JointFound(
        row=row,
        check=found,
        place=place,
        fasteners=worst.fasteners,
        cuts=(cut,),
        tension=worst.tension,
        shear=worst.shear,
        at=place.points[worst.nth],
        outward=_outward(points, place.points[worst.nth]),
        count=sum(len(each.points) for each in own),
        spots=len(own),
        spacing=min(spaced, default=None),
        shared_with=tuple(others),
        longer=float(longer[worst.load[0]]),
    )


def _shared(cut: Cut) -> Array:
    """Return the force (…, n, 3) in N that each fastener takes which a cut goes through."""
    points = np.vstack([place.points for place in cut.through])
    F, M = cut.loads.force, cut.loads.about(cut.origin)
    if len(cut.corners) == 0:
        held = fastener_group.hung(points - cut.origin, F, M)
    else:
        right, up, out = cut.axes
        local = (points - cut.origin) @ cut.axes[:2].T
        first = np.stack([-(M @ up), M @ right], axis=-1)
        pulled = fastener_group.pulls(local, cut.corners, F @ out, first)
        along = np.stack([F @ right, F @ up], axis=-1)
        flat = fastener_group.shares(local, along, M @ out)
        unheld = np.logical_not(np.isfinite(flat))
        sound = np.where(unheld, 0.0, flat) @ cut.axes[:2]
        held = pulled.tension[..., None] * out + sound
        held = np.where(unheld.any(axis=-1, keepdims=True), inf, held)
    return held


def _on_axis(held: Array, draws: Array) -> tuple[Array, Array]:
    """Return tension and shear (…, n) of forces (…, n, 3) on fasteners drawn along (n, 3).

    Infinite shear where nothing holds.
    """
    unheld: NDArray[np.bool_] = np.isinf(held[..., 0])
    sound = np.where(unheld[..., None], 0.0, held)
    drawn = (sound * draws).sum(axis=-1)
    across = np.linalg.norm(sound - drawn[..., None] * draws, axis=-1)
    return np.maximum(drawn, 0.0), np.where(unheld, inf, across)


@dataclass(frozen=True)
class _Worst:
    """The fastener of a place that is used most: which, under which load, and how far.

    ``tension`` and ``shear`` in N are what it is asked; ``rank`` orders also those that nothing
    resists, by that.
    """

    place: Place
    fasteners: FastenerSet
    nth: int
    load: tuple[int, ...]
    used: float
    tension: float
    shear: float

    @property
    def rank(self) -> tuple[float, float]:
        return self.used, float(np.hypot(self.tension, self.shear))


def _worst(
    row: JointRow,
    place: Place,
    fasteners: FastenerSet,
    longer: Array,
    tension: Array,
    shear: Array,
) -> _Worst:
    """Return the fastener of a set that is used most under the loads (S, …, n).

    They are ``longer`` (S,) times as much as they are. Hankinson's formula lets a pull make up for
    a push where it holds pulls far better; it is never taken as used less than by either alone
    (judgement).
    """
    holds = fasteners.holds
    n = longer.reshape(-1, *[1] * (tension.ndim - 1))
    if _bears_on_washers(row):
        tension = tension / n
    law = USE.get(row.fastener.kind, nails_use)
    unheld = ~np.isfinite(shear)
    safe = np.where(unheld, 1.0, shear)
    used = law(tension, safe, holds.pull, holds.sideways)
    for alone in (
        nails_use(tension, 0.0, holds.pull, 0.0),
        nails_use(0.0, safe, 0.0, holds.sideways),
    ):
        used = np.maximum(used, alone)
    used = np.where(unheld, inf, used)
    most = used == used.max()
    pulled, pushed = tension if _bears_on_washers(row) else tension / n, safe / n
    asked = np.where(most, np.hypot(pulled, pushed), -1.0)
    *load, nth = (int(i) for i in np.unravel_index(int(asked.argmax()), asked.shape))
    where = (*load, nth)
    return _Worst(
        place,
        fasteners,
        nth,
        tuple(load),
        float(used[where]),
        float(pulled[where]),
        inf if unheld[where] else float(pushed[where]),
    )


def _bears_on_washers(row: JointRow) -> bool:
    """Return whether what holds against a pull is the wood under washers.

    That holds for good what it holds in a gust: C_D and lambda do not apply to bearing across the
    grain (NDS 2018 2.3.2 and Table 4.3.1).
    """
    return row.fastener.kind == "bolt"


def _held_for(row: JointRow, holds: Capacity, longer: float) -> Capacity:
    """Return what a fastener holds of a load that lasts, of what it holds under wind."""
    out = 1.0 if _bears_on_washers(row) else longer
    return replace(
        holds,
        out=holds.out / out,
        head=holds.head / longer,
        sideways=holds.sideways / longer,
        factor_out=holds.factor_out / out,
        factor_sideways=holds.factor_sideways / longer,
    )


def _check(row: JointRow, cut: Cut, worst: _Worst, factors: Factors) -> Check:
    """Return the check: the force on the fastener used most, against what it holds that way."""
    s, _, d, c = worst.load
    acts = cut.loads.sets[s]
    by_wind = acts.load is None and not acts.is_calm
    used, holds = worst.used, _held_for(row, worst.fasteners.holds, acts.longer)
    whole = float(np.linalg.norm(cut.loads.force[worst.load])) / acts.longer
    force = float(np.hypot(worst.tension, worst.shear)) if np.isfinite(worst.shear) else whole
    capacity = force / used if 0.0 < used < inf else 0.0
    if used == 0.0:
        capacity = min(holds.pull, holds.sideways)
    return Check(
        name=f"joint: {row.name}",
        demand=force,
        capacity=capacity,
        unit="N",
        utilization=used if used < inf else None,
        passes=used <= 1.0,
        source=f"{SOURCE}; {factors.source}",
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.live,
        direction_deg=float(cut.loads.azimuths[d]) if by_wind else None,
        case="calm" if acts.is_calm else cut.loads.cases[c] if by_wind else "",
        load="" if acts.load is None else acts.load.name,
    )


def _outward(points: Array, at: Array) -> float | None:
    away = (at - points.mean(axis=0))[:2]
    if np.hypot(*away) < 1.0e-3:
        return None
    return float(np.degrees(np.arctan2(away[0], away[1])) % 360.0)


def _used(check: Check) -> float:
    return inf if check.utilization is None else check.utilization
