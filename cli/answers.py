"""What a typed answer means: lengths, widths, walls, lumber, gusts, as the file will take them."""

import re
from fractions import Fraction

from .. import units
from ..design.bounds import BLADES, SIDES, SIZE
from ..design.builder_words import MATERIAL_WORDS
from ..design.near_names import listed, nearest
from ..design.sizes import flats_from_points, flats_from_side
from ..units import INCH
from .questions import AnswerError, Answers, Reader

_METRIC = re.compile(r"(?:mm|cm|\bm|met(?:er|re)s?)$", re.ASCII)
_OVER = {
    "flats": "",
    "flat": "",
    "points": "_points",
    "point": "_points",
    "panel": "_side",
    "panels": "_side",
    "side": "_side",
    "edge": "_side",
}
_ON_TAPE = 1.0e-6
"""Metres that no saw cuts: so near a tape's mark a size stands on it."""

_LYING = ("flat", "on edge")


def length(text: str) -> str:
    """Return a length as the file takes it."""
    reading = quantity(text, "length")
    if not SIZE.hold(reading.value):
        raise AnswerError(text, SIZE.words)
    plain = " ".join(text.split())
    if not plain.isascii() or "'" in plain:
        return size(reading.value, is_metric(plain), 64)
    return plain


def metres(text: str) -> float:
    """Return a length in m from text that was taken before."""
    return units.read(text, "length").value


def is_metric(text: str) -> bool:
    """Return whether a length is written in metric units."""
    return bool(_METRIC.search(text.strip()))


def size(value: float, metric: bool, parts: int = 8) -> str:
    """Return a length in m as a file has it: to the mm, or to an inch over ``parts``."""
    if metric:
        return f"{round(value * 1000.0)} mm" if parts <= 8 or _whole_mm(value) else _mm(value)
    tape = Fraction(round(value / INCH * parts), parts)
    if parts > 8 and abs(float(tape) * INCH - value) > _ON_TAPE:
        return f"{round(value * 1000.0)} mm" if _whole_mm(value) else f"{value / INCH:.6g} in"
    whole, rest = divmod(tape, 1)
    shown = [str(whole)] if whole or not rest else []
    return " ".join([*shown, str(rest)] if rest else shown) + " in"


def _whole_mm(value: float) -> bool:
    return abs(round(value * 1000.0) / 1000.0 - value) <= _ON_TAPE


def _mm(value: float) -> str:
    return f"{value * 1000.0:.6g} mm"


def quantity(text: str, kind: str) -> units.Reading:
    """Return the reading of a quantity of a kind; AnswerError where it is none."""
    try:
        return units.read(text, kind)
    except units.UnitError as error:
        raise AnswerError(error.found, error.expected, error.hint) from None


def whole(text: str) -> int | None:
    """Return a whole number, or None where the text is none."""
    plain = text.strip()
    return int(plain) if plain.isascii() and plain.isdigit() and len(plain) < 7 else None


def one_length(name: str) -> Reader:
    """Return a reader of one length."""
    return lambda text, _: {name: length(text)}


def two_lengths(first: str, second: str, example: str) -> Reader:
    """Return a reader of two lengths, parted by a comma or by 'x'."""

    def read(text: str, _: Answers) -> Answers:
        found = _split(text)
        if len(found) != 2:
            raise AnswerError(text, f"two lengths parted by a comma, such as '{example}'")
        return {first: length(found[0]), second: length(found[1])}

    return read


def sides(text: str, _: Answers) -> Answers:
    """Read a number of sides."""
    word = text.casefold().strip()
    names = {"round": 0, "square": 4, "hexagon": 6, "octagon": 8, "six": 6, "eight": 8}
    number = names.get(word, whole(word.removesuffix("sides").strip()))
    if number is None or not SIDES.hold(number):
        raise AnswerError(text, f"a number of sides, {SIDES.words}")
    return {"sides": str(number)}


def widths(text: str, answers: Answers) -> Answers:
    """Read a body's width at bottom and top, or one for both, over flats, points or one panel."""
    words = text.replace("over ", "").rsplit(None, 1)
    over = _OVER.get(words[-1].casefold().strip("()")) if len(words) == 2 else None
    found = _split(words[0] if over is not None else text)
    if len(found) > 2 or not found[0]:
        raise AnswerError(text, "a width at the bottom and one at the top, such as '18 in, 10 in'")
    number = int(answers["sides"])
    if over and number == 0:
        raise AnswerError(text, "two diameters: it is round")
    if over == "_points" and number % 2:
        raise AnswerError(
            text, f"widths over flats, or of one panel: {number} sides have no points opposite"
        )
    bottom, top = length(found[0]), length(found[-1])
    taken = {"bottom": bottom, "top": top, "over": over or ""}
    for end in ("bottom", "top"):
        if not SIZE.hold(flats(taken, end, number)):
            raise AnswerError(text, f"a width of {SIZE.words} over flats")
    return taken


