"""Weight laid low on a piece: bags or stone, fixed to its foot, as a part without wind."""

from collections.abc import Callable
from math import isfinite

from ...design.model import Design, Part, Place
from ...design.shapes.plans import Regular
from ...design.shapes.weight import Weight
from ...design.structure import Structure, build_structure
from ...loads.actions import Actions
from ...loads.combinations import Factors
from ...units.frozen import replace
from ..anchoring.anchor_choice import Loaded
from ..anchoring.ground_parts import GroundParts, ground_parts, single_foot
from ..examination import Examination
from ..judged.build_steps import down, least, steps_of, up
from ..judged.judging import Check
from ..stability.bearing import check_bearing
from ..stability.overturning import check_overturning
from ..stability.sliding import check_sliding
from ..stability.standing import Standing
from .weighed_again import weighed_again
from .wider_foot import heavier_by, unused_name

WITHOUT_FOOT = 0.1
"""So high in m lies weight that is fixed about a body without a foot: half a bag, judgement."""

ROUND_AT = 8
"""At so many places weight lies on a round ring: judgement, as on one of eight sides."""

_Checking = Callable[[Standing, Actions, Factors], Check]
_WHOLE: tuple[_Checking, ...] = (check_sliding, check_overturning, check_bearing)


def with_weight(design: Design, ground: GroundParts, mass: float) -> Design:
    """Return the design with ``mass`` kg about the middle of its footprint, low on its foot.

    On a ring of lumber it lies on a floor that is screwed to each of its sides, of a round one at
    eight places: as much on each.
    """
    x, y = ground.middle.tolist()
    height = ground.top if ground.feet else WITHOUT_FOOT
    name, place = unused_name("ballast", design), Place(at=(x, y, height))
    foot = single_foot(design, ground)
    ring = foot.shape.ring if foot is not None else None
    if foot is not None and ring is not None and isinstance(ring.plan, Regular):
        plan, count = ring.plan, ring.plan.sides or ROUND_AT
        start = foot.place.turn
        place = replace(place, count=count, ring=plan.across - ring.width, start=start)
        mass /= count
    ballast = Part(name, Weight(), place, mass=mass)
    return weighed_again(design, replace(design, parts=(*design.parts, ballast)))


def least_weight(found: Examination, most: float, under: Loaded | None = None) -> float | None:
    """Return the least weight in kg, in whole build steps, with which a piece alone stands.

    It neither slides, tips nor sinks in then, by the checks themselves, in the site's wind or
    ``under`` what it is loaded with; None where no weight up to ``most`` kg does.
    """
    guess = found.remedies.ballast if under is None else 0.0
    loaded = under or found.loaded
    if not isfinite(guess) or guess > most:
        return None
    step = steps_of(found.design.units).mass
    ground = ground_parts(found.structure)

    def stands(k: int) -> bool:
        return _passes(loaded, found.structure, ground, k * step, _WHOLE)

    steps = least(stands, 1, down(most, step), max(up(guess, step), 1))
    return None if steps is None else steps * step


def slides_on(found: Examination, width: float) -> bool:
    """Return whether a piece would still slide on a foot ``width`` m wide, by what that weighs.

    The wind that the foot takes is not counted: it makes it slide the sooner.
    """
    ground = ground_parts(found.structure)
    more = heavier_by(found.structure, ground, width)
    return not _passes(found.loaded, found.structure, ground, more, (check_sliding,))


def _passes(
    loaded: Loaded,
    bare: Structure,
    ground: GroundParts,
    mass: float,
    checks: tuple[_Checking, ...],
) -> bool:
    """Return whether a piece passes with so much weight: it takes no wind, so the actions stay."""
    weighted = build_structure(with_weight(loaded.design, ground, mass)) if mass else bare
    standing = loaded.standing.laden(weighted)
    return all(check(standing, loaded.actions, loaded.factors).passes for check in checks)
