"""Numbers that stand in equations of NDS, by their names in references/wood/nds_equations.csv."""

from functools import cache

from .... import references


@cache
def nds_number(name: str) -> float:
    """Return a number of an equation of NDS by its name in the table. KeyError for another."""
    return float(references.table("wood/nds_equations").one("name", name)["value"])
