"""A fastener as builders say it: ``16d sinker``, ``#8 wood screw 2 in``, ``3/8 x 4 in lag``."""

import re
from collections.abc import Mapping

from .. import units
from ..units.frozen import ByValue

_Facts = Mapping[str, str]

_WORDS: Mapping[str, _Facts] = {
    "nail": {"noun": "nail"},
    "spike": {"noun": "nail"},
    "screw": {"noun": "screw"},
    "bolt": {"noun": "bolt"},
    "staple": {"kind": "staple"},
    **{key: {"kind": "staple"} for key in ("narrow", "medium", "wide", "crown")},
    "common": {"kind": "nail", "sort": "common"},
    "box": {"kind": "nail", "sort": "box"},
    "sinker": {"kind": "nail", "sort": "sinker"},
    "cooler": {"kind": "nail", "sort": "sinker"},
    "finish": {"kind": "nail", "sort": "finish"},
    "finishing": {"kind": "nail", "sort": "finish"},
    "brad": {"kind": "nail", "sort": "brad"},
    "pin": {"kind": "nail", "sort": "pin"},
    "ring": {"kind": "nail", "shank": "ring"},
    "ring-shank": {"kind": "nail", "shank": "ring"},
    "ringshank": {"kind": "nail", "shank": "ring"},
    "annular": {"kind": "nail", "shank": "ring"},
    "smooth": {"shank": "smooth"},
    "shank": {},
    "wood": {"kind": "wood screw"},
    "deck": {"kind": "deck screw"},
    "decking": {"kind": "deck screw"},
    "lag": {"kind": "lag screw"},
    "carriage": {"kind": "bolt", "sort": "carriage"},
    "hex": {},
    "machine": {},
    "flat": {"head": "flat"},
    "pan": {"head": "pan"},
    "washer": {"head": "washer"},
    "head": {},
    "stainless": {"stainless": "yes"},
    "hardened": {"hardened": "yes"},
    "steel": {},
    "bright": {},
    "galvanized": {},
    "galvanised": {},
    "hot-dipped": {},
    "hot-dip": {},
    "exterior": {},
}
_CONNECTIVES = {"x", "by", "ga", "gauge", "no", "d", "penny"}
_NOUNS = {"nail": {"nail"}, "screw": {"wood screw", "deck screw", "lag screw"}}
_NOUNS["bolt"] = {"bolt", "lag screw"}
_MARKS = str.maketrans({**dict.fromkeys("″”“„＂", '"'), **dict.fromkeys("‐‑‒–—−", "-"), "×": "x"})
_WORD = re.compile(r"(?<![\w-])[a-z]+(?:-[a-z]+)*")
_DESIGNATION = re.compile(
    r"(?P<penny>\d+)\s*-?\s*(?:d|penny)\b|(?:#|no\b\.?)\s*(?P<number>\d+)"
    r"|(?P<gauge>\d+)\s*-?\s*(?:ga\b\.?|gauge)|(?P<dash>rsrs-\d\d)|\bm\s?(?P<metric>\d+)\b"
)
_COACH = re.compile(r"\bcoach (?=screws?\b|bolts?\b)")
"""British for lag screws and carriage bolts."""
_IN_MM = re.compile(r"(?<![\w/#.])(\d+(?:[.,]\d+)?)\s*x\s*(\d+(?:[.,]\d+)?)\s*(?=mm\b)")
"""Diameter by length, one unit behind both, as metric fasteners are sold."""
_AFTER_M = re.compile(r"(?<=x )(\d+)(?=\s|$)(?!\s*(?:mm|cm|in|\"))")
"""A bare length behind M10: mm."""
_CROWN = re.compile(r"(?P<size>\d+\s*/\s*\d+|\d*\.?\d+)\s*(?:inch|in\b\.?|\")?\s*-?\s*(?=crown)")
_THICKEST = 1.25
"""Inches: the thickest row of NDS for lag screws."""
_THICKEST_NUMBERED = 0.5
"""Inches: above every screw that is sold by a number."""
_BARE = re.compile(r"(?:\d+\s*/\s*\d+|\d*\.\d+|1)(?![\d./])")
_BARE_THEN_LENGTH = re.compile(r"(?P<size>\d+/\d+|\d*\.\d+)\s+(?P<length>\d.*)")


class Words(ByValue, frozen=True):
    """What was said: facts by name, the designation (``8d``, ``#8``, ``16 ga``) or a diameter.

    ``crown`` is that of a staple where it was said.
    """

    text: str
    facts: _Facts
    designation: str | None
    diameter: float | None
    length: float | None
    crown: float | None = None


