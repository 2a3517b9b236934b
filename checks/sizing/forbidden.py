"""What forbids a remedy that would hold: a sheet that bends, a ring's hole, idle guys."""

from ...design.on_ground import BEDDING
from ...design.sections import section
from ...design.shapes.flat import Frame
from ..anchoring.guy_choice import GuyChoice
from ..examination import Examination
from ..verdict import IDLE
from .foot_bending import foot_bending
from .remedy import Reason

_HARDLY = 0.01
"""Part of its section that has to rest on the ring: judgement."""


def forbidden_foot(found: Examination, part: str | None) -> Reason | None:
    """Return why a wider foot is none though it holds; None where nothing forbids it.

    ``part`` is the foot that was widened, None where a plate was laid beneath all.
    """
    design = found.structure.design
    name = part if part is not None else design.parts[-1].name
    if over_its_hole(found, name):
        return Reason.OVER_HOLE
    bending = foot_bending(found, name)
    return None if bending is None or bending.holds else Reason.BENDS


def over_its_hole(found: Examination, part: str) -> bool:
    """Return whether something stands over the hole of a ring of lumber, with nothing beneath."""
    structure = found.structure
    index = [each.name for each in structure.design.parts].index(part)
    body = next(one for one in structure.bodies if one.part == index)
    if not isinstance(body.shape, Frame):
        return False
    ring = body.in_plan(body.shape.contact())
    above = [
        section(other, body.top + BEDDING)
        for other in structure.bodies
        if other.part != index and abs(other.bottom - body.top) < BEDDING
    ]
    return any(
        cut.intersection(ring).area <= _HARDLY * cut.area for cut in above if not cut.is_empty
    )


def idle(choice: GuyChoice) -> bool:
    """Return whether guys carry nothing: what they would hold, the pins beside them do."""
    return choice.pull <= IDLE
