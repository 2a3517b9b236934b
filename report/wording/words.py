"""Directions in a builder's words: on the face, corner on, over a long side; never a bearing."""

from ...checks.as_one import AsOne
from ...checks.sides import Meets, Over, goes_over, meets, quarter_of


def over_what(examination: AsOne, toward_deg: float) -> str:
    """Return over what a piece goes, turning over toward a bearing: ``any side``, ``a corner``."""
    over = goes_over(examination, toward_deg)
    return f"its {quarter(examination, toward_deg)}" if over is Over.QUARTER else str(over)


def wind_on(examination: AsOne, from_deg: float) -> str:
    """Return how a wind from a bearing meets the foot: ``on the face``, ``corner on``."""
    found = meets(examination, from_deg)
    return f"from its {quarter(examination, from_deg)}" if found is Meets.QUARTER else str(found)


def quarter(examination: AsOne, bearing: float) -> str:
    """Return the side of the piece, as the file has it before its last turn, at a bearing."""
    return f"{quarter_of(examination, bearing)} side"
