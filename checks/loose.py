"""Parts that only stand there by their weight, each judged about its own contact."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from ..design import plane
from ..design.faults import DesignError, Fault
from ..design.on_ground import Patch, contact_kind, touching_face
from ..design.placing import Body
from ..design.structure import Structure
from ..loads.actions import Actions
from ..loads.combinations import Factors
from ..loads.exposed import Bare, Exposed, expose
from ..materials.grounds import Ground
from ..materials.surfaces import surface
from .joints.carried import NOT_FASTENED, Fastened, carried
from .judging import Check, Kind
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

    def exposed(self, structure: Structure, sheltering: bool, each: Bare) -> Exposed:
        """Return what only these bodies offer the wind: nothing before or behind them helps."""
        return expose(structure, each, sheltering, self.goes)

    def about_its_foot(self, actions: Actions) -> Actions:
        """Return actions with heights measured from its own underside."""
        return replace(actions, tilting=actions.tilting - self.level * actions.force)


def loose_parts(
    structure: Structure, ground: Ground, slope: float, fastened: Fastened = NOT_FASTENED
) -> tuple[Loose, ...]:
    """Return every loose part's standing on what is beneath it.

    DesignError where one rests on a line or a point only.
    """
    found = [i for i, b in enumerate(structure.bodies) if structure.design.parts[b.part].loose]
    goes = carried(structure, fastened) if found else None
    return tuple(
        _loose(structure, structure.bodies[i], goes[i], ground, slope)
        for i in found
        if goes is not None
    )


def check_loose(
    loose: Sequence[Loose], actions: Sequence[Actions], factors: Factors
) -> list[Check]:
    """Return tipping and sliding of each loose part under its own actions (Q, D, C)."""
    checks: list[Check] = []
    for one, its in zip(loose, actions, strict=True):
        lowered = one.about_its_foot(its)
        checks += [
            replace(
                check_overturning(one.standing, lowered, factors),
                kind=Kind.LOOSE,
                subject=one.name,
            ),
            replace(
                check_sliding(one.standing, lowered, factors),
                kind=Kind.LOOSE_SLIDING,
                subject=one.name,
            ),
        ]
    return checks


def _loose(
    structure: Structure, body: Body, goes: NDArray[np.bool_], ground: Ground, slope: float
) -> Loose:
    parts = structure.design.parts
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
    alone = replace(
        structure,
        body_mass=structure.body_mass * goes,
        body_centre=structure.body_centre - np.array([0.0, 0.0, level]),
        footprint=plane.ring_of(seat_hull),
        patches=(Patch(face, body.part, contact_kind(parts[body.part])),),
        height=structure.height - level,
    )
    return Loose(names[body.part], Standing(alone, ground, slope), level, goes)
