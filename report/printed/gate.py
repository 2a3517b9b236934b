"""What is not handed to a buyer: a piece that fails, with what to mend first."""

from ...checks.examination import Examination
from ...checks.sizing.mending import Mending, mending
from ...checks.verdict import Verdict
from ...units.frozen import ByIdentity
from ..advice.mends import mends
from ..advice.verdict_words import why_sentence
from ..advice.what_to_do import first_mend
from ..messages import messages
from ..told.facts import Facts, facts_of


class NotReady(ByIdentity, frozen=True):
    """Why a piece is not ready to sell: its verdict, and what mends the first thing that fails."""

    verdict: Verdict
    first: tuple[Mending, ...]
    facts: Facts

    def __str__(self) -> str:
        """Return it as sentences."""
        said = why_sentence(self.verdict, self.facts)
        first = first_mend(self.verdict, self.facts, mends(self.first, self.facts))
        return f"{said} {messages.MEND_IT_FIRST.format(what=first)}" if first else said


def not_ready(found: Examination) -> NotReady | None:
    """Return why a piece is not ready to sell; None where it is."""
    if found.verdict.may_be_handed_out(laid_down=found.design.laid_down):
        return None
    return NotReady(found.verdict, mending(found, 1), facts_of(found))
