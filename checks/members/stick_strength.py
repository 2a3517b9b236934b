"""The strength of posts, beams, arms, braces, legs and rings of lumber, by the forces along them.

A stick carries what the model of the whole piece says at each section: bent both ways, pressed or
drawn, sheared and twisted.
"""

from collections.abc import Iterator, Sequence
from math import inf, pi, sqrt

import numpy as np

from ...design.model import Design, Part
from ...design.structure import Structure
from ...loads.combinations import FACTORED
from ...materials.metal import Metal
from ...statics.bars import Bar, slender_pieces
from ...statics.buckling import critical
from ...statics.contacts.edge import GROUND, Edge, Holds
from ...statics.contacts.graph import Graph
from ...statics.model import Forces, SectionForces
from ...statics.stiffness import SOFT
from ...units.arrays import Array, Integers, distinct, first_greatest, to_rank, where_greatest
from ...units.frozen import ByIdentity, replace
from ..acting.internal_forces import STIFFNESS_AS_READ, Envelope, InternalForces
from ..acting.load_cases import LoadCases, most_used_cases
from ..judged.judging import Check, Kind
from ..timber.books import book_of, values_of
from .columns import column_rule
from .governs import UNITS, Used, as_column, stick_utilization
from .member_check import MemberStrength, NotJudged
from .post_strength import PostStrength, post_strength
from .torsion import torsion_share, torsion_stress
from .uprights import Section

_SOURCE = "equilibrium of the piece; {wood}, or AISC 360-16 E to H"

_PLUMB = 0.999
_LEVEL = 0.05
"""Cosine of the angle to plumb above which a stick is a post, and below which it lies level."""

_LITTLE = 0.02
"""Of the load under which it would buckle: pressed with less, a stick is told by rule alone."""

_STILL = 0.9
"""Of its own length: a stick that buckles as if it were no longer than that does not sway."""

_ONE_PLACE = 2.0
"""What holds a stick within so many times its greater side holds it at one place."""


class Judged(ByIdentity, frozen=True):
    """A stick with what it may carry: ``section`` on its own sides, ``effective`` length in m.

    ``between`` is that length where nothing sways.
    """

    nth: int
    stick: Bar
    part: Part
    role: str
    section: Section
    strength: PostStrength
    effective: float
    between: float


def sticks_to_judge(
    forces: InternalForces, basis: str
) -> tuple[tuple[Judged, ...], tuple[NotJudged, ...]]:
    """Return the sticks of a piece with their strength, and those of which none is known."""
    structure = forces.structure
    found: list[Judged] = []
    others: list[NotJudged] = []
    for nth, stick in enumerate(forces.model.sticks):
        part = structure.design.parts[structure.bodies[stick.body].part]
        if part.hangs_at is not None:
            continue
        section = Section(stick.axes[1], stick.first, stick.second, stick.is_round, stick.wall)
        role, free, effective, between, still = _held(forces.graph, forces, nth, stick)
        strength = post_strength(section, part.material, part.grade, free, basis, between)
        if isinstance(strength, str):
            others.append(NotJudged(part.name, strength))
        else:
            found.append(Judged(nth, stick, part, role, section, strength, effective, still))
    return tuple(found), (*others, *_without_stiffness(structure))


def _without_stiffness(structure: Structure) -> Iterator[NotJudged]:
    """Yield the slender parts for whose stuff no stiffness is published: they count as rigid."""
    for i, body in enumerate(structure.bodies):
        part = structure.design.parts[body.part]
        if part.hangs_at is None and any(
            one.stiffness <= 0.0 for one in slender_pieces(structure, i)
        ):
            yield NotJudged(part.name, "no material" if part.material is None else "no values")


