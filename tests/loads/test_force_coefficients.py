"""Force coefficients between and beyond their printed values."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.coefficients import force_coefficients as cf

slenderness = st.floats(0.0, 60.0)


@given(slenderness, slenderness)
def test_more_slender_never_has_a_lower_coefficient(a, b):
    low, high = sorted((a, b))
    for section in (cf.square_face, cf.square_diagonal, cf.hexagon_or_octagon):
        assert section(low) <= section(high)


@given(slenderness, st.booleans())
def test_rougher_never_has_a_lower_coefficient(h_over_D, above):
    smooth, rough, very_rough = (cf.round_section(h_over_D, s, above) for s in cf.SURFACES)
    assert smooth <= rough <= very_rough


@given(st.floats(0.02, 3.0))
def test_round_section_switches_where_diameter_times_root_of_pressure_is_5p3(D):
    """ASCE/SEI 7 Fig. 29.4-1: D sqrt(q_z) = 5.3 in m and N/m2 (memory)."""
    assert D * math.sqrt(cf.round_limit_pressure(D)) == pytest.approx(5.3)


def test_ball_is_0p7():
    """Judgement; above the 0.40 to 0.47 of measured rough spheres (Matthews; Hoerner)."""
    assert cf.ball() == 0.7
    assert cf.round_section(1.0, "rough", False) == cf.ball()


@given(st.floats(0.1, 3.0), st.floats(0.1, 3.0), st.floats(0.0, 1.0), st.floats(0.1, 1.5))
def test_between_face_and_diagonal_stays_between_them(face, diagonal, share, corner):
    product = cf.between_face_and_diagonal(face, diagonal, share * corner, corner)
    assert min(face, diagonal) - 1e-12 <= product <= max(face, diagonal) + 1e-12


@given(st.floats(0.0, math.pi / 4))
def test_square_is_symmetric_about_its_diagonal(phi):
    left, right = cf.between_face_and_diagonal(
        1.3, 1.41, np.array([phi, math.pi / 2 - phi]), math.pi / 4
    )
    assert left == pytest.approx(right)


def test_between_reaches_both_ends_and_is_half_way_at_half_the_angle():
    product = cf.between_face_and_diagonal(1.0, 2.0, np.array([0.0, 0.25, 0.5]), 0.5)
    assert product == pytest.approx([1.0, 1.5, 2.0])


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: cf.round_section(3.0, "shiny", True), 'surface: found "shiny"'),
        (lambda: cf.square_face(-1.0), "h/D: found -1"),
        (lambda: cf.round_limit_pressure([0.1, 0.0]), "D: found 0"),
    ],
    ids=["surface", "slenderness", "diameter"],
)
def test_what_no_figure_covers_is_refused_by_name(call, named):
    with pytest.raises(ValueError, match=named):
        call()
