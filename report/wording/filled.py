"""Messages filled from the slots of what was found: amounts, names and sources as text."""

import re
from collections.abc import Mapping, Sequence
from enum import StrEnum

from ...checks.judged.finding import (
    Against,
    Amount,
    Ask,
    Day,
    Finding,
    FindingSlot,
    Measure,
    Several,
    Source,
    Term,
    ToAct,
)
from ..messages.terms import TERMS_SAID
from .amounts import Amounts
from .dates import day
from .dig_line import dig_line
from .gusts_to_act import act_said
from .remark import are_many, capital, counted, joined, several_of

Messages = Mapping[StrEnum, str | tuple[str, ...]]
"""What is said of each finding, with slots; or in several forms, the fullest first."""

_LASTS = ("and", "or", "nor")

_NAMED = 6
"""So many names are told; of more their number alone."""


def message_of(found: Finding, amounts: Amounts, messages: Messages) -> str:
    """Return the message of a finding with its slots filled; those within it by the same list.

    Of one that has several forms it is the fullest.
    """
    return forms_of(found, amounts, messages)[0]


def forms_of(found: Finding, amounts: Amounts, messages: Messages) -> tuple[str, ...]:
    """Return the message of a finding in each of its forms, the fullest first."""
    message = messages[found.what]
    forms = (message,) if isinstance(message, str) else message
    return tuple(filled_message(form, found.slots, amounts, messages) for form in forms)


def filled_message(
    message: str, slots: Mapping[str, FindingSlot], amounts: Amounts, within: Messages
) -> str:
    """Return a message with its slots filled; findings ``within`` it have messages of their own.

    Each slot stands under its name, and under its name with a capital as a sentence begins. Of a
    slot that holds several, ``{names:, }`` says what stands between them, ``{names:or}`` what
    before the last, ``{names:is|are}`` takes the word for one or for many, ``{names:its # parts}``
    stands for more than six; ``{names:?}`` is all of them in brackets and ``{names:+}`` behind a
    comma, where there are any.
    Of a finding within that has forms ``{way:1}`` is the second, or its shortest.
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
        if spec == "+":
            return f", {self}" if self._each else ""
        if spec in _LASTS:
            return joined(self._each, spec)
        return spec.join(self._each) if spec else self


class _Forms(str):
    """A text in several forms, of which a message takes the one that it names."""

    __slots__ = ("_forms",)
    _forms: tuple[str, ...]

    def __new__(cls, forms: Sequence[str]) -> "_Forms":
        made = super().__new__(cls, forms[0])
        made._forms = tuple(forms)
        return made

    def __format__(self, spec: str) -> str:
        return self._forms[min(int(spec or 0), len(self._forms) - 1)]


def _said(slot: FindingSlot, amounts: Amounts, within: Messages) -> str:
    match slot:
        case Amount(value, "length" | "gust" | "bare_gust" | "force" as of, way):
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
        case ToAct(gust):
            return act_said(gust, amounts)
        case Ask(country):
            return dig_line(country)
        case Day(date):
            return day(date)
        case Several(number, of, terms):
            one = [TERMS_SAID[terms].get(word, word) if terms else word for word in of]
            many = joined(several_of(word) for word in one)
            return _Several(one * number, counted(number, joined(one), many))
        case Finding():
            return _Forms(forms_of(slot, amounts, within))
        case tuple():
            each = [_said(one, amounts, within) for one in slot]
            found = any(isinstance(one, Finding) for one in slot)
            return _Several(each, "; ".join(each) if found else joined(each))
        case _:
            return str(slot)
