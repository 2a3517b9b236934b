"""Parts of one stack that hide each other though they stand well apart along the wind."""

import numpy as np

from ..design import plane
from ..design.outlines import downwind_axes, outlines
from ..design.structure import Structure
from .sheltering import reach_along

STEP_DEG = 15.0


def hidden_though_apart(structure: Structure) -> tuple[tuple[str, str], ...]:
    """Return the pairs of parts of one stack of which one hides the other from farther than wide.

    Within a stack an overlap counts once, which is meant for parts of one body. Where the clear gap
    along the wind exceeds the front one's lesser width, both would take wind: a person should know.
    """
    angles = np.radians(np.arange(0.0, 360.0, STEP_DEG))
    bodies = structure.bodies
    outline = outlines(bodies, angles)
    near, far = reach_along(bodies, downwind_axes(angles))
    bounds = plane.bounds(outline)
    lesser = np.minimum(bounds[..., 2] - bounds[..., 0], bounds[..., 3] - bounds[..., 1])
    names = [part.name for part in structure.design.parts]
    found: dict[tuple[str, str], None] = {}
    for i, back in enumerate(bodies):
        for j, front in enumerate(bodies):
            same = structure.stack[back.part] == structure.stack[front.part]
            if back.part == front.part or not same:
                continue
            apart = near[i] - far[j] > lesser[j]
            if not apart.any():
                continue
            shared = plane.area(plane.intersection(outline[i, apart], outline[j, apart]))
            if (shared > 0.1 * plane.area(outline[i, apart])).any():
                pair = sorted((names[back.part], names[front.part]))
                found[pair[0], pair[1]] = None
    return tuple(found)
