"""One table of the file, its keys read by their kinds."""

import re
from collections.abc import Mapping, Sequence
from typing import cast

from ..shapes.cutout import Corners
from .kind_words import belongs, typed
from .kinds import read_kind
from .near_names import guess, lone_name, meant, nearest_name, same, sure
from .scan import Spot
from .schema import Instead, Key, Reading
from .typed_text import quoted, shown

_NO_ANSWERS: Mapping[str, str] = {}
_QUOTED = re.compile(r"'[^']*'")
NOT_YET = "what is understood by now"


class Row:
    """One table of the file: each key's value, or None where the file is silent or wrong.

    All that is wrong with single keys is recorded as the row is made; what is wrong between
    them is for whoever builds on it, with ``need`` and ``fault``. ``answers`` tells what is said of
    keys that it does not take: one whose answer does not name the nearest key is no misspelling.
    """

    def __init__(
        self,
        reading: Reading,
        spot: Spot,
        data: Mapping[str, object],
        keys: Sequence[Key],
        part: str | None = None,
        answers: Mapping[str, str] = _NO_ANSWERS,
    ) -> None:
        self.reading = reading
        self.spot = spot
        self.data = data
        self.part = part
        self.keys = {key.name: key for key in keys}
        self.wrong = False
        self._values: dict[str, object] = {}
        broken = (
            each.key or ""
            for each in reading.scan.broken
            if each.table == spot.table and each.number == spot.number
        )
        unknown = [key for key in (*data, *broken) if key not in self.keys]
        near = {key: nearest_name(key, tuple(self.keys)) for key in unknown}
        self._misspelt = {
            right
            for key, right in near.items()
            if key not in answers or f"'{right}'" in answers[key]
        } | {lone_name(answers[key]) for key in unknown if key in answers}
        for key in keys:
            if key.name in data:
                self._values[key.name] = read_kind(key, data[key.name], self)
            elif key.required:
                self.need(key.name)

    @property
    def metric(self) -> bool:
        """Return whether results of this file are shown in metric units."""
        return self.reading.metric

    def given(self, key: str) -> bool:
        """Return whether the key stands in the file, rightly or wrongly, even misspelt."""
        broken = self.spot.at(key) in self.reading.scan.broken
        return key in self.data or broken or key in self._misspelt

    def failed(self, *keys: str) -> bool:
        """Return whether any of the keys stands in the file but could not be read."""
        return any(self.given(key) and self._values.get(key) is None for key in keys)

    def need(self, *keys: str, reason: str = "") -> None:
        """Record those of the keys that the file does not name."""
        for key in keys:
            if not self.given(key):
                self.miss(key, reason)

    def miss(self, key: str, reason: str = "") -> None:
        """Record that the file does not name a key, or nothing that can be read as it."""
        expected, example = belongs(self.keys[key], self.metric)
        hint = self.keys[key].hint or (f"{key} = {example}" if example else "")
        if (part := self._part_meant(self.keys[key])) is not None:
            hint = _QUOTED.sub(lambda _: quoted(part), hint, count=1)
        self.fault(key, f"no '{key}'", f"{expected}{reason}", hint)

    def _part_meant(self, key: Key) -> str | None:
        """Return the part that a key should name: as the row's own name tells, else any of these.

        None for a key that names none, and where there are none.
        """
        if key.nth_part is None or not self.reading.part_names:
            return None
        called = f" {self.data.get('name', '')} "
        told = [part for part in self.reading.part_names if f" {part} " in called]
        told.sort(key=called.index)
        others = [part for part in self.reading.part_names if part not in told]
        likely = [*told, *reversed(others)]
        return likely[key.nth_part] if len(likely) > key.nth_part else None

    def fault(
        self,
        key: str | None,
        found: str,
        expected: str,
        hint: str = "",
        instead: Instead | None = None,
    ) -> None:
        """Record that a key of this row is wrong, and what to type instead."""
        self.wrong = True
        self.reading.fault(self.spot.at(key), self.part, found, expected, hint, instead)

    def refuse(
        self, key: str, expected: str, hint: str = "", instead: Instead | None = None
    ) -> None:
        """Record that what stands behind a key does not belong there."""
        self.fault(key, self.typed(key), expected, hint, instead)

    def check_keys(
        self, words: Mapping[str, str], later: frozenset[str], expected: str = ""
    ) -> None:
        """Record the keys that the row does not take, each with the nearest or an answer."""
        for key in self.data:
            if key in self.keys:
                continue
            if key in later:
                self.fault(key, key, NOT_YET, f"'{key}' is not understood yet")
                continue
            right = same(key, self.keys)
            hint = f"'{right}'" if right else words.get(key.casefold()) or ""
            hint = hint or meant(key, tuple(self.keys))
            name = guess(hint)
            instead = None
            if name in self.keys and name not in self.data:
                instead = Instead(name, sure(key, hint, self.keys), name=True)
            words_ = expected or f"one of {', '.join(self.keys)}"
            self.fault(key, typed(key), words_, hint, instead)

    def typed(self, key: str) -> str:
        """Return what the person typed for a key, for repeating back."""
        return typed(self.data[key]) if key in self.data else key

    def meant(self, key: str) -> str | None:
        """Return the text that stands behind a key, or behind what was probably meant by it."""
        for name, value in self.data.items():
            right = name == key or (name not in self.keys and nearest_name(name, (key,)) == key)
            if right and isinstance(value, str):
                return value.strip()
        return None

    def note(self, text: str) -> None:
        """Record how something was read, for repeating back."""
        where = f"{self.part}: " if self.part else ""
        self.reading.notes.append(where + text)

    def quantity(self, key: str) -> float | None:
        """Return a quantity or a plain number in SI units."""
        return cast("float | None", self._values.get(key))

    def count(self, key: str) -> int | None:
        """Return a whole number."""
        return cast("int | None", self._values.get(key))

    def text(self, key: str) -> str | None:
        """Return a text or a choice."""
        return cast("str | None", self._values.get(key))

    def flag(self, key: str) -> bool | None:
        """Return true or false."""
        return cast("bool | None", self._values.get(key))

    def choices(self, key: str) -> frozenset[str]:
        """Return a list of choices as a set."""
        return cast("frozenset[str] | None", self._values.get(key)) or frozenset()

    def offset(self, key: str) -> tuple[float, float, float] | None:
        """Return three signed lengths in m."""
        return cast("tuple[float, float, float] | None", self._values.get(key))

    def outline(self, key: str) -> Corners | None:
        """Return an outline's points, signed lengths (x, z) in m."""
        return cast("Corners | None", self._values.get(key))

    def outlines(self, key: str) -> tuple[Corners, ...]:
        """Return several outlines."""
        return cast("tuple[Corners, ...] | None", self._values.get(key)) or ()

    def named(self, key: str) -> str | float | None:
        """Return a quantity in SI units, or the name that stands for it."""
        return cast("str | float | None", self._values.get(key))

    def by_years(self, key: str) -> dict[float, float]:
        """Return quantities by years."""
        return cast("dict[float, float] | None", self._values.get(key)) or {}


def check_names(rows: Sequence[Row], what: str) -> None:
    """Record the names that stand more than once among the rows of one table."""
    first: dict[str, int | None] = {}
    for row in rows:
        name = row.text("name")
        if name is None:
            continue
        if name in first:
            where = f"on line {first[name]}" if first[name] else "above"
            article = "an" if what[0] in "aeiou" else "a"
            expected = f"a name of its own: {article} {what} {where} has it already"
            row.fault("name", shown(name), expected)
        else:
            first[name] = row.reading.scan.line(row.spot.at("name"))
