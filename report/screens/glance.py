"""What the page tells of a piece: its word, what to do, its numbers, and all else that is told."""

from ...checks.as_one import AsOne
from ...checks.examination import Examination
from ...checks.limits import GREATEST_GUST
from ...checks.stated.cautions import cautions_of
from ...units.frozen import ByValue
from ..advice.what_to_do import ScreenRow
from ..messages import window_messages as messages
from ..told.cautions import cautions
from ..told.facts import facts_of
from ..told.not_checked import not_checked
from ..wording.amounts import Amounts
from ..wording.lines import Mood
from .first_screen import mood_of, todo_and_rest, word_line


class Number(ByValue, frozen=True):
    """One number of a piece: its key, its name and its text."""

    key: str
    name: str
    value: str


class Glance(ByValue, frozen=True):
    """What ``check`` prints of a piece, in its parts: nothing here is worded a second time.

    ``first`` is what to do, the worst first; ``rest`` what else is told on the first screen.
    """

    name: str
    size: str
    word: str
    mood: Mood
    said: str
    look_again: tuple[str, ...]
    first: tuple[ScreenRow, ...]
    rest: tuple[ScreenRow, ...]
    numbers: tuple[Number, ...]
    cautions: tuple[str, ...]
    not_checked: tuple[str, ...]


def glance(found: Examination) -> Glance:
    """Return what is told of a piece."""
    facts, verdict = facts_of(found), found.verdict
    word, said = word_line(verdict, facts)
    first, rest = todo_and_rest(found, verdict, facts)
    return Glance(
        name=facts.name,
        size=facts.size,
        word=word,
        mood=mood_of(verdict.word),
        said=said,
        look_again=facts.look_again,
        first=tuple(first),
        rest=tuple(rest),
        numbers=numbers(found),
        cautions=cautions(cautions_of(found), facts.amounts),
        not_checked=not_checked(verdict.not_looked_at, facts.amounts),
    )


def numbers(found: AsOne) -> tuple[Number, ...]:
    """Return the numbers by which one size is compared with another."""
    amounts = Amounts(found.design.units == "metric")
    limits, structure = found.limits, found.structure
    foot = structure.footprint
    values = {
        "act": limits.act,
        "slides": limits.forecast_sliding,
        "tips": limits.forecast_tipping,
    }
    texts = {key: _gust(gust, amounts, act=key == "act") for key, gust in values.items()}
    texts["push"] = amounts.force(limits.push, "down") if limits.push > 0.0 else ""
    texts["weight"] = amounts.mass(structure.mass("typical"))
    texts["height"] = amounts.length(structure.height)
    if len(foot):
        texts["foot"] = amounts.length(float((foot.max(axis=0) - foot.min(axis=0)).min()))
    names = dict(messages.NUMBERS)
    if found.posts is not None:
        names["tips"] = messages.NUMBERS_POSTS
        texts.pop("slides")
    return tuple(Number(key, names[key], text) for key, text in texts.items() if text)


def _gust(gust: float | None, amounts: Amounts, *, act: bool) -> str:
    if gust is None:
        return messages.NO_GUST.format(most=amounts.gust(GREATEST_GUST))
    return amounts.act(gust) if act else amounts.gust(gust)
