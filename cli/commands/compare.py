"""``yardfast compare FILE [FILE2]``: one piece by every book of wind, or two designs."""

from argparse import Namespace

from ...checks.examination import examine
from ...checks.stated.compared import by_book, comparison_of
from ...design.faults import DesignError, Fault
from ...design.model import Design
from ...report.screens.compared import books, books_object, designs, designs_object
from .. import screen
from ..files.designs import read_with_shop

_DONE = 0


def run(arguments: Namespace) -> int:
    """Compare; return 0. Whether it stands is for ``check`` to say."""
    faults: list[Fault] = []
    read_: list[Design] = []
    for file in [arguments.file, *([arguments.second] if arguments.second is not None else [])]:
        try:
            read_.append(read_with_shop(file))
        except DesignError as error:
            faults += error.faults
    if faults:
        raise DesignError(tuple(faults))
    as_json = arguments.format == "json"
    if arguments.second is None:
        found = by_book(read_[0])
        screen.show_json(books_object(found)) if as_json else screen.show(books(found))
        return _DONE
    one, other = (comparison_of(examine(design)) for design in read_)
    screen.show_json(designs_object(one, other)) if as_json else screen.show(designs(one, other))
    return _DONE
