"""The model of a piece: rigid bodies, sticks as beams, what is fastened, and the ground.

What is taken as held together without a joint is one rigid piece there. Sticks have a node wherever
something meets them; what meets a stick near a node is joined to that section of it.
"""

from collections.abc import Mapping, Sequence
from functools import cached_property

import numpy as np

from ..design.structure import Structure
from ..units.arrays import Array, Mask
from ..units.frozen import ByIdentity, replace
from .bars import Bar
from .buckling import PointForces, geometry
from .frame import end_forces, forces_along
from .solution import AS_READ, Solution, solve
from .system import Integers, System
from .tie import Tie
from .wrench import motion_rows

SECTIONS = np.linspace(0.0, 1.0, 5)
"""Where between two nodes the section forces of a stick are looked at."""


class SectionForces(ByIdentity, frozen=True):
    """Section forces of one stick at ``at`` (x,) in m along it: (cases, x, 6), its own axes.

    Axial (pulling above 0), two shears, torque, moment about the first way, about the second.
    """

    stick: Bar
    at: Array
    force: Array


class Model(ByIdentity, frozen=True):
    """A piece ready to be solved: its system, and how loads on its bodies come onto it.

    Loads are wrenches (6,) about the origin: first one on each body, spread along it where it is a
    stick, then one at each of the points at which a load was named: ``bases`` numbers in all.
    ``spread`` (bases, size) brings them to the motions, ``along`` (bases, beams, 4) and ``grows``
    to the loads per m at the start and end of beams. ``tied`` are the springs of each tie, ``feet``
    those that hold up what stands on the ground, after them. ``loaded`` are bodies with the points
    (3,) at which loads were named.
    """

    structure: Structure
    ties: tuple[Tie, ...]
    sticks: tuple[Bar, ...]
    places: tuple[Array, ...]
    firsts: tuple[int, ...]
    system: System
    spread: Array
    along: Array
    grows: Array
    tied: tuple[slice, ...]
    feet: tuple[Integers, ...]
    piece_of: tuple[Integers, ...]
    nodes_of: tuple[Integers, ...]
    loaded: tuple[tuple[int, Array], ...] = ()

    def loads(self, wrenches: Array) -> tuple[Array, Array]:
        """Return loads (cases, size) and ``fixed`` (cases, beams, 12) of ``wrenches``.

        (cases, bases), or (cases, bodies, 6), in N and N m about the site's origin.
        """
        W = wrenches.reshape(len(wrenches), -1)
        return W @ self.spread, self._fixed(W)

    def _fixed(self, W: Array) -> Array:
        m = len(self.system.beams.length)
        first, last = self.per_length(W)
        return end_forces(first, last, self.system.beams.length) if m else np.zeros((len(W), 0, 12))

    def per_length(self, W: Array) -> tuple[Array, Array]:
        """Return loads per m (cases, beams, 4) at starts and ends of beams."""
        shape = (len(W), len(self.system.beams.length), 4)
        return (
            (W @ self.along.reshape(len(self.along), -1)).reshape(shape),
            (W @ self.grows.reshape(len(self.grows), -1)).reshape(shape),
        )

    @property
    def bases(self) -> int:
        """Return how many numbers the loads of a case are."""
        return len(self.spread)

    def solved(
        self,
        wrenches: Array,
        sets: Sequence[Mapping[str, float]] = AS_READ,
        start: Mask | None = None,
        *,
        one_way: bool = True,
    ) -> "Forces":
        """Return the forces of load cases by each of some sets of stiffness, one after the other.

        ``start`` (cases, n) are springs thought to be open. Without ``one_way`` what presses holds
        both ways: then forces go with the loads. Raises MechanismError.
        """
        W = wrenches.reshape(len(wrenches), -1)
        loads, fixed = self.loads(wrenches)
        found = solve(self.system, loads, fixed, sets, start, one_way=one_way)
        return Forces(self, np.tile(W, (len(sets), 1)), found)


