"""``yardfast sweep FILE --vary 'foot.across=18 in..36 in'``: one design at many sizes."""

from argparse import Namespace
from collections.abc import Sequence
from pathlib import Path

from ..checks.inputs import read
from ..checks.sweep import Swept, Vary, sweep
from ..design.faults import DesignError
from ..design.model import Design
from ..report.cells import as_table
from ..report.faults import clean, fault_lines
from ..report.sweep_words import sweep_cells, sweep_lines, sweep_object
from ..report.typeset import NoTypesetterError, typeset
from . import screen, writing, written
from .own_files import own_files
from .varied import VaryError, varied

DONE, WRONG = 0, 2
ENDINGS = (".svg", ".png", ".pdf")


def run(arguments: Namespace) -> int:
    """Examine a design at many sizes; return 0, or 2 where the file or what is typed is wrong."""
    own = own_files([arguments.file])
    try:
        sizes = varied(arguments.vary, arguments.steps)
    except VaryError as wrong:
        return _refuse(f"{wrong}")
    if problem := _problem(arguments, own):
        return _refuse(problem)
    try:
        design = read(arguments.file)
        swept = tuple(sweep(design, sizes))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        return WRONG
    faulty = [one.found for one in swept if isinstance(one.found, tuple)]
    if len(faulty) == len(swept):
        screen.complain(fault_lines(faulty[0]))
        return WRONG
    if arguments.format == "json":
        screen.show_json(sweep_object(swept, sizes))
    else:
        screen.show(sweep_lines(swept, sizes, design.units == "metric"))
    try:
        problem = _write(arguments, design, swept, sizes, own)
    except NoTypesetterError as missing:
        problem = f"{missing}. An .svg needs nothing more"
    return _refuse(problem) if problem else DONE


def _problem(arguments: Namespace, own: Sequence[Path]) -> str:
    force = arguments.force
    if arguments.output is not None:
        problem = writing.unwritable(arguments.output, force, ENDINGS, own)
        if problem:
            return problem
    if arguments.csv is not None:
        return written.unwritable(Path(arguments.csv), force=force, own=own)
    return ""


def _write(
    arguments: Namespace,
    design: Design,
    swept: Sequence[Swept],
    sizes: Sequence[Vary],
    own: Sequence[Path],
) -> str:
    """Write what is asked for; return why it could not be."""
    if arguments.csv is not None:
        cells = sweep_cells(swept, sizes)
        text = as_table(list(cells[0]), cells)
        if problem := written.write(Path(arguments.csv), text, force=arguments.force, own=own):
            return problem
    if arguments.output is None:
        return ""
    from ..report.drawing_sweep import drawing_sweep  # noqa: PLC0415 - only for a picture

    paper = drawing_sweep(design, swept, sizes)
    svg = paper.svg(design.name)
    ending = Path(arguments.output).suffix.casefold()
    data = {"title": design.name, "width": paper.width, "height": paper.height, "svg": svg}
    if ending == ".svg":
        return writing.write(arguments.output, svg.encode(), arguments.force, own)
    content = typeset("drawing", data, "png" if ending == ".png" else "pdf")
    return writing.write(arguments.output, content, arguments.force, own)


def _refuse(problem: str) -> int:
    screen.complain([f"yardfast sweep: {clean(problem)}. Nothing was written."])
    return WRONG
