"""Directions in a builder's words: on the face, corner on, over a long side; never a bearing."""

from ...checks.as_one import AsOne
from ...checks.sides import met_by, over_found
from ..messages.check_messages import SIDES_SAID
from .amounts import Amounts
from .filled import message_of


def over_what(examination: AsOne, toward_deg: float) -> str:
    """Return over what a piece goes, turning over toward a bearing: ``any side``, ``a corner``."""
    return message_of(over_found(examination, toward_deg), Amounts(False), SIDES_SAID)


def wind_on(examination: AsOne, from_deg: float) -> str:
    """Return how a wind from a bearing meets the foot: ``on the face``, ``corner on``."""
    return message_of(met_by(examination, from_deg), Amounts(False), SIDES_SAID)
