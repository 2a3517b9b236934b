"""What people may do to a piece, at the worst places of each part that they reach."""

from collections.abc import Iterator

import numpy as np

from .. import references
from ..design.shapes.shape import Array
from ..design.structure import Structure
from ..loads.given import GivenLoad
from ..statics.graph import swings
from .adjustments import wind_over

WAYS = 8
"""People push toward so many sides."""

PUSH, CLIMB = "push", "climb"

_DOWN = (0.0, 0.0, -1.0)


def people_loads(
    structure: Structure, people: str | None, basis: str
) -> list[tuple[int, GivenLoad, float]]:
    """Return what the people named may do: bodies by index, loads, how much longer than wind.

    A level push on the highest point within reach of each body, in the middle of it, toward eight
    sides; it lasts as wind does. Children climb: their weight stands on the outermost corners of
    what tops out within their reach, and lasts ten years in all. Source: references/ground/pushes.
    """
    found: list[tuple[int, GivenLoad, float]] = []
    table = references.table("ground/pushes")
    for row in table.where("people", people or ""):
        force, reach = float(row["force_N"]), float(row["height_m"])
        found += [(i, load, 1.0) for i, load in _pushes(structure, force, reach)]
    for row in table.where("people", f"climbing {people}"):
        force, reach = float(row["force_N"]), float(row["height_m"])
        longer = wind_over("normal", basis)
        found += [(i, load, longer) for i, load in _climbs(structure, force, reach)]
    return found


def _pushes(structure: Structure, force: float, reach: float) -> Iterator[tuple[int, GivenLoad]]:
    for i, low, high in _reached(structure, reach):
        on = structure.design.parts[structure.bodies[i].part].name
        x, y = (0.5 * (low + high)[:2]).tolist()
        z = min(float(high[2]), reach)
        for angle in 2.0 * np.pi * np.arange(WAYS) / WAYS:
            way = float(np.cos(angle)), float(np.sin(angle)), 0.0
            yield i, GivenLoad(PUSH, force, (x, y, z), way, on)


def _climbs(structure: Structure, force: float, reach: float) -> Iterator[tuple[int, GivenLoad]]:
    for i, low, high in _reached(structure, reach):
        if high[2] <= reach:
            on = structure.design.parts[structure.bodies[i].part].name
            for x in (float(low[0]), float(high[0])):
                for y in (float(low[1]), float(high[1])):
                    yield i, GivenLoad(CLIMB, force, (x, y, float(high[2])), _DOWN, on)


def _reached(structure: Structure, reach: float) -> Iterator[tuple[int, Array, Array]]:
    """Yield the bodies that begin within reach, with the box round each; none that swings."""
    for i, body in enumerate(structure.bodies):
        if not swings(structure, i) and body.bottom < reach and body.top > 0.0:
            low, high = body.extent
            yield i, low, high
