"""Gusts, at the object and as forecasts state them, and the pressure of ASCE 7."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast.loads.asce7 import gust_effect
from yardfast.loads.asce7 import velocity_pressure as asce7
from yardfast.loads.wind import dynamic_pressure as gust
from yardfast.loads.wind import how_often
from yardfast.loads.wind.exposure import EXPOSURES, exposure_letter

speeds = st.floats(0.0, 140.0)
factors = st.floats(0.3, 2.5)


@given(speeds, st.floats(0.0, 4.0))
def test_pressure_goes_with_the_square_of_the_speed(speed, times):
    assert gust.dynamic_pressure(speed * times) == pytest.approx(
        times**2 * gust.dynamic_pressure(speed)
    )


@given(speeds)
def test_gust_and_asce_agree_where_every_factor_is_one(speed):
    assert asce7.asce7_velocity_pressure(speed, 1.0) == pytest.approx(gust.dynamic_pressure(speed))


@given(speeds, factors, factors)
def test_forecast_gust_at_the_object_has_the_pressure_of_asce(speed, Kz, Kzt):
    q = gust.dynamic_pressure(gust.forecast_to_object(speed, Kz, Kzt))
    assert q == pytest.approx(asce7.asce7_velocity_pressure(speed, Kz, Kzt))


@given(st.floats(0.0, 100.0), st.floats(0.0, 100.0), st.sampled_from(asce7.EDITIONS))
def test_higher_up_or_more_open_never_has_less_wind(a, b, edition):
    low, high = sorted((a, b))
    sheltered, open_, shore = (asce7.exposure_coefficient(low, x, edition) for x in "BCD")
    assert sheltered < open_ < shore
    assert sheltered <= asce7.exposure_coefficient(high, "B", edition)


@given(st.floats(0.0, 4000.0), st.floats(0.0, 4000.0))
def test_air_is_never_denser_higher_up(a, b):
    low, high = sorted((a, b))
    assert asce7.elevation_factor(high) <= asce7.elevation_factor(low) <= 1.0


@given(st.floats(0.1, 40.0), st.floats(0.1, 20.0), st.floats(0.1, 20.0), st.sampled_from("BCD"))
def test_wider_never_has_a_greater_gust_factor_nor_one_below_0p85(h, a, b, exposure):
    narrow, wide = sorted((a, b))
    narrow_G, wide_G = (gust_effect.gust_factor_used(h, B, exposure) for B in (narrow, wide))
    assert 0.85 <= wide_G <= narrow_G


@given(st.floats(0.5, 5000.0))
def test_return_period_and_speed_are_inverse(years):
    assert how_often.return_period_of_ratio(how_often.speed_ratio(years)) == pytest.approx(years)


@given(st.floats(0.5, 5000.0), st.floats(20.0, 70.0))
def test_fifty_year_speed_gives_back_the_speed_of_the_map(years, speed):
    V50 = how_often.fifty_year_speed(speed, years)
    assert V50 * how_often.speed_ratio(years) == pytest.approx(speed)


@pytest.mark.parametrize(
    ("words", "letter"), [("houses and trees", "B"), ("open", "C"), ("shore", "D")]
)
def test_words_mean_the_same_exposure_as_their_letter(words, letter):
    assert exposure_letter(words) == exposure_letter(letter) == EXPOSURES[words] == letter
    assert asce7.exposure_coefficient(9.0, words) == asce7.exposure_coefficient(9.0, letter)


@pytest.mark.parametrize("kind", ["wheel", "ball", "gable", "3 sides"])
def test_kind_that_the_table_does_not_name_is_taken_in_full(kind):
    assert asce7.directionality(kind) == 1.0


@pytest.mark.parametrize(
    ("call", "named"),
    [
        (lambda: asce7.asce7_velocity_pressure(-1.0, 1.0), "speed: found -1"),
        (lambda: asce7.asce7_velocity_pressure(1.0, [1.0, -0.5]), r"Kz: found -0\.5"),
        (lambda: asce7.exposure_coefficient(-1.0, "C"), "height: found -1"),
        (lambda: asce7.exposure_coefficient(1.0, "A"), 'exposure: found "A"'),
        (lambda: asce7.exposure_coefficient(1.0, "C", "7-10"), 'edition: found "7-10"'),
        (lambda: asce7.directionality("square", "7-10"), 'edition: found "7-10"'),
        (lambda: gust.dynamic_pressure(-2.0), "speed: found -2"),
        (lambda: gust.forecast_to_object(1.0, 0.0), "Kz: found 0"),
        (lambda: gust_effect.rigid_gust_factor(0.0, 1.0, "C"), "height: found 0"),
        (lambda: gust_effect.rigid_gust_factor(1.0, 1.0, "E"), 'exposure: found "E"'),
        (lambda: how_often.speed_ratio(0.0), "years: found 0"),
        (lambda: how_often.return_period_of_ratio(-1.0), "ratio: found -1"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_what_no_relation_covers_is_refused_by_name(call, named):
    with pytest.raises(ValueError, match=named):
        call()
