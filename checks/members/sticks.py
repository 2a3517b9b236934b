"""Sticks: straight pieces of one section that do not stand plumb, and where others touch them.

A body is taken as the box round it that is turned with it; a stick's own box is exact.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from ...design.placing import Body
from ...design.shapes.bodies import Solid
from ...design.shapes.boxes import Box
from ...design.shapes.member import Member
from ...design.shapes.shape import Array
from ...design.touching import GAP
from .uprights import SLENDER, Mask, Section

PIECES = 96
"""Into so many pieces a stick is cut to find where along it another body touches."""

_PLUMB = 1.0e-9


@dataclass(frozen=True, eq=False)
class Stick:
    """A straight piece from ``start`` (3,), ``length`` m along the unit vector ``along`` (3,).

    ``ways`` (2, 3) are the unit vectors of its section's first and second side, right-handed with
    ``along``. An end sawn aslant reaches ``beyond`` m further at its tip.
    """

    start: Array
    along: Array
    ways: Array
    length: float
    section: Section
    beyond: float = 0.0

    @property
    def leans(self) -> float:
        """Return the sine of its slope, 0 where it lies level."""
        return abs(float(self.along[2]))

    @property
    def wide(self) -> float:
        """Return the greater side of its section, in m."""
        return max(self.section.first, self.section.second)

    def at(self, points: Array) -> Array:
        """Return how far along it in m (…) points (…, 3) lie."""
        return (points - self.start) @ self.along

    def point(self, along: float) -> Array:
        """Return the point (3,) of its axis ``along`` m from its start."""
        return self.start + along * self.along

    @cached_property
    def box(self) -> "TurnedBox":
        """Return the box that it fills."""
        whole = self.length + 2.0 * self.beyond
        half = np.array([whole, self.section.first, self.section.second]) / 2.0
        return TurnedBox(
            self.point(self.length / 2.0)[None], np.vstack([self.along, self.ways]), half
        )


@dataclass(frozen=True, eq=False)
class TurnedBox:
    """Boxes alike: ``middles`` (n, 3), unit ``axes`` (3, 3), ``half`` their sizes (3,), in m."""

    middles: Array
    axes: Array
    half: Array


def stick_of(body: Body) -> Stick | None:
    """Return a body as a stick; None of what is no stick, or stands plumb and so is a post."""
    found = _stick(body)
    if found is None or found.leans > 1.0 - _PLUMB or found.length < SLENDER * found.wide:
        return None
    return found


def box_of(body: Body) -> TurnedBox:
    """Return the box round a body that is turned with it."""
    stick = _stick(body)
    if stick is not None:
        return stick.box
    low: list[Array] = []
    high: list[Array] = []
    for hull in body.shape.hulls():
        if len(hull.points):
            low.append(hull.points.min(axis=0))
            high.append(hull.points.max(axis=0))
        for disc in hull.discs:
            reach = disc.radius * np.sqrt(np.maximum(1.0 - np.asarray(disc.axis) ** 2, 0.0))
            low.append(np.asarray(disc.centre) - reach)
            high.append(np.asarray(disc.centre) + reach)
        for ball in hull.spheres:
            low.append(np.asarray(ball.centre) - ball.radius)
            high.append(np.asarray(ball.centre) + ball.radius)
    if not low:
        return TurnedBox(body.origin[None], np.eye(3), np.zeros(3))
    least, most = np.min(low, axis=0), np.max(high, axis=0)
    middle = body.place((least + most) / 2.0)
    return TurnedBox(middle[None], body.rotation.T, (most - least) / 2.0)


def touch(one: TurnedBox, other: TurnedBox) -> Mask:
    """Return which of the boxes (n,) touch another box: within 3 mm along every dividing plane.

    Source: two boxes are apart only if they are so along a face of either or square to two edges.
    """
    apart = one.middles - other.middles
    crossed = np.cross(one.axes[:, None, :], other.axes[None, :, :]).reshape(-1, 3)
    size = np.linalg.norm(crossed, axis=1)
    crossed = crossed[size > 1.0e-6] / size[size > 1.0e-6][:, None]
    normals = np.vstack([one.axes, other.axes, crossed])
    reach = np.abs(normals @ one.axes.T) @ one.half + np.abs(normals @ other.axes.T) @ other.half
    within: Mask = np.abs(apart @ normals.T) <= reach + GAP
    return np.asarray(within.all(axis=1))


def where_touched(stick: Stick, other: TurnedBox) -> tuple[float, float] | None:
    """Return from where to where along a stick in m another body touches it; None: nowhere."""
    step = (stick.length + 2.0 * stick.beyond) / PIECES
    places = (np.arange(PIECES) + 0.5) * step - stick.beyond
    middles = stick.start + places[:, None] * stick.along
    half = np.array([step, stick.section.first, stick.section.second]) / 2.0
    near = np.flatnonzero(touch(TurnedBox(middles, stick.box.axes, half), other))
    if not len(near):
        return None
    low, high = places[near[0]] - step / 2.0, places[near[-1]] + step / 2.0
    low, high = (float(np.clip(each, 0.0, stick.length)) for each in (low, high))
    return _edges(stick, other, low, high)


def _edges(stick: Stick, other: TurnedBox, low: float, high: float) -> tuple[float, float]:
    """Return the reach of the other box along the stick where that is plain: square to it."""
    square = np.abs(other.axes @ stick.along)
    if square.max() < 1.0 - 1.0e-6:
        return low, high
    reach = float(square @ other.half)
    middle = float(stick.at(other.middles[0]))
    low, high = np.clip([middle - reach, middle + reach], 0.0, stick.length).tolist()
    return low, high


def _stick(body: Body) -> Stick | None:
    match body.shape:
        case Member() as member:
            along, level, square = (body.rotation @ axis for axis in member.axes)
            start = body.place(np.asarray(member.start))
            first, second = (
                (member.across, member.across) if member.is_round else (member.width, member.depth)
            )
            ways = np.vstack([level, square])
            return _right_handed(
                start,
                along,
                ways,
                member.length,
                first,
                second,
                member.is_round,
                member.wall,
                _aslant(member, second),
            )
        case Box(wall=None) as box if _is_straight(box):
            sizes = np.array([box.length, box.width, box.height])
        case Solid(sides=4, bottom=bottom, top=top, height=height) if bottom == top:
            sizes = np.array([bottom, bottom, height])
        case _:
            return None
    k = int(sizes.argmax())
    axes = body.rotation.T
    middle = body.place(np.array([0.0, 0.0, sizes[2] / 2.0]))
    i, j = (k + 1) % 3, (k + 2) % 3
    start = middle - sizes[k] / 2.0 * axes[k]
    ways = np.vstack([axes[i], axes[j]])
    return _right_handed(start, axes[k], ways, float(sizes[k]), float(sizes[i]), float(sizes[j]))


def _is_straight(box: Box) -> bool:
    top = box.top_plan
    return box.length == top.length and box.width == top.width


def _right_handed(
    start: Array,
    along: Array,
    ways: Array,
    length: float,
    first: float,
    second: float,
    is_round: bool = False,
    wall: float | None = None,
    beyond: float = 0.0,
) -> Stick:
    """Return a stick; a mirrored one's axes are made right-handed, which its section allows."""
    if np.cross(along, ways[0]) @ ways[1] < 0.0:
        ways = np.vstack([ways[0], -ways[1]])
    section = Section(ways[0][:2], first, second, is_round, wall)
    return Stick(start, along, ways, length, section, beyond)


def _aslant(member: Member, depth: float) -> float:
    """Return how far in m the tip of an end sawn level or plumb reaches beyond its axis."""
    rise = abs(float(member.axes[0][2]))
    level = (1.0 - rise**2) ** 0.5
    if member.cut == "square" or min(rise, level) < _PLUMB:
        return 0.0
    return depth / 2.0 * (level / rise if member.cut == "level" else rise / level)
