"""Messages filled from the slots of what was found: amounts, names and sources as text."""

import re
from collections.abc import Mapping, Sequence
from enum import StrEnum

from ...checks.judged.finding import Against, Amount, Finding, FindingSlot, Measure, Source, Term
from ..messages.terms import TERMS_SAID
from .amounts import Amounts
from .remark import are_many, capital, joined

Messages = Mapping[StrEnum, str]
"""What is said of each finding, with slots."""

_NAMED = 6
"""So many names are told; of more their number alone."""


def message_of(found: Finding, amounts: Amounts, messages: Messages) -> str:
    """Return the message of a finding with its slots filled; those within it by the same list."""
    return filled_message(messages[found.what], found.slots, amounts, messages)


def filled_message(
    message: str, slots: Mapping[str, FindingSlot], amounts: Amounts, within: Messages
) -> str:
    """Return a message with its slots filled; findings ``within`` it have messages of their own.

    Each slot stands under its name, and under its name with a capital as a sentence begins. Of a
    slot that holds several, ``{names:, }`` says what stands between them, ``{names:is|are}`` takes
    the word for one or for many, ``{names:its # parts}`` stands for more than six, and
    ``{names:?}`` is all of them in brackets, where there are any.
    """
    said = {name: _said(slot, amounts, within) for name, slot in slots.items()}
    return message.format(**said, **{capital(name): capital(text) for name, text in said.items()})


def plain_source(source: str) -> str:
    """Return a source without its keys to the list of sources."""
    return re.sub(r"\s*(?:as quoted in )?\[R\d+\]", "", source).strip()


def first_source(source: str) -> str:
    """Return the first of several sources."""
    return plain_source(source).split("; ")[0]


class _Several(str):
    """Several texts as one, which a message may join otherwise, count, or take a verb for."""

    __slots__ = ("_each",)

    def __new__(cls, each: Sequence[str], whole: str) -> "_Several":
        made = super().__new__(cls, whole)
        made._each = tuple(each)
        return made

    def __format__(self, spec: str) -> str:
        if "#" in spec:
            return spec.replace("#", str(len(self._each))) if len(self._each) > _NAMED else self
        if "|" in spec:
            return spec.split("|")[are_many(self._each)]
        if spec == "?":
            return f" ({self})" if self._each else ""
        return spec.join(self._each) if spec else self


def _said(slot: FindingSlot, amounts: Amounts, within: Messages) -> str:
    match slot:
        case Amount(value, "length" | "gust" | "bare_gust" as of, way):
            return getattr(amounts, of)(value, way)
        case Amount(value, of):
            return getattr(amounts, of)(value)
        case Measure(value, unit, decimals):
            return amounts.measure(value, unit, decimals)
        case Against(has, needs, unit, passes, told):
            return amounts.has_and_needs(has, needs, unit, passes)[told == "needs"]
        case Source(text, first):
            return first_source(text) if first else plain_source(text)
        case Term(of, word):
            return TERMS_SAID[of].get(word, word)
        case Finding():
            return message_of(slot, amounts, within)
        case tuple():
            each = [_said(one, amounts, within) for one in slot]
            found = any(isinstance(one, Finding) for one in slot)
            return _Several(each, "; ".join(each) if found else joined(each))
        case _:
            return str(slot)
