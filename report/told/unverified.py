"""Values on which an answer rests that were written from memory: a sentence for each."""

from collections.abc import Iterable

from ...checks.stated.from_memory import FromMemory, Value
from ..fastening.fastener_words import plural
from ..messages import messages
from ..wording.filled import first_source, plain_source
from ..wording.remark import capital, joined

_OF_FASTENERS = (Value.FASTENER, Value.PULLING_OUT)
_FIRST_ONLY = (Value.DENSITY, Value.FASTENER)
"""Values whose source names the notes of other copies behind it."""


def unverified(found: Iterable[FromMemory]) -> tuple[str, ...]:
    """Return a sentence for each value written from memory."""
    return tuple(dict.fromkeys(map(_said, found)))


def _said(one: FromMemory) -> str:
    of = [plural(name) for name in one.of] if one.value in _OF_FASTENERS else one.of
    whole = joined(of) if one.value is Value.STRENGTH else ""
    what = capital(messages.FROM_MEMORY[one.value].format(*of, all=whole))
    source = joined(one.sources)
    if one.value in _FIRST_ONLY:
        source = first_source(source)
    if one.value is not Value.STRENGTH:
        source = plain_source(source)
    return f"{what}: from memory of {source}."
