"""``yardfast draw FILE``: the drawing of a piece, as a picture file or in characters."""

import sys
from argparse import Namespace
from pathlib import Path

from ..checks.examination import examine
from ..design.faults import DesignError
from ..design.model import Design
from ..design.structure import build_structure
from ..report.faults import clean, fault_lines
from ..report.typeset import NoTypesetterError, typeset
from . import screen
from .designs import read
from .own_files import own_files
from .writing import unwritable, write

DRAWN, WRONG = 0, 2
ENDINGS = (".svg", ".png", ".pdf")


def run(arguments: Namespace) -> int:
    """Draw the file named; return 0, or 2 where it is wrong or nothing could be written."""
    name: str | None = arguments.output
    if name is None and not arguments.text:
        file = clean(arguments.file)
        return _refuse(
            f"as a picture, yardfast draw {file} -o OUT.svg, or in characters, yardfast draw "
            f"{file} --text"
        )
    own = own_files([arguments.file])
    if name is not None and (problem := unwritable(name, arguments.force, ENDINGS, own)):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        if arguments.text:
            from ..report.sketch import sketch  # noqa: PLC0415 - a picture does without

            screen.show(sketch(build_structure(design)))
        if name is not None:
            return _write(name, design, arguments)
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    except NoTypesetterError as missing:
        return _refuse(f"{missing}. An .svg needs nothing more")
    return DRAWN


def _write(name: str, design: Design, arguments: Namespace) -> int:
    own = own_files([arguments.file])
    if problem := write(name, _picture(name, design, arguments.paper), arguments.force, own):
        return _refuse(problem)
    print(f"{clean(name)} is written.")
    return DRAWN


def _picture(name: str, design: Design, paper: str | None) -> bytes:
    """Return the drawing as its file's ending asks."""
    from ..report.drawing import drawing  # noqa: PLC0415 - characters do without

    sheet = drawing(examine(design), paper or ("a4" if design.units == "metric" else "letter"))
    svg = sheet.svg(design.name)
    ending = Path(name).suffix.casefold()
    if ending == ".svg":
        return svg.encode("utf-8")
    data = {"title": design.name, "width": sheet.width, "height": sheet.height, "svg": svg}
    return typeset("drawing", data, "png" if ending == ".png" else "pdf")


def _refuse(message: str) -> int:
    print(f"yardfast draw: {message}. Nothing was written.", file=sys.stderr)
    return WRONG
