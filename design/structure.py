"""The structure that a design describes: its bodies, their weight, and what touches the ground."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from .. import materials
from ..units import GRAVITY, INCH
from . import plane
from .faults import DesignError, Fault
from .model import Design, Part
from .placing import Body, place_parts, stacks
from .sections import section
from .shapes.rotor import Rotor
from .shapes.shape import Array, Sloped, corners

Weighing = Literal["light", "typical", "heavy"]
WEIGHINGS: tuple[Weighing, ...] = ("light", "typical", "heavy")

BEDDING = 0.010
"""How far (m) an edge or a point is taken to bed into what it stands on: judgement."""

TOUCHING = 1.0e-3
"""What lies within this height (m) of the ground touches it."""


@dataclass(frozen=True)
class Patch:
    """A touching face in plan (m), and the part and kind of surface that it belongs to."""

    area: BaseGeometry
    part: int
    contact: str


@dataclass(frozen=True, eq=False)
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

    def steady_centre(self, weighing: Weighing) -> Array:
        """Return the centre of mass (3,) in m with what swings taken at its hook's height."""
        masses = self.part_mass[WEIGHINGS.index(weighing)]
        centres = self.part_centre.copy()
        for i, part in enumerate(self.design.parts):
            if part.hangs_at is not None:
                centres[i, 2] = part.hangs_at
        return masses @ centres / masses.sum()

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
    volume, centre, copies = _volumes(design, bodies)
    added, covered = _coverings(design, bodies)
    mass, centre = _masses(design, volume, copies, added, centre, covered)
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
        height=max(body.top for body in bodies),
    )


def _volumes(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, Array, Array]:
    """Return volume (parts,), centre (parts, 3) and count of all copies of each part."""
    count = len(design.parts)
    volume, centre = np.zeros(count), np.zeros((count, 3))
    copies = np.zeros(count)
    for body in bodies:
        moments = body.shape.moments()
        local = moments.first / moments.volume if moments.volume else np.zeros(3)
        volume[body.part] += moments.volume
        centre[body.part] += body.place(local)
        copies[body.part] += 1
    return volume, centre / copies[:, None], copies


def _masses(
    design: Design, volume: Array, copies: Array, added: Array, centre: Array, covered: Array
) -> tuple[Array, Array]:
    """Return light, typical and heavy mass (3, parts) and centres (parts, 3), coverings included.

    ``added`` (parts,) is the mass of coverings and ``covered`` (parts, 3) its first moment. A
    scale's reading is shared out over what is known by material only.
    """
    mass = np.zeros((3, len(design.parts)))
    by_material = np.zeros(len(design.parts), dtype=bool)
    for i, part in enumerate(design.parts):
        if part.mass is not None:
            mass[:, i] = part.mass * copies[i]
        elif part.density is not None:
            mass[:, i] = part.density * volume[i]
        elif part.material is not None:
            by_material[i] = True
            rho = materials.find(part.material)
            mass[:, i] = np.array([rho.light, rho.typical, rho.heavy]) * volume[i]
    if design.weighed is not None:
        mass = _scaled_to_reading(design, mass, by_material, float(added.sum()))
    total = mass[1] + added
    middle = (mass[1][:, None] * centre + covered) / np.where(total > 0.0, total, 1.0)[:, None]
    return mass + added, np.where((added > 0.0)[:, None], middle, centre)


def _coverings(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, Array]:
    """Return the mass (parts,) in kg of what covers outer slopes, and its first moment in kg m."""
    added, moment = np.zeros(len(design.parts)), np.zeros((len(design.parts), 3))
    for body in bodies:
        covering = design.parts[body.part].covering
        if covering > 0.0 and isinstance(body.shape, Sloped):
            area, height = body.shape.slopes()
            added[body.part] += covering * area
            moment[body.part] += covering * area * body.place(np.array([0.0, 0.0, height]))
    return added, moment


