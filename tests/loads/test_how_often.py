"""How often a gust comes: by local values, by a map, by a record of peaks."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from yardfast import units
from yardfast.loads.public_how_often import return_period as public
from yardfast.loads.recurrence import recurrence
from yardfast.loads.wind.how_often import (
    fifty_year_speed,
    return_period_of_ratio,
    speed_ratio,
    years_between,
)
from yardfast.loads.wind.peak_gusts import fit_peaks, recurrence_by_peaks
from yardfast.loads.wind.site import Site
from yardfast.loads.yearly import Yearly

MPH = 0.44704


@pytest.mark.parametrize("years", [3, 10, 17, 50, 90])
def test_two_values_of_the_commentary_give_the_periods_between(years):
    """ASCE/SEI 7-10 C26.5, V_T/V_50 = 0.36 + 0.1 ln(12 T): a straight line in ln T."""
    V = 40 * speed_ratio([10, 50])
    assert years_between(40 * speed_ratio(years), [10, 50], V) == pytest.approx(years)


def test_each_piece_between_local_values_is_its_own_line():
    given = ([2, 10, 50], [20.0, 30.0, 34.0])
    found = years_between([20.0, 25.0, 30.0, 32.0, 34.0], *given)
    assert found == pytest.approx([2, math.sqrt(20), 10, math.sqrt(500), 50])


def test_rarer_than_twice_the_longest_is_not_told():
    given = ([10, 50], [30.0, 34.0])
    edge = 34.0 + 4.0 * math.log(2) / math.log(5)
    assert years_between(edge, *given) == pytest.approx(100)
    assert np.isinf(years_between(edge + 1e-6, *given))


@given(st.floats(1.0, 90.0), st.floats(1.0, 90.0))
def test_a_stronger_gust_is_never_more_frequent(a, b):
    found = years_between(sorted((a, b)), [2, 10, 50], [20, 27, 33])
    assert found[0] <= found[1]


@pytest.mark.parametrize(
    ("years", "speeds"),
    [([10], [30.0]), ([10, 50], [30.0, 30.0]), ([50, 10], [30.0, 34.0]), ([10, 50], [30.0])],
)
def test_values_that_do_not_grow_are_refused(years, speeds):
    with pytest.raises(ValueError, match="expected"):
        years_between(32.0, years, speeds)


def site(**given):
    return Site(**{"method": "forecast", "wind": 26.0, "ground": "paving"} | given)


def test_a_site_with_local_gusts_is_told_by_them():
    found = recurrence(32.0, site(gusts={10: 30.0, 50: 34.0}, hurricane=False))
    assert (found.method, found.longest) == ("local values", 50)
    assert found.years == pytest.approx(math.sqrt(500))


def test_a_map_speed_is_told_by_the_commentary():
    """C26.5: of a 700-year 115 mph, V_50 91.0; a 60 mph gust comes once in 1.7 years."""
    found = recurrence(
        60 * MPH,
        site(method="ASCE 7-22", wind=115 * MPH, return_period=700.0, hurricane=False),
    )
    V_50 = 115 / (0.36 + 0.1 * math.log(12 * 700))
    assert found.years == pytest.approx(math.exp((60 / V_50 - 0.36) / 0.1) / 12)
    assert found.years == pytest.approx(1.7, abs=0.05)
    assert (found.method, found.longest) == ("map", 700.0)
    again = return_period_of_ratio(60 / fifty_year_speed(115, 700))
    assert found.years == pytest.approx(float(again))


@pytest.mark.parametrize(
    "given",
    [
        {"hurricane": False},
        {"hurricane": True, "method": "ASCE 7-22", "return_period": 700.0},
        {"method": "ASCE 7-22", "return_period": 700.0},
        {"hurricane": False, "method": "ASCE 7-22"},
        {"hurricane": False, "method": "gust", "return_period": 700.0},
    ],
)
def test_nothing_is_told_without_ground_for_it(given):
    assert recurrence(32.0, site(**given)) is None


def test_a_map_tells_no_further_than_twice_its_own_period():
    far = site(method="ASCE 7-22", wind=115 * MPH, return_period=700.0, hurricane=False)
    assert math.isinf(recurrence(140 * MPH, far).years)
    assert recurrence(115 * MPH, far).years == pytest.approx(700.0)


@pytest.mark.parametrize("hurricane", [True, None])
def test_a_place_s_own_gusts_hold_in_hurricane_regions_too(hurricane):
    found = recurrence(32.0, site(gusts={10: 30.0, 50: 34.0}, hurricane=hurricane))
    assert found.method == "local values"


def test_a_record_tells_by_its_fit():
    peaks = gumbel(40, 30.0, 3.0, 3).tolist()
    found = recurrence(36.0, site(peaks=tuple(peaks)))
    assert found == recurrence_by_peaks(36.0, fit_peaks(peaks))
    assert found.method == "peaks"


def gumbel(count, mode, scale, seed):
    uniform = np.random.default_rng(seed).random(count)
    return mode - scale * np.log(-np.log(uniform))


def test_fit_is_the_most_likely_one():
    """Gumbel 1958: scale = mean - sum(x e^(-x/s))/sum(e^(-x/s)), and mode of that scale."""
    x = gumbel(40, 30.0, 3.0, 3)
    found = fit_peaks(x.tolist())
    w = np.exp(-x / found.scale)
    assert found.scale == pytest.approx(x.mean() - (x * w).sum() / w.sum(), rel=1e-6)
    assert found.mode == pytest.approx(-found.scale * math.log(w.mean()), rel=1e-6)


def test_fit_of_yearly_peaks_gives_back_their_return_periods():
    """P(exceeded in a year) = 1 - exp(-exp(-(V - mode)/scale)); once in 1/P years."""
    peaks = fit_peaks(gumbel(60, 30.0, 3.0, 4).tolist())
    gust = 38.0
    above = 1 - math.exp(-math.exp(-(gust - peaks.mode) / peaks.scale))
    found = recurrence_by_peaks(gust, peaks)
    assert found.years == pytest.approx(1 / above)
    assert (found.method, found.longest) == ("peaks", 60)


def test_daily_peaks_count_by_their_blocks():
    """The strongest of each 30 days, some 12 blocks a year; a day's neighbours add nothing."""
    days = gumbel(3 * 365, 12.0, 2.5, 5)
    once = fit_peaks(days.tolist(), "daily")
    assert once.blocks_a_year == pytest.approx(365.25 / 30)
    assert once.record == pytest.approx(3, abs=0.01)
    calm = np.where(days < np.median(days), 0.5 * days, days)
    assert fit_peaks(calm.tolist(), "daily").mode == pytest.approx(once.mode)
    assert recurrence_by_peaks(once.mode, once).years < 0.2
    assert math.isinf(recurrence_by_peaks(once.mode + 20 * once.scale, once).years)


