"""Posts: slender upright pieces that carry others, which of them share, and what they carry.

Two bodies are taken to touch where the boxes round them, in the design's own axes, do.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import atan2, degrees

import numpy as np
from numpy.typing import NDArray

from ...design.model import Design, Part
from ...design.on_ground import TOUCHING
from ...design.placing import Body, place_parts
from ...design.shapes.bodies import Solid
from ...design.shapes.boxes import Box
from ...design.shapes.cutout import Cutout
from ...design.shapes.flat import Panel
from ...design.shapes.member import Member
from ...design.shapes.rotor import Rotor
from ...design.shapes.shape import Array
from ...design.shapes.weight import Weight
from ...design.structure import Structure
from ...design.touching import GAP

SLENDER = 5.0
"""Length over width from which an upright piece is a post."""

FIXED_AT = 1.0 / 3.0
"""Share of its depth in the ground at which a post is taken to be held: the depth of the pressure
S1 in IBC 1807.3.2.1; where its bending is greatest lies near (judgement)."""

SEATED = 0.15
"""Share of a post's length up to which what stands beside it only seats it."""

Mask = NDArray[np.bool_]


@dataclass(frozen=True, eq=False)
class Section:
    """The section of an upright, ``first`` by ``second`` in m.

    ``first`` lies along the plan vector ``axis`` (2,). ``wall`` is that of a tube, None of a solid
    piece.
    """

    axis: Array
    first: float
    second: float
    is_round: bool = False
    wall: float | None = None


@dataclass(frozen=True, eq=False)
class Posts:
    """Like posts that share what they carry, ``foot`` and ``length`` in m.

    ``names`` are those of their parts and ``bodies`` their numbers, ``places`` (n, 2) their middles
    in plan, ``goes`` (bodies,) they and what they carry. ``why_not`` says why they cannot be
    judged, "" where they can; ``beside`` names parts with a footing of their own that touch them.
    """

    names: tuple[str, ...]
    bodies: tuple[int, ...]
    section: Section
    foot: float
    length: float
    goes: Mask
    places: Array
    beside: tuple[str, ...] = ()
    why_not: str = ""


def section_of(body: Body) -> Section | None:
    """Return the section of a slender upright body, at its thinner end; None of any other."""
    found = _section(body)
    if found is None or body.top - body.bottom < SLENDER * max(found.first, found.second):
        return None
    return found


def posts_of(structure: Structure) -> tuple[Posts, ...]:
    """Return the posts of a structure, those alike that share a load together."""
    bodies, parts = structure.bodies, structure.design.parts
    hung = [part.place.under is not None or part.hangs_at is not None for part in parts]
    sections = [None if hung[body.part] else section_of(body) for body in bodies]
    upright = [i for i, one in enumerate(sections) if one is not None]
    if not upright:
        return ()
    near = touching(structure)
    alike = _alike(structure, sections, upright)
    return tuple(group for like in alike for group in _groups(structure, sections, like, near))


def touching(structure: Structure) -> Mask:
    """Return which bodies touch which (bodies, bodies), by the boxes round them.

    Point masses, wheels and what swings touch only what they are placed on.
    """
    bodies = place_parts(replace(structure.design, turn=0.0))
    extents = np.array([body.extent for body in bodies])
    low, high = extents[:, 0] - 0.5 * GAP, extents[:, 1] + 0.5 * GAP
    reaches: Mask = np.all(low[:, None] <= high[None], axis=-1)
    near = reaches & reaches.T
    parts = structure.design.parts
    for i, body in enumerate(bodies):
        part = parts[body.part]
        if isinstance(body.shape, (Weight, Rotor)) or part.hangs_at is not None:
            bears = [parts[other.part].name == part.place.reference for other in bodies]
            near[i], near[:, i] = bears, bears
    np.fill_diagonal(near, False)
    return near


def _section(body: Body) -> Section | None:
    match body.shape:
        case Box(wall=None) as box if body.upright:
            top = box.top_plan
            first, second = min(box.length, top.length), min(box.width, top.width)
            return Section(body.bearing(0.0), first, second) if first * second > 0.0 else None
        case Solid(sides=4 | 0 as sides, bottom=bottom, top=top) if body.upright:
            least = min(bottom, top)
            return Section(body.bearing(0.0), least, least, sides == 0) if least > 0.0 else None
        case Member() as member:
            along, level, _ = member.axes
            if abs((body.rotation @ along)[2]) < 1.0 - 1.0e-9:
                return None
            axis = (body.rotation @ level)[:2]
            if member.is_round:
                return Section(axis, member.across, member.across, True, member.wall)
            return Section(axis, member.width, member.depth, False, member.wall)
        case _:
            return None


