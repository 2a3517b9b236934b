"""The file that is open: its text, a mark by which a change is known, and how it is saved."""

import re
from hashlib import sha256
from itertools import count
from pathlib import Path

from ..design.reader.file_text import text_in
from ..design.reader.scan import seen
from ..units.frozen import ByValue
from .commands import Commands

NEW = ""
"""The mark of a file that is not there yet."""


class Text(ByValue, frozen=True):
    """A file's text with line ends alike, and the mark of its bytes."""

    text: str
    mark: str


class ChangedMeanwhileError(Exception):
    """The file is no longer what it was when it was read: nothing was written."""


class NotWrittenError(Exception):
    """Why nothing was written."""


class Opened:
    """The one file that the page reads and writes; None until it has a name.

    Its name comes from the command line, or is a free one in ``folder``: never from the browser.
    """

    def __init__(self, file: Path | None, folder: Path, commands: Commands) -> None:
        self.file = file
        self._folder = folder
        self._commands = commands
        self._own: set[str] = set()

    @property
    def name(self) -> str:
        """Return what the file is called in faults; nothing where it has no name yet."""
        return "" if self.file is None else str(self.file)

    @property
    def folder(self) -> Path:
        """Return the folder of the file, or the one that a new file is written to."""
        return self._folder if self.file is None else self.file.parent

    @property
    def stem(self) -> str:
        """Return what downloads are called by, in letters that any system takes."""
        return "piece" if self.file is None else _plain(self.file.stem)

    def read(self) -> Text:
        """Return the text on the disk and its mark. DesignError where it cannot be read."""
        assert self.file is not None
        text = text_in(self.file, "a design file")
        return Text(seen(text), _mark(text.encode("utf-8")))

    def save(self, text: str, mark: str, called: str) -> str:
        """Write a text where the file is still what ``mark`` says; return its new mark.

        What stood there is kept beside it. A piece without a file is ``called`` so.
        ChangedMeanwhileError, NotWrittenError.
        """
        if self.file is None:
            return self._begin(text, called)
        data = self._as_on_disk(text)
        old = self._bytes()
        if mark != (NEW if old is None else _mark(old)):
            raise ChangedMeanwhileError
        if old is not None and _mark(old) not in self._own:
            self._write(_free(self.file, ".old"), old, False)
        self._write(self.file, data, True)
        return self._mine(data)

    def save_beside(self, text: str) -> str:
        """Write a text under a free name beside the file, and go on with that; return its mark."""
        assert self.file is not None
        data = self._as_on_disk(text)
        other = _numbered(self.file)
        self._write(other, data, False)
        self.file = other
        return self._mine(data)

    def _begin(self, text: str, called: str) -> str:
        file = _numbered(self._folder / f"garden-{_plain(called)}.toml")
        data = text.encode("utf-8")
        self._write(file, data, False)
        self.file = file
        return self._mine(data)

    def _mine(self, data: bytes) -> str:
        """Remember by its mark what this page wrote itself, the last of it only."""
        mark = _mark(data)
        self._own = {mark}
        return mark

    def _write(self, file: Path, data: bytes, over: bool) -> None:
        if problem := self._commands.write(file, data, over):
            raise NotWrittenError(problem)

    def _bytes(self) -> bytes | None:
        assert self.file is not None
        try:
            return self.file.read_bytes()
        except OSError:
            return None

    def _as_on_disk(self, text: str) -> bytes:
        """Return a text in bytes, its line ends and the mark before it as the file has them."""
        old = self._bytes() or b""
        if b"\r\n" in old and b"\n" not in old.replace(b"\r\n", b""):
            text = text.replace("\n", "\r\n")
        before = b"\xef\xbb\xbf" if old.startswith(b"\xef\xbb\xbf") else b""
        return before + text.encode("utf-8")


def _mark(data: bytes) -> str:
    return sha256(data).hexdigest()


def _plain(name: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:40] or "piece"


def _numbered(file: Path) -> Path:
    """Return the name, or the first with a number behind it, that no file has."""
    names = (file.with_name(f"{file.stem}-{k}{file.suffix}") for k in count(2))
    return file if not file.exists() else next(each for each in names if not each.exists())


def _free(file: Path, ending: str) -> Path:
    """Return the first name with an ending behind it that no file has: .old, .old2 and so on."""
    target = file.resolve()
    names = (target.with_name(f"{target.name}{ending}{k if k > 1 else ''}") for k in count(1))
    return next(each for each in names if not each.exists())
