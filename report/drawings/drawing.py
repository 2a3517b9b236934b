"""The drawing of a piece on one sheet: elevation and plan to scale, and two pictures of gusts."""

from ...checks.examination import Examination
from ...units import INCH
from ..templates.typeset import PAPER_SIZES
from ..wording.amounts import Amounts
from ..wording.as_read import in_a_line
from ..wording.asked_wind import asked_wind
from ..wording.fingerprint import fingerprint
from ..wording.ticks import INCHES, ticks
from .drawing_curve import curve
from .drawing_elevation import Elevation
from .drawing_plan import PlanDrawing
from .drawing_polar import polar
from .drawing_scale import Scale, largest
from .paper import BOLD_LINE, LETTERS, PLAIN_LINE, THIN_LINE, Paper

_MARGIN, _FOOT, _GAP = 10.0, 16.0, 5.0
_PICTURE = 62.0
_LONGEST = 60


def drawing(examination: Examination, paper: str) -> Paper:
    """Return the drawing on ``paper``, "a4" or "letter", lying."""
    high, wide, _ = PAPER_SIZES[paper]
    amounts = Amounts(examination.design.units == "metric")
    across, down = wide - 2.0 * _MARGIN, high - 2.0 * _MARGIN - _FOOT
    column = 2.0 * _PICTURE + _GAP
    elevation, plan = Elevation(examination), PlanDrawing(examination)
    legend = plan.legend(column)
    beneath = _PICTURE + 3.0 * LETTERS
    left, above = across - column - _GAP, down - beneath - legend.height - _GAP

    def fits(scale: Scale) -> bool:
        bare, flat = elevation.size, plan.size
        if bare[1] * scale.mm > down or flat[1] * scale.mm > above:
            return False
        front, top = elevation.paper(scale), plan.paper(scale)
        return (
            front.width <= left
            and front.height <= down
            and top.width <= column
            and top.height <= above
        )

    scale = largest(amounts.metric, fits)
    sheet = Paper(wide, high)
    front, top = elevation.paper(scale), plan.paper(scale)
    x = _MARGIN + 0.5 * (left - front.width)
    sheet.place(front, (x, _MARGIN + 0.5 * (down - front.height)))
    x = _MARGIN + left + _GAP
    sheet.place(top, (x + 0.5 * (column - top.width), _MARGIN + 0.5 * (above - top.height)))
    sheet.place(legend, (x, _MARGIN + above))
    y = _MARGIN + down - beneath
    sheet.place(polar(examination, _PICTURE), (x, y))
    sheet.place(curve(examination, _PICTURE, beneath - 3.0), (x + _PICTURE + _GAP, y))
    _foot(sheet, examination, amounts, scale)
    return sheet


def _foot(sheet: Paper, examination: Examination, amounts: Amounts, scale: Scale) -> None:
    """Write what it is, to which scale, and by what it is known again."""
    design, structure = examination.design, examination.structure
    top = sheet.height - _MARGIN - _FOOT + 3.0
    sheet.line((_MARGIN, top), (sheet.width - _MARGIN, top), PLAIN_LINE)
    name = design.name if len(design.name) <= _LONGEST else f"{design.name[: _LONGEST - 3]}..."
    facts = f"{in_a_line(structure, amounts)}; wind asked: {asked_wind(examination.site, amounts)}"
    sheet.text((_MARGIN, top + 5.5), name, bold=True, size=1.3 * LETTERS)
    sheet.text((_MARGIN, top + 11.5), facts)
    right = sheet.width - _MARGIN
    marks = [f"revision {design.revision}"] if design.revision else []
    marks += [f"Calculated, fingerprint {fingerprint(design)}"]
    sheet.text((right, top + 11.5), "; ".join(marks), "end")
    sheet.text((right, top + 5.5), f"Scale {scale}, gusts as forecast", "end")
    _bar(sheet, amounts, scale, (0.5 * sheet.width - 10.0, top + 3.2))


def _bar(sheet: Paper, amounts: Amounts, scale: Scale, corner: tuple[float, float]) -> None:
    """Draw a length that stays true when the sheet is copied larger or smaller."""
    one = 1.0e-3 if amounts.metric else INCH
    every = ticks(0.0, 45.0 / scale.mm / one, 4, () if amounts.metric else INCHES)
    size = every[-1] if len(every) > 1 else 1.0
    length = size * one * scale.mm
    x, y = corner
    sheet.polygon([(x, y), (x + length, y), (x + length, y + 1.2), (x, y + 1.2)], "none", THIN_LINE)
    half = [(x, y), (x + 0.5 * length, y), (x + 0.5 * length, y + 1.2), (x, y + 1.2)]
    sheet.polygon(half, "black", THIN_LINE)
    sheet.text((x + length + 1.5, y + 2.0), amounts.length(size * one))
    sheet.line((x, y - 0.6), (x, y + 1.8), BOLD_LINE)
