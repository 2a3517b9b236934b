"""Legs that lean against each other in pairs, as under a swing: pressed along themselves and bent.

In the plane of a pair its top is held by both legs as by a triangle. Square to that plane nothing
holds it but bending: each takes half, as a stick held fast at its foot. Where nothing holds the
feet, what the pair carries would have to keep it from falling over: such a pair is not judged.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from ...design.on_ground import TOUCHING
from ...design.shapes.shape import Array
from ...design.structure import Structure
from ..joints.joint_places import Place
from .beams import longer, stick_check
from .carried_down import Carried
from .columns import column_rule
from .governs import as_column, used
from .load_path import LoadPath
from .member_check import Member, NotJudged
from .post_strength import PostStrength, post_strength
from .sticks import Stick

AT_TOP = 0.85
"""Share of its length beyond which what a leg carries is at its top: judgement."""

MEET = 3.0
"""Tops of legs that lie nearer than so many times their width meet: judgement."""

_APART = 0.05
"""Sine of the least angle between the legs of a pair."""


@dataclass(frozen=True, eq=False)
class Pair:
    """Two legs by body that lean against each other, with their sticks, each from foot to top."""

    bodies: tuple[int, int]
    sticks: tuple[Stick, Stick]
    strength: PostStrength

    @property
    def square(self) -> Array:
        """Return the unit vector (3,) square to the plane in which both lie."""
        normal = np.cross(self.sticks[0].along, self.sticks[1].along)
        return normal / np.linalg.norm(normal)


def is_leg(structure: Structure, path: LoadPath, i: int) -> bool:
    """Return whether a body is a stick that leans up from the ground, or from a base to another.

    Alone on a base it is an arm.
    """
    if not _leans_up(structure, path, i):
        return False
    if structure.bodies[i].bottom <= TOUCHING:
        return True
    others = [j for j in range(len(structure.bodies)) if j != i and _leans_up(structure, path, j)]
    return any(_meets(path, i, j) for j in others)


def _leans_up(structure: Structure, path: LoadPath, i: int) -> bool:
    """Return whether a body is a stick that leans and is held by ground or at its foot alone."""
    stick = path.sticks[i]
    if stick is None or stick.leans * stick.length <= stick.wide:
        return False
    if structure.bodies[i].bottom <= TOUCHING:
        return True
    held, upward = path.of(i), _from_foot(stick)
    highest = [float(upward.at(hold.points).max()) for hold in held]
    return bool(held) and max(highest) < (1.0 - AT_TOP) * stick.length


def pairs_of(
    structure: Structure,
    path: LoadPath,
    places: Sequence[Place],
    legs: Sequence[int],
    basis: str,
) -> list[Pair | NotJudged]:
    """Return legs in pairs, and those that cannot be judged with the reason.

    ``places`` are the joints where they stand.
    """
    found: list[Pair | NotJudged] = []
    left = list(legs)
    while left:
        i = left.pop(0)
        part = structure.design.parts[structure.bodies[i].part]
        mates = [j for j in legs if j != i and _meets(path, i, j)]
        mate = mates[0] if len(mates) == 1 else None
        if mate is None or mate not in left:
            found.append(NotJudged(part.name, "leans alone" if not mates else "leans on several"))
            continue
        left.remove(mate)
        one = _pair(structure, path, i, mate, basis)
        if isinstance(one, Pair):
            feet = zip(one.bodies, one.sticks, strict=True)
            if not all(_holds_foot(structure, places, k, stick) for k, stick in feet):
                one = NotJudged(part.name, "feet not held")
        found.append(one)
        if isinstance(one, NotJudged):
            other = structure.design.parts[structure.bodies[mate].part]
            found.append(NotJudged(other.name, one.why))
    return found


def pressing(first: Array, second: Array, force: Array) -> Array:
    """Return the forces (…, 2) in N that press two legs under a force (…, 3) in N on their top.

    ``first`` and ``second`` (3,) are unit vectors up along them. C1 u1 + C2 u2 = -P for the part of
    P in their plane; drawn below 0. Source: statics of a triangle.
    """
    square = np.cross(first, second)
    square = square / np.linalg.norm(square)
    within = force - (force @ square)[..., None] * square
    matrix = np.linalg.pinv(np.stack([first, second]))
    return -np.asarray(within @ matrix, dtype=float)


def check_pair(
    structure: Structure, path: LoadPath, carried: Carried, pair: Pair, factors: str, basis: str
) -> list[Member]:
    """Return the worst of bending, pressing and shear in each leg of a pair."""
    tops = np.array([stick.point(stick.length) for stick in pair.sticks])
    top = tops.mean(axis=0)
    square = pair.square
    force = carried.own[pair.bodies[0]].force * 0.0
    couple = force
    for k, hold in enumerate(path.holds):
        if hold.by in pair.bodies and k in carried.arrives:
            passed, rest = carried.arrives[k]
            force = force + passed.sum(axis=-2)
            couple = couple + np.cross(hold.points - top, passed).sum(axis=-2) + rest
    across = force[..., 0] * 0.0
    for i in pair.bodies:
        for _, push in carried.given.get(i, []):
            # anywhere on a leg: as if on the top, and in the middle between top and foot
            force = force + push
            across = across + np.linalg.norm(push, axis=-1) * pair.sticks[0].length / 4.0
    lasts = carried.lasting(pair.strength.stuff)[:, None, None, None]
    force, couple, across = lasts[..., None] * force, lasts[..., None] * couple, lasts * across
    own = [lasts[..., None] * carried.own[i].force for i in pair.bodies]
    pressed = pressing(pair.sticks[0].along, pair.sticks[1].along, force + (own[0] + own[1]) / 2.0)
    found: list[Member] = []
    for n, (i, stick) in enumerate(zip(pair.bodies, pair.sticks, strict=True)):
        found.append(
            _leg(
                structure,
                carried,
                i,
                own[n],
                stick,
                pair.strength,
                square,
                pressed[..., n] - own[n] @ stick.along / 2.0,
                (force @ square) / 2.0,
                couple / 2.0,
                across,
                factors,
                basis,
            )
        )
    return found


def _leg(
    structure: Structure,
    carried: Carried,
    i: int,
    own: Array,
    stick: Stick,
    strength: PostStrength,
    square: Array,
    pressing: Array,
    sideways: Array,
    couple: Array,
    across: Array,
    factors: str,
    basis: str,
) -> Member:
    L = stick.length
    part = structure.design.parts[structure.bodies[i].part]
    level = np.cross(square, stick.along)
    in_plane = np.abs(own @ level) * L / 8.0 + np.abs(couple @ square) + across
    out = sideways * L + own @ square * L / 2.0
    out_of_plane = np.abs(out) + np.abs(couple @ level)
    first, second = (
        in_plane * abs(float(level @ way)) + out_of_plane * abs(float(square @ way))
        for way in stick.ways
    )
    effective = column_rule("stands out") * L
    pushed = np.hypot(
        np.abs(own @ level) / 2.0 + np.abs(couple @ square) / L,
        np.abs(sideways + own @ square) + np.abs(couple @ level) / L,
    )
    lasts = longer(carried, strength.stuff)
    use = used(strength, (pressing, 0.0), [(first, second)], [pushed], effective, lasts)
    at = np.unravel_index(int(use.most[:-1].argmax()), use.most[:-1].shape)
    s, q, d, c = (int(k) for k in at)
    governs = use.governs(at)
    amounts = {"bending": float(np.hypot(first[at], second[at])), "shear": float(pushed[at])}
    asked, most = amounts.get(governs, abs(float(pressing[at]))), float(use.most[at])
    check = stick_check(
        part.name, carried, (s, d, c), most, asked, governs, strength, factors, basis
    )
    pressed = use.pressed(slice(-1))
    governs, check = as_column(governs, check, strength, effective, pressed)
    named = bool(carried.sets[s].loads)
    shown = (s if named else -1, q, d, c)
    stiffness = min(strength.stiffness)
    moved = abs(float(sideways[shown])) * L**3 / 3.0 + abs(float(own[shown] @ square)) * L**3 / 8.0
    return Member(
        name=part.name,
        check=check,
        role="leg of a pair",
        governs=governs,
        count=1,
        deflection=moved / stiffness / (carried.times(s, strength.stuff) if named else 1.0),
        stuff=strength.stuff,
        loads=carried.named,
        graded=part.grade is not None,
        slender=strength.slender(effective),
    )


def _meets(path: LoadPath, i: int, j: int) -> bool:
    """Return whether two legs touch, or carry something in common, and their tops lie close."""
    carried = [{hold.held for hold in path.on(k)} for k in (i, j)]
    both = [path.sticks[k] for k in (i, j)]
    tops = [stick.point(stick.length) for stick in map(_from_foot, filter(None, both))]
    apart = float(np.linalg.norm(tops[0] - tops[1]))
    widths = [stick.wide for stick in both if stick is not None]
    together = bool(carried[0] & carried[1]) or bool(path.near[i, j])
    return together and apart < MEET * max(widths)


def _pair(structure: Structure, path: LoadPath, i: int, j: int, basis: str) -> Pair | NotJudged:
    part = structure.design.parts[structure.bodies[i].part]
    both = path.sticks[i], path.sticks[j]
    sticks = [_from_foot(stick) for stick in both if stick is not None]
    crossed = np.linalg.norm(np.cross(sticks[0].along, sticks[1].along))
    carries = [hold for hold in path.holds if hold.by in (i, j)]
    low = [
        hold
        for hold in carries
        for stick in (sticks[0 if hold.by == i else 1],)
        if float(stick.at(hold.points).min()) < AT_TOP * stick.length
    ]
    if crossed < _APART or low:
        return NotJudged(part.name, "held otherwise")
    length = max(stick.length for stick in sticks)
    strengths: list[PostStrength] = []
    for k, stick in zip((i, j), sticks, strict=True):
        own = structure.design.parts[structure.bodies[k].part]
        strength = post_strength(stick.section, own.material, own.grade, length, basis)
        if isinstance(strength, str):
            return NotJudged(part.name, strength)
        strengths.append(strength)
    if not _are_alike(*strengths):
        return NotJudged(part.name, "unlike legs")
    return Pair((i, j), (sticks[0], sticks[1]), strengths[0])


def _holds_foot(structure: Structure, places: Sequence[Place], i: int, stick: Stick) -> bool:
    """Return whether the foot of a leg is set in the ground, or a joint holds it to a base."""
    if structure.design.parts[structure.bodies[i].part].embed > 0.0:
        return True
    low = (1.0 - AT_TOP) * stick.length
    return any(i in (at.of, at.to) and float(stick.at(at.points).max()) < low for at in places)


def _are_alike(one: PostStrength, other: PostStrength) -> bool:
    """Return whether two legs are of the same section and stuff."""
    sizes = [(each.area, *each.moduli, *each.stiffness) for each in (one, other)]
    return one.stuff == other.stuff and bool(np.allclose(*sizes, rtol=1.0e-6, atol=0.0))


def _from_foot(stick: Stick) -> Stick:
    """Return a stick that runs up from its foot."""
    if stick.along[2] > 0.0:
        return stick
    ways = np.vstack([stick.ways[0], -stick.ways[1]])
    end = stick.point(stick.length)
    return Stick(end, -stick.along, ways, stick.length, stick.section, stick.beyond)
