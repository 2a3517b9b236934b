"""What is wrong with a dimension as written, in the words of who wrote it."""

import re
from math import floor, isfinite, log10
from typing import NoReturn

from .kinds import OTHER_KINDS, UNIT_KINDS, Unit, UnitKind

LONGEST = 60
"""No dimension has more characters."""


class UnitError(ValueError):
    """Text or quantity that is not what belongs there: what was found, what is expected, a hint.

    ``write`` is what to write instead where that is known, ``sure`` if nothing else can be meant.

    >>> try:
    ...     yf.Q("5 lbs of pull")
    ... except yf.UnitError as wrong:
    ...     print(wrong.expected)
    a number with its unit
    """

    def __init__(
        self, found: str, expected: str, hint: str = "", write: str = "", sure: bool = False
    ) -> None:
        found = _shortened(found)
        super().__init__(f"{found!r} is not {expected}" + (f": {hint}" if hint else ""))
        self.found = found
        self.expected = expected
        self.hint = hint
        self.write = write
        self.sure = sure

    def __reduce__(self) -> tuple[type["UnitError"], tuple[str, str, str, str, bool]]:
        """Return what makes the same again, so that it passes from one process to another."""
        return type(self), (self.found, self.expected, self.hint, self.write, self.sure)


def shown_value(value: object) -> str:
    """Return a value as it is typed in a call, shortened, however long the number."""
    try:
        return _shortened(repr(value))
    except ValueError:  # Python writes out no more than some thousands of digits
        return f"a {type(value).__name__} of thousands of digits"


def _shortened(text: str) -> str:
    """Return a text of at most 60 characters."""
    return text if len(text) <= LONGEST else text[: LONGEST - 1] + "…"


def plain(value: float, figures: int = 4) -> str:
    """Return a number to so many figures as people write it: no exponent, no minus before a 0.

    >>> plain(123456.0), plain(0.0000123), plain(-0.0), plain(2.50)
    ('123500', '0.0000123', '0', '2.5')
    """
    rounded = float(f"{value:.{figures}g}")
    if rounded == 0.0 or not isfinite(rounded):
        return "0" if rounded == 0.0 else "without bound"
    decimals = max(figures - 1 - floor(log10(abs(rounded))), 0)
    text = f"{rounded:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def figure(value: float, decimals: int) -> str:
    """Return a number with its thousands parted and so many decimals, no minus before a 0.

    >>> figure(1234.56, 1), figure(-0.04, 1)
    ('1,234.6', '0.0')
    """
    return f"{round(value, decimals) + 0.0:,.{decimals}f}"


def expected_of(kind: UnitKind) -> str:
    """Return what belongs there: the kind and the units in which people write it."""
    return f"{kind.phrase} ({', '.join(kind.spellings)})"


def with_unit(number: str, spellings: tuple[str, ...]) -> str:
    """Return the hint for a number without a unit: the same with one."""
    choices = [f"'{number} {unit}'" for unit in (spellings[0], spellings[-1])]
    return f"write it with its unit, such as {' or '.join(choices)}"


def unread(rest: str, text: str, expected: str) -> NoReturn:
    """Raise UnitError for what is left over of a text."""
    raise UnitError(text, expected, f"could not read {rest!r}; write a number and its unit only")


def two_readings(plain: str) -> str:
    """Return the hint for a comma, which parts thousands or decimals."""
    one = plain.replace(",", "")
    other = plain.replace(",", ".")
    if plain.count(",") > 1:
        return f"write it without commas: '{one}'"
    if re.search(r"\d,\d{3}(?!\d)", plain):
        return f"write '{one}' if the comma parts thousands, '{other}' if it is a decimal comma"
    return f"write '{other}' if it is a decimal comma"


def not_text(value: object, spellings: tuple[str, ...], expected: str) -> UnitError:
    """Return the error for what is no text, such as a bare number, with the fix."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        shown = type(value).__name__ if not isinstance(value, bool) else str(value).lower()
        return UnitError(shown, expected, f"write text such as '36 {spellings[0]}'")
    return UnitError(f"{value:g}", expected, with_unit(f"{value:g}", spellings))


def wrong_kind(text: str, unit: Unit, kind: UnitKind) -> UnitError:
    """Return the error for a quantity of another kind, naming both."""
    found = next((k.phrase for k in UNIT_KINDS.values() if k.dims == unit.dims), None)
    found = found or OTHER_KINDS.get(unit.dims, f"measured in {unit.name}")
    hint = f"{text.strip()!r} is {found}, where {kind.phrase} belongs"
    a, b = unit.dims, kind.dims
    if b == (a[0] + 1, a[1], a[2] - 2, a[3]):
        typed = " ".join(text.split())
        force = re.sub(r"(?<![A-Za-z])(?:lbs?|pounds?)(?![A-Za-z])\.?", "lbf", typed)
        other = f"'{kind.spellings[0] if force == typed else force}'"
        hint += f"; lb and kg are masses, a force is written lbf or N: {other}"
        if force != typed and kind.dims == (1, 1, -2, 0):
            return UnitError(text, expected_of(kind), hint, force, sure=True)
    elif a == (b[0] + 1, b[1], b[2] - 2, b[3]):
        hint += f"; it is written {' or '.join(kind.spellings)}"
    return UnitError(text, expected_of(kind), hint)