def on_uneven_ground(found: "Forces", foot: int, gap: float) -> "Forces":
    """Return forces ``found`` on level ground where it lies ``gap`` m lower beneath one foot.

    That bears once it has come down so far: between bearing at once and not at all, by how far it
    would come down then. What draws it up is held as on level ground. Raises MechanismError where
    nothing else holds the piece.
    """
    model, feet = found.model, found.model.feet[foot]
    system = replace(model.system, springs=model.system.springs.slack(feet))
    off = replace(model, system=system).solved(found.wrenches, AS_READ, found.solution.open)
    drop = -(off.solution.motion @ model.system.stretch[feet].T).mean(axis=1)
    share = np.where(drop > 0.0, np.minimum(gap / np.where(drop > 0.0, drop, 1.0), 1.0), 0.0)
    return replace(found, solution=found.solution.toward(off.solution, share))


class Forces(ByIdentity, frozen=True):
    """The forces in a model: at its ties, and along its sticks."""

    model: Model
    wrenches: Array
    solution: Solution

    def some(self, which: Integers) -> "Forces":
        """Return the forces of some of the cases."""
        return Forces(self.model, self.wrenches[which], self.solution.some(which))

    @staticmethod
    def all_of(each: "Sequence[Forces]") -> "Forces":
        """Return the forces of several lots of cases in one model, one after the other."""
        wrenches = np.concatenate([one.wrenches for one in each])
        return Forces(each[0].model, wrenches, Solution.all_of([one.solution for one in each]))

    def through(self, k: int) -> Array:
        """Return the wrench (cases, 6) about its face's origin with which ``of`` is held at tie k.

        What ``of`` does to the springs: they pull back with it.
        """
        tie, mine = self.model.ties[k], self.model.tied[k]
        springs = self.model.system.springs
        r = motion_rows(springs.along[mine], springs.at[mine], tie.face.origin)
        return self.solution.force[:, mine] @ r

    def geometry(self, case: int) -> Array:
        """Return the geometric stiffness (size, size) of a case: how it turns what sways on."""
        solution = self.solution
        return geometry(
            self.model.system, solution.force[case], solution.ends[case], self._acting(case)
        )

    def _acting(self, case: int) -> PointForces:
        """Return the loads of a case: on rigid bodies at their centres, on sticks at each node."""
        model = self.model
        system, centres = model.system, model.structure.body_centre
        force = self.wrenches[case].reshape(-1, 6)[:, :3]
        own, named = force[: len(model.nodes_of)], force[len(model.nodes_of) :]
        nodes: list[Integers] = []
        points: list[Array] = []
        forces: list[Array] = []
        for on_body, mine, centre in zip(own, model.nodes_of, centres, strict=True):
            nodes.append(mine)
            points.append(centre[None] if len(mine) == 1 else system.nodes[mine])
            forces.append(np.repeat(on_body[None], len(mine), axis=0) / len(mine))
        for load, (body, point) in zip(named, model.loaded, strict=True):
            mine = model.nodes_of[body]
            nearest = np.linalg.norm(system.nodes[mine] - point, axis=1).argmin(keepdims=True)
            nodes.append(mine[nearest])
            points.append(point[None])
            forces.append(load[None])
        return system.piece[np.concatenate(nodes)], np.vstack(points), np.vstack(forces)

    @cached_property
    def sections(self) -> tuple[SectionForces, ...]:
        """Return the section forces along every stick."""
        model = self.model
        first, last = model.per_length(self.wrenches)
        lengths = model.system.beams.length
        inside = forces_along(self.solution.ends, first, last, lengths, SECTIONS)
        found: list[SectionForces] = []
        for stick, places, begin in zip(model.sticks, model.places, model.firsts, strict=True):
            mine = inside[:, begin : begin + len(places) - 1]
            at = (places[:-1, None] + np.diff(places)[:, None] * SECTIONS).ravel()
            found.append(SectionForces(stick, at, mine.reshape(len(inside), len(at), 6)))
        return tuple(found)
