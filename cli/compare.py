"""``yardfast compare FILE [FILE2]``: one piece by every book of wind, or two designs."""

from argparse import Namespace

from ..checks.compared import by_book, compared
from ..checks.examination import examine
from ..design.faults import DesignError
from ..design.model import Design
from ..report.compared import books, books_object, designs, designs_object
from ..report.faults import fault_lines
from . import screen
from .designs import read

DONE, WRONG = 0, 2


def run(arguments: Namespace) -> int:
    """Compare; return 0, or 2 where a file is wrong. Whether it stands is for ``check`` to say."""
    second: str | None = arguments.second
    wrong = False
    read_: list[Design] = []
    for file in [arguments.file, *([second] if second is not None else [])]:
        try:
            read_.append(read(file))
        except DesignError as error:
            screen.complain(fault_lines(error.faults))
            wrong = True
    if wrong:
        return WRONG
    try:
        if second is None:
            found = by_book(read_[0])
        else:
            found = tuple(compared(examine(design)) for design in read_)
    except DesignError as error:
        screen.complain(fault_lines(error.faults))
        return WRONG
    as_json = arguments.format == "json"
    if second is None:
        screen.show_json(books_object(found)) if as_json else screen.show(books(found))
    elif as_json:
        screen.show_json(designs_object(*found))
    else:
        screen.show(designs(*found))
    return DONE
