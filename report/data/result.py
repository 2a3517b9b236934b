"""The result as a program reads it: quantities by name, and the JSON object."""

import pickle
import zlib
from collections.abc import Callable
from copy import deepcopy
from functools import cached_property
from typing import Any

from ... import units
from ...checks.examination import Examination, examine
from ...checks.stated.assumed import assumed
from ...checks.stated.cautions import cautions_of
from ...checks.stated.from_memory import from_memory
from ...design.model import Design
from ...units import Quantity
from ...units.frozen import ByIdentity
from ..advice.verdict_words import why_sentence
from ..told.assumptions import assumptions
from ..told.cautions import cautions
from ..told.facts import facts_of
from ..told.not_checked import not_checked
from ..told.unverified import unverified
from ..wording.amounts import Amounts
from ..wording.fingerprint import fingerprint
from .result_parts import (
    ResultCheck,
    ResultJoint,
    ResultLimits,
    ResultMember,
    ResultVerdict,
    result_check,
    result_joint,
    result_member,
)
from .result_record import result_record

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..screens.folder import FolderRow


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
            result_check(self.examination, check, self._amounts)
            for check in self.examination.checks
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
        return tuple(result_joint(one) for one in self.examination.joints)

    @cached_property
    def members(self) -> tuple[ResultMember, ...]:
        """Return the strength of every part that was judged."""
        return tuple(result_member(one) for one in self.examination.members.judged)

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
