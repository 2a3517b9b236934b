"""The strength of all sticks of a structure: beams, arms, and legs that lean in pairs."""

from collections.abc import Sequence
from dataclasses import replace

from ...design.shapes.shape import Array
from ...design.structure import Structure
from ...loads.actions import Blow
from ...loads.combinations import Factors
from ..borne import Borne
from ..joints.joint_places import Place
from .beam_loads import Beam, PointLoads, point_loads
from .beams import beam_of, check_beam
from .braces import is_brace, propped, propping
from .carried_down import Carried, carry, taken_alike
from .legs import Pair, check_pair, is_leg, pairs_of
from .load_path import LoadPath, load_path
from .member_check import Member, NotJudged
from .sticks import stick_of


def check_sticks(
    structure: Structure,
    places: Sequence[Place],
    blow: Blow,
    factors: Factors,
    basis: str,
    named: Sequence[Borne] = (),
) -> list[Member | NotJudged]:
    """Return the strength of every stick, and why there is none of some; nothing without sticks.

    ``places`` are the joints where they stand, ``blow`` the wind on some of the bodies alone,
    ``named`` the loads that the design names.
    """
    which = [i for i, body in enumerate(structure.bodies) if stick_of(body) is not None]
    if not which:
        return []
    path = load_path(structure, places)
    legs = [i for i in which if is_leg(structure, path, i)]
    looked = [beam_of(structure, path, i, basis) for i in which if i not in legs]
    looked += pairs_of(structure, path, places, legs, basis)
    found: list[Member | NotJudged] = [one for one in looked if isinstance(one, NotJudged)]
    beams = [one for one in looked if isinstance(one, Beam)]
    pairs = [one for one in looked if isinstance(one, Pair)]
    bodies = [one.body for one in beams] + [i for pair in pairs for i in pair.bodies]
    if not bodies:
        return found
    carried = carry(structure, path, bodies, blow, factors, basis, named)
    loads = {beam.body: point_loads(path, carried, beam) for beam in beams}
    props = _props(path, carried, beams, loads)
    seen: set[tuple[object, ...]] = set()
    for beam in beams:
        brace = is_brace(path, beam)
        if brace and beam.body not in props:
            found.append(NotJudged(_name(structure, beam), "braces more"))
            continue
        alike = _alike(structure, path, beam)
        if alike in seen and not brace:
            continue
        seen.add(alike)
        propped_by = [k for k, (arm, _) in props.items() if arm.body == beam.body]
        names = [_name(structure, one) for one in beams if one.body in propped_by]
        known = replace(beam, beside=tuple(dict.fromkeys((*beam.beside, *names))))
        prop = props[beam.body][1] if brace else None
        one = loads[beam.body]
        found.append(check_beam(structure, carried, known, one, factors.source, basis, prop))
    for pair in pairs:
        found += check_pair(structure, path, carried, pair, factors.source, basis)
    return found


def _props(
    path: LoadPath, carried: Carried, beams: Sequence[Beam], loads: dict[int, PointLoads]
) -> dict[int, tuple[Beam, Array]]:
    """Return by brace the arm that it props and the force (…) in N along it.

    As much as a load that lasts asks of the brace's stuff, whatever the arm is made of.
    """
    found: dict[int, tuple[Beam, Array]] = {}
    for beam in beams:
        arm = propped(path, beams, beam) if is_brace(path, beam) else None
        force = None if arm is None else propping(path, arm, loads[arm.body], beam)
        if arm is not None and force is not None:
            of_arm, of_brace = (carried.lasting(one.strength.stuff) for one in (arm, beam))
            found[beam.body] = arm, (of_brace / of_arm)[:, None, None, None] * force
    return found


def _name(structure: Structure, beam: Beam) -> str:
    return structure.design.parts[structure.bodies[beam.body].part].name


def _alike(structure: Structure, path: LoadPath, beam: Beam) -> tuple[object, ...]:
    """Return what beams have in common that take the same; of one that carries, its own number."""
    carries = beam.body if path.on(beam.body) else None
    where = tuple(round(edge, 6) for place in beam.places for edge in place)
    return carries, where, taken_alike(structure, beam.body)
