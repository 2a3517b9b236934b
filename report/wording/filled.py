"""Messages filled from the slots of what was found: amounts, names and sources as text."""

import re
from collections.abc import Mapping
from enum import StrEnum

from ...checks.finding import Amount, Finding, FindingSlot, Source
from .amounts import Amounts
from .remark import capital, joined


def filled_message(
    message: str, slots: Mapping[str, FindingSlot], amounts: Amounts, within: Mapping[StrEnum, str]
) -> str:
    """Return a message with its slots filled; findings ``within`` it have messages of their own.

    Each slot stands under its name, and under its name with a capital as a sentence begins.
    """
    said = {name: _said(slot, amounts, within) for name, slot in slots.items()}
    return message.format(**said, **{capital(name): capital(text) for name, text in said.items()})


def plain_source(source: str) -> str:
    """Return a source without its keys to the list of sources."""
    return re.sub(r"\s*(?:as quoted in )?\[R\d+\]", "", source).strip()


def first_source(source: str) -> str:
    """Return the first of several sources."""
    return plain_source(source).split("; ")[0]


def _said(slot: FindingSlot, amounts: Amounts, within: Mapping[StrEnum, str]) -> str:
    match slot:
        case Amount(value, "length" | "gust" | "bare_gust" as of, way):
            return getattr(amounts, of)(value, way)
        case Amount(value, of):
            return getattr(amounts, of)(value)
        case Source(text, first):
            return first_source(text) if first else plain_source(text)
        case tuple():
            names = [each for each in slot if isinstance(each, str)]
            found = [each for each in slot if isinstance(each, Finding)]
            each = [filled_message(within[one.what], one.slots, amounts, within) for one in found]
            return joined(names) if names else "; ".join(each)
        case _:
            return str(slot)
