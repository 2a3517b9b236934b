"""Values as people type them: where each ends in the raw text, and what would trip TOML."""

import re
from typing import NamedTuple

from ...units.frozen import replace
from .typed_text import Problem, marks_in_words, quoted, shown, without_note

DEEPEST_NESTING = 8
"""So many lists may lie within each other, and so many names stand in a dotted key."""

KEY_LINE = re.compile(
    r"""[ \t]*((?:[A-Za-z0-9_-]+|"[^"\n]*"|'[^'\n]*')"""
    r"""(?:[ \t]*\.[ \t]*(?:[A-Za-z0-9_-]+|"[^"\n]*"|'[^'\n]*'))*)[ \t]*=[ \t]*"""
)
HEADING_LINE = re.compile(
    r"[ \t]*\[\[?[ \t]*[A-Za-z_][A-Za-z0-9_.-]*[ \t]*\]\]?[ \t]*(?:#[^\n]*)?(?:\n|$)"
)

_MOST_ITEMS = 100
_LONGEST_LIST = 2000
_NUMBER = r"[+-]?(?:0|[1-9](?:_?\d)*)(?:\.\d(?:_?\d)*)?(?:[eE][+-]?\d(?:_?\d)*)?"
_SCALAR = re.compile(
    rf"(?:true|false|[+-]?inf|[+-]?nan|{_NUMBER}|0x[0-9A-Fa-f_]+|0o[0-7_]+|0b[01_]+"
    r"|\d{4}-\d\d-\d\d[0-9T:. Zz+-]*|\d\d:\d\d:\d\d[.\d]*)$"
)
_BASIC = re.compile(r'"((?:[^"\\\n]|\\.)*)"')
_LITERAL = re.compile(r"'([^'\n]*)'")
_BAD_ESCAPE = re.compile(r"(?<!\\)(?:\\\\)*\\(?!u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|[btnfr\"\\])")
_TOKEN = re.compile(r"[^,\]}#\n]*")
_BLANKS = re.compile(r"(?:[ \t\n]|#[^\n]*)*")
_CURLY = "“”„‟‘’‚‛«»`´"
_FLAGS = {
    "true": "true",
    "yes": "true",
    "on": "true",
    "false": "false",
    "no": "false",
    "off": "false",
}


class _Value(NamedTuple):
    """Where a value ends, where its last line ends, and what is wrong with it."""

    end: int
    last: int
    problem: Problem | None


def as_value(text: str) -> str:
    """Return a value as it would have to be typed, or nothing where that is not known."""
    problem = read_value(text, 0).problem
    return text if problem is None else problem.write


def read_value(text: str, start: int) -> _Value:
    """Return the value that begins at ``start``: where it ends, and what is wrong with it."""
    whole = start, start + len(_rest(text, start))
    if text.startswith(("[", "{"), start):
        end, problem = _brackets(text, start, 0)
        if problem is not None:
            return _Value(end, _bracket_end(text, start), _in_list(text, start, problem))
    else:
        end, problem = _single(text, start, _rest(text, start))
    problem = problem or _behind(text, start, end)
    if problem is not None and problem.at is None:
        problem = replace(problem, at=whole)
    return _Value(end, _line_end(text, end), problem)


def _in_list(text: str, start: int, problem: Problem) -> Problem:
    """Return what is wrong with one value of a list, with the whole list as it has to be typed."""
    if not problem.write or problem.at is None:
        return replace(problem, write="")
    line, first, sure = _rest(text, start), problem, True
    if len(line) > _LONGEST_LIST:
        return replace(problem, write="")
    place = start
    for _ in range(_MOST_ITEMS):
        if not problem.write or problem.at is None or problem.at[1] > place + len(line):
            break
        begin, end = problem.at[0] - place, problem.at[1] - place
        line, sure, place = line[:begin] + problem.write + line[end:], sure and problem.sure, 0
        _, following = _brackets(line, 0, 0)
        if following is None:
            at = (start, start + len(_rest(text, start)))
            return replace(first, write=line, sure=sure, at=at)
        problem = following
    return replace(first, write="")


