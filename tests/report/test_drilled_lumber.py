"""Among what was assumed stands of which lumber the holes of thick fasteners are not taken off."""

from pathlib import Path

import pytest

import yardfast as yf

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.mark.parametrize(
    ("name", "parts"), [("fingerpost", ""), ("mailbox", "of post and arm "), ("swing", "of ")]
)
def test_holes_are_told_of_bolts_and_lag_screws_alone(name, parts):
    said = yf.check(yf.read(EXAMPLES / f"{name}.toml")).assumptions
    told = [line for line in said if line.startswith("Holes of bolts and lag screws")]
    assert len(told) == bool(parts)
    assert all(parts in line for line in told)
