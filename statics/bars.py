"""Sticks: straight pieces of one section, long enough to bend as beams; rings are made of them."""

from collections.abc import Callable
from functools import cached_property

import numpy as np

from ..design.placing import Body
from ..design.shapes.bodies import Solid
from ..design.shapes.boxes import Box
from ..design.shapes.flat import Frame
from ..design.shapes.member import Member
from ..design.shapes.plans import Rectangle, Regular, unit_corners
from ..design.structure import Structure
from ..materials import lumber, metal
from ..units.arrays import Array
from ..units.frozen import ByIdentity
from .stiffness import stiffness_rule, torsion_constant

ROUND_PIECES = 16
"""Straight pieces that stand for a round ring."""


class Bar(ByIdentity, frozen=True):
    """A straight piece of a body from ``start`` (3,), ``length`` m along ``axes[0]``.

    ``axes`` (3, 3) are the unit vectors along it and of its section's first and second side,
    right-handed; ``first`` by ``second`` in m, a tube of ``wall``. ``stiffness`` is E and
    ``shear`` G in Pa. Of a ring it is one side, between the middles of its corners.
    """

    body: int
    start: Array
    axes: Array
    length: float
    first: float
    second: float
    is_round: bool
    wall: float | None
    stiffness: float
    shear: float

    @property
    def wide(self) -> float:
        """Return the greater side of its section, in m."""
        return max(self.first, self.second)

    @cached_property
    def area(self) -> float:
        """Return the area of its section in m2."""
        return _hollow(lambda b, h: b * h * (np.pi / 4.0 if self.is_round else 1.0), self)

    @cached_property
    def inertia(self) -> tuple[float, float]:
        """Return I in m4 of bending along its first side, and along its second."""
        if self.is_round:
            both = _hollow(lambda b, _: np.pi / 64.0 * b**4, self)
            return both, both
        return (
            _hollow(lambda b, h: h * b**3 / 12.0, self),
            _hollow(lambda b, h: b * h**3 / 12.0, self),
        )

    @cached_property
    def torsion(self) -> float:
        """Return J in m4."""
        return torsion_constant(self.first, self.second, is_round=self.is_round, wall=self.wall)

    def at(self, points: Array) -> Array:
        """Return how far along it in m (…) points (…, 3) lie."""
        return (points - self.start) @ self.axes[0]

    def point(self, along: float | Array) -> Array:
        """Return the point (…, 3) of its axis ``along`` (…) m from its start."""
        return self.start + np.asarray(along)[..., None] * self.axes[0]


def body_bars(structure: Structure, i: int) -> tuple[Bar, ...]:
    """Return the sticks that a body is made of: one, the sides of a ring, or none of what is rigid.

    A stick is at least five times as long as the greater side of its section, and of a stuff whose
    stiffness is published. A ring is one of sticks whatever its proportions.
    """
    return tuple(stick for stick in slender_pieces(structure, i) if stick.stiffness > 0.0)


def slender_pieces(structure: Structure, i: int) -> tuple[Bar, ...]:
    """Return what would be the sticks of a body, 0 stiff where no stiffness is published."""
    body = structure.bodies[i]
    part = structure.design.parts[body.part]
    stuff = part.material, part.grade
    match body.shape:
        case Member() as member:
            return _member(body, member, i, *stuff)
        case Box(wall=None) as box:
            return _box(body, box, i, *stuff)
        case Solid() as post if post.sides in (0, 4):
            return _post(body, post, i, *stuff)
        case Frame() as ring:
            return _ring(body, ring, i, *stuff)
        case _:
            return ()


def modulus(
    material: str | None, first: float, second: float, grade: str | None
) -> tuple[float, float]:
    """Return E and G in Pa of a piece ``first`` by ``second`` m; 0, 0 where none is published.

    Of wood as it is outdoors, wet.
    """
    if material is None:
        return 0.0, 0.0
    least, wide = sorted((first, second))
    wood = lumber.find_lumber(material, least, wide, grade)
    if wood is not None:
        return wood.wet_stiffness, wood.wet_stiffness * stiffness_rule("turning over bending")
    alloy = metal.find_metal(material)
    if alloy is not None:
        return alloy.stiffness, alloy.stiffness * stiffness_rule("turning of metal")
    return 0.0, 0.0


