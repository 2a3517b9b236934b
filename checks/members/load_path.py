"""What holds what: how weight and wind go from body to body down to the ground.

A part is held by those that joints fasten it to, else by the one it stands on or hangs under where
it touches that, else by what it touches that finds the ground without it.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from ...design.shapes.rotor import Rotor
from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import GRAVITY, TOUCHING, WEIGHINGS, Structure
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...materials.metal import Metal
from ..borne import Borne
from ..joints.joint_demand import LoadSet, load_sets, wind_wrench
from ..joints.joint_places import Place
from .member_check import Stuff
from .sticks import Stick, TurnedBox, box_of, stick_of, touch, where_touched
from .uprights import Mask, touching

Blow = Callable[[NDArray[np.bool_]], Actions]
"""The wind's actions (Q, D, C) on some of the bodies (bodies,) alone."""

_ALONG = 5
"""At so many points what lies along a stick is taken to touch it."""


@dataclass(frozen=True, eq=False)
class Hold:
    """Body ``held`` passes what it carries to body ``by`` at ``points`` (k, 3) in m."""

    held: int
    by: int
    points: Array


@dataclass(frozen=True, eq=False)
class LoadPath:
    """Who holds whom; ``sticks`` and ``boxes`` by body, ``near`` (bodies, bodies) who touches.

    ``order`` has each body after all that it holds, without those that hold each other in a circle.
    """

    sticks: tuple[Stick | None, ...]
    boxes: tuple[TurnedBox, ...]
    near: Mask
    holds: tuple[Hold, ...]
    order: tuple[int, ...]

    def of(self, i: int) -> list[Hold]:
        """Return where a body is held."""
        return [hold for hold in self.holds if hold.held == i]

    def on(self, i: int) -> list[Hold]:
        """Return what a body holds."""
        return [hold for hold in self.holds if hold.by == i]


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
    far a piece bends.
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
        return tuple(dict.fromkeys(one.load.name for one in self.sets if one.load is not None))


def load_path(structure: Structure, places: Sequence[Place]) -> LoadPath:
    """Return who holds whom in a structure with joints at ``places``."""
    bodies = structure.bodies
    boxes = tuple(box_of(body) for body in bodies)
    sticks = tuple(stick_of(body) for body in bodies)
    near = _near(structure, boxes)
    pairs = _pairs(structure, near, sticks, places)
    order = _in_order(pairs, len(bodies))
    at_joints: dict[tuple[int, int], list[Array]] = {}
    for place in places:
        at_joints.setdefault((place.of, place.to), []).append(place.points)
    holds: list[Hold] = []
    for held, by in pairs:
        points = (
            np.vstack(at_joints[held, by])
            if (held, by) in at_joints
            else _contact(structure, sticks, boxes, held, by)
        )
        hook = structure.design.parts[bodies[held].part].hangs_at
        if hook is not None:
            points = np.column_stack([points[:, :2], np.full(len(points), hook)])
        holds.append(Hold(held, by, points))
    return LoadPath(sticks, boxes, near, tuple(holds), tuple(order))


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
    actions = {i: _blown(structure, i, blow) for i in _one_of_each(structure, above)}
    cases = _cases(list(actions.values()))
    borne = [one for one in loads if one.body in above]
    sets = load_sets(factors, basis, [one.load for one in borne])
    tried = (*sets, LoadSet("typical", 1.0, 1.0))
    found: dict[int, tuple[Array, Array]] = {}
    own = {i: _own(structure, i, actions, cases, tried) for i in above}
    given: dict[int, list[tuple[Array, Array]]] = {}
    for one in borne:
        force = _given(one, tried, own[one.body].force)
        given.setdefault(one.body, []).append((np.asarray(one.load.at), force))
    total = {i: [one.force, one.moment] for i, one in own.items()}
    for i, each in given.items():
        for point, force in each:
            total[i][0] = total[i][0] + force
            total[i][1] = total[i][1] + np.cross(point, force)
    numbers = {id(hold): k for k, hold in enumerate(path.holds)}
    for i in path.order:
        holds = path.of(i) if i in total else []
        if not holds:
            continue
        force, moment = total[i]
        points = np.vstack([hold.points for hold in holds])
        shares, rest = shared(points, force, moment)
        at = 0
        for hold in holds:
            size = len(hold.points)
            passed = shares[..., at : at + size, :]
            couple = rest * (size / len(points))
            at += size
            if hold.by not in total:
                continue
            found[numbers[id(hold)]] = passed, couple
            below = total[hold.by]
            below[0] = below[0] + passed.sum(axis=-2)
            below[1] = below[1] + np.cross(hold.points, passed).sum(axis=-2) + couple
    azimuths = next(iter(actions.values())).azimuths
    return Carried(
        own,
        given,
        found,
        cases,
        azimuths,
        sets,
    )


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


