"""How stock is bought."""

import pytest

from yardfast import materials
from yardfast.materials.bought import lumber_lengths, nominal_size, saw_kerf, sheet_sizes, sold_as

FOOT = 0.3048


def test_the_usual_sheet_is_four_by_eight_and_longer_ones_follow():
    first, *others = sheet_sizes("imperial")
    assert (first.width, first.length) == (pytest.approx(4 * FOOT), pytest.approx(8 * FOOT))
    assert all(size.length > first.length for size in others)
    metric = sheet_sizes("metric")[0]
    assert (metric.width, metric.length) == (pytest.approx(1.22), pytest.approx(2.44))


def test_the_saw_takes_an_eighth_of_an_inch_or_three_millimetres():
    assert saw_kerf("imperial") == pytest.approx(0.125 * 0.0254)
    assert saw_kerf("metric") == pytest.approx(0.003)


def test_lumber_comes_in_lengths_of_eight_feet_and_more():
    assert lumber_lengths("imperial") == pytest.approx((8 * FOOT, 10 * FOOT, 12 * FOOT))
    assert lumber_lengths("metric") == pytest.approx((2.4, 3.0, 3.6))


def test_every_material_is_sold_in_some_form():
    forms = {name: sold_as(name) for name in materials.material_names()}
    assert set(forms.values()) == {"sheet", "board", "other"}
    assert forms["softwood plywood"] == forms["acrylic"] == forms["aluminium"] == "sheet"
    assert forms["western redcedar"] == forms["composite decking"] == "board"
    assert forms["concrete"] == forms["cast iron"] == "other"
    assert sold_as(None) == "sheet"


def test_a_section_is_called_by_its_nominal_size():
    inch = 0.0254
    assert nominal_size(1.5 * inch, 3.5 * inch) == "2x4"
    assert nominal_size(0.045, 0.095) is None
