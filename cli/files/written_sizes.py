"""Lengths as a starting file writes them: to the mm, or to a part of an inch."""

import re
from fractions import Fraction

from ...units import INCH, plain

_METRIC = re.compile(r"(?:mm|cm|\bm|met(?:er|re)s?)$", re.ASCII)
_ON_TAPE = 1.0e-6
"""Metres that no saw cuts: so near a tape's mark a size stands on it."""


def is_metric(text: str) -> bool:
    """Return whether a length is written in metric units."""
    return bool(_METRIC.search(text.strip()))


def written_size(value: float, metric: bool, parts: int = 8) -> str:
    """Return a length in m as a file has it: to the mm, or to an inch over ``parts``."""
    if value < 0.0:
        positive = written_size(-value, metric, parts)
        return positive if positive.startswith("0 ") else f"-{positive}"
    if metric:
        whole = f"{round(value * 1000.0)} mm"
        return whole if parts <= 8 or _whole_mm(value) else f"{plain(value * 1000.0, 6)} mm"
    tape = Fraction(round(value / INCH * parts), parts)
    if parts > 8 and abs(float(tape) * INCH - value) > _ON_TAPE:
        return f"{round(value * 1000.0)} mm" if _whole_mm(value) else f"{plain(value / INCH, 6)} in"
    whole, rest = divmod(tape, 1)
    shown = [str(whole)] if whole or not rest else []
    return " ".join([*shown, str(rest)] if rest else shown) + " in"


def _whole_mm(value: float) -> bool:
    return abs(round(value * 1000.0) / 1000.0 - value) <= _ON_TAPE
