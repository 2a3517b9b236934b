"""Which edges there are between bodies and to the ground, by geometry and by what is written."""

from collections.abc import Container, Iterator, Mapping, Sequence

import numpy as np

from ...design.on_ground import TOUCHING
from ...design.placing import Body
from ...design.structure import Structure
from ...units.arrays import Array
from ..tables.joint_table import JointRow
from .edge import GROUND, Edge, Holds
from .face import Face, point_face
from .fit import CARRIED_ACROSS, FIT
from .meeting import boxes_near, capping, faces_met
from .surfaces import Surfaces, surfaces_of

_Rows = Mapping[frozenset[str], Sequence[JointRow]]
"""By the names of two parts, the joints between them."""


def swings(structure: Structure, i: int) -> bool:
    """Return whether a body is no solid that meets others: a weight, a wheel, or what swings."""
    body = structure.bodies[i]
    hook = structure.design.parts[body.part].hangs_at
    return not body.shape.stands or hook is not None


def edges_found(structure: Structure) -> Iterator[Edge]:
    """Yield every edge: to the ground, between what meets, and where one is placed or hung."""
    bodies, parts = structure.bodies, structure.design.parts
    for i, body in enumerate(bodies):
        if parts[body.part].embed > 0.0:
            yield Edge(i, GROUND, Holds.EMBEDDED)
        elif body.bottom <= TOUCHING and body.shape.hulls() and body.shape.stands:
            yield Edge(i, GROUND, Holds.STANDS)
    solid = {i: surfaces_of(body) for i, body in enumerate(bodies) if not swings(structure, i)}
    rows = _rows(structure)
    met: set[frozenset[int]] = set()
    for of, to, face in _meeting(structure, solid, rows):
        met.add(frozenset((of, to)))
        yield _edge(structure, rows, of, to, face)
    for of, to, face, apart in _placed_apart(structure, solid, met):
        yield _edge(structure, rows, of, to, face, apart)
    swinging = {parts[body.part].name for i, body in enumerate(bodies) if i not in solid}
    for i, body in enumerate(bodies):
        if i not in solid or parts[body.part].place.reference in swinging:
            yield from edges_hung(structure, i)


def _rows(structure: Structure) -> _Rows:
    found: dict[frozenset[str], list[JointRow]] = {}
    for row in structure.design.several(JointRow):
        found.setdefault(frozenset((row.of, row.to)), []).append(row)
    return found


def _edge(
    structure: Structure, rows: _Rows, of: int, to: int, face: Face, apart: float = 0.0
) -> Edge:
    parts = structure.design.parts
    one, other = (parts[structure.bodies[k].part] for k in (of, to))
    placed = one.place.reference == other.name
    loose = one.loose if placed else one.loose or other.loose
    holds = Holds.RESTS if loose else Holds.ASSUMED
    if frozenset((one.name, other.name)) in rows:
        holds = Holds.FASTENED
    return Edge(of, to, holds, face, placed, apart)


def _meeting(
    structure: Structure, solid: Mapping[int, Surfaces], rows: _Rows
) -> Iterator[tuple[int, int, Face]]:
    """Yield ``of``, ``to`` and the face of bodies that meet.

    ``of`` is what is fastened to the other, or written to stand on it, else the upper one.
    """
    bodies, parts = structure.bodies, structure.design.parts
    for i, j in _pairs(solid):
        one, other = parts[bodies[i].part], parts[bodies[j].part]
        joints = rows.get(frozenset((one.name, other.name)), ())
        first = one.place.reference == other.name or any(row.of == one.name for row in joints)
        second = other.place.reference == one.name or any(row.of == other.name for row in joints)
        if first == second:
            first = bodies[i].bottom > bodies[j].bottom + FIT
        of, to = (i, j) if first else (j, i)
        bridged = any(row.blocks is not None or row.through is not None for row in joints)
        face = faces_met(solid[of], solid[to], bridged)
        if face is not None:
            yield of, to, face


def _pairs(solid: Mapping[int, Surfaces]) -> list[tuple[int, int]]:
    """Return the pairs of bodies whose boxes lie within the fit of each other."""
    if not solid:
        return []
    index, boxes = list(solid), np.array([one.box for one in solid.values()])
    near = boxes_near(np.moveaxis(boxes, 1, 0)[:, :, None], np.moveaxis(boxes, 1, 0)[:, None, :])
    return [(index[a], index[b]) for a, b in np.argwhere(np.triu(near, 1)).tolist()]


def _placed_apart(
    structure: Structure, solid: Mapping[int, Surfaces], met: Container[frozenset[int]]
) -> Iterator[tuple[int, int, Face, float]]:
    """Yield what is written to stand on something that it meets nowhere, and yet is carried by.

    A hollow roof or lid that sits over walls within its own; or what misses it by an inch or less.
    """
    bodies, parts = structure.bodies, structure.design.parts
    for i in solid:
        place = parts[bodies[i].part].place
        below = [j for j in solid if parts[bodies[j].part].name == place.reference]
        if any(frozenset((i, j)) in met for j in below):
            continue
        way = 1.0 if place.on is not None else -1.0
        for j in below:
            upper, lower = (bodies[i], bodies[j]) if way > 0.0 else (bodies[j], bodies[i])
            apart = upper.bottom - lower.top
            if not -FIT <= apart <= CARRIED_ACROSS + 1.0e-9:
                continue
            apart = apart if apart > FIT else 0.0
            nearer = solid[i].moved(np.array([0.0, 0.0, -way * apart]))
            face = faces_met(nearer, solid[j]) or capping(nearer, solid[j])
            if face is not None:
                yield i, j, face, apart


def edges_hung(structure: Structure, i: int) -> Iterator[Edge]:
    """Yield the edge of a weight, a wheel or what swings to the copy or part that is nearest."""
    bodies, parts = structure.bodies, structure.design.parts
    part = parts[bodies[i].part]
    at = bodies[i].origin.copy()
    if part.hangs_at is not None:
        at[2] = part.hangs_at
    of = part.place.reference
    near = [j for j, b in enumerate(bodies) if j != i and (of is None or parts[b.part].name == of)]
    near = [j for j in near if not bodies[j].shape.is_point]
    if not near:
        return
    to = min(near, key=lambda j: (_away(bodies[j], at), j))
    up = np.array([0.0, 0.0, 1.0])
    yield Edge(i, to, Holds.HUNG, point_face(at, up), of is not None)


def _away(body: Body, point: Array) -> float:
    low, high = body.extent
    return float(np.linalg.norm(np.maximum(np.maximum(low - point, point - high), 0.0)))
