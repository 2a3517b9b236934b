"""What is not handed to a buyer: a piece that fails, with what to mend first."""

from ...checks.examination import Examination
from ...checks.verdict import Word
from ..advice.mends import mends
from ..advice.verdict_words import why_sentence
from ..advice.what_to_do import first_mend
from ..messages import messages
from ..told.facts import facts_of


def not_ready(found: Examination) -> str:
    """Return why a piece is not ready to sell, as sentences; empty where it is.

    What is meant to be laid down is, as long as there is a gust below which it need not lie, and
    nothing of it comes apart: the gust on the page is the one that tips or slides it.
    """
    verdict = found.verdict
    if verdict.may_be_sold:
        return ""
    mend_all_the_same = (Word.FALLS_OVER, Word.COMES_APART)
    if found.design.laid_down and verdict.word not in mend_all_the_same and verdict.untied.act:
        return ""
    facts = facts_of(found)
    said = why_sentence(verdict, facts)
    first = first_mend(verdict, facts, mends(found, 1, facts))
    return f"{said} {messages.MEND_IT_FIRST.format(what=first)}" if first else said
