"""Straight sticks sawn to length: a frame's mitred pieces, posts, rails, braces, rods, pipes."""

from math import acos, pi, tan

import numpy as np

from ...materials.bought import nominal_size
from ...materials.stock import lumber_sizes
from ...units.arrays import Array
from ...units.frozen import ByValue
from ..shapes.bodies import Solid
from ..shapes.boxes import Box
from ..shapes.flat import Frame
from ..shapes.member import Member
from ..shapes.plans import Plan, Rectangle, Regular

_SLENDER = 3.0
"""A solid rectangle is a stick where it is this many times as long as it is wide: judgement."""


class SawnStick(ByValue, frozen=True):
    """A straight piece of one section, in m and rad, both ends sawn at one angle from square.

    ``long_point`` is measured over the longer edge, or from tip to tip where the two cuts are
    ``parallel``; ``short_point`` over the shorter edge, or along each edge. ``thick`` by ``wide``
    is the section; one that is round has ``wide`` 0. ``wall`` is a tube's.
    """

    face: str
    copies: int
    thick: float
    wide: float
    long_point: float
    short_point: float
    mitre: float
    volume: float
    parallel: bool = False
    cut: str = "square"
    wall: float | None = None


def post_sticks(post: Solid) -> tuple[SawnStick, ...]:
    """Return a square post as a stick; none of another solid body."""
    if post.sides != 4 or post.bottom != post.top:
        return ()
    return _rectangular((post.bottom, post.bottom, post.height))


def box_sticks(box: Box) -> tuple[SawnStick, ...]:
    """Return a solid rectangle as a stick; none where it is a slab, tapered or hollow."""
    if box.wall is not None or box.top_plan != Rectangle(box.length, box.width):
        return ()
    return _rectangular((box.length, box.width, box.height))


def mitred_lengths(across: float | Array, width: float | Array, sides: int) -> tuple[Array, Array]:
    """Return the long-point and short-point length in m of a regular frame's pieces.

    ``across`` (…) over flats and ``width`` (…) of the lumber in plan, in m, broadcast. The edge of
    a regular figure of apothem a is 2 a tan(180/n): plane geometry.
    """
    edge = 2.0 * tan(pi / sides)
    outside = np.asarray(across) / 2.0
    return edge * outside, edge * (outside - np.asarray(width))


def frame_sticks(frame: Frame) -> tuple[SawnStick, ...]:
    """Return a frame's mitred pieces; none of a round one, which is not made of sticks."""
    thick, wide = frame.height, frame.width
    plan: Plan = frame.plan
    if isinstance(plan, Regular):
        if plan.sides == 0:
            return ()
        long, short = (float(x) for x in mitred_lengths(plan.across, wide, plan.sides))
        mitre = pi / plan.sides
        return (_mitred("piece", plan.sides, thick, wide, long, short, mitre),)
    pair = [("long piece", plan.length), ("short piece", plan.width)]
    if plan.length < plan.width:
        pair = [(name, size) for (name, _), (_, size) in zip(pair, pair[::-1], strict=True)]
    return tuple(
        _mitred(name, 2, thick, wide, size, size - 2.0 * wide, pi / 4.0) for name, size in pair
    )


def _mitred(
    face: str, copies: int, thick: float, wide: float, long: float, short: float, mitre: float
) -> SawnStick:
    volume = (long + short) / 2.0 * thick * wide
    return SawnStick(face, copies, thick, wide, long, short, mitre, volume)


def member_stick(member: Member) -> SawnStick:
    """Return a member; cut level or plumb, its ends are parallel and its edges equally long."""
    along, _, _ = member.axes
    normal = {"level": [0.0, 0.0, 1.0], "plumb": _plumb(along)}.get(member.cut, along)
    tilt = acos(max(-1.0, min(1.0, abs(float(np.asarray(normal) @ along)))))
    tilt = 0.0 if tilt < 1.0e-7 else tilt
    deep = member.across if member.is_round else member.depth
    tips = member.length + deep * tan(tilt)
    thick, wide = (
        (member.across, 0.0)
        if member.is_round
        else (min(member.width, member.depth), max(member.width, member.depth))
    )
    return SawnStick(
        "piece",
        1,
        thick,
        wide,
        tips,
        member.length,
        tilt,
        member.section_area * member.length,
        parallel=tilt > 0.0,
        cut=member.cut,
        wall=member.wall,
    )


def _plumb(along: Array) -> list[float]:
    """Return the level normal of a plumb cut: the direction in which a member runs in plan."""
    reach = float(np.hypot(along[0], along[1]))
    return [float(along[0]) / reach, float(along[1]) / reach, 0.0] if reach > 1.0e-9 else [0, 0, 1]


def _rectangular(sizes: tuple[float, float, float]) -> tuple[SawnStick, ...]:
    """Return a solid rectangle as a stick, its longest side the length; none if it is a slab.

    One of a section that is sold is a stick however short it is.
    """
    thick, wide, length = sorted(sizes)
    widest = max(max(size) for size in lumber_sizes().values())
    named = nominal_size(thick, wide) is not None
    if not named and (wide > widest or length < _SLENDER * wide):
        return ()
    return (SawnStick("piece", 1, thick, wide, length, length, 0.0, thick * wide * length),)
