"""Every joint with what would make it hold, a line each, for sizing."""

from ..checks.examination import Examination
from .amounts import Amounts
from .joint_advice import joint_remedy
from .joint_words import sized
from .lines import Line, wrapped


def joint_lines(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return every joint with what would make it hold, for sizing; nothing where there is none."""
    if not examination.joints:
        return []
    found = [Line("Joints")]
    for joint in examination.joints:
        text = joint_remedy(sized(examination, joint), amounts)
        found += wrapped(f"{joint.row.name}: {text}", "  ", "      ")
    return found
