"""How the file holds a piece together: its joints and seams, read against the structure."""

from collections.abc import Sequence

from ...design.faults import DesignError, Fault
from ...design.structure import Structure
from ...loads.combinations import Factors
from ...loads.exposed import Exposed
from ...loads.methods import Method
from ...statics.tables.seam_table import SeamRow
from ..acting.design_wind import design_actions
from ..acting.local_wind import LocalWind
from ..fasteners.fastener_sets import JointPlace
from ..fasteners.joint_places import places
from ..fasteners.spacing import SpacingFound, check_spacing
from ..joints.joint_check import JointFound

TYPE_CHECKING = False
if TYPE_CHECKING:
    from .seam_check import SeamFastened, SeamFound


def as_fastened(
    structure: Structure, basis: str
) -> "tuple[tuple[JointPlace, ...], tuple[SeamFastened, ...]]":
    """Return joints and seams as the file fastens them. DesignError: all that is wrong of both."""
    seams: tuple[SeamFastened, ...] = ()
    faults: tuple[Fault, ...] = ()
    if structure.design.several(SeamRow):
        from .seam_check import fastened_seams  # noqa: PLC0415 - only where there are any

        try:
            seams = fastened_seams(structure, basis)
        except DesignError as wrong:
            faults = wrong.faults
    try:
        joints = places(structure, basis)
    except DesignError as wrong:
        raise DesignError((*wrong.faults, *faults)) from None
    if faults:
        raise DesignError(faults)
    return joints, seams


def seams_judged(
    structure: Structure,
    fastened: "tuple[SeamFastened, ...]",
    exposed: Exposed,
    local: LocalWind,
    method: Method,
    used: Factors,
    basis: str,
) -> "tuple[SeamFound, ...]":
    """Return the seams of which the file says how they are fastened, judged."""
    if not fastened:
        return ()
    from .seam_check import judge_seams  # noqa: PLC0415 - only where there are any
    from .seam_demands import seams_of  # noqa: PLC0415 - only where there are any

    carry = seams_of(
        structure,
        exposed,
        local,
        lambda offered: design_actions(offered, method),
        used,
        basis,
        only={one.row.part for one in fastened},
    )
    return judge_seams(fastened, carry, used, basis)


def rooms_judged(
    structure: Structure,
    placed: Sequence[JointPlace],
    sewn: "Sequence[SeamFastened]",
    joints: Sequence[JointFound],
) -> tuple[SpacingFound, ...]:
    """Return whether fasteners of joints and seams stand far enough from what is near."""
    used = {one.row.name: one.check.utilization for one in joints}
    found = check_spacing(structure, placed, used)
    if not sewn:
        return found
    from .seam_check import check_seam_spacing  # noqa: PLC0415 - only where there are any

    return (*found, *check_seam_spacing(sewn))
