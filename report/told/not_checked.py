"""What was not checked of a design: said on every output, so that nobody reads in a promise."""

from collections.abc import Iterable

from ...checks.not_looked_at import NotLookedAt
from ..messages.check_messages import NOT_CHECKED
from ..wording.amounts import Amounts
from ..wording.filled import message_of


def not_checked(topics: Iterable[NotLookedAt], amounts: Amounts) -> tuple[str, ...]:
    """Return what was not checked, each in a full sentence, the joints first."""
    return tuple(
        " ".join(message_of(each, amounts, NOT_CHECKED) for each in one.findings) for one in topics
    )
