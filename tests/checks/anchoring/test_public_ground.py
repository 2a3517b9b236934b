"""Embedment as the public API gives it."""

import pytest

from yardfast import units
from yardfast.checks.anchoring.capacity.public_ground import embedment


@pytest.mark.parametrize(
    ("load", "height", "width", "feet"),
    [("889.2 lbf", "3.4 ft", "3 ft", 3.72), ("79.04 lbf", "3.2 ft", "18 in", 1.88)],
    ids=["Zephyrhills 178567 p. 40", "Zephyrhills 178567 p. 30"],
)
def test_sign_footings_at_the_pressure_of_their_own_depth(load, height, width, feet):
    """Recomputed apart from the record, S1 at a third of the depth found."""
    found = embedment(load, height, "300 lbf/ft^3", width)
    assert found.to("ft").magnitude == pytest.approx(feet, abs=0.005)


def test_constrained_by_hand():
    """d3 = 4.25 x 79.04 x 3.2/(300 x 1.5) = 2.3887 ft3: 1.34 ft."""
    found = embedment("79.04 lbf", "3.2 ft", "300 psf/ft", "1.5 ft", constrained=True)
    assert found.to("ft").magnitude == pytest.approx(1.34, abs=0.005)


def test_quantities_serve_as_well_as_text():
    given = ("400 N", "1 m", "15.7 kPa/m", "0.3 m")
    kinds = ("force", "length", "lateral bearing", "length")
    as_quantities = [
        units.quantity(units.to_si(text, kind), kind)
        for text, kind in zip(given, kinds, strict=True)
    ]
    assert embedment(*as_quantities).magnitude == pytest.approx(embedment(*given).magnitude)


@pytest.mark.parametrize(
    ("wrong", "named"),
    [
        ({"lateral_load": "80 lb"}, "lateral_load.*lbf"),
        ({"height": "tall"}, "height"),
        ({"lateral_bearing": "150 psf"}, "lateral_bearing"),
        ({"lateral_bearing": "0 psf/ft"}, "lateral_bearing"),
        ({"width": "0 in"}, "width"),
        ({"width": "-3 in"}, "width"),
    ],
)
def test_a_wrong_argument_is_named(wrong, named):
    given = {
        "lateral_load": "80 lbf",
        "height": "3 ft",
        "lateral_bearing": "150 psf/ft",
        "width": "4 in",
    }
    with pytest.raises(ValueError, match=named):
        embedment(**(given | wrong))


@pytest.mark.parametrize("word", ["no", "yes", 0, 1, None])
def test_a_word_for_constrained_is_no_answer(word):
    """The word "no" counts as true, and would give the shallower depth."""
    with pytest.raises(ValueError, match=r"constrained: found .*, expected True or False"):
        embedment("80 lbf", "3 ft", "150 psf/ft", "4 in", word)


def test_constrained_may_stand_in_its_place():
    given = ("79.04 lbf", "3.2 ft", "300 psf/ft", "1.5 ft")
    by_name = embedment(*given, constrained=True)
    assert embedment(*given, True).magnitude == by_name.magnitude
