"""What people may do to a piece, at the worst places of each part that they reach."""

from collections.abc import Iterator

import numpy as np

from ... import references
from ...design.outlines import round_in_plan
from ...design.structure import Structure
from ...loads.given import GivenLoad
from ...statics.contacts.edges_found import swings
from ...units.arrays import Array
from ..timber.books import book_of

_WAYS = 8
"""People push toward so many sides."""

PUSH, CLIMB = "push", "climb"

_DOWN = (0.0, 0.0, -1.0)


def people_loads(
    structure: Structure, people: str | None, basis: str
) -> list[tuple[int, GivenLoad, float]]:
    """Return what the people named may do: bodies by index, loads, how much longer than wind.

    A level push on the highest point within reach of each body, in the middle of it, toward eight
    sides of it; it lasts as wind does. Children climb: their weight stands on the outermost corners
    of what tops out within their reach, and lasts ten years in all. Source:
    references/ground/pushes.
    """
    found: list[tuple[int, GivenLoad, float]] = []
    table = references.table("ground/pushes")
    for row in table.where("people", people or ""):
        force, reach = float(row["force_N"]), float(row["height_m"])
        found += [(i, load, 1.0) for i, load in _pushes(structure, force, reach)]
    for row in table.where("people", f"climbing {people}"):
        force, reach = float(row["force_N"]), float(row["height_m"])
        longer = book_of(basis).wind_over("normal", basis)
        found += [(i, load, longer) for i, load in _climbs(structure, force, reach)]
    return found


def _pushes(structure: Structure, force: float, reach: float) -> Iterator[tuple[int, GivenLoad]]:
    for i, round_it in _reached(structure, reach):
        body = structure.bodies[i]
        on = structure.design.parts[body.part].name
        x, y = round_it.mean(axis=0).tolist()
        z = min(body.top, reach)
        side = round_it[1] - round_it[0]
        first = float(np.arctan2(side[1], side[0]))
        for angle in first + 2.0 * np.pi * np.arange(_WAYS) / _WAYS:
            way = float(np.cos(angle)), float(np.sin(angle)), 0.0
            yield i, GivenLoad(PUSH, force, (x, y, z), way, on)


def _climbs(structure: Structure, force: float, reach: float) -> Iterator[tuple[int, GivenLoad]]:
    for i, round_it in _reached(structure, reach):
        body = structure.bodies[i]
        if body.top <= reach:
            on = structure.design.parts[body.part].name
            for x, y in round_it.tolist():
                yield i, GivenLoad(CLIMB, force, (x, y, body.top), _DOWN, on)


def _reached(structure: Structure, reach: float) -> Iterator[tuple[int, Array]]:
    """Yield the bodies that begin within reach, with the rectangle round each in plan (4, 2).

    None that swings.
    """
    for i, body in enumerate(structure.bodies):
        if not swings(structure, i) and body.bottom < reach and body.top > 0.0:
            yield i, round_in_plan(body)
