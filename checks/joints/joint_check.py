"""Joints: what wind or a named load asks of each nail, screw and bolt, and whether it holds.

The fasteners at a joint and the bed on which it presses share what goes through it as springs; each
fastener is judged by what pulls it along itself and what pushes it sideways at once.
"""

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from math import inf

import numpy as np
from numpy.typing import NDArray

from ...loads.combinations import Factors
from ...statics.contacts.bed import COARSE_BED, FINE_BED
from ...statics.stiffness import SETS
from ...statics.tables.joint_table import JointRow
from ...statics.tie import Tie, Variant, share_of
from ...statics.wrench import motion_rows
from ...units.arrays import Array, Integers, distinct
from ...units.frozen import ByIdentity, replace
from ..acting.internal_forces import STIFFNESS_AS_READ
from ..acting.load_cases import LoadCases, most_used_cases
from ..fasteners import fastener_layout
from ..fasteners.fastener_sets import FastenerSet, JointPlace
from ..fasteners.ties import Fastened, tie_of
from ..judged.judging import Check, Kind
from ..timber.terms.capacity import Capacity
from .most_used import MostUsed, held_for, most_used, used_by

_SOURCE = "elastic equilibrium of the piece"


FIRST = 4
"""In so many cases each joint is judged closely, for every set of stiffness."""


class TieDemand(ByIdentity, frozen=True):
    """What goes through one tie in some of the load cases.

    ``wrenches`` are those (m, 6) about its face by set of stiffness, ``which`` (m,) the cases.
    """

    joint: Fastened
    which: Integers
    wrenches: Mapping[str, Array]
    cases: LoadCases

    @cached_property
    def by_set(self) -> Mapping[str, Array]:
        """Return by set of stiffness how far (m,) the fastener that is used most is, roughly.

        On a coarse bed.
        """
        longer = self.cases.longer[self.which][:, None]
        names, held = _held(self, COARSE_BED)
        found = {name: np.zeros(len(self.which)) for name in names}
        for place, at in zip(self.joint.places, self.joint.at, strict=True):
            for fasteners in place.sets:
                tension, shear = _on_axis(held[:, :, at], fasteners.draws)
                used = used_by(fasteners, longer, longer * tension, longer * shear)
                for name, each in zip(names, used.max(axis=2), strict=True):
                    found[name] = np.maximum(found[name], each)
        return found

    @property
    def most(self) -> float:
        """Return how far the fastener that is used most is in any of the cases, roughly."""
        return max(float(one.max(initial=0.0)) for one in self.by_set.values())


class JointFound(ByIdentity, frozen=True):
    """What was found of a joint: its check, and the set of fasteners and place that govern.

    ``tension`` and ``shear`` in N are of the fastener used most, which stands at ``at`` (3,) in m;
    ``count`` in all, at how many ``spots``; ``spacing`` the least in m at one of them.
    ``outward`` is the site's azimuth in degrees of that fastener from the middle of its group, None
    where it stands in it. ``shared_with`` names joints between the same two pieces. ``longer``
    is what it holds under wind over what it holds for as long as what governs lasts.
    """

    row: JointRow
    check: Check
    place: JointPlace
    fasteners: FastenerSet
    asked: tuple[TieDemand, ...]
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
        return held_for(self.fasteners.holds, self.longer)


def _judge_joint(row: JointRow, asked: Sequence[TieDemand], factors: Factors) -> JointFound:
    """Return what is found of a joint by what goes through it at each place where it stands."""
    most: dict[str, float] = {}
    worst: tuple[MostUsed, TieDemand] | None = None
    for one in asked:
        for used, by_set in _each_use(row, one):
            for name, its in by_set.items():
                most[name] = max(most.get(name, 0.0), its)
            if worst is None or used.rank > worst[0].rank:
                worst = used, one
    assert worst is not None
    used, of = worst
    case = int(of.which[used.load[-1]])
    own = [place for one in asked for place in one.joint.places if place.row.name == row.name]
    beside = [place for one in asked for place in one.joint.places if place.row.name != row.name]
    apart = [fastener_layout.least_spacing(each.points) for each in own]
    spaced = [each for each in apart if each is not None]
    spread = most.values()
    return JointFound(
        row=row,
        check=replace(
            _check(row, of.cases, case, used, factors),
            envelope=(min(spread), max(spread)),
            as_read=most[STIFFNESS_AS_READ],
        ),
        place=used.place,
        fasteners=used.fasteners,
        asked=tuple(asked),
        tension=used.tension,
        shear=used.shear,
        at=used.place.points[used.nth],
        outward=_outward(np.vstack([each.points for each in own]), used.place.points[used.nth]),
        count=sum(len(each.points) for each in own),
        spots=len(own),
        spacing=min(spaced, default=None),
        shared_with=tuple(dict.fromkeys(place.row.name for place in beside)),
        longer=float(of.cases.longer[case]),
    )


def judge_worst(row: JointRow, whole: Sequence[TieDemand], factors: Factors) -> JointFound:
    """Return what is found of a joint in those cases of the ``whole`` in which it is used most."""
    found = _judge_joint(row, [used_most(one) for one in whole], factors)
    return replace(found, asked=tuple(whole))


def refastened_joint(found: JointFound, own: Sequence[JointPlace], factors: Factors) -> JointFound:
    """Return what is found of a joint with other fasteners (``own``) under the same forces."""
    return judge_worst(own[0].row, [_refastened(one, own) for one in found.asked], factors)


def used_most(whole: TieDemand) -> TieDemand:
    """Return of what goes through a joint the cases in which it is used most by any set."""
    use = whole.by_set.values()
    rows = distinct(np.concatenate([most_used_cases(one, FIRST) for one in use]))
    wrenches = {name: each[rows] for name, each in whole.wrenches.items()}
    return replace(whole, which=whole.which[rows], wrenches=wrenches)


