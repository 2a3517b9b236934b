"""Thrust on wheels of blades."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.coefficients import rotor

solidities = st.floats(0.0, 1.5)


@pytest.mark.parametrize(
    ("solidity", "locked", "spinning"),
    [(0.0, 0.0, 1.2), (0.05, 0.1, 1.2), (0.2, 0.36, 1.2), (0.5, 0.8, 1.2), (0.65, 1.04, 1.2)],
)
def test_thrust_on_the_disc(solidity, locked, spinning):
    """Locked: ASCE/SEI 7 Fig. 29.4-2, Cf eps by hand (memory). Spinning: as a
    disc, above the 1.17 of a flat one (Hoerner 1965, memory)."""
    assert rotor.locked(solidity) == pytest.approx(locked)
    assert rotor.spinning(solidity) == pytest.approx(spinning)


@pytest.mark.parametrize("solidity", [0.7, 0.9, 1.0, 1.4])
def test_dense_wheel_is_a_disc_of_1p2(solidity):
    """Judgement, above the 1.12 (OpenStax) and 1.17 (Hoerner) of a solid disc."""
    assert rotor.locked(solidity) == rotor.spinning(solidity) == 1.2


@given(solidities, solidities)
def test_more_blade_never_takes_less_wind(a, b):
    few, many = sorted((a, b))
    assert rotor.locked(few) <= rotor.locked(many) <= 1.2
    assert 1.17 <= rotor.spinning(few) <= rotor.spinning(many) <= 1.2


@given(solidities)
def test_spinning_never_takes_less_than_locked(solidity):
    assert rotor.spinning(solidity) >= rotor.locked(solidity)


@given(st.floats(0.001, 1.0))
def test_blades_and_disc_give_the_same_force(solidity):
    assert rotor.blade_coefficient(solidity) * solidity == pytest.approx(rotor.locked(solidity))


def test_thinnest_blades_take_the_coefficient_of_the_most_open_sign():
    assert rotor.blade_coefficient(0.0) == pytest.approx(2.0)


def test_negative_solidity_is_refused_by_name():
    with pytest.raises(ValueError, match=r"solidity: found -0\.1"):
        rotor.locked([-0.1, 0.5])