def may_govern(sticks: Sequence[Judged], forces: InternalForces, most: int) -> Integers:
    """Return the cases (k,) in which sticks may be used most, by a plain sum of their uses.

    Each of bending, pressing, shear and twist by itself brings the greatest of all sticks of a
    part, and each stick its own worst.
    """
    by_part: dict[str, list[Array]] = {}
    for one in sticks:
        use = _plain_uses(one, forces.sections[one.nth], forces.cases)
        by_part.setdefault(one.part.name, []).append(use)
    picked = [np.zeros(0, dtype=np.intp)]
    for each in by_part.values():
        picked += [most_used_cases(one, most) for one in np.max(each, axis=0)]
        picked += [most_used_cases(one[0], 1) for one in each]
    return distinct(np.concatenate(picked))


def _plain_uses(one: Judged, sections: SectionForces, cases: LoadCases) -> Array:
    """Return the greatest use (4, n) along a stick in each case: of all, and of each by itself."""
    P = one.strength
    force = np.abs(sections.force) * _longer(one, cases)[:, None, None]
    along = force[..., 0] / (P.area * min(P.along, P.drawn))
    both = (
        force[..., 5] / (P.moduli[0] * P.bending[0]),
        force[..., 4] / (P.moduli[1] * P.bending[1]),
    )
    bent = np.hypot(*both) if P.is_round else both[0] + both[1]
    shear = np.hypot(force[..., 1], force[..., 2]) / P.shear_force
    each = [along + bent, bent, along, shear + _twisted(one, force[..., 3])]
    return np.array([use.max(axis=1) for use in each])


def use_of(one: Judged, sections: SectionForces, cases: LoadCases, which: Integers) -> Used:
    """Return the part (cases, x) of a stick's strength used along it."""
    longer = _longer(one, cases)[which][:, None]
    force = sections.force * longer[..., None]
    P = one.strength
    pushed = np.hypot(force[..., 1], force[..., 2]) + P.shear_force * _twisted(one, force[..., 3])
    return stick_utilization(
        P,
        (-force[..., 0], 0.0),
        [(force[..., 5], force[..., 4])],
        [pushed],
        one.effective,
        longer,
    )


def judge_sticks(
    sticks: Sequence[Judged], envelope: Envelope, cases: LoadCases, source: str, basis: str
) -> Iterator[MemberStrength]:
    """Yield the strength of the stick of each part that is used most by any set of stiffness."""
    sections, every = envelope.forces.sections, envelope.every
    worst: dict[str, tuple[float, Judged, Used]] = {}
    for one in sticks:
        use = use_of(one, sections[one.nth], cases, every)
        most = to_rank(float(use.most.max()))
        if one.part.name not in worst or most > worst[one.part.name][0]:
            worst[one.part.name] = most, one, use
    for _, one, use in worst.values():
        yield _member(one, envelope, use, cases, source, basis)


def _member(
    one: Judged, envelope: Envelope, use: Used, cases: LoadCases, source: str, basis: str
) -> MemberStrength:
    row, x = where_greatest(use.most)
    at = int(row), int(x)
    case, section = int(envelope.every[at[0]]), envelope.forces.sections[one.nth]
    by_set = {name: float(its.max()) for name, its in envelope.by_set(use.most).items()}
    acts = cases.set_of(case)
    governs, ratio = use.governs(at), float(use.most[at])
    here: Array = section.force[at[0], at[1]]
    asked = {
        "bending": float(np.hypot(here[4], here[5])),
        "shear": float(np.hypot(here[1], here[2])),
        "pressing": abs(float(here[0])),
        "pulling": abs(float(here[0])),
    }[governs]
    finite = bool(np.isfinite(ratio))
    law = " (LRFD)" if basis == FACTORED else ""
    rests = _SOURCE.format(wood=book_of(basis).members)
    check = Check(
        kind=Kind.MEMBER,
        subject=one.part.name,
        demand=asked,
        capacity=asked / ratio if finite and ratio > 0.0 else 0.0,
        unit=UNITS[governs],
        utilization=ratio if finite else None,
        passes=bool(ratio <= 1.0),
        source=f"{rests}{law}; {source}; {values_of(one.strength.stuff, basis).source}",
        direction_deg=cases.azimuth(case),
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.factor,
        case=cases.name(case),
        load=acts.name,
        envelope=(min(by_set.values()), max(by_set.values())),
        as_read=by_set[STIFFNESS_AS_READ],
    )
    governs, check = as_column(governs, check, one.strength, one.effective, use.pressed())
    return MemberStrength(
        name=one.part.name,
        check=check,
        role=one.role,
        governs=governs,
        count=1,
        deflection=_bent(one, envelope.forces, at[0] % len(envelope.which), acts.factor),
        stuff=one.strength.stuff,
        graded=one.part.grade is not None,
        slender=one.strength.slender(one.effective),
        loads=tuple(dict.fromkeys(load.name for each in cases.sets for load in each.loads)),
        at=float(section.at[at[1]]),
        forces=tuple(float(value) for value in here),
    )


