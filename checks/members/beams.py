"""Beams and arms: sticks in bending and shear between and beyond the places where they are held.

Held in one place a stick stands out from its edge; held in more it spans from middle to middle,
each span by itself and in one piece, the worse of both (judgement: supports give, or they do not).
"""

import numpy as np

from ...design.on_ground import TOUCHING
from ...design.shapes.shape import Array
from ...design.structure import Structure
from ..judging import Check, Kind
from .beam_bending import carried_ways, cuts_of, deflection, greatest, pressed_along
from .beam_loads import Beam, PointLoads
from .carried_down import Carried
from .columns import column_rule
from .governs import UNITS, as_column, used
from .load_path import LoadPath
from .member_check import Member, NotJudged, Stuff
from .member_strength import STRENGTH
from .over_places import MOSTLY, held_from_to, together
from .post_strength import PostStrength, post_strength

SOURCE = "statics of beams; NDS 2018 3.3, 3.4, 3.9, 4.3, or AISC 360-16 E, F, G, H"


def beam_of(structure: Structure, path: LoadPath, i: int, basis: str) -> Beam | NotJudged | None:
    """Return a body as a beam or an arm; None of one that is none, as it lies on the ground."""
    stick, body = path.sticks[i], structure.bodies[i]
    part = structure.design.parts[body.part]
    if stick is None or part.hangs_at is not None or body.bottom <= TOUCHING:
        return None
    places = together(held_from_to(path, i, stick), stick.wide)
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
    cuts = cuts_of(beam, loads)
    ways = carried_ways(beam, loads, cuts)
    pressed = pressed_along(beam, loads, cuts)
    prop = np.zeros(1) if propping is None else propping[..., None]
    along = prop + 0.0 * pressed, pressed
    lasts = longer(carried, beam.strength.stuff)
    use = used(
        beam.strength,
        along,
        [way.moment for way in ways],
        [np.hypot(*way.shear) for way in ways],
        beam.effective,
        lasts[..., None],
    )
    at = np.unravel_index(int(use.most[:-1].argmax()), use.most[:-1].shape)
    s, q, d, c, _ = (int(k) for k in at)
    governs, most = use.governs(at), float(use.most[at])
    if governs == "bending":
        most, asked = greatest(
            beam, cuts, ways, along, loads, (s, q, d, c), float(lasts[s, 0, 0, 0])
        )
    elif governs == "shear":
        asked = max(float(np.hypot(way.shear[0][at], way.shear[1][at])) for way in ways)
    else:
        asked = abs(float(along[0][at])) + float(pressed[at])
    check = stick_check(
        part.name, carried, (s, d, c), most, asked, governs, beam.strength, factors, basis
    )
    if propping is not None:
        braces = use.pressed(slice(-1))
        governs, check = as_column(governs, check, beam.strength, beam.effective, braces)
    # a named load bends it as it is; else wind and weight do
    n = s if carried.sets[s].loads else -1
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
        deflection=deflection(beam, cuts, shown),
        stuff=beam.strength.stuff,
        beside=beam.beside,
        loads=carried.named,
        graded=part.grade is not None,
        slender=0.0 if propping is None else beam.strength.slender(beam.effective),
    )


def longer(carried: Carried, stuff: Stuff) -> Array:
    """Return by how much each set (S + 1, 1, 1, 1) is asked more of a stuff than it is."""
    times = [carried.times(s, stuff) for s in range(len(carried.sets))]
    return np.array([*times, 1.0])[:, None, None, None]


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
    by_wind = acts.is_wind
    times = carried.times(s, strength.stuff)
    capacity = 0.0 if not np.isfinite(use) else asked / use if use > 0.0 else 0.0
    return Check(
        kind=Kind.MEMBER,
        subject=name,
        demand=asked / times,
        capacity=capacity / times,
        unit=UNITS[governs],
        utilization=use if np.isfinite(use) else None,
        passes=bool(use <= 1.0),
        source=f"{SOURCE}{' (LRFD)' if basis == STRENGTH else ''}; {strength.stuff.source}; "
        f"{factors}",
        direction_deg=float(carried.azimuths[d]) if by_wind else None,
        weighing=acts.weighing,
        dead=acts.dead,
        wind=acts.live,
        case="calm" if acts.is_calm else carried.cases[c] if by_wind else "",
        load=acts.name,
    )
