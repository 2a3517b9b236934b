"""What every shape can say of itself, in its own axes: x right, y away, z up from its place."""

from abc import ABC, ABCMeta, abstractmethod
from collections.abc import Callable
from functools import cached_property, wraps
from typing import Any

import numpy as np
import shapely
from shapely.geometry.base import BaseGeometry

from ...units.arrays import Array
from ...units.frozen import ByValue
from .hulls import NO_HULLS, Hull, Moments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .boxes import Box
    from .flat import Frame, Panel, Plate
    from .forms import Form, Post, Walls
    from .gables import Gable
    from .plans import Plan
    from .rotor import Rotor
    from .slopes import OpenSlope, RoofFace, Skirt


_ONCE = "hulls", "cavities", "contact", "from_above", "foot", "crown", "rim", "skirt", "roof_faces"
"""What a shape is asked again and again; it never changes, so each is worked out once."""


def _once(answer: Callable[[Any], Any]) -> Callable[[Any], Any]:
    kept = f"_{answer.__name__}"

    @wraps(answer)
    def known(shape: object) -> Any:
        found: dict[str, Any] = vars(shape)
        if kept not in found:
            found[kept] = answer(shape)
        return found[kept]

    return known


class Shape(ABC):
    """A shape in its own axes, standing on z = 0 (a wheel turns about its place instead).

    What others ask of a shape it answers here, and nobody asks which one it is: what is abstract
    each must say, all else is what most of them are.
    """

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        for name in _ONCE:
            if name in vars(cls):
                setattr(cls, name, _once(vars(cls)[name]))

    solidity: float = 1.0
    """What fraction of its outline is there, less than 1 of a lattice or slats."""
    climbers: bool = False
    """Whether plants fill its openings."""
    middle_is_place: bool = True
    """Whether its axis goes through its place, which the middle of its plan may be off."""
    stands: bool = True
    """Whether it can stand and meet others; what does not is hung or set on another part."""
    has_foot: bool = True
    """Whether it can be set into the ground: it has an end that goes there."""
    is_point: bool = False
    """Whether it has mass alone, no size."""
    lies_flat: bool = False
    """Whether it lies flat, beneath or between bodies: a deck, a cap, a ring of lumber."""
    is_standing_board: bool = False
    """Whether it is a board or lattice that stands, and leans on what touches it."""
    is_roof: bool = False
    """Whether it is a roof, solid or over a hollow."""
    fills_space: bool = False
    """Whether it is a true body on which wind is turned away, not a board, a stick or a ring."""
    has_edges: bool = True
    """Whether its edges are drawn: not of what is drawn by its outline alone."""
    is_sawn: bool = True
    """Whether it can be sawn; else it is turned, bent, cast or bought."""
    flat_topped: bool = False
    """Whether its top is level and bears what stands on it."""
    lets_through: bool = False
    """Whether it is open from below to above."""
    hole: float = 0.0
    """How wide the hole in its middle is, in m."""
    holes: tuple[tuple[tuple[float, float], ...], ...] = ()
    """Outlines of holes in a board that stands, in x and z."""

    @abstractmethod
    def moments(self) -> Moments:
        """Return the volume and first moments of the material (solidity counted)."""

    @abstractmethod
    def hulls(self) -> tuple[Hull, ...]:
        """Return the convex pieces whose union is the filled outer shape."""

    def cavities(self) -> tuple[Hull, ...]:
        """Return the convex pieces that are empty within the outer shape; none of what is solid."""
        return NO_HULLS

    @abstractmethod
    def contact(self) -> BaseGeometry:
        """Return the faces that touch the ground when it stands on it, in plan (m)."""

    def from_above(self) -> BaseGeometry:
        """Return the filled outline from above, in plan (m): that of ``named_plan`` for most."""
        plan = self.named_plan
        return shapely.Polygon() if plan is None else plan.polygon()

    def bearings(self) -> tuple[float, ...]:
        """Return the plan angles (rad from +x) of its face normals and plan diagonals.

        Those of ``named_plan`` for most, none of what is the same from every side.
        """
        return () if self.named_plan is None else self.named_plan.bearings()

    @cached_property
    def axes(self) -> tuple[Array, Array, Array]:
        """Return unit vectors (3,) along its own length and square to it: x, y, z for most."""
        x, y, z = np.eye(3)
        return x, y, z

    @abstractmethod
    def as_form(self) -> "Form":
        """Return what it is like as a whole."""

    @cached_property
    def form(self) -> "Form":
        """Return what it is like as a whole, worked out once."""
        return self.as_form()

    @property
    def named_plan(self) -> "Plan | None":
        """Return the outline or section whose widths people are told; None without one."""
        return None

    def foot(self) -> BaseGeometry | None:
        """Return the filled outline of its underside where it closes what is beneath it (m)."""
        return None

    def crown(self) -> BaseGeometry:
        """Return the filled outline of its top in plan (m)."""
        return self.from_above()

    def rim(self) -> BaseGeometry:
        """Return what of its top bears what lies on it, in plan (m)."""
        return self.crown()

    def skirt(self) -> "Skirt | None":
        """Return what in plan lies beneath its slopes; None without slopes that shelter it."""
        return None

    def roof_faces(self) -> "list[RoofFace]":
        """Return the planes of its roof: bands and sectors of even slope where it is curved."""
        return []

    @property
    def is_hollow(self) -> bool:
        """Return whether it is a body with a space within, or a roof, over which wind closes."""
        return self.is_roof

    @property
    def is_block(self) -> bool:
        """Return whether it is a solid body that is no roof."""
        return False

    @property
    def is_floor(self) -> bool:
        """Return whether it closes what stands on it from below."""
        return False

    @property
    def has_lid(self) -> bool:
        """Return whether it is hollow and closed above."""
        return False

    @property
    def open_above(self) -> bool:
        """Return whether its hollow is open above."""
        return False

    @property
    def open_below(self) -> bool:
        """Return whether its hollow is open below."""
        return False

    @property
    def open_sideways(self) -> bool:
        """Return whether its hollow is open at a side or an end."""
        return False

    def vessel_floor(self) -> BaseGeometry | None:
        """Return the plan of the floor inside it (m), its own or what it stands on; None if not."""
        return None

    @property
    def wheel(self) -> "Rotor | None":
        """Return itself where it is a wheel that turns about its place."""
        return None

    def stretched(self, factor: float) -> "Shape":
        """Return the shape with its upright sizes times a factor; itself where it keeps its size.

        What leans or is sawn keeps its form.
        """
        return self

    def reach(self, along: Array, *, sheet: bool) -> tuple[float, bool]:
        """Return how far in m it reaches along a direction (3,), and whether on edge or end.

        Of a ``sheet`` the edges count, of wood the ends of its grain. ValueError for what no
        fastener is driven into.
        """
        raise ValueError("no fastener is driven into a wheel or a point")

    def grain(self, entered: Array) -> Array | None:
        """Return how the grain of lumber runs (3,), entered along a direction (3,).

        Along the longest side of what is solid, up the walls of a hollow body, along a stick: the
        same as for its ends. None of what is round, sloping or of many sides in plan.
        """
        return None

    @property
    def wall_thickness(self) -> float | None:
        """Return how thick its walls or slopes are, square to each, in m; None if solid."""
        return None

    @property
    def clear_width(self) -> float | None:
        """Return the width in m inside the foot of what is hollow and regular; None of others."""
        return None

    def walls(self) -> "Walls | None":
        """Return its flat walls round a space; None where it has none."""
        return None

    def post(self) -> "Post | None":
        """Return it as a post, None where it is none."""
        return None

    @property
    def fill_height(self) -> float | None:
        """Return how high in m it may be filled; None where nothing may be laid inside."""
        return None

    def fill(self, depth: float) -> Moments | None:
        """Return the space inside it up to a depth in m; None where there is no room."""
        return None

    @property
    def is_lattice(self) -> bool:
        """Return whether it lets through what meets its outline, standing still."""
        return self.solidity < 1.0 and self.wheel is None

    @property
    def plate(self) -> "Plate | None":
        """Return itself where it is a plate that lies."""
        return None

    @property
    def ring(self) -> "Frame | None":
        """Return itself where it is a ring of straight pieces of lumber that lies."""
        return None

    @property
    def panel(self) -> "Panel | None":
        """Return itself where it is a rectangular board or lattice that stands."""
        return None

    @property
    def pitched(self) -> "Gable | None":
        """Return itself where it is a roof of two slopes that meet at a ridge."""
        return None

    @property
    def room(self) -> "Box | None":
        """Return itself where it has walls and faces, each closed unless it is said to be open."""
        return None

    def open_slopes(self) -> "list[OpenSlope]":
        """Return its slopes where they are all that there is of it, wind passing beneath."""
        return []

    def slopes(self) -> tuple[float, float] | None:
        """Return the area of its outer slopes in m2 and the height of their centroid in m.

        A covering may lie on them; None without any.
        """
        return None


class _SaidAndSized(type(ByValue), ABCMeta):
    """Classes of fields in which what is abstract has to be said."""


class SizedShape(Shape, ByValue, frozen=True, metaclass=_SaidAndSized):
    """A shape of which its sizes tell all: two of one kind with the same are equal."""


ALONG_AXIS = 0.7
"""Cosine from which a direction is along an axis rather than square to it (45 degrees)."""


def size_along(along: Array, sizes: tuple[float, float, float], flat: int) -> tuple[float, bool]:
    """Return the size nearest a direction (3,); a board is on edge but across its ``flat`` way."""
    axis = int(np.abs(along).argmax())
    return sizes[axis], axis != flat
