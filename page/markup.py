"""What is told of a piece as markup: every word escaped, no style and no script in it."""

from collections.abc import Iterable, Sequence
from html import escape

from ..report.advice.what_to_do import ScreenRow
from ..report.messages import window_messages as messages
from ..report.screens.glance import Glance, Number


def verdict(told: Glance, was: Glance | None) -> str:
    """Return the word, why, and what to do; ``was`` is what is told of the saved design."""
    before = ""
    if was is not None and was.word != told.word:
        words = messages.CHANGES_WORD.format(word=was.word.lower())
        before = f'<span class="was">{escape(words)}</span>'
    look = "".join(f"<p>{escape(note)}</p>" for note in told.look_again)
    again = f'<div class="look-again"><h3>Look again</h3>{look}</div>' if look else ""
    return (
        f'{again}<p class="word {told.mood}"><strong>{escape(told.word)}</strong> '
        f"<span>{escape(told.said)}</span> {before}</p>{rows(told.first)}"
    )


def rows(told: Iterable[ScreenRow]) -> str:
    """Return labelled texts; a row without a label goes on with the one above."""
    items: list[list[str]] = []
    for row in told:
        if row.label or not items:
            items.append([row.label])
        items[-1].append(row.text)
    said = "".join(f"<div><dt>{escape(label)}</dt>{_texts(texts)}</div>" for label, *texts in items)
    return f"<dl>{said}</dl>" if said else ""


def _texts(texts: Iterable[str]) -> str:
    return "".join(f"<dd>{escape(text)}</dd>" for text in texts)


def number_table(told: Sequence[Number], was: Sequence[Number] | None) -> str:
    """Return the numbers as a table, those of the saved design beside the ones that differ."""
    before = {number.key: number.value for number in was or ()}
    cells = [_number(each, before.get(each.key, each.value)) for each in told]
    return f'<dl class="numbers">{"".join(cells)}</dl>'


def _number(each: Number, before: str) -> str:
    was = f'<span class="was">{escape(f"was {before}")}</span>' if before != each.value else ""
    return f"<div><dt>{escape(each.name)}</dt><dd>{escape(each.value)} {was}</dd></div>"


def sentence_list(items: Iterable[str]) -> str:
    """Return sentences as a list."""
    return f"<ul>{''.join(f'<li>{escape(item)}</li>' for item in items)}</ul>"
