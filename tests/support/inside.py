"""The forces within a design as the examination finds them, for tests that look inside."""

from yardfast.checks.acting.borne import borne_loads
from yardfast.checks.acting.design_wind import wind_on_bodies
from yardfast.checks.acting.internal_forces import internal_forces
from yardfast.checks.acting.load_cases import load_cases
from yardfast.checks.acting.people_loads import people_loads
from yardfast.checks.acting.point_loads import point_loads
from yardfast.checks.fasteners.joint_places import places
from yardfast.checks.fasteners.ties import fastened
from yardfast.design.structure import build_structure
from yardfast.loads.combinations import factors_of_parts, resistance_basis
from yardfast.loads.exposed import bare, expose
from yardfast.loads.methods import method_of
from yardfast.loads.wind.site import Site
from yardfast.materials import grounds
from yardfast.statics.contacts.graph import graph_of


def forces_in(design, hold_down=None):
    """Return the model of a design's joints and sticks under all its load cases.

    ``hold_down`` is what draws it down; without any it is held where it stands.
    """
    site = design.table(Site)
    structure = build_structure(design)
    graph = graph_of(structure)
    method = method_of(site, structure.height)
    each = bare(structure, [part.surface for part in design.parts], method)
    exposed = expose(structure, each, site.sheltering)
    wind, names = wind_on_bodies(exposed, method)
    used, basis = factors_of_parts(site), resistance_basis(site)
    loads = borne_loads(graph)
    points = point_loads(loads, people_loads(structure, site.people, basis))
    cases = load_cases(
        structure, wind, exposed.azimuths, names, used, basis, points, site.slope or 0.0
    )
    paved = not grounds.find_ground(site.ground).stakes_possible
    tied = fastened(structure, graph, places(structure, basis))
    return internal_forces(graph, tied, cases, points, paved=paved, hold_down=hold_down)


def part_sticks(forces, name):
    """Return the numbers of a part's sticks, copy by copy."""
    parts, bodies = forces.structure.design.parts, forces.structure.bodies
    return [
        k
        for k, stick in enumerate(forces.model.sticks)
        if parts[bodies[stick.body].part].name == name
    ]


def under(forces, *names):
    """Return the light case in which just these named loads act; without names, calm air."""
    for k, of in enumerate(forces.cases.of):
        one = forces.cases.sets[of]
        acting = tuple(load.name for load in one.loads)
        if names and acting == names and one.weighing == "light" and not one.wind:
            return k
        if not names and one.is_calm:
            return k
    raise ValueError(names)
