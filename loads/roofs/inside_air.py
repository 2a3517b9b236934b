"""The air inside hollow bodies: what shares it, and whether it stands open to the wind.

An open-topped body shares its air with the hollow roof or body on it. It is open where a side is,
where nothing closes its top, where a roof's ends are open, or where wind passes beneath an open
bottom on legs: a judgement, as the coefficient is.
"""

from shapely.geometry.base import BaseGeometry

from ...design.placing import Body
from ...design.structure import Structure
from .lids import closes, flows_beneath, is_closed_above, on_top, supports, top_plan


def breathes(structure: Structure, i: int) -> bool:
    """Return whether the air inside a hollow body stands open to the wind, by itself or another."""
    found, waiting = {i}, [i]
    while waiting:
        j = waiting.pop()
        if _opens(structure, j):
            return True
        fresh = [k for k in _shares(structure, j) if k not in found]
        found.update(fresh)
        waiting += fresh
    return False


def breathes_beneath(structure: Structure, body: Body) -> bool:
    """Return whether a body closes another whose air stands open to the wind."""
    return any(
        breathes(structure, i)
        for i, below in enumerate(structure.bodies)
        if below.shape.open_above and structure.bodies.index(body) in on_top(structure, i)
    )


def closing_lids(structure: Structure, i: int) -> list[tuple[int, BaseGeometry]]:
    """Return what closes an open-topped body and what of its opening each closes, in plan."""
    if not structure.bodies[i].shape.open_above or not is_closed_above(structure, i):
        return []
    rest, found = top_plan(structure.bodies[i]), list[tuple[int, BaseGeometry]]()
    for j in on_top(structure, i):
        region = closes(structure, j).intersection(rest)
        if region.area > 1.0e-9:
            found.append((j, region))
            rest = rest.difference(region)
    return found


def floors(structure: Structure, i: int) -> list[int]:
    """Return the bodies beneath an open bottom on which the air inside presses."""
    body = structure.bodies[i]
    if not body.shape.open_below:
        return [i]
    below = [id(one) for one in supports(structure, body) if not one.shape.open_above]
    return [j for j, one in enumerate(structure.bodies) if id(one) in below] or [i]


def _opens(structure: Structure, i: int) -> bool:
    body = structure.bodies[i]
    if body.shape.open_sideways:
        return True
    unclosed = body.shape.open_above and not is_closed_above(structure, i)
    return unclosed or (body.shape.open_below and flows_beneath(structure, body))


def _shares(structure: Structure, i: int) -> list[int]:
    """Return the bodies whose air is that of this one, on its open top or beneath its bottom."""
    body = structure.bodies[i]
    found: list[int] = []
    if body.shape.open_above:
        found += [j for j in on_top(structure, i) if structure.bodies[j].shape.open_below]
    if body.shape.open_below:
        below = [id(one) for one in supports(structure, body) if one.shape.open_above]
        found += [j for j, one in enumerate(structure.bodies) if id(one) in below]
    return found
