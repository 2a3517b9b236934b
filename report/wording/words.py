"""Directions in a builder's words: on the face, corner on, over a long side; never a bearing."""

from ...checks.judged.finding import Finding
from ..messages.check_messages import SIDES_SAID
from .amounts import Amounts
from .filled import message_of


def side_said(found: Finding) -> str:
    """Return over what a piece goes, or how a wind meets its foot: ``any side``, ``corner on``."""
    return message_of(found, Amounts(False), SIDES_SAID)
