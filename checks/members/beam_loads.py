"""What pushes a beam or an arm: what it carries where that touches, and its own load evenly."""

from dataclasses import dataclass

import numpy as np

from ...design.shapes.shape import Array
from .carried_down import Carried
from .load_path import LoadPath
from .over_places import on_stick
from .post_strength import PostStrength
from .sticks import Stick


@dataclass(frozen=True, eq=False)
class Beam:
    """A stick and from where to where, in m along it, it is held; ``beside`` what else touches."""

    body: int
    stick: Stick
    places: tuple[tuple[float, float], ...]
    strength: PostStrength
    effective: float
    beside: tuple[str, ...]

    @property
    def supports(self) -> Array:
        """Return the middles of the places at which it is held, in m."""
        return np.array([(low + high) / 2.0 for low, high in self.places])


@dataclass(frozen=True, eq=False)
class PointLoads:
    """What pushes a stick: forces (…, k) in N, couples (…, k) in N m, both ways of its section.

    ``along`` (…, k) in N pushes toward its end; all at ``at`` (k,) in m from its start. What a
    design's own loads or a person add to a beam are more of them. ``own`` (…, 3) in N is spread
    evenly over its length: of both ways of its section, and along it.
    """

    at: Array
    pushes: tuple[Array, Array]
    turns: tuple[Array, Array]
    along: Array
    own: tuple[Array, Array, Array]


def point_loads(path: LoadPath, carried: Carried, beam: Beam) -> PointLoads:
    """Return what pushes a beam: what it carries where it touches, and its own load evenly."""
    stick = beam.stick
    at: list[float] = []
    forces: list[Array] = []
    couples: list[Array] = []
    for k, hold in enumerate(path.holds):
        if hold.by != beam.body or k not in carried.arrives:
            continue
        passed, rest = carried.arrives[k]
        for s, force, couple in on_stick(stick, [(hold.points, passed, rest)]):
            at.append(s)
            forces.append(force)
            couples.append(couple)
    for point, force in carried.given.get(beam.body, []):
        s = float(np.clip(stick.at(point), 0.0, stick.length))
        at.append(s)
        forces.append(force)
        couples.append(np.cross(point - stick.point(s), force))
    lasts = carried.lasting(beam.strength.stuff)[:, None, None, None, None]
    own = lasts * carried.own[beam.body].force
    first, second = stick.ways
    if not at:
        at, forces, couples = [0.0], [np.zeros(own.shape)], [np.zeros(own.shape)]
    F, C = (lasts[..., None] * np.stack(each, axis=-2) for each in (forces, couples))
    return PointLoads(
        np.array(at),
        (F @ first, F @ second),
        (C @ second, -(C @ first)),
        F @ stick.along,
        (own @ first, own @ second, own @ stick.along),
    )
