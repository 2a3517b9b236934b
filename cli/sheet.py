"""``yardfast sheet FILE -o OUT.pdf``: the stability sheet for whoever gets the piece."""

from argparse import Namespace

from ..checks.examination import Examination, examine
from ..checks.inputs import read
from ..design.faults import DesignError
from ..report.faults import clean, fault_lines
from ..report.gate import not_ready
from ..report.lines import wrapped
from ..report.typeset import NoTypesetterError
from . import screen
from .own_files import own_files
from .writing import unwritable, write

WRITTEN, NOT_READY, WRONG = 0, 1, 2


def run(arguments: Namespace) -> int:
    """Write the sheet; return 0, 1 where the piece is not ready for a buyer, 2 for wrong input."""
    own = own_files([arguments.file])
    if problem := unwritable(arguments.output, arguments.force, (".pdf",), own):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        found = examine(design)
        if not (arguments.full or arguments.draft) and (why := not_ready(found)):
            return _not_ready(clean(arguments.file), why)
        paper = arguments.paper or ("a4" if design.units == "metric" else "letter")
        page = _page(found, paper, arguments.full)
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


def _page(found: Examination, paper: str, full: bool) -> bytes:
    """Return the sheet for a buyer, or the calculation for whoever follows each number."""
    if full:
        from ..report.calculation import calculation  # noqa: PLC0415 - the sheet does without

        return calculation(found, paper)
    from ..report.sheet import sheet  # noqa: PLC0415

    return sheet(found, paper)


def _not_ready(file: str, why: str) -> int:
    said = f"yardfast sheet: {file} is not ready for a buyer. {why} As a draft: --draft"
    screen.complain([line.text for line in wrapped(said, rest="  ")])
    return NOT_READY


def _refuse(message: str) -> int:
    screen.complain([f"yardfast sheet: {message}. Nothing was written."])
    return WRONG
