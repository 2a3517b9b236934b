"""What a typed answer means, by its kind: lengths, widths, walls, lumber, gusts, choices."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from .. import units
from ..design.bounds import BLADES, COUNT, SIDES, SIZE, WIND, YEARS
from ..design.builder_words import MATERIAL_WORDS
from ..design.near_names import alone, listed, misspelt, nearest, plain, same
from ..design.sizes import flats_from_points, flats_from_side
from .expressions import Value
from .written_sizes import is_metric, size

LEFT_OPEN = "left open"
"""What "don't know" takes where the file can do without."""

_LONGEST, _MOST_TEXT = 60, 200
_OVER = {
    **dict.fromkeys(("flats", "flat"), ""),
    **dict.fromkeys(("points", "point", "corners"), "_points"),
    **dict.fromkeys(("panels", "panel", "side", "edge"), "_side"),
}
_BARE = re.compile(r"\s*(\d+(?:\.\d+)?|(?:\d+[ -])?\d+/\d+)\s*", re.ASCII)
_SIDES = {"round": 0, "square": 4, "hexagon": 6, "octagon": 8, "four": 4, "six": 6, "eight": 8}


class AnswerError(Exception):
    """An answer that cannot be taken: what was read, what is expected, a hint."""

    def __init__(self, found: str, expected: str, hint: str = "") -> None:
        super().__init__(
            f"read {shown(found)}, expected {expected}" + (f": {hint}" if hint else "")
        )
        self.found = found
        self.expected = expected
        self.hint = hint

    def __reduce__(self) -> tuple[type["AnswerError"], tuple[str, str, str]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.found, self.expected, self.hint)


class Choice(NamedTuple):
    """One of several answers: its word for the file, and what it says to people."""

    word: str
    says: str


class Slot(NamedTuple):
    """One thing answered: text as the file takes it, and its worth (a length in m)."""

    text: str
    value: Value


@dataclass(frozen=True)
class Answers:
    """What has been answered, by slot: text as the file takes it, and its worth.

    The first length answered says whether the piece is built in metric sizes (``metric``).
    """

    texts: Mapping[str, str]
    values: Mapping[str, Value]
    sized: bool = False

    @staticmethod
    def none(metric: bool) -> "Answers":
        """Return no answers yet."""
        return Answers({}, {"metric": float(metric)})


class _Asked(NamedTuple):
    """What a reader knows: the slot, the default's own text, the choices, earlier answers."""

    slot: str
    default: str
    choices: Sequence[Choice]
    answers: Answers
    said: list[str]


Found = dict[str, Slot]
Reader = Callable[[str, _Asked], Found]


def read(
    takes: str, slot: str, text: str, default: str, choices: Sequence[Choice], answers: Answers
) -> tuple[Found, str]:
    """Return what an answer of a kind means, and what is to be said of how it was read.

    Raises AnswerError for what it cannot mean; KeyError for an unknown kind.
    """
    asked = _Asked(slot, default, choices, answers, [])
    found = _READERS[takes](text, asked)
    return found, " ".join(asked.said)


def with_answer(answers: Answers, found: Found) -> Answers:
    """Return answers with one more."""
    texts = {**answers.texts, **{name: each.text for name, each in found.items()}}
    values = {**answers.values, **{name: each.value for name, each in found.items()}}
    lengths = [
        text for text, value in found.values() if isinstance(value, float) and text[-1:].isalpha()
    ]
    if not answers.sized and lengths:
        values["metric"] = float(is_metric(lengths[0]))
    return Answers(texts, values, answers.sized or bool(lengths))


def shown(text: str) -> str:
    """Return a typed text between quote marks, cut short, without control characters."""
    clean = "".join(each if each.isprintable() else "?" for each in text)
    return repr(clean if len(clean) <= _LONGEST else clean[: _LONGEST - 1] + "…")


def speed(text: str) -> float:
    """Return a wind speed in m/s. Raises AnswerError."""
    return _gust(text, "")[1]


# --- lengths ----------------------------------------------------------------------------------


def _length(text: str, unit_of: str = "", said: list[str] | None = None) -> Slot:
    """Return a length; a bare number takes the unit of ``unit_of``, where that makes sense."""
    text = _with_unit(text, unit_of, "length", said)
    value = _quantity(text, "length")
    if not SIZE.hold(value):
        raise AnswerError(text, SIZE.words)
    line = " ".join(text.split())
    if not re.fullmatch(r"[\w ./-]+", line, re.ASCII):
        line = size(value, is_metric(line), 64)
    return Slot(line, value)


