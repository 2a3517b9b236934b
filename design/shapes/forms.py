"""What a body is like as a whole: the few forms that wind and strips know.

There are many shapes and few forms: each shape says which it has, and whoever needs one of them
asks for the form. The list is closed, so that a match names what it leaves out.
"""

import numpy as np
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import ByIdentity, ByValue
from .plans import Plan, Rectangle, Regular

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .rotor import Rotor


class Leaf(ByIdentity, frozen=True):
    """A board that stands: its ``region`` in x and z, its ``thickness`` in m centred on y = 0."""

    region: BaseGeometry
    width: float
    height: float
    thickness: float


class Slab(ByIdentity, frozen=True):
    """A board that lies: ``plan`` is its outline, ``region`` what is there of it, in x and y."""

    region: BaseGeometry
    plan: Plan
    thickness: float


class Wheel(ByValue, frozen=True):
    """Blades about a hub."""

    rotor: "Rotor"


class Globe(ByValue, frozen=True):
    """A ball."""

    across: float


class Ridge(ByValue, frozen=True):
    """A roof with a ridge along ``length``; each of its slopes runs over ``run`` m of ``width``."""

    length: float
    width: float
    run: float
    is_round: bool


class Bars(ByIdentity, frozen=True):
    """Straight pieces of one section ``plan`` along unit vectors ``axes`` (n, 3).

    A rectangle's length lies along ``across`` (n, 3), square to the axes; ``lengths`` (n,) in m are
    those of their middle lines. Of several none shelters another.
    """

    plan: Plan
    axes: Array
    across: Array
    lengths: Array

    def shown(self, wind: Array) -> Array:
        """Return the area (D,) in m2 that winds along (D, 3) see of all of them, each by itself."""
        third = np.cross(self.axes, self.across)
        match self.plan:
            case Rectangle(length, width):
                wide = length * np.abs(wind @ third.T) + width * np.abs(wind @ self.across.T)
            case Regular(_, across):
                wide = across * np.hypot(wind @ third.T, wind @ self.across.T)
        return np.asarray(wide @ self.lengths, dtype=np.float64)


class Prism(ByValue, frozen=True):
    """A body about an upright axis: ``plan`` is its section at mid-height, or one as wide."""

    plan: Plan


class Walls(ByValue, frozen=True):
    """Thin flat walls all round a space, between the like outlines ``foot`` and ``head``, in m.

    ``wall`` is measured square to each. ``joined`` where all of them are there and flat.
    """

    foot: Plan
    head: Plan
    height: float
    wall: float
    joined: bool


class Post(ByIdentity, frozen=True):
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


class Mote(ByValue, frozen=True):
    """Nothing that the wind meets."""


Form = Leaf | Slab | Wheel | Globe | Ridge | Bars | Prism | Mote
