"""The sentences beside a check: what governed it, with which factors, and what a pass means."""

from collections.abc import Iterable

from ...checks.judged.finding import Finding
from ...checks.judged.judging import Check
from ...checks.stated.governed import remark_on
from ..messages.check_messages import GOVERNED, REMARKS
from ..wording.amounts import Amounts
from ..wording.filled import message_of


def notes_said(found: Iterable[Finding], amounts: Amounts) -> tuple[str, ...]:
    """Return what governed a check, as sentences."""
    return tuple(message_of(one, amounts, GOVERNED) for one in found)


def remarked(check: Check) -> str:
    """Return what is remarked of what governed a check; empty where nothing is."""
    found = remark_on(check)
    return "" if found is None else message_of(found, Amounts(False), REMARKS)