def _single(text: str, start: int, token: str) -> tuple[int, Problem | None]:
    """Read a text, number or flag; ``token`` is what a bare one could reach at most."""
    for mark in ("'''", '"""'):
        if text.startswith(mark, start):
            return _long_text(text, start, mark)
    if text.startswith(("'", '"'), start):
        return _short_text(text, start)
    if not token:
        return start, Problem("nothing", "a value behind the '='")
    plain = token.split("#", maxsplit=1)[0].rstrip()
    if _SCALAR.match(plain):
        return start + len(plain), None
    return start + len(token), _bare(token)


def _short_text(text: str, start: int) -> tuple[int, Problem | None]:
    match = (_LITERAL if text[start] == "'" else _BASIC).match(text, start)
    if match is None:
        whole = _rest(text, start)
        inner = whole[1:].rstrip("'\"" + _CURLY).strip()
        return start + len(whole), Problem(
            shown(whole),
            f"a closing {text[start]} at the end",
            f"{quoted(shown(marks_in_words(inner)))} as a whole",
            quoted(marks_in_words(inner)),
        )
    if text[start] == '"' and _BAD_ESCAPE.search(match[1]):
        hint = "take single quote marks, in which a backslash is only itself"
        return match.end(), Problem(
            shown(match[0]), "no bare backslash between double quote marks", hint
        )
    return match.end(), None


def _long_text(text: str, start: int, mark: str) -> tuple[int, Problem | None]:
    end = text.find(mark, start + 3)
    if end < 0:
        whole = _rest(text, start)
        inner = whole.strip("'\"")
        return start + len(whole), Problem(
            shown(whole),
            "one quote mark on either side",
            quoted(shown(marks_in_words(inner))),
            quoted(marks_in_words(inner)),
        )
    end += 3
    while text.startswith(mark[0], end):
        end += 1
    return end, None


def _bare(token: str) -> Problem:
    """Say what is wrong with a value that stands without quote marks."""
    if token[0] == "=":
        value = as_value(token.lstrip("= "))
        return Problem(shown(token), "one '=' between key and value", shown(value), value)
    if token[0] in _CURLY:
        inner = token[1:-1] if token[-1] in _CURLY + "'\"" else token[1:]
        inner = inner.strip()
        return Problem(
            shown(token),
            "straight quote marks ' ' around it",
            quoted(shown(marks_in_words(inner))),
            quoted(marks_in_words(inner)),
        )
    if token.casefold() in _FLAGS:
        flag = _FLAGS[token.casefold()]
        return Problem(shown(token), "true or false, in small letters", flag, flag)
    if token.startswith("(") and token.endswith(")"):
        right = as_value(f"[{token[1:-1]}]")
        return Problem(shown(token), "a list between [ and ]", shown(right), right)
    if re.match(r"[+-]?[.\d¼-¾⅐-⅞]", token):
        return _bare_number(token)
    inner = _without_stray(token)
    return Problem(
        shown(token),
        "text between quote marks",
        quoted(shown(marks_in_words(inner))),
        quoted(marks_in_words(inner)),
    )


def _bare_number(token: str) -> Problem:
    """Say what is wrong with a number that TOML does not take, or with a bare dimension."""
    if token[-1] in ",;" and _SCALAR.match(token[:-1]):
        return Problem(shown(token), "nothing behind the value", token[:-1], token[:-1])
    if re.fullmatch(r"[+-]?\d{1,3}(,\d{3})+(\.\d+)?", token):
        plain = token.replace(",", "")
        return Problem(shown(token), "a number without commas", plain, plain, sure=False)
    if re.fullmatch(r"[+-]?(\d+\.|\.\d+|0\d+(\.\d*)?)", token) and len(token) < 16:
        plain = f"{float(token):.15g}"
        expected = "a number with a digit on either side of its point"
        return Problem(shown(token), expected, plain, plain)
    expected = "a dimension with its unit between quote marks"
    inner = _without_stray(token)
    if re.search(r"\d,\d", inner):
        one, other = shown(inner.replace(",", "")), shown(inner.replace(",", "."))
        return Problem(shown(token), expected, f"{quoted(one)} or {quoted(other)}")
    if re.search(r"[A-Za-z'\"%′″’”°]", inner):
        return Problem(
            shown(token),
            expected,
            quoted(shown(marks_in_words(inner))),
            quoted(marks_in_words(inner)),
        )
    write = quoted(inner + " in")
    return Problem(shown(token), expected, f"{shown(write)}, if you mean in", write, sure=False)


