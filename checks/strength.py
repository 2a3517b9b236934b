"""What holds a piece together, judged: its joints and sticks by one set of forces."""

from collections.abc import Mapping, Sequence

import numpy as np

from ..loads.combinations import Factors
from ..statics.stiffness import SETS, SOFTEST
from ..statics.tables.joint_table import JointRow
from ..units.arrays import Array, Integers, distinct, first_greatest
from ..units.frozen import ByIdentity, replace
from .acting.internal_forces import STIFFNESS_AS_READ, Envelope, InternalForces
from .acting.load_cases import most_used_cases
from .fasteners.ties import Fastened
from .joints.joint_check import (
    FIRST,
    JointFound,
    TieDemand,
    judge_worst,
    rough_uses,
)
from .judged.judging import Check
from .members.member_check import MemberStrength, NotJudged
from .members.stick_strength import (
    Judged,
    as_braced,
    judge_sticks,
    may_govern,
    sticks_to_judge,
)
from .racking import check_racking

_MANY = 12
"""So many, by a rough measure, are looked at closely to find these."""

_SAME = 1.0e-9
"""Of the greatest: what differs by less goes through a joint alike."""

NEARLY_USED = 0.9
"""What is used more than this, and holds, is looked at in more cases: judgement.

Twice what was seen missed, 4.4 %: of some joints it is the 580th case as read that is the worst.
"""

_MORE = 10
"""Times as many cases are looked at for a stick that holds by little."""

COPIES = 2
"""At so many of the places of a joint, those where it is used most."""


class Strength(ByIdentity, frozen=True):
    """What was found of every joint, in the file's order, of every stick, and whether it racks.

    ``error`` is the greatest imbalance of any body in any case that was solved, ``lost`` whether
    one of these has no balance. ``through`` are the wrenches (n, 6) in every case at each tie that
    takes the same whatever the stiffness of anything, None of others.
    """

    joints: tuple[JointFound, ...]
    sticks: tuple[MemberStrength | NotJudged, ...]
    racking: Check | None
    error: float
    lost: bool
    through: tuple[Array | None, ...]


def strength_of(
    forces: InternalForces, factors: Factors, basis: str, before: Strength | None = None
) -> Strength:
    """Return what was found of what holds a piece together under its forces.

    ``before`` is what was found of it held down otherwise, or with other weight on it: a joint
    through which the same goes in every case is as it was, and one that failed then fails now.
    What holds by little is looked at again, in all cases that may ask more of it by other sets.
    """
    picked = _picked(forces, factors, basis, before)
    found = picked.found()
    again = _in_question(picked, found)
    if not len(again.cases):
        return found
    return replace(worse_of([found, again.found()]), through=found.through)


class _Picked(ByIdentity, frozen=True):
    """What is judged, and the load ``cases`` in which all that is not settled may be used most.

    ``settled`` are joints known before, ``left`` the ties of others, ``likely`` those of them that
    are used most, each with what goes through it in cases that may be its worst.
    """

    forces: InternalForces
    factors: Factors
    basis: str
    sticks: tuple[Judged, ...]
    others: tuple[NotJudged, ...]
    through: tuple[Array | None, ...]
    settled: Mapping[str, JointFound]
    left: tuple[int, ...]
    likely: Mapping[int, TieDemand]
    cases: Integers

    def found(self) -> Strength:
        """Return what is found in these cases, by every set of stiffness."""
        forces = self.forces
        envelope = forces.enveloped(self.cases)
        close = {
            k: demand if forces.joints[k].tie.alone else _asked(forces, envelope, k)
            for k, demand in self.likely.items()
        }
        used = {k: close[k].most if k in close else 0.0 for k in self.left}
        worst = _worst_joints(forces.joints, used, COPIES)
        asked = [close[k] if k in worst else _once(forces, envelope, k) for k in self.left]
        joints = tuple(
            self.settled[row.name]
            if row.name in self.settled
            else judge_worst(row, [one for one in asked if _has(one, row)], self.factors)
            for row in forces.structure.design.several(JointRow)
        )
        sticks = as_braced(self.sticks, envelope.of(SOFTEST))
        source = self.factors.source
        members = (*self.others, *judge_sticks(sticks, envelope, forces.cases, source, self.basis))
        racking = check_racking(forces, envelope) if forces.joints else None
        solved = envelope.forces.solution
        error, lost = float(solved.error.max(initial=0.0)), bool(solved.lost.any())
        return Strength(joints, members, racking, error, lost, self.through)


def _picked(
    forces: InternalForces, factors: Factors, basis: str, before: Strength | None
) -> _Picked:
    sticks, others = sticks_to_judge(forces, basis)
    through = tuple(
        forces.through(k) if joint.tie.alone else None for k, joint in enumerate(forces.joints)
    )
    settled = {} if before is None else _as_before(forces, through, before)
    left = [k for k, one in enumerate(forces.joints) if not _all_in(one, settled)]
    rough = {k: rough_uses(forces.through(k), forces.joints[k], forces.cases) for k in left}
    tops = {k: float(use.max(initial=0.0)) for k, use in rough.items()}
    near = _worst_joints(forces.joints, tops, 2 * COPIES)
    likely = {k: _most_used(forces, k, rough[k]) for k in near}
    by_joint = [cases for k, (_, cases) in likely.items() if not forces.joints[k].tie.alone]
    by_stick = may_govern(sticks, forces, FIRST)
    heaviest = np.array([first_greatest(forces.cases.downward)], dtype=np.intp)
    return _Picked(
        forces,
        factors,
        basis,
        sticks,
        others,
        through,
        settled,
        tuple(left),
        {k: demand for k, (demand, _) in likely.items()},
        _all(*by_joint, by_stick, forces.cases.calm, heaviest),
    )