def _member(
    body: Body, member: Member, i: int, material: str | None, grade: str | None
) -> tuple[Bar, ...]:
    axes = np.stack([body.rotation @ axis for axis in member.axes])
    first, second = (
        (member.across, member.across) if member.is_round else (member.width, member.depth)
    )
    start = body.place(np.asarray(member.start))
    return _one(
        i, start, axes, member.length, first, second, member.is_round, member.wall, material, grade
    )


def _box(body: Body, box: Box, i: int, material: str | None, grade: str | None) -> tuple[Bar, ...]:
    top = box.top_plan
    sizes = np.array([min(box.length, top.length), min(box.width, top.width), box.height])
    along = int(sizes.argmax())
    if float(sizes.min()) <= 0.0:
        return ()
    order = [along, (along + 1) % 3, (along + 2) % 3]
    axes = body.rotation.T[order]
    middle = body.place(np.array([0.0, 0.0, box.height / 2.0]))
    length, first, second = (float(size) for size in sizes[order])
    start = middle - axes[0] * length / 2.0
    return _one(i, start, axes, length, first, second, False, None, material, grade)


def _post(
    body: Body, post: Solid, i: int, material: str | None, grade: str | None
) -> tuple[Bar, ...]:
    thin = min(post.bottom, post.top)
    if thin <= 0.0:
        return ()
    axes = body.rotation.T[[2, 0, 1]]
    return _one(
        i,
        body.origin,
        axes,
        post.height,
        thin,
        thin,
        post.sides == 0,
        None,
        material,
        grade,
    )


def _ring(
    body: Body, ring: Frame, i: int, material: str | None, grade: str | None
) -> tuple[Bar, ...]:
    E, G = modulus(material, ring.width, ring.height, grade)
    match ring.plan:
        case Rectangle() as plan:
            corners = plan.shrunk(ring.width).corners()
        case Regular() as plan:
            apothem = (plan.across - ring.width) / 2.0
            corners = unit_corners(plan.sides or ROUND_PIECES) * apothem
    if plan.least_width <= 2.0 * ring.width:
        return ()
    level = np.column_stack([corners, np.full(len(corners), ring.height / 2.0)])
    spots = body.place(level)
    up = body.rotation[:, 2]
    found: list[Bar] = []
    for start, end in zip(spots, np.roll(spots, -1, axis=0), strict=True):
        length = float(np.linalg.norm(end - start))
        along = (end - start) / length
        axes: Array = np.stack([along, np.cross(up, along).astype(np.float64), up])
        found.append(Bar(i, start, axes, length, ring.width, ring.height, False, None, E, G))
    return tuple(found)


def _one(
    i: int,
    start: Array,
    axes: Array,
    length: float,
    first: float,
    second: float,
    is_round: bool,
    wall: float | None,
    material: str | None,
    grade: str | None,
) -> tuple[Bar, ...]:
    if length < stiffness_rule("stick") * max(first, second) * (1.0 - 1.0e-9):
        return ()
    E, G = modulus(material, first, second, grade)
    # a mirrored one's axes are made right-handed, which its section allows
    second_way: Array = np.cross(axes[0], axes[1]).astype(np.float64)
    axes = np.stack([axes[0], axes[1], second_way])
    return (Bar(i, start, axes, length, first, second, is_round, wall, E, G),)


def _hollow(of: Callable[[float, float], float], stick: Bar) -> float:
    outer = of(stick.first, stick.second)
    if stick.wall is None:
        return float(outer)
    inner = stick.first - 2.0 * stick.wall, stick.second - 2.0 * stick.wall
    return float(outer - (of(*inner) if min(inner) > 0.0 else 0.0))
