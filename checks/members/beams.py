"""Beams and arms: sticks in bending and shear between and beyond the places where they are held.

Held in one place a stick stands out from its edge; held in more it spans from middle to middle,
each span by itself and in one piece, the worse of both (judgement: supports give, or they do not).
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

import numpy as np

from ...design.shapes.shape import Array
from ...design.structure import TOUCHING, Structure
from ..judging import Check
from .beam_statics import Along, bent, cantilever, over_supports
from .columns import column_rule
from .load_path import Carried, LoadPath
from .member_check import Member, NotJudged
from .member_strength import STRENGTH
from .post_strength import PostStrength, post_strength
from .sticks import Stick, where_touched

SOURCE = "statics of beams; NDS 2018 3.3, 3.4, 3.9, 4.3, or AISC 360-16 E, F, G, H"

MOSTLY = 0.8
"""Share of its length from which a stick that is held all along does not span: judgement."""

_SAME = 1.0e-9

_BETWEEN = 65
"""At so many points between two cuts the governing load is looked at again."""

_PIECES = 12
"""Even load is put at the middles of at least twice so many pieces of a stick."""


@dataclass(frozen=True, eq=False)
class Beam:
    """A stick and from where to where, in m along it, it is held; ``beside`` what else touches."""

    body: int
    stick: Stick
    places: tuple[tuple[float, float], ...]
    strength: PostStrength
    effective: float
    beside: tuple[str, ...]

    @property
    def supports(self) -> Array:
        """Return the middles of the places at which it is held, in m."""
        return np.array([(low + high) / 2.0 for low, high in self.places])


@dataclass(frozen=True, eq=False)
class PointLoads:
    """What pushes a stick: forces (…, k) in N, couples (…, k) in N m, both ways of its section.

    ``along`` (…, k) in N pushes toward its end; all at ``at`` (k,) in m from its start. What a
    design's own loads or a person add to a beam are more of them. ``own`` (…, 3) in N is spread
    evenly over its length: of both ways of its section, and along it.
    """

    at: Array
    pushes: tuple[Array, Array]
    turns: tuple[Array, Array]
    along: Array
    own: tuple[Array, Array, Array]


@dataclass(frozen=True, eq=False)
class Bent:
    """Bending moment (…, x) in N m and shear (…, x) in N at cuts, of both ways of the section."""

    moment: tuple[Array, Array]
    shear: tuple[Array, Array]


def beam_of(structure: Structure, path: LoadPath, i: int, basis: str) -> Beam | NotJudged | None:
    """Return a body as a beam or an arm; None of one that is none, as it lies on the ground."""
    stick, body = path.sticks[i], structure.bodies[i]
    part = structure.design.parts[body.part]
    if stick is None or part.hangs_at is not None or body.bottom <= TOUCHING:
        return None
    reached = [where_touched(stick, path.boxes[hold.by]) for hold in path.of(i)]
    by_points = [stick.at(hold.points) for hold in path.of(i)]
    held = [
        (float(points.min()), float(points.max())) if reach is None else reach
        for reach, points in zip(reached, by_points, strict=True)
    ]
    places = _together(held, stick.wide)
    if not places or i not in path.order:
        return NotJudged(part.name, "held otherwise")
    if max(high - low for low, high in places) > MOSTLY * stick.length:
        return NotJudged(part.name, "held along")
    spans = np.diff([(low + high) / 2.0 for low, high in places])
    out = max(places[0][0], stick.length - places[-1][1])
    widest = float(spans.max()) if len(spans) else 0.0
    between = widest >= out
    free = max(widest, out, stick.wide)
    strength = post_strength(stick.section, part.material, part.grade, free, basis, between)
    if isinstance(strength, str):
        return NotJudged(part.name, strength)
    effective = max(column_rule("between") * widest, column_rule("stands out") * out, stick.wide)
    counted = {hold.by for hold in path.of(i)} | {hold.held for hold in path.on(i)}
    beside = [j for j in np.flatnonzero(path.near[i]) if int(j) not in counted]
    names = dict.fromkeys(structure.design.parts[structure.bodies[j].part].name for j in beside)
    return Beam(i, stick, tuple(places), strength, effective, tuple(names))


def point_loads(path: LoadPath, carried: Carried, beam: Beam) -> PointLoads:
    """Return what pushes a beam: what it carries where it touches, and its own load evenly."""
    stick = beam.stick
    at: list[float] = []
    forces: list[Array] = []
    couples: list[Array] = []
    for k, hold in enumerate(path.holds):
        if hold.by != beam.body or k not in carried.arrives:
            continue
        passed, rest = carried.arrives[k]
        s = np.clip(stick.at(hold.points), 0.0, stick.length)
        arm = hold.points - np.array([stick.point(float(each)) for each in s])
        turned = np.cross(arm, passed)
        if np.ptp(s) <= 2.0 * stick.wide:
            middle = float(s.mean())
            moved = np.cross((s - middle)[:, None] * stick.along, passed)
            at.append(middle)
            forces.append(passed.sum(axis=-2))
            couples.append((turned + moved).sum(axis=-2) + rest)
            continue
        for n, each in enumerate(s):
            at.append(float(each))
            forces.append(passed[..., n, :])
            couples.append(turned[..., n, :] + rest / len(s))
    for point, force in carried.given.get(beam.body, []):
        s = float(np.clip(stick.at(point), 0.0, stick.length))
        at.append(s)
        forces.append(force)
        couples.append(np.cross(point - stick.point(s), force))
    lasts = carried.lasting(beam.strength.stuff)[:, None, None, None, None]
    own = lasts * carried.own[beam.body].force
    first, second = stick.ways
    if not at:
        at, forces, couples = [0.0], [np.zeros(own.shape)], [np.zeros(own.shape)]
    F, C = (lasts[..., None] * np.stack(each, axis=-2) for each in (forces, couples))
    return PointLoads(
        np.array(at),
        (F @ first, F @ second),
        (C @ second, -(C @ first)),
        F @ stick.along,
        (own @ first, own @ second, own @ stick.along),
    )


def check_beam(
    structure: Structure,
    carried: Carried,
    beam: Beam,
    loads: PointLoads,
    factors: str,
    basis: str,
    propping: Array | None = None,
) -> Member:
    """Return the worst of bending, with what presses along it, and shear along a beam or an arm.

    ``factors`` names the source of the load factors. ``propping`` (…) in N presses a brace besides.
    """
    part = structure.design.parts[structure.bodies[beam.body].part]
    cuts = _cuts(beam, loads)
    ways = _carried_ways(beam, loads, cuts)
    pressed = _pressed(beam, loads, cuts)
    prop = np.zeros(1) if propping is None else propping[..., None]
    bending = shear = np.zeros(1)
    for way in ways:
        by_bending = beam.strength.use_within(prop, pressed, *way.moment, beam.effective)
        pushed = np.hypot(*way.shear) / beam.strength.shear_force
        bending, shear = np.maximum(bending, by_bending), np.maximum(shear, pushed)
    use = np.maximum(bending, shear)[:-1]
    at = np.unravel_index(int(use.argmax()), use.shape)
    s, q, d, c, _ = (int(k) for k in at)
    governs = "bending" if bending[at] >= shear[at] else "shear"
    if governs == "bending":
        most, asked = _greatest(
            beam, cuts, ways, (prop + 0.0 * pressed, pressed), loads, (s, q, d, c)
        )
    else:
        most = float(use[at])
        asked = max(float(np.hypot(way.shear[0][at], way.shear[1][at])) for way in ways)
    check = stick_check(
        part.name, carried, (s, d, c), most, asked, governs, beam.strength, factors, basis
    )
    # a named load bends it as it is; else wind and weight do
    n = -1 if carried.sets[s].load is None else s
    shown = ways[0].moment[0][n, q, d, c], ways[0].moment[1][n, q, d, c]
    if n == s:
        times = carried.times(s, beam.strength.stuff)
        shown = shown[0] / times, shown[1] / times
    return Member(
        name=part.name,
        check=check,
        role="brace" if propping is not None else "arm" if len(beam.places) == 1 else "beam",
        governs=governs,
        count=1,
        deflection=_deflection(beam, cuts, shown),
        stuff=beam.strength.stuff,
        beside=beam.beside,
        loads=carried.named,
        graded=part.grade is not None,
        slender=0.0 if propping is None else beam.strength.slender(beam.effective),
    )


def stick_check(
    name: str,
    carried: Carried,
    load: tuple[int, int, int],
    use: float,
    asked: float,
    governs: str,
    strength: PostStrength,
    factors: str,
    basis: str,
) -> Check:
    """Return the check of a stick: what is ``asked`` of it under a ``load`` and its ``use``.

    ``load`` are set, direction and case. What lasts longer than wind is told as it is, without what
    makes it comparable with wind.
    """
    s, d, c = load
    acts = carried.sets[s]
    by_wind = acts.load is None and not acts.is_calm
    times = carried.times(s, strength.stuff)
    capacity = 0.0 if not np.isfinite(use) else asked / use if use > 0.0 else 0.0
    return Check(
        name=f"member: {name}",
        demand=asked / times,
        capacity=capacity / times,
        unit="N*m" if governs == "bending" else "N",
        utilization=use if np.isfinite(use) else None,
        passes=bool(use <= 1.0),
        source=f"{SOURCE}{' (LRFD)' if basis == STRENGTH else ''}; {strength.stuff.source}; "
        f"{factors}",
        direction_deg=float(carried.azimuths[d]) if by_wind else None,
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.live,
        case="calm" if acts.is_calm else carried.cases[c] if by_wind else "",
        load="" if acts.load is None else acts.load.name,
    )


def _together(held: Sequence[tuple[float, float]], near: float) -> list[tuple[float, float]]:
    """Return places at which a stick is held, those that lie nearer than ``near`` m as one."""
    found: list[tuple[float, float]] = []
    for low, high in sorted(held):
        if found and low - found[-1][1] < near:
            found[-1] = found[-1][0], max(found[-1][1], high)
        else:
            found.append((low, high))
    return found


def _edges(beam: Beam, loads: PointLoads) -> Array:
    """Return where pieces of even load begin and end: at all places that matter, and between."""
    marks = [0.0, beam.stick.length, *(edge for place in beam.places for edge in place)]
    apart = sorted([*marks, *beam.supports.tolist(), *loads.at.tolist()])
    pieces: list[Array] = [
        np.linspace(low, high, 2 * ceil(_PIECES * (high - low) / beam.stick.length) + 1)[:-1]
        for low, high in pairwise(apart)
        if high - low > _SAME
    ]
    return np.append(np.concatenate(pieces), beam.stick.length)


def _cuts(beam: Beam, loads: PointLoads) -> Array:
    """Return where along a beam bending is looked at: between pieces, and beside each load."""
    beside = np.concatenate([loads.at - _SAME, _edges(beam, loads)])
    return np.unique(np.clip(beside, 0.0, beam.stick.length))


def _carried_ways(beam: Beam, loads: PointLoads, cuts: Array) -> list[Bent]:
    """Return bending and shear in each way in which the beam may carry what pushes it.

    All is linear: what one newton and one newton metre do at each place is found once.
    """
    edges = _edges(beam, loads)
    middles = (edges[1:] + edges[:-1]) / 2.0
    at = np.concatenate([loads.at, middles])
    ones, none, k = np.eye(len(at)), np.zeros((len(at), len(at))), len(loads.at)
    even = np.diff(edges) / beam.stick.length
    by_force, by_turn = _ways(beam, ones, none, at, cuts), _ways(beam, none, ones, at, cuts)

    def both(f: Array, c: Array) -> tuple[Array, Array]:
        first, second = (
            push @ f[:k] + couple @ c[:k] + own[..., None] * (even @ f[k:])
            for push, couple, own in zip(loads.pushes, loads.turns, loads.own[:2], strict=True)
        )
        return first, second

    return [
        Bent(both(force.moment, turn.moment), both(force.shear, turn.shear))
        for force, turn in zip(by_force, by_turn, strict=True)
    ]


def _ways(beam: Beam, F: Array, C: Array, at: Array, cuts: Array) -> list[Along]:
    """Return what forces and couples (…, k) do to a beam, one for each way to carry them."""
    if len(beam.places) == 1:
        return [_out_of(F, C, at, beam.places[0], cuts)]
    apart, joined = over_supports(F, C, at, beam.supports, cuts)
    return [apart] if len(beam.places) == 2 else [apart, joined]


def _greatest(
    beam: Beam,
    cuts: Array,
    ways: Sequence[Bent],
    pressed: tuple[Array, Array],
    loads: PointLoads,
    load: tuple[int, int, int, int],
) -> tuple[float, float]:
    """Return the greatest use by bending between cuts under one load, and the moment there in N m.

    Between cuts nothing but the even load pushes: moments are parabolas through their ends.
    """
    step = np.diff(cuts)[:, None]
    t = np.linspace(0.0, 1.0, _BETWEEN)
    best = 0.0, 0.0

    def along(ends: Array) -> Array:
        return ends[:-1, None] * (1.0 - t) + ends[1:, None] * t

    for way in ways:
        first, second = (
            along(moment[load]) - own[load] / beam.stick.length * step**2 * t * (1.0 - t) / 2.0
            for moment, own in zip(way.moment, loads.own[:2], strict=True)
        )
        by, size = (along(each[load]) for each in pressed)
        use = beam.strength.use_within(by, size, first, second, beam.effective)
        at = np.unravel_index(int(use.argmax()), use.shape)
        best = max(best, (float(use[at]), float(np.hypot(first[at], second[at]))))
    return best


def _out_of(F: Array, C: Array, at: Array, place: tuple[float, float], cuts: Array) -> Along:
    """Return bending and shear of what stands out on both sides of one place."""
    low, high = place
    after, before = cuts >= high - _SAME, cuts <= low + _SAME
    free = cantilever(F, C, at, np.maximum(cuts, high))
    other = cantilever(F, -C, -at, np.maximum(-cuts, -low))
    return Along(
        np.where(before, other.moment, np.where(after, free.moment, 0.0)),
        np.where(before, other.shear, np.where(after, free.shear, 0.0)),
    )


def _pressed(beam: Beam, loads: PointLoads, cuts: Array) -> Array:
    """Return the size (…, x) in N of the force along a stick: of what stands out, or all of it."""
    own = loads.own[2]
    if len(beam.places) != 1:
        whole = np.abs(loads.along).sum(axis=-1) + np.abs(own)
        return np.repeat(whole[..., None], len(cuts), axis=-1)
    ((low, high),) = beam.places
    after, before = cuts >= high - _SAME, cuts <= low + _SAME
    behind = (loads.at[:, None] > cuts) & after | (loads.at[:, None] < cuts) & before
    share = np.where(after, beam.stick.length - cuts, np.where(before, cuts, 0.0))
    even = own[..., None] * (share / beam.stick.length)
    return np.abs(loads.along @ behind.astype(float) + even)


def _deflection(beam: Beam, cuts: Array, moments: tuple[Array, Array]) -> float:
    """Return how far in m a beam bends at most, in the two ways of its section together."""
    moved: list[float] = []
    p = beam.supports
    if len(p) == 1:
        low, high = beam.places[0]
        stretches = [
            (cuts >= high - _SAME, np.array([high])),
            (cuts <= low + _SAME, np.array([low])),
        ]
    else:
        starts = np.array([0.0, *p[1:-1]])
        ends = np.array([*p[1:-1], beam.stick.length])
        stretches = [
            ((cuts >= starts[n]) & (cuts <= ends[n]), p[n : n + 2]) for n in range(len(p) - 1)
        ]
    for part, held in stretches:
        if part.sum() < 2:
            continue
        first, second = (
            bent(moment[part], cuts[part], stiffness, held)
            for moment, stiffness in zip(moments, beam.strength.stiffness, strict=True)
        )
        moved.append(float(np.hypot(first, second)))
    return max(moved, default=0.0)
