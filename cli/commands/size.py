"""``yardfast size FILE``: what holds a piece, each way alone; and the changed design written."""

from argparse import Namespace
from collections.abc import Mapping
from pathlib import Path

from ...checks.examination import examine
from ...checks.inputs import read_text
from ...checks.sizing.remedy import RemedyReason, checks_needed, failing
from ...checks.sizing.ways import REMEDY_KINDS, Sizing, remedy_of, size_design
from ...checks.tied import WAY_NAMES
from ...design.faults import DesignError
from ...design.model import Design
from ...report.wording.faults import clean, fault_lines
from ...report.wording.lines import wrapped
from .. import screen
from ..files.designs import read_with_shop
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError

_FOUND, _NONE = 0, 1

_SAID: Mapping[str, str] = {
    **dict.fromkeys(("stake", "stakes", "bolt", "bolts", "anchor", "ground anchors"), "anchors"),
    **dict.fromkeys(("screw anchor", "screw anchors"), "anchors"),
    **dict.fromkeys(("weight", "weights", "ballast bags"), "ballast"),
    **dict.fromkeys(("wider foot", "foot", "foot width", "width"), "base width"),
    **dict.fromkeys(("rope", "ropes", "guy", "guy ropes", "guy lines"), "guys"),
}
"""What the screens and builders say for the kinds of remedy."""

_OF_A_KIND = ("sides", "height", "body", "foot", "walls", "ground", "exposure", "wind")


def run(arguments: Namespace) -> int:
    """Size a file, write it changed, or a kind of piece before there is a file.

    Returns 0 where a remedy exists or none is needed, 1 where none is feasible, 2 for wrong input.
    """
    if problem := _problem(arguments):
        raise RefusedError(problem)
    if arguments.write is not None:
        may_write(arguments.write, None)
    if arguments.kind is not None:
        from ..starting.size_kind import run_kind  # noqa: PLC0415 - a file does without

        return run_kind(arguments)
    if arguments.write is not None:
        return _write(arguments)
    sizing = size_design(read_with_shop(arguments.file), _trying)
    if arguments.format == "json":
        from ...report.screens.sizing_object import sizing_object  # noqa: PLC0415 - text does without

        found = sizing_object(sizing)
        screen.busy("")
        screen.show_json(found)
    else:
        _show(sizing, every=arguments.all)
    return _FOUND if not sizing.found.needs_anchors or sizing.feasible else _NONE


def _trying(kind: str) -> None:
    from ...report.messages.window_messages import WAYS  # noqa: PLC0415 - what is told while it takes long

    screen.busy(f"  trying: {WAYS[kind].casefold()}")


def _show(sizing: Sizing, *, every: bool) -> None:
    """Show foot against weight against stakes, or every way alone."""
    if every:
        from ...report.screens.sizing import sizing_lines  # noqa: PLC0415 - the table does without

        lines = sizing_lines(sizing)
    else:
        from ...report.screens.size_table import size_table  # noqa: PLC0415 - JSON does without

        lines = size_table(sizing)
    screen.busy("")
    screen.show(lines)


def _problem(arguments: Namespace) -> str:
    """Return what is wrong between the options; nothing where they go together."""
    given = [f"--{name}" for name in _OF_A_KIND if getattr(arguments, name) is not None]
    if (arguments.file is None) == (arguments.kind is None):
        return "either a FILE, or --kind with its sizes before there is one"
    if arguments.kind is None and given:
        return f"{given[0]} goes with --kind; in a file it stands in the file"
    if arguments.write is None and arguments.remedy is not None:
        return "--remedy says what --write NEW.toml is to write: name the file as well"
    if arguments.write is None:
        return ""
    if arguments.kind is not None:
        return "--write goes with a FILE; for a kind there is  yardfast new"
    if arguments.format == "json":
        return "--write says in words what it wrote: without --format json, or without --write"
    if arguments.remedy is not None and _kind(arguments.remedy) not in REMEDY_KINDS:
        return _unknown_remedy(arguments.remedy)
    return ""


def _write(arguments: Namespace) -> int:
    """Write the changed design, read it again, and say whether it passes what it should."""
    from ..files.changed_text import changed_text  # noqa: PLC0415 - only where a file is written

    file, name = Path(arguments.write), clean(arguments.write)
    design = read_with_shop(arguments.file)
    if arguments.remedy is None:
        arguments.remedy = _first_way(design)
    kind = _kind(arguments.remedy)
    before, remedy = remedy_of(design, kind)
    if remedy.reason is RemedyReason.NOT_NEEDED:
        print("It stands as it is: nothing has to be changed, so nothing was written.")
        return _FOUND
    if remedy.design is None:
        from ...checks.sizing.why_none import why_none  # noqa: PLC0415 - only where there is none
        from ...report.told.sizing_words import why_no_remedy  # noqa: PLC0415 - as above
        from ...report.wording.amounts import Amounts  # noqa: PLC0415 - as above

        amounts = Amounts(design.units == "metric")
        why = why_no_remedy(why_none(before, remedy), amounts)
        _say(f"{kind} alone is no remedy: {why}. Nothing was written.")
        return _NONE
    try:
        text = changed_text(design, remedy.design, file.parent)
        read_text(text, arguments.write)
    except ValueError as error:
        missing = f"it lacks {clean(str(error), 60)}"
        why_no_remedy = f"{clean(arguments.file)} cannot be changed by itself: {missing}"
        raise RefusedError(why_no_remedy) from None
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        _say(f"{name} could not be read again so: nothing was written.")
        return _NONE
    write_or_refuse(arguments.write, text, None)
    return _checked_again(arguments, name, checks_needed(before))


def _first_way(design: Design) -> str:
    """Return the kind of remedy that the first screen tells to take; anchors where it has none."""
    ways = examine(design).verdict.tied.ways
    return WAY_NAMES.get(ways[0], "anchors") if ways else "anchors"


def _checked_again(arguments: Namespace, name: str, names: frozenset[str]) -> int:
    from ...report.told.passing_words import named, passing  # noqa: PLC0415 - only where one is written

    try:
        found = examine(read_with_shop(arguments.write))
    except DesignError as wrong:
        screen.complain(fault_lines(wrong.faults))
        _say(f"{name} is written, but cannot be read again: do not build from it.")
        return _NONE
    failed = [named(check) for check in failing(found, names)]
    if failed:
        _say(f"{name} is written, but fails: {', '.join(failed)}. Do not build from it.")
        return _NONE
    passed = [check for check in found.checks if check.name in names]
    _say(
        f"{name} is written with the remedy '{_kind(arguments.remedy)}', read again and worked "
        f"out: {passing(passed)}."
    )
    still = [named(check) for check in found.checks if not check.passes]
    if still:
        _say(f"What it does not mend: {', '.join(still)}. 'check' tells of it.")
    print(f"Next: yardfast check {name}")
    return _FOUND


def _say(text: str) -> None:
    screen.show(wrapped(text))


def _kind(word: str) -> str:
    """Return the kind of remedy that a word means; the word itself where it means none."""
    plain = " ".join(word.split()).casefold()
    return _SAID.get(plain, plain)


def _unknown_remedy(word: str) -> str:
    from ...design.reader.near_names import nearest_name  # noqa: PLC0415 - only where something is wrong

    near = nearest_name(word, REMEDY_KINDS)
    hint = f" Did you mean '{near}'?" if near else ""
    return f"{clean(word, 60)!r} is no remedy.{hint} There are: {', '.join(REMEDY_KINDS)}"