@pytest.mark.parametrize(
    ("peaks", "per", "named"),
    [
        ([30.0] * 9, "yearly", "10"),
        ([30.0] * 12, "yearly", "same"),
        ([30.0, float("nan")] * 6, "yearly", "above 0"),
        ([30.0, -1.0] * 6, "yearly", "above 0"),
        ([30.0] * 400, "daily", "730"),
        ([30.0, 31.0] * 6, "weekly", "yearly"),
    ],
)
def test_a_record_that_tells_nothing_is_refused(peaks, per, named):
    with pytest.raises(ValueError, match=named):
        fit_peaks(peaks, per)


def test_public_return_period_takes_text_and_quantities():
    by_text = public("67.5 mph", {10: "60 mph", "50": "75 mph"})
    assert by_text == pytest.approx(math.sqrt(500))
    gust = units.quantity(67.5 * MPH, "speed")
    assert public(gust, {10: "60 mph", 50: "75 mph"}) == pytest.approx(by_text)


@pytest.mark.parametrize(
    ("gust", "gusts", "named"),
    [
        ("100 mph", {10: "60 mph", 50: "75 mph"}, "twice the longest"),
        ("60 mph", {50: "75 mph"}, "gusts: found .*, expected two or more"),
        ("60 mph", ["60 mph", "75 mph"], "gusts: found .*, expected two or more"),
        ("60 mph", None, "gusts: found None, expected two or more"),
        ("60 mph", {True: "60 mph", 50: "75 mph"}, "gusts: found True, expected a return period"),
        ("60 mph", {10**400: "60 mph", 50: "75 mph"}, "gusts: found 10*…, expected a return"),
        ("60 mph", {10: "75 mph", 50: "60 mph"}, "greater"),
        ("60 mph", {"ten": "60 mph", 50: "75 mph"}, "ten"),
        ("60 mph", {-1: "60 mph", 50: "75 mph"}, "-1"),
        ("60 lb", {10: "60 mph", 50: "75 mph"}, "^gust"),
        ("60 mph", {10: "60 ft", 50: "75 mph"}, "^gusts"),
        ("0 mph", {10: "60 mph", 50: "75 mph"}, "^gust"),
    ],
)
def test_public_return_period_names_what_is_wrong(gust, gusts, named):
    with pytest.raises(ValueError, match=named):
        public(gust, gusts)


@pytest.mark.parametrize("speeds", [[20.0, 30.0, 25.0], [20.0, 30.0, 30.0], [20.0, 19.0, 30.0]])
def test_speeds_that_do_not_grow_with_every_period_are_refused(speeds):
    with pytest.raises(ValueError, match="greater one for each longer"):
        years_between(22.0, [10.0, 50.0, 100.0], speeds)


@pytest.mark.parametrize("years", [[10.0, 50.0, 40.0], [10.0, 50.0, 50.0]])
def test_periods_that_do_not_grow_are_refused(years):
    with pytest.raises(ValueError, match="greater one for each longer"):
        years_between(22.0, years, [20.0, 25.0, 30.0])


def test_beyond_what_is_told_the_tail_goes_straight_on():
    """ln T of 10 years at 20 m/s and of 50 at 25: at 30 m/s it is ln 50 + (ln 50 - ln 10), T 250;
    once in T years is passed in a year by 1 - exp(-1/T)."""
    told = Yearly(np.array([20.0, 25.0]), np.log([10.0, 50.0]), 50.0)
    found = told.chance(np.array([20.0, 22.5, 30.0, np.inf]))
    T = np.array([10.0, math.sqrt(500.0), 250.0])
    assert found[:3] == pytest.approx(-np.expm1(-1.0 / T), rel=1e-12)
    assert found[3] == 0.0


def test_a_gust_that_comes_more_than_once_a_year_may_be_told():
    """Half a year is a return period: ln T goes from ln 0.5 to ln 50 by half at the mean."""
    found = public("50 mph", {"0.5": "40 mph", 50: "60 mph"})
    assert found == pytest.approx(math.sqrt(25.0))
