"""What comes on each body: weight, wind and named loads, brought down from body to body."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import GRAVITY, WEIGHINGS, Structure
from ...loads.actions import Actions, Blow
from ...loads.combinations import Factors
from ...materials.metal import Metal
from ..borne import Borne
from ..joints.joint_demand import LoadSet, load_sets, wind_wrench
from .load_path import LoadPath
from .member_check import Stuff
from .over_places import Touched, on_stick, places_of, spanning
from .sticks import Stick


@dataclass(frozen=True, eq=False)
class Wrench:
    """Force (S, Q, D, C, 3) in N and moment about the origin in N m: by sets, then as actions.

    The sets are those judged, and last load as it is.
    """

    force: Array
    moment: Array


@dataclass(frozen=True, eq=False)
class Carried:
    """What each body takes by itself, and what comes on it at each of its holds.

    ``own`` by body is weight and wind; ``given`` by body the named loads on it, each as a point and
    its force (…, 3); ``arrives`` by number of the hold: forces (…, k, 3) at its points and a couple
    (…, 3) that they cannot pass on. ``cases`` and ``azimuths`` as of ``Actions``. ``sets`` are what
    is tried, all as much as they ask of wood under wind; after them comes load as it is, for how
    far a piece bends. Where a stick is held at three places or more, each set comes once for each
    way in which such sticks share: rigid, span by span, in one piece; load as it is, span by span.
    """

    own: dict[int, Wrench]
    given: dict[int, list[tuple[Array, Array]]]
    arrives: dict[int, tuple[Array, Array]]
    cases: tuple[str, ...]
    azimuths: Array
    sets: tuple[LoadSet, ...]

    def lasting(self, stuff: Stuff) -> Array:
        """Return how much of each set (S + 1,) a stuff is asked: metal no more for long load."""
        metal = isinstance(stuff, Metal)
        return np.array([*(1.0 / one.longer if metal else 1.0 for one in self.sets), 1.0])

    def times(self, s: int, stuff: Stuff) -> float:
        """Return by how much set ``s`` is asked more than it is."""
        return 1.0 if isinstance(stuff, Metal) else self.sets[s].longer

    @property
    def named(self) -> tuple[str, ...]:
        """Return the names of the named loads that are tried."""
        return tuple(dict.fromkeys(load.name for one in self.sets for load in one.loads))


def carry(
    structure: Structure,
    path: LoadPath,
    which: Sequence[int],
    blow: Blow,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
) -> Carried:
    """Return what comes on the bodies ``which`` from all that they hold, and what they take.

    ``loads`` are those that the design names, ``basis`` that of judgement.
    """
    above = _above(path, which)
    alike = {taken_alike(structure, i): i for i in _one_of_each(structure, above)}
    actions = {i: _blown(structure, i, blow) for i in alike.values()}
    cases = _cases(list(actions.values()))
    borne = [one for one in loads if one.body in above]
    held = {i: places_of(path, i) for i in above}
    sticks = {i for i in above if held[i] and any(hold.by in held for hold in path.of(i))}
    sets = load_sets(factors, basis, [one.load for one in borne])
    count = len(sets)
    sets = sets * 3 if sticks else sets
    tried = (*sets, LoadSet("typical", 1.0, 1.0))
    found: dict[int, tuple[Array, Array]] = {}
    twins = {i: alike.get(taken_alike(structure, i)) for i in above}
    own = {i: _own(structure, i, twins[i], actions, cases, tried) for i in above}
    given: dict[int, list[tuple[Array, Array]]] = {}
    for one in borne:
        force = _given(one, tried, own[one.body].force)
        given.setdefault(one.body, []).append((np.asarray(one.load.at), force))
    total = _total(own, given)
    numbers = {id(hold): k for k, hold in enumerate(path.holds)}
    for i in path.order:
        holds = path.of(i) if i in total else []
        if not holds:
            continue
        force, moment = total[i]
        points = np.vstack([hold.points for hold in holds])
        shares, rest = shared(points, force, moment)
        couples = np.repeat(rest[..., None, :] / len(points), len(points), axis=-2)
        stick = path.sticks[i]
        if i in sticks and stick is not None:
            pushed = _pushed(path, i, stick, numbers, found, given, own[i].force)
            for n, way in enumerate(spanning(stick, holds, held[i], pushed), 1):
                some = [*range(n * count, (n + 1) * count), *([len(sets)] if n == 1 else [])]
                span, turns = (each[some] for each in way)
                moved = np.cross(points, span).sum(axis=-2) + turns.sum(axis=-2)
                more, rest = shared(points, force[some] - span.sum(axis=-2), moment[some] - moved)
                shares[some] = span + more
                couples[some] = turns + rest[..., None, :] / len(points)
        at = 0
        for hold in holds:
            size = len(hold.points)
            passed = shares[..., at : at + size, :]
            couple = couples[..., at : at + size, :].sum(axis=-2)
            at += size
            if hold.by not in total:
                continue
            found[numbers[id(hold)]] = passed, couple
            below = total[hold.by]
            below[0] = below[0] + passed.sum(axis=-2)
            below[1] = below[1] + np.cross(hold.points, passed).sum(axis=-2) + couple
    azimuths = next(iter(actions.values())).azimuths
    return Carried(own, given, found, cases, azimuths, sets)


def shared(points: Array, force: Array, moment: Array) -> tuple[Array, Array]:
    """Return the forces (…, k, 3) in N at points (k, 3) that carry a force and a moment.

    ``force`` (…, 3) and ``moment`` (…, 3) about the origin. Each point is a spring alike all ways
    and the piece rigid. With them the couple (…, 3) that they leave, such as a turn about the line
    on which all lie. Source: statics; an elastic group.
    """
    centre = points.mean(axis=0)
    arm = points - centre
    about = moment - np.cross(centre, force)
    inertia = (arm**2).sum() * np.eye(3) - arm.T @ arm
    gives: Array = np.asarray(np.linalg.pinv(inertia, rcond=1.0e-6), dtype=float)
    turn: Array = about @ gives
    turned: Array = np.cross(turn[..., None, :], arm).astype(np.float64, copy=False)
    forces = force[..., None, :] / len(points) + turned
    return forces, about - turn @ inertia


def taken_alike(structure: Structure, i: int) -> tuple[object, ...]:
    """Return what bodies have in common that take the same from the wind, moved in plan."""
    body = structure.bodies[i]
    turned = tuple(np.round(body.rotation, 9).ravel().tolist())
    return body.part, turned, round(float(body.origin[2]), 9)


def _pushed(
    path: LoadPath,
    i: int,
    stick: Stick,
    numbers: dict[int, int],
    found: dict[int, tuple[Array, Array]],
    given: dict[int, list[tuple[Array, Array]]],
    own: Array,
) -> Touched:
    """Return what pushes a stick: what came down on it, the named loads on it, and its own load."""
    holds = [hold for hold in path.on(i) if numbers[id(hold)] in found]
    arrived = [(hold.points, *found[numbers[id(hold)]]) for hold in holds]
    arrived += [(at[None], force[..., None, :], 0.0 * own) for at, force in given.get(i, [])]
    each = on_stick(stick, arrived) or [(0.0, 0.0 * own, 0.0 * own)]
    return Touched(
        np.array([at for at, _, _ in each]),
        np.stack([force for _, force, _ in each], axis=-2),
        np.stack([couple for _, _, couple in each], axis=-2),
        own,
    )


def _total(
    own: dict[int, Wrench], given: dict[int, list[tuple[Array, Array]]]
) -> dict[int, list[Array]]:
    """Return by body the force (…, 3) in N and moment (…, 3) in N m of all that it takes itself."""
    total = {i: [one.force, one.moment] for i, one in own.items()}
    for i, each in given.items():
        for point, force in each:
            total[i][0] = total[i][0] + force
            total[i][1] = total[i][1] + np.cross(point, force)
    return total


def _above(path: LoadPath, which: Sequence[int]) -> list[int]:
    found, edge = set(which), set(which)
    while edge:
        edge = {hold.held for hold in path.holds if hold.by in edge} - found
        found |= edge
    return sorted(found)


def _one_of_each(structure: Structure, which: Sequence[int]) -> list[int]:
    blown = [i for i in which if not isinstance(structure.bodies[i].shape, Weight)]
    return list({taken_alike(structure, i): i for i in reversed(blown)}.values())


def _blown(structure: Structure, i: int, blow: Blow) -> Actions:
    only = np.zeros(len(structure.bodies), dtype=bool)
    only[i] = True
    return blow(only)


def _cases(actions: Sequence[Actions]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for one in actions for name in one.names))


def _own(
    structure: Structure,
    i: int,
    alike: int | None,
    actions: dict[int, Actions],
    cases: tuple[str, ...],
    sets: Sequence[LoadSet],
) -> Wrench:
    """Return what a body takes from its weight and the wind on it alone, in all sets.

    ``alike`` is the body that takes the same from the wind, None where that finds nothing of it.
    """
    body = structure.bodies[i]
    twin = next(iter(actions)) if alike is None else alike
    # the wind finds nothing of a point mass
    wrench = wind_wrench(actions[twin].times(0.0) if alike is None else actions[twin])
    names = actions[twin].names
    index = [names.index(each) for each in cases]
    moved = body.origin - structure.bodies[twin].origin
    F = wrench[0][..., index, :]
    M = wrench[1][..., index, :] + np.cross(moved, F)
    centre = structure.body_centre[i]
    forces: list[Array] = []
    couples: list[Array] = []
    for one in sets:
        mass = structure.body_mass[WEIGHINGS.index(one.weighing), i]
        pull = np.array([0.0, 0.0, -one.dead * mass * GRAVITY])
        wind = 0.0 if one.loads else one.live
        forces.append(one.longer * (wind * F + pull))
        couples.append(one.longer * (wind * M + np.cross(centre, pull)))
    return Wrench(np.stack(forces), np.stack(couples))


def _given(borne: Borne, sets: Sequence[LoadSet], like: Array) -> Array:
    """Return the force (…, 3) of a named load in each set, shaped as ``like``."""
    push: Array = borne.load.force * np.asarray(borne.load.direction)
    live = [one.live * one.longer if borne.load in one.loads else 0.0 for one in sets]
    return np.zeros(like.shape) + np.array(live)[:, None, None, None, None] * push
