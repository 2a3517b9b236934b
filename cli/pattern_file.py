"""``yardfast cuts FILE -o OUT.svg``: the full-size pattern written to a file."""

from argparse import Namespace
from pathlib import Path

from ..checks.inputs import read
from ..design.cut_list import cut_list
from ..design.faults import DesignError
from ..design.structure import build_structure
from ..report.faults import clean, fault_lines
from ..report.pattern import Pattern, pattern
from . import screen
from .own_files import own_files
from .written import unwritable, write

WRITTEN, WRONG = 0, 2

KINDS = (".svg", ".dxf")


def write_pattern(arguments: Namespace) -> int:
    """Write the pattern; return 0, or 2 where the file, its name or its kind is wrong."""
    file = Path(arguments.output)
    problem = _problem(arguments, file)
    if problem:
        return _refuse(problem)
    try:
        drawn = pattern(cut_list(build_structure(read(arguments.file)), arguments.count))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    if not drawn.placed:
        return _refuse(f"{clean(arguments.file)} has no panels, boards or plates to draw")
    try:
        text = _drawn(drawn, file.suffix.casefold())
    except ImportError as missing:
        return _refuse(
            f"a pattern needs the package '{missing.name}': run  "
            ".venv/bin/pip install -e '.[sheet]'  where yardfast was set up"
        )
    problem = write(file, text, force=arguments.force, own=own_files([arguments.file]))
    if problem:
        return _refuse(problem)
    kinds = len(drawn.placed)
    print(
        f"{clean(arguments.output)} is written: {kinds} piece{'s' if kinds > 1 else ''} full size, "
        f"{drawn.width:,.0f} by {drawn.height:,.0f} mm.\n"
        "Have it plotted, or print it in tiles, at 100 %; measure the check line before you cut."
    )
    return WRITTEN


def _drawn(drawn: Pattern, kind: str) -> str:
    if kind == ".dxf":
        from ..report.pattern_dxf import pattern_dxf  # noqa: PLC0415 - one of the two is asked for

        return pattern_dxf(drawn)
    from ..report.pattern_svg import pattern_svg  # noqa: PLC0415

    return pattern_svg(drawn)


def _problem(arguments: Namespace, file: Path) -> str:
    """Return what is wrong with the name, before anything is worked out."""
    name = clean(arguments.output, 60)
    if "\0" in arguments.output:
        return f"{name!r} is no name for a file"
    if arguments.format == "json":
        return "--format json prints the list; -o writes a pattern: one of the two"
    if file.suffix.casefold() not in KINDS:
        return f"{name}: a pattern is written as .svg or .dxf, by the end of its name"
    return unwritable(file, force=arguments.force, own=own_files([arguments.file]))


def _refuse(message: str) -> int:
    screen.complain([f"yardfast cuts: {message}. Nothing was written."])
    return WRONG
