"""The forces within a piece under all its load cases: at its joints and along its sticks.

Worked out for every case as if all that presses held both ways, which goes with the loads; then,
for the cases that may govern, with what only presses, and with every set of stiffness.
"""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from functools import cached_property

import numpy as np

from ...design.structure import Structure
from ...statics.building import model_of
from ...statics.contacts.graph import Graph
from ...statics.footings import HoldDown, footings
from ...statics.model import Forces, Model, SectionForces, on_uneven_ground
from ...statics.solution import MechanismError
from ...statics.stiffness import SETS, SWAYS, stiffness_rule
from ...units.arrays import Array, Integers, Mask
from ...units.frozen import ByIdentity, replace
from ..fasteners.ties import Fastened
from .load_cases import LoadCases
from .point_loads import PointLoads

MOST_BRACED = 60
"""So many motions that nothing holds are told apart at most."""

STIFFNESS_AS_READ = "as read"

STEADY = 3
"""So many feet bear on any ground."""

MOST_FEET = 8
"""Of more feet than so many, the others share what one does not bear: judgement."""


class Envelope(ByIdentity, frozen=True):
    """Forces of the cases ``which`` (n,) by sets of stiffness: all by the first, all by the next.

    ``names`` are those of the sets, as read first, and where it stands on more feet than it needs
    those of lower ground beneath each. ``swaying`` are its forces by the set by which it sways
    most.
    """

    which: Integers
    names: tuple[str, ...]
    forces: Forces
    swaying: Forces

    @property
    def every(self) -> Integers:
        """Return the case of each row of ``forces``."""
        return np.tile(self.which, len(self.names))

    def by_set(self, values: Array) -> dict[str, Array]:
        """Return values (rows, …) of every row as those (n, …) by each set."""
        apart = values.reshape(len(self.names), len(self.which), *values.shape[1:])
        return dict(zip(self.names, apart, strict=True))

    def of(self, name: str) -> Forces:
        """Return the forces by one set."""
        first = self.names.index(name) * len(self.which)
        return self.forces.some(np.arange(first, first + len(self.which)))


class InternalForces(ByIdentity, frozen=True):
    """A piece's model with its joints and load cases.

    ``unit`` are the forces of each base load by itself, all that presses holding both ways.
    """

    graph: Graph
    model: Model
    joints: tuple[Fastened, ...]
    cases: LoadCases
    unit: Forces
    tied: bool = False

    @property
    def structure(self) -> Structure:
        """Return the structure."""
        return self.graph.structure

    def through(self, k: int) -> Array:
        """Return the wrench (n, 6) at joint ``k`` about its face, all holding both ways."""
        return self.cases.loads @ self.unit.through(k)

    @cached_property
    def sections(self) -> tuple[SectionForces, ...]:
        """Return the section forces (n, x, 6) along every stick, all holding both ways."""
        unit = self.unit.sections
        if not unit:
            return ()
        bases = len(self.unit.wrenches)
        every = self.cases.loads @ np.hstack([one.force.reshape(bases, -1) for one in unit])
        ends = np.cumsum([one.force[0].size for one in unit])
        own = np.split(every, ends[:-1], axis=1)
        return tuple(
            replace(one, force=force.reshape(len(force), *one.force.shape[1:]))
            for one, force in zip(unit, own, strict=True)
        )

    @cached_property
    def braced(self) -> Array:
        """Return what has to hold (n, b) the motions that nothing holds, in N or N m."""
        return self.cases.loads @ self.unit.solution.braced

    @property
    def is_determinate(self) -> bool:
        """Return whether every joint takes the same whatever the stiffness of anything."""
        return not self.tied and all(one.tie.alone for one in self.joints)

    def enveloped(self, which: Integers) -> Envelope:
        """Return the forces of some of the cases by each set of stiffness, as read first.

        Of a piece on four feet or more also with the ground lower beneath each of them.
        """
        first, *others = SETS.values()
        as_read = self._by_sets((first,), which)
        # what only presses is first thought to open as it does as read
        rest = self._by_sets((*others, SWAYS), which, as_read.solution.open)
        last = len(others) * len(which)
        names, found = [*SETS], [as_read, rest.some(np.arange(last))]
        for foot in self._may_not_bear:
            with suppress(MechanismError):  # what swings free finds its ground
                lower = on_uneven_ground(as_read, foot, stiffness_rule("uneven ground"))
                if not lower.solution.lost.any():
                    names.append(f"low ground beneath foot {foot}")
                    found.append(lower)
        swaying = rest.some(np.arange(last, last + len(which)))
        return Envelope(which, tuple(names), Forces.all_of(found), swaying)

    @property
    def _may_not_bear(self) -> range:
        """Return which of its feet, by number, may not bear: on three it stands in any case."""
        feet = len(self.model.feet)
        return range(feet if STEADY < feet <= MOST_FEET and not self.tied else 0)

    def _by_sets(
        self, sets: Sequence[Mapping[str, float]], which: Integers, start: Mask | None = None
    ) -> Forces:
        one_way = not self.is_determinate
        return self.model.solved(self.cases.loads[which], sets, start, one_way=one_way)


def internal_forces(
    graph: Graph,
    joints: Sequence[Fastened],
    cases: LoadCases,
    points: PointLoads,
    *,
    paved: bool,
    hold_down: HoldDown | None = None,
) -> InternalForces:
    """Return the model of a piece under its load cases; what nothing holds is braced, and told.

    Without a ``hold_down`` it is taken as held where it stands.
    """
    model = model_of(
        graph.structure,
        [one.tie for one in joints],
        [edge for edge in graph.held if edge.face is not None],
        footings(graph, paved, hold_down),
        points.at,
    )
    model, unit = _braced(model)
    return InternalForces(graph, model, tuple(joints), cases, unit, hold_down is not None)


def _braced(model: Model) -> tuple[Model, Forces]:
    """Return a model with every motion that nothing holds braced, and its forces by base load."""
    base = np.eye(model.bases)
    for _ in range(MOST_BRACED):
        try:
            return model, model.solved(base, one_way=False)
        except MechanismError as free:
            model = replace(model, system=model.system.braced(free.motion))
    return model, model.solved(base, one_way=False)
