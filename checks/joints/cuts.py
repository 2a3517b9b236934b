"""What is cut free at a joint: which bodies, what they bear on, and what pulls and pushes them.

What lies above a joint is cut free there and held by all joints that the cut goes through: once
alone, once with all that is not beneath the joint, since what props it may need propping itself.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from ...design import plane
from ...design.on_ground import BEDDING, TOUCHING
from ...design.shapes.shape import Array
from ...design.structure import Structure
from ...loads.actions import Blow
from ...loads.combinations import Factors
from ...statics.meeting import bearing_area
from ..borne import Borne, borne_by
from . import fastener_layout
from .carried import Fastened, carried
from .joint_demand import LoadSet, Resultant, Weight, load_sets, resultant
from .joint_places import Place

IN_PLANE = 0.05
"""Fasteners and faces within this (m) of each other count as in one plane: judgement."""

_SAME_WAY = 0.999


@dataclass(frozen=True, eq=False)
class Cut:
    """What is cut free at a joint: the bodies above (bodies,), and what the cut goes through.

    ``loads`` are on it, ``corners`` (k, 2) those of the face on which it presses, in the plane of
    ``axes`` (3, 3) (right, up, leaving) through ``origin`` (3,); no corners where it only hangs.
    ``within`` is all that it goes through where this is one place of it; empty where it is all.
    """

    above: NDArray[np.bool_]
    through: tuple[Place, ...]
    loads: Resultant
    origin: Array
    axes: Array
    corners: Array
    within: tuple[Place, ...] = ()

    @property
    def whole(self) -> tuple[Place, ...]:
        """Return all that it goes through, of one place the others as well."""
        return self.within or self.through


ByPlace = Callable[[Structure, Cut], tuple[Cut, ...]]
"""What parts a cut along a slender piece by the places at which it is fastened."""


def cuts_at(
    structure: Structure,
    fastened: Fastened,
    places: Sequence[Place],
    blow: Blow,
    factors: Factors,
    basis: str,
    slope: float,
    loads: Sequence[Borne],
    by_place: ByPlace,
) -> Mapping[str, tuple[Cut, ...]]:
    """Return the cuts at each joint by its name; what several joints cut free is worked out once.

    Arguments as ``find_joints``.
    """
    goes = carried(structure, fastened)
    known: dict[tuple[bool, ...], Cut] = {}
    apart: dict[tuple[bool, ...], tuple[Cut, ...]] = {}
    found: dict[str, tuple[Cut, ...]] = {}
    for name in dict.fromkeys(place.row.name for place in places):
        of = {place.of for place in places if place.row.name == name}
        to = {place.to for place in places if place.row.name == name}
        groups = [*_freed(goes, of), *_not_beneath(structure, goes, of, to)]
        keys: list[tuple[bool, ...]] = []
        for above in _distinct(structure, groups, loads):
            key = tuple(above.tolist())
            if key not in known:
                sets = load_sets(factors, basis, [one.load for one in borne_by(loads, above)])
                known[key] = _cut(structure, places, above, blow, sets, slope)
                apart[key] = _at_each(structure, known[key], by_place)
            keys.append(key)
        each = [one for key in keys for one in apart[key]]
        alone = [one for one in each if any(place.row.name == name for place in one.through)]
        found[name] = (*(known[key] for key in keys), *alone)
    return found


def face_of(through: Sequence[Place]) -> tuple[Array, Array, Array]:
    """Return the origin, axes (3, 3) and corners (k, 2) of the face on which some places press.

    No corners where they leave in more ways than one, or not in one plane.
    """
    first = through[0].face
    same = all(float(place.face.leaves @ first.leaves) > _SAME_WAY for place in through)
    near = [abs(float((place.face.origin - first.origin) @ first.leaves)) for place in through]
    if same and max(near) < BEDDING:
        axes = np.stack([first.right, first.up, first.leaves])
        moved = [_in_frame(place, first.origin, axes) for place in through]
        corners = fastener_layout.pressing_corners(moved, BEDDING)
        if len(corners) >= 3:
            return first.origin, axes, corners
    return np.zeros(3), np.eye(3), np.empty((0, 2))


def _at_each(structure: Structure, cut: Cut, by_place: ByPlace) -> tuple[Cut, ...]:
    """Return the cuts at each place of a slender piece that is fastened at three or more."""
    if len(cut.through) < 3 or len({place.of for place in cut.through}) > 1:
        return ()
    return by_place(structure, cut)


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
    mass, centre = structure.body_mass * above, structure.steady_centres
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
    return face_of(through)


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
