"""Parts that only stand there by their weight, each judged about its own contact."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from ..design import plane
from ..design.faults import DesignError, Fault
from ..design.placing import Body
from ..design.structure import Patch, Structure, contact_kind, touching_face
from ..loads.combinations import Factors
from ..loads.wind import Actions, Exposed, expose
from ..materials.grounds import Ground
from ..materials.surfaces import surface
from .judging import Check
from .overturning import check_overturning
from .sliding import check_sliding
from .standing import Standing

LEAST_SEAT = 1.0e-6
"""Area in m2 below which a seat is a line or a point."""


@dataclass(frozen=True, eq=False)
class Loose:
    """A loose part with all that stands on it: where it stands, and which bodies go with it."""

    name: str
    standing: Standing
    level: float
    goes: NDArray[np.bool_]

    def exposed(self, structure: Structure, sheltering: bool) -> Exposed:
        """Return what only these bodies offer the wind: nothing before or behind them helps."""
        surfaces = [part.surface for part in structure.design.parts]
        return expose(structure, surfaces, sheltering, self.goes)

    def about_its_foot(self, actions: Actions) -> Actions:
        """Return actions with heights measured from its own underside."""
        return replace(actions, tilting=actions.tilting - self.level * actions.force)


def loose_parts(structure: Structure, ground: Ground, slope: float) -> tuple[Loose, ...]:
    """Return every loose part's standing on what is beneath it.

    DesignError where one rests on a line or a point only.
    """
    return tuple(
        _loose(structure, body, ground, slope)
        for body in structure.bodies
        if structure.design.parts[body.part].loose
    )


def check_loose(
    loose: Sequence[Loose], actions: Sequence[Actions], factors: Factors
) -> list[Check]:
    """Return tipping and sliding of each loose part under its own actions (Q, D, C)."""
    checks: list[Check] = []
    for one, its in zip(loose, actions, strict=True):
        lowered = one.about_its_foot(its)
        checks += [
            replace(check_overturning(one.standing, lowered, factors), name=f"loose: {one.name}"),
            replace(
                check_sliding(one.standing, lowered, factors), name=f"loose sliding: {one.name}"
            ),
        ]
    return checks


def _loose(structure: Structure, body: Body, ground: Ground, slope: float) -> Loose:
    parts = structure.design.parts
    goes = _goes_along(structure, body)
    names = [part.name for part in parts]
    below = parts[body.part].place.on
    beneath = [b for b in structure.bodies if names[b.part] == below]
    level = body.bottom
    face = touching_face(body, level)
    if beneath:
        seat = face.intersection(plane.union_of([b.in_plan(b.shape.from_above()) for b in beneath]))
        face = seat if seat.area > 0.0 else face
        ground = surface(contact_kind(parts[beneath[0].part]))
    seat_hull = plane.hull(plane.coordinates(face)) if not face.is_empty else plane.NOTHING
    if seat_hull.area < LEAST_SEAT:
        raise DesignError(
            (
                Fault(
                    structure.design.file,
                    structure.design.lines.get((names[body.part], "loose")),
                    names[body.part],
                    "loose",
                    "it rests on a line or a point only, or on nothing",
                    "a seat with some width both ways",
                    "leave out 'loose' if it is fastened, or give it a seat",
                ),
            )
        )
    mass, centre = _masses_of(structure, goes)
    centre[:, 2] -= level
    alone = replace(
        structure,
        part_mass=mass,
        part_centre=centre,
        footprint=plane.ring_of(seat_hull),
        patches=(Patch(face, body.part, contact_kind(parts[body.part])),),
        height=structure.height - level,
    )
    return Loose(names[body.part], Standing(alone, ground, slope), level, goes)


def _goes_along(structure: Structure, body: Body) -> NDArray[np.bool_]:
    """Return the bodies that go with one: itself and all that is on it.

    Where it has copies, what stands on them goes with the copy nearest in plan.
    """
    parts = structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    copies = [b for b in structure.bodies if b.part == body.part]

    def on_it(i: int) -> bool:
        reference = parts[i].place.reference
        return reference is not None and (index[reference] == body.part or on_it(index[reference]))

    def nearest(other: Body) -> Body:
        away = [float(np.hypot(*(other.origin - copy.origin)[:2])) for copy in copies]
        return copies[int(np.argmin(away))]

    return np.array([b is body or (on_it(b.part) and nearest(b) is body) for b in structure.bodies])


def _masses_of(
    structure: Structure, goes: NDArray[np.bool_]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return masses (3, parts) and centres (parts, 3) of the bodies that go."""
    count = len(structure.design.parts)
    copies, going, moved = np.zeros(count), np.zeros(count), np.zeros((count, 3))
    for body, goes_too in zip(structure.bodies, goes, strict=True):
        copies[body.part] += 1
        if goes_too:
            going[body.part] += 1
            moments = body.shape.moments()
            local = moments.first / moments.volume if moments.volume else np.zeros(3)
            moved[body.part] += body.place(local)
    some = (going > 0) & (going < copies)
    centre = np.where(some[:, None], moved / np.maximum(going, 1.0)[:, None], structure.part_centre)
    return structure.part_mass * going / copies, centre