def read_words(text: str) -> Words:
    """Return what a builder's words for a fastener state; sizes in m.

    KeyError for a word that is not known or does not agree with the others; ValueError where a
    length cannot be read or no fastener has the diameter.
    """
    plain = " ".join(text.translate(_MARKS).casefold().split())
    plain = _metric(plain)
    facts: dict[str, str] = {}
    designated = _DESIGNATION.search(plain)
    designation = None if designated is None else _designation(designated)
    if designated is not None:
        plain = f"{plain[: designated.start()]} x {plain[designated.end() :]}"
    crowned = _CROWN.search(plain)
    crown = (
        None if crowned is None else units.read_dimension(f"{crowned['size']} in", "length").value
    )
    if crowned is not None:
        plain = f"{plain[: crowned.start()]} x {plain[crowned.end() :]}"
    sizes = _WORD.sub(lambda word: _replace(word, facts, text), plain)
    pieces = [piece.strip(" ,") for piece in re.split(r"(?<![a-z])x(?![a-z])|\bby\b", sizes)]
    pieces = [piece for piece in pieces if piece]
    _settle(facts, text)
    diameter = None
    if designation is None and pieces:
        diameter, pieces = _diameter(pieces, text)
    if len(pieces) > 1:
        raise KeyError(f"{text!r}: {' and '.join(pieces)} cannot both be its length")
    length = units.read_dimension(pieces[0], "length").value if pieces else None
    if _is_length(diameter, length, facts):
        raise ValueError(
            f"{text!r}: it names no diameter, only a length; write '#8 {facts['kind']} "
            f"{_as_typed(plain)}', or another number than 8"
        )
    if 0.0 in (diameter, length) or (diameter or 0.0) > _THICKEST * units.factor("in"):
        raise ValueError(
            f"{text!r}: its length and diameter are above 0, its diameter at most {_THICKEST:g} in"
        )
    return Words(text.strip(), facts, designation, diameter, length, crown)


def _metric(plain: str) -> str:
    """Return words with units behind both of ``5 x 60 mm`` and behind the length of ``m10 x 150``.

    Coach screws and bolts become what they are called here.
    """
    plain = _IN_MM.sub(
        lambda both: f"{both[1].replace(',', '.')} mm x {both[2].replace(',', '.')} ", plain
    )
    if re.search(r"\bm\s?\d", plain):
        plain = _AFTER_M.sub(r"\1 mm", plain)
    called = {"screw": "lag ", "bolt": "carriage "}
    return _COACH.sub(
        lambda one: called["bolt" if "bolt" in plain[one.end() :] else "screw"], plain
    )


def _designation(match: re.Match[str]) -> str:
    if match["penny"]:
        return f"{match['penny']}d"
    if match["number"]:
        return f"#{match['number']}"
    if match["metric"]:
        return f"M{match['metric']}"
    return f"{match['gauge']} ga" if match["gauge"] else match["dash"].upper()


def _replace(word: re.Match[str], facts: dict[str, str], text: str) -> str:
    """Note what a word means, and leave in the text what is part of a size."""
    said = word[0]
    if said in _CONNECTIVES or said in units.by_spelling():
        return said
    meaning = _WORDS.get(said, _WORDS.get(said.removesuffix("s")))
    if meaning is None:
        from difflib import get_close_matches  # noqa: PLC0415 - only where something is wrong

        near = get_close_matches(said, list(_WORDS), n=1, cutoff=0.6)
        hint = f"; did you mean {near[0]!r}?" if near else ""
        raise KeyError(f"{text!r}: {said!r} is not a word known of fasteners{hint}")
    for fact, value in meaning.items():
        if facts.setdefault(fact, value) != value:
            raise KeyError(f"{text!r}: it cannot be both {facts[fact]} and {value}")
    return " x "


def _is_length(diameter: float | None, length: float | None, facts: _Facts) -> bool:
    """Return whether the one size of a screw that goes by a number is too thick for a shank."""
    if diameter is None or length is not None or facts["kind"] not in ("wood screw", "deck screw"):
        return False
    return diameter > _THICKEST_NUMBERED * units.factor("in")


def _as_typed(plain: str) -> str:
    """Return the size in a builder's words, as it was typed."""
    found = re.search(r"\d[\d ./-]*\s*(?:inches|inch|in\b\.?|mm|cm|\"|'')?", plain)
    return found[0].strip() if found else "3 in"


def _settle(facts: dict[str, str], text: str) -> None:
    """Set the kind by the nouns said, or refuse where they disagree or leave it open."""
    noun, kind = facts.get("noun"), facts.get("kind")
    if noun == "screw" and kind is None:
        raise KeyError(f"{text!r}: which screw? wood screw, deck screw or lag screw")
    if noun and kind and kind not in _NOUNS[noun]:
        raise KeyError(f"{text!r}: it cannot be both {kind} and {noun}")
    if not (kind or noun):
        raise KeyError(f"{text!r} names no nail, screw, bolt or staple")
    facts["kind"] = kind or facts["noun"]


def _diameter(pieces: list[str], text: str) -> tuple[float, list[str]]:
    """Return the diameter that stands first, and what is left for the length.

    A bare fraction or decimal is a nominal size in inches, as lag screws and bolts are named.
    """
    first, *rest = pieces
    split = None if rest else _BARE_THEN_LENGTH.fullmatch(first)
    if split:
        first, rest = split["size"], [split["length"]]
    if _BARE.fullmatch(first):
        return units.read_dimension(f"{first} in", "length").value, rest
    if re.fullmatch(r"\d+(?:\.\d+)?", first):
        raise KeyError(f"{text!r}: write the diameter {first} with its unit")
    return units.read_dimension(first, "length").value, rest
