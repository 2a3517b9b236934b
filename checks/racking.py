"""Racking: whether a frame keeps its shape by its joints, and how far it sways."""

import numpy as np

from ..statics.buckling import stands_times
from ..statics.contacts.edges_found import swings
from ..statics.model import Forces
from ..statics.stiffness import SWAYS, stiffness_rule
from ..units.arrays import Array, first_greatest, where_greatest
from .acting.internal_forces import Envelope, InternalForces
from .judged.judging import Check, Kind, Remark

_SOURCE = "equilibrium without friction between parts; sway of 1/50 of the height (judgement)"

_PUSHED = 1.0e-6
"""Share of a case's load beyond which a motion that nothing holds is pushed."""

_MOVES = 0.3
"""Share of the greatest motion from which a part is named."""


def check_racking(forces: InternalForces, envelope: Envelope) -> Check | None:
    """Return the failing check of a piece that racks; None of one that keeps its shape.

    It racks where a motion that nothing holds is pushed by any load case, where what only presses
    finds no balance, where what it carries would topple it if it came ten times (forces found on
    the piece as it stands hold no nearer to that: EN 1993-1-1 5.2.1), or where it sways more than
    1/50 of its height in any case of the ``envelope``, both with its joints as soft as they may be.
    """
    pushed = np.abs(forces.braced)
    size = np.abs(forces.cases.loads).sum(axis=1)
    if pushed.size:
        free = pushed / np.where(size > 0.0, size, 1.0)[:, None]
        n, mode = where_greatest(free)
        if free[n, mode] > _PUSHED:
            system = forces.model.system
            motion = system.braces.reshape(-1, system.size)[mode]
            return _failing(forces, int(n), None, 0.0, moving(forces, motion))
    which, softest, lost = envelope.which, envelope.swaying, envelope.forces.solution.lost
    if lost.any():
        nth = int(envelope.every[lost.argmax()])
        return _failing(forces, nth, None, 0.0, _unpulled(forces))
    nth = first_greatest(forces.cases.downward[which])
    system, times = forces.model.system, stiffness_rule("least critical")
    stands, motion = stands_times(system, SWAYS, softest.geometry(nth), times)
    if not stands:
        return _failing(forces, int(which[nth]), None, 0.0, moving(forces, motion))
    sway, nth = _sway(forces, softest)
    most = forces.structure.height / stiffness_rule("most sway")
    if sway <= most:
        return None
    named = moving(forces, softest.solution.motion[nth])
    return _failing(forces, int(which[nth]), sway, most, named)


def moving(forces: InternalForces, motion: Array) -> tuple[str, ...]:
    """Return the names of the parts that move most in a motion (size,)."""
    structure, model = forces.structure, forces.model
    moved: dict[str, float] = {}
    for i, body in enumerate(structure.bodies):
        far = max(float(np.linalg.norm(_at(forces, motion, int(p), i))) for p in model.piece_of[i])
        name = structure.design.parts[body.part].name
        moved[name] = max(moved.get(name, 0.0), far)
    most = max(moved.values(), default=0.0)
    return tuple(name for name, far in moved.items() if far >= _MOVES * most > 0.0)


def _unpulled(forces: InternalForces) -> tuple[str, ...]:
    """Return the parts that are fastened by what holds nothing against a pull."""
    parts, bodies = forces.structure.design.parts, forces.structure.bodies
    found = [parts[bodies[one.tie.of].part].name for one in forces.joints if not one.tie.pull.any()]
    every = [parts[bodies[one.tie.of].part].name for one in forces.joints]
    return tuple(dict.fromkeys(found or every))


def _at(forces: InternalForces, motion: Array, piece: int, body: int) -> Array:
    """Return how a piece's motion moves the farther end of the box round a body."""
    own = motion.reshape(-1, 6)[piece]
    ends = np.array(forces.structure.bodies[body].extent)
    moved = own[:3] + np.cross(own[3:], ends - forces.model.system.points[piece])
    return moved[int(np.linalg.norm(moved, axis=1).argmax())]


def _sway(forces: InternalForces, softest: Forces) -> tuple[float, int]:
    """Return the greatest level motion in m of any node, and the case in which it is.

    Of what swings none counts.
    """
    system, structure = forces.model.system, forces.structure
    stays = [own for i, own in enumerate(forces.model.nodes_of) if not swings(structure, i)]
    nodes = np.concatenate(stays)
    piece = system.piece[nodes]
    motion = softest.solution.motion.reshape(len(softest.solution.motion), -1, 6)[:, piece]
    off = system.nodes[nodes] - system.points[piece]
    moved = motion[..., :3] + np.cross(motion[..., 3:], off)
    level = np.hypot(moved[..., 0], moved[..., 1]).max(axis=1)
    return float(level.max()), first_greatest(level)


def _failing(
    forces: InternalForces, case: int, sway: float | None, most: float, named: tuple[str, ...]
) -> Check:
    cases, acts = forces.cases, forces.cases.set_of(case)
    return Check(
        kind=Kind.RACKING,
        subject="",
        demand=sway or 0.0,
        capacity=most,
        unit="m",
        utilization=None if sway is None else sway / most,
        passes=False,
        source=_SOURCE,
        direction_deg=cases.azimuth(case),
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.factor,
        case=cases.name(case),
        remark=Remark.MOVES,
        slots=named,
        load=acts.name,
    )
