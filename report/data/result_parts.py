"""What a result holds, in quantities: checks, limits, verdict, joints and members."""

from math import isfinite

from ... import units
from ...checks.examination import Examination
from ...checks.joints.joint_check import JointFound
from ...checks.judged.judging import Check
from ...checks.members.member_check import MemberStrength
from ...checks.stated.governed import governed
from ...units import Quantity
from ...units.frozen import ByValue
from ..told.check_notes import notes_said
from ..wording.amounts import Amounts

_UNITS = {"N*m": "newton*meter", "N": "newton", "Pa": "pascal", "m": "meter"}


class ResultCheck(ByValue, frozen=True):
    """One check as a program reads it; a demand without bound is None."""

    name: str
    demand: Quantity | None
    capacity: Quantity | None
    utilization: float | None
    passes: bool
    direction: Quantity | None
    source: str
    notes: tuple[str, ...]


class ResultLimits(ByValue, frozen=True):
    """The gusts and the push that tip or slide it, without anchors; None above 150 m/s."""

    tipping_gust: Quantity | None
    sliding_gust: Quantity | None
    tipping_gust_low: Quantity | None
    tipping_gust_high: Quantity | None
    forecast_tipping_gust: Quantity | None
    forecast_sliding_gust: Quantity | None
    act_forecast_gust: Quantity | None
    push: Quantity


class ResultVerdict(ByValue, frozen=True):
    """The verdict: its ``word`` (one list for every screen and page) and ``why``, a sentence.

    ``mend`` names the failing checks that no holding down mends, the worst first; ``unfastened``
    the parts of which the file does not say how they are fastened; ``not_looked_at`` the topics.
    ``act`` is the forecast gust at which to act, untied; None above 150 m/s.
    """

    word: str
    why: str
    act: Quantity | None
    mend: tuple[str, ...]
    unfastened: tuple[str, ...]
    not_looked_at: tuple[str, ...]


class ResultJoint(ByValue, frozen=True):
    """A joint: what the fastener that is used most is pulled and pushed by, and what it holds."""

    name: str
    of: str
    to: str
    fastener: str
    count: int
    tension: Quantity
    shear: Quantity | None
    utilization: float | None
    passes: bool


class ResultMember(ByValue, frozen=True):
    """The strength of a part: as what it was judged, what governs, how far it bends in wind."""

    part: str
    role: str
    governs: str
    deflection: Quantity
    utilization: float | None
    passes: bool


def result_check(examination: Examination, check: Check, amounts: Amounts) -> ResultCheck:
    """Return a check with what is told beside it."""
    return ResultCheck(
        name=check.name,
        demand=_measured(check.demand, check.unit),
        capacity=_measured(check.capacity, check.unit),
        utilization=check.utilization,
        passes=check.passes,
        direction=None
        if check.direction_deg is None
        else units.registry().Quantity(check.direction_deg, "degree"),
        source=check.source,
        notes=notes_said(governed(examination, check), amounts),
    )


def result_joint(one: JointFound) -> ResultJoint:
    """Return what a joint carries and how far that uses it."""
    return ResultJoint(
        name=one.row.name,
        of=one.row.of,
        to=one.row.to,
        fastener=one.row.fastener.name,
        count=one.row.count,
        tension=units.quantity(one.tension, "force"),
        shear=units.quantity(one.shear, "force") if isfinite(one.shear) else None,
        utilization=one.check.utilization,
        passes=one.check.passes,
    )


def result_member(one: MemberStrength) -> ResultMember:
    """Return how far a part is used and bends."""
    return ResultMember(
        part=one.name,
        role=one.role,
        governs=one.governs,
        deflection=units.quantity(one.deflection, "length"),
        utilization=one.check.utilization,
        passes=one.check.passes,
    )


def _measured(value: float, unit: str) -> Quantity | None:
    return units.registry().Quantity(value, _UNITS[unit]) if isfinite(value) else None
