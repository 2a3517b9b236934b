"""Braces: sticks that lean between an arm and what holds that arm, and prop it."""

from collections.abc import Sequence

import numpy as np

from ...design.shapes.shape import Array
from .beam_loads import Beam, PointLoads
from .beam_statics import cantilever
from .load_path import LoadPath
from .sticks import where_touched

LEANS = 0.2
"""Sine of the slope from which a stick between two others that hold each other braces them."""


def is_brace(path: LoadPath, beam: Beam) -> bool:
    """Return whether a stick leans between two bodies of which one holds the other."""
    held_by = {hold.by for hold in path.of(beam.body)}
    if beam.stick.leans < LEANS or len(held_by) != 2:
        return False
    return any(hold.held in held_by and hold.by in held_by for hold in path.holds)


def propped(path: LoadPath, beams: Sequence[Beam], brace: Beam) -> Beam | None:
    """Return the arm that a brace props: held nowhere but by the other body that holds the brace.

    None where that is not so plain.
    """
    held_by = {hold.by for hold in path.of(brace.body)}
    for arm in beams:
        others = {hold.by for hold in path.of(arm.body)}
        if arm.body in held_by and len(arm.places) == 1 and others == held_by - {arm.body}:
            return arm
    return None


def propping(path: LoadPath, arm: Beam, loads: PointLoads, brace: Beam) -> Array | None:
    """Return the force (…) in N along a brace that alone keeps an arm from turning.

    Above 0 it presses the brace, below it draws it. The arm is taken as free to turn where it is
    held: what is fastened there would take some of it. None where the brace meets it in that
    place, or lies along it. Source: statics of moments about it.
    """
    reach = where_touched(arm.stick, path.boxes[brace.body])
    if reach is None:
        return None
    low, high = arm.places[0]
    met = (reach[0] + reach[1]) / 2.0
    beyond = met > high
    edge = high if beyond else low
    if low <= met <= high:
        return None
    way = 1.0 if beyond else -1.0
    free = arm.stick.length - edge if beyond else edge
    ahead = brace.stick.along - (brace.stick.along @ arm.stick.along) * arm.stick.along
    if float(np.linalg.norm(ahead)) < LEANS:
        return None
    square = ahead / np.linalg.norm(ahead)
    moment = np.zeros(loads.along.shape[:-1])
    sides = zip(arm.stick.ways, loads.pushes, loads.turns, loads.own, strict=False)
    for side, push, turn, own in sides:
        found = cantilever(push, way * turn, way * loads.at, [way * edge]).moment[..., 0]
        even = own * (free / arm.stick.length) * free / 2.0
        moment = moment + (found + even) * float(side @ square)
    away = brace.stick.point(brace.stick.length / 2.0) - arm.stick.point(met)
    toward = 1.0 if away @ square > 0.0 else -1.0
    return toward * moment / abs(met - edge) / float(np.linalg.norm(ahead))