def _bent(one: Judged, forces: Forces, nth: int, live: float) -> float:
    """Return how far in m a stick's ends and nodes move apart, under what acts unfactored.

    ``nth`` is the row of its case in the first set of stiffness: as read.
    """
    model = forces.model
    begin = model.firsts[one.nth]
    count = len(model.places[one.nth])
    beams = model.system.beams
    nodes = [*beams.start[begin : begin + count - 1], beams.end[begin + count - 2]]
    motion = forces.solution.motion[nth].reshape(-1, 6)
    moved: list[Array] = []
    for node in nodes:
        piece = model.system.piece[node]
        off = model.system.nodes[node] - model.system.points[piece]
        u, turn = motion[piece, :3], motion[piece, 3:]
        moved.append(u + np.cross(turn, off))
    apart = np.array(moved) - moved[0]
    across = apart - np.outer(apart @ one.stick.axes[0], one.stick.axes[0])
    return float(np.linalg.norm(across, axis=1).max()) / (live or 1.0)


def _longer(one: Judged, cases: LoadCases) -> Array:
    """Return what a stick carries under wind over what it carries for as long as each case lasts.

    Metal holds for good what it holds in a gust.
    """
    return cases.longer if not isinstance(one.strength.stuff, Metal) else np.ones(len(cases.of))


def _twisted(one: Judged, torque: Array) -> Array:
    """Return the part (…) of a stick's shear strength that twist uses."""
    P = one.strength
    held = (1.5 if not isinstance(P.stuff, Metal) else 2.0) * P.shear_force / P.area
    return torsion_stress(one.section, torque) / (torsion_share(one.section, P.stuff) * held)


def _held(
    graph: Graph, forces: InternalForces, nth: int, stick: Bar
) -> tuple[str, float, float, bool, float]:
    """Return a stick's role, the greatest length in m that is free, l_e, and whether it spans.

    Last, l_e where nothing sways. Where only one place holds it, it stands out. What stands on
    others, plumb or leaning, may sway with them: it counts as standing out, K_e 2.1 (NDS 2018
    Appendix G).
    """
    of_body = [one for one in forces.model.sticks if one.body == stick.body]
    if len(of_body) > 1:
        role = "foot" if stick.body in graph.grounded else "ring"
        return role, stick.length, stick.length, True, stick.length
    at = np.sort(_places(graph, stick))
    if not len(at):
        at = np.zeros(1)
    places = np.split(at, np.flatnonzero(np.diff(at) > _ONE_PLACE * stick.wide) + 1)
    middles = np.array([float(place.mean()) for place in places])
    spans = np.diff(middles)
    out = max(float(at.min()), stick.length - float(at.max()), 0.0)
    widest = float(spans.max()) if len(spans) else 0.0
    lean = abs(float(stick.axes[0, 2]))
    between = widest >= out
    free = max(widest, out, stick.wide)
    K_out, K_between = column_rule("stands out"), column_rule("between")
    still = max(K_between * widest, K_out * out, stick.wide)
    if lean > _PLUMB or (lean >= _LEVEL and _stands(graph, forces, stick)):
        role = "post" if lean > _PLUMB else "leg"
        standing = stick.length - _held_below(graph.structure.design, forces, stick)
        return role, max(standing, free), K_out * standing, False, still
    if len(places) == 1:
        return "arm", free, still, between, still
    return "beam" if lean < _LEVEL else "brace", free, still, between, still


