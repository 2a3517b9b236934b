"""What is wrong with an input, as data: file, line, part, key, found, expected, hint."""

from ..units.frozen import ByValue


class Change(ByValue, frozen=True):
    """What a person would type instead: the text from ``start`` to ``end`` becomes ``new``.

    Places count in the text as the reader sees it (``scan.seen``), ``old`` stands there. ``sure``
    where what was written can mean nothing else.
    """

    start: int
    end: int
    old: str
    new: str
    sure: bool


class Fault(ByValue, frozen=True):
    """One thing in an input that a person has to mend, in that person's words.

    ``found`` is the user's own text, ``expected`` what belongs there, ``hint`` the nearest right
    spelling or the way out. ``line`` counts from 1; ``None`` where there is no single line.
    ``change`` is what to type, where that is known; ``missing`` where nothing was written.
    """

    file: str
    line: int | None
    part: str | None
    key: str | None
    found: str
    expected: str
    hint: str = ""
    change: Change | None = None
    missing: bool = False


class DesignError(Exception):
    """The input cannot be used; ``faults`` holds everything that is wrong with it.

    >>> try:
    ...     yf.read("no-such-file.toml")
    ... except yf.DesignError as wrong:
    ...     print(wrong.faults[0].found)
    no such file
    """

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__(f"{len(faults)} fault(s) in {faults[0].file if faults else 'the input'}")
        self.faults = faults

    def __reduce__(self) -> tuple[type["DesignError"], tuple[tuple[Fault, ...]]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.faults,)
