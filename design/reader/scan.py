"""A first look at the raw text: where each key stands, and faults that TOML puts obscurely."""

import re
from bisect import bisect_right
from collections.abc import Collection, Mapping
from typing import NamedTuple

from ...units.frozen import ByValue, replace
from .near_names import nearest_name
from .raw_values import DEEPEST_NESTING, HEADING_LINE, KEY_LINE, as_value, read_value
from .typed_text import Problem, shown, without_note

_HEADING = re.compile(r"[ \t]*(\[*)[ \t\"'“”‘’]*([A-Za-z0-9_.-]*)[^\]]*(\]*)")
_NAME = re.compile(r"[ \t]*[\"']?name[\"']?[ \t]*=(.*)")
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f\ud800-\udfff]")


_NO_KEYS: Mapping[str, Collection[str]] = {}


class Spot(NamedTuple):
    """A place in the file: the table, its number among those of its name, and a key in it.

    Without a key it is the table's heading.
    """

    table: str
    number: int
    key: str | None = None

    def at(self, key: str | None) -> "Spot":
        """Return the place of a key in the same table."""
        return Spot(self.table, self.number, key)


Span = tuple[int, int]
"""Where in the text something begins, and where it ends."""


class _Finding(NamedTuple):
    """A fault of the raw text: its line, where it belongs, and what is wrong."""

    line: int
    spot: Spot
    problem: Problem


class Scan(ByValue, frozen=True):
    """What the first look found: lines from 1, faults, and a text that leaves the faults out.

    ``broken`` holds the keys whose values were left out, ``names`` the names among what was.
    ``seen`` is the text as people see it, line ends alike; ``keys`` and ``values`` say where in it
    each key and its value stand.
    """

    seen: str
    text: str
    lines: Mapping[Spot, int]
    broken: frozenset[Spot]
    findings: tuple[_Finding, ...]
    names: frozenset[str]
    keys: Mapping[Spot, Span]
    values: Mapping[Spot, Span]

    def line(self, spot: Spot) -> int | None:
        """Return the line of a key, else that of its table's heading."""
        return self.lines.get(spot, self.lines.get(spot.at(None)))


def scan(
    text: str,
    many: Mapping[str, bool],
    keys: Mapping[str, Collection[str]] = _NO_KEYS,
) -> Scan:
    """Look through the text; ``many`` says of each known table whether it may stand repeatedly.

    ``keys`` are those that each known table may hold. A table whose heading is nearly right, and
    that holds mostly keys of what was meant, is read as that; what stands under a heading of no
    use is left out.
    """
    clean = seen(text).replace("\u00a0", " ")
    walk = _Walk(clean, many, keys)
    walk.run()
    return Scan(
        clean,
        "\n".join(walk.rows),
        walk.lines,
        frozenset(walk.broken),
        tuple(walk.findings),
        frozenset(walk.names),
        walk.key_spans,
        walk.value_spans,
    )


def seen(text: str) -> str:
    """Return a file's text as people see it: its line ends alike, no mark before it."""
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


