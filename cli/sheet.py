"""``yardfast sheet FILE -o OUT.pdf``: the stability sheet for whoever gets the piece."""

from argparse import Namespace

from ..checks.examination import examine
from ..checks.inputs import read
from ..design.faults import DesignError
from ..design.model import Design
from ..report.faults import clean, fault_lines
from ..report.typeset import NoTypesetterError
from . import screen
from .own_files import own_files
from .writing import unwritable, write

WRITTEN, WRONG = 0, 2


def run(arguments: Namespace) -> int:
    """Write the sheet; return 0, or 2 where nothing was written."""
    own = own_files([arguments.file])
    if problem := unwritable(arguments.output, arguments.force, (".pdf",), own):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        paper = arguments.paper or ("a4" if design.units == "metric" else "letter")
        page = _page(design, paper, arguments.full)
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    except NoTypesetterError as missing:
        return _refuse(str(missing))
    if problem := write(arguments.output, page, arguments.force, own):
        return _refuse(problem)
    what = "the calculation" if arguments.full else "one page"
    print(f"{clean(arguments.output)} is written: {what}, {paper}.")
    return WRITTEN


def _page(design: Design, paper: str, full: bool) -> bytes:
    """Return the sheet for a buyer, or the calculation for whoever follows each number."""
    if full:
        from ..report.calculation import calculation  # noqa: PLC0415 - the sheet does without

        return calculation(examine(design), paper)
    from ..report.sheet import sheet  # noqa: PLC0415

    return sheet(examine(design), paper)


def _refuse(message: str) -> int:
    screen.complain([f"yardfast sheet: {message}. Nothing was written."])
    return WRONG
