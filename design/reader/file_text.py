"""The text of a file that people wrote, or what keeps it from being read."""

from pathlib import Path

from ..bounds import MOST_BYTES
from ..faults import DesignError, Fault
from .near_names import meant
from .typed_text import shown

_OPEN_ALREADY = ("/dev/", "/proc/")
"""Where pipes lie that something writes to at this moment, such as what a shell puts in place."""


def text_in(path: str | Path, what: str) -> str:
    """Return a file's text; ``what`` is the kind of file that is meant, such as "a design file".

    Raises DesignError where there is no such file, where it is a pipe with a name, which nobody may
    ever write to, or where its bytes are no text of at most 1 MB.
    """
    file = str(path)
    name = f"the name of {what}"
    try:
        if Path(path).is_fifo() and not file.startswith(_OPEN_ALREADY):
            raise unreadable(file, "a pipe, which may never end", name)
        with Path(path).open("rb") as opened:
            raw = opened.read(MOST_BYTES + 1)
    except FileNotFoundError:
        raise unreadable(file, "no such file", name, _neighbour(path)) from None
    except IsADirectoryError:
        hint = "name one of the .toml files in it"
        raise unreadable(file, "a folder", name, hint) from None
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) and error.strerror else "unreadable"
        raise unreadable(file, shown(reason), "a file that can be read") from None
    if len(raw) > MOST_BYTES:
        raise unreadable(file, "more than 1 MB", f"{what} of at most 1 MB")
    return _decoded(raw, file)


def unreadable(file: str, found: str, expected: str, hint: str = "") -> DesignError:
    """Return the error of a file that cannot be used as a whole."""
    return DesignError((Fault(file, None, None, None, found, expected, hint),))


def _decoded(raw: bytes, file: str) -> str:
    """Return the text of a file's bytes. DesignError where they are not UTF-8."""
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise unreadable(file, "text in UTF-16", "text in UTF-8", "save it as UTF-8")
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as error:
        line = raw.count(b"\n", 0, error.start) + 1
        around = raw.splitlines()[line - 1] if raw.splitlines() else b""
        found = shown(around.decode("utf-8", "backslashreplace").strip())
        fault = Fault(file, line, None, None, found, "text in UTF-8", "save it as UTF-8")
        raise DesignError((fault,)) from None


def _neighbour(path: str | Path) -> str:
    """Return a hint naming the file beside it that is spelt most alike."""
    folder = Path(path).parent
    try:
        names = [each.name for each in folder.iterdir() if each.suffix == ".toml"]
    except OSError:
        return ""
    return meant(Path(path).name, names)
