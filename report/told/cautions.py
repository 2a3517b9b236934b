"""What to take care of, in words: the general cautions always, the others where they apply."""

from ...checks.examination import Examination
from ...checks.stated.cautions import Caution, cautions_of
from ..messages import messages
from ..wording.amounts import Amounts
from ..wording.remark import capital, joined
from .dig_line import dig_line, digging

_PLAIN = ("vines", "overlap")
"""Cautions whose names stand without marks: parts, and pairs of them."""


def cautions(examination: Examination) -> tuple[str, ...]:
    """Return every caution that applies to a design, in the order of their table."""
    found, amounts = examination, Amounts(examination.design.units == "metric")
    carries = bool(found.loads) or any(part.hangs_at is not None for part in found.design.parts)
    slots = {
        "height": amounts.length(found.structure.height, "up"),
        "call": capital(dig_line(found.site.country)),
        "digging": digging(found),
        "in_time": messages.IN_TIME[found.verdict.untied.stays_put],
        "more": "more " if carries else "",
    }
    return tuple(_said(one, slots, amounts) for one in cautions_of(found))


def _said(one: Caution, slots: dict[str, str], amounts: Amounts) -> str:
    names = one.of if one.key in _PLAIN else [f"'{name}'" for name in one.of]
    weighed = ""
    if one.masses is not None:
        scale, boards = map(amounts.mass, one.masses)
        weighed = messages.SCALE_AND_BOARDS.format(scale=scale, boards=boards)
    return one.text.format(of=joined(names), weighed=weighed, **slots)
