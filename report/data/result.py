"""The result as a program reads it: quantities by name, and the JSON object."""

import pickle
import zlib
from collections.abc import Callable
from copy import deepcopy
from functools import cached_property
from math import isfinite
from typing import Any

from ... import units
from ...checks.examination import Examination, examine
from ...checks.joints.joint_check import JointFound
from ...checks.judged.judging import Check
from ...checks.members.member_check import MemberStrength
from ...checks.stated.assumed import assumed
from ...checks.stated.cautions import cautions_of
from ...checks.stated.from_memory import from_memory
from ...checks.stated.governed import governed
from ...design.model import Design
from ...units import Quantity
from ...units.frozen import ByIdentity, ByValue
from ..advice.verdict_words import why_sentence
from ..told.assumptions import assumptions
from ..told.cautions import cautions
from ..told.check_notes import notes_said
from ..told.facts import facts_of
from ..told.not_checked import not_checked
from ..told.unverified import unverified
from ..wording.amounts import Amounts
from ..wording.fingerprint import fingerprint
from .result_record import result_record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..screens.folder import FolderRow

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


class Kept(ByIdentity, frozen=True):
    """What of a result goes from one process to another: what is asked for first, and the design.

    ``passes``, the JSON ``object``, the first screen's ``text`` and the ``row`` in a table.
    """

    design: Design
    passes: bool
    object: dict[str, Any]
    text: str
    row: "FolderRow"


