"""The structure that a design describes: its bodies, their weight, and what touches the ground."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from .. import materials
from ..units import GRAVITY
from . import plane
from .model import Design
from .on_ground import Patch, footprint_of, ground_contact, refusal
from .placing import Body, place_parts, stacks
from .shapes.shape import Array, Sloped

Weighing = Literal["light", "typical", "heavy"]
WEIGHINGS: tuple[Weighing, ...] = ("light", "typical", "heavy")


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
    points, patches = ground_contact(design, bodies)
    return Structure(
        design=design,
        bodies=bodies,
        stack=stacks(design.parts),
        part_mass=mass,
        part_centre=centre,
        part_volume=volume,
        footprint=footprint_of(design, bodies, points),
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
        raise refusal(
            design,
            "weighed",
            "a scale's reading",
            "at least one part whose weight comes from its material",
            "leave out 'weighed', or the 'mass' or 'density' of what you did not weigh",
        )
    if rest <= 0.0:
        raise refusal(
            design,
            "weighed",
            f"{design.weighed:.4g} kg",
            f"more than the {given:.4g} kg of the parts whose mass or density is given",
            "weigh the whole piece, with everything on it",
        )
    return np.where(by_material, mass[1] * rest / worked_out, mass)
