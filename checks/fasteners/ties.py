"""The joints of a design as ties of its model: springs where the fasteners stand, and a bed."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from ... import materials
from ...design.structure import Structure
from ...statics.contacts.edge import GROUND
from ...statics.contacts.face import Face
from ...statics.contacts.graph import Graph
from ...statics.stiffness import (
    AXIAL,
    LATERAL,
    axial_stiffness,
    pressed_stiffness,
    slip_modulus,
    stiffness_rule,
)
from ...statics.tie import Tie
from ...units.arrays import Array
from ...units.frozen import ByIdentity
from ..timber.terms.driven import Driven, lengths
from ..timber.terms.joint_material import JointMaterial, met
from .fastener_sets import FastenerSet, JointPlace

_DRAWN = 0.7
"""Cosine from which a force along a direction draws a fastener more than it shears it."""


_NOTHING = 1.0e-6
"""Share of its stiffness sideways that stands for no stiffness at all along a fastener."""


class Fastened(ByIdentity, frozen=True):
    """The joints that fasten one body to another: their ``places``, and the tie that they make.

    ``at`` (places,) are the numbers of the first of each place's fasteners in the tie.
    """

    places: tuple[JointPlace, ...]
    tie: Tie
    structure: Structure

    @property
    def at(self) -> list[slice]:
        """Return which fasteners of the tie belong to each place."""
        ends = np.cumsum([0, *(len(place.points) for place in self.places)]).tolist()
        return [slice(a, b) for a, b in pairwise(ends)]


def fastened(
    structure: Structure, graph: Graph, places: Sequence[JointPlace], tied: Sequence[int] = ()
) -> tuple[Fastened, ...]:
    """Return a design's joints, those between the same two bodies as one tie.

    ``tied`` are bodies that lines join to the ground.
    """
    pairs: dict[tuple[int, int], list[JointPlace]] = {}
    for place in places:
        pairs.setdefault((place.of, place.to), []).append(place)
    held = [(edge.of, edge.to) for edge in graph.held]
    held += [(i, GROUND) for i in (*graph.grounded, *tied)]
    found: list[Fastened] = []
    for pair, own in pairs.items():
        others = [each for each in pairs if each != pair]
        alone = not _joined([*others, *held], pair)
        found.append(Fastened(tuple(own), tie_of(structure, own, alone=alone), structure))
    return tuple(found)


def tie_of(structure: Structure, places: Sequence[JointPlace], *, alone: bool) -> Tie:
    """Return the tie of all joints between two bodies."""
    first = places[0]
    stiffness: list[Array] = []
    ways: list[Array] = []
    kind: list[NDArray[np.str_]] = []
    slips: list[NDArray[np.bool_]] = []
    for place in places:
        own, along = _springs(place)
        ways.append(own)
        stiffness.append(along)
        kind.append(_kinds(place, own))
        slips.append(np.full(len(place.points), place.row.fastener.kind == "bolt"))
    return Tie(
        first.of,
        first.to,
        first.face,
        np.vstack([place.points for place in places]),
        np.vstack(stiffness),
        np.vstack(kind),
        _bed(structure, first.of, first.to, first.face),
        alone,
        np.concatenate(slips),
        np.concatenate(ways),
    )


def _joined(pairs: Sequence[tuple[int, int]], pair: tuple[int, int]) -> bool:
    """Return whether pairs of bodies join the two of a pair."""
    beside: dict[int, list[int]] = {}
    for a, b in pairs:
        beside.setdefault(a, []).append(b)
        beside.setdefault(b, []).append(a)
    reached, edge = {pair[0]}, [pair[0]]
    while edge:
        edge = [j for i in edge for j in beside.get(i, ()) if j not in reached]
        reached.update(edge)
    return pair[1] in reached


def _springs(place: JointPlace) -> tuple[Array, Array]:
    """Return the ways (n, 3, 3) along which each fastener gives by itself, and its stiffness there.

    (n, 3) in N/m; the last way is the one that draws it. Two sets, one on each side of a block,
    give one after the other.
    """
    gives = np.zeros((len(place.points), 3, 3))
    for one in place.sets:
        axial, lateral = _stiffness(place, one)
        square = one.draws[:, :, None] * one.draws[:, None, :]
        gives += np.linalg.inv(lateral * np.eye(3) + (axial - lateral) * square)
    softness, found = np.linalg.eigh(gives)
    ways = np.swapaxes(found, -1, -2)
    drawn = np.abs(np.einsum("nkx,nx->nk", ways, _softest(place).draws))
    order = np.argsort(drawn, axis=1, kind="stable")
    ways = np.take_along_axis(ways, order[:, :, None], axis=1)
    stiffness = 1.0 / np.take_along_axis(softness, order, axis=1)
    held = stiffness > 10.0 * _NOTHING * stiffness.max()
    return ways, np.where(held, stiffness, 0.0)


def _softest(place: JointPlace) -> FastenerSet:
    return max(place.sets, key=lambda one: 1.0 / _stiffness(place, one)[1])


def _kinds(place: JointPlace, ways: Array) -> NDArray[np.str_]:
    """Return which springs (n, 3) draw fasteners rather than shear them: of blocks the softer."""
    sets = [_softest(place), *(place.sets if len(place.sets) > 1 else ())]
    along = [np.abs(np.einsum("nkx,nx->nk", ways, one.draws)) > _DRAWN for one in sets]
    return np.where(np.all(along, axis=0), AXIAL, LATERAL)


def _stiffness(place: JointPlace, one: FastenerSet) -> tuple[float, float]:
    """Return how stiff one fastener is in N/m, drawn and pushed sideways.

    Nails and staples drawn as pushed: nothing is published (judgement). A bolt is drawn as a screw
    with thread over its grip. What is not known to hold against a pull does not take part in it.
    """
    fastener, driven = place.row.fastener, one.driven
    d = fastener.diameter
    side, main = _density(driven.side), _density(driven.main)
    driven_cold = fastener.kind in ("nail", "staple") and not place.row.predrilled
    lateral = float(slip_modulus(fastener.kind, d, side, main, lead_holes=not driven_cold)) * (
        fastener.legs if fastener.kind == "staple" else 1
    )
    if driven.side.is_steel or driven.main.is_steel or driven.plate:
        lateral *= stiffness_rule("steel over wood")
    if one.holds.pull <= 0.0:
        return _NOTHING * lateral, lateral
    if fastener.kind in ("nail", "staple"):
        return lateral, lateral
    return float(axial_stiffness(d, _threaded(place, driven))), lateral


def _threaded(place: JointPlace, driven: Driven) -> float:
    fastener = place.row.fastener
    through, point = lengths(fastener.need("length"), driven)
    if fastener.kind == "bolt":
        return max(through, fastener.diameter)
    thread = fastener.thread_length or point
    return max(min(thread, point), fastener.diameter)


def _density(stuff: JointMaterial) -> float:
    """Return the mean density in kg/m3 of what a fastener is in; of steel that of the wood."""
    try:
        found = materials.find_material(stuff.name).typical
    except KeyError:
        return _WOOD
    return _WOOD if stuff.is_steel else found


_WOOD = 450.0
"""Density in kg/m3 of wood that nobody named: judgement."""


def _bed(structure: Structure, of: int, to: int, face: Face) -> float:
    """Return the stiffness in Pa/m of two bodies pressed together across a face.

    E over depth of each in turn, along the grain where they meet in end grain or on edge.
    """
    gives = 0.0
    for i, leaves in ((of, face.leaves), (to, -face.leaves)):
        body = structure.bodies[i]
        found = met(body, structure.design.parts[body.part], leaves)
        along = found.into in ("end grain", "panel edge")
        of_along = 1.0 if along else stiffness_rule("across over along")
        modulus = of_along * stiffness_rule("stiffness of wood")
        gives += 1.0 / float(pressed_stiffness(modulus, max(found.thickness, _THIN)))
    return 1.0 / gives


_THIN = 0.006
"""Sheets press as if no thinner than this (m)."""
