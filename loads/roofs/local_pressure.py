"""Pressure coefficients of single panels, of each book: what a small part of a body takes."""

from functools import cache

from ... import references


@cache
def local_coefficient(book: str, place: str) -> float:
    """Return the pressure coefficient of a ``place`` on a body by a ``book``, "ASCE" or "EN".

    KeyError for another of either. Source: references/wind/local_pressure.csv.
    """
    for row in references.table("wind/local_pressure").where("book", book):
        if row["place"] == place:
            return float(row["coefficient"])
    raise KeyError(f"no local pressure of {book!r} for {place!r}")
