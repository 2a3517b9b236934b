"""How hard each anchor would have to pull against people: the push check turned round."""

from math import cos, inf, radians, sin

import numpy as np

from ..examination import Examination
from ..judged.judging import Kind


def people_pull(found: Examination) -> float:
    """Return the pull in N on each of the proposed anchors that ends tipping by people; 0 if none.

    What the push leaves after weight, over the anchors' levers about the line that it tips on.
    """
    push = next((check for check in found.checks if check.kind is Kind.PUSH), None)
    if push is None or push.passes or push.toward_deg is None:
        return 0.0
    toward = np.array([sin(radians(push.toward_deg)), cos(radians(push.toward_deg))])
    standing, points = found.standing, found.remedies.stakes.points
    edge = float((standing.structure.footprint @ toward).max())
    lever = np.maximum(edge - points @ toward, 0.0)
    square = float((lever**2).sum())
    if square <= 0.0:
        return inf
    return (push.demand - push.capacity) * float(lever.max()) / square
