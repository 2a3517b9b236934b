"""A key too far from its name to be read as it: the part is told, never dropped."""

import pytest

from yardfast.checks.inputs import read_text
from yardfast.design.faults import DesignError

HEAD = """\
[design]
name = 'Gate'
units = 'metric'
[site]
method = 'gust'
exposure = 'open'
wind = '20 m/s'
ground = 'paving'
[[part]]
name = 'base'
shape = 'box'
length = '1 m'
width = '1 m'
height = '0.2 m'
material = 'concrete'
"""


@pytest.mark.parametrize("typed", ["shnanape", "sha-0.0pe", "sahppe", "shp_e_"])
def test_a_part_whose_shape_is_typed_far_off_is_not_dropped(typed):
    part = f"[[part]]\nname = 'cap'\n{typed} = 'plate'\non = 'base'\nsides = 4\nacross = '0.5 m'\n"
    with pytest.raises(DesignError) as wrong:
        read_text(f"{HEAD}{part}thickness = '18 mm'\nmaterial = 'softwood plywood'\n")
    assert {fault.part for fault in wrong.value.faults} == {"cap"}
    assert {fault.key for fault in wrong.value.faults} & {"shape", typed}


def test_ballast_whose_kind_is_broken_is_told():
    table = "[[ballast]]\nname = 'bags'\nkind -0.0= '40 lb bag'\non = 'base'\n"
    with pytest.raises(DesignError) as wrong:
        read_text(HEAD + table)
    assert "bags" in {fault.part for fault in wrong.value.faults}
