"""What holds a piece together, judged: its joints and sticks by one set of forces."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..design.shapes.shape import Array
from ..loads.combinations import Factors
from ..statics.bed import COARSE
from ..statics.joint_table import JointRow
from ..statics.model import Forces
from ..statics.stiffness import SETS
from .internal_forces import AS_READ, InternalForces
from .joints.joint_check import Asked, JointFound, judge_joint, most_at, rough_uses
from .joints.ties import Fastened
from .judging import Check
from .load_cases import Integers, greatest
from .members.member_check import Member, NotJudged
from .members.stick_strength import Judged, judge_sticks, may_govern, sticks_to_judge, use_of
from .racking import check_racking

FIRST = 4
"""So many cases of each joint and stick are tried with every set of stiffness."""

MANY = 12
"""So many, by a rough measure, are looked at closely to find these."""

COPIES = 2
"""At so many of the places of a joint, those where it is used most."""


@dataclass(frozen=True, eq=False)
class Strength:
    """What was found of every joint, in the file's order, of every stick, and whether it racks.

    ``error`` is the greatest imbalance of any body in any case that was solved, ``lost`` whether
    one of these has no balance.
    """

    joints: tuple[JointFound, ...]
    sticks: tuple[Member | NotJudged, ...]
    racking: Check | None
    error: float
    lost: bool


def strength_of(forces: InternalForces, factors: Factors, basis: str) -> Strength:
    """Return what was found of what holds a piece together under its forces."""
    sticks, others = sticks_to_judge(forces, basis)
    rough = [
        rough_uses(forces.through(k), joint, forces.cases) for k, joint in enumerate(forces.joints)
    ]
    near = _worst_joints(forces.joints, [float(use.max(initial=0.0)) for use in rough], 2 * COPIES)
    by_joint = {k: _most_used(forces, k, rough[k]) for k in near}
    by_stick = [may_govern(one, forces.sections[one.nth], forces.cases, FIRST) for one in sticks]
    looked = _all(*(one.which for one in by_joint.values()), *by_stick)
    as_read = forces.with_stiffness(SETS[AS_READ], looked)
    none = _Close(np.zeros(1, dtype=np.intp), np.zeros((1, 6)), np.zeros(1))
    asked = [_asked(forces, as_read, looked, k, by_joint.get(k, none)) for k in range(len(rough))]
    worst = _worst_joints(forces.joints, [one.used for one in asked], COPIES)
    bent = _worst_sticks(forces, as_read, looked, sticks)
    few = _all(*(asked[k].which for k in worst), *(which for _, which in bent))
    envelope = forces.enveloped(as_read.some(np.searchsorted(looked, few)), few)
    reduced = list(asked)
    for k in worst:
        own = np.flatnonzero(np.isin(few, asked[k].which))
        wrenches = {name: each.through(k) for name, each in envelope.items()}
        of_its_own = {name: each[own] for name, each in wrenches.items()}
        reduced[k] = replace(asked[k], which=few[own], wrenches=of_its_own)
        asked[k] = replace(asked[k], which=few, wrenches=wrenches)
    joints = tuple(
        replace(
            judge_joint(row, [one for one in asked if _has(one, row)], factors),
            asked=tuple(one for one in reduced if _has(one, row)),
        )
        for row in forces.structure.design.several(JointRow)
    )
    chosen = [one for one, _ in bent]
    members: list[Member | NotJudged] = [
        *others,
        *judge_sticks(chosen, envelope, few, forces.cases, factors.source, basis),
    ]
    error = max(float(each.solution.error.max(initial=0.0)) for each in envelope.values())
    racking = check_racking(forces, envelope, few) if forces.joints else None
    lost = any(bool(each.solution.lost.any()) for each in envelope.values())
    return Strength(joints, tuple(members), racking, error, lost)


def worse_of(found: Sequence[Strength]) -> Strength:
    """Return the worse of what was found of a piece that may stand in one way or another."""
    if len(found) == 1:
        return found[0]
    joints = tuple(
        max(ways, key=lambda one: one.check.rank)
        for ways in zip(*(f.joints for f in found), strict=True)
    )
    sticks: dict[str, Member | NotJudged] = {}
    for one in (stick for each in found for stick in each.sticks):
        known = sticks.get(one.name)
        if known is None or _stick_rank(one) > _stick_rank(known):
            sticks[one.name] = one
    racking = [one.racking for one in found if one.racking is not None]
    return Strength(
        joints,
        tuple(sticks.values()),
        max(racking, key=lambda check: check.rank, default=None),
        max(one.error for one in found),
        any(one.lost for one in found),
    )


def _stick_rank(one: Member | NotJudged) -> float:
    return one.check.rank if isinstance(one, Member) else -1.0


def _all(*each: Integers) -> Integers:
    return np.unique(np.concatenate([np.zeros(1, dtype=np.intp), *each]))


@dataclass(frozen=True, eq=False)
class _Close:
    """The cases (m,) in which a joint is used most, what goes through it (m, 6), and how far."""

    which: Integers
    wrenches: Array
    used: Array


def _most_used(forces: InternalForces, k: int, rough: Array) -> _Close:
    """Return the cases in which a joint is used most on a bed that only presses, by all sets.

    Under what goes through it when all beds hold both ways: so it is exactly where nothing else
    joins what it joins.
    """
    through = forces.through(k)
    every = Asked(forces.joints[k], np.arange(len(through)), {AS_READ: through}, forces.cases)
    few = _all(*(greatest(use, MANY) for use in (*rough, most_at(every, COARSE))))
    used = _by_any_set(forces, k, few, through[few])
    worst = greatest(used, FIRST)
    return _Close(few[worst], through[few[worst]], used[worst])


def _by_any_set(forces: InternalForces, k: int, which: Integers, through: Array) -> Array:
    """Return how far (m,) a joint is used by ``through`` (m, 6), with the set that asks most."""
    wrenches = dict.fromkeys(SETS, through)
    return most_at(Asked(forces.joints[k], which, wrenches, forces.cases))


def _asked(
    forces: InternalForces, as_read: Forces, looked: Integers, k: int, close: _Close
) -> Asked:
    """Return what goes through a joint in those of its cases in which it is used most, as read."""
    wrenches = as_read.through(k)[np.searchsorted(looked, close.which)]
    size = float(np.abs(close.wrenches).max())
    if size == 0.0 or np.allclose(wrenches, close.wrenches, rtol=0.0, atol=_SAME * size):
        used = close.used
    else:
        used = _by_any_set(forces, k, close.which, wrenches)
    worst = greatest(used, FIRST)
    return Asked(
        forces.joints[k],
        close.which[worst],
        {AS_READ: wrenches[worst]},
        forces.cases,
        float(used.max(initial=0.0)),
    )


_SAME = 1.0e-9
"""Share by which what goes through a joint may differ and ask the same."""


def _worst_joints(joints: Sequence[Fastened], used: Sequence[float], most: int) -> list[int]:
    """Return the ties, by number, at which each joint is used most: so many of its copies."""
    names = dict.fromkeys(place.row.name for one in joints for place in one.places)
    found: dict[int, None] = {}
    for name in names:
        own = [k for k, one in enumerate(joints) if any(p.row.name == name for p in one.places)]
        found.update(dict.fromkeys(sorted(own, key=lambda k: -used[k])[:most]))
    return list(found)


def _has(one: Asked, row: JointRow) -> bool:
    return any(place.row.name == row.name for place in one.joint.places)


def _worst_sticks(
    forces: InternalForces, as_read: Forces, looked: Integers, sticks: Sequence[Judged]
) -> list[tuple[Judged, Integers]]:
    """Return of the sticks of each part the one used most, as read, and in which cases."""
    worst: dict[str, tuple[float, Judged, Integers]] = {}
    for one in sticks:
        used = use_of(one, as_read.sections[one.nth], forces.cases, looked).most.max(axis=1)
        most = float(used.max())
        if one.part.name not in worst or most > worst[one.part.name][0]:
            worst[one.part.name] = most, one, looked[greatest(used, FIRST)]
    return [(one, which) for _, one, which in worst.values()]