def _alike(
    structure: Structure, sections: Sequence[Section | None], upright: Sequence[int]
) -> list[list[int]]:
    """Return posts of one stuff, section, direction, foot and length together."""
    found: dict[tuple[object, ...], list[int]] = {}
    for i in upright:
        one, body = sections[i], structure.bodies[i]
        assert one is not None
        part = structure.design.parts[body.part]
        square = one.is_round or abs(one.first - one.second) < TOUCHING
        bearing = degrees(atan2(float(one.axis[1]), float(one.axis[0])))
        way = 0.0 if square else round(bearing % 180.0, 1) % 180.0
        sizes = (one.first, one.second, body.bottom, body.top, one.wall or 0.0)
        key = (part.material, part.grade, one.is_round, way, *(round(s, 3) for s in sizes))
        found.setdefault(key, []).append(i)
    return list(found.values())


def _groups(
    structure: Structure, sections: Sequence[Section | None], like: list[int], near: Mask
) -> list[Posts]:
    """Return like posts by what they carry: each alone, or together where they carry the same."""
    is_post = np.zeros(len(structure.bodies), dtype=bool)
    is_post[like] = True
    pieces = _pieces(near, ~is_post)
    based = [_is_based(structure, piece) for piece in pieces]
    carried = [piece for piece, own in zip(pieces, based, strict=True) if not own]
    footed = [piece for piece, own in zip(pieces, based, strict=True) if own]
    sharing = _sharing(like, carried, near)
    return [_posts(structure, sections, group, carried, footed, near) for group in sharing]


def _pieces(near: Mask, among: Mask) -> list[list[int]]:
    """Return the bodies of ``among`` in pieces that hang together without the others."""
    left = set(np.flatnonzero(among).tolist())
    found: list[list[int]] = []
    while left:
        reached, edge = set[int](), {left.pop()}
        while edge:
            reached |= edge
            edge = {int(j) for i in edge for j in np.flatnonzero(near[i])} & left
            left -= edge
        found.append(sorted(reached))
    return found


def _is_based(structure: Structure, piece: Sequence[int]) -> bool:
    """Return whether a piece finds its own way to the ground."""
    return any(structure.bodies[i].bottom <= TOUCHING for i in piece)


def _sharing(like: Sequence[int], carried: Sequence[Sequence[int]], near: Mask) -> list[list[int]]:
    """Return posts together that the same carried piece, or a chain of such, rests on."""
    groups = [{i} for i in like]
    for piece in carried:
        joins = {i for i in like if near[i, piece].any()}
        together = [group for group in groups if group & joins]
        if together:
            groups = [group for group in groups if not group & joins]
            groups.append(set[int]().union(*together))
    return [sorted(group) for group in groups]


def _posts(
    structure: Structure,
    sections: Sequence[Section | None],
    group: list[int],
    carried: Sequence[Sequence[int]],
    footed: Sequence[Sequence[int]],
    near: Mask,
) -> Posts:
    bodies, design = structure.bodies, structure.design
    goes = np.zeros(len(bodies), dtype=bool)
    goes[group] = True
    for piece in carried:
        if near[np.ix_(group, piece)].any():
            goes[piece] = True
    first = bodies[group[0]]
    one = sections[group[0]]
    assert one is not None
    foot = _fixed_at(first, design.parts[first.part])
    length = first.top - foot
    seat = foot + SEATED * length
    touched = [
        j
        for piece in footed
        for j in piece
        if near[group, j].any() and bodies[j].top > seat and bodies[j].top > foot + GAP
    ]
    braces = [j for j in touched if _may_push(bodies[j]) or bodies[j].bottom > foot + GAP]
    return Posts(
        names=_names(design, bodies, group),
        bodies=tuple(group),
        section=one,
        foot=foot,
        length=length,
        goes=goes,
        places=np.array([0.5 * (bodies[i].extent[0] + bodies[i].extent[1])[:2] for i in group]),
        beside=_names(design, bodies, touched),
        why_not="braced" if braces else "",
    )


def _fixed_at(body: Body, part: Part) -> float:
    """Return the height in m at which a post is held fast: its underside, or in the ground.

    At the surface where concrete or paving holds it there.
    """
    if part.embed <= 0.0:
        return body.bottom
    return 0.0 if part.constrained or part.encased is not None else -FIXED_AT * part.embed


def _may_push(body: Body) -> bool:
    """Return whether a body with a footing of its own may load a post that it touches.

    What begins above the foot does so as well: it is held up by something else too.
    """
    return isinstance(body.shape, (Member, Panel, Cutout)) or section_of(body) is not None


def _names(design: Design, bodies: Sequence[Body], which: Sequence[int]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(design.parts[bodies[i].part].name for i in which))
