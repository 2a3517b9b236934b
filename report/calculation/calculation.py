"""The calculation on paper: every step as formula, numbers, result and clause."""

from typing import Any

from ... import __version__
from ...checks.examination import Examination
from ...checks.stated.assumed import assumed
from ...checks.stated.cautions import cautions_of
from ...checks.stated.cited import cited_by
from ...checks.stated.from_memory import from_memory
from ...checks.stated.governed import all_governed
from ...checks.stated.starts import starts
from ...design.file.record_table import Record
from ..advice.verdict_words import why_sentence
from ..drawings.drawing_curve import curve
from ..drawings.drawing_pair import pairs
from ..drawings.drawing_polar import polar
from ..screens.starts import starts_said
from ..templates.typeset import PAPER_SIZES, typeset
from ..told.assumptions import assumptions
from ..told.cautions import cautions
from ..told.facts import facts_of
from ..told.not_checked import not_checked
from ..told.tied_words import anchors_said
from ..told.unverified import unverified
from ..wording.amounts import Amounts
from ..wording.as_read import in_a_line
from ..wording.asked_wind import asked_wind, code_wind
from ..wording.dates import day, records_said
from ..wording.fingerprint import fingerprint
from ..wording.remark import cut_short
from ..wording.sources import sources
from . import calculation_holding as holding
from . import calculation_steps as steps
from . import calculation_wind as wind_steps
from .calculation_checks import check_rows

_MARGIN = 18.0
_HEIGHTS = [120.0]
_PICTURE, _HIGH = 70.0, 74.0


def calculation(examination: Examination, paper: str) -> bytes:
    """Return the calculation as PDF on ``paper``, "a4" or "letter"."""
    return typeset("calculation", calculation_object(examination, paper))


def calculation_object(examination: Examination, paper: str) -> dict[str, Any]:
    """Return all that the calculation says, as text and numbers in text, and its drawings."""
    design, structure = examination.design, examination.structure
    amounts = Amounts(design.units == "metric")
    pair = pairs(examination, PAPER_SIZES[paper][0] - 2.0 * _MARGIN, _HEIGHTS)[0]
    marks = [
        ("Maker", design.maker),
        ("Serial", design.serial),
        ("Date", day(design.date) if design.date else None),
        ("Revision", design.revision),
        ("File", design.file or None),
    ]
    memory = unverified(from_memory(examination))
    lists = (
        ("What was assumed", list(assumptions(assumed(examination), amounts))),
        ("What was not checked", list(not_checked(examination.verdict.not_looked_at, amounts))),
        ("Take care", list(cautions(cautions_of(examination), amounts))),
        (
            "Values from memory, not compared with the printed page",
            list(memory),
        ),
        ("What was measured", records_said(design.several(Record), amounts)),
        ("References", sources(cited_by(examination))),
    )
    said = why_sentence(examination.verdict, facts_of(examination))
    return {
        "paper": PAPER_SIZES[paper][2],
        "margin": _MARGIN,
        "name": design.name,
        "short": cut_short(design.name, 60),
        "facts": in_a_line(structure, amounts),
        "marks": [f"{mark}: {value}" for mark, value in marks if value],
        "asked": code_wind(examination.site, amounts)
        or f"Wind asked: {asked_wind(examination.site, amounts)}.",
        "verdict": f"{said} {starts_said(starts(examination), amounts)}".strip(),
        "drawing": {"svg": pair.paper.svg(design.name), "scale": str(pair.scale)},
        "pictures": [
            polar(examination, _PICTURE).svg(design.name),
            curve(examination, _PICTURE, _HIGH).svg(design.name),
        ],
        "sections": sections(examination),
        "checks": check_rows(all_governed(examination, examination.checks), amounts),
        "suggested": _suggested(examination, amounts),
        "lists": [{"title": title, "items": items} for title, items in lists if items],
        "fingerprint": fingerprint(design),
        "version": __version__,
    }


def sections(examination: Examination) -> list[dict[str, Any]]:
    """Return the steps in the order in which one follows from another."""
    if examination.posts is not None:
        return [
            steps.weight(examination),
            wind_steps.pressure(examination),
            *holding.posts(examination),
            wind_steps.gusts(examination),
        ]
    return [
        steps.weight(examination),
        wind_steps.pressure(examination),
        wind_steps.forces(examination),
        steps.tipping(examination),
        steps.sliding(examination),
        steps.bearing(examination),
        *holding.anchors(examination),
        *holding.guys(examination),
        wind_steps.gusts(examination),
    ]


def _suggested(examination: Examination, amounts: Amounts) -> dict[str, Any] | None:
    """Return the checks with the anchors that the sheet suggests; None where it suggests none."""
    choice = examination.verdict.tied.anchors
    if choice is None or examination.held:
        return None
    said = anchors_said(choice, examination.remedies.stakes, amounts)
    return {
        "words": f"{said[0].upper()}{said[1:]}.",
        "checks": check_rows(all_governed(examination, choice.checks), amounts),
    }
