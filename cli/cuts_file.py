"""``yardfast cuts FILE -o OUT``: the full-size pattern, or pages to tick off, written to a file."""

from argparse import Namespace
from pathlib import Path

from ..checks.examination import examine
from ..checks.hardware import hardware
from ..checks.inputs import read
from ..design.cut_list import CutList, cut_list
from ..design.faults import DesignError
from ..design.model import Design
from ..design.structure import build_structure
from ..report.faults import clean, fault_lines
from ..report.pattern import Pattern, pattern
from ..report.remark import counted
from ..report.typeset import NoTypesetterError
from . import screen
from .own_files import own_files
from .written import unwritable, write

WRITTEN, NOTHING, WRONG = 0, 1, 2

KINDS = (".pdf", ".svg", ".dxf")


class _NothingError(Exception):
    """There is nothing of the kind to write; the text says of what."""


def write_cuts(arguments: Namespace) -> int:
    """Write what is asked for; return 0, 1 where there is nothing to set out, 2 for wrong input."""
    file = Path(arguments.output)
    if problem := _problem(arguments, file):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        content, said = (_stakes if arguments.stakes else _cuts)(design, file, arguments)
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    except _NothingError as nothing:
        _refuse(str(nothing))
        return NOTHING if arguments.stakes else WRONG
    except NoTypesetterError as missing:
        return _refuse(str(missing))
    except ImportError as missing:
        return _refuse(
            f"a pattern needs the package '{missing.name}': run  "
            ".venv/bin/pip install -e '.[sheet]'  where yardfast was set up"
        )
    problem = write(file, content, force=arguments.force, own=own_files([arguments.file]))
    if problem:
        return _refuse(problem)
    print(f"{clean(arguments.output)} is written: {said}")
    return WRITTEN


def _cuts(design: Design, file: Path, arguments: Namespace) -> tuple[str | bytes, str]:
    """Return the cut list as a page or as a pattern, and what it is."""
    structure = build_structure(design)
    found = hardware(structure, arguments.count)
    cuts = cut_list(structure, arguments.count, found.sawn)
    if file.suffix.casefold() == ".pdf":
        from ..report.saw_page import saw_page  # noqa: PLC0415 - a pattern does without

        said = f"a page to tick off, for {counted(arguments.count, 'piece')}, {_paper(design)}."
        return saw_page(cuts, found, _paper(design)), said
    return _full_size(cuts, file)


def _full_size(cuts: CutList, file: Path) -> tuple[str, str]:
    drawn = pattern(cuts)
    if not drawn.placed:
        raise _NothingError(f"{clean(cuts.design.file)} has no panels, boards or plates to draw")
    return _drawn(drawn, file), f"{counted(len(drawn.placed), 'piece')} {_sized(drawn)}"


def _stakes(design: Design, file: Path, arguments: Namespace) -> tuple[str | bytes, str]:
    """Return where what holds it is set out, as a page of distances or full size."""
    from ..report import stake_places as stakes  # noqa: PLC0415 - a cut list does without

    found = examine(design)
    places = stakes.stake_places(found)
    if places is None:
        raise _NothingError(stakes.nothing_to_set_out(found))
    if file.suffix.casefold() == ".pdf":
        return stakes.stake_page(places, _paper(design)), f"where it is held, {_paper(design)}."
    drawn = stakes.stake_pattern(places)
    return _drawn(drawn, file), f"where it is held, {_sized(drawn)}"


def _sized(drawn: Pattern) -> str:
    return (
        f"full size, {drawn.width:,.0f} by {drawn.height:,.0f} mm.\n"
        "Have it plotted, or print it in tiles, at 100 %; measure the check line before you cut."
    )


def _drawn(drawn: Pattern, file: Path) -> str:
    if file.suffix.casefold() == ".dxf":
        from ..report.pattern_dxf import pattern_dxf  # noqa: PLC0415 - one of the two is asked for

        return pattern_dxf(drawn)
    from ..report.pattern_svg import pattern_svg  # noqa: PLC0415

    return pattern_svg(drawn)


def _paper(design: Design) -> str:
    return "a4" if design.units == "metric" else "letter"


def _problem(arguments: Namespace, file: Path) -> str:
    """Return what is wrong with the name, before anything is worked out."""
    name = clean(arguments.output, 60)
    if "\0" in arguments.output:
        return f"{name!r} is no name for a file"
    if arguments.format == "json":
        return "--format json prints the list; -o writes a pattern or a page: one of the two"
    if file.suffix.casefold() not in KINDS:
        return (
            f"{name}: a pattern is written as .svg or .dxf, a page to tick off as .pdf, by the end "
            "of its name"
        )
    return unwritable(file, force=arguments.force, own=own_files([arguments.file]))


def _refuse(message: str) -> int:
    screen.complain([f"yardfast cuts: {message}. Nothing was written."])
    return WRONG