def _near(structure: Structure, boxes: Sequence[TurnedBox]) -> Mask:
    """Return which bodies touch: by upright boxes, then by boxes turned with them."""
    near = touching(structure)
    for i, j in np.argwhere(np.triu(near)).tolist():
        if not _is_free(structure, i) and not _is_free(structure, j):
            near[i, j] = near[j, i] = bool(touch(boxes[i], boxes[j])[0])
    return near


def _is_free(structure: Structure, i: int) -> bool:
    """Return whether a body touches only what it is placed on."""
    body = structure.bodies[i]
    swings = structure.design.parts[body.part].hangs_at is not None
    return swings or isinstance(body.shape, (Weight, Rotor))


def _pairs(
    structure: Structure, near: Mask, sticks: Sequence[Stick | None], places: Sequence[Place]
) -> list[tuple[int, int]]:
    """Return who is held by whom, (held, by)."""
    bodies, parts = structure.bodies, structure.design.parts
    joined = dict.fromkeys((place.of, place.to) for place in places)
    has_joint = {held for held, _ in joined}
    placed: dict[tuple[int, int], None] = {}
    for i, body in enumerate(bodies):
        name = parts[body.part].place.reference
        if i in has_joint or name is None:
            continue
        on = [j for j in np.flatnonzero(near[i]) if parts[bodies[j].part].name == name]
        placed.update({(i, int(j)): None for j in on})
    sure = {**joined, **placed}
    sits = {held for held, _ in sure}
    leaning: dict[tuple[int, int], None] = {}
    for i, body in enumerate(bodies):
        grounded = body.bottom <= TOUCHING
        if i in has_joint or grounded or (sticks[i] is None and i in sits):
            continue
        based = _based_without(structure, near, i)
        for j in np.flatnonzero(near[i] & based).tolist():
            if (j, i) not in sure and (i, j) not in sure and not _is_free(structure, j):
                leaning[i, j] = None
    return [*sure, *(pair for pair in leaning if _holds(structure, leaning, sits, *pair))]


def _holds(
    structure: Structure, leaning: dict[tuple[int, int], None], sits: set[int], i: int, j: int
) -> bool:
    """Return whether ``j`` holds ``i`` where each might hold the other.

    What stands on something by itself holds what only leans there, as an arm its brace; of two
    alike the lower holds the upper.
    """
    if (j, i) not in leaning:
        return True
    if (i in sits) != (j in sits):
        return j in sits
    heights = [body.bottom + body.top for body in (structure.bodies[i], structure.bodies[j])]
    return heights[1] < heights[0] - TOUCHING


def _based_without(structure: Structure, near: Mask, i: int) -> Mask:
    """Return which bodies find the ground without body ``i``."""
    reached = np.array([body.bottom <= TOUCHING for body in structure.bodies])
    reached[i] = False
    while True:
        further = reached | near[reached].any(axis=0)
        further[i] = False
        if np.array_equal(further, reached):
            return reached
        reached = further