def _without_stray(token: str) -> str:
    """Return the text without a quote mark that ends it though none begins it."""
    return token[:-1] if re.search(r"[A-Za-z]['\"]$", token) else token


def _behind(text: str, start: int, end: int) -> Problem | None:
    """Say what is wrong with what stands between the end of a value and the end of its line."""
    rest = _rest(text, end)
    if not rest.strip() or rest.lstrip().startswith("#"):
        return None
    whole = text[start : end + len(rest)].strip()
    second = KEY_LINE.match(rest.lstrip(" \t,;"))
    if second is not None:
        hint = f"'{shown(second[1])}' on a line of its own"
        return Problem(shown(whole), "one key on a line", hint)
    mark = text[start]
    if mark not in "'\"" or rest.strip() in {",", ";"}:
        value = text[start:end]
        return Problem(shown(whole), "nothing behind the value", shown(value), value)
    if whole.endswith(mark):
        expected = f"no {mark} inside the text, since it ends it"
        inner = whole[1:-1]
    else:
        expected = "the whole text between the quote marks"
        inner = f"{text[start + 1 : end - 1]}{rest}".strip()
    return Problem(
        shown(whole), expected, quoted(shown(marks_in_words(inner))), quoted(marks_in_words(inner))
    )


def _brackets(text: str, start: int, depth: int) -> tuple[int, Problem | None]:
    """Read a list or an inline table; return the position just behind it."""
    closing = "]" if text[start] == "[" else "}"
    whole = shown(_rest(text, start))
    pos = start + 1
    while True:
        pos, newline = _skip(text, pos)
        if newline and closing == "}":
            return pos, Problem(whole, "a closing } on the same line", "")
        if pos >= len(text) or (newline and _begins_anew(text, pos)):
            return pos, Problem(whole, f"a closing {closing}", "")
        if text[pos] == closing:
            return pos + 1, None
        if closing == "}":
            key = KEY_LINE.match(text, pos)
            if key is None:
                return pos, Problem(whole, "key = value, parted by commas", "{ 10 = '60 mph' }")
            if key[1].count(".") > DEEPEST_NESTING:
                return pos, Problem(
                    whole, f"a key of at most {DEEPEST_NESTING} names with points between"
                )
            pos = key.end()
        pos, problem = _item(text, pos, depth)
        if problem is not None:
            return pos, problem
        pos, newline = _skip(text, pos)
        if text.startswith(",", pos):
            pos += 1
        elif not text.startswith(closing, pos):
            return pos, Problem(whole, f"commas between the values and a closing {closing}", "")


def _item(text: str, pos: int, depth: int) -> tuple[int, Problem | None]:
    if text.startswith(("[", "{"), pos):
        if depth == DEEPEST_NESTING:
            return pos, Problem(shown(_rest(text, pos)), "a plain list")
        return _brackets(text, pos, depth + 1)
    match = _TOKEN.match(text, pos)
    token = match[0].strip() if match else ""
    end, problem = _single(text, pos, token)
    if problem is not None and text.startswith(("'", '"'), pos):
        problem = replace(problem, write="")  # where its end is missing, that of the list is too
    elif problem is not None:
        problem = replace(problem, at=(pos, pos + len(token)))
    return end, problem


def _skip(text: str, pos: int) -> tuple[int, bool]:
    """Pass over blanks, line ends and notes; say whether a line ended."""
    match = _BLANKS.match(text, pos)
    end = match.end() if match else pos
    return end, "\n" in text[pos:end]


def _begins_anew(text: str, pos: int) -> bool:
    return bool(KEY_LINE.match(text, pos) or HEADING_LINE.match(text, pos))


def _bracket_end(text: str, start: int) -> int:
    """Return where a list that cannot be read ends: at its bracket, or before the next key."""
    closing = "]" if text[start] == "[" else "}"
    end = _line_end(text, start)
    while closing not in text[start:end] and end < len(text) and not _begins_anew(text, end + 1):
        end = _line_end(text, end + 1)
    return end


def _rest(text: str, start: int) -> str:
    """Return the rest of the line without a note behind it."""
    return without_note(text[start : _line_end(text, start)])


def _line_end(text: str, pos: int) -> int:
    end = text.find("\n", pos)
    return len(text) if end < 0 else end
