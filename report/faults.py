"""How faults are shown: place, what was found, what belongs there, the way out; 20 at most."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..design.faults import Fault
from .lines import WIDTH

MOST_SHOWN = 20
LONGEST_FOUND = 60


def fault_lines(faults: Sequence[Fault]) -> list[str]:
    """Return the lines that show faults, of one file or several."""
    found: list[str] = []
    for fault in faults[:MOST_SHOWN]:
        found += _one(fault)
    more = len(faults) - MOST_SHOWN
    if more > 0:
        found.append(f"and {more} more fault{'s' if more > 1 else ''}: mend these first")
    files = list(dict.fromkeys(clean(fault.file) for fault in faults))
    many = f"{len(faults)} fault{'s' if len(faults) != 1 else ''}"
    where = f" in {files[0]}" if len(files) == 1 and files[0] else ""
    return [*found, f"{many}{where}: nothing was worked out for it"]


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


def _one(fault: Fault) -> list[str]:
    place = clean(fault.file) + (f":{fault.line}" if fault.line is not None else "")
    names = [clean(name) for name in (fault.part, fault.key) if name]
    found = [f"{place}: {', '.join(names)}" if names else f"{place}:"]
    found += _labelled("found", clean(fault.found, LONGEST_FOUND))
    found += _labelled("expected", clean(fault.expected))
    return found + (_labelled("try", clean(fault.hint)) if fault.hint else [])


def _labelled(label: str, text: str) -> list[str]:
    from textwrap import wrap  # noqa: PLC0415 - only where something is wrong

    first = f"  {label:<10}"
    lines = wrap(
        text,
        WIDTH,
        initial_indent=first,
        subsequent_indent=" " * len(first),
        break_on_hyphens=False,
        drop_whitespace=True,
    )
    return lines or [first.rstrip()]
