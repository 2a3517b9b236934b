"""Lists of lengths: an offset, the points of an outline, and several outlines."""

from collections.abc import Sequence
from typing import NamedTuple, cast

from ..shapes.cutout import Corners
from .kind_words import PLAIN, Listener, mistyped, read_quantity, typed
from .schema import Instead, Key
from .typed_text import quoted


def read_offset(key: Key, value: object, to: Listener) -> tuple[float, float, float] | None:
    """Return three signed lengths in m, or None with a fault recorded."""
    items = cast("list[object]", value) if isinstance(value, list) else []
    along = Key(key.name, "length", bounds=key.limits())
    if len(items) != 3:
        text = value if isinstance(value, str) else ""
        three = _parted(text, along, to)
        if three:
            hint = f"{key.name} = {three}"
            to.fault(key.name, typed(text), PLAIN["offset"][0], hint, Instead(three, sure=True))
        elif alone := _alone(key.name, text, along, to):
            three, way = alone
            hint = f"{key.name} = {three}, if you mean {way}"
            to.fault(key.name, typed(text), PLAIN["offset"][0], hint, Instead(three))
        else:
            mistyped(key, cast(object, value), to)
        return None
    heard = [_Heard(to) for _ in items]
    x, y, z = (read_quantity(along, item, one) for item, one in zip(items, heard, strict=True))
    if x is not None and y is not None and z is not None:
        for one in heard:
            one.pass_on()
        return (x, y, z)
    _as_a_whole(key, items, heard, to)
    return None


def _as_a_whole(key: Key, items: list[object], heard: "Sequence[_Heard]", to: Listener) -> None:
    """Record what is wrong with the lengths of an offset: as one fault where all can be mended."""
    wrong = [one.faults[0] for one in heard if one.faults]
    mended = [fault.instead for fault in wrong if fault.instead is not None]
    if len(mended) < len(wrong) or not all(new.text.isprintable() for new in mended):
        for one in heard:
            one.pass_on()
        return
    right = [one.faults[0].instead if one.faults else None for one in heard]
    texts = [new.text if new else quoted(str(item)) for item, new in zip(items, right, strict=True)]
    whole = f"[{', '.join(texts)}]"
    sure = all(new.sure for new in mended)
    first = wrong[0]
    hint = f"{key.name} = {whole}" + ("" if sure else ", if you mean those")
    found = typed(items) if len(wrong) > 1 else first.found
    to.fault(key.name, found, first.expected, hint, Instead(whole, sure))


def _parted(text: str, along: Key, to: Listener) -> str:
    """Return the list that a text such as '0 in, 0 in, 12 in' means, or nothing."""
    pieces = [piece.strip() for piece in text.strip("[]() ").split(",")]
    heard = _Heard(to)
    lengths = [read_quantity(along, piece, heard) for piece in pieces]
    if len(pieces) != 3 or None in lengths:
        return ""
    return "[" + ", ".join(quoted(piece) for piece in pieces) + "]"


def _alone(name: str, text: str, along: Key, to: Listener) -> tuple[str, str] | None:
    """Return the list that one length is meant for most often, and which way it goes."""
    if read_quantity(along, text.strip(), _Heard(to)) is None:
        return None
    none = "'0 mm'" if to.metric else "'0 in'"
    three, way = [none] * 3, 0 if name == "step" else 2
    three[way] = quoted(text.strip())
    return f"[{', '.join(three)}]", "to the right" if way == 0 else "up"


def read_outline(key: Key, value: object, to: Listener) -> Corners | None:
    """Return an outline's points, signed lengths (x, z) in m, or None with faults recorded."""
    if not isinstance(value, list):
        mistyped(key, value, to)
        return None
    return _points(key, cast("list[object]", value), "", to)


def read_outlines(key: Key, value: object, to: Listener) -> tuple[Corners, ...] | None:
    """Return several outlines, or None with faults recorded."""
    if not isinstance(value, list):
        mistyped(key, value, to)
        return None
    items = cast("list[object]", value)
    if items and all(_is_point(item) for item in items):
        hint = f"one more pair of brackets: {key.name} = [[ … ]], a list for each"
        mistyped(key, items, to, hint)
        return None
    found: list[Corners | None] = []
    for number, item in enumerate(items, 1):
        if isinstance(item, list):
            found.append(_points(key, cast("list[object]", item), f"hole {number}, ", to))
        else:
            to.fault(key.name, typed(item), f"hole {number}: a list of points")
            found.append(None)
    whole = tuple(corners for corners in found if corners is not None)
    return whole if len(whole) == len(found) else None


class _Said(NamedTuple):
    key: str | None
    found: str
    expected: str
    hint: str
    instead: Instead | None


class _Heard:
    """Keeps what is said of one value among several until all have been read."""

    def __init__(self, to: Listener) -> None:
        self._to = to
        self.faults: list[_Said] = []
        self._notes: list[str] = []

    @property
    def metric(self) -> bool:
        return self._to.metric

    def fault(
        self,
        key: str | None,
        found: str,
        expected: str,
        hint: str = "",
        instead: Instead | None = None,
    ) -> None:
        self.faults.append(_Said(key, found, expected, hint, instead))

    def note(self, text: str) -> None:
        self._notes.append(text)

    def pass_on(self) -> None:
        for note in self._notes:
            self._to.note(note)
        for said in self.faults:
            self._to.fault(said.key, said.found, said.expected, said.hint)


class Among:
    """Passes on what is said of one value among many, with where it stands.

    What to type instead is not passed on: it would stand in place of all of them.
    """

    def __init__(self, to: Listener, where: str = "") -> None:
        self._to = to
        self._where = where

    @property
    def metric(self) -> bool:
        """Whether examples are given in metric units."""
        return self._to.metric

    def fault(
        self,
        key: str | None,
        found: str,
        expected: str,
        hint: str = "",
        instead: Instead | None = None,
    ) -> None:
        """Pass on a fault."""
        self._to.fault(key, found, f"{self._where}{expected}", hint)

    def note(self, text: str) -> None:
        """Pass on how something was read."""
        self._to.note(f"{self._where}{text}")


def _points(key: Key, items: list[object], where: str, to: Listener) -> Corners | None:
    along = Key(key.name, "length", bounds=key.limits())
    points: list[tuple[float, float]] = []
    for number, item in enumerate(items, 1):
        here = Among(to, f"{where}point {number}: ")
        pair = cast("list[object]", item) if isinstance(item, list) else []
        if len(pair) != 2:
            here.fault(key.name, typed(cast(object, item)), "two lengths: right and up")
            continue
        x, z = (read_quantity(along, length, here) for length in pair)
        if x is not None and z is not None:
            points.append((x, z))
    return tuple(points) if len(points) == len(items) else None


def _is_point(item: object) -> bool:
    pair = cast("list[object]", item) if isinstance(item, list) else []
    return len(pair) == 2 and not any(isinstance(each, list) for each in pair)
