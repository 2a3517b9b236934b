"""``yardfast sheet FILE -o OUT.pdf``: the stability sheet for whoever gets the piece."""

from argparse import Namespace

from ..checks.examination import examine
from ..checks.inputs import read
from ..design.faults import DesignError
from ..report.faults import clean, fault_lines
from ..report.sheet import sheet
from ..report.typeset import NoTypesetterError
from . import screen
from .writing import unwritable, write

WRITTEN, WRONG = 0, 2


def run(arguments: Namespace) -> int:
    """Write the sheet; return 0, or 2 where nothing was written."""
    if problem := unwritable(arguments.output, arguments.force, (".pdf",)):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        paper = arguments.paper or ("a4" if design.units == "metric" else "letter")
        page = sheet(examine(design), paper)
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    except NoTypesetterError as missing:
        return _refuse(str(missing))
    if problem := write(arguments.output, page, arguments.force):
        return _refuse(problem)
    print(f"{clean(arguments.output)} is written: one page, {paper}.")
    return WRITTEN


def _refuse(message: str) -> int:
    screen.complain([f"yardfast sheet: {message}. Nothing was written."])
    return WRONG
