"""``yardfast cuts FILE -o OUT``: the full-size pattern, or pages to tick off, written to a file."""

from argparse import Namespace
from pathlib import Path

from ...checks.examination import examine
from ...checks.inputs import read
from ...checks.stated.hardware import hardware
from ...design.cutting.cut_list import CutList, cut_list
from ...design.model import Design
from ...design.structure import build_structure
from ...report.patterns.pattern import Pattern, pattern
from ...report.wording.faults import clean
from ...report.wording.remark import counted
from ..refused import RefusedError
from .own_files import own_files
from .writing import may_write, write_or_refuse

_WRITTEN, _NOTHING = 0, 1
_KINDS = (".pdf", ".svg", ".dxf")


def write_cuts(arguments: Namespace) -> int:
    """Write what is asked for; return 0. Refused with 1 where there is nothing to set out."""
    name, own = arguments.output, own_files([arguments.file])
    if arguments.format == "json":
        raise RefusedError(
            "--format json prints the list; -o writes a pattern or a page: one of the two"
        )
    file = Path(name)
    if "\0" not in name and file.suffix.casefold() not in _KINDS:
        raise RefusedError(
            f"{clean(name, 60)}: a pattern is written as .svg or .dxf, a page to tick off as .pdf, "
            "by the end of its name"
        )
    may_write(name, arguments.force, own)
    design = read(arguments.file)
    try:
        content, said = (_stakes if arguments.stakes else _cuts)(design, file, arguments)
    except ImportError as missing:
        raise RefusedError(
            f"a pattern needs the package '{missing.name}': run  "
            ".venv/bin/pip install -e '.[sheet]'  where yardfast was set up"
        ) from None
    write_or_refuse(name, content, arguments.force, own)
    print(f"{clean(name)} is written: {said}")
    return _WRITTEN


def _cuts(design: Design, file: Path, arguments: Namespace) -> tuple[str | bytes, str]:
    """Return the cut list as a page or as a pattern, and what it is."""
    structure = build_structure(design)
    found = hardware(structure, arguments.count)
    cuts = cut_list(structure, arguments.count, found.sawn)
    if file.suffix.casefold() == ".pdf":
        from ...report.printed.saw_page import saw_page  # noqa: PLC0415 - a pattern does without

        said = f"a page to tick off, for {counted(arguments.count, 'piece')}, {_paper(design)}."
        return saw_page(cuts, found, _paper(design)), said
    return _full_size(cuts, file)


def _full_size(cuts: CutList, file: Path) -> tuple[str, str]:
    drawn = pattern(cuts)
    if not drawn.placed:
        raise RefusedError(f"{clean(cuts.design.file)} has no panels, boards or plates to draw")
    return _drawn(drawn, file), f"{counted(len(drawn.placed), 'piece')} {_sized(drawn)}"


def _stakes(design: Design, file: Path, arguments: Namespace) -> tuple[str | bytes, str]:
    """Return where what holds it is set out, as a page of distances or full size."""
    from ...report.printed import stake_places as stakes  # noqa: PLC0415 - a cut list does without

    found = examine(design)
    places = stakes.stake_places(found)
    if places is None:
        raise RefusedError(
            stakes.nothing_to_set_out(found.design, found.verdict.word), status=_NOTHING
        )
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
        from ...report.patterns.pattern_dxf import pattern_dxf  # noqa: PLC0415 - one of the two is asked for

        return pattern_dxf(drawn)
    from ...report.patterns.pattern_svg import pattern_svg  # noqa: PLC0415

    return pattern_svg(drawn)


def _paper(design: Design) -> str:
    return "a4" if design.units == "metric" else "letter"
