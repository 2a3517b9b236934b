"""The structure that a design describes: its bodies, their weight, and what touches the ground."""

from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from .. import materials
from ..units import GRAVITY, plain
from ..units.arrays import Array
from ..units.frozen import ByIdentity
from . import plane
from .model import Design
from .on_ground import Patch, footprint_of, ground_contact, refusal
from .placing import Body, place_parts, turned

Weighing = Literal["light", "typical", "heavy"]
WEIGHINGS: tuple[Weighing, ...] = ("light", "typical", "heavy")


class Structure(ByIdentity, frozen=True):
    """What a design weighs and where it stands, in SI units.

    ``body_mass`` (3, bodies) in kg holds the light, typical and heavy mass of each body with what
    covers it, ``body_centre`` (bodies, 3) its centre in m and ``body_volume`` (bodies,) its volume.
    ``footprint`` (k, 2) is the convex hull of what touches the ground, counter-clockwise;
    ``patches`` are the faces.
    """

    design: Design
    bodies: tuple[Body, ...]
    body_mass: Array
    body_centre: Array
    body_volume: Array
    footprint: Array
    patches: tuple[Patch, ...]
    height: float

    def mass(self, weighing: Weighing) -> float:
        """Return the whole mass in kg."""
        return float(self.body_mass[WEIGHINGS.index(weighing)].sum())

    def weight(self, weighing: Weighing) -> float:
        """Return the whole weight in N."""
        return self.mass(weighing) * GRAVITY

    def centre_of_mass(self, weighing: Weighing) -> Array:
        """Return the centre of mass (3,) in m."""
        masses = self.body_mass[WEIGHINGS.index(weighing)]
        return masses @ self.body_centre / masses.sum()

    def steady_centre(self, weighing: Weighing) -> Array:
        """Return the centre of mass (3,) in m with what swings taken at its hook's height."""
        masses = self.body_mass[WEIGHINGS.index(weighing)]
        return masses @ self.steady_centres / masses.sum()

    @cached_property
    def as_filed(self) -> tuple[Body, ...]:
        """Return its bodies as the design's file has them, before its own last turn."""
        return turned(self.bodies, -self.design.turn)

    @cached_property
    def of(self) -> NDArray[np.int_]:
        """Return the part (bodies,) of which each body is a copy."""
        return np.array([body.part for body in self.bodies], dtype=int)

    @cached_property
    def steady_centres(self) -> Array:
        """Return the centre (bodies, 3) in m of each body, of what swings at its hook's height."""
        centres = self.body_centre.copy()
        for i, body in enumerate(self.bodies):
            hook = self.design.parts[body.part].hangs_at
            if hook is not None:
                centres[i, 2] = hook
        return centres

    @cached_property
    def part_mass(self) -> Array:
        """Return the mass (3, parts) in kg of all copies of each part."""
        return self._of_parts(self.body_mass)

    @cached_property
    def part_centre(self) -> Array:
        """Return the centre (parts, 3) in m of all copies of each part."""
        count = np.bincount(self.of, minlength=len(self.design.parts))
        return self._of_parts(self.body_centre.T).T / count[:, None]

    @cached_property
    def part_volume(self) -> Array:
        """Return the volume (parts,) in m3 of all copies of each part."""
        return self._of_parts(self.body_volume)

    def _of_parts(self, values: Array) -> Array:
        """Return the sums (…, parts) over the copies of each part of values (…, bodies)."""
        total = np.zeros((*values.shape[:-1], len(self.design.parts)))
        np.add.at(total.T, self.of, values.T)
        return total

    @cached_property
    def contact_area(self) -> BaseGeometry:
        """Return all touching faces as one area in plan."""
        return plane.union_of([patch.area for patch in self.patches])


def build_structure(design: Design) -> Structure:
    """Return the structure of a design.

    Raises DesignError where nothing touches the ground, something lies below it, or the whole
    stands on a line or a point.
    """
    bodies = place_parts(design)
    volume, centre = _volumes(bodies)
    mass, centre = _masses(design, bodies, volume, centre)
    points, patches = ground_contact(design, bodies)
    return Structure(
        design=design,
        bodies=bodies,
        body_mass=mass,
        body_centre=centre,
        body_volume=volume,
        footprint=footprint_of(design, bodies, points),
        patches=patches,
        height=max(body.top for body in bodies),
    )


def _volumes(bodies: tuple[Body, ...]) -> tuple[Array, Array]:
    """Return volume (bodies,) and centre (bodies, 3) of each body."""
    volume, centre = np.zeros(len(bodies)), np.zeros((len(bodies), 3))
    for i, body in enumerate(bodies):
        moments = body.shape.moments()
        volume[i] = moments.volume
        centre[i] = body.place(moments.first / moments.volume if moments.volume else np.zeros(3))
    return volume, centre


def _masses(
    design: Design, bodies: tuple[Body, ...], volume: Array, centre: Array
) -> tuple[Array, Array]:
    """Return light, typical and heavy mass (3, bodies) and centres (bodies, 3), with coverings.

    A scale's reading is shared out over what is known by material only.
    """
    mass = np.zeros((3, len(bodies)))
    by_material = np.zeros(len(bodies), dtype=bool)
    for i, body in enumerate(bodies):
        part = design.parts[body.part]
        if part.mass is not None:
            mass[:, i] = part.mass
        elif part.density is not None:
            mass[:, i] = part.density * volume[i]
        elif part.material is not None:
            by_material[i] = True
            rho = materials.find_material(part.material)
            mass[:, i] = np.array([rho.light, rho.typical, rho.heavy]) * volume[i]
    added, covered = _coverings(design, bodies)
    if design.weighed is not None:
        mass = _scaled_to_reading(design, mass, by_material, float(added.sum()))
    total = mass[1] + added
    middle = (mass[1][:, None] * centre + covered) / np.where(total > 0.0, total, 1.0)[:, None]
    return mass + added, np.where((added > 0.0)[:, None], middle, centre)


def _coverings(design: Design, bodies: tuple[Body, ...]) -> tuple[Array, Array]:
    """Return the mass (bodies,) in kg of what covers outer slopes, and its first moment in kg m."""
    added, moment = np.zeros(len(bodies)), np.zeros((len(bodies), 3))
    for i, body in enumerate(bodies):
        covering = design.parts[body.part].covering
        if covering > 0.0 and (slopes := body.shape.slopes()) is not None:
            area, height = slopes
            added[i] = covering * area
            moment[i] = added[i] * body.place(np.array([0.0, 0.0, height]))
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
            f"{plain(design.weighed)} kg",
            f"more than the {plain(given)} kg of the parts whose mass or density is given",
            "weigh the whole piece, with everything on it",
        )
    return np.where(by_material, mass[1] * rest / worked_out, mass)
