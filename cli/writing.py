"""Writing a file that somebody named: never over another one, unless that is asked for."""

from collections.abc import Sequence
from pathlib import Path

from ..report.faults import clean


def unwritable(name: str, force: bool, endings: Sequence[str]) -> str:
    """Return why a file cannot be written, before anything is worked out; nothing where it can."""
    shown = clean(name, 60)
    if "\0" in name:
        return f"{shown!r} is no name for a file"
    file = Path(name)
    if file.suffix.casefold() not in endings:
        known = " or ".join(endings)
        return f"{shown} does not end in {known}, which tells what is to be written"
    try:
        if file.is_dir():
            return f"{shown} is a folder"
        if (file.exists() or file.is_symlink()) and not force:
            return f"{shown} exists already and is kept as it is: another name, or --force"
        if not file.parent.is_dir():
            return f"there is no folder {clean(str(file.parent), 60)}"
    except OSError as error:
        return f"{shown} cannot be written: {error.strerror}"
    return ""


def write(name: str, content: bytes, force: bool) -> str:
    """Write a file whole; return why it could not be, nothing where it was."""
    try:
        with Path(name).open("wb" if force else "xb") as opened:
            opened.write(content)
    except OSError as error:
        return f"{clean(name, 60)} cannot be written: {error.strerror}"
    return ""