def _in_question(picked: _Picked, found: Strength) -> _Picked:
    """Return what holds by little, with the other cases that may yet be too much for it.

    How stiff things are moves what goes through a joint that others share: any case may. What a
    stick is asked moves little: of those in which it is asked most as read more are taken.
    """
    forces = picked.forces
    shared = {
        one.row.name
        for one in found.joints
        if one.row.name not in picked.settled
        and _nearly_used(one.check)
        and not all(tie.joint.tie.alone for tie in one.asked)
    }
    left = [k for k in picked.left if any(p.row.name in shared for p in forces.joints[k].places)]
    names = {
        one.name
        for one in found.sticks
        if not isinstance(one, NotJudged) and _nearly_used(one.check)
    }
    sticks = tuple(one for one in picked.sticks if one.part.name in names)
    new = np.full(len(forces.cases.of), bool(left))
    new[may_govern(sticks, forces, _MORE * FIRST)] = True
    new[picked.cases] = False
    return replace(
        picked,
        sticks=sticks,
        settled={one.row.name: one for one in found.joints if one.row.name not in shared},
        left=tuple(left),
        likely={k: picked.likely[k] for k in left if k in picked.likely},
        cases=np.flatnonzero(new),
    )


def _nearly_used(check: Check) -> bool:
    return check.passes and check.rank > NEARLY_USED


def _as_before(
    forces: InternalForces, through: Sequence[Array | None], before: Strength
) -> dict[str, JointFound]:
    """Return by name the joints that failed ``before``, and those that take the same as then."""
    known = {one.row.name: one for one in before.joints}
    failed = {name: one for name, one in known.items() if not one.check.passes}
    for own, its, joint in zip(through, before.through, forces.joints, strict=True):
        if own is None or its is None or not _same(own, its):
            for place in joint.places:
                known.pop(place.row.name, None)
    return known | failed


def _same(one: Array, other: Array) -> bool:
    if one.shape != other.shape:
        return False
    size = np.abs(other).max(initial=0.0)
    return bool(np.abs(one - other).max(initial=0.0) <= _SAME * size)


def _all_in(one: Fastened, settled: Mapping[str, JointFound]) -> bool:
    return all(place.row.name in settled for place in one.places)


def worse_of(found: Sequence[Strength]) -> Strength:
    """Return the worse of what was found of a piece that may stand in one way or another."""
    if len(found) == 1:
        return found[0]
    joints = tuple(
        max(ways, key=lambda one: one.check.rank)
        for ways in zip(*(f.joints for f in found), strict=True)
    )
    sticks: dict[str, MemberStrength | NotJudged] = {}
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
        (),
    )


def _stick_rank(one: MemberStrength | NotJudged) -> float:
    return one.check.rank if isinstance(one, MemberStrength) else -1.0


def _all(*each: Integers) -> Integers:
    return distinct(np.concatenate([np.zeros(1, dtype=np.intp), *each]))


def _most_used(forces: InternalForces, k: int, rough: Array) -> tuple[TieDemand, Integers]:
    """Return a joint in cases in which it may be used most, and those (k,) in which it is.

    On a bed that only presses, by all sets, under what goes through it when all beds hold both
    ways: so it is exactly where nothing else joins what it joins, and the joint is alone.
    """
    through = forces.through(k)
    every = TieDemand(
        forces.joints[k], np.arange(len(through)), {STIFFNESS_AS_READ: through}, forces.cases
    )
    (coarse,) = every.by_set.values()
    size = np.abs(through) * forces.cases.longer[:, None]
    large = np.linalg.norm(size[:, :3], axis=1), np.linalg.norm(size[:, 3:], axis=1)
    # other fasteners may be tried, for which what is greatest may be the worst
    greatest = [most_used_cases(one, 1) for one in large]
    few = _all(*(most_used_cases(use, _MANY) for use in (*rough, coarse)), *greatest)
    nearer = TieDemand(forces.joints[k], few, dict.fromkeys(SETS, through[few]), forces.cases)
    most = np.max([*nearer.by_set.values()], axis=0)
    return nearer, _all(few[most_used_cases(most, FIRST)], *greatest)


def _asked(forces: InternalForces, envelope: Envelope, k: int) -> TieDemand:
    """Return what goes through a joint, by each set, in all cases looked at for anything.

    How stiff things are moves what goes through it, and with it which case is the worst; so do
    other fasteners.
    """
    through = envelope.by_set(envelope.forces.through(k))
    return TieDemand(forces.joints[k], envelope.which, through, forces.cases)


def _once(forces: InternalForces, envelope: Envelope, k: int) -> TieDemand:
    """Return what goes through a copy of a joint that is used less than others: in one case."""
    first = np.zeros(1, dtype=np.intp)
    wrenches = {STIFFNESS_AS_READ: envelope.forces.some(first).through(k)}
    return TieDemand(forces.joints[k], first, wrenches, forces.cases)


def _worst_joints(joints: Sequence[Fastened], used: Mapping[int, float], most: int) -> list[int]:
    """Return the ties, by number, at which each joint is used most: so many of its copies."""
    names = dict.fromkeys(place.row.name for k in used for place in joints[k].places)
    found: dict[int, None] = {}
    for name in names:
        own = [k for k in used if any(p.row.name == name for p in joints[k].places)]
        found.update(dict.fromkeys(sorted(own, key=lambda k: -used[k])[:most]))
    return list(found)


def _has(one: TieDemand, row: JointRow) -> bool:
    return any(place.row.name == row.name for place in one.joint.places)
