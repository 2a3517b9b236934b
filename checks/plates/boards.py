"""Standing boards between their posts or on their foot, and the panels of many-sided shells."""

from collections.abc import Sequence
from math import copysign, hypot, pi, tan

import numpy as np

from ...design.placing import Body
from ...design.shapes.bodies import Shell
from ...design.shapes.flat import Panel
from ...design.structure import Structure
from ...design.touching import GAP
from ...loads.combinations import Factors
from ...loads.roofs.inside_air import breathes
from ...materials.lumber import Lumber
from ...units.arrays import Array, Mask, distinct
from ...units.frozen import ByIdentity, ByValue, replace
from ..acting.borne import Borne
from ..acting.local_wind import LocalWind
from ..members.member_check import MemberStrength, NotJudged
from ..members.uprights import section_of
from .strip_strength import plate_material_of
from .strips import (
    Acting,
    Basis,
    PointForce,
    Strip,
    StripWays,
    carrying,
    simple_span,
    weakest_place,
)

_MOSTLY = 0.5
"""A board of lumber that stands out beyond its posts by no more than this share of what they hold
of its height bends as one with that (judgement)."""


_NARROW = 0.25
"""What is no wider than this share of a board holds it as a post, not along it (judgement)."""

_BETWEEN, _ABOVE, _ON_FOOT = "board between posts", "board beyond its posts", "board on its foot"


class _Posts(ByIdentity, frozen=True):
    """Where posts hold a board: ``along`` (k,) it in m from its middle, and how high up it.

    From ``low`` to ``high`` in m above its lower edge, where all of them reach.
    """

    along: Array
    low: float
    high: float


def check_board(
    structure: Structure,
    i: int,
    near: Mask,
    local: LocalWind,
    factors: Factors,
    basis: str,
    loads: Sequence[Borne] = (),
) -> MemberStrength | NotJudged | None:
    """Return the bending of a standing board; None for any other body.

    Between the posts that it touches strips span level, as high as the posts reach, its ends
    standing out beyond; what is higher or lower than they are stands out from them as a cantilever.
    Without posts it stands on its lower edge. Its face grain is taken along its longer side.
    """
    body = structure.bodies[i]
    board, part = body.shape.panel, structure.design.parts[body.part]
    if board is None or not body.upright:
        return None
    if board.solidity < 1.0:
        return NotJudged(part.name, "lattice")
    stuff = plate_material_of(part, board.thickness)
    if isinstance(stuff, NotJudged):
        return stuff
    by = Basis(factors, basis, stuff, board.thickness)
    wind, pushes = float(local.standing[i]), _pushes(body, loads, i)
    posts = _posts_along(structure, body, near)
    if posts is None:
        if not _stands_alone(structure, body, near):
            return NotJudged(part.name, "held otherwise")
        return weakest_place(
            part.name, _upright(board, 0.0, board.height, wind, pushes, _ON_FOOT), by
        )
    if posts.high - posts.low <= GAP:
        return NotJudged(part.name, "held otherwise")
    held = posts.high - posts.low
    above, below = board.height - posts.high, posts.low
    as_one = isinstance(stuff, Lumber) and max(above, below) <= _MOSTLY * held
    places = _level(board, posts, board.height if as_one else held, wind, pushes, by)
    for foot, length in ((posts.high, above), (posts.low, -below)):
        if not as_one and abs(length) > board.thickness:
            places += _upright(board, foot, length, wind, pushes, _ABOVE)
    return weakest_place(part.name, places, by)


def check_shell(
    shell: Shell, structure: Structure, i: int, local: LocalWind, factors: Factors, basis: str
) -> MemberStrength | NotJudged:
    """Return the bending of one panel of a many-sided shell, body ``i``.

    Its strips span level from seam to seam, as wide as the widest end; suction outward governs.
    """
    part = structure.design.parts[structure.bodies[i].part]
    if shell.sides == 0:
        return NotJudged(part.name, "curved")
    stuff = plate_material_of(part, shell.wall)
    if isinstance(stuff, NotJudged):
        return stuff
    width = max(shell.bottom, shell.top) * tan(pi / shell.sides)
    slope = hypot(shell.height, (shell.bottom - shell.top) / 2.0)
    strip = simple_span(width, slope, slope >= width, panel_pressure(structure, i, local))
    by = Basis(factors, basis, stuff, shell.wall)
    return weakest_place(part.name, [StripWays("wall panel", "", (strip,))], by, shell.sides)


def panel_pressure(structure: Structure, i: int, local: LocalWind) -> float:
    """Return the greatest unfactored pressure in Pa on one panel of a body: suction outward.

    Where the air inside stands open to the wind, by itself or through what it shares it with, that
    adds to it.
    """
    return local.panel(i, "outward", breathes(structure, i))


