"""Puts a model together: nodes along sticks, rigid pieces, springs, and what loads do to them."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from ..design.structure import Structure
from ..units.arrays import Array, distinct
from .bars import Bar, body_bars
from .contacts.bed import COARSE_BED
from .contacts.edge import Edge
from .contacts.edges_found import swings
from .frame import Beams, end_forces
from .model import Model
from .stiffness import SOIL
from .system import FIXED, Integers, Springs, System, all_springs
from .tie import Footing, Tie
from .wrench import about, moved

_NEAR = 1.0e-2
"""Places along a stick that lie nearer than this (m) are one node."""

_SPREAD = 2.0
"""What meets a stick over more than so many times its greater side meets it at several nodes: those
that lie farther apart than its side."""


def model_of(
    structure: Structure,
    ties: Sequence[Tie],
    joined: Sequence[Edge],
    footings: Sequence[Footing],
    loaded: Sequence[tuple[int, Array]] = (),
) -> Model:
    """Return the model of a structure: its ``ties``, what is held without, and where it stands.

    ``joined`` are the graph's edges that are taken as held. ``loaded`` are bodies with the points
    (3,) at which loads act on them, where a stick has a node as well.
    """
    return _Building(structure, ties, joined, footings, loaded).model()


class _Building:
    """Puts a model together: nodes along sticks, rigid pieces, springs, and what loads do."""

    def __init__(
        self,
        structure: Structure,
        ties: Sequence[Tie],
        joined: Sequence[Edge],
        footings: Sequence[Footing],
        loaded: Sequence[tuple[int, Array]],
    ) -> None:
        self.structure, self.ties, self.footings = structure, tuple(ties), footings
        self.loaded = tuple(loaded)
        count = len(structure.bodies)
        self.sticks_at: list[tuple[Bar, ...]] = [
            () if swings(structure, i) else body_bars(structure, i) for i in range(count)
        ]
        meets: list[list[Array]] = [[] for _ in range(count)]
        one: Tie | Edge
        for one in (*ties, *joined):
            spots = _spots(one)
            for body in (one.of, one.to):
                meets[body].append(spots)
        for foot in footings:
            meets[foot.body] += [point[None] for point in distinct(foot.points, axis=0)]
        for body, point in loaded:
            meets[body].append(np.asarray(point)[None])
        self.nodes: list[Array] = []
        self.own: list[list[int]] = []
        self.sticks: list[Bar] = []
        self.places: list[Array] = []
        self.ends: list[tuple[int, int]] = []
        self.firsts: list[int] = []
        for i in range(count):
            self.own.append(self._nodes_of(i, meets[i]))
        self.group = list(range(len(self.nodes)))
        for one in joined:
            self._join(one)

    def _nodes_of(self, i: int, meets: Sequence[Array]) -> list[int]:
        """Return the nodes of a body: one of a rigid one, those along a stick or round a ring."""
        sticks = self.sticks_at[i]
        if not sticks:
            self.nodes.append(self.structure.bodies[i].place(_middle(self.structure, i)))
            return [len(self.nodes) - 1]
        found: list[int] = []
        before: int | None = None
        first = len(self.nodes)
        for n, stick in enumerate(sticks):
            places = _places(stick, meets, whole=len(sticks) == 1)
            closes = len(sticks) > 1 and n == len(sticks) - 1
            mine: list[int] = []
            for k, place in enumerate(places):
                if k == 0 and before is not None:
                    mine.append(before)
                elif k == len(places) - 1 and closes:
                    mine.append(first)
                else:
                    self.nodes.append(stick.point(float(place)))
                    mine.append(len(self.nodes) - 1)
            before = mine[-1] if len(sticks) > 1 else None
            self.sticks.append(stick)
            self.places.append(places)
            self.firsts.append(len(self.ends))
            self.ends += list(pairwise(mine))
            found += mine
        return list(dict.fromkeys(found))

    def _nearest(self, body: int, points: Array) -> Integers:
        """Return for points (n, 3) the node of a body that each is joined to."""
        own = np.array(self.own[body])
        if len(own) == 1:
            return np.repeat(own, len(points))
        spots: Array = np.array([self.nodes[int(node)] for node in own])
        if len(self.sticks_at[body]) == 1:
            stick = self.sticks_at[body][0]
            away = np.abs(stick.at(points)[:, None] - stick.at(spots))
        else:
            away = np.linalg.norm(points[:, None] - spots, axis=2)
        return own[away.argmin(axis=1)]

    def _find(self, node: int) -> int:
        while self.group[node] != node:
            self.group[node] = self.group[self.group[node]]
            node = self.group[node]
        return node

    def _join(self, one: Edge) -> None:
        spots = _spots(one)
        for a, b in zip(self._nearest(one.of, spots), self._nearest(one.to, spots), strict=True):
            self.group[self._find(int(a))] = self._find(int(b))

    def model(self) -> Model:
        """Return the model."""
        roots = [self._find(node) for node in range(len(self.nodes))]
        _, piece = np.unique(roots, return_inverse=True)
        piece = piece.reshape(-1)
        nodes = np.array(self.nodes)
        count = int(piece.max()) + 1
        weight = np.bincount(piece, minlength=count)[:, None]
        points = np.stack(
            [np.bincount(piece, weights=nodes[:, k], minlength=count) for k in range(3)], axis=1
        )
        springs, tied, feet = self._springs(piece)
        system = System(points / weight, nodes, piece, self._beams(), springs)
        along, grows = self._lines()
        return Model(
            self.structure,
            self.ties,
            tuple(self.sticks),
            tuple(self.places),
            tuple(self.firsts),
            system,
            self._spread(system, along, grows),
            along,
            grows,
            tied,
            feet,
            tuple(piece[own] for own in self.own),
            tuple(np.array(own) for own in self.own),
            self.loaded,
        )

    def _beams(self) -> Beams:
        ends = np.array(self.ends, dtype=np.intp).reshape(-1, 2)
        of = [
            stick
            for stick, places in zip(self.sticks, self.places, strict=True)
            for _ in range(len(places) - 1)
        ]
        lengths = [np.diff(places) for places in self.places]
        return Beams(
            ends[:, 0],
            ends[:, 1],
            np.array([stick.axes for stick in of]).reshape(-1, 3, 3),
            np.concatenate([np.zeros(0), *lengths]),
            np.array([stick.stiffness * stick.area for stick in of]),
            np.array(
                [[stick.stiffness * inertia for inertia in stick.inertia] for stick in of]
            ).reshape(-1, 2),
            np.array([stick.shear * stick.torsion for stick in of]),
        )

    def _springs(self, piece: Integers) -> tuple[Springs, tuple[slice, ...], tuple[Integers, ...]]:
        found: list[Springs] = []
        tied: list[slice] = []
        feet: list[Integers] = []
        start = 0
        for tie in self.ties:
            points, along, stiffness, one_way, kinds = tie.springs(COARSE_BED)
            one_way &= not tie.alone
            found.append(
                Springs(
                    piece[self._nearest(tie.to, points)],
                    piece[self._nearest(tie.of, points)],
                    points,
                    along,
                    stiffness,
                    one_way,
                    kinds.astype("U9"),
                )
            )
            tied.append(slice(start, start + len(points)))
            start += len(points)
        for foot in self.footings:
            n = len(foot.points)
            if foot.stands:
                feet.append(start + np.flatnonzero(foot.along[:, 2] > 0.5))
            start += n
            found.append(
                Springs(
                    np.full(n, FIXED),
                    piece[self._nearest(foot.body, foot.points)],
                    foot.points,
                    foot.along,
                    foot.stiffness,
                    foot.one_way,
                    np.full(n, SOIL, dtype="U9"),
                )
            )
        return all_springs(found), tuple(tied), tuple(feet)

    def _lines(self) -> tuple[Array, Array]:
        """Return loads per m at the start and end (bodies * 6, beams, 4) of beams by unit wrenches.

        Along a stick a wrench is spread evenly, and evenly growing where it acts off the middle.
        """
        bodies = len(self.structure.bodies)
        first = np.zeros((bodies, 6, len(self.ends), 4))
        last = np.zeros_like(first)
        for stick, places, begin in zip(self.sticks, self.places, self.firsts, strict=True):
            if len(self.sticks_at[stick.body]) > 1:
                continue
            unit = about(np.eye(6), stick.point(stick.length / 2.0))
            F, M = unit[:, :3] @ stick.axes.T, unit[:, 3:] @ stick.axes.T
            L = stick.length
            at = places - L / 2.0
            even = np.column_stack([F, M[:, 0]]) / L
            grow = np.zeros((6, 4))
            grow[:, 1], grow[:, 2] = 12.0 * M[:, 2] / L**3, -12.0 * M[:, 1] / L**3
            load = even[:, None] + grow[:, None] * at[None, :, None]
            mine = slice(begin, begin + len(places) - 1)
            first[stick.body, :, mine], last[stick.body, :, mine] = load[:, :-1], load[:, 1:]
        shape = (bodies * 6, len(self.ends), 4)
        none = np.zeros((6 * len(self.loaded), len(self.ends), 4))
        return (
            np.concatenate([first.reshape(shape), none]),
            np.concatenate([last.reshape(shape), none]),
        )

    def _spread(self, system: System, along: Array, grows: Array) -> Array:
        bodies = len(self.structure.bodies)
        found = np.zeros((bodies + len(self.loaded), 6, system.size))
        for i in range(bodies):
            if len(self.sticks_at[i]) != 1:
                own = np.array(self.own[i])
                for node, part in zip(own, _as_rigid(system.nodes[own]), strict=True):
                    _put(found[i], system, int(node), part)
        for k, (body, point) in enumerate(self.loaded):
            node = int(self._nearest(body, np.asarray(point)[None])[0])
            _put(found[bodies + k], system, node, moved(-system.nodes[node]).T)
        whole = found.reshape(-1, system.size)
        if len(self.ends):
            whole += system.load_along(end_forces(along, grows, system.beams.length))
        return whole


def _put(found: Array, system: System, node: int, part: Array) -> None:
    """Add to motions (6, size) what wrenches about the origin do through a node.

    ``part`` (6, 6) makes of them those at the node, which are brought to its piece's own point.
    """
    p = int(system.piece[node])
    found[:, 6 * p : 6 * p + 6] += part.T @ moved(system.nodes[node] - system.points[p])


def _spots(one: Tie | Edge) -> Array:
    """Return points (n, 3) over the face on which two bodies meet, and those of its fasteners."""
    assert one.face is not None
    bed = one.face.bed(COARSE_BED)[0]
    return np.concatenate([bed, one.points]) if isinstance(one, Tie) else bed


def _as_rigid(nodes: Array) -> Array:
    """Return the matrices (n, 6, 6) from a wrench about the origin to those at each of n nodes.

    Forces at the nodes as a rigid body would pass them on to alike springs there; in one node, or
    in line, the turning about it goes into the nodes as a couple.
    """
    middle = nodes.mean(axis=0)
    arm = nodes - middle
    n = len(nodes)
    to_middle = moved(-middle).T
    inertia = (arm**2).sum() * np.eye(3) - arm.T @ arm
    turns: Array = np.asarray(np.linalg.pinv(inertia, rcond=1.0e-9), dtype=np.float64)
    left: Array = np.eye(3) - inertia @ turns
    found = np.zeros((n, 6, 6))
    for k, r in enumerate(arm):
        cross = np.array([[0, -r[2], r[1]], [r[2], 0, -r[0]], [-r[1], r[0], 0]])
        own = np.zeros((6, 6))
        own[:3, :3] = np.eye(3) / n
        own[:3, 3:] = -cross @ turns
        own[3:, 3:] = left / n
        found[k] = own @ to_middle
    return found


def _places(stick: Bar, meets: Sequence[Array], whole: bool) -> Array:
    """Return where along a stick in m it has nodes: its ends, and wherever something meets it."""
    found: list[float] = [0.0, stick.length]
    for spots in meets:
        at = stick.at(spots)
        if not whole:
            # of a ring only what lies beside this side of it
            off = np.abs((spots - stick.start) @ stick.axes[1])
            at = at[(off <= stick.first) & (at > -_NEAR) & (at < stick.length + _NEAR)]
            if not len(at):
                continue
        at = np.clip(at, 0.0, stick.length)
        if float(at.max() - at.min()) <= _SPREAD * stick.wide:
            found.append(float(at.mean()))
        else:
            at = np.sort(at)
            groups = np.split(at, np.flatnonzero(np.diff(at) > stick.wide) + 1)
            found += [float(each.mean()) for each in groups]
    ordered = distinct(np.round(found, 9))
    kept = [float(ordered[0])]
    for place in ordered[1:]:
        if place - kept[-1] > _NEAR:
            kept.append(float(place))
    if stick.length - kept[-1] > 0.0:
        kept[-1] = stick.length
    return np.array(kept) if len(kept) > 1 else np.array([0.0, stick.length])


def _middle(structure: Structure, i: int) -> Array:
    moments = structure.bodies[i].shape.moments()
    return moments.first / moments.volume if moments.volume else np.zeros(3)
