"""What the joint at each place of a slender piece takes that is fastened at three or more along it.

Beside the sharing of all as one rigid group: span by span, and in one piece. A named load acts
where it stands; wind and weight are taken as even along the piece, whatever else it carries. Where
nothing presses, what twists the piece about itself is left to all together.
"""

from collections import Counter
from itertools import pairwise

import numpy as np

from ...design.shapes.shape import Array
from ...design.structure import Structure
from ..joints.cuts import Cut, face_of
from ..joints.joint_demand import Resultant, load_wrench
from ..joints.joint_places import Place
from .load_path import Hold
from .over_places import Touched, spanning, together
from .sticks import Stick, stick_of


def along_a_rail(structure: Structure, cut: Cut) -> tuple[Cut, ...]:
    """Return the joint at each place as a cut of its own, in each of the two ways.

    None where not all that a cut goes through holds one and the same stick, at three places or
    more.
    """
    of = Counter(place.of for place in cut.through)
    stick = stick_of(structure.bodies[next(iter(of))]) if len(of) == 1 else None
    if stick is None:
        return ()
    reach = [stick.at(place.points) for place in cut.through]
    edges = [(float(each.min()), float(each.max())) for each in reach]
    spots = [
        [place for place, (a, b) in zip(cut.through, edges, strict=True) if low <= a and b <= high]
        for low, high in together(edges, stick.wide)
    ]
    if len(spots) < 3:
        return ()
    return tuple(
        _alone(cut, spot, way)
        for ways in _ways(stick, cut, spots)
        for spot, way in zip(spots, ways, strict=True)
    )


def _ways(stick: Stick, cut: Cut, spots: list[list[Place]]) -> list[list[tuple[Array, Array]]]:
    """Return by way and place the force (…, 3) and the moment (…, 3) about the origin there."""
    each = [place for spot in spots for place in spot]
    holds = [Hold(place.of, place.to, place.points) for place in each]
    points = np.vstack([place.points for place in each])
    ends = np.cumsum([0, *(sum(len(place.points) for place in spot) for spot in spots)])
    numbers = [list(range(a, b)) for a, b in pairwise(ends.tolist())]
    F, M = cut.loads.force, cut.loads.moment
    middle = stick.point(stick.length / 2.0)
    rest, over, none = F.copy(), M - np.cross(middle, F), np.zeros(F.shape)
    at, forces, couples = [stick.length / 2.0], [none], [none]
    for load in dict.fromkeys(load for one in cut.loads.sets for load in one.loads):
        acts = [one.live * one.longer if load in one.loads else 0.0 for one in cut.loads.sets]
        push = none + np.array(acts)[:, None, None, None, None] * load_wrench(load)[0]
        where = np.asarray(load.at)
        at.append(float(np.clip(stick.at(where), 0.0, stick.length)))
        forces.append(push)
        couples.append(np.cross(where - stick.point(at[-1]), push))
        rest = rest - push
        over = over - np.cross(where - middle, push)
    twist = over @ stick.along
    couples[0] = over - twist[..., None] * stick.along
    touched = Touched(
        np.array(at), np.stack(forces, axis=-2), np.stack(couples, axis=-2), rest, twist
    )
    lengthways = (F @ stick.along)[..., None] * stick.along / len(points)
    found: list[list[tuple[Array, Array]]] = []
    for force, couple in spanning(stick, holds, numbers, touched):
        held = force + lengthways[..., None, :]
        turned = np.cross(points, held) + (couple if len(cut.corners) else 0.0)
        found.append(
            [(held[..., k, :].sum(axis=-2), turned[..., k, :].sum(axis=-2)) for k in numbers]
        )
    return found


def _alone(cut: Cut, spot: list[Place], way: tuple[Array, Array]) -> Cut:
    """Return the cut through one place, pressing there alone where the whole presses."""
    loads = cut.loads
    taken = Resultant(*way, loads.azimuths, loads.cases, loads.sets)
    origin, axes, corners = face_of(spot)
    if len(cut.corners) == 0:
        corners = corners[:0]
    return Cut(cut.above, tuple(spot), taken, origin, axes, corners, cut.through)