class _Walk:
    def __init__(
        self, text: str, many: Mapping[str, bool], keys: Mapping[str, Collection[str]]
    ) -> None:
        self.text = text
        self.many = many
        self.keys = keys
        self.rows = text.split("\n")
        self.starts = [0]
        for row in self.rows:
            self.starts.append(self.starts[-1] + len(row) + 1)
        self.here = Spot("", 0)
        self.headings: dict[str, list[int]] = {}
        self.lines: dict[Spot, int] = {}
        self.seen: dict[tuple[Spot, str], int] = {}
        self.broken: set[Spot] = set()
        self.findings: list[_Finding] = []
        self.names: set[str] = set()
        self.key_spans: dict[Spot, Span] = {}
        self.value_spans: dict[Spot, Span] = {}
        self.skipping = False

    def run(self) -> None:
        row = 0
        while row < len(self.rows):
            line = self.rows[row].strip(" \t")
            if _CONTROL.search(line):
                self._control_character(row, line)
            elif line.startswith("[") or line.rstrip(": ") in self.many:
                self._heading(row)
            elif line and not line.startswith("#"):
                if self.skipping:
                    self._keep_name(row)
                    self.rows[row] = ""
                else:
                    row = self._entry(row)
            row += 1

    def _control_character(self, row: int, line: str) -> None:
        key = KEY_LINE.match(line)
        spot = self.here.at(_first_key(key[1])) if key else self.here
        self._leave_out(
            row, row, spot, Problem(shown(line), "no control characters", "type the line anew")
        )

    def _heading(self, row: int) -> None:
        line = self.rows[row]
        found = shown(without_note(line).strip(" \t"))
        self.skipping = False
        match = _HEADING.match(line)
        opening, written, closing = match.groups() if match else ("", "", "")
        name = self._known(written, row)
        outer, _, inner = name.partition(".")
        double = self.many.get(name, False)
        right = f"[[{name}]]" if double else f"[{name}]"
        if outer not in self.many or not re.fullmatch(r"(\.[A-Za-z0-9_-]+)?", name[len(outer) :]):
            self._skip_table(row, self._unknown(found))
            return
        previous = self.headings.setdefault(name, [])
        if previous and not double:
            hint = f"it begins on line {previous[0]}: put its keys together there"
            self._skip_table(row, Problem(found, f"one table {right} in a file", hint))
            return
        self.here = Spot(name, len(previous))
        previous.append(row + 1)
        self.lines[self.here] = row + 1
        if inner:
            self.lines.setdefault(
                Spot(outer, len(self.headings.get(outer, [0])) - 1, inner), row + 1
            )
        if name != written:
            self._mend(row, Problem(found, right, f"'{name}'?", right), right)
        elif not HEADING_LINE.match(line) or len(opening) != len(closing):
            hint = "brackets in pairs, the name alone between them"
            self._mend(row, Problem(found, right, hint, right), right)
        elif double != (opening == "[["):
            hint = (
                "double brackets, since there may be several"
                if double
                else "single brackets, since there is one of it"
            )
            self._mend(row, Problem(found, right, hint, right), right)

    def _known(self, name: str, row: int) -> str:
        """Return the known table that a heading means, with what stands behind a dot."""
        outer, dot, inner = name.partition(".")
        if outer in self.many:
            return name
        near = nearest_name(outer, tuple(self.many))
        if near is not None and near == outer.casefold():
            return f"{near}{dot}{inner}"
        if near is None or not self._holds(near, [inner] if inner else self._keys_below(row)):
            return name
        return f"{near}{dot}{inner}"

    def _holds(self, name: str, keys: Collection[str]) -> bool:
        """Return whether most of the keys are those of a table, which then may be what is meant."""
        taken = self.keys.get(name)
        return taken is None or 2 * sum(key.casefold() in taken for key in keys) > len(keys)

    def _keys_below(self, row: int) -> list[str]:
        """Return the keys between a heading and the next."""
        found: list[str] = []
        for line in self.rows[row + 1 :]:
            if line.lstrip(" \t").startswith("["):
                break
            match = KEY_LINE.match(line)
            if match:
                found.append(_first_key(match[1]))
        return found

    def _unknown(self, found: str) -> Problem:
        right = [f"[[{name}]]" if many else f"[{name}]" for name, many in self.many.items()]
        return Problem(found, f"one of {', '.join(right)}")

    def _entry(self, row: int) -> int:
        start = self.starts[row]
        match = KEY_LINE.match(self.text, start)
        if match is None:
            self._leave_out(
                row, row, *self._not_an_entry(without_note(self.rows[row]).strip(" \t"))
            )
            return row
        if match[1].count(".") > DEEPEST_NESTING:
            expected = f"a key of at most {DEEPEST_NESTING} names with points between"
            self._leave_out(row, row, self.here, Problem(shown(match[1]), expected))
            return row
        key = re.sub(r"[\"' \t]", "", match[1])
        spot = self.here.at(_first_key(match[1]))
        end, last_end, problem = read_value(self.text, match.end())
        last = max(row, bisect_right(self.starts, last_end) - 1)
        first = self.seen.get((self.here, key))
        if problem is not None:
            self.lines.setdefault(spot, row + 1)
            self._leave_out(row, last, spot, problem)
        elif first is not None:
            self._leave_out(
                row,
                last,
                spot,
                Problem(
                    shown(without_note(self.rows[row]).strip(" \t")),
                    f"'{key}' once in a table",
                    f"it stands on line {first} already",
                ),
                broken=False,
            )
        self.seen.setdefault((self.here, key), row + 1)
        self.lines.setdefault(spot, row + 1)
        if first is None and problem is None:
            begin = match.start(1)
            self.key_spans.setdefault(spot, (begin, begin + len(match[1])))
            self.value_spans.setdefault(spot, (match.end(), end))
        return last

    def _not_an_entry(self, line: str) -> tuple[Spot, Problem]:
        """Say what is wrong with a line that is neither a heading nor key = value."""
        head, equals, value = line.partition("=")
        if equals and head.strip():
            word = re.sub(r"[^A-Za-z0-9]+", "_", head).strip("_")
            expected = "a key of letters, digits and _ before the '='"
            return self.here.at(word or None), _entry_problem(line, expected, word, value.strip())
        match = re.match(r"[A-Za-z0-9_-]+", line)
        if match is None:
            return self.here, Problem(shown(line), "key = value")
        rest = line[match.end() :].lstrip(" \t:")
        return self.here.at(match[0]), _entry_problem(line, "key = value", match[0], rest)

    def _mend(self, row: int, problem: Problem, line: str) -> None:
        self._note(row, self.here, replace(problem, at=self._line_span(row)))
        self.rows[row] = line

    def _skip_table(self, row: int, problem: Problem) -> None:
        """Leave out a table whose heading cannot be used, with all that stands under it."""
        self.here = Spot("", -1)
        self._note(row, self.here, problem)
        self.rows[row] = ""
        self.skipping = True

    def _leave_out(
        self, row: int, last: int, spot: Spot, problem: Problem, broken: bool = True
    ) -> None:
        self._note(row, spot, problem)
        self._keep_name(row)
        self.rows[row : last + 1] = [""] * (last + 1 - row)
        if broken:
            self.broken.add(spot)

    def _keep_name(self, row: int) -> None:
        """Keep the name in a line that is left out: others may refer to it."""
        match = _NAME.match(self.rows[row])
        if match:
            self.names.add(without_note(match[1]).strip(" \t\"'“”‘’"))

    def _note(self, row: int, spot: Spot, problem: Problem) -> None:
        if problem.write and problem.at is None:
            problem = replace(problem, at=self._line_span(row))
        self.findings.append(_Finding(row + 1, spot, problem))

    def _line_span(self, row: int) -> Span:
        """Return where a line stands in the text, without blanks around it and its note."""
        line = without_note(self.text[self.starts[row] : self.starts[row + 1] - 1])
        begin = self.starts[row] + len(line) - len(line.lstrip(" \t"))
        return begin, self.starts[row] + len(line)


def _entry_problem(line: str, expected: str, key: str, value: str) -> Problem:
    """Return what is wrong with a line that means ``key = value`` but says it otherwise."""
    right = as_value(value) if value else ""
    hint = f"{shown(key)} = {shown(right) or '…'}" if key else ""
    write = f"{key} = {right}" if key and right else ""
    return Problem(shown(line), expected, hint, write)


def _first_key(key: str) -> str:
    return re.split(r"[ \t]*\.", key.strip("\"'"))[0].strip("\"'")
