"""What a body is like as a whole: the few forms that wind and strips know.

There are many shapes and few forms: each shape says which it has, and whoever needs one of them
asks for the form. The list is closed, so that a match names what it leaves out.
"""

from dataclasses import dataclass

from shapely.geometry.base import BaseGeometry

from .plans import Plan
from .shape import Array

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .rotor import Rotor


@dataclass(frozen=True, eq=False)
class Leaf:
    """A board that stands: its ``region`` in x and z, its ``thickness`` in m centred on y = 0."""

    region: BaseGeometry
    width: float
    height: float
    thickness: float


@dataclass(frozen=True, eq=False)
class Slab:
    """A board that lies: ``plan`` is its outline, ``region`` what is there of it, in x and y."""

    region: BaseGeometry
    plan: Plan
    thickness: float


@dataclass(frozen=True)
class Wheel:
    """Blades about a hub."""

    rotor: "Rotor"


@dataclass(frozen=True)
class Globe:
    """A ball."""

    across: float


@dataclass(frozen=True)
class Ridge:
    """A roof with a ridge along ``length``; each of its slopes runs over ``run`` m of ``width``."""

    length: float
    width: float
    run: float
    is_round: bool


@dataclass(frozen=True, eq=False)
class Bars:
    """Straight pieces of one section ``plan``, along unit vectors ``axes`` (n, 3), with lengths.

    ``lengths`` (n,) in m, of their middle lines. A rectangle's length lies level.
    """

    plan: Plan
    axes: Array
    lengths: Array


@dataclass(frozen=True)
class Prism:
    """A body about an upright axis: ``plan`` is its section at mid-height, or one as wide."""

    plan: Plan


@dataclass(frozen=True)
class Walls:
    """Thin flat walls all round a space, between the like outlines ``foot`` and ``head``, in m.

    ``wall`` is measured square to each. ``joined`` where all of them are there and flat.
    """

    foot: Plan
    head: Plan
    height: float
    wall: float
    joined: bool


@dataclass(frozen=True, eq=False)
class Post:
    """A straight solid along the unit vector ``along`` (3,), with the section at its thinner end.

    ``first`` m along ``across`` (3,) by ``second``; both alike where it is round, with its
    ``wall`` where it is a tube.
    """

    along: Array
    across: Array
    first: float
    second: float
    is_round: bool = False
    wall: float | None = None


@dataclass(frozen=True)
class Mote:
    """Nothing that the wind meets."""


Form = Leaf | Slab | Wheel | Globe | Ridge | Bars | Prism | Mote