def _with_unit(text: str, unit_of: str, kind: str, said: list[str] | None) -> str:
    """Return a bare number with the unit of a default that is some such length, and say so."""
    bare = _BARE.fullmatch(text)
    unit = re.search(r"[a-z/]+$", unit_of)
    if bare is None or unit is None or said is None:
        return text
    whole = f"{bare[1]} {unit[0]}"
    ratio = _quantity(whole, kind) / _quantity(unit_of, kind)
    if not 0.2 <= ratio <= 5.0:
        return text
    said.append(f"Read as {whole}.")
    return whole


def _quantity(text: str, kind: str) -> float:
    try:
        return units.read(text, kind).value
    except units.UnitError as error:
        raise AnswerError(error.found, error.expected, error.hint) from None


def _one(text: str, asked: _Asked) -> Found:
    return {asked.slot: _length(text, asked.default, asked.said)}


def _or_none(text: str, asked: _Asked) -> Found:
    """Read a length, or that there is none."""
    if plain(text) in {"no", "none", "0", "n", "without"}:
        return {asked.slot: Slot("none", 0.0)}
    return _one(text, asked)


def _several(text: str, asked: _Asked) -> Found:
    """Read as many lengths as the slot has names."""
    names = asked.slot.split(",")
    found, defaults = _with_last_unit(_split(text)), _split(asked.default)
    if len(found) != len(names):
        count = {2: "two", 3: "three"}[len(names)]
        raise AnswerError(text, f"{count} lengths parted by a comma, such as '{asked.default}'")
    return {
        name: _length(each, default, asked.said)
        for name, each, default in zip(names, found, defaults, strict=True)
    }


def _with_last_unit(pieces: list[str]) -> list[str]:
    """Return lengths of which the bare ones have the unit of the last: ``900 x 400 mm``."""
    unit = re.search(r"\d\s*([a-z]+|\"|')$", pieces[-1].casefold())
    return [f"{each} {unit[1]}" if unit and _BARE.fullmatch(each) else each for each in pieces]


def _widths(text: str, asked: _Asked) -> Found:
    """Read a body's width at bottom and top, or one for both, over flats, points or one panel."""
    words = text.replace("over ", "").rsplit(None, 1)
    over = _OVER.get(words[-1].casefold().strip("()")) if len(words) == 2 else None
    found = _with_last_unit(_split(words[0] if over is not None else text))
    if len(found) > 2 or not found[0]:
        raise AnswerError(text, "a width at the bottom and one at the top, such as '18 in, 10 in'")
    number = int(asked.answers.values.get("sides", 4))
    if over and number == 0:
        raise AnswerError(text, "two diameters: it is round")
    if over == "_points" and number % 2:
        expected = f"widths over flats, or of one panel: {number} sides have no points opposite"
        raise AnswerError(text, expected)
    defaults = _split(asked.default)
    ends: Found = {"over": Slot(over or "", "")}
    for end, each, default in (
        ("bottom", found[0], defaults[0]),
        ("top", found[-1], defaults[-1]),
    ):
        taken = _length(each, default, asked.said)
        flats = _flats(taken.value, over or "", number)
        if not SIZE.hold(flats):
            raise AnswerError(text, f"a width of {SIZE.words} over flats")
        ends[end] = Slot(taken.text, flats)
    return ends


def _flats(value: Value, over: str, sides: int) -> float:
    width = float(value)
    if over == "_points":
        return flats_from_points(width, sides)
    return flats_from_side(width, sides) if over == "_side" else width


def _split(text: str, sticks: bool = False) -> list[str]:
    """Return what is parted by commas, 'and' or 'to', or by 'x' where no lumber is named."""
    between = r"(?<!\d),\s*|,\s+|;|\s+(?:and|to)\s+"
    if not sticks:
        between += r"|(?<=[\w\"'])\s*[x×]\s*(?=\d)|\s+by\s+"
    return [piece.strip() for piece in re.split(between, text)]


# --- numbers, materials, lumber -----------------------------------------------------------------


def _whole(text: str) -> int | None:
    line = text.strip()
    return int(line) if line.isascii() and line.isdigit() and len(line) < 7 else None


def _sides(text: str, asked: _Asked) -> Found:
    word = text.casefold().strip()
    number = _SIDES.get(word, _whole(re.sub(r"[\s-]*sid(?:es?|ed)$", "", word)))
    if number is None or not SIDES.hold(number):
        raise AnswerError(text, f"a number of sides, {SIDES.words}")
    return {asked.slot: Slot(str(number), number)}


def _count(text: str, asked: _Asked) -> Found:
    number = _whole(text)
    if number is None or not COUNT.hold(number):
        raise AnswerError(text, f"a whole number, {COUNT.words}")
    return {asked.slot: Slot(str(number), number)}


