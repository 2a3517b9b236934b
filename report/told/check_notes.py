"""The sentences beside a check: what governed it, with which factors, and what a pass means."""

from ...checks.examination import Examination
from ...checks.judged.judging import Check
from ...checks.stated.governed import governed, remark_on
from ..messages.check_messages import GOVERNED, REMARKS
from ..wording.amounts import Amounts
from ..wording.filled import message_of


def check_notes(examination: Examination, check: Check) -> tuple[str, ...]:
    """Return what governed a check, as sentences."""
    amounts = Amounts(examination.design.units == "metric")
    return tuple(message_of(one, amounts, GOVERNED) for one in governed(examination, check))


def remarked(check: Check) -> str:
    """Return what is remarked of what governed a check; empty where nothing is."""
    found = remark_on(check)
    return "" if found is None else message_of(found, Amounts(False), REMARKS)
