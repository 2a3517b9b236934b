"""What ropes give and what is laid down weighs, by hand."""

import pytest

from yardfast.materials import ballast, guy_lines


@pytest.mark.parametrize(
    ("name", "stretch"), [("nylon rope 1/4 in", 0.15), ("polyester rope 1/4 in", 0.06)]
)
def test_a_pull_over_its_strain_is_a_fifth_of_what_breaks_a_rope_over_its_stretch(name, stretch):
    """Nylon gives 15 % and polyester 6 % at a fifth of what breaks it (common practice, judgement):
    EA of what breaks at 1,000 lbf and gives 15 % would be 1,333 lbf."""
    line = guy_lines.find_line(name)
    assert line.stiffness == pytest.approx(0.2 * line.breaking / stretch, rel=1e-12)
    assert pytest.approx(1333.3, abs=0.05) == 0.2 * 1000.0 / 0.15


def test_a_bag_weighs_what_it_is_sold_as():
    """40 lb: 40 x 0.45359237 = 18.1437 kg, no less and no more."""
    bag = ballast.find_ballast("40 lb bag")
    assert (bag.least, bag.most) == pytest.approx((18.1437, 18.1437), abs=5e-5)