def _each_use(row: JointRow, one: TieDemand) -> Iterator[tuple[MostUsed, Mapping[str, float]]]:
    """Yield the fastener of a joint that is used most at one tie, and how far by each set."""
    longer = one.cases.longer[one.which][:, None]
    names, held = _held(one)
    for place, at in zip(one.joint.places, one.joint.at, strict=True):
        if place.row.name == row.name:
            for fasteners in place.sets:
                tension, shear = _on_axis(held[:, :, at], fasteners.draws)
                used = used_by(fasteners, longer, longer * tension, longer * shear)
                by_set: dict[str, float] = {}
                for name, its in zip(names, used.max(axis=(1, 2)).tolist(), strict=True):
                    by_set[name] = max(by_set.get(name, 0.0), its)
                yield most_used(place, fasteners, used, tension, shear), by_set


def _held(one: TieDemand, rows_each_way: int = FINE_BED) -> tuple[list[str], Array]:
    """Return the force (ways, m, n, 3) that each fastener takes, and each way's set of stiffness.

    Of several bolts also with each of them not bearing yet. Infinite where nothing holds.
    """
    tie, n, m = one.joint.tie, len(one.joint.tie.points), len(one.which)
    ways = [(name, slack) for name in one.wrenches for slack in _slack(tie)]
    wrenches = np.concatenate([one.wrenches[name] for name, _ in ways])
    variants = [Variant(SETS.get(name, {}), slack) for name, slack in ways]
    shared = share_of(tie, wrenches, rows_each_way, variants)
    held = tie.on_site(shared.force[:, : 3 * n].reshape(-1, n, 3))
    held[shared.lost] = inf
    return [name for name, _ in ways], held.reshape(len(ways), m, n, 3)


def _slack(tie: Tie) -> list[int | None]:
    """Return which bolts may not bear yet, one at a time: none, or each of several."""
    if tie.slips is None or tie.slips.sum() < 2:
        return [None]
    return [None, *np.flatnonzero(tie.slips).tolist()]


def _refastened(one: TieDemand, own: Sequence[JointPlace]) -> TieDemand:
    """Return what a joint's other fasteners ``own`` are asked, for those it had."""
    name = own[0].row.name
    pair = one.joint.tie.of, one.joint.tie.to
    instead = [place for place in own if (place.of, place.to) == pair]
    kept = [place for place in one.joint.places if place.row.name != name]
    tie = tie_of(one.joint.structure, [*instead, *kept], alone=one.joint.tie.alone)
    joint = Fastened((*instead, *kept), tie, one.joint.structure)
    return replace(one, joint=joint)


def _on_axis(held: Array, draws: Array) -> tuple[Array, Array]:
    """Return tension and shear (…, n) of forces (…, n, 3) on fasteners drawn along (n, 3).

    Infinite shear where nothing holds.
    """
    unheld: NDArray[np.bool_] = np.isinf(held[..., 0])
    sound = np.where(unheld[..., None], 0.0, held)
    drawn = (sound * draws).sum(axis=-1)
    across = np.linalg.norm(sound - drawn[..., None] * draws, axis=-1)
    return np.maximum(drawn, 0.0), np.where(unheld, inf, across)


def _check(row: JointRow, cases: LoadCases, case: int, worst: MostUsed, factors: Factors) -> Check:
    """Return the check: the force on the fastener used most, against what it holds that way."""
    acts = cases.set_of(case)
    used, holds = worst.used, held_for(worst.fasteners.holds, acts.longer)
    force = float(np.hypot(worst.tension, worst.shear)) if np.isfinite(worst.shear) else 0.0
    capacity = force / used if 0.0 < used < inf else 0.0
    if used == 0.0:
        capacity = min(holds.pull, holds.sideways)
    return Check(
        kind=Kind.JOINT,
        subject=row.name,
        demand=force,
        capacity=capacity,
        unit="N",
        utilization=used if used < inf else None,
        passes=used <= 1.0,
        source=f"{holds.source}; {_SOURCE}; {factors.source}",
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.factor,
        direction_deg=cases.azimuth(case),
        case=cases.name(case),
        load=acts.name,
    )


def _outward(points: Array, at: Array) -> float | None:
    away = (at - points.mean(axis=0))[:2]
    if np.hypot(*away) < 1.0e-3:
        return None
    return float(np.degrees(np.arctan2(away[0], away[1])) % 360.0)


def rough_uses(through: Array, joint: Fastened, cases: LoadCases) -> Array:
    """Return how far (2, n) a joint's fasteners are used by what goes through it (n, 6), roughly.

    As if its bed held both ways, and as if there were none.
    """
    tie = joint.tie
    points, along, stiffness, _, _ = tie.springs(COARSE_BED)
    rows = motion_rows(along, points, tie.face.origin)
    n, wrenches = len(tie.points), through * cases.longer[:, None]
    found: list[Array] = []
    for last in (len(rows), 3 * n):
        K = rows[:last].T @ (stiffness[:last, None] * rows[:last])
        motion = wrenches @ np.linalg.pinv(K, rcond=1.0e-10)
        force = (motion @ rows[: 3 * n].T) * stiffness[: 3 * n]
        local = tie.on_site(force.reshape(-1, n, 3))
        use = np.zeros((len(wrenches), n))
        for place, at in zip(joint.places, joint.at, strict=True):
            for one in place.sets:
                tension, shear = _on_axis(local[:, at], one.draws)
                pull, sideways = one.holds.pull or 1.0, one.holds.sideways or 1.0
                use[:, at] = np.maximum(use[:, at], tension / pull + shear / sideways)
        found.append(use.max(axis=1))
    return np.array(found)
