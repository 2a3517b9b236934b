"""Whom to ask before driving anything into the ground, by country."""

from ... import references

ANYWHERE = "call 811 in the US, the local line elsewhere,"
ELSEWHERE = "call the local line"


def dig_line(country: str | None) -> str:
    """Return whom to ask before digging, as a clause: ``call 811``, ``call the local line``."""
    if country is None:
        return ANYWHERE
    word = " ".join(country.casefold().split())
    for row in references.table("dig_lines").rows:
        if word in (row["country"].casefold(), *row["also"].split("; ")):
            return row["ask"]
    return ELSEWHERE
