"""Parts that only stand there by their weight, each judged about its own contact."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from ..design import plane
from ..design.placing import Body
from ..design.structure import Patch, Structure, contact_kind, touching_face
from ..loads.combinations import Factors
from ..loads.uplift import Uplift
from ..loads.wind import Actions, Exposed
from ..materials.surfaces import surface
from .judging import Check
from .overturning import check_overturning
from .sliding import check_sliding
from .standing import Standing


@dataclass(frozen=True)
class Loose:
    """A loose part with all that stands on it: where it stands, and which bodies go with it."""

    name: str
    standing: Standing
    level: float
    goes: NDArray[np.bool_]

    def exposed(self, whole: Exposed) -> Exposed:
        """Return what only these bodies offer the wind."""
        goes = self.goes[:, None]
        return replace(
            whole,
            below=whole.below * goes,
            above=whole.above * goes,
            suction=Uplift(whole.suction.area * goes, whole.suction.moment * goes[..., None]),
        )

    def about_its_foot(self, actions: Actions) -> Actions:
        """Return actions with heights measured from its own underside."""
        return replace(actions, tilting=actions.tilting - self.level * actions.force)


def loose_parts(structure: Structure, slope: float) -> tuple[Loose, ...]:
    """Return every loose part's standing on what is beneath it."""
    return tuple(
        _loose(structure, body, slope)
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


def _loose(structure: Structure, body: Body, slope: float) -> Loose:
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
    kind = contact_kind(parts[beneath[0].part]) if beneath else "wood"
    mass, centre = _masses_of(structure, goes)
    centre[:, 2] -= level
    alone = replace(
        structure,
        part_mass=mass,
        part_centre=centre,
        footprint=plane.ring_of(plane.hull(plane.coordinates(face))),
        patches=(Patch(face, body.part, contact_kind(parts[body.part])),),
        height=structure.height - level,
    )
    return Loose(names[body.part], Standing(alone, surface(kind), slope), level, goes)


def _goes_along(structure: Structure, body: Body) -> NDArray[np.bool_]:
    """Return the bodies that go with one: itself, and if it is the only copy all that is on it."""
    parts = structure.design.parts
    index = {part.name: i for i, part in enumerate(parts)}
    alone = sum(b.part == body.part for b in structure.bodies) == 1

    def on_it(i: int) -> bool:
        reference = parts[i].place.reference
        return reference is not None and (index[reference] == body.part or on_it(index[reference]))

    return np.array([b is body or (alone and on_it(b.part)) for b in structure.bodies])


def _masses_of(
    structure: Structure, goes: NDArray[np.bool_]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return masses (3, parts) and centres (parts, 3) of the bodies that go."""
    count = len(structure.design.parts)
    copies, going = np.zeros(count), np.zeros(count)
    centre = structure.part_centre.copy()
    for body, goes_too in zip(structure.bodies, goes, strict=True):
        copies[body.part] += 1
        going[body.part] += goes_too
    for body, goes_too in zip(structure.bodies, goes, strict=True):
        if goes_too and going[body.part] < copies[body.part]:
            moments = body.shape.moments()
            local = moments.first / moments.volume if moments.volume else np.zeros(3)
            centre[body.part] = body.place(local)
    return structure.part_mass * going / copies, centre
