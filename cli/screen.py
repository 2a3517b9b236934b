"""Where the answer goes: coloured on a terminal, plain in a pipe, the words the same."""

import json
import os
import shutil
import sys
from collections.abc import Sequence
from typing import Any

from ..report.wording.lines import Line

_STYLES = {
    "title": "bold",
    "bad": "bold red",
    "tie": "bold yellow",
    "good": "bold green",
    "quiet": "dim",
}


def show(lines: Sequence[Line]) -> None:
    """Print lines for people on standard output."""
    if not _has_colour():
        sys.stdout.write("".join(f"{line.text}\n" for line in lines))
        return
    from rich.console import Console  # noqa: PLC0415 - a pipe does without
    from rich.text import Text  # noqa: PLC0415

    console = Console(file=sys.stdout, highlight=False, soft_wrap=True)
    for line in lines:
        text = Text(line.text, style=_STYLES.get(line.mood, ""))
        if line.word is not None:
            word, mood = line.word
            text.highlight_words([word], _STYLES[mood])
        console.print(text)


def screen_columns() -> int:
    """Return how many columns to fill: one less than a terminal has; 79 in a pipe."""
    if not sys.stdout.isatty():
        return 79
    return shutil.get_terminal_size().columns - 1


def show_text(text: str) -> None:
    """Print a text as it is on standard output."""
    sys.stdout.write(text)


def show_json(value: Any) -> None:
    """Print JSON on standard output, in characters that every screen has."""
    json.dump(value, sys.stdout, indent=2, allow_nan=False)
    sys.stdout.write("\n")


def complain(lines: Sequence[str]) -> None:
    """Print what is wrong on standard error."""
    sys.stdout.flush()
    sys.stderr.write("".join(f"{line}\n" for line in lines))


def busy(doing: str) -> None:
    """Tell on a terminal's standard error what is being worked out; the line goes where nothing is.

    Elsewhere nothing is told.
    """
    if sys.stderr.isatty():
        sys.stderr.write(f"\r{doing:<40}" if doing else f"\r{'':<40}\r")
        sys.stderr.flush()


def _has_colour() -> bool:
    plain = os.environ.get("NO_COLOR") or os.environ.get("TERM") == "dumb"
    return sys.stdout.isatty() and not plain
