"""The sheet for a buyer: its numbers are the result's, its words literal, its page one."""

import math
import re
import subprocess
import sys
from pathlib import Path

import pytest
from garden import each_example
from pages import pages, sizes_of_type, words
from verdict_designs import block, design_text

import yardfast as yf
from yardfast.checks.examination import examine
from yardfast.checks.inputs import read_text
from yardfast.report.printed.sheet import sheet

ROOT = Path(__file__).resolve().parents[2]
MPH, LB, LBF = 0.44704, 0.45359237, 4.4482216152605
MARKUP = r"""A *b* _c_ #strong[x] $y$ @z <w> \ `q` // /* "ä" -- =1 ~ #panic(sys) &lt; 'n'"""


def made(text, paper="letter"):
    return sheet(examine(read_text(text)), paper)


@pytest.fixture(scope="module")
def tower():
    design = yf.read(ROOT / "examples" / "light-tower.toml")
    return yf.check(design).to_dict(), sheet(yf.check(design).examination, "letter")


def test_numbers_are_those_of_the_result_digit_by_digit(tower):
    result, page = tower
    said, limits = words(page), result["limits"]
    act = 5 * math.floor(limits["act_forecast_gust_m_s"] / MPH / 5 + 1e-9)
    tips = math.floor(limits["forecast_tipping_gust_m_s"] / MPH)
    slides = math.floor(limits["forecast_sliding_gust_m_s"] / MPH)
    assert f"When gusts are forecast over {act} mph" in said
    assert f"Untied, in mph as forecast: at {slides} it slides, at {tips} it tips" in said
    assert f"{math.floor(limits['push_N'] / LBF)} lb of push tips it" in said
    weight, light, heavy = (
        round(result["geometry"][key] / LB) for key in ("mass_kg", "mass_light_kg", "mass_heavy_kg")
    )
    assert f"{weight} lb ({light} lb to {heavy} lb)" in said
    assert f"fingerprint {result['fingerprint']}" in said


def test_gusts_to_act_at_follow_the_exposure_coefficients(tower):
    # Kz of ASCE/SEI 7 Table 26.10-1 up to 15 ft: 0.57 / 0.85 / 1.03 for B / C / D
    result, page = tower
    limits = result["limits"]
    ratio = limits["tipping_gust_m_s"] / limits["forecast_tipping_gust_m_s"]
    assert ratio == pytest.approx(math.sqrt(0.85))
    reserve = min(limits["tipping_gust_m_s"], limits["sliding_gust_m_s"]) / math.sqrt(1.5)
    at_piece = min(limits["tipping_gust_low_m_s"], reserve)
    rows = [5 * math.floor(at_piece / math.sqrt(Kz) / MPH / 5) for Kz in (0.85, 0.57, 1.03)]
    equal = sorted(set(rows))
    assert rows[0] == rows[2] != rows[1]
    assert " ".join(f"{gust} mph" for gust in equal) in words(page)
    assert "open ground and shore houses and trees all round" in words(page)


@each_example
def test_each_example_takes_one_page_of_legible_type_and_no_word_too_much(file):
    design = yf.read(file)
    page = sheet(yf.check(design).examination, "a4" if design.units == "metric" else "letter")
    assert len(pages(page)) == 1
    assert min(sizes_of_type(page).values()) > 10.99
    said = words(page)
    for heading in ("forecast over", "→ ", "What this was", "Not for", "Each season"):
        assert heading in said
    assert "Calculated, not tested." in said
    assert "Not looked at" in said
    assert "No promise for the whole piece." in said
    banned = r"\b(safe|certified|guaranteed?|approved|engineered|OK|passes|storm-?proof)\b"
    assert not re.findall(banned, said, re.IGNORECASE)


def test_a_name_full_of_markup_prints_literally():
    text = design_text(block("12 in", "12 in", "48 in", "35 lb/ft^3"), wind="46 mph")
    named = re.sub(r"(?m)^name += .*", lambda _: f"name = '''{MARKUP}'''", text, count=1)
    named = named.replace("[site]", "maker = '#include \"x\" *M*'\n[site]", 1)
    said = words(made(named))
    assert MARKUP in said
    assert '#include "x" *M*' in said