def _wheel(text: str, asked: _Asked) -> Found:
    """Read a wheel: its width over all and the number of its blades."""
    found = _split(text)
    number = _whole(re.sub(r"\s*blades?$", "", found[-1])) if len(found) == 2 else None
    if number is None or not BLADES.hold(number):
        raise AnswerError(text, f"its width over all and its blades, such as '{asked.default}'")
    across = _length(found[0], _split(asked.default)[0], asked.said)
    return {"across": across, "blades": Slot(str(number), number)}


def _walls(text: str, asked: _Asked) -> Found:
    """Read what a wall is of: a sheet as sold, or a thickness of a material."""
    from ..design.stock import sheet_thickness  # noqa: PLC0415 - tables, only where asked
    from ..materials.stock import sheet_thicknesses  # noqa: PLC0415

    thick = re.match(r"[\d\s/.-]+(?:in|mm)?", asked.default)
    usual = thick[0].strip() if thick else ""
    slip = misspelt(text, sheet_thicknesses()) or text
    tries = (text, slip, f"{text} plywood", f"{usual} {text}")
    sheet = next((found for each in tries if (found := sheet_thickness(each))), None)
    if sheet is not None:
        name, value = sheet
        if plain(name) != plain(text):
            asked.said.append(f"Read as {name}.")
        return _wall_slots(asked.slot, Slot(name, value), "stock", _sheet_material(name))
    found = re.fullmatch(
        r"([\d\s./⁄¼-¾⅐-⅞-]+(?:in|inch|mm|cm|[\"”″])[.,]?)\s*(?:of\s+)?(\D+)", text
    )
    if found:
        wall = _length(found[1].rstrip(".,"))
        return _wall_slots(asked.slot, wall, "", _material_named(found[2]))
    if text[:1].isdigit():
        expected = f"a sheet as sold, such as '{asked.default}', or '3/4 in western redcedar'"
        raise AnswerError(text, expected)
    of = _material_named(text)
    wall = _length(usual if usual[-1:].isalpha() else f"{usual} in")
    asked.said.append(f"Read as {wall.text} {of}.")
    return _wall_slots(asked.slot, wall, "", of)


def _wall_slots(slot: str, wall: Slot, key: str, of: str) -> Found:
    return {slot: wall, f"{slot}_key": Slot(key, key), "material": Slot(of, of)}


def _sheet_material(sheet: str) -> str:
    if sheet.endswith("OSB"):
        return "OSB"
    return "marine plywood" if "marine" in sheet else "softwood plywood"


def _material(text: str, asked: _Asked) -> Found:
    name = _material_named(text)
    return {asked.slot: Slot(name, name)}


def _material_named(text: str) -> str:
    from .. import materials  # noqa: PLC0415 - tables, only where asked

    names = materials.names()
    words = {plain(word): answer for word, answer in MATERIAL_WORDS.items()}
    answer = words.get(plain(text)) or words.get(misspelt(text, words) or "", "")
    name = same(text, names) or alone(answer) or misspelt(text, names)
    if name is not None:
        return name
    near = nearest(text, names)
    if answer:
        raise AnswerError(text, "one material", answer)
    raise AnswerError(text, f"one of {listed(names)}", f"'{near}'?" if near else "")


def _stick(text: str, asked: _Asked) -> Found:
    """Read lumber that stands: its wide side is turned to the front."""
    name, _ = _lumber(text)
    thin, wide = _lumber_size(name, text)
    return _stick_slots(asked.slot, name, wide, thin)


def _lying_stick(text: str, asked: _Asked) -> Found:
    """Read lumber that lies; one that is not said to be on edge lies flat."""
    return _lying(asked.slot, text, asked.said)


def _lying(slot: str, text: str, said: list[str]) -> Found:
    name, lying = _lumber(text)
    thin, wide = _lumber_size(name, text)
    if thin == wide:
        return _stick_slots(slot, name, wide, thin)
    if not lying:
        said.append(f"Taken: {name} flat; say 'on edge' if it stands on its edge.")
        lying = "flat"
    across, high = (thin, wide) if lying == "on edge" else (wide, thin)
    return _stick_slots(slot, f"{name} {lying}", across, high)


def _stick_slots(slot: str, name: str, wide: float, high: float) -> Found:
    return {slot: Slot(name, name), f"{slot}_wide": Slot("", wide), f"{slot}_high": Slot("", high)}


def lumber(slot: str, text: str) -> Found:
    """Return the slots of lumber that a template names: its name, how wide and how high it is."""
    return _lying(slot, text, [])


def _lumber(text: str) -> tuple[str, str]:
    from ..design.stock import named_lumber  # noqa: PLC0415 - tables, only where asked

    return named_lumber(text)


