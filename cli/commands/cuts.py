"""``yardfast cuts FILE``: what to saw and to buy, or where it is held; ``-o`` writes it."""

from argparse import Namespace

from ...checks.inputs import read
from ...checks.stated.hardware import hardware
from ...design.cutting.cut_list import cut_list
from ...design.model import Design
from ...design.structure import build_structure
from .. import screen
from ..refused import RefusedError

_SHOWN, _NOTHING = 0, 1


def run(arguments: Namespace) -> int:
    """Show or write what is asked for; return 0. Refused with 1 where nothing is set out."""
    if arguments.output is not None:
        from ..files.cuts_file import write_cuts  # noqa: PLC0415 - the list does without

        return write_cuts(arguments)
    design = read(arguments.file)
    return (_stakes if arguments.stakes else _cuts)(design, arguments)


def _cuts(design: Design, arguments: Namespace) -> int:
    structure = build_structure(design)
    bought = hardware(structure, arguments.count)
    cuts = cut_list(structure, arguments.count, bought.sawn)
    if arguments.format == "json":
        from ...report.data.cut_object import cut_object  # noqa: PLC0415 - text does without

        screen.show_json(cut_object(cuts, bought))
    else:
        from ...report.printed.cut_lines import cut_lines  # noqa: PLC0415 - JSON does without

        screen.show(cut_lines(cuts, bought))
    return _SHOWN


def _stakes(design: Design, arguments: Namespace) -> int:
    from ...checks.examination import examine  # noqa: PLC0415 - a cut list does without
    from ...report.printed import stake_places as stakes  # noqa: PLC0415

    found = examine(design)
    places = stakes.stake_places(found)
    if places is None:
        raise RefusedError(
            f"{stakes.nothing_to_set_out(found.design, found.verdict.word)}.", "", _NOTHING
        )
    if arguments.format == "json":
        screen.show_json(stakes.stake_object(places))
    else:
        screen.show(stakes.stake_lines(places))
    return _SHOWN
