"""What is handed out of a design: sheet, calculation, cuts, stakes and the text of a listing.

What is not handed to a buyer by the commands is not handed out here either, but as a draft.
"""

from collections.abc import Callable, Mapping

from ..checks.examination import Examination
from ..checks.stated.hardware import hardware
from ..design.cutting.cut_list import cut_list
from ..report.messages import window_messages as messages
from ..report.printed.gate import not_ready
from ..report.printed.label import Refusal, label
from ..report.printed.label_lines import label_lines
from ..report.printed.shop import Shop
from ..units.frozen import ByValue

PDF, _TEXT = "application/pdf", "text/plain; charset=utf-8"


class NotHandedOutError(Exception):
    """Why nothing is handed out; ``draft`` where it is as a draft."""

    def __init__(self, why: str, *, draft: bool = False) -> None:
        super().__init__(why)
        self.draft = draft


class Handout(ByValue, frozen=True):
    """One thing handed out: its content, of which type, and how its name ends."""

    content: bytes
    type: str
    ending: str


def _sheet(found: Examination, shop: Shop, draft: bool) -> Handout:
    from ..report.printed.sheet import sheet  # noqa: PLC0415 - only paper needs the typesetter

    del shop
    _gate(found, draft)
    return Handout(sheet(found, _size(found)), PDF, "-sheet.pdf")


def _full(found: Examination, shop: Shop, draft: bool) -> Handout:
    from ..report.calculation.calculation import calculation  # noqa: PLC0415 - as above

    del shop, draft
    return Handout(calculation(found, _size(found)), PDF, "-calculation.pdf")


def _cuts(found: Examination, shop: Shop, draft: bool) -> Handout:
    from ..report.printed.saw_page import saw_page  # noqa: PLC0415 - as above

    del shop, draft
    bought = hardware(found.structure, 1)
    cuts = cut_list(found.structure, 1, bought.sawn)
    return Handout(saw_page(cuts, bought, _size(found)), PDF, "-cuts.pdf")


def _stakes(found: Examination, shop: Shop, draft: bool) -> Handout:
    from ..report.printed.stake_places import nothing_to_set_out, stake_page, stake_places  # noqa: PLC0415

    del shop, draft
    places = stake_places(found)
    if places is None:
        raise NotHandedOutError(f"{nothing_to_set_out(found.design, found.verdict.word)}.")
    return Handout(stake_page(places, _size(found)), PDF, "-stakes.pdf")


def _label(found: Examination, shop: Shop, draft: bool) -> Handout:
    _gate(found, draft)
    made = label(found, shop, draft=draft and bool(not_ready(found)))
    if isinstance(made, Refusal):
        raise NotHandedOutError(messages.EMPTY_LABEL.format(reason=made.reason))
    text = "\n".join(line.text for line in label_lines([made]))
    return Handout(f"{text}\n".encode(), _TEXT, "-listing.txt")


PAPERS: Mapping[str, Callable[[Examination, Shop, bool], Handout]] = {
    "sheet": _sheet,
    "calculation": _full,
    "cuts": _cuts,
    "stakes": _stakes,
    "label": _label,
}


def _gate(found: Examination, draft: bool) -> None:
    if not draft and (why := not_ready(found)):
        raise NotHandedOutError(str(why), draft=True)


def _size(found: Examination) -> str:
    return "a4" if found.design.units == "metric" else "letter"
