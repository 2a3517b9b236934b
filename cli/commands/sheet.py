"""``yardfast sheet FILE... -o OUT``: the stability sheet for whoever gets a piece, one or many."""

from argparse import Namespace
from functools import partial
from pathlib import Path

from ...checks.examination import Examination, examine
from ...report.printed.gate import not_ready
from ...report.wording.faults import clean, fault_lines
from ...report.wording.lines import wrapped
from .. import screen
from ..files.design_files import design_files
from ..files.designs import read_with_shop
from ..files.own_files import own_files
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError, told

_WRITTEN, NOT_READY, _WRONG = 0, 1, 2


def run(arguments: Namespace) -> int:
    """Write the sheets; return 0, 1 where a piece is not ready for a buyer, 2 for wrong input."""
    files, faults = design_files(arguments.files)
    output: str | None = arguments.output
    one = len(files) == 1 and arguments.files == files
    if one and output is not None and not _is_folder(output):
        return _sheet(files[0], output, arguments)
    if faults:
        screen.complain(fault_lines(faults))
    if output is not None and not _is_folder(output):
        raise RefusedError(f"{clean(output)} is one page for {len(files)} designs: name a folder")
    pages = [partial(_sheet, file, _beside(file, output), arguments) for file in files]
    return max([*(told("sheet", page) for page in pages), _WRONG if faults else _WRITTEN])


def _is_folder(name: str) -> bool:
    return "\0" not in name and Path(name).is_dir()


def _beside(file: str, folder: str | None) -> str:
    """Return where the page of a design goes: beside it, or in a folder by the same name."""
    name = Path(file).with_suffix(".pdf")
    return str(name if folder is None else Path(folder) / name.name)


def _sheet(file: str, output: str, arguments: Namespace) -> int:
    """Write one page and say so in a line, or what is in its way."""
    own = own_files([file])
    may_write(output, arguments.force, own, (".pdf",))
    found = examine(read_with_shop(file))
    if not (arguments.full or arguments.draft) and (why := not_ready(found)):
        return _not_ready(clean(file), str(why))
    paper = arguments.paper or ("a4" if found.design.units == "metric" else "letter")
    write_or_refuse(output, _page(found, paper, arguments.full), arguments.force, own)
    what = "the calculation" if arguments.full else f"one page, {found.verdict.word.upper()}"
    print(f"{clean(output)} is written: {what}, {paper}.", flush=True)
    return _WRITTEN


def _page(found: Examination, paper: str, full: bool) -> bytes:
    """Return the sheet for a buyer, or the calculation for whoever follows each number."""
    if full:
        from ...report.calculation.calculation import calculation  # noqa: PLC0415 - the sheet does without

        return calculation(found, paper)
    from ...report.printed.sheet import sheet  # noqa: PLC0415

    return sheet(found, paper)


def _not_ready(file: str, why: str) -> int:
    said = f"yardfast sheet: {file} is not ready for a buyer. {why} As a draft: --draft"
    screen.complain([line.text for line in wrapped(said, rest="  ")])
    return NOT_READY
