"""``yardfast check FILE...``: read, examine, report; the exit status is the worst of all."""

from argparse import Namespace
from typing import Any

from ..checks.examination import Examination, examine
from ..checks.inputs import read
from ..design.faults import DesignError, Fault
from ..report.faults import clean, fault_lines, fault_object
from ..report.lines import Line
from . import screen

PASSES, FAILS, WRONG = 0, 1, 2

Found = Examination | tuple[Fault, ...]


def run(arguments: Namespace) -> int:
    """Check the files named; return 0 all passes, 1 something does not, 2 a file is wrong."""
    files: list[str] = arguments.files
    if len(files) > 1:
        from .design_files import without_shop  # noqa: PLC0415 - one file does without

        files = without_shop(files)
    found = [_examined(file) for file in files]
    faults = [fault for each in found if isinstance(each, tuple) for fault in each]
    if arguments.format == "json":
        _show_json(files, found)
    else:
        _show_text(arguments, [each for each in found if isinstance(each, Examination)], len(files))
    if faults:
        for each in found:
            if isinstance(each, tuple):
                screen.complain(fault_lines(each, every=getattr(arguments, "all", False)))
        return WRONG
    return max(PASSES if each.passes else FAILS for each in found if isinstance(each, Examination))


def _examined(file: str) -> Found:
    try:
        return examine(read(file))
    except DesignError as wrong:
        return wrong.faults


def _show_text(arguments: Namespace, found: list[Examination], asked: int) -> None:
    from ..report.sections import Shown, shown_of  # noqa: PLC0415 - JSON does without

    if not found:
        return
    shown = Shown(
        numbers=arguments.numbers,
        as_read=arguments.as_read,
        assumed=arguments.assumed,
        cautions=arguments.cautions,
        everything=arguments.all,
        engineer=arguments.engineer,
    )
    columns = screen.columns()
    if asked == 1:
        screen.show(shown_of(found[0], shown, columns))
        return
    from ..report.folder import folder  # noqa: PLC0415 - one file does without

    lines = folder(found, asked - len(found))
    if not shown.nothing:
        for each in found:
            lines += [Line(""), Line(""), *shown_of(each, shown, columns)]
    screen.show(lines)


def _show_json(files: list[str], found: list[Found]) -> None:
    objects = [_object(file, each) for file, each in zip(files, found, strict=True)]
    if len(files) > 1:
        screen.show_json(objects)
    elif isinstance(found[0], Examination):
        screen.show_json(objects[0])


def _object(file: str, found: Found) -> dict[str, Any]:
    from ..report.result import Result  # noqa: PLC0415 - text does without

    if isinstance(found, tuple):
        return {"file": clean(file), "faults": [fault_object(fault) for fault in found]}
    return Result(found).to_dict()
