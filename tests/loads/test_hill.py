"""The crest of a hill: the factor at its greatest."""

import pytest

from yardfast.loads.asce7.hill import greatest_topographic_factor


@pytest.mark.parametrize(
    ("landform", "k1"),
    [("ridge", 0.72), ("bluff", 0.43), ("hill", 0.53)],
    ids=lambda value: f"ASCE 7-16 Fig. 26.8-1: {value}",
)
def test_the_crest_takes_the_greatest_k1_of_the_table(landform, k1):
    # Printed K1 multipliers of Exposure C at H/Lh = 0.50, to two decimals.
    found = greatest_topographic_factor(landform, "C") ** 0.5 - 1.0
    assert found == pytest.approx(k1, abs=0.005 + 1e-9)


@pytest.mark.parametrize("landform", ["ridge", "bluff", "hill"])
def test_a_smoother_approach_lets_gusts_run_faster(landform):
    found = [greatest_topographic_factor(landform, exposure) for exposure in "BCD"]
    assert found == sorted(found)
    assert found[0] < found[2]
