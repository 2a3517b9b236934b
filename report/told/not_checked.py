"""What was not checked of a design: said on every output, so that nobody reads in a promise."""

from ...checks.examination import Examination
from ..messages.check_messages import NOT_CHECKED
from ..wording.amounts import Amounts
from ..wording.filled import message_of


def not_checked(examination: Examination) -> tuple[str, ...]:
    """Return what was not checked, each in a full sentence, the joints first."""
    amounts, topics = Amounts(examination.design.units == "metric"), examination.verdict
    return tuple(
        " ".join(message_of(each, amounts, NOT_CHECKED) for each in one.findings)
        for one in topics.not_looked_at
    )
