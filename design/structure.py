"""The structure that a design describes: its bodies, their weight, and what touches the ground."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from .. import materials
from . import plane
from .faults import DesignError, Fault
from .model import Design, Part
from .placing import Body, place_parts, stacks
from .shapes.shape import Array

Weighing = Literal["light", "typical", "heavy"]
WEIGHINGS: tuple[Weighing, ...] = ("light", "typical", "heavy")

GRAVITY = 9.80665
"""Standard acceleration of free fall in m/s2 (ISO 80000-3)."""

TOUCHING = 1.0e-3
"""What lies within this height (m) of the ground touches it."""


@dataclass(frozen=True)
class Patch:
    """A touching face in plan (m), and the part and kind of surface that it belongs to."""

    area: BaseGeometry
    part: int
    contact: str


@dataclass(frozen=True)
class Structure:
    """What a design weighs and where it stands, in SI units.

    ``part_mass`` (3, parts) in kg holds the light, typical and heavy mass of all copies of each
    part; ``part_centre`` (parts, 3) and ``part_volume`` (parts,) likewise. ``footprint`` (k, 2) is
    the convex hull of what touches the ground, counter-clockwise; ``patches`` are the faces.
    """

    design: Design
    bodies: tuple[Body, ...]
    stack: tuple[int, ...]
    part_mass: Array
    part_centre: Array
    part_volume: Array
    footprint: Array
    patches: tuple[Patch, ...]
    height: float

    def mass(self, weighing: Weighing) -> float:
        """Return the whole mass in kg."""
        return float(self.part_mass[WEIGHINGS.index(weighing)].sum())

    def weight(self, weighing: Weighing) -> float:
        """Return the whole weight in N."""
        return self.mass(weighing) * GRAVITY

    def centre_of_mass(self, weighing: Weighing) -> Array:
        """Return the centre of mass (3,) in m."""
        masses = self.part_mass[WEIGHINGS.index(weighing)]
        return masses @ self.part_centre / masses.sum()

    @property
    def contact_area(self) -> BaseGeometry:
        """Return all touching faces as one area in plan."""
        return plane.union_of([patch.area for patch in self.patches])


def build_structure(design: Design) -> Structure:
    """Return the structure of a design.

    Raises DesignError where nothing touches the ground, something lies below it, or the whole
    stands on a line or a point.
    """
    bodies = place_parts(design)
    volume, centre = _volumes(design, bodies)
    mass = _masses(design, volume)
    points, patches = _ground_contact(design, bodies)
    return Structure(
        design=design,
        bodies=bodies,
        stack=stacks(design.parts),
        part_mass=mass,
        part_centre=centre,
        part_volume=volume,
        footprint=_footprint(design, bodies, points),
        patches=patches,
        height=max(float(body.origin[2] + body.shape.peak) for body in bodies),
    )


def _volumes(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, Array]:
    """Return volume (parts,) and centre (parts, 3) of all copies of each part."""
    count = len(design.parts)
    volume, centre = np.zeros(count), np.zeros((count, 3))
    copies = np.zeros(count)
    for body in bodies:
        moments = body.shape.moments()
        local = moments.first / moments.volume if moments.volume else np.zeros(3)
        volume[body.part] += moments.volume
        centre[body.part] += body.place(local)
        copies[body.part] += 1
    return volume, centre / copies[:, None]


def _masses(design: Design, volume: Array) -> Array:
    """Return light, typical and heavy mass (3, parts), a scale's reading shared out."""
    mass = np.zeros((3, len(design.parts)))
    by_material = np.zeros(len(design.parts), dtype=bool)
    for i, part in enumerate(design.parts):
        if part.mass is not None:
            mass[:, i] = part.mass * part.place.count
        elif part.density is not None:
            mass[:, i] = part.density * volume[i]
        elif part.material is not None:
            by_material[i] = True
            rho = materials.find(part.material)
            mass[:, i] = np.array([rho.light, rho.typical, rho.heavy]) * volume[i]
    if design.weighed is not None:
        mass = _scaled_to_reading(design, mass, by_material)
    return mass


