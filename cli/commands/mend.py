"""`yardfast mend`: puts into a design file what can only be meant, the old text kept beside it."""

import sys
from argparse import Namespace
from collections.abc import Sequence
from pathlib import Path
from shlex import quote

from ...checks.inputs import read_text
from ...design.faults import Change, DesignError, Fault
from ...design.reader.file_text import text_in
from ...design.reader.mending import rewritten
from ...report.wording.faults import clean, fault_lines
from ...report.wording.lines import Line
from .. import screen
from ..files.written import write
from ..refused import RefusedError

_DONE, _WRONG = 0, 2
_MOST_ROUNDS = 10


def run(arguments: Namespace) -> int:
    """Show each sure correction of a file, ask, write; return 0 where it then reads, else 2.

    ``yes`` asks nothing. Without a terminal and without ``yes`` nothing is written. What is not
    sure is never touched.
    """
    name: str = arguments.file
    text = text_in(name, "a design file")
    asking = sys.stdin is not None and sys.stdin.isatty() and sys.stdout.isatty()
    try:
        new, made = _mended(text, name, yes=arguments.yes, asking=asking and not arguments.yes)
    except (EOFError, KeyboardInterrupt):
        print()
        raise RefusedError(f"stopped; {clean(name)} is as it was.", "") from None
    if not (arguments.yes or asking) and made:
        many = "this" if made == 1 else f"these {made}"
        again = quote(clean(name))
        screen.complain([f"Nothing was written. To put {many} in:  yardfast mend {again} --yes"])
        return _WRONG
    if made and (problem := _write(Path(name), text, new, made)):
        raise RefusedError(problem, "Nothing was changed.")
    left = _faults(new, name)
    if left:
        print("\nWhat is left is not sure enough to put in:" if made else "Nothing here is sure.")
        screen.complain(fault_lines(left))
        return _WRONG
    if not made:
        lines = _mends(new, name)
        print(f"{clean(name)} reads as it is: nothing to {'put right in it' if lines else 'mend'}.")
        screen.show(lines)
    print(f"Next:  yardfast check {clean(name)}")
    return _DONE


def _mends(text: str, name: str) -> list[Line]:
    """Return what to mend of the piece itself, with the lines to type; none of it is written."""
    from ...checks.examination import examine  # noqa: PLC0415 - only of a file that reads
    from ...checks.sizing.mending import mending  # noqa: PLC0415
    from ...report.advice.mend_lines import mend_lines  # noqa: PLC0415
    from ...report.told.facts import facts_of  # noqa: PLC0415

    try:
        found = examine(read_text(text, name))
        return mend_lines(mending(found), facts_of(found), screen.screen_columns())
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return []


def _mended(text: str, name: str, *, yes: bool, asking: bool) -> tuple[str, int]:
    """Return the text with what was agreed to, and how many changes that is."""
    made, refused, rest = 0, set[tuple[int | None, str, str]](), not asking
    for _ in range(_MOST_ROUNDS):
        agreed: list[Change] = []
        for fault in _faults(text, name):
            change = fault.change
            mark = (fault.line, change.old, change.new) if change else None
            if change is None or not change.sure or mark is None or mark in refused:
                continue
            _show(fault, change)
            answer = "y" if rest else _answer()
            rest = rest or answer == "a"
            if answer == "n":
                refused.add(mark)
            else:
                agreed.append(change)
        if not agreed:
            break
        made += len(agreed)
        text = rewritten(text, agreed)
        if not (yes or asking):
            break
    return text, made


def _faults(text: str, name: str) -> Sequence[Fault]:
    try:
        read_text(text, name)
    except DesignError as wrong:
        return wrong.faults
    return ()


def _show(fault: Fault, change: Change) -> None:
    names = ", ".join(clean(each) for each in (fault.part, fault.key) if each)
    print(f"line {fault.line}  {names}".rstrip())
    print(f"    {clean(change.old)}  ->  {clean(change.new)}")


def _answer() -> str:
    """Return what is answered: ``y``, ``n``, or ``a`` for this and all that follow."""
    while True:
        print("    put it in? [Y/n/all] ", end="", flush=True)
        answer = input().strip().casefold()
        if answer in {"", "y", "yes", "n", "no", "a", "all"}:
            return answer[:1] or "y"


def _write(file: Path, old: str, new: str, made: int) -> str:
    """Write the new text, the old one beside it; return why it could not be, or nothing."""
    target = file.resolve()
    beside = target.with_name(f"{target.name}.old")
    number = 1
    while beside.exists():
        number += 1
        beside = target.with_name(f"{target.name}.old{number}")
    data = old.encode("utf-8")
    if target.read_bytes() != data:
        return f"{clean(str(file))} was changed meanwhile"
    problem = write(beside, data) or write(target, new, force=True)
    if not problem:
        places = "one place" if made == 1 else f"{made} places"
        print(f"\n{clean(str(file))} is mended in {places}. As it was: {clean(beside.name)}")
    return problem
