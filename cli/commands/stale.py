"""``yardfast stale``: which printed sheets no longer say what their designs say now."""

from argparse import Namespace

from ...checks.examination import examine
from ...design.faults import DesignError, Fault
from ...report.printed.printed_sheets import PrintedSheet, is_fingerprint, read_printed
from ...report.printed.stale import SheetComparison, compare_sheet, stale_lines, stale_object
from ...report.wording.faults import fault_lines, fault_object
from .. import screen
from ..files.designs import read_with_shop

HOLDS, STALE, _WRONG = 0, 1, 2


def run(arguments: Namespace) -> int:
    """Compare sheets with their designs; return 0, 1 where one is stale, 2 for wrong input."""
    faults: list[Fault] = []
    found: list[SheetComparison] = []
    for sheet in _sheets(arguments.printed, faults):
        try:
            found.append(compare_sheet(sheet, examine(read_with_shop(sheet.design_file))))
        except DesignError as wrong:
            faults += wrong.faults
    if arguments.format == "json" and (found or not faults):
        wrong = [{"file": fault.file, **fault_object(fault)} for fault in faults]
        screen.show_json({"sheets": [stale_object(each) for each in found], "faults": wrong})
    elif found:
        screen.show(stale_lines(found))
    if faults:
        screen.complain(fault_lines(tuple(dict.fromkeys(faults))))
        return _WRONG
    return STALE if any(each.stale for each in found) else HOLDS


def _sheets(typed: list[str], faults: list[Fault]) -> list[PrintedSheet]:
    """Return the sheets that are meant: rows of tables, or designs with a fingerprint behind."""
    found: list[PrintedSheet] = []
    words = iter(enumerate(typed))
    for i, word in words:
        behind = typed[i + 1] if i + 1 < len(typed) else ""
        if is_fingerprint(behind):
            next(words)
            found.append(PrintedSheet(word, behind.casefold()))
        elif word.casefold().endswith(".toml"):
            hint = f"yardfast stale {word} 0123456789ab"
            expected = "the fingerprint printed on its sheet, behind the design's file"
            faults.append(Fault(word, None, None, None, behind or "no fingerprint", expected, hint))
        elif is_fingerprint(word):
            expected = "the design's file before its fingerprint"
            faults.append(Fault("", None, None, None, word, expected, f"FILE.toml {word}"))
        else:
            try:
                found += read_printed(word)
            except DesignError as wrong:
                faults += wrong.faults
    return found