class Result:
    """What was found of a design; ``examination`` holds all of it in SI units.

    Pickled it is some 10 to 20 kB: what is asked for first goes with it, and the rest is worked
    out again where it is asked for, which gives the same.

    >>> yf.check("examples/pinwheel.toml")
    <Result of 'Pinwheel': does not pass>
    """

    def __init__(self, found: "Examination | Kept") -> None:
        """Take what was found, or what was kept of it."""
        self._kept: Kept | None = None
        if isinstance(found, Kept):
            self._kept = found
        else:
            self.__dict__["examination"] = found

    @cached_property
    def examination(self) -> Examination:
        """Return all that was found; worked out again where this came from another process."""
        assert self._kept is not None
        return examine(self._kept.design)

    @property
    def design(self) -> Design:
        """Return the design."""
        return self.examination.design if self._kept is None else self._kept.design

    def __reduce__(self) -> "tuple[Callable[[bytes], Result], tuple[bytes]]":
        """Return what makes the same again, small enough to be sent by the thousand."""
        kept = self._kept or Kept(
            self.design, self.passes, self.to_dict(), self.to_text(), self.row
        )
        return _unpacked, (zlib.compress(pickle.dumps(kept)),)

    def __repr__(self) -> str:
        passes = "passes" if self.passes else "does not pass"
        return f"<Result of {self.name!r}: {passes}>"

    @property
    def name(self) -> str:
        """Return the design's name."""
        return self.design.name

    @property
    def file(self) -> str:
        """Return the file as it was given."""
        return self.design.file

    @cached_property
    def fingerprint(self) -> str:
        """Return the fingerprint of the design's text, the tables and the version."""
        return fingerprint(self.design)

    @property
    def passes(self) -> bool:
        """Return whether every check passes."""
        return self.examination.passes if self._kept is None else self._kept.passes

    @property
    def row(self) -> "FolderRow":
        """Return its row in a table of many."""
        if self._kept is not None:
            return self._kept.row
        from ..screens.folder import folder_row  # noqa: PLC0415 - one design alone has no table

        return folder_row(self.examination)

    @property
    def needs_anchors(self) -> bool:
        """Return whether it tips or slides as it stands."""
        return self.examination.needs_anchors

    @property
    def mass(self) -> Quantity:
        """Return the typical mass."""
        return units.quantity(self.examination.structure.mass("typical"), "mass")

    @property
    def weight(self) -> Quantity:
        """Return the typical weight."""
        return units.quantity(self.examination.structure.weight("typical"), "force")

    @property
    def height(self) -> Quantity:
        """Return the height of the highest point."""
        return units.quantity(self.examination.structure.height, "length")

    @property
    def center_of_mass(self) -> Quantity:
        """Return the centre of mass (3,)."""
        return units.quantity(self.examination.structure.centre_of_mass("typical"), "length")

    @cached_property
    def checks(self) -> tuple[ResultCheck, ...]:
        """Return every check."""
        return tuple(
            _check(self.examination, check, self._amounts) for check in self.examination.checks
        )

    @cached_property
    def verdict(self) -> ResultVerdict:
        """Return the verdict: one word, and why."""
        found = self.examination.verdict
        return ResultVerdict(
            word=str(found.word),
            why=why_sentence(found, facts_of(self.examination)),
            act=_speed(found.untied.act),
            mend=tuple(check.name for check in found.mend),
            unfastened=found.unfastened,
            not_looked_at=tuple(str(one.topic) for one in found.not_looked_at),
        )

    @cached_property
    def joints(self) -> tuple[ResultJoint, ...]:
        """Return every joint that the file names."""
        return tuple(_joint(one) for one in self.examination.joints)

    @cached_property
    def members(self) -> tuple[ResultMember, ...]:
        """Return the strength of every part that was judged."""
        return tuple(_judged(one) for one in self.examination.members.judged)

    @cached_property
    def limits(self) -> ResultLimits:
        """Return the limits."""
        gusts = {name: _speed(gust) for name, gust in _gusts(self.examination).items()}
        return ResultLimits(**gusts, push=units.quantity(self.examination.limits.push, "force"))

    @cached_property
    def assumptions(self) -> tuple[str, ...]:
        """Return what was assumed."""
        return assumptions(assumed(self.examination), self._amounts)

    @cached_property
    def cautions(self) -> tuple[str, ...]:
        """Return what to take care of."""
        return cautions(cautions_of(self.examination), self._amounts)

    @cached_property
    def not_checked(self) -> tuple[str, ...]:
        """Return what was not checked."""
        return not_checked(self.examination.verdict.not_looked_at, self._amounts)

    @cached_property
    def unverified(self) -> tuple[str, ...]:
        """Return the values, written from memory, on which the answer rests."""
        return unverified(from_memory(self.examination))

    @property
    def _amounts(self) -> Amounts:
        return Amounts(self.design.units == "metric")

    def to_text(self) -> str:
        """Return the first screen as ``yardfast check`` prints it in a pipe."""
        from ..screens.first_screen import first_screen  # noqa: PLC0415 - figures alone need no text

        if self._kept is not None:
            return self._kept.text
        return "\n".join(line.text for line in first_screen(self.examination)) + "\n"

    def to_dict(self) -> dict[str, Any]:
        """Return the result as one JSON object: SI, every number finite or None."""
        if self._kept is not None:
            return deepcopy(self._kept.object)
        return result_record(self.examination).object(self)


def _unpacked(packed: bytes) -> Result:
    """Return the result of what `Result.__reduce__` packed."""
    return Result(pickle.loads(zlib.decompress(packed)))


def _check(examination: Examination, check: Check, amounts: Amounts) -> ResultCheck:
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


def _joint(one: JointFound) -> ResultJoint:
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


def _judged(one: MemberStrength) -> ResultMember:
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


def _speed(value: float | None) -> Quantity | None:
    return None if value is None else units.quantity(value, "speed")


def _gusts(examination: Examination) -> dict[str, float | None]:
    """Return the gusts in m/s that tip and slide it, and the one to act at, by name."""
    found = examination.limits
    return {
        "tipping_gust": found.tipping,
        "sliding_gust": found.sliding,
        "tipping_gust_low": found.tipping_low,
        "tipping_gust_high": found.tipping_high,
        "forecast_tipping_gust": found.forecast_tipping,
        "forecast_sliding_gust": found.forecast_sliding,
        "act_forecast_gust": found.act,
    }
