"""Changes to a file's text: where they stand, that they are right, and the text with them made."""

import re
from bisect import bisect_left
from collections.abc import Callable, Mapping, Sequence

from ...units.frozen import replace
from ..faults import Change, Fault

_STEPS = 3
"""So many changes may follow on each other in one place: quote marks, then the unit, the word."""


def changed(text: str, at: tuple[int, int] | None, new: str, sure: bool) -> Change | None:
    """Return the change of what stands between two places of a text, if it stays on its line."""
    if at is None or not new or not new.isprintable():
        return None
    old = text[at[0] : at[1]]
    return None if "\n" in old or old == new else Change(*at, old, new, sure)


def with_changes(text: str, changes: Sequence[Change]) -> str:
    """Return a text with changes made; of two that overlap only the first is."""
    pieces: list[str] = []
    done = 0
    for change in sorted(changes, key=lambda each: each.start):
        if change.start < done:
            continue
        pieces += [text[done : change.start], change.new]
        done = change.end
    return "".join([*pieces, text[done:]])


def rewritten(original: str, changes: Sequence[Change]) -> str:
    """Return a file's own text with changes made, its line ends and the mark before it kept."""
    mark = int(original.startswith("\ufeff"))
    ends = [found.start() - mark - k for k, found in enumerate(re.finditer("\r\n", original))]

    def there(place: int) -> int:
        return place + mark + bisect_left(ends, place)

    moved = [replace(each, start=there(each.start), end=there(each.end)) for each in changes]
    return with_changes(original, moved)


def settled(
    text: str, faults: Sequence[Fault], read: Callable[[str], Sequence[Fault]]
) -> tuple[Fault, ...]:
    """Return faults whose changes were tried: typed as told, they mend what they stand for.

    ``read`` returns the faults of a text. Where a change uncovers the next fault of the same key,
    both become one change; where that one has none, it is no way out and is left away. Changes stay
    within their lines, so that lines can be told alike before and after.
    """
    found = list(faults)
    for _ in range(_STEPS):
        left = _left(text, found, read)
        if not left:
            return tuple(found)
        for index, fault in left.items():
            found[index] = fault
    wrong = _left(text, found, read)
    return tuple(replace(f, change=None) if k in wrong else f for k, f in enumerate(found))


def _left(
    text: str, faults: Sequence[Fault], read: Callable[[str], Sequence[Fault]]
) -> dict[int, Fault]:
    """Return by number the faults that are left once all changes are made, with what mends both.

    Where nothing does, what is expected is what the next fault of that place expects.
    """
    changes = {k: fault.change for k, fault in enumerate(faults) if fault.change is not None}
    if not changes:
        return {}
    by_place: dict[tuple[int | None, str | None], Fault] = {}
    for fault in read(with_changes(text, list(changes.values()))):
        if not fault.missing:
            by_place.setdefault((fault.line, fault.key), fault)
    found: dict[int, Fault] = {}
    for k, start in _places(changes).items():
        after = by_place.get((faults[k].line, faults[k].key))
        if after is None:
            continue
        change = _joined(text, changes[k], start, after.change)
        found[k] = (
            replace(faults[k], expected=after.expected, hint=after.hint, change=None)
            if change is None
            else replace(faults[k], hint=after.hint, change=change)
        )
    return found


def _places(changes: Mapping[int, Change]) -> dict[int, int]:
    """Return where each change begins in the text once all are made; overlapped ones are left."""
    shift, done = 0, 0
    found: dict[int, int] = {}
    for number, change in sorted(changes.items(), key=lambda each: each[1].start):
        if change.start < done:
            continue
        found[number] = change.start + shift
        shift += len(change.new) - len(change.old)
        done = change.end
    return found


def _joined(text: str, first: Change, start: int, second: Change | None) -> Change | None:
    """Return two changes of one line as one; ``start`` is where the first one's text begins.

    The second lies within what the first wrote, or before it: a key, then its value.
    """
    if second is None:
        return None
    sure = first.sure and second.sure
    begin, end = second.start - start, second.end - start
    if end <= 0:
        between = text[first.start + end : first.start]
        place = first.start + begin
        return Change(
            place, first.end, text[place : first.end], second.new + between + first.new, sure
        )
    if begin < 0 or end > len(first.new):
        return None
    return replace(first, new=first.new[:begin] + second.new + first.new[end:], sure=sure)