def _lumber_size(name: str, text: str) -> tuple[float, float]:
    from ..design.stock import lumber_size  # noqa: PLC0415 - tables, only where asked
    from ..materials.stock import lumber_sizes  # noqa: PLC0415

    found = lumber_size(name)
    if found is None:
        near = nearest(name, list(lumber_sizes()))
        hint = f"'{near}'?" if near else ""
        raise AnswerError(text, "lumber as sold, such as '4x4' or '45x95 mm'", hint)
    return found


def _foot(text: str, asked: _Asked) -> Found:
    """Read a foot: its width and the lumber that lies there."""
    text = re.sub(r"(?<=[a-z\"'])\s+(?=\d+(?:/\d+)?\s*[x×]\s*\d)", ", ", text)
    found, defaults = _split(text, sticks=True), _split(asked.default, sticks=True)
    if len(found) == 1 and defaults[1:]:
        found.append(defaults[1])
        asked.said.append(f"Lumber taken: {defaults[1]}.")
    if len(found) != 2:
        raise AnswerError(text, f"a width and its lumber, such as '{asked.default}'")
    width = _length(found[0], defaults[0], asked.said)
    return {asked.slot: width, **_lying(f"{asked.slot}_lumber", found[1], asked.said)}


# --- the wind -----------------------------------------------------------------------------------


def _gust(text: str, unit_of: str = "", said: list[str] | None = None) -> tuple[str, float]:
    text = _with_unit(text, unit_of, "speed", said)
    value = _quantity(text, "speed")
    if not WIND.hold(value):
        raise AnswerError(text, WIND.words)
    return " ".join(text.split()), value


def _speed(text: str, asked: _Asked) -> Found:
    return {asked.slot: Slot(*_gust(text, asked.default, asked.said))}


def _record(text: str, _: _Asked) -> Found:
    """Read a record of gusts: the greatest alone, or several with their return periods."""
    pieces = [piece for piece in re.split(r"[,;]", text) if piece.strip()]
    gusts: list[tuple[int, str, float]] = []
    for piece in pieces:
        found = re.fullmatch(r"\s*(\d{1,6})\s*(?:(?:years?|yrs?)\s*:?|:|=)\s*(.+)", piece)
        if found and YEARS.hold(int(found[1])):
            gusts.append((int(found[1]), *_gust(found[2])))
    if not gusts and len(pieces) == 1:
        return {"wind": Slot(*_gust(text)), "gusts": Slot("", "")}
    gusts.sort()
    example = "'10 years: 60 mph, 50 years: 75 mph'"
    if len(gusts) != len(pieces) or len({years for years, _, _ in gusts}) < max(2, len(pieces)):
        raise AnswerError(text, f"the greatest gust, or two and more with their years: {example}")
    if any(second[2] <= first[2] for first, second in pairwise(gusts)):
        raise AnswerError(text, f"a greater gust for each longer time: {example}")
    table = ", ".join(f"{years} = '{gust}'" for years, gust, _ in gusts)
    return {"wind": Slot(gusts[-1][1], gusts[-1][2]), "gusts": Slot(f"{{ {table} }}", "yes")}


# --- words --------------------------------------------------------------------------------------


def _line(text: str, asked: _Asked) -> Found:
    """Read a line of text, which may be left open."""
    line = " ".join(text.replace("'", "’").split())
    if text == LEFT_OPEN:
        line = ""
    if (line and not line.isprintable()) or len(line) > _MOST_TEXT:
        raise AnswerError(text, f"one line of text, up to {_MOST_TEXT} characters")
    return {asked.slot: Slot(line, line)}


def _choice(text: str, asked: _Asked) -> Found:
    word = chosen(text, asked.choices)
    return {asked.slot: Slot(word, word)}


def chosen(text: str, choices: Sequence[Choice]) -> str:
    """Return the word of the choice that a text names by number, word or beginning."""
    typed = plain(text)
    for number, choice in enumerate(choices, 1):
        if typed in (str(number), plain(choice.word), plain(choice.says)):
            return choice.word
    begun = [
        choice.word
        for choice in choices
        if len(typed) > 1
        and any(plain(each).startswith(typed) for each in (choice.word, choice.says))
    ]
    if len(begun) == 1:
        return begun[0]
    raise AnswerError(text, f"a number from 1 to {len(choices)}, or the words beside it")


_READERS: Mapping[str, Reader] = {
    "length": _one,
    "length or none": _or_none,
    "lengths": _several,
    "widths": _widths,
    "sides": _sides,
    "count": _count,
    "wheel": _wheel,
    "walls": _walls,
    "material": _material,
    "standing lumber": _stick,
    "lying lumber": _lying_stick,
    "foot": _foot,
    "speed": _speed,
    "record": _record,
    "line": _line,
    "choice": _choice,
}
