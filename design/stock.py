"""Stock sizes as sold: what a 2x4 or a sheet of 3/4 plywood measures."""

import re
from dataclasses import dataclass
from fractions import Fraction

from ..materials.stock import lumber_sizes, sheet_thicknesses
from ..units import INCH
from .near_names import meant
from .row import Row
from .schema import Key

LUMBER = Key("lumber", "text")
STOCK = Key("stock", "text")


@dataclass(frozen=True)
class Section:
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


def lumber_section(row: Row, instead: tuple[str, ...], standing: bool) -> Section | None:
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
    plain = re.sub(r"\s*(?:x|×|by)\s*", "x", " ".join(text.casefold().split()))
    match = re.fullmatch(r"(.*?)[ ,]*(flat|on[ -]edge)?", plain)
    name, lying = (match[1], match[2]) if match else (plain, None)
    sizes = lumber_sizes()
    if name not in sizes:
        row.refuse(
            "lumber",
            "lumber as it is sold, such as '2x4', '4x4' or '5/4x6'",
            meant(name, list(sizes)),
        )
        return None
    thin, wide = sorted(sizes[name])
    if standing and lying:
        hint = f"lumber = '{name}'; 'turn' turns it"
        row.refuse("lumber", "lumber without 'flat' or 'on edge': it stands", hint)
        return None
    if not standing and not lying and thin != wide:
        hint = f"'{name} flat' or '{name} on edge'?"
        row.refuse("lumber", "lumber that lies flat or on edge", hint)
        return None
    section = Section(thin, wide, on_edge=bool(lying) and lying != "flat")
    if standing:
        row.note(f"{name} is {_inches(wide)} by {_inches(thin)}")
    else:
        how = "" if thin == wide else (" on edge" if section.on_edge else " flat")
        row.note(f"{name}{how} is {_inches(section.in_plan)} wide and {_inches(section.high)} high")
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
    sizes = sheet_thicknesses()
    plain = re.sub(r"\s+(?:in|inch|inches)\.?\s+|\"", " ", text.casefold())
    plain = re.sub(r"\bply\b", "plywood", plain)
    word = " ".join(plain.split())
    name = next((name for name in sizes if name.casefold() == word), None)
    if name is None:
        expected = "a sheet as it is sold, such as '3/4 plywood'"
        row.refuse(
            "stock",
            expected,
            meant(word if " " in word else f"{word} plywood", list(sizes)) or f"{key} = '3/4 in'",
        )
        return None
    row.note(f"{name} is {_inches(sizes[name])} thick")
    return sizes[name]


def _inches(length: float) -> str:
    """Return a length in inches as on a tape where it is a 32nd, else to a thousandth."""
    exact = length / INCH
    tape = Fraction(round(exact * 32), 32)
    if abs(float(tape) - exact) > 1.0e-6:
        return f"{exact:.3f} in"
    whole, rest = divmod(tape, 1)
    parts = [str(whole)] if whole or not rest else []
    return " ".join([*parts, str(rest)] if rest else parts) + " in"
