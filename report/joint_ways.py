"""Joints and seams that do not hold: what to do, a line each, beneath the ways to hold it."""

from ..checks.examination import Examination
from .amounts import Amounts
from .fastened_seams import seam_ways
from .joint_advice import joint_remedy
from .joint_words import failing_joints, sized
from .lines import Line, wrapped
from .remark import counted

_MOST = 4


def joint_ways(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return the block that tells how to fasten what would come apart; nothing where all holds."""
    failing, seams = failing_joints(examination), seam_ways(examination, amounts)
    if not failing and not seams:
        return []
    found = [Line("Fasten these better, or they come apart")]
    for joint in failing[:_MOST]:
        text = joint_remedy(sized(examination, joint), amounts)
        under = f", under '{joint.check.load}'" if joint.check.load else ""
        found += wrapped(f"{joint.row.name}{under}: {text}", "  ", "      ")
    if len(failing) > _MOST:
        more = counted(len(failing) - _MOST, "more joint does not", "more joints do not")
        found.append(Line(f"  {more} hold: yardfast size"))
    return found + seams


def joint_lines(examination: Examination, amounts: Amounts) -> list[Line]:
    """Return every joint with what would make it hold, for sizing; nothing where there is none."""
    if not examination.joints:
        return []
    found = [Line("Joints")]
    for joint in examination.joints:
        text = joint_remedy(sized(examination, joint), amounts)
        found += wrapped(f"{joint.row.name}: {text}", "  ", "      ")
    return found
