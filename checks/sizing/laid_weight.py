"""Weight laid low on a piece: bags or stone, fixed to its foot, as a part without wind."""

from dataclasses import replace

from ...design.model import Design, Part, Place
from ...design.shapes.weight import Weight
from ..anchoring.ground_parts import GroundParts
from .weighed_again import weighed_again
from .wider_foot import unused_name

WITHOUT_FOOT = 0.1
"""So high in m lies weight that is fixed about a body without a foot: half a bag, judgement."""


def with_weight(design: Design, ground: GroundParts, mass: float) -> Design:
    """Return the design with ``mass`` kg in the middle of its footprint, low on its foot."""
    x, y = ground.middle.tolist()
    height = ground.top if ground.feet else WITHOUT_FOOT
    name = unused_name("ballast", design)
    ballast = Part(name, Weight(), Place(at=(x, y, height)), mass=mass)
    return weighed_again(design, replace(design, parts=(*design.parts, ballast)))
