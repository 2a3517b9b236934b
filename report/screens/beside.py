"""Text set round a picture that stands at its right: each line as wide as is left there."""

import re
from collections.abc import Sequence

from ..wording.lines import Line, Mood, hard_spaced, soft_spaced

_GAP = 3
_SEVERAL = re.compile(r" {2,}")


class Beside:
    """Lines ``width`` wide beside the rows of a picture, all of these equally wide."""

    def __init__(self, width: int, drawn: Sequence[str]) -> None:
        self._width = width
        self._drawn = list(drawn)
        self._lines: list[str] = []
        self._words: dict[int, tuple[str, Mood]] = {}

    def gap(self) -> None:
        """Leave a line empty."""
        self._lines.append("")

    def clear(self) -> None:
        """Go on below the picture: what follows is not to be broken."""
        self._lines += [""] * (len(self._drawn) - len(self._lines))

    def put(self, first: str, text: str, rest: int, word: tuple[str, Mood] | None = None) -> None:
        """Set a text behind ``first``, further lines ``rest`` columns in; colour a word of it."""
        if word is not None:
            self._words[len(self._lines)] = word
        hard = hard_spaced(_SEVERAL.sub(lambda found: "\N{NO-BREAK SPACE}" * len(found[0]), text))
        line = first
        bare = True
        for item in hard.split(" "):
            if not bare and len(line) + 1 + len(item) > self._room():
                self._lines.append(soft_spaced(line))
                line, bare = " " * rest, True
            line += item if bare else f" {item}"
            bare = False
        self._lines.append(soft_spaced(line))

    def _room(self) -> int:
        """Return how wide the line that is next may be."""
        if len(self._lines) >= len(self._drawn):
            return self._width
        return self._width - len(self._drawn[0]) - _GAP

    def lines(self) -> list[Line]:
        """Return the lines, the picture beside them."""
        texts = list(self._lines)
        texts += [""] * (len(self._drawn) - len(texts))
        for i, row in enumerate(self._drawn):
            texts[i] = f"{texts[i]:<{self._width - len(row)}}{row}"
        return [Line(text.rstrip(), word=self._words.get(i)) for i, text in enumerate(texts)]