def _scaled_to_reading(
    design: Design, mass: Array, by_material: NDArray[np.bool_], covering: float
) -> Array:
    """Return the masses with those by material scaled so that the whole is as weighed."""
    assert design.weighed is not None
    given = float(mass[1, ~by_material].sum()) + covering
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
        face = touching_face(body)
        if face.is_empty:
            continue
        points.append(plane.coordinates(face))
        kind = contact_kind(design.parts[body.part])
        patches.append(Patch(face, body.part, kind))
    return (np.vstack(points) if points else np.empty((0, 2))), tuple(patches)


def touching_face(body: Body, level: float = 0.0) -> BaseGeometry:
    """Return the part of a body's underside that lies within 1 mm of a height, in plan (m).

    A plumb body's own underside; of a leaning one the hull of the corners that touch. What stands
    on an edge or a point beds in: its section 10 mm up touches (judgement). A wheel does not stand.
    """
    if isinstance(body.shape, Rotor) or not body.shape.hulls():
        return plane.NOTHING
    if abs(body.bottom - level) > TOUCHING:
        return plane.NOTHING
    if body.upright:
        face = body.in_plan(body.shape.contact())
    else:
        points = np.vstack([body.place(corners(hull)) for hull in body.shape.hulls()])
        face = plane.hull(points[np.abs(points[:, 2] - level) <= TOUCHING][:, :2])
    return face if face.area > 0.0 else section(body, level + BEDDING)


def contact_kind(part: Part) -> str:
    """Return what a part rubs as: from its material, else as given, else wood."""
    of_material = materials.find(part.material).contact if part.material is not None else None
    return part.contact or of_material or "wood"


def _footprint(design: Design, bodies: tuple[Body, ...], points: Array) -> Array:
    """Return the convex hull (k, 2) of the touching points, counter-clockwise.

    Where only posts in the ground carry it, that of their sections at the surface.
    """
    lowest = [
        (_lowest(body), design.parts[body.part].name)
        for body in bodies
        if body.shape.hulls() and design.parts[body.part].embed == 0.0
    ]
    height, name = min(lowest, default=(0.0, design.parts[0].name))
    if height < -TOUCHING:
        raise _fault(
            design,
            "at",
            f"{-height * 1000:.0f} mm ({-height / INCH:.3g} in) below the ground",
            "nothing lower than the ground, z = 0",
            "raise it with at, stand it on another part with on, or set it in the ground with "
            "embed",
            part=name,
        )
    _refuse_buried(design, bodies)
    if not len(points):
        points = _sections_at_surface(design, bodies)
    if len(points) == 0:
        raise _fault(
            design,
            None,
            f"nothing touches the ground: the lowest part hangs {height * 1000:.0f} mm "
            f"({height / INCH:.3g} in) above it",
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


def _sections_at_surface(design: Design, bodies: tuple[Body, ...]) -> Array:
    """Return the corners (k, 2) of what stands in the ground, where it enters it."""
    cuts = [
        plane.coordinates(section(body, 0.0))
        for body in bodies
        if design.parts[body.part].embed > 0.0
    ]
    return np.vstack([np.empty((0, 2)), *cuts])


def _refuse_buried(design: Design, bodies: tuple[Body, ...]) -> None:
    """Raise DesignError where a part that stands in the ground does not come out of it."""
    for body in bodies:
        part = design.parts[body.part]
        if part.embed > 0.0 and (body.top <= TOUCHING or section(body, 0.0).area <= 0.0):
            raise _fault(
                design,
                "embed",
                f"{part.embed:.4g} m deep, all of it",
                "less than its height: 'height' is the whole piece as bought",
                "a longer post, or less depth",
                part=part.name,
            )


def _lowest(body: Body) -> float:
    """Return the height of the lowest point in m, of a wheel as it turns."""
    if isinstance(body.shape, Rotor):
        return float(body.origin[2]) - float(np.hypot(body.shape.span, body.shape.tip / 2.0))
    return body.bottom


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
    line = design.lines.get((part or design.name, key), design.lines.get((part or "", None)))
    return DesignError((Fault(design.file, line, part, key, found, expected, hint),))
