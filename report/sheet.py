"""The stability sheet: one page that goes with a piece to whoever has it in the yard."""

from typing import Any

from .. import __version__
from ..checks.examination import Examination
from . import sheet_warnings as warned
from . import sheet_words as words
from .added_words import only_with
from .amounts import Amounts
from .as_read import shape_words
from .drawing_pair import pairs
from .fingerprint import fingerprint
from .gate import not_ready
from .sheet_steps import steps
from .typeset import PAPERS, typeset

MARGIN = 12.0
_HEIGHTS = [110.0, 100.0, 90.0, 82.0, 74.0, 66.0, 58.0, 50.0, 42.0, 36.0]
"""How tall (mm) the drawing may be: the page takes the tallest that leaves room for the words."""


def sheet(examination: Examination, paper: str) -> bytes:
    """Return the sheet as PDF on ``paper``, "a4" or "letter"."""
    return typeset("sheet", sheet_object(examination, paper))


def sheet_object(examination: Examination, paper: str) -> dict[str, Any]:
    """Return all that the sheet says, as text, and its drawings, the largest first."""
    design, structure = examination.design, examination.structure
    amounts = Amounts(design.units == "metric")
    facts = (
        f"{shape_words(examination)}, {amounts.length(structure.height)} tall, "
        f"{amounts.mass(structure.mass('typical'))}"
    )
    drawn = pairs(examination, PAPERS[paper][0] - 2.0 * MARGIN, _HEIGHTS)
    return {
        "paper": PAPERS[paper][2],
        "margin": MARGIN,
        "name": design.name,
        "draft": not_ready(examination) or None,
        "facts": facts,
        "marks": [
            ["Maker", words.within(design.maker)],
            ["Contact", words.within(design.contact)],
            ["Serial", words.within(design.serial)],
            ["Date", words.day(design.date) if design.date else None],
            ["Revision", words.within(design.revision)],
        ],
        "act": {
            "lead": words.act_lead(examination),
            "rows": words.act_rows(examination, amounts),
            "only": only_with(examination, amounts),
            "off": warned.comes_off(examination, amounts),
            "starts": words.starting(examination, amounts),
            "hold": words.hold_off(examination),
        },
        "tie": {
            "title": words.tie_title(examination),
            "lead": words.tie_words(examination, amounts),
            "steps": steps(examination, amounts),
        },
        "drawings": [
            {"svg": pair.paper.svg(design.name), "scale": str(pair.scale)} for pair in drawn
        ],
        "basis": words.worked_out_for(examination, amounts),
        "records": words.records(examination, amounts),
        "unchecked": words.unchecked(examination),
        "not_for": warned.not_for(examination, amounts),
        "season": words.each_season(examination),
        "fingerprint": fingerprint(design),
        "version": __version__,
    }
