"""A starting file from its template: slots filled, lines chosen, keys and notes aligned.

In a template ``{name}`` is what was answered, ``{= sum}`` a length as a saw cuts it, ``{~ sum}``
one to a 64th, ``{# sum}`` a plain number, ``{a|b}`` the first with inches and the second with mm,
``{name:key}`` the row for a sheet or a thickness. ``@if``, ``@else`` and ``@end`` choose lines.
"""

import re
from collections.abc import Iterable, Iterator, Mapping

from ...units import plain
from ..files.written_sizes import written_size
from .expressions import Worth, number, worth

_SLOT = re.compile(r"\{([^{}]*)\}")
_ENTRY = re.compile(r"(#? ?[A-Za-z_]+)\s*=\s+(.*?)\s*(?:\s#\s+(.*))?")
_VALUE_WIDTH = 20


def filled_template(template: str, texts: Mapping[str, str], values: Mapping[str, Worth]) -> str:
    """Return a template with what was answered; ``values`` hold lengths in m.

    KeyError for a slot that nothing was answered for.
    """
    lines = _chosen(template.splitlines(), values)
    return "\n".join(_SLOT.sub(lambda slot: _slot(slot[1], texts, values), line) for line in lines)


def aligned(text: str) -> str:
    """Return a design file with the '=' of each table below each other, and its notes too."""
    found: list[str] = []
    block: list[str] = []
    for line in [*text.splitlines(), ""]:
        if _ENTRY.fullmatch(line):
            block.append(line)
            continue
        found += [*_as_block(block), line]
        block = []
    return re.sub(r"\n{3,}", "\n\n", "\n".join(found)).strip("\n") + "\n"


def _as_block(lines: Iterable[str]) -> Iterator[str]:
    entries = [match.groups() for line in lines if (match := _ENTRY.fullmatch(line))]
    widest = max((len(key) for key, _, _ in entries), default=0)
    for key, value, note in entries:
        line = f"{key:<{widest}} = {value}"
        yield f"{line:<{widest + 3 + _VALUE_WIDTH}} # {note}" if note else line


def _chosen(lines: Iterable[str], values: Mapping[str, Worth]) -> Iterator[str]:
    """Yield the lines that stand under no ``@if``, or under one that holds."""
    taken = True
    for line in lines:
        word, _, rest = line.partition(" ")
        if word == "@if":
            taken = bool(worth(rest, values))
        elif word == "@else":
            taken = not taken
        elif word == "@end":
            taken = True
        elif taken:
            yield line


def _slot(text: str, texts: Mapping[str, str], values: Mapping[str, Worth]) -> str:
    mark, rest = text[:1], text[1:]
    metric = bool(values["metric"])
    if mark == "=":
        return written_size(number(rest, values), metric)
    if mark == "~":
        return written_size(number(rest, values), metric, 64)
    if mark == "#":
        return plain(number(rest, values), 6)
    if "|" in text:
        return text.split("|")[metric].strip()
    name, _, key = text.partition(":")
    if key:
        return f"{texts[f'{name}_key'] or key} = '{texts[name]}'"
    return texts[name]
