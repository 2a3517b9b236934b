"""What would mend each check that no holding down mends, as data, found by the checks."""

from typing import TypeAlias

from ...statics.tables.anchor_table import AnchorRow
from ...units.frozen import ByIdentity, ByValue
from ..examination import Examination
from ..fasteners.spacing import SpacingFound
from ..joints.joint_sizing import JointSizing
from ..judged.judging import Check, Kind, judged_by
from .better_fastened import sized, sized_seam
from .thicker import Thicker, thicker
from .under_load import UnderLoad, anchored_against, stands_with

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..seams.seam_sizing import SeamSizing


class WithoutPull(ByValue, frozen=True):
    """The joints of what leans over of which nothing counts against a pull."""

    joints: tuple[str, ...]


class LeadHoles(ByValue, frozen=True):
    """That fasteners of a joint, or else of a part's seams, would do in lead holes."""

    of_joint: bool


_OfFasteners: TypeAlias = "JointSizing | SeamSizing | SpacingFound | LeadHoles | WithoutPull"
Better: TypeAlias = "_OfFasteners | UnderLoad | AnchorRow | Thicker | None"
"""What was found that mends a check: None where nothing is known but what its kind says."""


class Mending(ByIdentity, frozen=True):
    """Checks that fail ``alike``, what mends the first of them, and what is typed for each.

    ``alone`` where nothing else is to be mended. ``typed`` is empty where it was not asked for.
    """

    alike: tuple[Check, ...]
    better: Better
    alone: bool
    typed: tuple[tuple[Check, Better], ...] = ()


def mending(found: Examination, most: int | None = None) -> tuple[Mending, ...]:
    """Return what mends what fails, the worst first; ``most`` of it, else all with what to type."""
    every = found.verdict.mended_alike
    alone = len(every) == 1
    return tuple(
        Mending(
            alike,
            _better(found, alike[0]),
            alone,
            tuple((check, _typed(found, check)) for check in alike) if most is None else (),
        )
        for alike in every[:most]
    )


def _better(found: Examination, check: Check) -> Better:
    """Return what mends a check."""
    match check.kind:
        case Kind.JOINT if (joint := judged_by(found.joints, check)) is not None:
            return sized(found, joint)
        case Kind.SEAM if (seam := judged_by(found.fastened_seams, check)) is not None:
            return sized_seam(found, seam)
        case Kind.SPACING:
            return judged_by(found.spacings, check)
        case Kind.LOAD:
            return stands_with(found, check.subject)
        case Kind.MEMBER:
            return thicker(found, check)
        case Kind.RACKING if joints := _without_pull(found, check):
            return WithoutPull(joints)
        case _:
            return None


def _typed(found: Examination, check: Check) -> Better:
    """Return what is typed into the file to mend a check, where that was found to hold."""
    if check.kind is Kind.LOAD:
        return anchored_against(found, check.subject)
    if check.kind is Kind.SPACING:
        room = judged_by(found.spacings, check)
        of_joint = any(one.row.name == check.subject for one in found.joints)
        return LeadHoles(of_joint) if room is not None and room.in_lead_holes else None
    return None if check.kind is Kind.RACKING else _better(found, check)


def _without_pull(found: Examination, check: Check) -> tuple[str, ...]:
    return tuple(
        one.row.name
        for one in found.joints
        if one.holds.pull <= 0.0 and (one.row.of in check.slots or one.row.to in check.slots)
    )
