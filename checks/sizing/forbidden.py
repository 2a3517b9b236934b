"""What forbids a remedy that would hold: a sheet that bends, idle guys."""

from ..anchoring.guy_choice import GuyChoice
from ..examination import Examination
from ..tied import IDLE
from .foot_bending import foot_bending
from .remedy import RemedyReason


def forbidden_foot(found: Examination, part: str | None) -> RemedyReason | None:
    """Return why a wider foot is none though it holds; None where nothing forbids it.

    ``part`` is the foot that was widened, None where a plate was laid beneath all.
    """
    design = found.structure.design
    name = part if part is not None else design.parts[-1].name
    bending = foot_bending(found, name)
    return None if bending is None or bending.holds else RemedyReason.BENDS


def idle(choice: GuyChoice) -> bool:
    """Return whether guys carry nothing: what they would hold, the pins beside them do."""
    return choice.pull <= IDLE
