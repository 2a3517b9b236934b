"""The ``[[guy]]`` table: what is wrong in it is said in words."""

import pytest
from sample_file import HARBOUR_LIGHT, the_fault

from yardfast.checks.inputs import read_text
from yardfast.statics.tables.anchor_table import GuyRow

GUYS = """
[[guy]]
name   = 'guys'
line   = 'nylon rope 6 mm'
anchor = 'rebar stake 1/2 in x 36 in'
height = '4 ft'
radius = '4 ft'
count  = 4
"""


@pytest.mark.parametrize(
    ("end", "expected"),
    [
        ("granny knot", "one of 'bowline'"),
        ("swaged sleeve", "a way to make fast a rope: bowline"),
        ("clips", "a way to make fast a rope: bowline"),
    ],
)
def test_an_end_that_there_is_not_is_a_fault(end, expected):
    fault = the_fault(f"{HARBOUR_LIGHT}{GUYS}end = '{end}'\n")
    assert (fault.part, fault.key, fault.found) == ("guys", "end", end)
    assert fault.expected.startswith(expected)


def test_an_end_of_its_kind_is_taken():
    (row,) = read_text(f"{HARBOUR_LIGHT}{GUYS}end = 'bowline'\n").several(GuyRow)
    assert row.end == "bowline"
