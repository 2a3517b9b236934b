"""What nothing holds: parts that float, that stand apart, loose ones that fall off their seat."""

import numpy as np

from ...design import plane
from ...design.faults import Fault
from ...design.structure import Structure
from ...design.touching import gap
from ...units import INCH
from ..tables.joint_table import JointRow
from .edge import Holds
from .edges_found import swings
from .fit import FIT
from .graph import Graph


def unsupported(graph: Graph) -> tuple[Fault, ...]:
    """Return a fault for each part from which no edge leads to the ground, or that falls off.

    Also for what stands on the ground apart from all else: its foot would hold up what it is not
    joined to.
    """
    floats = _floating(graph)
    return tuple(floats or (*_falling(graph), *_standing_apart(graph)))


def shown_length(structure: Structure, size: float, figures: int = 3) -> str:
    """Return a length in m as a person reads it in the design's units, of so many figures."""
    metric = structure.design.units == "metric"
    shown = round(size * 1000.0 if metric else size / INCH, 4) + 0.0
    return f"{float(f'{shown:.{figures}g}'):g} {'mm' if metric else 'in'}"


def _floating(graph: Graph) -> list[Fault]:
    """Return a fault for each part of which a copy floats; what stands on it is not told again."""
    structure = graph.structure
    bodies, parts, lines = structure.bodies, structure.design.parts, structure.design.lines
    lost = [i for i, step in enumerate(graph.steps()) if step < 0 and not swings(structure, i)]
    names = {parts[bodies[i].part].name for i in lost}
    met = {parts[bodies[e.of].part].name for e in graph.edges if e.holds is Holds.FASTENED}
    joined = {row.of for row in structure.design.several(JointRow)} - met
    found: dict[str, Fault] = {}
    for i in lost:
        part = parts[bodies[i].part]
        if part.name in found or part.place.reference in names - {part.name}:
            continue
        if part.name in joined:  # its joint tells how far it lies from what it is fastened to
            continue
        others = [j for j in range(len(bodies)) if j not in lost and not swings(structure, j)]
        near = min(others, key=lambda j: (gap(bodies[i], bodies[j]), j), default=None)
        key = "under" if part.place.under else "on" if part.place.on else "at"
        line = lines.get((part.name, key), lines.get((part.name, None)))
        found[part.name] = Fault(
            structure.design.file,
            line,
            part.name,
            key,
            _where(structure, i, near),
            f"a part that meets what carries it, within {shown_length(structure, FIT)}",
            "move it with 'at' until they touch, or draw what lies between as a part",
        )
    return list(found.values())


def _standing_apart(graph: Graph) -> list[Fault]:
    """Return a fault for each part that stands on the ground and is joined to nothing of the rest.

    The rest is what weighs most of all that is joined. A post in the ground holds itself.
    """
    structure = graph.structure
    bodies, parts = structure.bodies, structure.design.parts
    group = graph.joined
    alone = {edge.of for edge in graph.edges if edge.holds is Holds.STANDS}
    posts = {group[edge.of] for edge in graph.edges if edge.holds is Holds.EMBEDDED}
    standing = {group[i] for i in alone}
    if len(standing | posts) < 2:
        return []
    mass = structure.body_mass[1]
    whole = max(sorted(standing | posts), key=lambda k: float(mass[np.array(group) == k].sum()))
    found: dict[str, Fault] = {}
    for i in sorted(alone):
        name = parts[bodies[i].part].name
        if group[i] in (whole, *posts) or name in found:
            continue
        found[name] = Fault(
            structure.design.file,
            structure.design.lines.get((name, None)),
            name,
            "name",
            "it stands on the ground by itself, joined to nothing of the rest",
            "one piece, each part of which meets another",
            "a design file for each piece, or draw what joins them as a part",
        )
    return list(found.values())


def _where(structure: Structure, i: int, near: int | None) -> str:
    """Return what was found of a floating body: what it misses, and by how much."""
    bodies, parts = structure.bodies, structure.design.parts
    part = parts[bodies[i].part]
    below = part.place.reference
    asked = [j for j, body in enumerate(bodies) if parts[body.part].name == below]
    if asked:
        near = min(asked, key=lambda j: (gap(bodies[i], bodies[j]), j))
    if near is None:
        return "it touches nothing and does not reach the ground"
    apart, name = gap(bodies[i], bodies[near]), parts[bodies[near].part].name
    if apart > FIT:
        return f"it hangs in the air, {shown_length(structure, apart)} from {name}"
    return f"it hangs in the air: no wood of it meets {name}; it lies over a hole or beside it"


def _falling(graph: Graph) -> list[Fault]:
    """Return a fault for each loose part whose weight lies beyond what it rests on."""
    structure = graph.structure
    bodies, parts = structure.bodies, structure.design.parts
    found: dict[str, Fault] = {}
    for i, body in enumerate(bodies):
        part = parts[body.part]
        if not part.loose or i in graph.grounded or swings(structure, i):
            continue
        goes = graph.carried(i)
        seats = [edge.face.in_plan for edge in graph.seats(i) if edge.face is not None]
        if not seats:
            continue
        seat = plane.hull(np.vstack([plane.coordinates(one) for one in seats]))
        mass = structure.body_mass[1] * goes
        centre = mass @ structure.steady_centres / mass.sum() if mass.any() else None
        if centre is None or seat.area <= 0.0:
            continue
        off = plane.distance(centre[:2], seat)
        if off > 0.0:
            line = structure.design.lines.get((part.name, "loose"))
            found[part.name] = Fault(
                structure.design.file,
                line,
                part.name,
                "loose",
                f"its weight lies {shown_length(structure, off)} beyond what it rests on: "
                "it falls off",
                "a loose part whose weight lies over what carries it",
                "move it with 'at', widen what it stands on, or fasten it with a [[joint]]",
            )
    return list(found.values())