def _scaled_to_reading(design: Design, mass: Array, by_material: NDArray[np.bool_]) -> Array:
    """Return the masses with those by material scaled so that the whole is as weighed."""
    assert design.weighed is not None
    given = float(mass[1, ~by_material].sum())
    worked_out = float(mass[1, by_material].sum())
    rest = design.weighed - given
    if worked_out <= 0.0:
        raise _fault(
            design,
            "weighed",
            "a scale's reading",
            "at least one part whose weight comes from its material",
            "leave out 'weighed', or the 'mass' or 'density' of what you did not weigh",
        )
    if rest <= 0.0:
        raise _fault(
            design,
            "weighed",
            f"{design.weighed:.4g} kg",
            f"more than the {given:.4g} kg of the parts whose mass or density is given",
            "weigh the whole piece, with everything on it",
        )
    return np.where(by_material, mass[1] * rest / worked_out, mass)


def _ground_contact(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, tuple[Patch, ...]]:
    """Return the plan points (k, 2) that touch the ground, and the touching faces."""
    points: list[Array] = []
    patches: list[Patch] = []
    for body in bodies:
        if not body.shape.hulls() or body.shape.contact().is_empty:
            continue
        if abs(float(body.origin[2]) + body.shape.bottom_level) > TOUCHING:
            continue
        face = body.in_plan(body.shape.contact())
        points.append(plane.coordinates(face))
        kind = _contact_kind(design.parts[body.part])
        patches.append(Patch(face, body.part, kind))
    return (np.vstack(points) if points else np.empty((0, 2))), tuple(patches)


def _contact_kind(part: Part) -> str:
    """Return what a part rubs as: from its material, else as given, else wood."""
    of_material = materials.find(part.material).contact if part.material is not None else None
    return part.contact or of_material or "wood"


def _footprint(design: Design, bodies: tuple[Body, ...], points: Array) -> Array:
    """Return the convex hull (k, 2) of the touching points, counter-clockwise."""
    lowest = [
        (float(body.origin[2]) + body.shape.bottom_level, design.parts[body.part].name)
        for body in bodies
        if body.shape.hulls()
    ]
    height, name = min(lowest, default=(0.0, design.parts[0].name))
    if height < -TOUCHING:
        raise _fault(
            design,
            "at",
            f"{-height * 1000:.0f} mm ({-height / 0.0254:.3g} in) below the ground",
            "nothing lower than the ground, z = 0",
            "raise it with at, or stand it on another part with on",
            part=name,
        )
    if len(points) == 0:
        raise _fault(
            design,
            None,
            f"nothing touches the ground: the lowest part hangs {height * 1000:.0f} mm "
            f"({height / 0.0254:.3g} in) above it",
            "at least one part standing on the ground, z = 0",
            "lower it with at, or add the foot or posts that it stands on",
            part=name,
        )
    hull = plane.hull(points)
    if hull.area < 1.0e-6:
        raise _fault(
            design,
            None,
            "it touches the ground in a line or a point only",
            "a foot with some width both ways",
            "add the foot that it stands on",
            part=name,
        )
    return _without_straight_corners(plane.ring_of(hull))


def _without_straight_corners(ring: Array) -> Array:
    """Drop corners that lie on a straight edge, as where two faces share it."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    sine = _cross(before, after) / (np.linalg.norm(before, axis=1) * np.linalg.norm(after, axis=1))
    return ring[sine > 1.0e-7]


def _cross(a: Array, b: Array) -> Array:
    return a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]


def _fault(
    design: Design, key: str | None, found: str, expected: str, hint: str, part: str | None = None
) -> DesignError:
    return DesignError((Fault(design.file, None, part, key, found, expected, hint),))
