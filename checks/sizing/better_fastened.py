"""The ways to make a joint, or a part's seams, hold: worked out once for each."""

from ...loads.combinations import factors_of_parts, resistance_basis
from ..examination import Examination
from ..joints.joint_check import JointFound
from ..joints.joint_sizing import JointSizing, size_joint
from ..judged.build_steps import steps_of

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..seams.seam_check import SeamFound
    from ..seams.seam_sizing import SeamSizing


def sized(examination: Examination, joint: JointFound) -> JointSizing:
    """Return the ways to make a joint hold."""
    known, name = examination.sizings, joint.row.name
    if name not in known:
        site = examination.site
        used, basis = factors_of_parts(site), resistance_basis(site)
        known[name] = size_joint(examination.structure, joint, used, basis)
    return known[name]


def sized_seam(examination: Examination, seam: "SeamFound") -> "SeamSizing":
    """Return the ways to make a part's seams hold."""
    from ..seams.seam_sizing import size_seam  # noqa: PLC0415 - only where seams are fastened

    units = examination.design.units
    return size_seam(seam, steps_of(units).width, units == "metric")
