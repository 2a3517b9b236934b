"""Sheets, boards, lumber and materials as they are answered."""

import re

from ...design.file.builder_words import MATERIAL_WORDS
from ...design.reader.near_names import (
    lone_name,
    misspelt,
    nearest_name,
    plain_name,
    quoted_names,
    same,
)
from .answered_lengths import answered_length, split
from .answers import AnswerError, Asked, Found, Slot


def walls(text: str, asked: Asked) -> Found:
    """Read what a wall is of: a sheet as sold, or a thickness of a material."""
    from ...design.reader.sheet_names import sheet_thickness  # noqa: PLC0415 - tables, only where asked
    from ...materials.stock import sheet_thicknesses  # noqa: PLC0415

    thick = re.match(r"[\d\s/.-]+(?:in|mm)?", asked.default)
    usual = thick[0].strip() if thick else ""
    measured = usual if usual[-1:].isalpha() else f"{usual} in"
    slip = misspelt(text, sheet_thicknesses()) or text
    tries = (text, slip, f"{text} plywood", f"{usual} {text}")
    sheet = next((found for each in tries if (found := sheet_thickness(each))), None)
    if sheet is not None:
        name, value = sheet
        if plain_name(name) != plain_name(text):
            asked.said.append(f"Read as {name}.")
        return _wall_slots(asked.slot, Slot(name, value), "stock", _sheet_material(name))
    found = re.fullmatch(
        r"([\d\s./⁄¼-¾⅐-⅞-]+((?:inch|in|mm|cm)\b|[\"”″])?)[.,]?\s*(?:of\s+)?(\D+)", text
    )
    if found and (found[2] or _is_known(found[3])):
        of = _material_named(found[3])
        return _wall_slots(asked.slot, answered_length(found[1], measured, asked.said), "", of)
    if text[:1].isdigit():
        expected = f"a sheet as sold, such as '{asked.default}', or '3/4 in western redcedar'"
        raise AnswerError(text, expected)
    of = _material_named(text)
    wall = answered_length(measured)
    asked.said.append(f"Read as {wall.text} {of}.")
    return _wall_slots(asked.slot, wall, "", of)


def _wall_slots(slot: str, wall: Slot, key: str, of: str) -> Found:
    return {slot: wall, f"{slot}_key": Slot(key, key), "material": Slot(of, of)}


def _sheet_material(sheet: str) -> str:
    if sheet.endswith("OSB"):
        return "OSB"
    return "marine plywood" if "marine" in sheet else "softwood plywood"


def material(text: str, asked: Asked) -> Found:
    """Read the name of a material, or a word of one meaning."""
    name = _material_named(text)
    return {asked.slot: Slot(name, name)}


def _material_named(text: str) -> str:
    from ... import materials  # noqa: PLC0415 - tables, only where asked

    names = materials.material_names()
    words = {plain_name(word): answer for word, answer in MATERIAL_WORDS.items()}
    answer = words.get(plain_name(text)) or words.get(misspelt(text, words) or "", "")
    name = same(text, names) or lone_name(answer) or misspelt(text, names)
    if name is not None:
        return name
    near = nearest_name(text, names)
    if answer:
        raise AnswerError(text, _ONE, answer)
    raise AnswerError(text, f"one of {quoted_names(names)}", f"'{near}'?" if near else "")


_ONE = "one material"
"""What is expected in place of a word of several meanings."""


def _is_known(word: str) -> bool:
    """Return whether a word is a material's, or one of several meanings that is answered."""
    try:
        _material_named(word)
    except AnswerError as wrong:
        return wrong.expected == _ONE
    return True


def standing_stick(text: str, asked: Asked) -> Found:
    """Read lumber that stands: its wide side is turned to the front."""
    name, _ = _lumber(text)
    thin, wide = _lumber_size(name, text)
    return _stick_slots(asked.slot, name, wide, thin)


def lying_stick(text: str, asked: Asked) -> Found:
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
    from ...design.builds.stock import named_lumber  # noqa: PLC0415 - tables, only where asked

    return named_lumber(text)


def _lumber_size(name: str, text: str) -> tuple[float, float]:
    from ...design.builds.stock import lumber_size  # noqa: PLC0415 - tables, only where asked
    from ...materials.stock import lumber_sizes  # noqa: PLC0415

    found = lumber_size(name)
    if found is None:
        near = nearest_name(name, list(lumber_sizes()))
        hint = f"'{near}'?" if near else ""
        raise AnswerError(text, "lumber as sold, such as '4x4' or '45x95 mm'", hint)
    return found


def foot(text: str, asked: Asked) -> Found:
    """Read a foot: its width and the lumber that lies there."""
    text = re.sub(r"(?<=[a-z\"'])\s+(?=\d+(?:/\d+)?\s*[x×]\s*\d)", ", ", text)
    found, defaults = split(text, sticks=True), split(asked.default, sticks=True)
    if len(found) == 1 and defaults[1:]:
        found.append(defaults[1])
        asked.said.append(f"Lumber taken: {defaults[1]}.")
    if len(found) != 2:
        raise AnswerError(text, f"a width and its lumber, such as '{asked.default}'")
    width = answered_length(found[0], defaults[0], asked.said)
    return {asked.slot: width, **_lying(f"{asked.slot}_lumber", found[1], asked.said)}