def flats(answers: Answers, end: str, number: int | None = None) -> float:
    """Return the width over flats in m at the ``bottom`` or ``top`` of what was answered."""
    number = int(answers["sides"]) if number is None else number
    value = metres(answers[end])
    match answers["over"]:
        case "_points":
            return flats_from_points(value, number)
        case "_side":
            return flats_from_side(value, number)
        case _:
            return value


def sheet_or_board(text: str, _: Answers) -> Answers:
    """Read what a wall is of: a sheet as sold, or a thickness of a material."""
    from ..materials.stock import sheet_thicknesses  # noqa: PLC0415 - tables, only where asked

    plain = " ".join(text.replace('"', " ").replace(" in ", " ").split()).casefold()
    sheet = next((name for name in sheet_thicknesses() if name.casefold() == plain), None)
    if sheet:
        return {"stock": sheet, "material": _of_sheet(sheet)}
    expected = "a sheet as sold, such as '3/4 plywood', or '3/4 in western redcedar'"
    found = re.fullmatch(
        r"([\d\s./⁄¼-¾⅐-⅞-]+(?:in|inch|mm|cm|[\"”″])[.,]?)\s*(?:of\s+)?(\D+)", text
    )
    if not found:
        near = nearest(plain, list(sheet_thicknesses()))
        raise AnswerError(text, expected, f"'{near}'?" if near else "")
    return {"wall": length(found[1].rstrip(".,")), "material": material(found[2])}


def material(text: str) -> str:
    """Return the name of a material."""
    from .. import materials  # noqa: PLC0415 - tables, only where asked

    names = materials.names()
    word = " ".join(text.split()).casefold()
    for name in names:
        if name.casefold() == word:
            return name
    near = nearest(word, names)
    hint = MATERIAL_WORDS.get(word) or (f"'{near}'?" if near else "")
    raise AnswerError(text, f"one of {listed(names)}", hint)


def post_lumber(name: str) -> Reader:
    """Return a reader of a standing stick's lumber, such as 4x4."""
    return lambda text, _: {name: lumber(text, standing=True)}


def foot(text: str, answers: Answers) -> Answers:
    """Read a foot: its width and the lumber that lies there."""
    found = _split(text, sticks=True)
    if len(found) != 2:
        raise AnswerError(text, "a width and its lumber, such as '24 in, 2x4 flat'")
    return {"foot": length(found[0]), "lumber": lumber(found[1], standing=False)}


def lumber(text: str, standing: bool) -> str:
    """Return lumber as the file names it; where it lies, flat or on edge must be said."""
    from ..materials.stock import lumber_sizes  # noqa: PLC0415 - tables, only where asked

    plain = re.sub(r"\s*(?:x|×|by)\s*", "x", " ".join(text.casefold().split()))
    lying = next((way for way in _LYING if plain.endswith(f" {way}")), "")
    name = plain.removesuffix(lying).strip(" ,")
    sizes = lumber_sizes()
    if name not in sizes:
        near = nearest(name, list(sizes))
        raise AnswerError(text, "lumber as sold, such as '4x4'", f"'{near}'?" if near else "")
    thin, wide = sizes[name]
    if standing and lying:
        raise AnswerError(text, f"'{name}' alone: it stands")
    if not standing and not lying and thin != wide:
        raise AnswerError(text, "how it lies", f"'{name} flat' or '{name} on edge'?")
    return f"{name} {lying}".strip()


def section(name: str) -> tuple[float, float]:
    """Return the actual width in plan and the height in m of lumber that was taken before."""
    from ..materials.stock import lumber_sizes  # noqa: PLC0415 - tables, only where asked

    stick, _, lying = name.partition(" ")
    thin, wide = sorted(lumber_sizes()[stick])
    return (thin, wide) if lying == "on edge" else (wide, thin)


def wheel(text: str, answers: Answers) -> Answers:
    """Read a wheel: its width over all and the number of its blades."""
    found = _split(text)
    number = whole(re.sub(r"\s*blades?$", "", found[-1])) if len(found) == 2 else None
    if number is None or not BLADES.hold(number):
        raise AnswerError(text, "its width over all and its blades, such as '36 in, 12 blades'")
    across = length(found[0])
    if metres(across) / 2.0 >= metres(answers["height"]):
        raise AnswerError(text, "blades that clear the ground: less than twice the body's height")
    return {"across": across, "blades": str(number)}


def _split(text: str, sticks: bool = False) -> list[str]:
    """Return what is parted by commas, 'and' or 'to', or by 'x' where no lumber is named."""
    between = r"(?<!\d),\s*|,\s+|;|\s+(?:and|to)\s+" + ("" if sticks else r"|\s+[x×]\s+")
    return [piece.strip() for piece in re.split(between, text)]


def _of_sheet(sheet: str) -> str:
    if sheet.endswith("OSB"):
        return "OSB"
    return "marine plywood" if "marine" in sheet else "softwood plywood"
