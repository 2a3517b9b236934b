"""How often the gust that moves a piece is told: a number where one means something."""

import pytest
import verdict_designs

import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.checks.how_often import moving_gust
from yardfast.checks.inputs import read_text
from yardfast.report.screens.first_screen import first_screen
from yardfast.report.told.how_often_words import _often
from yardfast.units import MPH


@pytest.mark.parametrize(
    ("years", "said"),
    [
        (0.4, "several times a year"),
        (1.0, "every few years"),
        (4.99, "every few years"),
        (5.0, "about once in 5 years"),
        (17.4, "about once in 17 years"),
        (23.0, "about once in 25 years"),
        (104.0, "about once in 100 years"),
        (1234.0, "about once in 1,200 years"),
    ],
)
def test_years_are_told_with_two_figures_from_five_on(years, said):
    assert _often(years) == said


def test_the_gust_that_moves_it_is_told_by_the_gusts_that_were_given(tmp_path):
    """Halfway between 2 and 50 years in ln T lies the gust of 10 years."""
    plain = verdict_designs.HARBOUR
    gust = moving_gust(examine(read_text(plain)))
    low, high = gust / MPH - 10.0, gust / MPH + 10.0
    given = f"gusts = {{ 2 = '{low:.6f} mph', 50 = '{high:.6f} mph' }}\n"
    text = plain.replace("exposure =", f"{given}exposure =")
    file = tmp_path / "light.toml"
    file.write_text(text, encoding="utf-8")
    lines = first_screen(yf.check(yf.read(file)).examination, 70)
    told = " ".join(" ".join(line.text for line in lines).split())
    assert "about once in 10 years here, by the gusts of this place that you gave" in told
