"""How faults are shown: in two columns, what is wrong and what to type; six first, then a count."""

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from ...design.faults import Fault
from ...design.reader.near_names import first

_FIRST = 6
"""So many faults are shown unless all are asked for."""
LONGEST_FOUND = 60
_WIDTH = 79
_SECOND, _THIRD, _LONGEST_PLACE = 27, 50, 30
_LONGEST_NEEDED = 180
_LABEL = len("you wrote  ")


def fault_lines(faults: Sequence[Fault], every: bool = False) -> list[str]:
    """Return the lines that show faults, each file's by itself; ``every`` shows more than six."""
    by_file: dict[str, list[Fault]] = {}
    for fault in faults:
        by_file.setdefault(fault.file, []).append(fault)
    found: list[str] = []
    for file, those in by_file.items():
        found += [*([""] if found else []), *_of_a_file(file, those, every)]
    return found


def fault_object(fault: Fault) -> Mapping[str, Any]:
    """Return a fault as a JSON object; its file stands beside the list of faults."""
    return {
        "line": fault.line,
        "part": fault.part,
        "key": fault.key,
        "found": clean(fault.found, LONGEST_FOUND),
        "expected": fault.expected,
        "hint": fault.hint,
    }


def clean(text: str, longest: int | None = None) -> str:
    """Return a text with control characters escaped, cut to ``longest`` characters."""
    escaped = "".join(c if c.isprintable() else _escaped(c) for c in text)
    if longest is None or len(escaped) <= longest:
        return escaped
    return escaped[: longest - 1] + "…"


def _escaped(character: str) -> str:
    return character.encode("unicode_escape").decode("ascii")


def fault_said(fault: Fault) -> str:
    """Return one fault beside the place where it is: what was written, and what to write."""
    wrote = " ".join(_wrote(fault).split("  ", 1))
    ways = "; ".join(f"{label} {text}".strip() for label, text in _ways(fault))
    return f"{wrote}: {ways}"


def _of_a_file(file: str, faults: Sequence[Fault], every: bool) -> list[str]:
    name = clean(file)
    if len(faults) == 1 and faults[0].line is None and not faults[0].key:
        return _whole(name, faults[0])
    many = f"{len(faults)} thing{'s' if len(faults) != 1 else ''} to put right"
    found = [f"{name}: {many}; nothing was worked out yet." if name else f"{many}.", ""]
    shown = faults if every else faults[:_FIRST]
    places = [_place(fault) for fault in shown]
    second = max((len(each) + 2 for each in places if len(each) <= _LONGEST_PLACE), default=0)
    for place, fault in zip(places, shown, strict=True):
        found += _one(place, fault, max(second, _SECOND))
    hidden = faults[len(shown) :]
    if hidden:
        found += _wrapped(f" ... and {len(hidden)} more (--all).{_alike(hidden)}", "     ")
    sure = sum(fault.change is not None and fault.change.sure for fault in faults)
    if sure and name:
        which = "the one that is" if sure == 1 else f"the {sure} that are"
        found += _wrapped(f" Put in {which} sure?   yardfast mend {_typed(name)}", "     ")
    return found


def _whole(name: str, fault: Fault) -> list[str]:
    """Return what is wrong with a file as a whole, such as that there is none."""
    hint = f" Try {clean(fault.hint)}" if fault.hint else ""
    before = f"{name}: " if name else ""
    text = f"{before}{clean(fault.found, LONGEST_FOUND)}; needed: {clean(fault.expected)}.{hint}"
    return _wrapped(text, "  ")


def _place(fault: Fault) -> str:
    line = f"line {fault.line}" if fault.line is not None else ""
    names = ", ".join(clean(name, 40) for name in (fault.part, fault.key) if name)
    return " " + "  ".join(each for each in (line, names) if each)


def _one(place: str, fault: Fault, second: int) -> list[str]:
    """Return the lines of one fault: its place, what was written, what to write."""
    wrote, rows = _wrote(fault), _ways(fault)
    label, text = rows[0]
    gap = max(_THIRD - _SECOND, len(wrote) + 2)
    fits = len(place) < second
    if len(rows) == 1 and label == "write" and fits:
        line = f"{place:<{second}}{wrote:<{gap}}{label}  {text}"
        if len(line) <= _WIDTH:
            return [line]
    lines = [] if fits else [place]
    lines += _wrapped(f"{place if fits else '':<{second}}{wrote}", " " * (second + _LABEL))
    for label, text in rows:
        head = f"{'':<{second}}{label:<{_LABEL}}"
        lines += _wrapped(head + text, " " * len(head))
    return lines


def _wrote(fault: Fault) -> str:
    if fault.missing:
        return clean(fault.found, LONGEST_FOUND)
    old = fault.change.old if fault.change is not None else ""
    return f"you wrote  {clean(old or fault.found, LONGEST_FOUND)}"


def _ways(fault: Fault) -> list[tuple[str, str]]:
    """Return what to type, or where that is not known what belongs there, each with its label."""
    whole = clean(fault.hint)
    hint = whole.removeprefix(f"{fault.key} = " if not fault.missing else "")
    if fault.change is not None:
        new = clean(fault.change.new)
        if fault.change.sure:
            return [("write", new)]
        return [("write", hint if hint.startswith(new) and hint != new else f"{new} ?")]
    if hint != whole:
        return [("write", hint)]
    if fault.missing and fault.key and hint.startswith(f"{fault.key} = "):
        return [("write", f"{hint}, or your own")]
    if first(hint) is not None:
        return [("write", hint)]
    if hint and len(fault.expected) > _LONGEST_NEEDED / 2:
        return [("", hint)]
    rows = [("needed", _cut(clean(fault.expected)))]
    return [*rows, ("", hint)] if hint else rows


def _cut(text: str) -> str:
    """Return a long list up to its last whole item that fits."""
    if len(text) <= _LONGEST_NEEDED:
        return text
    return text[:_LONGEST_NEEDED].rsplit(",", 1)[0] + ", …"


def _alike(faults: Sequence[Fault]) -> str:
    """Return of hidden faults what most of them have in common."""
    pairs = Counter((f.change.old, f.change.new) for f in faults if f.change is not None)
    if not pairs:
        return ""
    (old, new), number = pairs.most_common(1)[0]
    pair = f"{clean(old, 30)}  ->  {clean(new, 30)}"
    return f"  {number} of them are  {pair}." if number > 1 else ""


def _typed(name: str) -> str:
    from shlex import quote  # noqa: PLC0415 - only where something is wrong

    return quote(name)


def _wrapped(text: str, rest: str) -> list[str]:
    from textwrap import wrap  # noqa: PLC0415 - only where something is wrong

    return wrap(
        text,
        _WIDTH,
        subsequent_indent=rest,
        break_on_hyphens=False,
        drop_whitespace=True,
        replace_whitespace=False,
    ) or [text.rstrip()]