LONG = "A piece with a name that goes on and on " * 4
STAKES = """
[[anchor]]
name = 'stakes'
kind = 'rebar stake 5/8 in x 36 in'
ring = '19 in'
count = 10
[[guy]]
name = 'ropes'
line = 'polyester rope 1/4 in'
anchor = 'screw anchor 30 in'
height = '3 ft'
radius = '3 ft'
count = 3
"""
RECORDS = "".join(
    f"""
[[record]]
kind = '{kind}'
value = '{value}'
date = 2026-05-{day}
by = 'J. Miller of the long street by the harbour'
{extra}
"""
    for day, kind, value, extra in (
        (28, "weight", "140 lb", ""),
        (29, "scale test", "12 lbf", "height = '36 in'"),
        (30, "stake pull test", "150 lbf", ""),
        (31, "stake pull test", "160 lbf", ""),
        (31, "stake pull test", "170 lbf", ""),
    )
)
BOX = block("20 in", "20 in", "48 in", "12 lb/ft^3")
MANY = BOX + "".join(
    f"""
[[part]]
name = 'small block number {i}'
shape = 'solid'
sides = 6
bottom = '3 in'
top = '2 in'
height = '6 in'
density = '30 lb/ft^3'
at = ['{i - 15} in', '{3 * i - 40} in', '48 in']
"""
    for i in range(29)
)


@pytest.mark.slow
@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("units", ["imperial", "metric"])
@pytest.mark.parametrize(
    ("parts", "more"),
    [(BOX, ""), (BOX, STAKES), (MANY, RECORDS), (BOX, STAKES + RECORDS)],
    ids=["no anchors", "ten anchors and guys", "thirty parts", "anchors and records"],
)
def test_all_there_is_to_say_stays_on_one_page(parts, more, units, paper):
    text = design_text(parts, wind="46 mph", ground="firm lawn") + more
    text = re.sub(r"(?m)^name += .*", f"name = '{LONG}'", text, count=1)
    text = re.sub(r"units += '\w+'", f"units = '{units}'", text, count=1)
    text = text.replace("[site]", f"maker = '{LONG}'\ncontact = '{LONG}'\n[site]", 1)
    page = made(text, paper)
    assert len(pages(page)) == 1
    assert LONG.strip() in words(page)


def test_records_show_as_what_they_are_and_change_no_number():
    text = design_text(BOX, wind="46 mph", ground="firm lawn")
    plain, told = words(made(text)), words(made(text + RECORDS))
    assert "Weighed on 28 May 2026, J. Miller" in told
    assert "Tested on 29 May 2026" in told
    assert "a level pull of 12 lb at 3 ft began to lift its edge" in told
    assert "it held 150 lb straight up" in told
    assert "2 more in its file" in told
    assert "Calculated, not tested." not in told
    assert re.findall(r"\d+ mph", plain) == re.findall(r"\d+ mph", told)


def test_a_weight_alone_is_no_test():
    record = RECORDS.split("[[record]]")[1]
    said = words(made(design_text(BOX, wind="46 mph") + "[[record]]" + record))
    assert "Calculated, not tested." in said
    assert "Tested" not in said


@pytest.mark.slow
def test_the_same_design_gives_the_same_bytes_in_another_process(tmp_path):
    outputs = [tmp_path / "one.pdf", tmp_path / "two.pdf"]
    for seed, output in enumerate(outputs):
        subprocess.run(
            [sys.executable, "-m", "yardfast", "sheet", "examples/heron.toml", "-o", str(output)],
            cwd=ROOT,
            env={"PYTHONHASHSEED": str(seed), "PATH": "", "TZ": "UTC" if seed else "EST"},
            check=True,
            capture_output=True,
        )
    assert outputs[0].read_bytes() == outputs[1].read_bytes()
