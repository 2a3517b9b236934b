"""The name of a file that is to be drawn or printed: its ending tells what is written."""

from collections.abc import Sequence
from pathlib import Path

from ..report.faults import clean
from . import written


def unwritable(name: str, force: bool, endings: Sequence[str], own: Sequence[Path]) -> str:
    """Return why a file cannot be written, before anything is worked out; nothing where it can."""
    if "\0" not in name and Path(name).suffix.casefold() not in endings:
        known = " or ".join(endings)
        return f"{clean(name, 60)} does not end in {known}, which tells what is to be written"
    return written.unwritable(Path(name), force=force, own=own)


def write(name: str, content: bytes, force: bool, own: Sequence[Path]) -> str:
    """Write a file whole; return why it could not be, nothing where it was."""
    return written.write(Path(name), content, force=force, own=own)
