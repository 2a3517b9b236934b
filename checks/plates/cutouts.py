"""Boards sawn to an outline: cantilevers from their foot, or propped by a brace, and their arms."""

import numpy as np

from ...design import plane
from ...design.placing import Body
from ...design.shapes.cutout import Cutout
from ...design.structure import Structure
from ...design.touching import GAP
from ...loads.combinations import Factors
from ...units.arrays import Array, Mask, first_greatest
from ...units.frozen import replace
from ..acting.local_wind import LocalWind
from ..members.member_check import MemberStrength, NotJudged
from ..members.uprights import section_of
from .arms import arms_of, levels_of
from .strip_strength import plate_material_of, strip_strength, twist_strength
from .strips import Acting, Basis, Strip, StripWays, weakest_place

_LEVELS = 200
_LEAST = 1.0e-3
"""A figure is nowhere taken narrower than this, in m: at its point there is no wood at all."""

_ALONG, _HARDLY = 0.93, 0.05
"""An arm of lumber whose axis lies within 15 degrees of its grain bends along it (square of the
cosine); across it one counts that asks no more than this share of the strength along: judgement."""


def check_cutout(
    board: Cutout,
    structure: Structure,
    i: int,
    near: Mask,
    local: LocalWind,
    factors: Factors,
    basis: str,
) -> MemberStrength | NotJudged | None:
    """Return the strength of a sawn board, body ``i``, where it is used most; None lying down.

    Level by level as a strip held at its foot, with the twist of what lies to one side; and across
    every arm that reaches out, whichever way. Boards of lumber with such arms are not judged.
    """
    body = structure.bodies[i]
    part = structure.design.parts[body.part]
    if not body.upright:
        return None
    stuff = plate_material_of(part, board.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    prop = _prop(structure, body, near)
    if isinstance(prop, str):
        return NotJudged(part.name, prop)
    up = None if prop is None else float(prop[1])
    role = "cut-out" if prop is None else "propped cut-out"
    by = Basis(factors, basis, stuff, board.thickness)
    pressure = float(local.standing[i])
    places = [StripWays(role, "", (strip,), True) for strip in strips_of(board, up, pressure)]
    one = weakest_place(part.name, places, by)
    if isinstance(one, NotJudged):
        return one
    other = _across(board, prop, pressure, by)
    if other is None:
        return NotJudged(part.name, "across grain")
    use, level, governs, demand, holds = other
    if use <= one.check.rank:
        return one
    check = replace(
        one.check, demand=demand, capacity=holds, unit="N*m", utilization=use, passes=use <= 1.0
    )
    return replace(one, check=check, governs=governs, level=level)


def _across(
    board: Cutout, prop: Array | None, pressure: float, by: Basis
) -> tuple[float, float, str, float, float] | None:
    """Return the most that a section is used: use, level, what governs, demand and capacity.

    None where an arm of lumber reaches out across its grain. Twist is added to shear.
    Source: Hankinson's formula for bending at an angle to the grain; EN 1995-1-1 6.1.8.
    """
    low = float(np.asarray(board.points)[:, 1].min())
    held = [] if prop is None else [prop + np.array([0.0, low])]
    arms = arms_of(board, held)
    levels = levels_of(board, _LEVELS, _pushes(board, prop))
    factor = by.factors.wind * pressure
    found: list[tuple[float, float, str, float, float]] = []
    for some in (arms, levels):
        ways = [
            strip_strength(by.stuff, by.thickness, some.width, across, by.basis)
            for across in (board.height <= board.width, board.height > board.width)
        ]
        along, across = ways
        if along is None:
            return None
        if across is None:
            steep = (some.rise < _ALONG) & (some.moment > 0.0)
            if bool((factor * some.moment > _HARDLY * along.moment)[steep].any()):
                return None
            bends, slides = along.moment, along.shear
        else:
            bends, slides = (
                1.0 / (some.rise / one + (1.0 - some.rise) / other)
                for one, other in ((along.moment, across.moment), (along.shear, across.shear))
            )
        turns = twist_strength(by.stuff, by.thickness, some.width, by.basis)
        twisted = some.shear / slides + some.twist / turns
        for governs, use, asked in (
            ("bending", some.moment / bends, some.moment),
            ("twist", twisted, some.twist),
        ):
            if use.size:
                k = first_greatest(use)
                most, demand = factor * float(use[k]), factor * float(asked[k])
                holds = demand / most if most > 0.0 else 0.0
                found.append((most, float(some.level[k]), governs, demand, holds))
    return max(found)


def _pushes(board: Cutout, prop: Array | None) -> tuple[float, float, float] | None:
    """Return where a prop pushes back and how much for a wind of 1 Pa, its foot free to turn."""
    if prop is None:
        return None
    low = float(np.asarray(board.points)[:, 1].min())
    middle = float(board.outline.centroid.y) - low
    return float(prop[0]), float(prop[1]), float(board.outline.area) * middle / float(prop[1])


def strips_of(board: Cutout, brace: float | None, pressure: float) -> list[Strip]:
    """Return a sawn board as a strip held at its foot, level by level, under a wind in Pa.

    ``brace`` in m above the foot is where it is propped too: its foot may then hold it fast or let
    it turn, and both are told. Holes are closed for the wind and weaken the wood.
    """
    low_x, low, high_x, high = (float(end) for end in plane.bounds_of(board.outline))
    edges: Array = np.linspace(low, high, _LEVELS + 1)
    ends = low_x - 1.0, high_x + 1.0
    wood = plane.polygon(board.sawn, [np.asarray(hole) for hole in board.holes])
    width = plane.widths(wood, edges, *ends)
    least = np.maximum(np.minimum(width[1:], width[:-1]), _LEAST)
    filled = plane.widths(board.outline, 0.5 * (edges[1:] + edges[:-1]), *ends)
    held = (0.0,) if brace is None else (0.0, brace)
    wind = (Acting(pressure * filled / least),)
    feet = (True,) if brace is None else (True, False)
    across = board.height <= board.width
    return [Strip(edges - low, held, least, across, fast, wind) for fast in feet]


def _prop(structure: Structure, body: Body, near: Mask) -> Array | str | None:
    """Return where a board is propped, None without a prop, or why it is refused.

    How far along it and how high above its foot (2,) in m: whatever touches it above its foot props
    it up to there; posts hold it in another way.
    """
    parts = structure.design.parts
    part = parts[body.part]
    stands = body.bottom <= GAP or any(
        touches and abs(other.top - body.bottom) <= GAP
        for other, touches in zip(structure.bodies, near, strict=True)
    )
    if not stands or part.place.under is not None or part.hangs_at is not None:
        return "held otherwise"
    found: list[tuple[float, float]] = []
    way = body.bearing(0.0)
    for other, touches in zip(structure.bodies, near, strict=True):
        if not touches or other.top <= body.bottom + GAP:
            continue
        if parts[other.part].place.reference == part.name:
            return "load on it"
        if section_of(other) is not None or other.top > body.top + GAP:
            return "held otherwise"
        middle = 0.5 * (other.extent[0] + other.extent[1])[:2] - body.origin[:2]
        found.append((other.top - body.bottom, float(middle @ way)))
    if not found:
        return None
    up, along = min(found)
    return np.array([along, up])