def as_braced(sticks: Sequence[Judged], softest: Forces) -> list[Judged]:
    """Return sticks with l_e by the buckling load of the whole, where that matters to them.

    P l_e^2 = pi^2 E I of what a stick is pressed with when the whole sways aside, with its joints
    as soft as they may be (``softest``). What sways is no shorter than itself, even fixed below and
    guided above: where that is less a stick does not sway, and counts as held between what holds
    it. Another keeps K_e 2.1 (that the whole does not sway aside is asked as racking). Source: NDS
    2018 3.7.1.2 and Appendix G, by linear buckling of the model.
    """
    known: dict[int, float] = {}
    found: list[Judged] = []
    for one in sticks:
        pressed = -softest.sections[one.nth].force[..., 0].min(axis=1)
        case = first_greatest(pressed)
        load = float(pressed[case])
        resists = pi**2 * one.stick.stiffness * min(one.stick.inertia)
        if one.effective <= one.between or load * one.effective**2 <= _LITTLE * resists:
            found.append(one)
            continue
        if case not in known:
            known[case] = critical(softest.model.system, SOFT, softest.geometry(case))
        own = sqrt(resists / (known[case] * load)) if known[case] > 0.0 else inf
        braced = own <= _STILL * one.effective / column_rule("stands out")
        found.append(replace(one, effective=max(own, one.between)) if braced else one)
    return found


FIXED_AT = 1.0 / 3.0
"""Share of its depth in the ground at which a post is held against giving way sideways: the depth
of the pressure S1 in IBC 1807.3.2.1 (judgement)."""


def _held_below(design: Design, forces: InternalForces, stick: Bar) -> float:
    """Return how much in m of a stick the ground keeps from giving way sideways.

    All that is in it where concrete or paving holds it at the surface.
    """
    body = forces.structure.bodies[stick.body]
    part = design.parts[body.part]
    whole = part.constrained or part.encased is not None
    return body.depth * (1.0 if whole else 1.0 - FIXED_AT)


def _places(graph: Graph, stick: Bar) -> Array:
    """Return where along a stick in m something holds it; not what it alone carries."""
    found: list[Array] = []
    held = {id(edge) for edge in graph.held}
    carried = graph.carried(stick.body)
    for edge, other in _at_stick(graph, stick):
        if other == GROUND:
            found.append(np.array([stick.at(_lowest(graph.structure, stick))]))
        elif carried[other] or edge.face is None:
            continue
        elif edge.holds is Holds.FASTENED or id(edge) in held:
            found.append(np.array([stick.at(edge.face.middle)]))
    return np.clip(np.concatenate([np.zeros(0), *found]), 0.0, stick.length)


def _stands(graph: Graph, forces: InternalForces, stick: Bar) -> bool:
    """Return whether a leaning stick stands on the ground, or on a foot or sill that does."""
    upright = {one.body for one in forces.model.sticks if abs(float(one.axes[0, 2])) >= _LEVEL}
    low = stick.at(_lowest(graph.structure, stick))
    for edge, other in _at_stick(graph, stick):
        if other == GROUND:
            return True
        if edge.face is None or other not in graph.grounded or other in upright:
            continue
        if abs(float(stick.at(edge.face.middle)) - low) < _ONE_PLACE * stick.wide:
            return True
    return False


def _at_stick(graph: Graph, stick: Bar) -> Iterator[tuple[Edge, int]]:
    """Yield the edges at a stick, each with what it meets there."""
    for edge in graph.edges:
        if stick.body in (edge.of, edge.to):
            yield edge, edge.to if edge.of == stick.body else edge.of


def _lowest(structure: Structure, stick: Bar) -> Array:
    ends = stick.point(np.array([0.0, stick.length]))
    return ends[int(ends[:, 2].argmin())]
