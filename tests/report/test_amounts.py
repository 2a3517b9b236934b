"""Amounts as the trade writes them, worked out by hand."""

import pytest

from yardfast.report.wording.amounts import KMH, MPH, POUND, POUND_FORCE, Amounts

INCH = 0.0254
IMPERIAL, METRIC = Amounts(False), Amounts(True)


@pytest.mark.parametrize(
    ("inches", "shown"),
    [
        (20.0, "20 in"),
        (0.75, "3/4 in"),
        (21.647, "21 5/8 in"),
        (24.0, "24 in"),
        (59.25, "4 ft 11 1/4 in"),
        (60.0, "5 ft"),
        (0.0, "0 in"),
    ],
)
def test_lengths_are_shown_as_on_a_tape(inches, shown):
    assert IMPERIAL.length(inches * INCH) == shown


def test_limits_go_down_and_needs_go_up():
    assert IMPERIAL.gust(34.9 * MPH) == "34 mph"
    assert IMPERIAL.gust(34.0 * MPH) == "34 mph"
    assert IMPERIAL.act(29.9 * MPH) == "25 mph"
    assert IMPERIAL.act(25.0 * MPH) == "25 mph"
    assert METRIC.act(44.0 * KMH) == "40 km/h"
    assert IMPERIAL.pull(30.1 * POUND_FORCE) == "35 lb"
    assert IMPERIAL.pull(35.0 * POUND_FORCE) == "35 lb"
    assert IMPERIAL.width_needed(26.1 * INCH) == "2 ft 2 1/2 in"
    assert IMPERIAL.mass_needed(111.0 * POUND) == "115 lb"


def test_what_is_weighed_is_rounded_to_the_nearest():
    assert IMPERIAL.mass(36.4 * POUND) == "36 lb"
    assert IMPERIAL.mass(0.5 * POUND) == "8 oz"
    assert METRIC.mass(16.4) == "16 kg"
    assert METRIC.mass(4.04) == "4.0 kg"


def test_metric_lengths_are_millimetres():
    assert METRIC.length(1.5049) == "1,505 mm"


def test_a_narrow_miss_never_looks_like_a_pass():
    has, needs = IMPERIAL.has_and_needs(100.0 * POUND_FORCE, 100.02 * POUND_FORCE, "N", False)
    assert has == "100.00 lb"
    assert needs == "100.02 lb"


def test_a_push_below_a_pound_is_not_shown_as_nothing():
    assert IMPERIAL.force(0.5 * POUND_FORCE, "down") == "less than 1 lb"