class _Push(ByValue, frozen=True):
    """A named load on a board: N square to it, ``along`` and ``up`` in m from its lower middle."""

    name: str
    along: float
    up: float
    force: float


def _pushes(body: Body, loads: Sequence[Borne], i: int) -> list[_Push]:
    way, normal = body.bearing(0.0), body.bearing(pi / 2.0)
    found: list[_Push] = []
    for one in loads:
        if one.body == i:
            load = one.load
            along = float((np.array(load.at[:2]) - body.origin[:2]) @ way)
            force = load.force * abs(float(np.array(load.direction[:2]) @ normal))
            found.append(_Push(load.name, along, load.at[2] - body.bottom, force))
    return found


def _level(
    board: Panel, posts: _Posts, height: float, wind: float, pushes: Sequence[_Push], by: Basis
) -> list[StripWays]:
    """Return the strips along a board that carry it to its posts, ``height`` m of it.

    They take all of the wind on the board. On one post alone both ends stand out from it.
    """
    half, across = board.width / 2.0, board.height > board.width
    wind *= board.height / height
    inside = np.clip(posts.along, -half, half)
    first = float(inside[0])
    if len(inside) == 1:
        strip = Strip((0.0, half + abs(first)), (0.0,), height, across, True, (Acting(wind),))
    else:
        edges = distinct(np.concatenate([[-half], inside, [half]]))
        between = (edges[:-1] >= first) & (edges[1:] <= inside[-1])
        winds = tuple(Acting(wind * some) for some in (between | True, between, ~between))
        strip = Strip(edges, inside, height, across, lifts=winds)
    places = [StripWays(_BETWEEN, "", (strip,))]
    span = board.width if strip.fast else float(np.diff(inside).max())
    width = carrying(by.stuff, 0.0, span, height)
    for one in pushes:
        at = abs(one.along - first) if strip.fast else min(max(one.along, -half), half)
        load = Acting(0.0, (PointForce(at, one.force),), one.name)
        narrow = replace(strip, width=width, lifts=(), named=(load,))
        places.append(StripWays(_BETWEEN, "", (narrow,)))
    return places


def _upright(
    board: Panel, foot: float, length: float, wind: float, pushes: Sequence[_Push], role: str
) -> list[StripWays]:
    """Return the strips that stand ``length`` m up from a level of a board, or down below 0.

    As wide as the board, held fast there; across the grain where the board is wider than high.
    """
    out, wide = abs(length), board.width > board.height
    strip = Strip((0.0, out), (0.0,), board.width, wide, True, (Acting(wind),))
    places = [StripWays(role, "", (strip,))]
    for one in pushes:
        up = (one.up - foot) * copysign(1.0, length)
        if 0.0 < up <= out * (1.0 + 1.0e-9):
            load = Acting(0.0, (PointForce(min(up, out), one.force),), one.name)
            width = min(2.0 * up, board.width)
            narrow = replace(strip, width=width, lifts=(), named=(load,))
            places.append(StripWays(role, "", (narrow,)))
    return places


def _posts_along(structure: Structure, body: Body, near: Mask) -> _Posts | None:
    """Return how the posts that it touches hold a board; None where it touches none."""
    way = body.bearing(0.0)
    posts = [
        other
        for other, touches in zip(structure.bodies, near, strict=True)
        if touches and _is_post(other, way, body)
    ]
    if not posts:
        return None
    middles = [0.5 * (post.extent[0] + post.extent[1])[:2] - body.origin[:2] for post in posts]
    low = max(max(post.bottom, body.bottom) for post in posts) - body.bottom
    high = min(min(post.top, body.top) for post in posts) - body.bottom
    return _Posts(np.sort([float(middle @ way) for middle in middles]), low, high)


def _is_post(other: Body, way: Array, board: Body) -> bool:
    """Return whether a body holds a board as a post: slender, or narrow beside the board."""
    if section_of(other) is not None:
        return True
    assert board.shape.panel is not None
    narrow = float(np.abs(other.extent[1] - other.extent[0])[:2] @ np.abs(way))
    solid = other.shape.is_block
    beside = other.top > board.bottom + GAP
    return solid and other.upright and beside and narrow <= _NARROW * board.shape.panel.width


def _stands_alone(structure: Structure, body: Body, near: Mask) -> bool:
    """Return whether a board touches nothing but what it stands on."""
    others = [b for b, touches in zip(structure.bodies, near, strict=True) if touches]
    return all(other.top <= body.bottom + GAP for other in others)
