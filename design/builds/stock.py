"""Stock sizes as sold: what a 2x4 or a sheet of 3/4 plywood measures."""

import re
from fractions import Fraction

from ...materials.stock import lumber_sizes, sheet_thicknesses
from ...units import INCH, plain
from ...units.frozen import ByValue
from ..reader.near_names import LIKE_ENOUGH, misspelt, nearest_name
from ..reader.row import Row
from ..reader.schema import Instead, Key
from ..reader.sheet_names import sheet_thickness, sheet_word

LUMBER = Key("lumber", "text")
STOCK = Key("stock", "text")


class _Section(ByValue, frozen=True):
    """A stick's actual section in m, as it lies: its width in plan and its height."""

    thin: float
    wide: float
    on_edge: bool = False

    @property
    def in_plan(self) -> float:
        """Return its width seen from above."""
        return self.thin if self.on_edge else self.wide

    @property
    def high(self) -> float:
        """Return its height."""
        return self.wide if self.on_edge else self.thin


def lumber_section(row: Row, instead: tuple[str, ...], standing: bool) -> _Section | None:
    """Return the section that ``lumber`` names; it stands for the keys ``instead``.

    Where it lies and is not square, flat or on edge must be said; where it stands, it must not.
    """
    for key in instead:
        if row.given(key):
            row.refuse(
                key,
                f"no '{key}' beside 'lumber', which states it",
                "leave out one of the two",
            )
    text = row.text("lumber")
    if text is None:
        return None
    name, lying = named_lumber(text)
    size = lumber_size(name)
    if size is None:
        near = nearest_name(name, list(lumber_sizes()))
        expected = "lumber as it is sold, such as '2x4', '4x4', '5/4x6' or '45x95 mm'"
        row.refuse("lumber", expected, f"'{near}'?" if near else "")
        return None
    thin, wide = size
    if standing and lying:
        hint = f"lumber = '{name}'; 'turn' turns it"
        expected = "lumber without 'flat' or 'on edge': it stands"
        row.refuse("lumber", expected, hint, Instead(f"'{name}'"))
        return None
    if not standing and not lying and thin != wide:
        hint = f"'{name} flat' or '{name} on edge'?"
        row.refuse("lumber", "lumber that lies flat or on edge", hint)
        return None
    section = _Section(thin, wide, on_edge=lying == "on edge")
    if lumber_sizes().get(name) is None:
        return section  # its name says what it measures
    if standing:
        row.note(f"{name} is {_told(row, wide)} by {_told(row, thin)}")
    else:
        how = "" if thin == wide else (" on edge" if section.on_edge else " flat")
        row.note(
            f"{name}{how} is {_told(row, section.in_plan)} wide and {_told(row, section.high)} high"
        )
    return section


def thickness(row: Row, key: str, needed: bool = True) -> float | None:
    """Return a wall or thickness in m, given as such or by the sheet ``stock`` that it is of."""
    if not row.given("stock"):
        if needed:
            row.need(key)
        return row.quantity(key)
    if row.given(key):
        row.refuse(
            key,
            f"no '{key}' beside 'stock', which states it",
            "leave out one of the two",
        )
    text = row.text("stock")
    if text is None:
        return None
    found = sheet_thickness(text)
    if found is None:
        expected = "a sheet as it is sold, such as '3/4 plywood' or '18 mm plywood'"
        row.refuse("stock", expected, *_near_sheet(text, key))
        return None
    name, thick = found
    if not _METRIC.search(name):
        row.note(f"{name} is {_told(row, thick)} thick")
    return thick


def named_lumber(text: str) -> tuple[str, str]:
    """Return lumber's name such as ``2x4`` and how it lies: ``flat``, ``on edge`` or nothing."""
    plain = re.sub(r"(?<=\d)\s*(?:x|×|by|\*)\s*(?=\d)", "x", " ".join(text.casefold().split()))
    plain = re.sub(
        r"^(?:pt|treated|pressure[ -]treated)\s+|(?<=\d)\s*(?:lumber|studs?)\b", "", plain
    )
    match = re.fullmatch(r"(.*?)[ ,]*(?:(?:laid |lying )?(flat)|(on[ -]?(?:its )?edge))?", plain)
    if match is None:
        return plain, ""
    return match[1].strip(), "flat" if match[2] else "on edge" if match[3] else ""


def lumber_size(name: str) -> tuple[float, float] | None:
    """Return the thin and the wide measure in m of lumber such as ``2x4`` or ``45x95 mm``.

    A nominal size in inches gives what it measures dressed; one in mm, or with both numbers above
    those of inches, is what it measures.
    """
    sizes = lumber_sizes()
    if name in sizes:
        thin, wide = sorted(sizes[name])
        return thin, wide
    metric = re.fullmatch(r"(\d{2,3})x(\d{2,3})\s*(mm)?", name, re.ASCII)
    if metric is None:
        return None
    thin, wide = sorted((int(metric[1]), int(metric[2])))
    if thin < _LEAST_MM and not metric[3]:
        return None
    return thin / 1000.0, wide / 1000.0


_METRIC = re.compile(r"\d mm\b")
_LEAST_MM = 17
"""Above what lumber measures in inches: 45x95 can only be mm."""


def _near_sheet(text: str, key: str) -> tuple[str, Instead | None]:
    """Return the hint to a sheet that is not known, and what to type instead."""
    word = sheet_word(text)
    names = list(sheet_thicknesses())
    if not any(letter.isdigit() for letter in word) and sheet_thickness(f"3/4 {word}"):
        return f"'1/2 {word}', '3/4 {word}' or another thickness?", None
    for tried in (word, f"{word} plywood"):
        near = misspelt(tried, names) or nearest_name(tried, names, LIKE_ENOUGH)
        if near:
            return f"'{near}'?", Instead(f"'{near}'", misspelt(tried, names) == near)
    return f"{key} = '3/4 in'", None


def _told(row: Row, length: float) -> str:
    """Return a length in the units in which the design is shown."""
    return f"{plain(1000.0 * length)} mm" if row.reading.metric else _inches(length)


def _inches(length: float) -> str:
    """Return a length in inches as on a tape where it is a 32nd, else to a thousandth."""
    exact = length / INCH
    tape = Fraction(round(exact * 32), 32)
    if abs(float(tape) - exact) > 1.0e-6:
        return f"{exact:.3f} in"
    whole, rest = divmod(tape, 1)
    parts = [str(whole)] if whole or not rest else []
    return " ".join([*parts, str(rest)] if rest else parts) + " in"
