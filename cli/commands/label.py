"""``yardfast label FILE...``: text for a listing, of one design or of a whole folder."""

import json
from argparse import Namespace
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from ...checks.examination import examine
from ...design.faults import DesignError, Fault
from ...report.printed.gate import not_ready
from ...report.printed.label import Label, Refusal, label
from ...report.wording.faults import clean, fault_lines, fault_object
from .. import screen
from ..files.design_files import design_files
from ..files.designs import read_with_shop, shop_of
from ..files.own_files import own_files
from ..files.writing import may_write, write_or_refuse
from ..refused import RefusedError

_GIVEN, _REFUSED, _WRONG = 0, 1, 2

_Found = Label | Refusal | tuple[Fault, ...]


_FORMATS = {".txt": "text", ".csv": "csv", ".json": "json"}
"""By the ending of the file to write."""


def run(arguments: Namespace) -> int:
    """Make the texts of the files named; return 0, 1 where one is refused, 2 for wrong input."""
    output: str | None = arguments.output
    ending = Path(output or "").suffix.casefold()
    if output is not None and (ending == ".toml" or not (arguments.format or ending in _FORMATS)):
        raise RefusedError(f"{clean(output)} does not end in {' or '.join(_FORMATS)}")
    arguments.format = arguments.format or _FORMATS.get(ending, "text")
    files, faults = design_files(arguments.files)
    if output is not None:
        may_write(output, arguments.force, own_files(files))
    found = [_found(file, arguments.draft) for file in files]
    labels = [each for each in found if isinstance(each, Label)]
    alone = len(found) == 1 and len(arguments.files) == 1 and arguments.files == files
    shown = labels or (arguments.format == "json" and (found and not _all_wrong(found, alone)))
    if shown:
        _hand_out(arguments, files, found, labels, alone)
    _complain(found, faults)
    if faults or any(isinstance(each, tuple) for each in found):
        return _WRONG
    return _REFUSED if any(isinstance(each, Refusal) for each in found) else _GIVEN


def _found(file: str, draft: bool) -> _Found:
    """Return what there is to say of a file, marked as a draft where it may not be sold."""
    try:
        examined, shop = examine(read_with_shop(file)), shop_of(file)
        why = not_ready(examined)
        if why and not draft:
            return Refusal(examined.design, "", str(why))
        return label(examined, shop, draft=bool(why))
    except DesignError as wrong:
        return wrong.faults


def _all_wrong(found: Sequence[_Found], alone: bool) -> bool:
    return alone and isinstance(found[0], tuple)


def _hand_out(
    arguments: Namespace,
    files: Sequence[str],
    found: Sequence[_Found],
    labels: Sequence[Label],
    alone: bool,
) -> None:
    """Print the texts or write them."""
    if arguments.format == "json":
        objects = [_object(file, each) for file, each in zip(files, found, strict=True)]
        whole = objects[0] if alone else objects
        text = json.dumps(whole, indent=2, allow_nan=False) + "\n"
    elif arguments.format == "csv":
        from ...report.printed.label_rows import label_csv  # noqa: PLC0415 - text does without

        text = label_csv(labels)
    else:
        from ...report.printed.label_lines import label_lines  # noqa: PLC0415 - programs do without

        lines = label_lines(labels)
        if arguments.output is None:
            screen.show(lines)
            return
        text = "".join(f"{line.text}\n" for line in lines)
    if arguments.output is None:
        screen.show_text(text)
        return
    write_or_refuse(arguments.output, text, arguments.force, own_files(files))
    many = f"{len(labels)} design{'s' if len(labels) != 1 else ''}"
    print(f"{clean(arguments.output)} is written, with the texts of {many}.")
    if arguments.format == "csv":
        print(f"Are the prints current, later on:  yardfast stale {clean(arguments.output)}")


def _object(file: str, found: _Found) -> dict[str, Any]:
    from ...report.printed.label_rows import label_object  # noqa: PLC0415 - text does without

    if isinstance(found, tuple):
        return {"file": clean(file), "faults": [fault_object(fault) for fault in found]}
    return label_object(found)


def _complain(found: Sequence[_Found], faults: tuple[Fault, ...]) -> None:
    """Say on standard error what is wrong, refused or left out; the faults of a shop once."""
    from ...report.printed.label_lines import left_out_lines, refusal_lines  # noqa: PLC0415

    for each in dict.fromkeys(
        each for each in (*found, faults) if isinstance(each, tuple) and each
    ):
        screen.complain(fault_lines(each))
    for each in found:
        if isinstance(each, Refusal):
            screen.complain(refusal_lines(each))
        elif isinstance(each, Label):
            screen.complain(left_out_lines(each))
