"""The stability sheet: one page that goes with a piece to whoever has it in the yard."""

from typing import Any

from ... import __version__
from ...checks.examination import Examination
from ..drawings.front_view import front_view
from ..drawings.ground_plan import ground_plan
from ..messages import page_messages as messages
from ..templates.typeset import PAPER_SIZES, typeset
from ..wording.dates import day
from ..wording.fingerprint import fingerprint
from ..wording.gusts_to_act import act_rows
from ..wording.remark import cut_short
from . import sheet_words as words
from .sheet_facts import sheet_facts
from .sheet_steps import head, needed, steps

_MARGIN = 12.0
PLAN = 76.2
"""The plan is 3 in wide."""

_WIDE = 70.0
_HIGH = (
    *((78.0, front) for front in (112.0, 104.0, 96.0, 88.0, 80.0, 72.0, 66.0)),
    *((plan, 0.85 * plan) for plan in (70.0, 60.0, 50.0, 40.0, 30.0)),
)
"""How tall (mm) plan and view may be: the page takes the first that leave room for the words."""

_LONGEST = 80


def sheet(examination: Examination, paper: str) -> bytes:
    """Return the sheet as PDF on ``paper``, "a4" or "letter"."""
    return typeset("sheet", sheet_object(examination, paper))


def sheet_object(examination: Examination, paper: str) -> dict[str, Any]:
    """Return all that the sheet says, as text, and its drawings, the largest first."""
    design, verdict = examination.design, examination.verdict
    page = sheet_facts(examination)
    marks = [
        cut_short(design.maker, _LONGEST),
        cut_short(design.contact, _LONGEST),
        cut_short(design.serial, _LONGEST),
        day(design.date) if design.date else None,
        cut_short(design.revision, _LONGEST),
    ]
    sections = [
        (messages.BASIS_HEAD, words.basis(verdict, page)),
        ("", " ".join(page.records)),
        (messages.SEASON_HEAD, words.season(page)),
        (messages.NOT_FOR_HEAD, words.not_for(page)),
        (messages.NOT_LOOKED_HEAD, words.not_looked_at_words(verdict)),
    ]
    plans = [ground_plan(examination, page.out, PLAN, high) for high, _ in _HIGH]
    fronts = [front_view(examination, _WIDE, high) for _, high in _HIGH]
    rows = act_rows(page.acts, page.amounts)
    return {
        "paper": PAPER_SIZES[paper][2],
        "margin": _MARGIN,
        "name": design.name,
        "facts": page.facts.size,
        "marks": [mark for mark in marks if mark],
        "draft": f"{messages.DRAFT} {page.unready}" if page.unready else None,
        "when": messages.WHEN if rows else messages.ALWAYS,
        "rows": rows,
        "do": words.do_runs(verdict, page),
        "warnings": [each for each in (page.only_with, words.comes_off(page)) if each],
        "held": words.held_said(verdict, page),
        "hands_off": words.hands_off(verdict),
        "head": head(verdict, page),
        "steps": steps(verdict, page),
        "need": needed(verdict, page),
        "plans": [plan.svg(design.name) for plan in plans],
        "fronts": [view.svg(design.name) for view in fronts],
        "plan_mm": PLAN,
        "sections": [(title, text) for title, text in sections if text],
        "rules": messages.RULES,
        "made": messages.MADE_BY.format(version=__version__, fingerprint=fingerprint(design)),
    }
