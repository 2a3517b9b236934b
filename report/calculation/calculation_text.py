"""Numbers of a calculation as text, and the pieces of which its pages are made."""

from collections.abc import Mapping, Sequence
from typing import Any

from ...checks.judged.judging import Check
from ..wording.filled import plain_source


def four_figures(value: float) -> str:
    """Return a number with at least four figures, without exponent."""
    size = abs(value)
    decimals = 0 if size >= 1000.0 else 1 if size >= 100.0 else 2 if size >= 10.0 else 3
    if 0.0 < size < 0.1:
        decimals = 5
    said = f"{value:,.{decimals}f}"
    return "0" if not any(digit in said for digit in "123456789") else said


def step(
    formula: str, words: str, values: Mapping[str, float], clause: str = "", **texts: str
) -> dict[str, Any]:
    """Return one step: a formula of the template by name, its numbers, and where it comes from."""
    shown = {name: four_figures(value) for name, value in values.items()}
    return {
        "kind": "step",
        "formula": formula,
        "words": words.rstrip("."),
        "values": {**shown, **texts},
        "clause": plain_source(clause),
    }


def ratio(words: str, check: Check, clause: str = "") -> dict[str, Any]:
    """Return the step of what a check asks over what holds it, and whether that is met."""
    met = "met" if check.passes else "not met"
    if check.capacity <= 0.0 or check.utilization is None:
        return paragraph("Nothing is left to resist: not met.")
    used = check.demand / check.capacity if check.unit != "1" else check.utilization
    values = {"demand": check.demand, "capacity": check.capacity, "ratio": used}
    return step("ratio", words, values, clause, met=met)


def calculation_table(
    head: Sequence[str], rows: Sequence[Sequence[str]], words: str = ""
) -> dict[str, Any]:
    """Return a table with its heads; the first column is text, the others numbers."""
    return {
        "kind": "table",
        "head": list(head),
        "rows": [list(row) for row in rows],
        "words": words,
    }


def paragraph(words: str) -> dict[str, Any]:
    """Return a plain paragraph."""
    return {"kind": "text", "words": words}


def calculation_section(title: str, *items: dict[str, Any] | None) -> dict[str, Any]:
    """Return a section of the calculation; items that do not apply are None."""
    return {"title": title, "items": [item for item in items if item is not None]}
