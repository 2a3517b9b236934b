"""Every published answer that ships, worked out again from its printed inputs."""

from collections.abc import Callable, Mapping

from ... import references
from ...references import TableRow
from ...units.frozen import ByValue
from .en1995_values import EN1995_VALUES
from .ground_values import GROUND_VALUES
from .wind_values import WIND_VALUES
from .wood_values import WOOD_VALUES

VERIFIED_TABLES = ("verified/wind", "verified/wood", "verified/ground")
"""What is printed, by trade; each row names the value of these rooms that it is held against."""

VALUES: Mapping[str, Callable[..., float]] = {
    **WIND_VALUES,
    **WOOD_VALUES,
    **EN1995_VALUES,
    **GROUND_VALUES,
}
"""What can be held against a print: a function of the printed inputs, in the printed unit."""

_ROUNDING = 1.0e-9


class Recomputed(ByValue, frozen=True):
    """One published answer: ``what`` it is of which ``inputs``, as ``printed``, and ``ours``.

    Both are in ``unit``, each input in the one that its name ends with.
    ``tolerance`` is half a unit of the last printed digit, or half of the ``step`` to which the
    source rounds, or which its own rounded inputs leave open; ``note`` says why.
    ``source`` is the document, ``place`` where in it, ``confidence`` how well the print is known.
    """

    what: str
    inputs: Mapping[str, str]
    source: str
    place: str
    confidence: str
    printed: str
    unit: str
    ours: float
    tolerance: float
    note: str

    @property
    def value(self) -> float:
        """Return what is printed as a number."""
        return float(self.printed)

    @property
    def difference(self) -> float:
        """Return ours less what is printed."""
        return self.ours - self.value

    @property
    def passes(self) -> bool:
        """Return whether the two agree to the printed digit."""
        return abs(self.difference) <= self.tolerance * (1.0 + _ROUNDING) + _ROUNDING


def recomputed() -> tuple[Recomputed, ...]:
    """Return every published answer with ours, in the order of the tables.

    >>> all(row.passes for row in recomputed())
    True
    """
    rows = [row for name in VERIFIED_TABLES for row in references.table(name).rows]
    return tuple(_recompute(row) for row in rows)


def _recompute(row: TableRow) -> Recomputed:
    inputs = dict(pair.split("=") for pair in row["inputs"].split("; ") if pair)
    ours = VALUES[row["value"]](**{name: _number(text) for name, text in inputs.items()})
    return Recomputed(
        what=row["what"],
        inputs=inputs,
        source=row["source"],
        place=row["place"],
        confidence=row["confidence"],
        printed=row["printed"],
        unit=row["unit"],
        ours=float(ours),
        tolerance=0.5 * (float(row["step"]) if row["step"] else last_digit(row["printed"])),
        note=row["note"],
    )


def last_digit(printed: str) -> float:
    """Return what one unit of the last digit of a printed number is.

    >>> last_digit("107.13"), last_digit("4241")
    (0.01, 1.0)
    """
    return 10.0 ** -len(printed.partition(".")[2])


def _number(text: str) -> float | str:
    try:
        return float(text)
    except ValueError:
        return text
