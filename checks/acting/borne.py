"""Which part takes a load that a design names, and which parts carry that one."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from ...design.model import Design
from ...design.on_ground import TOUCHING
from ...design.placing import Body, about_z
from ...design.shapes.hulls import corners
from ...loads.actions import Actions
from ...loads.given import GivenLoad
from ...statics.contacts.graph import Graph
from ...units.arrays import Array
from ...units.frozen import ByValue, replace


class Borne(ByValue, frozen=True):
    """A named load on the copy of a part that takes it, ``body`` by index.

    ``load`` is turned with the piece on its site and acts at the hook of what swings. ``part`` is
    the part's name and ``path`` those of all that carry it, itself first; ``off`` is how far in m
    the point written lies outside the box round that copy.
    """

    load: GivenLoad
    body: int
    part: str
    path: tuple[str, ...]
    off: float


def given_loads(design: Design) -> tuple[GivenLoad, ...]:
    """Return the loads that a design names, turned with it on its site."""
    turned = about_z(design.turn)
    return tuple(
        replace(load, at=_three(turned @ load.at), direction=_three(turned @ load.direction))
        for load in design.several(GivenLoad)
    )


def borne_loads(graph: Graph) -> tuple[Borne, ...]:
    """Return the loads that a design names, each with the copy of a part that takes it.

    The copy whose box is nearest to the point, of all parts or of the one that is named; of several
    as near the one that most others carry, so that every joint between is asked.
    """
    return tuple(_borne(graph, load) for load in given_loads(graph.structure.design))


def borne_by(loads: Sequence[Borne], bodies: NDArray[np.bool_]) -> tuple[Borne, ...]:
    """Return the loads that act on some of the bodies (bodies,)."""
    return tuple(one for one in loads if bodies[one.body])


def as_actions(load: GivenLoad) -> Actions:
    """Return a load as actions of one gust, one direction and one case; pressing is no uplift."""
    x, y, z = (load.force * part for part in load.direction)
    px, py, pz = load.at
    force: Array = np.array([x, y])
    lifting: Array = np.array([z * px, z * py])
    return Actions(
        azimuths=np.zeros(1),
        force=force[None, None, None],
        tilting=(force * pz)[None, None, None],
        twist=np.full((1, 1, 1), px * y - py * x),
        uplift=np.full((1, 1, 1), z),
        lifting=lifting[None, None, None],
        names=("load",),
    )


def _borne(graph: Graph, load: GivenLoad) -> Borne:
    structure = graph.structure
    parts, point = structure.design.parts, np.array(load.at)
    asked = [
        i
        for i, body in enumerate(structure.bodies)
        if load.on is None or parts[body.part].name == load.on
    ]
    away = {i: _off(structure.bodies[i], point) for i in asked}
    near = [i for i in asked if away[i] <= min(away.values()) + TOUCHING]
    body = max(near, key=lambda i: len(graph.beneath(i)))
    part = parts[structure.bodies[body].part]
    path = dict.fromkeys(parts[structure.bodies[i].part].name for i in graph.beneath(body))
    if part.hangs_at is not None:
        x, y, _ = load.at
        load = replace(load, at=(x, y, part.hangs_at))
    return Borne(load, body, part.name, tuple(path), away[body])


def _off(body: Body, point: Array) -> float:
    """Return how far in m a point (3,) lies outside the boxes round a body, in its own axes."""
    own = (point - body.origin) @ body.rotation
    axes = np.stack(body.shape.axes)
    found: list[float] = []
    for hull in body.shape.hulls():
        ends = corners(hull) @ axes.T
        beyond = np.maximum(ends.min(axis=0) - axes @ own, axes @ own - ends.max(axis=0))
        found.append(float(np.linalg.norm(np.maximum(beyond, 0.0))))
    return min(found, default=float(np.linalg.norm(own)))


def _three(vector: Array) -> tuple[float, float, float]:
    x, y, z = (float(part) for part in vector)
    return x, y, z
