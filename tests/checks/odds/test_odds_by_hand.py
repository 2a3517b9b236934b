"""Small questions of the odds, each by hand: what is asked, what varies, whose share it is."""

import numpy as np
import pytest

from yardfast.checks.inputs import read_text
from yardfast.checks.odds.odds import odds
from yardfast.checks.odds.shares import BINS, Shares
from yardfast.checks.odds_table import spreads_of
from yardfast.checks.spread import INPUTS, published

BLOCK = """\
[design]
name = 'Mounting block'
units = 'metric'
[site]
method = 'forecast'
wind = '22 m/s'
exposure = 'open'
ground = 'paving'
[[part]]
name = 'block'
shape = 'solid'
sides = 4
bottom = '300 mm'
top = '300 mm'
height = '900 mm'
material = 'spruce-pine-fir'
"""
AT_IT = BLOCK.replace("'forecast'", "'gust'").replace("exposure = 'open'\n", "")


def test_a_forecast_is_asked_for_as_it_is_stated():
    assert odds(read_text(BLOCK), samples=4)[1].asked == pytest.approx(22.0, rel=1e-12)


def test_a_gust_at_the_piece_is_asked_for_as_the_forecast_that_brings_it():
    """So many times as strong there as the forecast states it, as the limits have it."""
    found, told = odds(read_text(AT_IT), samples=4)
    assert told.asked * found.limits.ratio == pytest.approx(22.0, rel=1e-12)


def test_a_gust_that_is_given_at_the_piece_does_not_vary():
    for text, varies in ((BLOCK, True), (AT_IT, False)):
        of_gust = spreads_of(read_text(text))["gust"]
        assert all((one.spread > 0.0) is varies for one in of_gust.values())
        others = spreads_of(read_text(text))["density"]
        assert others == published()["density"]


def test_the_share_of_an_input_less_what_is_chance_by_hand():
    """Three pieces in each of 32 bins, y = -+a in turns and b, 0, -b within: between 96 a^2, in all
    96 a^2 + 64 b^2, by chance (32 - 1)/(96 - 32) of 64 b^2 = 31 b^2. At a = b = 1 the share is
    (96 - 31)/160 = 0.40625; an input of which each bin has the same mean has none."""
    bins = np.repeat(np.arange(BINS), 3)
    y = np.where(bins % 2, 1.0, -1.0) + np.tile([1.0, 0.0, -1.0], BINS)
    chances = np.full((96, len(INPUTS)), 0.0)
    chances[:, 0] = (bins + 0.5) / BINS
    first = Shares()
    first.take(chances, y)
    told = dict(first.of())
    assert told[INPUTS[0]] == pytest.approx(65.0 / 160.0, rel=1e-12)
    assert told[INPUTS[1]] == 0.0
