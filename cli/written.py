"""A file that a command writes: never over another one unless told to."""

from pathlib import Path

from ..report.faults import clean


def unwritable(name: str, force: bool) -> str:
    """Return why a file cannot be written, before anything is worked out; nothing where it can."""
    if "\0" in name or not name.strip():
        return f"{clean(name, 60)!r} is no name for a file"
    file = Path(name)
    try:
        if file.is_dir():
            return f"{clean(name)} is a folder"
        if not force and (file.exists() or file.is_symlink()):
            return f"{clean(name)} exists already and is kept as it is: another name, or --force"
        if not file.parent.is_dir():
            return f"there is no folder {clean(str(file.parent))}"
    except OSError as error:
        return f"{clean(name, 60)} cannot be written: {error.strerror}"
    return ""


def write(name: str, text: str, force: bool) -> str:
    """Write a file; return why it could not be, nothing where it was."""
    try:
        with Path(name).open("w" if force else "x", encoding="utf-8", newline="") as opened:
            opened.write(text)
    except OSError as error:
        return f"{clean(name)} cannot be written: {error.strerror}"
    return ""