def _contact(
    structure: Structure,
    sticks: Sequence[Stick | None],
    boxes: Sequence[TurnedBox],
    held: int,
    by: int,
) -> Array:
    """Return the points (k, 3) at which two bodies are taken to touch."""
    if isinstance(structure.bodies[held].shape, (Weight, Rotor)):
        return structure.bodies[held].origin[None]
    found: list[tuple[float, Array]] = []
    for i, j in ((held, by), (by, held)):
        stick = sticks[i]
        reach = None if stick is None else where_touched(stick, boxes[j])
        if stick is not None and reach is not None:
            low, high = reach
            count = _ALONG if high - low > 2.0 * stick.wide else 1
            places = np.linspace(low, high, count) if count > 1 else [(low + high) / 2.0]
            found.append((high - low, np.array([stick.point(float(s)) for s in places])))
    if found:
        return min(found, key=lambda one: one[0])[1]
    low = np.maximum(structure.bodies[held].extent[0], structure.bodies[by].extent[0])
    high = np.minimum(structure.bodies[held].extent[1], structure.bodies[by].extent[1])
    corners = [(x, y) for x in (low[0], high[0]) for y in (low[1], high[1])]
    return np.array([(x, y, (low[2] + high[2]) / 2.0) for x, y in corners])


def _in_order(pairs: Sequence[tuple[int, int]], count: int) -> list[int]:
    """Return bodies, each after all that it holds; none that hold each other in a circle."""
    left = set(range(count))
    waits = {i: {held for held, by in pairs if by == i} for i in left}
    order: list[int] = []
    while ready := [i for i in sorted(left) if not waits[i] & left]:
        order += ready
        left -= set(ready)
    return order


def _above(path: LoadPath, which: Sequence[int]) -> list[int]:
    found, edge = set(which), set(which)
    while edge:
        edge = {hold.held for hold in path.holds if hold.by in edge} - found
        found |= edge
    return sorted(found)


def taken_alike(structure: Structure, i: int) -> tuple[object, ...]:
    """Return what bodies have in common that take the same from the wind, moved in plan."""
    body = structure.bodies[i]
    turned = tuple(np.round(body.rotation, 9).ravel().tolist())
    return body.part, turned, round(float(body.origin[2]), 9)


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
    actions: dict[int, Actions],
    cases: tuple[str, ...],
    sets: Sequence[LoadSet],
) -> Wrench:
    """Return what a body takes from its weight and the wind on it alone, in all sets."""
    body = structure.bodies[i]
    alike = [k for k in actions if taken_alike(structure, k) == taken_alike(structure, i)]
    twin = alike[0] if alike else next(iter(actions))
    # the wind finds nothing of a point mass
    wrench = wind_wrench(actions[twin] if alike else actions[twin].times(0.0))
    names = actions[twin].names
    # without suction of its own a body takes the same with that on others
    index = [names.index(c if c in names else c.removesuffix(", suction")) for c in cases]
    moved = body.origin - structure.bodies[twin].origin
    F = wrench[0][..., index, :]
    M = wrench[1][..., index, :] + np.cross(moved, F)
    copies = sum(one.part == body.part for one in structure.bodies)
    moments = body.shape.moments()
    local = moments.first / moments.volume if moments.volume else np.zeros(3)
    centre = body.place(local)
    forces: list[Array] = []
    couples: list[Array] = []
    for one in sets:
        mass = structure.part_mass[WEIGHINGS.index(one.weighing), body.part] / copies
        pull = np.array([0.0, 0.0, -one.dead * mass * GRAVITY])
        wind = one.live if one.load is None else 0.0
        forces.append(one.longer * (wind * F + pull))
        couples.append(one.longer * (wind * M + np.cross(centre, pull)))
    return Wrench(np.stack(forces), np.stack(couples))


def _given(borne: Borne, sets: Sequence[LoadSet], like: Array) -> Array:
    """Return the force (…, 3) of a named load in each set, shaped as ``like``."""
    push: Array = borne.load.force * np.asarray(borne.load.direction)
    live = [one.live * one.longer if one.load == borne.load else 0.0 for one in sets]
    return np.zeros(like.shape) + np.array(live)[:, None, None, None, None] * push
